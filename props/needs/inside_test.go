package needs

import (
	"math"
	"testing"

	"alongside/props"
	"alongside/units"

	"pgregory.net/rapid"
)

// However a figure is rounded, what is shown is on the same side of the limit.
func TestShownAgreesWithTheVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := units.Quantity{Place: int8(rapid.IntRange(-3, -2).Draw(t, "place")), Unit: units.LbPerIn3}
		v.Lo = float64(rapid.IntRange(60, 330).Draw(t, "figure")) / 1000
		v.Hi = v.Lo
		limit := float64(rapid.IntRange(160, 920).Draw(t, "limit")) / 100
		n := Need{Property: props.Density, Op: Op(rapid.IntRange(0, 3).Draw(t, "op")), Limit: units.Quantity{Lo: limit, Hi: limit, Place: -2, Unit: units.GPerCM3}}
		q := n.shown(&props.Figure{Property: props.Density, Value: v})
		back, err := units.Parse(q.String())
		if err != nil {
			t.Fatal(err)
		}
		have, want := n.contains(units.GPerCM3.ToSI(back.Lo), units.GPerCM3.ToSI(back.Hi)), n.contains(ends(&props.Figure{Value: v}))
		if have != want {
			t.Fatalf("%s shown as %s against %s", v, q, &n)
		}
	})
}

// Steel, E = 210 GPa and 7.8 Mg/m³: E^(1/2)/ρ = 1.86 GPa^(1/2)·m³/Mg (open
// course notes on material indices; remembered).
func TestBeamIndexOfSteel(t *testing.T) {
	d, _ := DutyNamed("beam-stiffness")
	if have := d.merit([]float64{210, 7.8}); math.Abs(have-1.86) > 5e-3 {
		t.Errorf("have %v", have)
	}
}
