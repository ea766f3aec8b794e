package compare

import (
	"testing"

	"alongside/props"
	"alongside/units"
)

func figureOf(t *testing.T, p props.PropertyID, value string, c props.Conditions) *props.Figure {
	t.Helper()
	q, err := units.Parse(value)
	if err != nil {
		t.Fatal(err)
	}
	return &props.Figure{Property: p, Value: q, Cond: &c, Block: &props.Block{}}
}

// Intervals that touch at a binary fraction, and a target on a row that one
// side prints as a resistivity.
func TestJudge(t *testing.T) {
	near := units.MSPerM.ToSI(20)
	for _, tt := range []struct {
		pin, base string
		sense     props.Sense
		want      Verdict
	}{
		{"0.28 lb/in3", "0.29 lb/in3", props.Less, Overlaps},
		{"0.29 lb/in3", "0.28 lb/in3", props.Less, Overlaps},
		{"14 ksi", "15 ksi", props.More, Overlaps},
		{"14.0 ksi", "15.0 ksi", props.More, Misses},
		{"21.0 MS/m", "30.0 MS/m", props.Near, Beats},
		{"21.0 MS/m", "3.33 uohm-cm", props.Near, Beats},
		{"3.33 uohm-cm", "21.0 MS/m", props.Near, Misses},
		{"4.76 uohm-cm", "3.33 uohm-cm", props.Near, Beats},
		{"4.76 uohm-cm", "3.33 uohm-cm", props.More, Misses},
	} {
		pin, base := figureOf(t, props.Density, tt.pin, props.Conditions{}), figureOf(t, props.Density, tt.base, props.Conditions{})
		if have := judge(pin, base, tt.sense, near, DefaultBand); have != tt.want {
			t.Errorf("%s against %s, %v: have %v, want %v", tt.pin, tt.base, tt.sense, have, tt.want)
		}
	}
}

// Rotating bending and push-pull are two tests; a section stated on one side
// only is a caution, whichever side that is.
func TestConditionsOfBothSides(t *testing.T) {
	bending, axial := props.Conditions{Loading: "rotating bending"}, props.Conditions{Loading: "axial"}
	if why, refused := told(t, props.FatigueStrength, "10 ksi", bending, "8 ksi", axial); !refused || why[0].Kind != LoadingDiffers {
		t.Errorf("bending against axial: have %q", why)
	}
	if why, refused := told(t, props.FatigueStrength, "10 ksi", bending, "8 ksi", props.Conditions{}); refused {
		t.Errorf("loading not stated on one side: have %q", why)
	}
	if why, refused := told(t, props.Elongation, "5 %", props.Conditions{Gauge: "3D"}, "5 %", props.Conditions{Gauge: "2 in"}); !refused || why[0].Kind != GaugeDiffers {
		t.Errorf("3D against 2 in: have %q", why)
	}
	thick, bare := props.Conditions{Section: "under 4 in"}, props.Conditions{}
	for want, pair := range map[string][2]props.Conditions{"under 4 in against not stated": {thick, bare}, "not stated against under 4 in": {bare, thick}} {
		if why, refused := told(t, props.TensileStrength, "40 ksi", pair[0], "40 ksi", pair[1]); refused || len(why) != 1 || why[0].String() != want {
			t.Errorf("have %v, want %q", why, want)
		}
	}
}

// told asks rule 1 of two figures of one metal.
func told(t *testing.T, p props.PropertyID, a string, ac props.Conditions, b string, bc props.Conditions) (why []Reason, refused bool) {
	t.Helper()
	m := &props.Material{Alloy: &props.Alloy{Family: &props.Family{}}}
	var q Question
	f, g := figureOf(t, p, a, ac), figureOf(t, p, b, bc)
	l := q.alike(side{m, f}, side{m, g})
	return q.reasons(&l, f, g), l.refused
}
