package swap

import (
	"math"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/compare"

	"pgregory.net/rapid"
)

// The two metals move by the interference: the bore opens and the shaft closes
// under the contact pressure, by the displacements of a thick ring.
func TestContactPressureClosesTheInterference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d := draw("d", 1e-3, 1)
		outside, hole, delta := d*draw("outside", 1.05, 10), d*draw("hole", 0, 0.95), d*draw("delta", 1e-5, 1e-2)
		e1, n1, e2, n2 := draw("E hub", 1e10, 3e11), draw("ν hub", 0.2, 0.4), draw("E shaft", 1e10, 3e11), draw("ν shaft", 0.2, 0.4)
		p := lame(delta, d, outside, hole, e1, n1, e2, n2)
		// The hoop strain at the contact is (σ hoop − ν·σ radial)/E, radial −p.
		opens := d / e1 * (p*(outside*outside+d*d)/(outside*outside-d*d) + n1*p)
		closes := d / e2 * (p*(d*d+hole*hole)/(d*d-hole*hole) - n2*p)
		if math.Abs(opens+closes-delta) > 1e-9*delta {
			t.Fatalf("opens %v, closes %v, interference %v", opens, closes, delta)
		}
		more := draw("more", 1.001, 1.05)
		for name, up := range map[string]float64{
			"interference": lame(delta*more, d, outside, hole, e1, n1, e2, n2), "hub": lame(delta, d, outside*more, hole, e1, n1, e2, n2),
			"modulus of the hub": lame(delta, d, outside, hole, e1*more, n1, e2, n2), "modulus of the shaft": lame(delta, d, outside, hole, e1, n1, e2*more, n2),
		} {
			if up <= p {
				t.Fatalf("not more with %s: %v, %v", name, p, up)
			}
		}
		if hole > 0.01*d && lame(delta, d, outside, hole*more, e1, n1, e2, n2) >= p {
			t.Fatal("a larger hole in the shaft does not lower the pressure")
		}
	})
}

func pressed(t *testing.T, more string) *Result {
	t.Helper()
	c := data.Catalog()
	p := partOf(t, c, "mate=1045-hot-rolled-wrought|fit=1.5 in|hub=3 in|"+more)
	return worked(t, c, p, "gray-30", "a356-t6-pm")
}

// Aluminum around a steel shaft lets go as it warms and grips harder in the cold;
// as a bushing in steel it is the other way round.
func TestPressFitOverTemperature(t *testing.T) {
	const range_ = "service=-40..212 F|engaged=2 in|friction=0.12|"
	for role, rises := range map[string]bool{"bore": false, "shaft": true} {
		r := pressed(t, range_+"interference=0.002 in|role="+role)
		for _, id := range []string{"press.pressure", "press.torque"} {
			room, hot, cold := line(t, r, id).Value.Mid, line(t, r, id+".hot").Value.Mid, line(t, r, id+".cold").Value.Mid
			if (hot > room) != rises || (cold < room) != rises {
				t.Errorf("%s as %s: %v at room, %v hot, %v cold", id, role, room, hot, cold)
			}
		}
		if h := line(t, r, "press.hoop").Value.Mid; (h < 0) != (role == "shaft") {
			t.Errorf("hoop stress as %s: %v", role, h)
		}
	}
	r := pressed(t, range_+"interference=0.0005 in")
	if l := line(t, r, "press.torque.hot"); l.Value.Hi != 0 || !strings.Contains(strings.Join(l.Notes, ";"), "loose by 0.0") {
		t.Errorf("a fit that lets go holds %v, %q", l.Value, l.Notes)
	}
}

// The margin is that of the worst temperature, by the largest difference of
// principal stresses, hoop stress and pressure added, where the metal yields.
func TestMarginOfPressFit(t *testing.T) {
	r := pressed(t, "interference=0.002 in|service=-40..70 F")
	l := line(t, r, "press.margin.minimum")
	worst := line(t, r, "press.hoop.cold").Value.Mid + line(t, r, "press.pressure.cold").Value.Mid
	var yield float64
	for _, u := range l.Figures {
		if u.Symbol == "S₂" {
			yield = ofFigure(u.Figure).in(line(t, r, "press.hoop").Value.Unit).Mid
		}
	}
	if yield == 0 || math.Abs(l.Value.Mid-yield/worst) > 1e-9 {
		t.Errorf("have %v, want %v/%v", l.Value.Mid, yield, worst)
	}
	if l := pressed(t, "interference=0.002 in|role=shaft").Line("press.margin.minimum"); l.Base != nil {
		t.Errorf("gray iron pressed together has the margin %v", l.Base)
	}
}

func TestPressFitWaitsAndRefuses(t *testing.T) {
	for given, want := range map[string]string{
		"interference=0.002 in|mate=1045-hot-rolled-wrought":            "needs a fit diameter",
		"interference=0.002 in|fit=1.5 in":                              "needs a mating material",
		"interference=0.002 in|fit=1.5 in|mate=1045-hot-rolled-wrought": "needs a hub diameter",
	} {
		c := data.Catalog()
		if l := worked(t, c, partOf(t, c, given), "gray-30", "a356-t6-pm").Line("press.pressure"); l == nil || l.Need != want {
			t.Errorf("%s: %+v, want %q", given, l, want)
		}
	}
	for more, want := range map[string]string{
		"interference=0.2 in":                 "no elastic fit",
		"interference=0.002 in|hub=1.5 in":    "above the fit diameter",
		"interference=0.002 in|inside=1.5 in": "below the fit diameter",
		"interference=0.002 in|fit=1..2 in":   "one fit diameter",
	} {
		if l := pressed(t, more).Line("press.pressure"); l == nil || !strings.Contains(l.Reason, want) {
			t.Errorf("%s: %+v, want %q", more, l, want)
		}
	}
	if l := pressed(t, "engaged=2 in").Line("press.pressure"); l != nil {
		t.Errorf("a fit without interference has the line %+v", l)
	}
}

// Whatever interference, moduli and Poisson's ratios really are, the contact
// pressure lies within the interval of the line.
func TestPressFitIntervalHoldsEveryPoint(t *testing.T) {
	c := data.Catalog()
	p := partOf(t, c, "mate=1045-hot-rolled-wrought|fit=1.5 in|hub=3 in|interference=0.001..0.003 in")
	rapid.Check(t, func(t *rapid.T) {
		pin := anyMaterial(t, c, "pin")
		l := workOn(t, c, compare.NewBench(), p, pin, pin).Line("press.pressure")
		if l.Value == nil {
			return
		}
		x := map[string]float64{}
		for _, u := range l.Figures {
			lo, _, hi := u.Figure.SI()
			x[u.Symbol] = rapid.Float64Range(lo, hi).Draw(t, u.Symbol)
		}
		delta := rapid.Float64Range(0.001, 0.003).Draw(t, "delta") * 0.0254
		have := lame(delta, 1.5*0.0254, 3*0.0254, 0, x["E₂"], x["ν₂"], x["Eₘ"], x["νₘ"])
		if lo, hi := l.Value.Unit.ToSI(l.Value.Lo), l.Value.Unit.ToSI(l.Value.Hi); have < lo*(1-1e-9) || have > hi*(1+1e-9) {
			t.Fatalf("%v is outside %v..%v", have, lo, hi)
		}
	})
}
