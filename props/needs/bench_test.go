package needs

import (
	"fmt"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// generated is an invented catalog of n materials with ten figures each; no
// metal has them.
func generated(n int) *catalog.Catalog {
	source := &props.Source{ID: "S", Title: "Invented", Kind: "handbook"}
	family := &props.Family{ID: "aluminum", Name: "aluminum"}
	c := &catalog.Catalog{Sources: []*props.Source{source}, Families: []*props.Family{family}}
	figures := []struct {
		p        props.PropertyID
		lo, step float64
	}{
		{props.TensileStrength, 20, 0.3}, {props.YieldStrength, 10, 0.2}, {props.Elongation, 1, 0.1}, {props.HardnessBrinell, 50, 0.7}, {props.FatigueStrength, 5, 0.1},
		{props.ElasticModulus, 9, 0.02}, {props.Density, 0.06, 0.002}, {props.ThermalConductivity, 20, 1}, {props.ElectricalConductivity, 5, 0.5}, {props.SpecificHeat, 0.1, 0.001},
	}
	for i := range n {
		a := &props.Alloy{ID: fmt.Sprint("x", i), Name: fmt.Sprint("X", i), Family: family}
		m := &props.Material{ID: a.ID, Alloy: a, Process: props.Sand}
		b := &props.Block{Basis: props.Typical, Source: source}
		for j, f := range figures {
			v := f.lo + f.step*float64((i*(j+7))%101)
			m.Stated = append(m.Stated, props.Figure{Property: f.p, Block: b, Cond: &props.Conditions{},
				Value: units.Quantity{Lo: v, Hi: v, Unit: f.p.Info().Units[units.US]}})
		}
		a.Materials = []*props.Material{m}
		c.Alloys = append(c.Alloys, a)
	}
	c.Index()
	return c
}

var fiveNeeds = "yield >= 20 ksi; tensile >= 30 ksi; density < 0.2 lb/in3; conductivity >= 20 %IACS; elongation >= 3 %"

func fixture(b testing.TB, materials int) (*Index, []Need) {
	c := generated(materials)
	list, err := ParseAll(fiveNeeds, c)
	if err != nil {
		b.Fatal(err)
	}
	return NewIndex(c), list
}

// BenchmarkScreen holds 1,000,000 figures (100,000 materials of ten) against
// five needs.
func BenchmarkScreen(b *testing.B) {
	ix, list := fixture(b, 100_000)
	ix.Screen(list)
	b.ReportAllocs()
	for b.Loop() {
		ix.Screen(list)
	}
}

// BenchmarkFirstScreen includes building the columns.
func BenchmarkFirstScreen(b *testing.B) {
	ix, list := fixture(b, 100_000)
	for b.Loop() {
		NewIndex(ix.catalog).Screen(list)
	}
}

func TestInnerLoopDoesNotAllocate(t *testing.T) {
	ix, list := fixture(t, 1000)
	misses := make([]uint8, 1000)
	ix.Screen(list)
	if n := testing.AllocsPerRun(10, func() {
		for i := range list {
			ix.count(&list[i], misses)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
