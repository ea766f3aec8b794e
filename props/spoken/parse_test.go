package spoken

import (
	"errors"
	"os"
	"strings"
	"testing"

	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/units"
)

// shop is the invented catalog of the props tests.
func shop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestParse(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct{ typed, want string }{
		{"yield >= 20 ksi", "yield strength ≥ 20 ksi"},
		{"yield strength at least 20 ksi", "yield strength ≥ 20 ksi"},
		{"density < 2.8 g/cm3", "density < 2.8 g/cm³"},
		{"density under 2.8 g/cm3", "density < 2.8 g/cm³"},
		{"UTS 30 ksi min", "tensile strength ≥ 30 ksi"},
		{"UTS min 30 ksi", "tensile strength ≥ 30 ksi"},
		{"UTS min. 30 ksi", "tensile strength ≥ 30 ksi"},
		{"tensile: 30ksi min", "tensile strength ≥ 30 ksi"},
		{"tensile_strength>=30ksi", "tensile strength ≥ 30 ksi"},
		{"tensile must be at least 207 MPa", "tensile strength ≥ 207 MPa"},
		{"HB 70-100", "Brinell hardness 70–100 HB"},
		{"HB between 70 and 100", "Brinell hardness 70–100 HB"},
		{"elongation over 3 %", "elongation > 3 %"},
		{"elongation > 3", "elongation > 3 %"},
		{"anodizing at least 2", "anodizing, appearance 2 or better"},
		{"anodizing <= 2", "anodizing, appearance 2 or better"},
		{"anodizing 2 or better", "anodizing, appearance 2 or better"},
		{"anodizing < 3", "anodizing, appearance better than 3"},
		{"process = pm or sand", "process = permanent mold or sand"},
		{"process: Permanent Mould casting/die", "process = permanent mold or die"},
		{"family = aluminum", "family = aluminum"},
		{"family is aluminium", "family = aluminum"},
		{"temper = t5, T6", "temper = T5 or T6"},
		{"conductivity at least 35 %IACS", "electrical conductivity ≥ 35 %IACS"},
		{"resistivity at most 5 uOhm-cm", "electrical resistivity ≤ 5 µΩ·cm"},
		{"resistivity 5 uOhm-cm", "electrical resistivity ≤ 5 µΩ·cm"}, // the usual side of a conductivity turned
		{"conductivity 30 %IACS", "electrical conductivity ≥ 30 %IACS"},
		{"expansion <= 12.5 uin/in-F", "thermal expansion ≤ 12.5 µin/in·°F"},
		{"liquidus below 1200 F", "liquidus < 1200 °F"},
		{"yield 20 ksi", "yield strength ≥ 20 ksi"},
		{"density < 0,1 lb/in3", "density < 0.1 lb/in³"},
	} {
		n, err := One(tt.typed, c, units.US)
		if err != nil {
			t.Errorf("%q: %v", tt.typed, err)
			continue
		}
		if have := n.String(); have != tt.want {
			t.Errorf("%q: have %q, want %q", tt.typed, have, tt.want)
		}
		if again, err := One(n.String(), c, units.US); err != nil || again.String() != n.String() {
			t.Errorf("%q does not read back: %v", n.String(), err)
		}
	}
}

func TestParseErrors(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct{ typed, want string }{
		{"", "write for example"},
		{"yeild >= 20 ksi", `"yeild" is not understood: did you mean yield?`},
		{"yield >= 20 kis", "did you mean ksi?"},
		{"yield >= 20 g/cm3", "stress"},
		{"yield", "give a limit"},
		{">= 20 ksi", "name a property"},
		{"yield >= 20-30 ksi", "a range needs no sign"},
		{"process = snad", `"snad" is not understood: did you mean sand?`},
		{"process =", "name a process"},
		{"family = aluminm", "did you mean aluminum?"},
		{"color = blue", `"color" is not understood`},
	} {
		_, err := One(tt.typed, c, units.US)
		var pe *ParseError
		if !errors.As(err, &pe) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%q:\nhave %v\nwant %s", tt.typed, err, tt.want)
		}
	}
	list, err := Read("yield >= 20 ksi; nonsense\ndensity < 0.1 lb/in3, family = aluminum", c, units.US, nil).Limits()
	if len(list) != 3 || err == nil {
		t.Errorf("have %d needs, %v; want 3 and the error of the bad one", len(list), err)
	}
}

func FuzzParse(f *testing.F) {
	c := shop(f)
	for _, s := range []string{"yield >= 20 ksi", "HB 70-100", "process = pm or sand", "anodizing at least 2", "resistivity <= 5 uOhm-cm", "UTS 30 ksi min", "°<>", "density < 0,1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		n, err := One(s, c, units.US)
		var pe *ParseError
		if err != nil {
			if !errors.As(err, &pe) || pe.Error() == "" {
				t.Fatalf("%T %v", err, err)
			}
			return
		}
		if _, err := One(n.String(), c, units.US); err != nil {
			t.Fatalf("%q became %q, which does not read back: %v", s, n.String(), err)
		}
		for _, m := range c.Materials {
			needs.Judge(m, &n)
		}
	})
}
