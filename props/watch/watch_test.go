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
	for _, line := range strings.Split(strings.TrimSpace(string(content)), "\n")[2:] {
		f := strings.Split(line, "\t")
		if len(f) != 9 {
			t.Fatalf("%d cells in %q", len(f), line)
		}
		id := f[0]
		seen[id] = true
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
			if list := data.Watch().Evaluate(compare.NewBench(), material(t, f[7]), material(t, f[8]), given, nil); find(list, id) != nil {
				t.Errorf("%s → %s raises it too: %v", f[7], f[8], find(list, id).Why)
			}
		})
	}
	for _, r := range data.Watch().List {
		if !seen[r.ID] {
			t.Errorf("no change of metal in the table raises %s", r.ID)
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
