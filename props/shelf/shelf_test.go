package shelf

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
)

// figure is the first waiting figure of a material, with its key.
func figure(t testing.TB, id string, p props.PropertyID) Item {
	t.Helper()
	for _, x := range Waiting(data.Catalog(), false) {
		if x.Of == id && x.Figure.Property == p {
			return x
		}
	}
	t.Fatalf("%s has no waiting %s", id, p)
	return Item{}
}

func TestWaiting(t *testing.T) {
	c := data.Catalog()
	memory, both := Waiting(c, false), Waiting(c, true)
	if len(memory) == 0 || len(both) <= len(memory) {
		t.Fatalf("%d from memory, %d with those that agree", len(memory), len(both))
	}
	keys := map[string]catalog.Place{}
	for i, x := range both {
		key := Key(x.Place)
		if _, twice := keys[key]; twice {
			t.Errorf("%s stands for %v and %v", key, keys[key], x.Place)
		}
		keys[key] = x.Place
		if i > 0 && x.Figure.Source == both[i-1].Figure.Source && natural(both[i-1].Figure.Table, x.Figure.Table) > 0 {
			t.Errorf("%s: %q stands before %q", x.Figure.Source.ID, both[i-1].Figure.Table, x.Figure.Table)
		}
	}
	for _, x := range memory {
		if x.Figure.Known() != props.Memory {
			t.Errorf("%v is %v", x.Place, x.Figure.Known())
		}
	}
}

func TestNatural(t *testing.T) {
	list := []string{"", "Table 2", "Table 02a", "Table 10", "Table 10, note 2", "Table A.1"}
	for i := range list[1:] {
		if natural(list[i], list[i+1]) >= 0 || natural(list[i+1], list[i]) <= 0 || natural(list[i], list[i]) != 0 {
			t.Errorf("%q does not stand before %q", list[i], list[i+1])
		}
	}
}

const filled = "Edition: 2015\nTable: Table 4, a long\n  name\nBy: JK\nOn: 2026-11-26\n"

func TestTakeText(t *testing.T) {
	a, b := figure(t, "6061-o-wrought", props.ShearStrength), figure(t, "6061-o-wrought", props.FatigueStrength)
	got, err := Take("list.txt", "Any line.\n"+filled+"[ ] bbbbbbbb not ticked\n[X] "+Key(a.Place)+" 6061\n  broken line\nTable: Table 5\r\n[ 9.5 ] "+Key(b.Place)+"\r\n", data.Catalog())
	if err != nil {
		t.Fatal(err)
	}
	want := []catalog.Check{
		{Place: a.Place, Edition: "2015", Table: "Table 4, a long name", By: "JK", On: "2026-11-26"},
		{Place: b.Place, Reads: "9.5 ksi", Edition: "2015", Table: "Table 5", By: "JK", On: "2026-11-26"},
	}
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%+v\nwant %+v", got, want)
	}
}

// The value that the catalog has is a tick, whatever the form it is typed in.
func TestTakeSameValue(t *testing.T) {
	a := figure(t, "6061-o-wrought", props.ShearStrength)
	got, err := Take("list.txt", filled+"["+a.Catalog+"] "+Key(a.Place), data.Catalog())
	if err != nil || len(got) != 1 || got[0].Reads != "" {
		t.Errorf("%+v, %v", got, err)
	}
}

// Every line that is half filled or wrong is told with its number, and nothing
// is taken.
func TestTakeRefuses(t *testing.T) {
	key := Key(figure(t, "6061-o-wrought", props.ShearStrength).Place)
	head := "box,edition,table,by,on,key\n"
	for text, want := range map[string]string{
		"":                    "list:1: box: no box is ticked",
		filled + "[ ] " + key: "no box is ticked",
		"[x] " + key:          "list:1: edition: is missing",
		"Edition: 1\nBy: a\nOn: 2026-11-26\n[x] " + key:             "list:4: table: is missing",
		filled + "On:\n[x] " + key:                                  "list:7: on: is missing",
		filled + "On: 11/26/2026\n[x] " + key:                       "year, month and day",
		filled + "[x] bbbbbbbb":                                     "list:6: bbbbbbbb: is no figure of the catalog",
		filled + "[x]":                                              "is no figure of the catalog",
		filled + "[x " + key:                                        "list:6: box: is not closed",
		filled + "[yes] " + key:                                     `list:6: box: "yes"`,
		filled + "[38 MPa in] " + key:                               "list:6: box",
		filled + "[4 in] " + key:                                    "list:6: box",
		filled + "[40-30 ksi] " + key:                               "list:6: box",
		filled + "[x] " + key + "\n[x] " + key:                      "list:7: " + key + ": is ticked in line 6 already",
		filled + "By: \x1b[2J\n[x] " + key:                          "list:7: by:",
		filled + "By: " + strings.Repeat("J", 201) + "\n[x] " + key: "longer than 200",
		"\xff\xfeb\x00o\x00":                                        "not UTF-8",
		head + "x,2015,T,JK,," + key:                                "list:2: on: is missing",
		head + "x,2015":                                             "list:2",
		"box,edition\nx,2015":                                       "list:1: table: is no column",
		head + ",2015,T,JK,2026-11-26," + key:                       "no box is ticked",
		"box;edition;table;by;on;key\nx;2015;T;;2026-11-26;" + key:  "list:2: by: is missing",
	} {
		got, err := Take("list", text, data.Catalog())
		if err == nil || !strings.Contains(err.Error(), want) || got != nil {
			t.Errorf("%q\ngives %v, %v\nwant %q", text, got, err, want)
		}
	}
}

// Merge keeps what else the file holds, and one check a figure.
func TestMerge(t *testing.T) {
	a, b := figure(t, "6061-o-wrought", props.ShearStrength), figure(t, "6061-o-wrought", props.FatigueStrength)
	old := "# Ours.\n[[source]]\nid = \"LAB\"\ntitle = \"Bars\"\nkind = \"house\"\n\n[[checked]] # shear\nof = \"6061-o-wrought\"\nproperty = \"shear_strength\"\nbasis = \"typical\"\nsource = \"AA-ADS\"\n" +
		"catalog = \"12 ksi\"\nedition = \"2010\"\n# seen twice\ntable = \"T\"\nby = \"XY\"\non = \"2026-01-02\"\n\n# Bars follow.\n[[house]]\nmaterial = \"6061-o-wrought\"\n[[house.figures]]\nbasis = \"house\"\nsource = \"LAB\"\nknown = \"read\"\ntensile_strength = \"18 ksi\"\n"
	check := func(x Item) catalog.Check {
		return catalog.Check{Place: x.Place, Edition: "2015 \"blue\" \\ µ", Table: "T", By: "JK", On: "2026-11-26"}
	}
	once, err := Merge("f.toml", []byte(old), []catalog.Check{check(a), check(b)})
	if err != nil {
		t.Fatal(err)
	}
	text := string(once)
	if strings.Count(text, "[[checked]]") != 2 || strings.Contains(text, "2010") || !strings.Contains(text, "# Bars follow.\n[[house]]") || !strings.HasPrefix(text, "# Ours.\n[[source]]") {
		t.Errorf("merged to:\n%s", text)
	}
	twice, err := Merge("f.toml", once, []catalog.Check{check(b), check(a)})
	if err != nil || !bytes.Equal(once, twice) {
		t.Errorf("taken twice: %v\n%s", err, twice)
	}
	c, err := catalog.LoadFiles(data.Catalog(), []catalog.File{{Name: "f.toml", Content: twice}})
	if err != nil || len(c.Dropped) > 0 {
		t.Fatal(err, c.Dropped)
	}
	if f := c.Material("6061-o-wrought").Figures(props.ShearStrength)[0]; f.Known() != props.Checked || !strings.Contains(f.Where, `2015 "blue" \ µ`) {
		t.Errorf("%v, %s", f.Known(), f.Where)
	}
	if _, err := Merge("f.toml", []byte("[[checked]\nof"), nil); err == nil {
		t.Error("a broken file was merged into")
	}
}

func FuzzTake(f *testing.F) {
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml") // a small one, many tries
	if err != nil {
		f.Fatal(err)
	}
	key := Key(Waiting(c, false)[0].Place)
	for _, s := range []string{filled + "[x] " + key, filled + "[12.5 ksi] " + key, "box,edition,table,by,on,key\nx,2015,T,JK,2026-11-26," + key, "box\t\"", "[", "By:\n ["} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		checks, err := Take("list", s, c)
		if (err == nil) != (len(checks) > 0) {
			t.Fatalf("%d checks, %v", len(checks), err)
		}
		if len(checks) == 0 {
			return
		}
		text, err := Merge("f.toml", nil, checks)
		if err != nil {
			t.Fatal(err)
		}
		with, err := catalog.LoadFiles(c, []catalog.File{{Name: "f.toml", Content: text}})
		if err != nil || len(with.Dropped) > 0 {
			t.Fatalf("what was taken cannot be read: %v %v\n%s", err, with.Dropped, text)
		}
	})
}
