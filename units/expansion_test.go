package units_test

import (
	"testing"

	"alongside/units"
)

func TestParseExpansion(t *testing.T) {
	for _, c := range []struct {
		have   string
		want   string
		lo, hi float64 // ends of the range, both 0 for none
	}{
		{"11.9 µin/in·°F from 68 to 212 °F", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F; 68–212 °F", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F, 68-212 F", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F (68 to 212 °F)", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F from 68 °F to 212 °F", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F between 68 and 212 °F", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9 uin/in-F from 68 to 212", "11.9 µin/in·°F from 68 to 212 °F", 68, 212},
		{"11.9e-6 /°F @ 68-212 F", "11.9 ×10⁻⁶/°F from 68 to 212 °F", 68, 212},
		{"21.4 µm/m·K; 20–100", "21.4 µm/m·K from 20 to 100 °C", 20, 100},
		{"21.4 um/m-C at -40..20 C", "21.4 µm/m·K from -40 to 20 °C", -40, 20},
		{"11.9 uin/in-F", "11.9 µin/in·°F", 0, 0},
	} {
		x, err := units.ParseExpansion(c.have)
		if err != nil || x.String() != c.want || x.From.Lo != c.lo || x.To.Hi != c.hi {
			t.Errorf("%q: have %v, %v to %v (%v), want %s", c.have, x, x.From, x.To, err, c.want)
		}
		if c.hi == 0 && x.From.Unit != units.NoUnit {
			t.Errorf("%q: have a range that was not stated, %v", c.have, x.From)
		}
	}
}

func TestParseExpansionRefuses(t *testing.T) {
	for _, c := range []struct {
		have string
		at   int // offset of the trouble
	}{
		{"37 ksi; 68–212 °F", 3},
		{"11.9 uin/in-F; 68 °F", 14},
		{"11.9 uin/in-F; 212–68 °F", 14},
		{"11.9 uin/in-F; 68–212 ksi", 24},
		{"11.9 uin/in-F; warm", 15},
		{"", 0},
		{"; 20–100 °C", 0},
	} {
		x, err := units.ParseExpansion(c.have)
		e := wantError(t, err, c.have)
		if e.Offset != c.at || e.Input != c.have {
			t.Errorf("%q: have the error at %d of %q, want %d (%v)", c.have, e.Offset, e.Input, c.at, err)
		}
		if x != (units.Expansion{}) {
			t.Errorf("%q: have %v beside an error", c.have, x)
		}
	}
}
