package needs_test

import (
	"math"
	"testing"
	"testing/fstest"

	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
)

// The figures of the die casting association's comparison table as a die
// caster reproduces it, used by the worked examples below.
const pair = `[[source]]
id = "NADCA-MG"
title = "Product specification standards, magnesium alloys with comparison"
kind = "association"
[[family]]
id = "any"
name = "any"
[[alloy]]
id = "a380"
name = "A380"
family = "any"
[[alloy.material]]
process = "die"
[[alloy.material.figures]]
basis = "typical"
source = "NADCA-MG"
known = "read"
elastic_modulus = "71 GPa"
density = "2.74 g/cm3"
yield_strength = "160 MPa"
[[alloy]]
id = "az91d"
name = "AZ91D"
family = "any"
[[alloy.material]]
process = "die"
[[alloy.material.figures]]
basis = "typical"
source = "NADCA-MG"
known = "read"
elastic_modulus = "45 GPa"
density = "1.82 g/cm3"
yield_strength = "150 MPa"
`

// Mass ratios at equal duty; the merit is their reciprocal. Relations: open
// course notes on material indices (tie and beam read, plate from memory);
// the numbers are arithmetic on the table's figures.
func TestMeritAgainstMassRatios(t *testing.T) {
	c, err := catalog.Load(fstest.MapFS{"pair.toml": {Data: []byte(pair)}})
	if err != nil {
		t.Fatal(err)
	}
	b := compare.NewBench()
	for _, tt := range []struct {
		duty string
		mass float64
	}{
		{"plate-stiffness", 0.7733}, // (ρ2/ρ1)(E1/E2)^(1/3)
		{"tie-stiffness", 1.0480},   // (ρ2/ρ1)(E1/E2)
		{"beam-stiffness", 0.8343},  // (ρ2/ρ1)(E1/E2)^(1/2)
		{"plate-strength", 0.6860},  // (ρ2/ρ1)(σ1/σ2)^(1/2)
	} {
		d, ok := needs.DutyNamed(tt.duty)
		if !ok {
			t.Fatalf("no duty %s", tt.duty)
		}
		m := d.Relative(&b, c.Material("az91d-die"), c.Material("a380-die"))
		if m.Why != "" || math.Abs(1/m.Mid-tt.mass) > 1e-3*tt.mass || m.Lo > m.Mid || m.Mid > m.Hi {
			t.Errorf("%s: mass ratio %v (%v..%v, %s), want %v", tt.duty, 1/m.Mid, m.Lo, m.Hi, m.Why, tt.mass)
		}
		back := d.Relative(&b, c.Material("a380-die"), c.Material("az91d-die"))
		if math.Abs(back.Mid*m.Mid-1) > 1e-9 {
			t.Errorf("%s: there %v and back %v", tt.duty, m.Mid, back.Mid)
		}
	}
}

// A metal without a yield figure is judged by tensile strength on both sides,
// and says so.
func TestMeritWithoutYield(t *testing.T) {
	c := shop(t)
	b := compare.NewBench()
	d, _ := needs.DutyNamed("tie-strength")
	m := d.Relative(&b, c.Material("x1-f-sand"), c.Material("gray-30"))
	if m.Why == "" || m.Mid != 0 {
		t.Errorf("gray-30 has no density on file, yet a merit of %v came out", m.Mid)
	}
	m = d.Relative(&b, c.Material("x1-t6-sand"), c.Material("x2-f-die"))
	if m.Why != "yield at 0.2 % offset against 0.5 % extension under load" {
		t.Errorf("unlike yields gave %v, %q", m.Mid, m.Why)
	}
}
