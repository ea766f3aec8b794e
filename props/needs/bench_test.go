package needs_test

import (
	"fmt"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/props/spoken"
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
		c.Alloys, c.Materials = append(c.Alloys, a), append(c.Materials, m)
	}
	return c
}

var fiveNeeds = "yield >= 20 ksi; tensile >= 30 ksi; density < 0.2 lb/in3; conductivity >= 20 %IACS; elongation >= 3 %"

func fixture(b testing.TB, materials int) ([]*props.Material, []needs.Need) {
	c := generated(materials)
	list, err := spoken.Read(fiveNeeds, c, units.US, nil).Limits()
	if err != nil {
		b.Fatal(err)
	}
	return c.Materials, list
}

// BenchmarkFind holds 80,000 figures (7,500 materials, ten times the catalog)
// against five needs.
func BenchmarkFind(b *testing.B) {
	materials, list := fixture(b, 7_500)
	b.ReportAllocs()
	for b.Loop() {
		needs.Find(materials, list, 50, true)
	}
}
