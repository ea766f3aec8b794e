package units_test

import (
	"strings"
	"testing"

	"alongside/units"
)

func TestErrors(t *testing.T) {
	for _, c := range []struct {
		have string
		d    units.Dimension
		want string
		at   int
	}{
		{"", units.NoDimension, `understood nothing; expected a number with a unit, such as 37 ksi`, 0},
		{" ", units.Stress, `" ": understood nothing; expected a number with a unit of stress such as psi, ksi, Mpsi, Pa`, 0},
		{"strong", units.Stress, `"strong": understood no number in "strong"; expected a number with a unit of stress such as psi, ksi, Mpsi, Pa`, 0},
		{"37", units.Stress, `"37": understood 37 without a unit; expected a unit of stress such as psi, ksi, Mpsi, Pa`, 2},
		{"37 kis", units.Stress, `"37 kis": understood 37, but no unit in "kis"; expected a unit of stress such as psi, ksi, Mpsi, Pa: did you mean ksi?`, 3},
		{"0.097 lb/in2", units.Density, `"0.097 lb/in2": understood 0.097 psi (stress); expected a unit of density such as lb/in³, lb/ft³, g/cm³, kg/m³: did you mean lb/in³?`, 6},
		{"80 HB", units.HB500, `"80 HB": understood 80 HB (Brinell hardness, load not stated); expected HB 500/10 (Brinell hardness 500 kgf/10 mm): no factor leads from one hardness scale to another`, 3},
		{"0,097 lb/in3", units.Density, `"0,097 lb/in3": understood a comma in "0,097"; expected commas only between groups of three digits: type a point: 0.097`, 1},
		{"37,5 ksi", units.Stress, `"37,5 ksi": understood a comma in "37,5"; expected commas only between groups of three digits: type a point: 37.5`, 2},
		{"37 255", units.Stress, `"37 255": understood 37 and then "255"; expected one number with its unit: for a range type 70-100, for thousands 20,000`, 3},
		{"100–70 ksi", units.Stress, `"100–70 ksi": understood a range whose first end is the larger; expected the smaller end first`, 0},
		{"≥ 70–100 ksi", units.Stress, `"≥ 70–100 ksi": understood a range with the limit ≥; expected a range or a limit, not both`, 0},
		{"≥ 70 ksi max", units.Stress, `"≥ 70 ksi max": understood two limits; expected one of them`, 10},
		{"500 psi to 1 ksi", units.Stress, `"500 psi to 1 ksi": understood a range from psi (stress) to ksi (stress); expected one unit for both ends`, 4},
		{"47/23 ksi", units.Stress, `"47/23 ksi": understood two numbers with a stroke, 47/23; expected one number, or a fraction such as 3/8: for a range type 70-95`, 0},
		{"20/16 ksi", units.Stress, `"20/16 ksi": understood two numbers with a stroke, 20/16; expected one number, or a fraction such as 3/8: for a range type 70-95`, 0},
		{"1/0 in", units.Length, `"1/0 in": understood a fraction over 0; expected a fraction such as 3/8`, 2},
		{"1e99 psi", units.Stress, `"1e99 psi": expected a power of ten of at most 60`, 0},
		{"1e40 psi", units.Stress, `"1e40 psi": understood a number above 1e30; expected a smaller number`, 0},
		{"5 ± 0 %", units.Percent, `"5 ± 0 %": expected a tolerance above 0 after ±`, 0},
		{"2.5 x", units.Rating, `"2.5 x": understood 2.5, but no unit in "x"; expected a plain number`, 4},
		{"37 mPa", units.Stress, `"37 mPa": understood 37, but no unit in "mPa"; expected a unit of stress such as psi, ksi, Mpsi, Pa: mPa is millipascal; did you mean MPa?`, 3},
		{"39 IACS", units.NoDimension, `"39 IACS": understood 39, but no unit in "IACS"; expected a unit such as ksi, MPa, lb/in³, W/m·K, °F: did you mean %IACS?`, 3},
		{"2 tons", units.NoDimension, `"2 tons": understood 2, but no unit in "tons"; expected a unit such as ksi, MPa, lb/in³, W/m·K, °F: say which: short tons (2000 lb), long tons (2240 lb) or t (metric)`, 2},
		{"37 ksi (300 MPa)", units.Stress, `"37 ksi (300 MPa)": understood 37 ksi and then 300 MPa, which contradict each other; expected two values that agree: 37 ksi is 255 MPa`, 3},
		{"37 ksi (250–260 MPa)", units.Stress, `"37 ksi (250–260 MPa)": understood 37 ksi and then 250–260 MPa, which contradict each other; expected two values that agree: 37 ksi is 255 MPa`, 3},
		{"37 ksi (255 kg)", units.Stress, `"37 ksi (255 kg)": understood 255 kg (mass); expected a unit of stress such as psi, ksi, Mpsi, Pa`, 12},
		{"4.3 µΩ·cm (0 %IACS)", units.NoDimension, `"4.3 µΩ·cm (0 %IACS)": understood 4.3 µΩ·cm and then 0 %IACS, which contradict each other; expected two values that agree: 4.3 µΩ·cm is 40.1 %IACS`, 4},
		{"0 %IACS (4.3 µΩ·cm)", units.NoDimension, `"0 %IACS (4.3 µΩ·cm)": understood 0 %IACS and then 4.3 µΩ·cm, which contradict each other; expected two values that agree`, 2},
		{"1 ft 14 in", units.Length, `"1 ft 14 in": understood 1 ft and then "14 in"; expected less than 12 in`, 5},
		{"1 ft 6", units.Length, `"1 ft 6": understood 1, but no unit in "6" of "ft 6"; expected a unit of length such as in, ft, mil, µin`, 5},
		{"±40 °F", units.Temperature, `"±40 °F": understood -40 to 40 Δ°F (temperature difference); expected a unit of temperature such as °F, °C, K, °R`, 5},
		{"-500 F", units.NoDimension, `"-500 F": understood -500 °F, below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)`, 0},
		{"-274 °C", units.Temperature, `"-274 °C": understood -274 °C, below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)`, 0},
		{"-5e2 °F", units.Temperature, `"-5e2 °F": understood -500 °F, below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)`, 0},
		{"-500..20 °F", units.Temperature, `"-500..20 °F": understood -500 °F, below absolute zero; expected a temperature of at least -459.67 °F (-273.15 °C)`, 0},
		{"37 \x1b[31mksi", units.Stress, `"37 \x1b[31mksi": understood 37, but no unit in "\x1b" of "\x1b[31mksi"; expected a unit of stress such as psi, ksi, Mpsi, Pa`, 3},
	} {
		q, err := units.ParseAs(c.have, c.d, units.NoUnit)
		e := wantError(t, err, c.have)
		if err == nil || e.Error() != c.want || c.at != 0 && e.Offset != c.at {
			t.Errorf("%q:\nhave: %v, at %d\nwant: %s, at %d", c.have, err, e.Offset, c.want, c.at)
		}
		if q != (units.Quantity{}) {
			t.Errorf("%q: have %v beside an error", c.have, q)
		}
	}
}

func TestLongTextIsCut(t *testing.T) {
	long := strings.Repeat("µ", 5000)
	for name, parse := range map[string]func(string) error{
		"Parse":       func(s string) error { _, err := units.Parse(s); return err },
		"ParseUnit":   func(s string) error { _, err := units.ParseUnit(s); return err },
		"ParseSystem": func(s string) error { _, err := units.ParseSystem(s); return err },
	} {
		err := parse(long)
		wantError(t, err, name)
		if err != nil && len(err.Error()) > 800 {
			t.Errorf("%s: a message of %d bytes", name, len(err.Error()))
		}
	}
}

// A conversion that cannot be done names both sides.
func TestConvertErrors(t *testing.T) {
	for _, c := range []struct {
		have string
		to   units.Unit
		want string
	}{
		{"37 ksi", units.GPerCM3, `understood ksi (stress) to g/cm³ (density); expected two units of one dimension: `},
		{"80 HB 500/10", units.HB3000Number, `understood HB 500/10 (Brinell hardness 500 kgf/10 mm) to HB 3000/10 (Brinell hardness 3000 kgf/10 mm); expected two units of one dimension: no factor leads from one hardness scale to another`},
		{"100 °F", units.DeltaC, `understood °F (temperature) to Δ°C (temperature difference); expected two units of one dimension: a temperature is not a difference; write Δ°F or Δ°C for a difference`},
		{"37", units.MPa, `understood a plain number to MPa (stress); expected `},
		{"0 °C", units.KSI, `understood °C (temperature) to ksi (stress); expected two units of one dimension: `},
		{"0 uOhm-cm", units.IACS, `understood 0 µΩ·cm (electrical conductivity) to %IACS (electrical conductivity); expected a value other than 0`},
	} {
		q, err := units.Parse(c.have)
		if err != nil {
			t.Error(err)
			continue
		}
		got, err := q.In(c.to)
		wantError(t, err, c.have)
		if err != nil && !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s in %s:\nhave: %v\nwant: %s", c.have, c.to, err, c.want)
		}
		if got != (units.Quantity{}) {
			t.Errorf("%s in %s: have %v beside an error", c.have, c.to, got)
		}
	}
}
