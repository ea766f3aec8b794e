package units_test

import (
	"math"
	"strings"
	"testing"

	"alongside/units"
)

// The factors to SI as NIST SP 811 (2008), Appendix B.8 and B.9, prints them:
// seven digits, or exact. "read" marks a row read on a page that transcribes the
// table (see testdata/units/checks.csv), "memory" one that was remembered.
var sp811 = []struct {
	unit   units.Unit
	factor float64
	exact  bool
	source string
}{
	{units.PSI, 6.894757e+03, false, "SP 811 B.8 pound-force per square inch (psi); memory"},
	{units.KSI, 6.894757e+06, false, "SP 811 B.8 kip per square inch; read"},
	{units.Mpsi, 6.894757e+09, false, "SP 811 B.9 psi times 10⁶; memory"},
	{units.KgfPerMM2, 9.80665e+06, true, "SP 811 B.9 kilogram-force per square millimeter; read"},
	{units.KgfPerCM2, 9.80665e+04, true, "SP 811 B.9 kilogram-force per square centimeter; read"},
	{units.KgfPerM2, 9.80665e+00, true, "SP 811 B.9 kilogram-force per square meter; memory"},
	{units.Bar, 1.0e+05, true, "SP 811 B.8 bar; memory"},
	{units.PoundForce, 4.448222e+00, false, "SP 811 B.8 pound-force; memory"},
	{units.Kip, 4.448222e+03, false, "SP 811 B.8 kip; memory"},
	{units.KgForce, 9.80665e+00, true, "SP 811 B.8 kilogram-force; memory"},

	{units.LbPerIn3, 2.767990e+04, false, "SP 811 B.9 pound per cubic inch; read"},
	{units.LbPerFt3, 1.601846e+01, false, "SP 811 B.9 pound per cubic foot; memory"},
	{units.GPerCM3, 1.0e+03, true, "SP 811 B.9 gram per cubic centimeter; memory"},

	{units.CalPerCMSC, 4.184e+02, true, "SP 811 B.9 cal(th) per centimeter second degree Celsius; read"},
	{units.BtuPerHFtF, 1.730735e+00, false, "SP 811 B.9 Btu(IT) foot per hour square foot degree Fahrenheit; memory"},
	{units.BtuInPerHFt2F, 1.442279e-01, false, "SP 811 B.9 Btu(IT) inch per hour square foot degree Fahrenheit; memory"},
	{units.BtuThInPerHFt2F, 1.441314e-01, false, "SP 811 B.9 Btu(th) inch per hour square foot degree Fahrenheit; read"},
	{units.BtuInPerSFt2F, 5.192204e+02, false, "SP 811 B.9 Btu(IT) inch per second square foot degree Fahrenheit; memory"},
	{units.BtuThInPerSFt2F, 5.188732e+02, false, "SP 811 B.8 Btu(th) inch per second square foot degree Fahrenheit; read"},
	{units.BtuPerHFt2F, 5.678263e+00, false, "SP 811 B.8 Btu(IT) per hour square foot degree Fahrenheit; read"},
	{units.BtuPerHFt2, 3.154591e+00, false, "SP 811 B.9 Btu(IT) per square foot hour; memory"},

	{units.CalPerGC, 4.184e+03, true, "SP 811 B.9 cal(th) per gram degree Celsius; read"},
	{units.CalITPerGC, 4.1868e+03, true, "SP 811 B.9 cal(IT) per gram degree Celsius; read"},
	{units.BtuPerLbF, 4.1868e+03, true, "SP 811 B.9 Btu(IT) per pound degree Fahrenheit; memory"},
	{units.BtuPerLb, 2.326e+03, true, "SP 811 B.8 Btu(IT) per pound; read"},
	{units.CalPerG, 4.184e+03, true, "SP 811 B.8 cal(th) per gram; read"},

	{units.Btu, 1.055056e+03, false, "SP 811 B.8 Btu(IT); memory"},
	{units.BtuTh, 1.054350e+03, false, "SP 811 B.8 Btu(th); memory"},
	{units.Cal, 4.184e+00, true, "SP 811 B.8 cal(th); read"},
	{units.CalIT, 4.1868e+00, true, "SP 811 B.8 cal(IT); read"},
	{units.CalMean, 4.19002e+00, false, "SP 811 B.8 cal(mean); read"},
	{units.Cal15, 4.18580e+00, false, "SP 811 B.8 cal(15 °C); read"},
	{units.FootPound, 1.355818e+00, false, "SP 811 B.8 foot pound-force; memory"},
	{units.KWh, 3.6e+06, true, "SP 811 B.8 kilowatt hour; memory"},
	{units.Horsepower, 7.456999e+02, false, "SP 811 B.8 horsepower (550 ft·lbf/s); memory"},
	{units.BtuPerHour, 2.930711e-01, false, "SP 811 B.8 Btu(IT) per hour; memory"},

	{units.DeltaF, 5.555556e-01, false, "SP 811 B.8 degree Fahrenheit, interval; read"},
	{units.MicroinInF, 1.8e-06, true, "SP 811 B.8 reciprocal of the interval 5/9; memory"},

	{units.Inch, 2.54e-02, true, "SP 811 B.8 inch; memory"},
	{units.Foot, 3.048e-01, true, "SP 811 B.8 foot; memory"},
	{units.Mil, 2.54e-05, true, "SP 811 B.8 mil; memory"},
	{units.Microinch, 2.54e-08, true, "SP 811 B.8 microinch; memory"},
	{units.In2, 6.4516e-04, true, "SP 811 B.8 square inch; memory"},
	{units.Ft2, 9.290304e-02, true, "SP 811 B.8 square foot; memory"},
	{units.Cmil, 5.067075e-10, false, "SP 811 B.8 circular mil; read"},
	{units.In3, 1.638706e-05, false, "SP 811 B.8 cubic inch; memory"},
	{units.Ft3, 2.831685e-02, false, "SP 811 B.8 cubic foot; memory"},
	{units.Gallon, 3.785412e-03, false, "SP 811 B.8 gallon (U.S.); memory"},
	{units.Liter, 1.0e-03, true, "SP 811 B.8 liter; memory"},
	{units.Pound, 4.535924e-01, false, "SP 811 B.8 pound (avoirdupois); memory"},
	{units.Ounce, 2.834952e-02, false, "SP 811 B.8 ounce (avoirdupois); memory"},
	{units.Ton, 9.071847e+02, false, "SP 811 B.8 ton, short; memory"},
	{units.Tonne, 1.0e+03, true, "SP 811 B.8 tonne; memory"},
	{units.LongTon, 1.016047e+03, false, "SP 811 B.8 ton, long (2240 lb); memory"},
	{units.OzPerIn3, 1.729994e+03, false, "SP 811 B.8 ounce (avoirdupois) per cubic inch; memory"},
	{units.Nanometer, 1.0e-09, true, "SI prefix nano"},
	{units.DaNPerMM2, 1.0e+07, true, "SI prefix deca"},
	{units.WPerCMK, 1.0e+02, true, "100 cm in 1 m"},
	{units.PerMilleOf, 1.0e-03, true, "per thousand"},
	{units.Ft2PerH, 2.58064e-05, true, "SP 811 B.8 square foot per hour; memory"},
	{units.Day, 8.64e+04, true, "SP 811 B.8 day; memory"},
}

func TestFactorsOfSP811(t *testing.T) {
	for _, c := range sp811 {
		tol := 1e-15
		if !c.exact { // half a unit of the last of seven digits
			tol = 0.5e-6 / significand(c.factor)
		}
		if got := c.unit.ToSI(1); math.Abs(got/c.factor-1) > tol*1.0001 {
			t.Errorf("1 %s: have %.10g SI, want %.7g (%s)", c.unit, got, c.factor, c.source)
		}
	}
}

func significand(v float64) float64 { return v / math.Pow(10, math.Floor(math.Log10(v))) }

func TestResistivityFactors(t *testing.T) {
	for _, c := range []struct {
		unit   units.Unit
		ohm    float64 // Ω·m
		source string
	}{
		{units.OhmCmilPerFt, 1.662426e-09, "SP 811 B.8 ohm circular-mil per foot; read"},
		{units.OhmMM2PerM, 1e-06, "SP 811 B.8 ohm square-millimeter per meter, exact; memory"},
		{units.MicroOhmCM, 1e-08, "SP 811 B.8 ohm centimeter times 10⁻⁶, exact; memory"},
		{units.NanoOhmM, 1e-09, "definition"},
		{units.MicroOhmIn, 2.54e-08, "inch, exact"},
	} {
		if got := 1 / c.unit.ToSI(1); math.Abs(got/c.ohm-1) > 3.1e-7 {
			t.Errorf("1 %s: have %.8g Ω·m, want %.7g (%s)", c.unit, got, c.ohm, c.source)
		}
	}
}

// IEC 60028: annealed copper of 58 MS/m at 20 °C, 1/58 Ω·mm²/m, is 100 %IACS.
func TestStandardOfAnnealedCopper(t *testing.T) {
	for _, c := range []struct {
		unit units.Unit
		want float64
	}{{units.MSPerM, 58}, {units.OhmMM2PerM, 1. / 58}, {units.SPerM, 58e6}, {units.NanoOhmM, 1000. / 58}} {
		got, err := units.Convert(100, units.IACS, c.unit)
		if err != nil || math.Abs(got/c.want-1) > 1e-15 {
			t.Errorf("100 %%IACS: have %v %s (%v), want %v", got, c.unit, err, c.want)
		}
	}
}

// SP 811 B.8: t/°C = (t/°F - 32)/1.8, T/K = t/°C + 273.15, T/°R = 1.8 T/K.
func TestTemperatureScales(t *testing.T) {
	for _, c := range []struct {
		v        float64
		from, to units.Unit
		want     float64
	}{
		{32, units.DegF, units.DegC, 0},
		{212, units.DegF, units.DegC, 100},
		{-40, units.DegF, units.DegC, -40},
		{-40, units.DegC, units.DegF, -40},
		{68, units.DegF, units.DegC, 20},
		{20, units.DegC, units.Kelvin, 293.15},
		{0, units.Kelvin, units.DegC, -273.15},
		{491.67, units.Rankine, units.DegC, 0},
		{0, units.Rankine, units.Kelvin, 0},
		{180, units.DeltaF, units.DeltaC, 100},
	} {
		got, err := units.Convert(c.v, c.from, c.to)
		if err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v %s: have %v %s (%v), want %v", c.v, c.from, got, c.to, err, c.want)
		}
	}
	if got := units.DegF.ToSI(212); math.Abs(got-373.15) > 1e-9 {
		t.Errorf("212 °F: have %v K, want 373.15", got)
	}
	if got := units.DegF.FromSI(373.15); math.Abs(got-212) > 1e-9 {
		t.Errorf("373.15 K: have %v °F, want 212", got)
	}
}

func TestConvertRefuses(t *testing.T) {
	for _, c := range []struct {
		v        float64
		from, to units.Unit
		why      string
	}{
		{1, units.KSI, units.GPerCM3, "another dimension"},
		{1, units.DegF, units.DeltaF, "a point is not a difference"},
		{80, units.HB500Number, units.HB3000Number, "Brinell loads do not convert"},
		{80, units.HBNumber, units.HB500Number, "the load is not known"},
		{45, units.HRBNumber, units.HBNumber, "no factor between scales"},
		{5, units.Pct, units.One, "percent and plain number"},
		{5, units.Joule, units.JPerKg, "energy per mass is no energy"},
		{5, units.NoUnit, units.KSI, "no unit"},
		{5, units.KSI, units.NoUnit, "no unit"},
		{5, units.NoUnit, units.NoUnit, "no unit"},
		{0, units.MicroOhmCM, units.IACS, "zero has no reciprocal"},
		{0, units.IACS, units.NanoOhmM, "zero has no reciprocal"},
		{1, units.Unit(255), units.KSI, "a unit outside the table"},
	} {
		got, err := units.Convert(c.v, c.from, c.to)
		wantError(t, err, c.why)
		if got != 0 {
			t.Errorf("%s: have the value %v with an error", c.why, got)
		}
	}
}

// Absolute zero is -459.67 °F and -273.15 °C (SP 811 B.8). A figure may lie below
// it by its rounding, not by more.
func TestAbsoluteZero(t *testing.T) {
	for _, c := range []struct {
		v        float64
		place    int8
		unit     units.Unit
		possible bool
	}{
		{-459.67, -2, units.DegF, true}, {-460, 0, units.DegF, true}, {-460.0, -1, units.DegF, false}, {-461, 0, units.DegF, false}, {-600, 2, units.DegF, false},
		{-273.15, -2, units.DegC, true}, {-273, 0, units.DegC, true}, {-273.2, -1, units.DegC, true}, {-273.3, -1, units.DegC, false}, {-274, 0, units.DegC, false},
		{0, 0, units.Kelvin, true}, {-1, 0, units.Kelvin, false}, {0, 0, units.Rankine, true}, {-1, 0, units.Rankine, false},
		{-500, 0, units.DeltaF, true}, {-500, 0, units.MPa, true}, {math.Inf(-1), 0, units.DegF, true}, {math.NaN(), 0, units.DegF, true},
	} {
		q := units.Quantity{Lo: c.v, Hi: max(c.v, 20), Place: c.place, Unit: c.unit}
		if err := q.Possible(); (err == nil) != c.possible {
			t.Errorf("%v: have %v, want possible %v", q, err, c.possible)
		} else if err != nil {
			wantError(t, err, q.String())
		}
		if q.Unit.Dimension() != units.Temperature {
			continue
		}
		if _, err := q.In(units.DegF); c.unit != units.DegF && (err == nil) != c.possible {
			t.Errorf("%v in °F: have %v, want possible %v", q, err, c.possible)
		}
	}
	for _, c := range []struct {
		v        float64
		from, to units.Unit
	}{{-500, units.DegF, units.DegC}, {-300, units.DegC, units.DegF}, {-300, units.DegC, units.DegC}, {-0.1, units.Kelvin, units.DegF}} {
		got, err := units.Convert(c.v, c.from, c.to)
		if e := wantError(t, err, c.from.String()); got != 0 || !strings.Contains(e.Error(), "below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)") {
			t.Errorf("%v %s: have %v (%v)", c.v, c.from, got, err)
		}
	}
	for _, from := range []units.Unit{units.DegF, units.DegC, units.Kelvin, units.Rankine} {
		zero := from.FromSI(0)
		for _, to := range []units.Unit{units.DegF, units.DegC, units.Kelvin, units.Rankine} {
			if got, err := units.Convert(zero, from, to); err != nil || math.Abs(to.ToSI(got)) > 1e-9 {
				t.Errorf("absolute zero, %v %s: have %v %s (%v)", zero, from, got, to, err)
			}
		}
	}
}
