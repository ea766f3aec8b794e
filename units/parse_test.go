package units_test

import (
	"errors"
	"testing"

	"alongside/units"
)

// wantError fails unless err is an *units.Error that says what was expected and
// whose offset lies in its input.
func wantError(t *testing.T, err error, what string) *units.Error {
	t.Helper()
	var e *units.Error
	if !errors.As(err, &e) {
		t.Errorf("%s: have the error %v, want an *units.Error", what, err)
		return &units.Error{}
	}
	if e.Expected == "" || e.Offset < 0 || e.Offset > len(e.Input) {
		t.Errorf("%s: have an error without Expected or with an offset outside: %#v", what, e)
	}
	return e
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		have   string
		lo, hi float64
		place  int8
		unit   units.Unit
		qual   units.Qualifier
	}{
		// one value
		{"37 ksi", 37, 37, 0, units.KSI, units.Exact},
		{"37ksi", 37, 37, 0, units.KSI, units.Exact},
		{"  37\u00a0ksi ", 37, 37, 0, units.KSI, units.Exact},
		{"\ufeff37\u202fksi\u200b", 37, 37, 0, units.KSI, units.Exact},
		{"37 ksi.", 37, 37, 0, units.KSI, units.Exact},
		{"255MPa", 255, 255, 0, units.MPa, units.Exact},
		{"0.097 lb/in3", .097, .097, -3, units.LbPerIn3, units.Exact},
		{"0.097 lb/in³", .097, .097, -3, units.LbPerIn3, units.Exact},
		{"12.0 Mpsi", 12, 12, -1, units.Mpsi, units.Exact},
		{".5 in", .5, .5, -1, units.Inch, units.Exact},
		{"5. in", 5, 5, 0, units.Inch, units.Exact},
		{"-40 °F", -40, -40, 0, units.DegF, units.Exact},
		{"−40 °C", -40, -40, 0, units.DegC, units.Exact},
		{"–40 °C", -40, -40, 0, units.DegC, units.Exact},
		{"+5 °C", 5, 5, 0, units.DegC, units.Exact},
		{"-0 °C", 0, 0, 0, units.DegC, units.Exact},
		{"39% IACS", 39, 39, 0, units.IACS, units.Exact},
		{"0.36 cal/(cm·s·°C)", .36, .36, -2, units.CalPerCMSC, units.Exact},
		{"0.36 CGS", .36, .36, -2, units.CalPerCMSC, units.Exact},
		{"0.33", .33, .33, -2, units.One, units.Exact},
		{"1.85 /lb", 1.85, 1.85, -2, units.PerLb, units.Exact},
		{"5 min", 5, 5, 0, units.Minute, units.Exact},

		// digits: zeros that end a whole number of four digits or more do not count
		{"20,000 psi", 20000, 20000, 3, units.PSI, units.Exact},
		{"20\u202f000 psi", 20000, 20000, 3, units.PSI, units.Exact},
		{"1,234,567 psi", 1234567, 1234567, 0, units.PSI, units.Exact},
		{"12,345.6 psi", 12345.6, 12345.6, -1, units.PSI, units.Exact},
		{"30000 psi", 30000, 30000, 3, units.PSI, units.Exact},
		{"10600 ksi", 10600, 10600, 2, units.KSI, units.Exact},
		{"1000 psi", 1000, 1000, 2, units.PSI, units.Exact},
		{"1010 psi", 1010, 1010, 1, units.PSI, units.Exact},
		{"100000 psi", 100000, 100000, 3, units.PSI, units.Exact}, // a strength is known to the ksi
		{"1000 MPa", 1000, 1000, 0, units.MPa, units.Exact},       // and to the MPa
		{"71000 MPa", 71000, 71000, 3, units.MPa, units.Exact},    // a modulus is not
		{"100 ksi", 100, 100, 0, units.KSI, units.Exact},
		{"1000. psi", 1000, 1000, 0, units.PSI, units.Exact},
		{"1000 °F", 1000, 1000, 0, units.DegF, units.Exact}, // but those of a temperature do
		{"0 ksi", 0, 0, 0, units.KSI, units.Exact},

		// powers of ten
		{"11.9e-6 /°F", 11.9, 11.9, -1, units.E6PerF, units.Exact},
		{"11.9E-6/F", 11.9, 11.9, -1, units.E6PerF, units.Exact},
		{"11.9 × 10⁻⁶ in/in/°F", 11.9, 11.9, -1, units.E6PerF, units.Exact},
		{"21.4 ×10⁻⁶/K", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"21.4x10^-6 /°C", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"21.4 x 10-6 / K", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"21.4 *10**-6/K", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"21.4 10⁻⁶/K", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"21.4 ppm/K", 21.4, 21.4, -1, units.E6PerK, units.Exact},
		{"1.19e-5 /°F", 1.19e-5, 1.19e-5, -7, units.PerF, units.Exact},
		{"10.3e6 psi", 10.3, 10.3, -1, units.Mpsi, units.Exact},
		{"10.3 × 10⁶ psi", 10.3, 10.3, -1, units.Mpsi, units.Exact},
		{"4.3 1e-7 ohm-m", 4.3, 4.3, -1, units.E7OhmM, units.Exact},
		{"3.1 1e7 N/m^1.5", 3.1, 3.1, -1, units.E7NPerM15, units.Exact},
		{"5e8", 5e8, 5e8, 8, units.One, units.Exact},
		{"1.20e3 mm", 1200, 1200, 1, units.MM, units.Exact},

		// fractions
		{"1 1/8 in", 1.125, 1.125, -3, units.Inch, units.Exact},
		{"1-1/8 in", 1.125, 1.125, -3, units.Inch, units.Exact},
		{"1⅛ in", 1.125, 1.125, -3, units.Inch, units.Exact},
		{"1 ½ in", 1.5, 1.5, -1, units.Inch, units.Exact},
		{"½\"", .5, .5, -1, units.Inch, units.Exact},
		{"3/8\"", .375, .375, -3, units.Inch, units.Exact},
		{"3⁄8″", .375, .375, -3, units.Inch, units.Exact},
		{"1/64 in", 1. / 64, 1. / 64, -6, units.Inch, units.Exact},
		{"1/3 in", 1. / 3, 1. / 3, -3, units.Inch, units.Exact},
		{"11/12 ft", 11. / 12, 11. / 12, -3, units.Foot, units.Exact},
		{"5/32 in/ft", .15625, .15625, -5, units.InPerFt, units.Exact},
		{"-1 1/2 in", -1.5, -1.5, -1, units.Inch, units.Exact},

		// ranges
		{"70-100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70–100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70 — 100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70 to 100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70..100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70...100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70…100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"70~100 HB", 70, 100, 0, units.HBNumber, units.Exact},
		{"-40..250 F", -40, 250, 0, units.DegF, units.Exact},
		{"-40--20 F", -40, -20, 0, units.DegF, units.Exact},
		{"-40 to -20 °C", -40, -20, 0, units.DegC, units.Exact},
		{"37 ksi to 40 ksi", 37, 40, 0, units.KSI, units.Exact},
		{"68 °F – 212 °F", 68, 212, 0, units.DegF, units.Exact},
		{"68F-212F", 68, 212, 0, units.DegF, units.Exact},
		{"5%-10%", 5, 10, 0, units.Pct, units.Exact},
		{"3/8-1/2 in", .375, .5, -3, units.Inch, units.Exact},
		{"0-1/8 in", 0, .125, -3, units.Inch, units.Exact},
		{"10.5–12 ksi", 10.5, 12, -1, units.KSI, units.Exact},
		{"20,000–25,000 psi", 20000, 25000, 3, units.PSI, units.Exact},
		{"11.9–12.1 ×10⁻⁶/°F", 11.9, 12.1, -1, units.E6PerF, units.Exact},
		{"1e-7–0.1000001 ×10⁻⁶/°F", 1e-7, 0.1000001, -7, units.E6PerF, units.Exact},
		{"1e6–2 ×10⁷ Pa", 1e6, 2e7, 6, units.Pa, units.Exact},
		{"11.9e-6 to 12.1e-6 /°F", 11.9, 12.1, -1, units.E6PerF, units.Exact},
		{"12.4 ± 0.2 Mpsi", 12.2, 12.6, -1, units.Mpsi, units.Exact},
		{"5 +/- 1 %", 4, 6, 0, units.Pct, units.Exact},

		// limits and approximations
		{">= 30 ksi", 30, 30, 0, units.KSI, units.AtLeast},
		{"≥30 ksi", 30, 30, 0, units.KSI, units.AtLeast},
		{"min 30 ksi", 30, 30, 0, units.KSI, units.AtLeast},
		{"30 ksi min", 30, 30, 0, units.KSI, units.AtLeast},
		{"30 ksi Min.", 30, 30, 0, units.KSI, units.AtLeast},
		{"30 ksi (min)", 30, 30, 0, units.KSI, units.AtLeast},
		{"at least 30 ksi", 30, 30, 0, units.KSI, units.AtLeast},
		{"up to 100 ksi", 100, 100, 0, units.KSI, units.AtMost},
		{"<= 100 ksi", 100, 100, 0, units.KSI, units.AtMost},
		{"0.20 % max", .2, .2, -2, units.Pct, units.AtMost},
		{"> 5 %", 5, 5, 0, units.Pct, units.MoreThan},
		{"< 5 %", 5, 5, 0, units.Pct, units.LessThan},
		{"approx 5 %", 5, 5, 0, units.Pct, units.Approx},
		{"about 70–100 HB", 70, 100, 0, units.HBNumber, units.Approx},
		{"~5%", 5, 5, 0, units.Pct, units.Approx},

		// as callers write them
		{"1 ft 6 in", 18, 18, 0, units.Inch, units.Exact},
		{"1' 6\"", 18, 18, 0, units.Inch, units.Exact},
		{"1′-6½″", 18.5, 18.5, -1, units.Inch, units.Exact},
		{"5'6\"", 66, 66, 0, units.Inch, units.Exact},
		{"≥ 2 ft 1 1/8 in", 25.125, 25.125, -3, units.Inch, units.AtLeast},
		{"3.5''", 3.5, 3.5, -1, units.Inch, units.Exact},
		{"4 lb 3 oz", 67, 67, 0, units.Ounce, units.Exact},
		{"4.2#", 4.2, 4.2, -1, units.Pound, units.Exact},
		{"450 pcf", 450, 450, 0, units.LbPerFt3, units.Exact},
		{"0.097 pci", .097, .097, -3, units.LbPerIn3, units.Exact},
		{"0.56 oz/in3", .56, .56, -2, units.OzPerIn3, units.Exact},
		{"71 GN/m2", 71, 71, 0, units.GPa, units.Exact},
		{"25.5 daN/mm2", 25.5, 25.5, -1, units.DaNPerMM2, units.Exact},
		{"1.51 W/cm-K", 1.51, 1.51, -2, units.WPerCMK, units.Exact},
		{"5 ‰", 5, 5, 0, units.PerMille, units.Exact},
		{"60 Rb", 60, 60, 0, units.HRBNumber, units.Exact},
		{"32 Rc", 32, 32, 0, units.HRCNumber, units.Exact},
		{"25 nm", 25, 25, 0, units.Nanometer, units.Exact},
		{"25 Nm", 25, 25, 0, units.Joule, units.Exact},
		{"25 N·m", 25, 25, 0, units.Joule, units.Exact},
		{"2 short tons", 2, 2, 0, units.Ton, units.Exact},
		{"2 long tons", 2, 2, 0, units.LongTon, units.Exact},
		{"2 metric tons", 2, 2, 0, units.Tonne, units.Exact},
		{"0.39 IACS", 39, 39, 0, units.IACS, units.Exact}, // a fraction, of 1.2 at most
		{"0.30–0.39 iacs", 30, 39, 0, units.IACS, units.Exact},
		{"37k psi", 37, 37, 0, units.KSI, units.Exact},
		{"±0.015 in", -.015, .015, -3, units.Inch, units.Exact},
		{"+/- 1/64 in", -1. / 64, 1. / 64, -6, units.Inch, units.Exact},
		{"±5 °F", -5, 5, 0, units.DeltaF, units.Exact},

		// spaces between thousands, before a unit
		{"10 300 ksi", 10300, 10300, 2, units.KSI, units.Exact},
		{"1 234 567.5 psi", 1234567.5, 1234567.5, -1, units.PSI, units.Exact},
		{"10 300 psi to 10 500 psi", 10300, 10500, 2, units.PSI, units.Exact},
		{"1 125/128 in", 1 + 125./128, 1 + 125./128, -3, units.Inch, units.Exact},
		{"85 500 kgf/10 mm", 85, 85, 0, units.HB500Number, units.Exact},

		// two values that agree
		{"37 ksi (255 MPa)", 37, 37, 0, units.KSI, units.Exact},
		{"30 ksi [205 MPa] min", 30, 30, 0, units.KSI, units.AtLeast},
		{"70–95 ksi (483–655 MPa)", 70, 95, 0, units.KSI, units.Exact},
		{"39 %IACS (4.42 µΩ·cm)", 39, 39, 0, units.IACS, units.Exact},
		{"68 °F (20 °C)", 68, 68, 0, units.DegF, units.Exact},

		// hardness scales stay apart
		{"85 HB 500/10", 85, 85, 0, units.HB500Number, units.Exact},
		{"85 HB500", 85, 85, 0, units.HB500Number, units.Exact},
		{"85 HBW 10/500", 85, 85, 0, units.HB500Number, units.Exact},
		{"85 HB (500 kgf/10 mm)", 85, 85, 0, units.HB500Number, units.Exact},
		{"85 BHN 500 kg", 85, 85, 0, units.HB500Number, units.Exact},
		{"HB 500/10 70-100", 70, 100, 0, units.HB500Number, units.Exact},
		{"190 HBW 10/3000/15", 190, 190, 0, units.HB3000Number, units.Exact},
		{"100 HB 250/5", 100, 100, 0, units.HB250x5Number, units.Exact},
		{"100 HBW 2.5/62.5", 100, 100, 0, units.HB62x2Number, units.Exact},
		{"HB 500", 500, 500, 0, units.HBNumber, units.Exact},
		{"HB 500 min", 500, 500, 0, units.HBNumber, units.AtLeast},
		{"HB 500 85", 85, 85, 0, units.HB500Number, units.Exact},
		{"HRC 32", 32, 32, 0, units.HRCNumber, units.Exact},
		{"45 HRB", 45, 45, 0, units.HRBNumber, units.Exact},
		{"Rockwell E 90", 90, 90, 0, units.HRENumber, units.Exact},
		{"110 HV10", 110, 110, 0, units.HVNumber, units.Exact},
		{"120 HK", 120, 120, 0, units.HKNumber, units.Exact},
	} {
		q, err := units.Parse(c.have)
		want := units.Quantity{Lo: c.lo, Hi: c.hi, Place: c.place, Qual: c.qual, Unit: c.unit}
		if err != nil || q != want {
			t.Errorf("%q:\nhave: %#v (%v)\nwant: %#v", c.have, q, err, want)
		}
	}
}

func TestParseAs(t *testing.T) {
	for _, c := range []struct {
		have   string
		d      units.Dimension
		assume units.Unit
		lo     float64
		unit   units.Unit
	}{
		{"37", units.Stress, units.KSI, 37, units.KSI},
		{"255 MPa", units.Stress, units.KSI, 255, units.MPa},
		{"100 °F", units.TemperatureDifference, units.NoUnit, 100, units.DeltaF},
		{"100 °F", units.Temperature, units.NoUnit, 100, units.DegF},
		{"100 Δ°F", units.NoDimension, units.NoUnit, 100, units.DeltaF},
		{"100 °F diff", units.NoDimension, units.NoUnit, 100, units.DeltaF},
		{"20 C°", units.NoDimension, units.NoUnit, 20, units.DeltaC},
		{"2000 lb", units.Force, units.NoUnit, 2000, units.PoundForce},
		{"2000 lb", units.Mass, units.NoUnit, 2000, units.Pound},
		{"1.3 %", units.Strain, units.NoUnit, 1.3, units.PctStrain},
		{"1.3 %", units.Percent, units.NoUnit, 1.3, units.Pct},
		{"13 ‰", units.Strain, units.NoUnit, 13, units.PerMilleOf},
		{"±5 °F", units.TemperatureDifference, units.NoUnit, -5, units.DeltaF},
		{"1 ft 6 in", units.Length, units.NoUnit, 18, units.Inch},
		{"-460 °F", units.Temperature, units.NoUnit, -460, units.DegF}, // absolute zero, to the degree
		{"0.23 CGS", units.SpecificHeat, units.NoUnit, .23, units.CalPerGC},
		{"0.33", units.Ratio, units.NoUnit, .33, units.One},
		{"2", units.Rating, units.NoUnit, 2, units.RatingNumber},
		{"5 min", units.Time, units.NoUnit, 5, units.Minute},
		{"5 min", units.Percent, units.Pct, 5, units.Pct}, // at least 5 %
		{"HRB 45", units.HRB, units.NoUnit, 45, units.HRBNumber},
		{"85", units.HB500, units.HB500Number, 85, units.HB500Number},
	} {
		q, err := units.ParseAs(c.have, c.d, c.assume)
		if err != nil || q.Lo != c.lo || q.Unit != c.unit {
			t.Errorf("%q as %v: have %v (%v), want %v %v", c.have, c.d, q, err, c.lo, c.unit)
		}
	}
}

// A limit typed without a unit keeps its sense.
func TestMinIsALimitWhereNoTimeIsMeant(t *testing.T) {
	q, err := units.ParseAs("5 min", units.Percent, units.Pct)
	if err != nil || q.Qual != units.AtLeast {
		t.Errorf("have %v (%v), want ≥ 5 %%", q, err)
	}
}
