package foundry_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"alongside/data"
	"alongside/props"
	"alongside/props/foundry"
	"alongside/units"
)

func material(t *testing.T, id string) *props.Material {
	t.Helper()
	m := data.Catalog().Material(id)
	if m == nil {
		t.Fatalf("no material %s", id)
	}
	return m
}

func length(t testing.TB, text string) units.Quantity {
	t.Helper()
	q, err := units.ParseAs(text, units.Length, units.NoUnit)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// result is the first tolerance of a kind and name, by a molding method.
func result(t *testing.T, id, dimension string, kind foundry.ToleranceKind, name, method string) foundry.ToleranceResult {
	t.Helper()
	for _, r := range data.Foundry().Tolerance(material(t, id), length(t, dimension)) {
		if r.Source != nil && r.Kind == kind && r.Name == name && r.Method == method {
			return r
		}
	}
	t.Fatalf("%s at %s: no %s %s", id, dimension, kind, name)
	return foundry.ToleranceResult{}
}

// The draft of a wall by the constant, D = √L/C in inches: 30 for aluminum and 50
// for zinc inside, twice that outside (NADCA S-4A-7).
func TestDieDraft(t *testing.T) {
	for _, c := range []struct{ id, depth, wall, want string }{
		{"a380-f-die", "1 in", "inside wall", "0.033 in"},
		{"a380-f-die", "4 in", "inside wall", "0.067 in"},
		{"a380-f-die", "4 in", "outside wall", "0.033 in"},
		{"zn-3-die", "4 in", "inside wall", "0.040 in"},
	} {
		r := result(t, c.id, c.depth, foundry.DieDraft, c.wall, "")
		if have := r.PlusMinus.String(); have != c.want {
			t.Errorf("%s, %s, %s: have %s, want %s", c.id, c.depth, c.wall, have, c.want)
		}
	}
	if r := result(t, "a380-f-die", "1 in", foundry.DieDraft, "inside wall", ""); !strings.Contains(r.How, "1.9°") {
		t.Error(r.How)
	}
}

// Cells of ISO 8062-3:2007, Table 2: total tolerance in mm of linear
// dimensions. The grades are those of each process in ISO 8062:1994, Table A.1.
func TestGradeTable(t *testing.T) {
	for _, c := range []struct {
		id, dimension, name, method string
		full                        string
	}{
		{"a380-f-die", "10 mm", "DCTG 4–7", "", "0.26–0.74 mm"},                                    // to 10: DCTG 4 0.26, DCTG 7 0.74
		{"a380-f-die", "10.1 mm", "DCTG 4–7", "", "0.28–0.78 mm"},                                  // over 10 to 16: 0.28, 0.78
		{"a380-f-die", "40 mm", "DCTG 4–7", "", "0.32–0.90 mm"},                                    // over 25 to 40: 0.32, 0.9
		{"a380-f-die", "100 mm", "DCTG 4–7", "", "0.4–1.1 mm"},                                     // over 63 to 100: 0.4, 1.1
		{"a380-f-die", "630 mm", "DCTG 4–7", "", "0.64–1.80 mm"},                                   // over 400 to 630: 0.64, 1.8
		{"zn-3-die", "160 mm", "DCTG 4–6", "", "0.44–0.88 mm"},                                     // over 100 to 160: 0.44, 0.88
		{"a356-t6-pm", "100 mm", "DCTG 7–9", "", "1.1–2.2 mm"},                                     // over 63 to 100: 1.1, 2.2
		{"a356-t6-pm", "400 mm", "DCTG 7–9", "", "1.6–3.2 mm"},                                     // over 250 to 400: 1.6, 3.2
		{"gray-30", "250 mm", "DCTG 11–14", "hand-molded sand", "5.6–14.0 mm"},                     // over 160 to 250: 5.6, 14
		{"gray-30", "40 mm", "DCTG 8–12", "machine-molded sand and shell", "1.3–5.0 mm"},           // over 25 to 40: 1.3, 5
		{"steel-a216-wcb", "4000 mm", "DCTG 8–12", "machine-molded sand and shell", "4.4–17.0 mm"}, // over 2500 to 4000: 4.4, 17
	} {
		r := result(t, c.id, c.dimension, foundry.ISOGrade, c.name, c.method)
		if have := r.Full.String(); have != c.full || r.Why != "" {
			t.Errorf("%s at %s:\nhave %s %s\nwant %s", c.id, c.dimension, have, r.Why, c.full)
		}
		if r.PlusMinus.Lo != r.Full.Lo/2 || r.PlusMinus.Hi != r.Full.Hi/2 {
			t.Errorf("%s at %s: ±%s is not half of %s", c.id, c.dimension, r.PlusMinus, r.Full)
		}
	}
}

// A table that has no cell for a grade says so.
func TestGradeTableEnds(t *testing.T) {
	// ISO 8062-3, Table 2: over 630 to 1000 mm it begins with DCTG 5, 1 mm.
	r := result(t, "a380-f-die", "800 mm", foundry.ISOGrade, "DCTG 4–7", "")
	if r.Full.String() != "1–2 mm" || !strings.Contains(r.Condition, "no figure for DCTG 4 at this size") {
		t.Errorf("800 mm: %s %q %s", r.Full, r.Condition, r.Why)
	}
	// Over 10 to 16 mm it ends with DCTG 12, 4.4 mm.
	r = result(t, "gray-30", "12 mm", foundry.ISOGrade, "DCTG 11–14", "hand-molded sand")
	if r.Full.String() != "3.0–4.4 mm" || !strings.Contains(r.Condition, "no figure for DCTG 13–14 at this size") {
		t.Errorf("12 mm: %s %q %s", r.Full, r.Condition, r.Why)
	}
	if r := result(t, "gray-30", "11 m", foundry.ISOGrade, "DCTG 11–14", "hand-molded sand"); r.Why == "" {
		t.Errorf("11 m: %s, want a reason", r.Full)
	}
}

// The committee draft of ISO 8062-2, Table A.2: short series hold three grades
// finer to 10 mm, two to 16 mm and one to 25 mm.
func TestSmallSizesAreFiner(t *testing.T) {
	for dimension, want := range map[string][2]string{
		"10 mm":   {"DCTG 10–12", "2.0–4.2 mm"}, // ISO 8062-3, Table 2
		"16 mm":   {"DCTG 11–13", "3.0–4.4 mm"}, // 13 has no cell there
		"25 mm":   {"DCTG 12–14", "4.6–8.0 mm"},
		"25.1 mm": {"DCTG 13–15", "7–11 mm"},
	} {
		r := result(t, "gray-30", dimension, foundry.ISOGrade, want[0], "hand-molded, clay-bonded sand")
		if r.Full.String() != want[1] {
			t.Errorf("%s: have %s, want %s", dimension, r.Full, want[1])
		}
	}
}

// Machining allowance: ISO 8062:1994, Table 2 (RMA), by grade and largest
// dimension.
func TestMachiningAllowance(t *testing.T) {
	for _, c := range []struct{ id, dimension, name, method, want string }{
		{"gray-30", "100 mm", "RMAG F–H", "hand-molded sand", "1–2 mm"},         // over 63 to 100: F 1, H 2
		{"steel-a216-wcb", "500 mm", "RMAG G–K", "hand-molded sand", "4–12 mm"}, // over 400 to 630: G 4, K 12
		{"a356-t6-pm", "160 mm", "RMAG D–F", "", "0.8–1.5 mm"},                  // over 100 to 160: D 0.8, F 1.5
	} {
		if have := result(t, c.id, c.dimension, foundry.MachiningStock, c.name, c.method).Full.String(); have != c.want {
			t.Errorf("%s at %s: have %s, want %s", c.id, c.dimension, have, c.want)
		}
	}
}

// The trade's first-inch form.
func TestTradeForm(t *testing.T) {
	for _, c := range []struct {
		id, dimension, name, method string
		want                        string
		source                      string
	}{
		{"a380-f-die", "5.00 in", "standard", "", "0.014 in", "worked example beside NADCA S-4A-1: 0.010 + 4 × 0.001"},
		{"a380-f-die", "5.00 in", "precision", "", "0.006 in", "worked example beside NADCA P-4A-1: 0.002 + 4 × 0.001"},
		{"a380-f-die", "0.75 in", "standard", "", "0.010 in", "NADCA S-4A-1: basic tolerance to 1 in"},
		{"a380-f-die", "127 mm", "standard", "", "0.014 in", "the same 5.00 in"},
		{"c85800-die", "3 in", "standard", "", "0.020 in", "NADCA S-4A-1, copper: 0.014 + 2 × 0.003"},
		{"a356-t6-pm", "4 in", "", "", "0.021 in", "Aluminum Association E series: 0.015 + 3 × 0.002"},
		{"356-t6-sand", "6 in", "", "green sand", "0.030 in", "Aluminum Association E series: 0.030 to 6 in"},
		{"356-t6-sand", "10 in", "", "green sand", "0.042 in", "Aluminum Association E series: 0.030 + 4 × 0.003"},
		{"gray-30", "5 in", "", "green sand", "0.045 in", "jobbing foundry guide: 0.045 for 3 to 6 in"},
		{"a380-f-die", "4.5 in", "standard", "", "0.0135 in", "half an inch counted in proportion"},
	} {
		if have := result(t, c.id, c.dimension, foundry.TradeForm, c.name, c.method).PlusMinus.String(); have != c.want {
			t.Errorf("%s at %s: have %s, want %s (%s)", c.id, c.dimension, have, c.want, c.source)
		}
	}
	if r := result(t, "steel-a216-wcb", "4 in", foundry.TradeForm, "", "shell"); r.Why == "" {
		t.Errorf("shell molded steel is published for 1 in only, have ±%s at 4 in", r.PlusMinus)
	}
}

func TestNoTolerance(t *testing.T) {
	inch := func(lo, hi float64, q units.Qualifier) units.Quantity {
		return units.Quantity{Lo: lo, Hi: hi, Unit: units.Inch, Qual: q}
	}
	for name, c := range map[string]struct {
		id   string
		q    units.Quantity
		want string
	}{
		"wrought":  {"6061-t6-wrought", inch(4, 4, units.Exact), "not poured"},
		"negative": {"gray-30", inch(-4, -4, units.Exact), "above zero"},
		"zero":     {"gray-30", inch(0, 0, units.Exact), "above zero"},
		"NaN":      {"gray-30", inch(math.NaN(), math.NaN(), units.Exact), "one dimension"},
		"infinite": {"gray-30", inch(math.Inf(1), math.Inf(1), units.Exact), "above zero"},
		"range":    {"gray-30", inch(4, 5, units.Exact), "one dimension"},
		"limit":    {"gray-30", inch(4, 4, units.AtMost), "one dimension"},
		"mass":     {"gray-30", units.Quantity{Lo: 4, Hi: 4, Unit: units.Pound}, "a dimension is needed"},
		"no unit":  {"gray-30", units.Quantity{Lo: 4, Hi: 4}, "a dimension is needed"},
		"cast bar": {"c93200-cont", inch(4, 4, units.Exact), "no tolerance on file"},
	} {
		list := data.Foundry().Tolerance(material(t, c.id), c.q)
		if len(list) != 1 || !strings.Contains(list[0].Why, c.want) {
			t.Errorf("%s: have %+v, want the reason %q", name, list, c.want)
		}
	}
}

// A greater dimension never has the smaller tolerance, a tolerance does not
// depend on the unit of the dimension, and full is twice plus-or-minus.
func TestToleranceProperties(t *testing.T) {
	var cast []*props.Material
	for _, m := range data.Catalog().Materials {
		if m.Process != props.Wrought && m.Process != props.NoProcess {
			cast = append(cast, m)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(cast).Draw(t, "material")
		a := rapid.Float64Range(0.1, 9000).Draw(t, "mm")
		b := rapid.Float64Range(a, 9900).Draw(t, "more mm")
		at := func(mm float64, u units.Unit) []foundry.ToleranceResult {
			v, err := units.Convert(mm, units.MM, u)
			if err != nil {
				t.Fatal(err)
			}
			return data.Foundry().Tolerance(m, units.Quantity{Lo: v, Hi: v, Place: -3, Unit: u})
		}
		small, large, inches := at(a, units.MM), at(b, units.MM), at(a, units.Inch)
		for i := range small {
			s, l, in := &small[i], &large[i], &inches[i]
			if (s.Why == "") != (in.Why == "") && !nearEdge(a) {
				t.Fatalf("%s at %g mm: %q in mm, %q in inches", m.ID, a, s.Why, in.Why)
			}
			if s.Why != "" {
				continue
			}
			if in.Why == "" && math.Abs(s.Full.Lo-in.Full.Lo) > 1e-9 && !nearEdge(a) {
				t.Fatalf("%s at %g mm: %s in mm, %s in inches", m.ID, a, s.Full, in.Full)
			}
			if l.Why == "" && !strings.Contains(s.Condition+l.Condition, "at this size") && (l.Full.Lo < s.Full.Lo-1e-9 || l.Full.Hi < s.Full.Hi-1e-9) {
				t.Fatalf("%s, %s: %s at %g mm, %s at %g mm", m.ID, s.Name, s.Full, a, l.Full, b)
			}
			if s.Kind != foundry.MachiningStock && (math.Abs(s.Full.Lo-2*s.PlusMinus.Lo) > 1e-9 || math.Abs(s.Full.Hi-2*s.PlusMinus.Hi) > 1e-9) {
				t.Fatalf("%s: ±%s against %s", m.ID, s.PlusMinus, s.Full)
			}
		}
	})
}

// nearEdge tells sizes so near a step that rounding in the unit decides.
func nearEdge(mm float64) bool {
	for _, edge := range []float64{10, 16, 25, 40, 63, 100, 160, 250, 400, 630, 1000, 1600, 2500, 4000, 6300, 25.4, 76.2, 152.4, 228.6, 304.8} {
		if math.Abs(mm-edge) < 1e-6 {
			return true
		}
	}
	return false
}
