package compare

import (
	"os"
	"testing"

	"alongside/props/catalog"
)

// A comparison of eight everyday metals over all their rows.
func BenchmarkCompare(b *testing.B) {
	c, err := catalog.Load(os.DirFS("../../data"))
	if err != nil {
		b.Fatal(err)
	}
	bench := NewBench()
	for _, id := range []string{"gray-30", "a356-t6-pm", "319-t6-sand", "a380-f-die", "za-12-sand", "ductile-65-45-12", "c95400-sand", "6061-t6-wrought"} {
		bench.Pin(c.Material(id))
	}
	for b.Loop() {
		Compare(bench)
	}
}
