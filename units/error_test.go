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
		"Parse":          func(s string) error { _, err := units.Parse(s); return err },
		"ParseUnit":      func(s string) error { _, err := units.ParseUnit(s); return err },
		"ParseExpansion": func(s string) error { _, err := units.ParseExpansion(s); return err },
		"ParseSystem":    func(s string) error { _, err := units.ParseSystem(s); return err },
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
