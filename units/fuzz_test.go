package units_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"alongside/units"
)

// checkFailure demands that an error be an *units.Error that can be shown.
func checkFailure(t *testing.T, err error) {
	var e *units.Error
	if !errors.As(err, &e) {
		t.Fatalf("the error %v is no *units.Error", err)
	}
	msg := e.Error()
	if e.Expected == "" || e.Offset < 0 || e.Offset > len(e.Input) {
		t.Fatalf("a poor error: %#v", e)
	}
	if !utf8.ValidString(msg) || strings.ContainsFunc(msg, func(r rune) bool { return r < ' ' || r == 0x7f }) {
		t.Fatalf("a message that is not fit to show: %q", msg)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"37 ksi", "255MPa", "0.097 lb/in³", "39% IACS", "0.36 cal/(cm·s·°C)", "11.9e-6 /°F", "1 1/8 in", "½\"", "20,000 psi", "0,097 lb/in3",
		"70–100 HB 500/10", "-40..250 F", ">= 30 ksi", "30 ksi (min)", "about 5 %", "12.4 ± 0.2 Mpsi", "68 °F – 212 °F", "11.9–12.1 ×10⁻⁶/°F",
		"HRB 45", "HB 500/10 85", "1.72e-8 ohm-m", "1e99 psi", "0/0", "((((", "-", "5 min", "37 255", "\xff\xfe", "1e-300 in", "0.0 °F", "1e30 m", "0e-9 m",
		"1 ft 6 in", "4 lb 3 oz", "1' 6\"", "10 300 ksi", "37 ksi (255 MPa)", "39 %IACS [4.42 µΩ·cm]", "±0.015 in", "0.39 IACS", "37k psi", "5 ‰", "-460 °F", "-460..46 F", "-0.1 K", "1½1e-6/F", "10⁻⁶5",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		q, err := units.Parse(s)
		if err != nil {
			checkFailure(t, err)
			return
		}
		checkRoundTrip(t, q)
		for _, u := range units.UnitsOf(q.Unit.Dimension()) {
			r, err := q.In(u)
			if err != nil {
				checkFailure(t, err)
				continue
			}
			if math.Abs(r.Lo) < 1e30 && math.Abs(r.Hi) < 1e30 { // what Parse takes
				checkRoundTrip(t, r)
			}
		}
	})
}

func FuzzParseUnit(f *testing.F) {
	for _, u := range allUnits() {
		f.Add(u.Symbol())
		f.Add(u.ASCII())
	}
	for _, s := range []string{"W m⁻¹ K⁻¹", "µin./in.-°F", "lb/cu in", "MPa·m^(1/2)", "10-6/K", "HBW 10/500/30", "ksi√(in)", "√√√", "^", "Δ", "(IT)", "cal(", "Btu(th", "\xc2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		u, err := units.ParseUnit(s)
		if err != nil {
			checkFailure(t, err)
			return
		}
		if u == units.NoUnit || u.Dimension() == units.NoDimension {
			t.Fatalf("%q is %v without an error", s, u)
		}
	})
}
