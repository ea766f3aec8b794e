package units_test

import (
	"math"
	"testing"

	"alongside/units"
)

// NIST SP 811 (2008) B.7.1 on published figures. A source is named where it
// prints the same pair of figures; "rule" rows follow from B.7.1 by hand.
func TestConversionShowsNoMoreDigits(t *testing.T) {
	for _, c := range []struct {
		have   string
		to     units.Unit
		want   string
		source string
	}{
		{"37 ksi", units.MPa, "255 MPa", "NADCA product specification standards, zinc; read"},
		{"41 ksi", units.MPa, "283 MPa", "NADCA product specification standards, zinc; read"},
		{"58 ksi", units.MPa, "400 MPa", "NADCA product specification standards, zinc; read"},
		{"85 ksi", units.MPa, "586 MPa", "ASTM B505, C95400; read"},
		{"26 ksi", units.MPa, "179 MPa", "ASTM B505, C95200; read"},
		{"30 ksi", units.MPa, "207 MPa", "ASM gray iron class 30 in a textbook; read"},
		{"1000 MPa", units.KSI, "145.0 ksi", "rule, all four digits of an EN grade being significant"},
		{"100 ksi", units.MPa, "689 MPa", "materials science textbook; read"},
		{"12.4 Mpsi", units.GPa, "85.5 GPa", "NADCA product specification standards, zinc; read"},
		{"12.0 Mpsi", units.GPa, "82.7 GPa", "NADCA product specification standards, zinc; read"},
		{"10.5 Mpsi", units.GPa, "72.4 GPa", "materials science textbook, table B.2; read"},
		{"24.5 Mpsi", units.GPa, "168.9 GPa", "rule (a materials science textbook prints 169)"},
		{"65.3 BTU/ft-h-F", units.WPerMK, "113.0 W/m·K", "NADCA product specification standards, zinc; read"},
		{"62.9 BTU/ft-h-F", units.WPerMK, "108.9 W/m·K", "NADCA product specification standards, zinc; read"},
		{"12.9 uin/in-F", units.MicromMK, "23.2 µm/m·K", "rule (23.22; NADCA prints 23.3)"},
		{"15.4 uin/in-F", units.MicromMK, "27.7 µm/m·K", "rule (27.72; NADCA prints 27.8)"},
		{"43 ft-lb", units.Joule, "58 J", "NADCA product specification standards, zinc; read"},
		{"0.269 lb/in3", units.GPerCM3, "7.45 g/cm³", "CDA, C95400; read"},
		{"0.276 lb/in3", units.GPerCM3, "7.64 g/cm³", "CDA, C95200; read"},
		{"718 °F", units.DegC, "381 °C", "NADCA product specification standards, zinc; read"},
		{"1913 °F", units.DegC, "1045 °C", "CDA, C95200; read"},

		{"0.097 lb/in3", units.GPerCM3, "2.68 g/cm³", "rule"},
		{"2.68 g/cm3", units.LbPerIn3, "0.0968 lb/in³", "rule"},
		{"30000 psi", units.MPa, "207 MPa", "rule"},
		{"20000 psi", units.MPa, "138 MPa", "rule"},
		{"10600 ksi", units.GPa, "73.1 GPa", "rule"},
		{"29000 ksi", units.GPa, "200 GPa", "rule"},
		{"11.9 µin/in·°F", units.MicromMK, "21.4 µm/m·K", "rule"},
		{"11.9e-6 /°F", units.MicromMK, "21.4 µm/m·K", "rule"},
		{"0.36 cal/cm-s-C", units.WPerMK, "151 W/m·K", "rule"},
		{"39 %IACS", units.MSPerM, "22.6 MS/m", "rule"},
		{"39 %IACS", units.MicroOhmCM, "4.4 µΩ·cm", "rule"},
		{"70–100 ksi", units.MPa, "483–689 MPa", "rule"},
		{"19 kgf/mm2", units.MPa, "186 MPa", "rule, on all digits: 1.86 begins smaller than 1.9, so one digit more"},
		{"17 ksi", units.MPa, "117 MPa", "the same"},
		{"18 ksi", units.MPa, "124 MPa", "the same"},
		{">= 30 ksi", units.MPa, "≥ 207 MPa", "rule"},
		{"14.5 ksi", units.MPa, "100 MPa", "rule: 99.97 to three digits is 100, not 100.0"},
		{"0 ksi", units.MPa, "0 MPa", "no digits to count"},

		// as callers write them
		{"25.5 daN/mm2", units.MPa, "255 MPa", "SI prefix"},
		{"1.51 W/cm-K", units.WPerMK, "151 W/m·K", "SI prefix"},
		{"0.39 IACS", units.MSPerM, "22.6 MS/m", "the same as 39 %IACS"},
		{"5 ‰", units.Pct, "0.5 %", "definition"},
		{"1 uin", units.Nanometer, "25.4 nm", "SP 811 B.8 microinch, exact"},
		{"±0.015 in", units.MM, "±0.381 mm", "SP 811 B.8 inch, exact"},
		{"1 ft 6 in", units.MM, "457 mm", "SP 811 B.8 inch, exact"},
		{"4 lb 3 oz", units.Kg, "1.90 kg", "SP 811 B.8 ounce"},
		{"-460 °F", units.Kelvin, "0 K", "absolute zero, to the degree"},

		// the ends of a reciprocal trade places, and so does a limit
		{"30–39 %IACS", units.MicroOhmCM, "4.4–5.7 µΩ·cm", "rule"},
		{">= 39 %IACS", units.MicroOhmCM, "≤ 4.4 µΩ·cm", "rule"},
		{"43 uOhm-cm max", units.IACS, "≥ 4.01 %IACS", "rule, on all digits"},
		{"4.3 uOhm-cm", units.NanoOhmM, "43 nΩ·m", "rule"},

		// temperatures keep their resolution
		{"68–212 °F", units.DegC, "20–100 °C", "SP 811 B.8 formula"},
		{"1000 °F", units.DegC, "538 °C", "SP 811 B.8 formula"},
		{"100.0 °C", units.DegF, "212.0 °F", "SP 811 B.8 formula"},
		{"100 Δ°F", units.DeltaC, "55.6 Δ°C", "rule: a difference follows B.7.1"},

		// sizes are stated, not measured: three digits at least
		{"1 in", units.MM, "25.4 mm", "SP 811 B.8 inch, exact"},
		{"1/8 in", units.MM, "3.18 mm", "3.175, the tie to the even digit"},
		{"3/8 in", units.MM, "9.52 mm", "9.525, the tie to the even digit"},
		{"1 1/8 in", units.MM, "28.58 mm", "28.575, the tie to the even digit"},
		{"5 lb", units.Kg, "2.27 kg", "SP 811 B.8 pound"},
	} {
		q, err := units.Parse(c.have)
		if err != nil {
			t.Error(err)
			continue
		}
		got, err := q.In(c.to)
		if err != nil || got.String() != c.want {
			t.Errorf("%s in %s: have %v (%v), want %s (%s)", c.have, c.to, got, err, c.want, c.source)
		}
	}
}

// Values that no figure has do not panic.
func TestInOfInfinity(t *testing.T) {
	q := units.Quantity{Lo: 30, Hi: math.Inf(1), Unit: units.KSI}
	if r, err := q.In(units.MPa); err != nil || r.String() != "207–∞ MPa" {
		t.Errorf("have %v (%v)", r, err)
	}
	q.Hi = math.NaN()
	if _, err := q.In(units.MPa); err != nil {
		t.Error(err)
	}
}

// The full value is kept inside, so that there and back is no loss.
func TestFullValueIsKept(t *testing.T) {
	q, err := units.Parse("37 ksi")
	if err != nil {
		t.Fatal(err)
	}
	mpa, err := q.In(units.MPa)
	if err != nil || math.Abs(mpa.Lo-255.10602) > 1e-5 { // 37 × 6.894757 (SP 811 B.8)
		t.Errorf("37 ksi: have %v MPa inside (%v), want 255.10602", mpa.Lo, err)
	}
}

// ASTM E29, rounding method: a tie goes to the even digit, in decimal digits.
func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v     float64
		place int8
		want  string
	}{
		{12.5, 0, "12"}, {13.5, 0, "14"}, {0.5, 0, "0"}, {1.5, 0, "2"}, {2.5, 0, "2"}, {0.51, 0, "1"},
		{2.675, -2, "2.68"}, {2.665, -2, "2.66"}, {28.575, -2, "28.58"}, {28.574999999999999, -2, "28.58"},
		{1.005, -2, "1.00"}, {1.015, -2, "1.02"}, {1.0051, -2, "1.01"}, {-2.5, 0, "-2"}, {-3.5, 0, "-4"},
		{250, 2, "200"}, {350, 2, "400"}, {251, 2, "300"}, {255106, 3, "255000"}, {49, 2, "0"}, {50, 2, "0"}, {51, 2, "100"},
		{9.96, -1, "10.0"}, {99.96, -1, "100.0"}, {999.5, 0, "1000"}, {0.0996, -3, "0.100"},
		{-0.4, 0, "0"}, {math.Copysign(0, -1), 0, "0"}, {-0.004, -2, "0.00"}, {0, -2, "0.00"}, {0, 3, "0"},
		{12, -1, "12.0"}, {0.097, -3, "0.097"}, {20000, 3, "20000"},
		{1.724e-8, -10, "1.72e-8"}, {1.2e-20, -20, "1e-20"}, {-1.26e15, 13, "-1.26e15"}, {1e-20, -3, "0.000"},
		{math.Inf(1), 0, "∞"}, {math.Inf(-1), 0, "-∞"}, {math.NaN(), -2, "not a number"},
		{1e300, 100, "1." + zeros(200) + "e300"},
	} {
		q := units.Quantity{Lo: c.v, Hi: c.v, Place: c.place}
		if got := q.Number(); got != c.want {
			t.Errorf("%v to 10^%d: have %s, want %s", c.v, c.place, got, c.want)
		}
	}
}

func zeros(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = '0'
	}
	return string(b)
}

func TestRangeNumber(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		place  int8
		want   string
	}{
		{70, 100, 0, "70–100"},
		{-40, 250, 0, "-40 to 250"},
		{-40, -20, 0, "-40 to -20"},
		{10.5, 12, -1, "10.5–12.0"},
		{2.681, 2.684, -2, "2.68"},
	} {
		if got := (units.Quantity{Lo: c.lo, Hi: c.hi, Place: c.place}).Number(); got != c.want {
			t.Errorf("%v to %v: have %q, want %q", c.lo, c.hi, got, c.want)
		}
	}
}

func TestInterval(t *testing.T) {
	for _, c := range []struct {
		have   string
		lo, hi float64
	}{
		{"37 ksi", 36.5, 37.5},
		{"0.097 lb/in3", .0965, .0975},
		{"12.0 Mpsi", 11.95, 12.05},
		{"30000 psi", 29500, 30500},
		{"70–100 HB", 70, 100},
		{">= 30 ksi", 30, math.Inf(1)},
		{"5 % max", math.Inf(-1), 5},
		{"about 5 %", 4.5, 5.5},
	} {
		q, err := units.Parse(c.have)
		if err != nil {
			t.Error(err)
			continue
		}
		if lo, hi := q.Interval(); !near(lo, c.lo, 1e-12) || !near(hi, c.hi, 1e-12) {
			t.Errorf("%s: have %v to %v, want %v to %v", c.have, lo, hi, c.lo, c.hi)
		}
	}
}

// near reports whether have is want within a relative tolerance; infinities
// have to be the same.
func near(have, want, tol float64) bool {
	return have == want || !math.IsInf(want, 0) && math.Abs(have-want) <= tol*math.Abs(want)
}
