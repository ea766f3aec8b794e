package compare

import (
	"errors"
	"math"
	"strings"
	"testing"

	"alongside/props"
	"alongside/units"

	"pgregory.net/rapid"
)

func TestGrowthFollowsThePublishedMeans(t *testing.T) {
	// 12.0 µin/in·°F from 68 to 212 °F and 13.0 from 68 to 572 °F, so by
	// definition 12.0·144 and 13.0·504 µin/in, and between 212 and 572 °F the
	// difference of the two.
	g := GrowthOf(get(t, shop(t), "x1-f-sand"))
	for _, tt := range []struct{ fromF, toF, want float64 }{
		{68, 212, 12.0 * 144},
		{68, 572, 13.0 * 504},
		{212, 572, 13.0*504 - 12.0*144},
		{212, 68, -12.0 * 144},
		{68, 140, 12.0 * 72},
		{68, 392, 12.5 * 324}, // halfway between the published ends
	} {
		c := func(f float64) float64 { return (f - 32) / 1.8 }
		lo, mid, hi, err := g.Strain(c(tt.fromF), c(tt.toF))
		if err != nil || math.Abs(mid*1e6-tt.want) > 1e-6*math.Abs(tt.want) || lo > mid || mid > hi {
			t.Errorf("%v to %v °F: have %v..%v..%v µin/in, %v; want %v", tt.fromF, tt.toF, lo*1e6, mid*1e6, hi*1e6, err, tt.want)
		}
	}
}

func TestGrowthBoundsAreTheWorstCases(t *testing.T) {
	// From 212 to 572 °F: 13.0·504 − 12.0·144 µin/in. Either figure may be off by
	// half its last digit, 0.05, on its own: 0.05·(504 + 144) = 32.4.
	g := GrowthOf(get(t, shop(t), "x1-f-sand"))
	lo, mid, hi, err := g.Strain(100, 300)
	for _, tt := range []struct{ have, want float64 }{{lo, 4824 - 32.4}, {mid, 4824}, {hi, 4824 + 32.4}} {
		if err != nil || math.Abs(tt.have*1e6-tt.want) > 1e-6 {
			t.Errorf("have %v, %v; want %v µin/in", tt.have*1e6, err, tt.want)
		}
	}
}

func TestGrowthNeverExtrapolates(t *testing.T) {
	c := shop(t)
	_, _, _, err := GrowthOf(get(t, c, "x1-f-sand")).Strain(20, 310)
	var out *OutOfRange
	if !errors.As(err, &out) || !strings.Contains(err.Error(), "above 300 °C (572 °F)") {
		t.Errorf("have %v", err)
	}
	if _, _, _, err := GrowthOf(get(t, c, "x1-f-sand")).Strain(-41, 100); !errors.As(err, &out) || !strings.Contains(err.Error(), "below -40 °C (-40 °F)") {
		t.Errorf("no coefficient below 20 °C is published: have %v", err)
	}
	if g := GrowthOf(get(t, c, "x2-f-die")); g != nil {
		t.Error("a coefficient without a range gave a curve")
	}
}

// The mean over part of a published range is that of the range or less, by no
// more than the steepest curve read.
func TestGrowthIsBoundedWithinTheFirstRange(t *testing.T) {
	lo, mid, hi, err := GrowthOf(get(t, shop(t), "x1-f-sand")).Strain(20, 60)
	if err != nil || math.Abs(lo*1e6-11.95*72/(1+0.20*0.40)) > 1e-6 || math.Abs(mid*1e6-12.0*72) > 1e-6 || math.Abs(hi*1e6-12.05*72) > 1e-6 {
		t.Errorf("68 to 140 °F: have %v..%v..%v µin/in, %v", lo*1e6, mid*1e6, hi*1e6, err)
	}
}

// A mean from 68 °F up bounds the growth down to −40 °F: the mean there is not
// above it, and below it by no more than the steepest curve read.
func TestGrowthIsBoundedInTheCold(t *testing.T) {
	lo, mid, hi, err := GrowthOf(get(t, shop(t), "x1-f-sand")).Strain(20, -40)
	if err != nil || math.Abs(lo*1e6+12.05*108) > 1e-6 || math.Abs(hi*1e6+11.95*108/(1+0.20*1.40)) > 1e-6 || mid < lo || mid > hi {
		t.Errorf("68 to -40 °F: have %v..%v..%v µin/in, %v", lo*1e6, mid*1e6, hi*1e6, err)
	}
}

func TestGrowthIsAdditive(t *testing.T) {
	g := GrowthOf(get(t, shop(t), "x1-f-sand"))
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(20, 300)
		a, b, c := at.Draw(t, "a"), at.Draw(t, "b"), at.Draw(t, "c")
		_, ab, _, _ := g.Strain(a, b)
		_, bc, _, _ := g.Strain(b, c)
		_, ac, _, _ := g.Strain(a, c)
		if math.Abs(ab+bc-ac) > 1e-12 {
			t.Fatalf("%v + %v is not %v", ab, bc, ac)
		}
	})
}

func TestBenchRange(t *testing.T) {
	b := on(t, shop(t), "x1-f-sand", "x1-t6-sand", "x2-f-die")
	b.Range = &[2]float64{100, 300}
	b.Only = []props.PropertyID{props.ThermalExpansion}
	row := Compare(b).Rows[0]
	want := (13.0*504 - 12.0*144) / 360 // µin/in·°F from 212 to 572 °F
	have := row.Cells[1].Value
	if have.Unit != units.MicroinInF || math.Abs((have.Lo+have.Hi)/2-want) > 1e-9 {
		t.Errorf("have %v, want %v", have, want)
	}
	if row.Cells[1].Verdict != Level || !strings.Contains(row.Cells[1].Why(), "published means over 68–212 °F, 68–572 °F") {
		t.Errorf("have %v, %s", row.Cells[1].Verdict, row.Cells[1].Why())
	}
	if row.Cells[2].Figure != nil || row.Cells[2].Absent != "no expansion coefficient with a stated range" {
		t.Errorf("have %v, %q", row.Cells[2].Figure, row.Cells[2].Absent)
	}
}

func TestServiceTemperature(t *testing.T) {
	c := shop(t)
	at := func(f float64) Bench {
		b := on(t, c, "x1-f-sand", "x1-t6-sand")
		v := (f - 32) / 1.8
		b.Service = &v
		return b
	}
	cell := cellOf(t, at(300), props.TensileStrength)
	if cell.Verdict != Beats || cell.Value.Lo != 30 || cell.Figure.Cond.Interpolated != "" {
		t.Errorf("at a published temperature: %v %v %s", cell.Verdict, cell.Value, cell.Why())
	}
	cell = cellOf(t, at(400), props.TensileStrength)
	if math.Abs(cell.Value.Lo-22) > 1e-9 || !strings.Contains(cell.Why(), "interpolated between 300 °F and 500 °F") {
		t.Errorf("halfway: %v %s", cell.Value, cell.Why())
	}
	if cell = cellOf(t, at(310), props.TensileStrength); cell.Figure.Cond.Interpolated == "" || cell.Value.Lo >= 30 {
		t.Errorf("ten degrees off: %v %s, want it interpolated", cell.Value, cell.Why())
	}
	for _, f := range []float64{200, 600} { // the 100 h series starts at 300 °F
		cell = cellOf(t, at(f), props.TensileStrength)
		if cell.Figure != nil || !strings.Contains(cell.Absent, "published at 20 °C (68 °F), 149 °C (300 °F), 260 °C (500 °F)") {
			t.Errorf("%v °F: %v %q", f, cell.Figure, cell.Absent)
		}
	}
}
