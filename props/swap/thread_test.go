package swap

import (
	"math"
	"strings"
	"testing"

	"alongside/props/part"
	"alongside/units"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, have, want, tolerance float64) {
	t.Helper()
	if math.Abs(have-want) > tolerance*math.Abs(want) {
		t.Errorf("%s: have %v, want %v", what, have, want)
	}
}

func threadOf(t *testing.T, typed string) part.Thread {
	t.Helper()
	thread, err := part.ReadThread(typed)
	if err != nil {
		t.Fatal(err)
	}
	return thread
}

// A textbook on bolted joints: an M10 x 1.5 bolt that takes 69,600 N needs 21.6 mm in
// aluminum of 130 MPa shear strength, with diameters of 9.968 and 9.206 mm; its tensile
// area is 58 mm².
func TestPublishedThreadEngagement(t *testing.T) {
	near(t, "engagement", 69600/(130e6*stripped(1.5e-3, 9.968e-3, 9.206e-3)), 21.6e-3, 3e-3)
	near(t, "tensile area", tensileArea(threadOf(t, "M10x1.5")), 58e-6, 1e-3)
}

// Limits of size as printed: M10 x 1.5 6H in that textbook; 1/4-20 from the tolerances
// 0.0037 and 0.0049 in of the pitch diameters, the allowance of 0.3 of the first and
// 0.0081 in of the major diameter, in tables of ASME B1.1.
func TestLimitsOfThreads(t *testing.T) {
	_, pitch := limits(threadOf(t, "M10x1.5"))
	near(t, "M10 pitch diameter", pitch, 9.206e-3, 6e-4)
	major, pitch := limits(threadOf(t, "1/4-20 UNC"))
	near(t, "1/4-20 major diameter", units.Inch.FromSI(major), 0.2500-0.0011-0.0081, 4e-4)
	near(t, "1/4-20 pitch diameter", units.Inch.FromSI(pitch), 0.2175+0.0049, 4e-4)
}

// The lines agree with the areas and with each other.
func TestThreadLines(t *testing.T) {
	r := swapOf(t, "thread=M10x1.5|engagement=15 mm|bolt=1200 MPa", "i1-sand", "a1-sand")
	depth, strip, bolt := line(t, r, "thread.engagement"), line(t, r, "thread.strip"), line(t, r, "thread.bolt")
	near(t, "same strength", depth.Ratio.Mid, bolt.Ratio.Mid, 1e-12)
	near(t, "load", strip.Ratio.Mid, 1/depth.Ratio.Mid, 1e-12)
	load := tensileArea(threadOf(t, "M10x1.5")) * 1200e6
	holds := strip.Value.Unit.ToSI(strip.Value.Mid) / 0.015
	near(t, "engagement", bolt.Value.Unit.ToSI(bolt.Value.Mid), load/holds, 1e-9)
	if text := strings.Join(bolt.Notes, "; "); !strings.Contains(text, "diameters of the thread") || !strings.Contains(text, "may strip before the bolt breaks") {
		t.Errorf("notes %q", text)
	}
}

// More thread, more diameter and a stronger metal hold more, and the least limits of
// size hold less than the basic sizes.
func TestThreadIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(3e-3, 0.1).Draw(t, "d")
		thread := part.Thread{Major: d, Pitch: d * rapid.Float64Range(0.06, 0.2).Draw(t, "p"), Metric: rapid.Bool().Draw(t, "metric")}
		wider := thread
		wider.Major *= rapid.Float64Range(1.05, 3).Draw(t, "more")
		if shearArea(wider) <= shearArea(thread) || tensileArea(wider) <= tensileArea(thread) {
			t.Fatalf("%v holds no more than %v", wider, thread)
		}
		major, pitch := limits(thread)
		basic := thread.Major - 0.6495*thread.Pitch
		if major >= thread.Major || pitch <= basic || shearArea(thread) >= stripped(thread.Pitch, thread.Major, basic) || shearArea(thread) <= 0 {
			t.Fatalf("limits %v and %v of %v", major, pitch, thread)
		}
	})
}

// 9,000 lbf under a head of 3/4 in on a hole of 17/32 in: 9000/(π/4·(0.75² − 0.53125²)).
func TestBearingUnderABoltHead(t *testing.T) {
	const given = "clamp=9000 lbf|head=3/4 in|hole=17/32 in"
	r := swapOf(t, given, "i1-sand", "a1-sand")
	near(t, "pressure", line(t, r, "bolt.bearing").Value.Mid, 9/(math.Pi/4*(0.75*0.75-0.53125*0.53125)), 1e-9)
	m := line(t, r, "bolt.margin.minimum")
	stressed := line(t, swapOf(t, given+"|stress=40.88 ksi", "a1-sand", "a1-sand"), "margin.minimum")
	near(t, "margin", m.Value.Mid, stressed.Value.Mid, 1e-3)
	wide := line(t, swapOf(t, "clamp=8000..10000 lbf|head=0.7..0.8 in|hole=17/32 in", "i1-sand", "a1-sand"), "bolt.bearing").Value
	rapid.Check(t, func(t *rapid.T) {
		f, d := rapid.Float64Range(8, 10).Draw(t, "f"), rapid.Float64Range(0.7, 0.8).Draw(t, "d")
		if p := f / (math.Pi / 4 * (d*d - 0.53125*0.53125)); p < wide.Lo*(1-1e-9) || p > wide.Hi*(1+1e-9) {
			t.Fatalf("%v is outside %v..%v", p, wide.Lo, wide.Hi)
		}
	})
}

func TestThreadsAndBoltsWaitAndRefuse(t *testing.T) {
	for given, want := range map[string]string{
		"thread=1/2-13 UNC|thread.engagement": "needs a thread engagement", "engagement=15 mm|thread.strip": "needs a thread",
		"thread=1/2-13|thread.bolt": "needs a bolt strength", "clamp=9000 lbf|bolt.bearing": "needs a head or washer diameter",
		"head=20 mm|bolt.bearing": "needs a clamp load", "clamp=9000 lbf|head=20 mm|bolt.bearing": "needs a bolt hole",
	} {
		at := strings.LastIndex(given, "|")
		if l := swapOf(t, given[:at], "i1-sand", "a1-sand").Line(given[at+1:]); l == nil || l.Need != want {
			t.Errorf("%s: %+v, want %q", given, l, want)
		}
	}
	r := swapOf(t, "clamp=9000 lbf|head=15 mm|hole=15 mm", "i1-sand", "a1-sand")
	if l := r.Line("bolt.bearing"); l == nil || !strings.Contains(l.Reason, "wider than the hole") || r.Line("bolt.margin.minimum") != nil {
		t.Errorf("%+v", l)
	}
	r = swapOf(t, "mass=1 lb", "i1-sand", "a1-sand")
	for _, id := range []string{"thread.engagement", "thread.strip", "thread.bolt", "bolt.bearing", "bolt.margin.minimum"} {
		if r.Line(id) != nil {
			t.Errorf("%s without a thread or a bolt", id)
		}
	}
}

// Tensile stress areas by the tables of ASME B1.1 and ISO 898-1 (remembered): 1/2-13
// 0.1419 in², M12 84.3 mm².
func TestTensileArea(t *testing.T) {
	for typed, want := range map[string]float64{"1/2-13 UNC": 0.1419 * 645.16e-6, "M12x1.75": 84.3e-6} {
		near(t, typed, tensileArea(threadOf(t, typed)), want, 5e-4)
	}
}
