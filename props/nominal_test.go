package props

import "testing"

func TestNominal(t *testing.T) {
	for _, tt := range []struct {
		limits []Limit
		want   string
	}{
		// A356.0: Si 6.5–7.5, Mg 0.25–0.45 (ASTM B108/B108M, Table 1)
		{[]Limit{{"Si", "6.5–7.5", 6.5, 7.5}, {"Fe", "0.20 max", 0, 0.20}, {"Mg", "0.25–0.45", 0.25, 0.45}, {"Al", "remainder", 0, 0}}, "Al–7.0 Si–0.35 Mg"},
		// C83600: Cu 84–86, Sn, Pb and Zn 4–6 each (ASTM B584)
		{[]Limit{{"Cu", "84.0–86.0", 84, 86}, {"Sn", "4.0–6.0", 4, 6}, {"Pb", "4.0–6.0", 4, 6}, {"Zn", "4.0–6.0", 4, 6}}, "Cu–5.0 Sn–5.0 Pb–5.0 Zn"},
		{[]Limit{{"C", "0.30 max", 0, 0.3}}, ""},
		{nil, ""},
	} {
		a := &Alloy{Composition: Composition{Limits: tt.limits}}
		if have := a.Nominal(); have != tt.want {
			t.Errorf("have %q, want %q", have, tt.want)
		}
	}
}
