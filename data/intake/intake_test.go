package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

const figures = `[[source]]
id = "AA-ADS"
title = "Association table"
kind = "association"
[[source]]
id = "DS-MECH"
title = "Dataset"
kind = "trade"
[[family]]
id = "metal"
name = "metal"

[[family.figures]]
basis = "typical"
source = "AA-ADS"
known = "memory"
poisson_ratio = "0.33"

# The alloy of the test
[[alloy]]
id = "x1"
name = "X1"
family = "metal"

[[alloy.figures]]
basis = "typical"
source = "AA-ADS"
known = "memory"
density = "0.098 lb/in3"
thermal_expansion = ["13.1 uin/in-F; 68–212 °F", "14.0 uin/in-F; 68–572 °F"]

# as cast
[[alloy.material]]
process = "sand"

[[alloy.material.figures]]
basis = "typical"
source = "AA-ADS"
known = "memory"
conditions = "0.2 % offset; in 2 in; 500 kgf/10 mm"
tensile_strength = "45 ksi"
yield_strength = "40 ksi"
elongation = "12 %; (note)"
hardness_brinell = "95"
`

const header = "material_id,property,basis,value,value_hi,unit,conditions,source,table,where,catalog_value,agree,note\n"

const (
	handbook = ",AA-ADS,,materials-selection handbook,,yes,\n"
	dataset  = ",DS-MECH,,open dataset,,yes,\n"
)

// taken runs the intake on the data file above with the rows of a page, twice,
// and returns the data file.
func taken(t *testing.T, rows string) string {
	t.Helper()
	data, pages := t.TempDir(), t.TempDir()
	if err := os.Mkdir(filepath.Join(data, "intake"), 0o755); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(data, "x.toml")
	write := func(name, text string) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(name, figures)
	write(filepath.Join(pages, "rows.csv"), header+rows)
	rules := &rules{Refuse: []string{"other stock"}, Rule: []rule{
		{Source: "AA-ADS", Pages: []string{"materials-selection"}, Read: []string{"AA-ADS"}, Where: "handbook page", Agrees: "AA-ADS"},
		{Source: "DS-MECH", Agrees: "DS-MECH"},
	}}
	var first string
	for range 2 {
		if err := take(rules, data, []string{pages}, filepath.Join(data, "intake"), true); err != nil {
			t.Fatal(err)
		}
		text := ""
		for _, name := range []string{name, filepath.Join(data, "intake", "log.csv"), filepath.Join(data, "intake", "left.csv")} {
			content, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			text += string(content)
		}
		if first != "" && text != first {
			t.Errorf("a second run changes the files:\n%s\nwas\n%s", text, first)
		}
		first = text
	}
	content, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := catalog.Load(os.DirFS(data)); err != nil {
		t.Errorf("the file does not load any more: %v", err)
	}
	return string(content)
}

func TestWholeBlockBecomesRead(t *testing.T) {
	have := taken(t, "x1-sand,tensile_strength,typical,310,,MPa,"+handbook+ // 45 ksi is 310.3 MPa
		"x1-sand,yield_strength,typical,40,,ksi,0.2 % offset"+handbook+
		"x1-sand,elongation,typical,12,,%,in 2 in"+handbook+
		"x1-sand,hardness_brinell,typical,95,,HB,500 kgf"+handbook)
	want := strings.Replace(figures, "known = \"memory\"\nconditions", "known = \"read\"\nwhere = \"handbook page\"\nconditions", 1)
	if have != want {
		t.Errorf("have\n%s\nwant\n%s", have, want)
	}
}

func TestBlockIsSplit(t *testing.T) {
	have := taken(t, "x1,density,typical,2.71,,g/cm3,"+dataset+"x1,thermal_expansion,typical,14.0,,uin/in-F,68–572 °F"+handbook)
	want := `
[[alloy.figures]]
basis = "typical"
source = "AA-ADS"
known = "read"
where = "handbook page"
thermal_expansion = "14.0 uin/in-F; 68–572 °F"

[[alloy.figures]]
basis = "typical"
source = "AA-ADS"
known = "memory"
density = "0.098 lb/in3; agrees DS-MECH"
thermal_expansion = "13.1 uin/in-F; 68–212 °F"

# as cast
`
	if !strings.Contains(have, want) {
		t.Errorf("have\n%s\nwant\n%s", have, want)
	}
}

// A figure of the whole family is taken from a page that speaks of the family.
func TestFamilyBecomesRead(t *testing.T) {
	have := taken(t, "metal,poisson_ratio,typical,0.33,,,"+handbook)
	want := "source = \"AA-ADS\"\nknown = \"read\"\nwhere = \"handbook page\"\npoisson_ratio = \"0.33\"\n"
	if !strings.Contains(have, want) {
		t.Errorf("have\n%s\nwant\n%s", have, want)
	}
}

// What must not be taken: another value, another test, another basis, a page
// without a rule, a remark, a reader's no, digits too few to prove anything.
func TestNotTaken(t *testing.T) {
	for _, row := range []string{
		"x1-sand,tensile_strength,typical,44,,ksi," + handbook,
		"x1-sand,yield_strength,typical,40,,ksi,0.5 % EUL" + handbook,
		"x1-sand,hardness_brinell,typical,95,,HB,3000 kgf" + handbook,
		"x1-sand,tensile_strength,minimum,45,,ksi," + handbook,
		"x1-sand,tensile_strength,typical,45,,ksi,at 300 °F" + handbook,
		"x1-sand,tensile_strength,typical,45,,ksi,class 1" + handbook,
		"x1-sand,tensile_strength,typical,45,,ksi,,AA-ADS,,hobby page,,yes,\n",
		"x1-sand,tensile_strength,typical,45,,ksi,,AA-ADS,,materials-selection handbook,,no,\n",
		"x1-sand,tensile_strength,typical,45,,ksi,,AA-ADS,,materials-selection handbook,,yes,printed for other stock\n",
		"x1,density,typical,0.1,,lb/in3," + handbook,
		"x1,thermal_expansion,typical,13.1,,uin/in-F," + dataset, // no range: which of the two?
		"x1,poisson_ratio,typical,0.33,,," + handbook,            // the page speaks of one alloy, the figure of the family
		"x2,density,typical,0.098,,lb/in3," + handbook,
	} {
		if have := taken(t, row); have != figures {
			t.Errorf("%s: taken:\n%s", strings.TrimSpace(row), have)
		}
	}
}

// A standard or association is named before a compilation without a source.
func TestBetterDocumentIsNamed(t *testing.T) {
	trade, book := &props.Source{ID: "DS-MECH", Kind: "trade"}, &props.Source{ID: "TXT", Kind: "textbook"}
	c := &catalog.Catalog{Sources: []*props.Source{trade, book}}
	f := &props.Figure{Block: &props.Block{Source: &props.Source{ID: "AA-ADS"}}}
	for _, order := range [][2]string{{"DS-MECH", "TXT"}, {"TXT", "DS-MECH"}} {
		v := &verdict{}
		for _, id := range order {
			v.judge(c, &rule{Agrees: id}, f)
		}
		if v.agrees != book {
			t.Errorf("%v: names %v", order, v.agrees)
		}
	}
	if (&verdict{}).judge(c, &rule{Agrees: "AA-ADS"}, f) {
		t.Error("a figure agrees with its own source")
	}
}

func TestHeldIsATenth(t *testing.T) {
	held := 0
	for i := range 1000 {
		if (&row{Material: "x1", Value: string(rune('a' + i%26)), Conditions: strings.Repeat("x", i)}).held() {
			held++
		}
	}
	if held < 70 || held > 130 {
		t.Errorf("%d of 1000 rows are held out", held)
	}
}
