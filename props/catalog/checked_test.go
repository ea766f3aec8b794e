package catalog

import (
	"strings"
	"testing"

	"alongside/props"
)

// check is a record that the shop looked up the density of X1, with what else
// the test changes in it.
func check(changes ...string) string {
	text := `[[checked]]
of = "alloy x1"
property = "density"
basis = "typical"
source = "BOOK"
catalog = "0.100 lb/in³"
edition = "1993"
table = "Table 3"
by = "JK"
on = "2026-11-26"
`
	return strings.NewReplacer(changes...).Replace(text)
}

func withChecks(t *testing.T, base *Catalog, text string) *Catalog {
	t.Helper()
	c, err := LoadFiles(base, []File{{"checked.toml", []byte(text)}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestChecked(t *testing.T) {
	base := shop(t)
	c := withChecks(t, base, check("by =", "reads = \"0.102 lb/in3\"\nby ="))
	for _, id := range []string{"x1-f-sand", "x1-t6-pm"} { // it is stated for the alloy
		f := get(t, c, id).Figures(props.Density)[0]
		if f.Known() != props.Checked || f.Value.String() != "0.102 lb/in³" || f.Was.Value.String() != "0.100 lb/in³" || f.Was.Known() != props.Memory || f.Table != "Table 3" {
			t.Errorf("%s: %v %s %q was %v", id, f.Known(), f.Value.String(), f.Table, f.Was)
		}
	}
	if f := get(t, base, "x1-f-sand").Figures(props.Density)[0]; f.Was != nil || f.Value.String() != "0.100 lb/in³" {
		t.Error("the base was changed")
	}
	if f := get(t, c, "x1-f-sand").Figures(props.ElectricalConductivity)[0]; f.Known() != props.Memory {
		t.Error("a figure beside it is checked too")
	}
	// What is looked up again is what the catalog had, not what the shop read.
	again := withChecks(t, c, check())
	if f := get(t, again, "x1-f-sand").Figures(props.Density)[0]; f.Value.String() != "0.100 lb/in³" || f.Known() != props.Checked || len(again.Dropped) > 0 {
		t.Errorf("checked again: %s, %v; dropped %q", f.Value.String(), f.Known(), again.Dropped)
	}
}

func TestCheckedForFamilyAndMaterial(t *testing.T) {
	base := shop(t)
	c := withChecks(t, base, check("alloy x1", "family gray-iron; sand", "density", "pattern_shrinkage", "0.100 lb/in³", "0.125 in/ft")+
		check("alloy x1", "x1-f-sand", "density", "elongation", "0.100 lb/in³", "2.0 %", "by =", "conditions = \"in 2 in\"\nby ="))
	iron := get(t, c, "gray-30")
	if f := iron.Figures(props.PatternShrinkage)[0]; f.Known() != props.Checked || iron.Alloy.Family != c.Families[1] || iron.Alloy.Family == base.Families[1] {
		t.Errorf("the figure of the family: %v; dropped: %q", f.Known(), c.Dropped)
	}
	if f := get(t, c, "x1-f-sand").Figures(props.Elongation)[0]; f.Known() != props.Checked {
		t.Errorf("the figure of the material: %v; dropped: %q", f.Known(), c.Dropped)
	}
}

// A check of a figure that the catalog does not have like that any more is never
// applied; a word says why.
func TestCheckDropped(t *testing.T) {
	base := shop(t)
	for text, want := range map[string]string{
		check("0.100", "0.101"):           "x1, density 0.101 lb/in³ (BOOK) is not used: the catalog has 0.100 lb/in³ now; look it up again",
		check("alloy x1", "alloy x9"):     "the catalog no longer has this figure",
		check("alloy x1", "x9-t6"):        "the catalog no longer has this figure",
		check("alloy x1", "family tin"):   "the catalog no longer has this figure",
		check("density", "solidus"):       "the catalog no longer has this figure",
		check("alloy x1", "alloy x1; T9"): "the catalog no longer has this figure",
	} {
		c := withChecks(t, base, text)
		if len(c.Dropped) != 1 || !strings.Contains(c.Dropped[0], want) || !strings.HasPrefix(c.Dropped[0], "checked.toml:1: ") {
			t.Errorf("%q, want %q", c.Dropped, want)
		}
		for _, f := range c.Stated() {
			if f.Known() == props.Checked {
				t.Errorf("applied all the same:\n%s", text)
			}
		}
	}
}

func TestCheckMistakes(t *testing.T) {
	base := shop(t)
	for text, want := range map[string]string{
		check("edition = \"1993\"\n", ""):               "edition",
		check("2026-11-26", "26.11.2026"):               `"26.11.2026" is not a date`,
		check("by =", "reads = \"3 ksi\"\nby ="):        "checked.toml:9",
		check("by =", "reads = \"> 0.1 lb/in3\"\nby ="): "is no bare value",
		check("by =", "reads = \"-3 lb/in3\"\nby ="):    "cannot be negative",
		check("by =", "color = \"3\"\nby ="):            "color",
		check("JK", strings.Repeat("J", 201)):           "longer than 200",
		check("JK", `\u001b[2J`):                        "control character",
		check("of = \"alloy x1\"\n", ""):                "of",
	} {
		if _, err := LoadFiles(base, []File{{"checked.toml", []byte(text)}}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
