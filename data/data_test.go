package data

import (
	"os"
	"testing"

	"alongside/props"
)

// The packed form is made from the TOML; this holds the two equal.
func TestPackedIsCurrent(t *testing.T) {
	c, err := props.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	have, err := os.ReadFile("catalog.bin")
	if err != nil {
		t.Fatal(err)
	}
	if string(have) != string(props.Pack(c)) {
		t.Fatal("catalog.bin does not match the TOML; run: go generate ./data")
	}
}

func BenchmarkUnpack(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := props.Unpack(packed); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLoadTOML(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := props.Load(Files); err != nil {
			b.Fatal(err)
		}
	}
}
