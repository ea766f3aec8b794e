package swap

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The hoop stress rises with pressure and bore, falls with the wall, and in a thin
// wall is the p·d/2t of the boiler formula.
func TestHoopStressIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(1e3, 1e8).Draw(t, "p")
		d := rapid.Float64Range(1e-3, 5).Draw(t, "d")
		wall := rapid.Float64Range(1e-4, 1).Draw(t, "t")
		more := rapid.Float64Range(1.01, 3).Draw(t, "more")
		s := hoopStress(p, d, wall)
		if hoopStress(p*more, d, wall) <= s || hoopStress(p, d*more, wall) <= s || hoopStress(p, d, wall*more) >= s {
			t.Fatalf("%v is not monotone", s)
		}
		if s < p {
			t.Fatalf("hoop stress %v is below the pressure %v", s, p)
		}
		thin := d / 1e4
		if have, want := hoopStress(p, d, thin), p*d/(2*thin); math.Abs(have-want) > 1e-3*want {
			t.Fatalf("thin wall: have %v, want %v", have, want)
		}
	})
}

// 1 ksi in a bore of 4 in with a wall of 1 in: D = 6 in, so 1·(36 + 16)/(36 − 16) = 2.6 ksi.
func TestMarginUnderPressure(t *testing.T) {
	r := swapOf(t, "pressure=1 ksi|bore=4 in|wall=1 in|stress=2.6 ksi", "i1-sand", "a1-sand")
	h := line(t, r, "pressure.hoop")
	if math.Abs(h.Value.Mid-2.6) > 1e-9 || !strings.Contains(strings.Join(h.Notes, "; "), "licensed engineer") {
		t.Errorf("hoop stress %v, notes %q", h.Value, h.Notes)
	}
	// The margin is that of the same stress applied.
	for _, basis := range []string{"minimum", "typical"} {
		under, applied := r.Line("pressure.margin."+basis), r.Line("margin.set."+basis)
		if under == nil || applied == nil || under.Reason != applied.Reason || (under.Value == nil) != (applied.Value == nil) {
			t.Fatalf("%s: %+v against %+v", basis, under, applied)
		}
		if under.Value != nil && math.Abs(under.Value.Mid-applied.Value.Mid) > 1e-9 {
			t.Errorf("%s: have %v, want %v", basis, under.Value.Mid, applied.Value.Mid)
		}
	}
	r = swapOf(t, "pressure=0.9..1.1 ksi|bore=4 in|wall=0.9..1.1 in", "i1-sand", "a1-sand")
	if v := line(t, r, "pressure.hoop").Value; !(v.Range && v.Lo < 2.6 && v.Hi > 2.6) {
		t.Errorf("the interval %v does not hold the point 2.6 ksi", v)
	}
}

func TestPressureWaitsForWhatItNeeds(t *testing.T) {
	for given, want := range map[string]string{
		"pressure=150 psi":           "needs an inside diameter",
		"bore=4 in":                  "needs a pressure",
		"pressure=150 psi|bore=4 in": "needs a wall thickness",
	} {
		if l := swapOf(t, given, "i1-sand", "a1-sand").Line("pressure.hoop"); l == nil || l.Need != want {
			t.Errorf("%s: %+v, want %q", given, l, want)
		}
	}
	if l := swapOf(t, "wall=1 in", "i1-sand", "a1-sand").Line("pressure.hoop"); l != nil {
		t.Errorf("a part without pressure has the line %+v", l)
	}
}

// Natural frequency goes with the root of modulus over density: 10/16 and 0.26/0.1.
func TestNaturalFrequency(t *testing.T) {
	have := line(t, swapOf(t, "", "i1-sand", "a1-sand"), "stiffness.frequency").Ratio.Mid
	if want := math.Sqrt(10. / 16 * 0.26 / 0.1); math.Abs(have-want) > 1e-9 {
		t.Errorf("have %v, want %v", have, want)
	}
}
