package watch_test

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/watch"
	"alongside/units"
)

// material finds a material of the catalog by id or designation.
func material(t *testing.T, id string) *props.Material {
	t.Helper()
	m, err := data.Catalog().Resolve(id)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func fahrenheit(t *testing.T, text string) *float64 {
	t.Helper()
	if text == "" {
		return nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	c := units.DegC.FromSI(units.DegF.ToSI(v))
	return &c
}

func find(list []watch.Caution, id string) *watch.Caution {
	if i := slices.IndexFunc(list, func(c watch.Caution) bool { return c.ID == id }); i >= 0 {
		return &list[i]
	}
	return nil
}

// TestRules raises every rule by a real change of metal and holds it against
// one that has nothing to do with it.
func TestRules(t *testing.T) {
	content, err := os.ReadFile("../../testdata/foundry/watch.tsv")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, line := range strings.Split(strings.TrimRight(string(content), "\n"), "\n")[2:] {
		f := strings.Split(line, "\t")
		if len(f) == 10 {
			f = append(f, "")
		}
		if len(f) != 11 {
			t.Fatalf("%d cells in %q", len(f), line)
		}
		id := f[0]
		seen[id] = seen[id] || f[8] != ""
		t.Run(id, func(t *testing.T) {
			given := part.Given{Coldest: fahrenheit(t, f[5]), Hottest: fahrenheit(t, f[6])}
			if f[3] != "" {
				given.Mate = material(t, f[3])
			}
			for _, w := range strings.FieldsFunc(f[4], func(r rune) bool { return r == ',' }) {
				fact, err := part.ParseFact(w)
				if err != nil {
					t.Fatal(err)
				}
				given.With |= fact
			}
			if f[9] != "" {
				wall, err := units.ParseAs(f[9], units.Length, units.NoUnit)
				if err != nil {
					t.Fatal(err)
				}
				given.Wall = &wall
			}
			if f[10] != "" {
				given.Medium = medium(t, f[10])
			}
			list := data.Watch().Evaluate(compare.NewBench(), material(t, f[1]), material(t, f[2]), given, nil)
			c := find(list, id)
			switch {
			case c == nil:
				t.Fatalf("%s → %s does not raise it; raised: %s", f[1], f[2], ids(list))
			case c.Unchecked != "":
				t.Fatalf("could not be checked: %s", c.Unchecked)
			case len(c.Why) == 0:
				t.Error("does not say why")
			}
			if f[8] == "" {
				return
			}
			if list := data.Watch().Evaluate(compare.NewBench(), material(t, f[7]), material(t, f[8]), given, nil); find(list, id) != nil {
				t.Errorf("%s → %s raises it too: %v", f[7], f[8], find(list, id).Why)
			}
		})
	}
	for _, r := range data.Watch().List {
		if !seen[r.ID] {
			t.Errorf("the table lacks a change of metal that raises %s and one that does not", r.ID)
		}
	}
	if n := len(data.Watch().List); n < 30 {
		t.Errorf("%d rules, want at least 30", n)
	}
}

func ids(list []watch.Caution) string {
	var out []string
	for _, c := range list {
		s := c.ID
		if c.Unchecked != "" {
			s += "?"
		}
		out = append(out, s)
	}
	return strings.Join(out, " ")
}

// A caution says first what to ask or do.
func TestTextBeginsWithWhatToDo(t *testing.T) {
	verbs := strings.Fields("Agree Ask Avoid Bake Braze Check Choose Compare Core Count Do Give Have Hold Impregnate Insulate Join Keep Leave Make Mark Mask Name Offer Order Quote Recheck Repair Rough Set Size Take Thicken Use Work")
	for _, r := range data.Watch().List {
		if first, _, _ := strings.Cut(r.Text, " "); !slices.Contains(verbs, strings.TrimSuffix(first, ",")) {
			t.Errorf("%s begins with %q", r.ID, first)
		}
	}
}

// The gravest cautions of a change stand first, in the order that a metallurgist
// would sign.
func TestGravest(t *testing.T) {
	hot := fahrenheit(t, "250")
	some := &units.Quantity{Lo: 1, Hi: 1, Unit: units.MPa}
	for _, c := range []struct {
		base, pin string
		given     part.Given
		want      string
	}{
		{"gray-30", "a356-t6-pm", part.Given{With: part.Fluid | part.PressureTight, Hottest: hot}, "pressure-code fire fluid-aluminum"},
		{"gray-30", "a356-t6-pm", part.Given{}, "set-before-break"},
		{"c83600-sand", "za-27-sand", part.Given{With: part.PressFit | part.Sliding, Hottest: hot}, "press-fit-bronze press-fit-zinc service-zinc"},
		{"ductile-65-45-12", "a357-t6-sand", part.Given{With: part.Critical | part.Impact | part.RepeatedLoad}, "casting-factor fatigue-light impact-light"},
		{"6061-t6-wrought", "201-t6-sand", part.Given{With: part.SeaWater}, "in-sea-aluminum-copper cast-for-wrought scc-al-cu"},
		{"gray-30", "a356-t6-pm", part.Given{Pressure: some}, "pressure-code fire set-before-break"},
		{"gray-30", "a356-t6-pm", part.Given{Interference: some}, "press-fit-light set-before-break"},
		{"535-f-sand", "c86500-sand", part.Given{With: part.SeaWater | part.PotableWater}, "potable-lead sea-brass"},
		{"gray-30", "a380-f-die", part.Given{With: part.Weld | part.Hazardous}, "spark die-weld set-before-break"},
	} {
		var have []string
		for _, x := range data.Watch().Evaluate(compare.NewBench(), material(t, c.base), material(t, c.pin), c.given, nil) {
			if x.Severity == watch.Ask && x.Unchecked == "" && len(have) < 3 {
				have = append(have, x.ID)
			}
		}
		if s := strings.Join(have, " "); s != c.want {
			t.Errorf("%s → %s with %s: have %s, want %s", c.base, c.pin, c.given.With, s, c.want)
		}
	}
}

func medium(t *testing.T, typed string) part.Medium {
	t.Helper()
	m, err := part.ReadMedium(typed)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// Every medium is answered for the metals of every family, by a title that begins
// with the answer or by a rule on the fact that the medium says.
func TestEveryMediumIsAnswered(t *testing.T) {
	for _, id := range part.MediaIDs() {
		m, ok := part.ParseMedia(id)
		if !ok {
			t.Fatalf("%s is no medium", id)
		}
		seen := map[string]bool{}
		for _, pin := range data.Catalog().Materials {
			if seen[pin.Alloy.ID] {
				continue
			}
			seen[pin.Alloy.ID] = true
			answered := false
			for _, c := range data.Watch().Evaluate(compare.NewBench(), nil, pin, part.Given{Medium: part.Medium{Media: m}}, nil) {
				answered = answered || c.Unchecked == "" && (c.Answer != "" || c.ID == "spark" || c.ID == "spark-zinc")
			}
			if !answered {
				t.Errorf("%s: no answer for %s, %s", id, pin.Name(), pin.Alloy.Family.ID)
			}
		}
	}
}

// The general questions about a fluid keep silent once the medium is said, and
// come back where it is not.
func TestMediumAnswersTheQuestion(t *testing.T) {
	list := func(g part.Given) string {
		return " " + ids(data.Watch().Evaluate(compare.NewBench(), material(t, "gray-30"), material(t, "a356-t6-pm"), g, nil)) + " "
	}
	if s := list(part.Given{With: part.Fluid}); !strings.Contains(s, " fluid-aluminum ") {
		t.Errorf("nothing asks for the fluid: %s", s)
	}
	s := list(part.Given{Medium: medium(t, "coolant 50 % glycol, 110 °C"), With: part.PressureTight})
	if strings.Contains(s, " fluid-") || !strings.Contains(s, " glycol-aluminum ") || strings.Contains(s, " glycol-hot ") {
		t.Errorf("glycol: %s", s)
	}
	// A medium that is hotter than the air around counts, a colder one does not.
	cold := 40.0
	if s := list(part.Given{Medium: medium(t, "glycol, 300 °F"), Hottest: &cold}); !strings.Contains(s, " glycol-hot ") {
		t.Errorf("hot glycol: %s", s)
	}
	// pH that reaches over the limit counts; without one, neither side is raised.
	if s := list(part.Given{Medium: medium(t, "water, pH 7 to 9")}); !strings.Contains(s, " aluminum-alkali ") {
		t.Errorf("pH 7 to 9: %s", s)
	}
	if s := list(part.Given{Medium: medium(t, "water, pH 7 to 8.5")}); strings.Contains(s, " aluminum-alkali ") || strings.Contains(s, " aluminum-acid ") {
		t.Errorf("pH 7 to 8.5: %s", s)
	}
}

// A difference at the limit is within it: high brass at 0.45 V and 12 % chromium steel
// at 0.60 V are 0.15 V apart, as far as guides allow outdoors.
func TestGapAtTheLimit(t *testing.T) {
	for mate, want := range map[string]bool{"ca15-sand": false, "cf8-sand": false, "c83600-sand": false, "gray-30": true} {
		given := part.Given{With: part.Outdoors, Mate: material(t, mate)}
		list := data.Watch().Evaluate(compare.NewBench(), nil, material(t, "c86500-sand"), given, nil)
		if raised := find(list, "galvanic-outdoors") != nil; raised != want {
			t.Errorf("%s: raised %v", mate, raised)
		}
	}
	// Iron at 0.85 V is 0.25 V from it, as far as they allow indoors.
	given := part.Given{Mate: material(t, "ca15-sand")}
	if find(data.Watch().Evaluate(compare.NewBench(), nil, material(t, "gray-30"), given, nil), "galvanic") != nil {
		t.Error("a difference of 0.25 V is raised as more than that")
	}
}
