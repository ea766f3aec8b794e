package swap

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// said is what the name of a ratio means, written down apart from the table.
var said = map[string]float64{"a hundredth": 0.01, "a twentieth": 0.05, "a tenth": 0.1, "a fifth": 0.2, "a quarter": 0.25, "a third": 1.0 / 3,
	"two fifths": 0.4, "half": 0.5, "three fifths": 0.6, "two thirds": 2.0 / 3, "three quarters": 0.75, "four fifths": 0.8, "nine tenths": 0.9,
	"the same": 1, "1.1 times": 1.1, "1¼ times": 1.25, "1½ times": 1.5, "1¾ times": 1.75, "twice": 2, "2½ times": 2.5, "3 times": 3, "4 times": 4,
	"5 times": 5, "7 times": 7, "10 times": 10, "20 times": 20, "50 times": 50, "100 times": 100}

// meant is the interval that a phrase stands for.
func meant(t interface{ Fatalf(string, ...any) }, phrase string) (lo, hi float64) {
	value := func(name string) float64 {
		v, ok := said[name]
		if !ok {
			t.Fatalf("%q has no meaning", phrase)
		}
		return v
	}
	for _, p := range []struct {
		words  string
		lo, hi float64
	}{{"about ", 0.98, 1.02}, {"a little over ", 1, 1.1}, {"a little under ", 0.9, 1}, {"less than ", 0, 1}, {"more than ", 1, math.Inf(1)}} {
		if name, ok := strings.CutPrefix(phrase, p.words); ok {
			return value(name) * p.lo, value(name) * p.hi
		}
	}
	if phrase == "anything" {
		return 0, math.Inf(1)
	}
	from, to, _ := strings.Cut(phrase, " to ")
	if _, ok := said[from]; !ok {
		from += " times" // said once, behind the second
	}
	return value(from), value(to)
}

// What is said holds what was worked out, up to the noise of the last bit.
func TestSpokenHoldsTheInterval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := math.Exp(rapid.Float64Range(-7, 7).Draw(t, "log lo"))
		hi := lo * math.Exp(rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 0.2), rapid.Float64Range(0, 5)).Draw(t, "log width"))
		from, to := meant(t, Spoken(lo, hi))
		if from > lo*(1+1e-12) || to < hi*(1-1e-12) {
			t.Fatalf("%g to %g is said as %q, %g to %g", lo, hi, Spoken(lo, hi), from, to)
		}
	})
}

func TestSpokenOf(t *testing.T) {
	for _, x := range []struct {
		lo, hi float64
		want   string
	}{{0.5, 0.5, "about half of today's"}, {2, 2.1, "a little over twice today's"}, {1, 1, "about the same as today's"}, {0.93, 0.995, "a little less than today's"}, {1.03, 1.05, "a little more than today's"}, {1.3, 1.7, "1¼ to 1¾ times today's"}, {300, 400, "more than 100 times today's"}, {0, 1, ""}} {
		if have := SpokenOf(x.lo, x.hi, "today's"); have != x.want {
			t.Errorf("%g to %g: %q, want %q", x.lo, x.hi, have, x.want)
		}
	}
}

func TestSpoken(t *testing.T) {
	for _, x := range []struct {
		lo, hi float64
		want   string
	}{
		{0.37, 0.374, "a little under two fifths"}, {0.34, 0.35, "a little over a third"}, {1.23, 1.57, "1.1 to 1¾ times"}, {0.52, 0.66, "half to two thirds"},
		{1, 1, "about the same"}, {3.27, 3.27, "a little over 3 times"}, {0.001, 0.002, "less than a hundredth"}, {300, 400, "more than 100 times"},
		{0, 1, ""}, {2, 1, ""}, {math.NaN(), 1, ""},
	} {
		if have := Spoken(x.lo, x.hi); have != x.want {
			t.Errorf("%g to %g: %q, want %q", x.lo, x.hi, have, x.want)
		}
	}
}
