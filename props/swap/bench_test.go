package swap

import (
	"testing"

	"alongside/data"
	"alongside/props/compare"
)

func BenchmarkWork(b *testing.B) {
	c := data.Catalog()
	p := partOf(b, c, "mass=4.2 lb|wall=3/8 in|length=12 in|case=plate|stress=8 ksi|service=70..212 F|mate=1045|fit=1.5 in")
	g, _ := p.Read(c)
	bench := compare.NewBench()
	x, y := c.Material("gray-30"), c.Material("a356-t6-pm")
	b.ReportAllocs()
	for b.Loop() {
		Work(&bench, g, x, y)
	}
}
