package props

import (
	"testing"

	"alongside/units"
)

func figureOf(t *testing.T, p PropertyID, value string, c Conditions) *Figure {
	t.Helper()
	q, err := units.Parse(value)
	if err != nil {
		t.Fatal(err)
	}
	return &Figure{Property: p, Value: q, Cond: &c, Block: &Block{}}
}

// Intervals that touch at a binary fraction, and a target on a row that one
// side prints as a resistivity.
func TestJudge(t *testing.T) {
	near := units.MSPerM.ToSI(20)
	for _, tt := range []struct {
		pin, base string
		sense     Sense
		want      Verdict
	}{
		{"0.28 lb/in3", "0.29 lb/in3", Less, Overlaps},
		{"0.29 lb/in3", "0.28 lb/in3", Less, Overlaps},
		{"14 ksi", "15 ksi", More, Overlaps},
		{"14.0 ksi", "15.0 ksi", More, Misses},
		{"21.0 MS/m", "30.0 MS/m", Near, Beats},
		{"21.0 MS/m", "3.33 uohm-cm", Near, Beats},
		{"3.33 uohm-cm", "21.0 MS/m", Near, Misses},
		{"4.76 uohm-cm", "3.33 uohm-cm", Near, Beats},
		{"4.76 uohm-cm", "3.33 uohm-cm", More, Misses},
	} {
		pin, base := figureOf(t, Density, tt.pin, Conditions{}), figureOf(t, Density, tt.base, Conditions{})
		if have := judge(pin, base, tt.sense, near, DefaultBand); have != tt.want {
			t.Errorf("%s against %s, %v: have %v, want %v", tt.pin, tt.base, tt.sense, have, tt.want)
		}
	}
}

// Rotating bending and push-pull are two tests; a section stated on one side
// only is a caution, whichever side that is.
func TestConditionsOfBothSides(t *testing.T) {
	bending, axial := Conditions{Loading: "rotating bending"}, Conditions{Loading: "axial"}
	if r := unlike(figureOf(t, FatigueStrength, "10 ksi", bending), figureOf(t, FatigueStrength, "8 ksi", axial)); r.Kind != LoadingDiffers || !r.Unlike() {
		t.Errorf("bending against axial: have %q", r)
	}
	if r := unlike(figureOf(t, FatigueStrength, "10 ksi", bending), figureOf(t, FatigueStrength, "8 ksi", Conditions{})); r.Kind != NoReason {
		t.Errorf("loading not stated on one side: have %q", r)
	}
	if r := unlike(figureOf(t, Elongation, "5 %", Conditions{Gauge: "3D"}), figureOf(t, Elongation, "5 %", Conditions{Gauge: "2 in"})); r.Kind != GaugeDiffers {
		t.Errorf("3D against 2 in: have %q", r)
	}
	thick, bare := figureOf(t, TensileStrength, "40 ksi", Conditions{Section: "under 4 in"}), figureOf(t, TensileStrength, "40 ksi", Conditions{})
	for want, pair := range map[string][2]*Figure{"under 4 in against not stated": {thick, bare}, "not stated against under 4 in": {bare, thick}} {
		if got := cautions(pair[0], pair[1]); len(got) != 1 || got[0].String() != want {
			t.Errorf("have %v, want %q", got, want)
		}
	}
}
