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
	r := swapOf(t, "pressure=1 ksi|inside=4 in|wall=1 in|stress=2.6 ksi", "i1-sand", "a1-sand")
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
	r = swapOf(t, "pressure=0.9..1.1 ksi|inside=4 in|wall=0.9..1.1 in", "i1-sand", "a1-sand")
	if v := line(t, r, "pressure.hoop").Value; !(v.Range && v.Lo < 2.6 && v.Hi > 2.6) {
		t.Errorf("the interval %v does not hold the point 2.6 ksi", v)
	}
}

func TestPressureWaitsForWhatItNeeds(t *testing.T) {
	for given, want := range map[string]string{
		"pressure=150 psi":             "needs an inside diameter",
		"inside=4 in":                  "needs a pressure",
		"pressure=150 psi|inside=4 in": "needs a wall thickness",
		"test=225 psi":                 "needs a pressure",
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

// The wall grows with pressure and bore and falls with strength; thin, it is the P·d/2S
// of the boiler formula. At 0.8 of the strength it is that of 0.8 of the pressure held.
func TestNeededWallIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Float64Range(1e6, 1e9).Draw(t, "s")
		p, r := s*rapid.Float64Range(1e-5, 0.38).Draw(t, "p"), rapid.Float64Range(1e-3, 5).Draw(t, "r")
		more := rapid.Float64Range(1.001, 1.3).Draw(t, "more")
		if x := wall(p, r, s); wall(p*more, r, s) <= x || wall(p, r*more, s) <= x || wall(p, r, s*more) >= x || x < p*r/s {
			t.Fatalf("%v is not monotone", x)
		}
	})
	whole := line(t, swapOf(t, "pressure=80 psi|inside=4 in|quality=1|safety=4", "i1-sand", "a1-sand"), "pressure.wall")
	part := line(t, swapOf(t, "pressure=64 psi|inside=4 in|quality=0.8|safety=4", "i1-sand", "a1-sand"), "pressure.wall")
	if math.Abs(whole.Value.Mid-part.Value.Mid) > 1e-12 || !strings.Contains(strings.Join(part.Notes, "; "), "licensed engineer") {
		t.Errorf("%v and %v, notes %q", whole.Value, part.Value, part.Notes)
	}
	if l := swapOf(t, "pressure=9 ksi|inside=4 in|quality=1|safety=4", "i1-sand", "a1-sand").Line("pressure.wall"); l.Done() || !strings.Contains(l.Reason, "0.385") {
		t.Errorf("a wall past the end of the formula: %+v", l)
	}
}

// The margin in the test is that of the same pressure in service.
func TestMarginInThePressureTest(t *testing.T) {
	r := swapOf(t, "pressure=1 ksi|test=1 ksi|inside=4 in|wall=1 in", "i1-sand", "a1-sand")
	test, service := line(t, r, "pressure.test.minimum"), line(t, r, "pressure.margin.minimum")
	if test.Value.Mid != service.Value.Mid || !strings.Contains(strings.Join(test.Notes, "; "), "1.5 times") {
		t.Errorf("%v in the test, %v in service, %q", test.Value, service.Value, test.Notes)
	}
}

func TestSpecificationOfAPressurePart(t *testing.T) {
	for pin, want := range map[string]string{
		"ductile-60-40-18": "A536 is none for pressure parts: order to A395", "gray-40": "A48 is none for pressure parts: order to A278",
		"ductile-a395-65-45-15": "A395 is a specification for pressure parts", "steel-a216-wcc": "A216 is a specification for pressure parts",
		"a380-f-die": "many codes leave die castings out", "c95800-sand": "names no pressure parts",
	} {
		if l := line(t, catalogSwap(t, "pressure=150 psi", "gray-30", pin), "pressure.specification"); !strings.Contains(l.Words, want) || !strings.Contains(l.Notes[0], "A278") {
			t.Errorf("%s: %q, %q; want %q", pin, l.Words, l.Notes, want)
		}
	}
}

// A ground face of a soft steel is never better than the polished specimen: 1.58·Su^−0.085
// is 1.07 at 100 MPa and counts as 1.
func TestSurfaceFactorEndsAtOne(t *testing.T) {
	if k := surfaceFactor(exact(100e6), 1.58, -0.085); k.lo != 1 || k.mid != 1 || k.hi != 1 {
		t.Errorf("have %g", k.mid)
	}
	if k := surfaceFactor(exact(800e6), 4.51, -0.265); math.Abs(k.mid-4.51*math.Pow(800, -0.265)) > 1e-12 || k.mid >= 1 {
		t.Errorf("machined, 800 MPa: %g", k.mid)
	}
}
