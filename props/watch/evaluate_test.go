package watch_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/watch"
	"alongside/units"
)

// Whatever is changed into whatever, a caution is complete; putting it aside
// or another system of units changes nothing else.
func TestCautions(t *testing.T) {
	all := data.Catalog().Materials
	rapid.Check(t, func(t *rapid.T) {
		base, pin := rapid.SampledFrom(all).Draw(t, "base"), rapid.SampledFrom(all).Draw(t, "pin")
		given := part.Given{With: part.Facts(rapid.Uint32Range(0, 1<<27-1).Draw(t, "with"))}
		if rapid.Bool().Draw(t, "mate given") {
			given.Mate = rapid.SampledFrom(all).Draw(t, "mate")
		}
		if rapid.Bool().Draw(t, "service given") {
			lo := rapid.Float64Range(-60, 20).Draw(t, "lowest")
			hi := rapid.Float64Range(20, 500).Draw(t, "highest")
			given.Coldest, given.Hottest = &lo, &hi
		}
		bench := compare.NewBench()
		list := data.Watch().Evaluate(bench, base, pin, given, nil)
		if base == pin && len(list) > 0 {
			t.Fatal("no change, but cautions")
		}
		for _, c := range list {
			if c.ID == "" || c.Title == "" || c.Text == "" || c.Source == nil || c.Dismissed {
				t.Fatalf("incomplete: %+v", c)
			}
			if len(c.Why) == 0 && c.Unchecked == "" {
				t.Fatalf("%s does not say why", c.ID)
			}
			for _, s := range c.Figures {
				if (s.Figure == nil) == (s.Absent == "") {
					t.Fatalf("%s: %s of %s has neither or both of figure and reason", c.ID, s.Property, s.Material.ID)
				}
			}
		}
		bench.System = units.SI
		if si := data.Watch().Evaluate(bench, base, pin, given, nil); ids(si) != ids(list) {
			t.Fatalf("in SI: %s\nin US: %s", ids(si), ids(list))
		}
		if len(list) == 0 {
			return
		}
		after := data.Watch().Evaluate(bench, base, pin, given, []string{list[0].ID})
		n, m := watch.Counts(list), watch.Counts(after)
		if len(after) != len(list) || m.Dismissed != 1 || n.Dismissed != 0 || !after[len(after)-1].Dismissed || after[len(after)-1].ID != list[0].ID {
			t.Fatalf("putting %s aside: %s", list[0].ID, ids(after))
		}
	})
}

// The order is: stop and ask, check, what could not be checked, put aside.
func TestOrder(t *testing.T) {
	hot := 150.0
	list := data.Watch().Evaluate(compare.NewBench(), material(t, "gray-30"), material(t, "zn-3-die"),
		part.Given{Hottest: &hot, With: part.SustainedLoad | part.Threads | part.HeatPath}, []string{"bar-die", "no-such-rule"})
	rank := func(c watch.Caution) int {
		switch {
		case c.Dismissed:
			return 3
		case c.Unchecked != "":
			return 2
		case c.Severity == watch.Ask:
			return 0
		}
		return 1
	}
	if !slices.IsSortedFunc(list, func(a, b watch.Caution) int { return rank(a) - rank(b) }) {
		t.Error(ids(list))
	}
	n := watch.Counts(list)
	if n.Ask == 0 || n.Check == 0 || n.Dismissed != 1 || n.Ask+n.Check+n.Unchecked+n.Dismissed != len(list) {
		t.Errorf("%+v of %d", n, len(list))
	}
}

// A missing figure is said, not passed over.
func TestUnchecked(t *testing.T) {
	content, err := os.ReadFile("../../testdata/foundry/invented.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := catalog.LoadFiles(nil, []catalog.File{{Name: "invented.toml", Content: content}})
	if err != nil {
		t.Fatal(err)
	}
	list := data.Watch().Evaluate(compare.NewBench(), c.Material("gray-99"), c.Material("399-t6-die"), part.Given{}, nil)
	got := find(list, "heavier")
	if got == nil || got.Unchecked != "Density of 399.0-T6 die: no figure on file" {
		t.Errorf("%+v", got)
	}
}

// Without a baseline only the rules about the metal and the part are raised.
func TestOneMetal(t *testing.T) {
	list := data.Watch().Evaluate(compare.NewBench(), nil, material(t, "zn-3-die"), part.Given{With: part.SustainedLoad}, nil)
	if find(list, "creep-zinc") == nil || find(list, "stiffness") != nil || find(list, "age-zinc") != nil {
		t.Error(ids(list))
	}
	if data.Watch().Evaluate(compare.NewBench(), nil, nil, part.Given{}, nil) != nil {
		t.Error("cautions for nothing")
	}
}

// The bench's service temperature counts where the part gives none.
func TestBenchService(t *testing.T) {
	b := compare.NewBench()
	hot := 150.0
	b.Service = &hot
	c := find(data.Watch().Evaluate(b, material(t, "a380-f-die"), material(t, "356-t6-sand"), part.Given{}, nil), "service-aluminum")
	if c == nil || !strings.Contains(strings.Join(c.Why, " "), "302 °F") {
		t.Fatalf("%+v", c)
	}
	// 356.0-T6 sand at 300 °F: 23 ksi (elevated temperature table), and that
	// is what is shown.
	for _, s := range c.Figures {
		if strings.HasPrefix(s.Role, "pin") && s.Property == props.TensileStrength && s.Figure.Value.String() != "23 ksi" {
			t.Errorf("shown at service: %s", s.Figure.Value)
		}
	}
}

// Beside a caution on heat stands the figure at the part's own temperature, or
// why there is none.
func TestFigureAtService(t *testing.T) {
	hot := 150.0
	given := part.Given{Hottest: &hot}
	for id, want := range map[string]string{
		"356-t6-sand": "23 ksi", // elevated temperature table, 300 °F after 10 000 h
		"a356-t61-pm": "no figure at the service temperature",
	} {
		c := find(data.Watch().Evaluate(compare.NewBench(), material(t, "gray-30"), material(t, id), given, nil), "service-aluminum")
		if c == nil || c.Figures[0].Role != "pin at service" {
			t.Fatalf("%s: %+v", id, c)
		}
		have := c.Figures[0].Absent
		if c.Figures[0].Figure != nil {
			have = c.Figures[0].Figure.Value.String()
		}
		if !strings.HasPrefix(have, want) {
			t.Errorf("%s: have %s, want %s", id, have, want)
		}
	}
}

// The weaker rule gives way to the stronger.
func TestUnless(t *testing.T) {
	a, b := material(t, "a380-f-die"), material(t, "zn-3-die")
	if list := data.Watch().Evaluate(compare.NewBench(), a, b, part.Given{With: part.SustainedLoad}, nil); find(list, "creep-zinc") == nil || find(list, "creep-zinc-change") != nil {
		t.Error(ids(list))
	}
	// Also when the stronger is put aside.
	if list := data.Watch().Evaluate(compare.NewBench(), a, b, part.Given{With: part.SustainedLoad}, []string{"creep-zinc"}); find(list, "creep-zinc-change") != nil {
		t.Error(ids(list))
	}
}

func TestFacts(t *testing.T) {
	for _, f := range part.AllFacts() {
		got, err := part.ParseFact(strings.ToUpper(f.ID()))
		if err != nil || got != f || f.String() == "" {
			t.Errorf("%s: %v %v", f.ID(), got, err)
		}
	}
	if len(part.AllFacts()) != 27 || part.AllFacts()[26] != part.Hazardous {
		t.Error("facts and their names do not match")
	}
	if _, err := part.ParseFact("press fit"); err == nil || !strings.Contains(err.Error(), "press-fit") {
		t.Error(err)
	}
	if s := (part.PressFit | part.Weld).String(); s != "pressed or shrunk to a mate, welding or weld repair" {
		t.Error(s)
	}
}

func BenchmarkEvaluate(b *testing.B) {
	m := data.Catalog()
	base, pin, mate := m.Material("gray-30"), m.Material("a356-t6-pm"), m.Material("1045-cold-drawn-wrought")
	hot := 150.0
	for b.Loop() {
		data.Watch().Evaluate(compare.NewBench(), base, pin, part.Given{Hottest: &hot, Mate: mate, With: 1<<23 - 1}, nil)
	}
}
