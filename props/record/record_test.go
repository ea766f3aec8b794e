package record

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"alongside/units"
)

const sample = `# a comment
[[alloy]]
id = "w" # the id
rating = 2
tempers = ["T6", "F"]
density = "0.097 lb/in3"

[alloy.composition]
Si = "7.0"

[[alloy.material]]
temper = "T6"

[[alloy.material]]
temper = "F"
`

func one(t *testing.T, text string, kinds ...string) (*Record, *Errors) {
	t.Helper()
	errs := &Errors{}
	list := ReadRecords("w.toml", []byte(text), errs, kinds...)
	if len(list) != 1 {
		t.Fatalf("%d records: %v", len(list), *errs)
	}
	return list[0], errs
}

func TestRead(t *testing.T) {
	r, errs := one(t, sample, "alloy")
	if r.Kind() != "alloy" || r.File() != "w.toml" || r.LineOf("id") != 3 || r.LineOf("none") != 2 {
		t.Errorf("%s in %s, id at %d, the record at %d", r.Kind(), r.File(), r.LineOf("id"), r.LineOf("none"))
	}
	if want := []string{"id", "rating", "tempers", "density", "composition", "material"}; !slices.Equal(r.Keys(), want) {
		t.Errorf("keys %q", r.Keys())
	}
	r.AllowNumber("rating")
	if r.Text("id", true) != "w" || r.Text("rating", true) != "2" || r.Text("name", false) != "" || !r.Absent("name") || r.Absent("id") {
		t.Error("texts")
	}
	if want := []string{"T6", "F"}; !slices.Equal(r.Texts("tempers"), want) || !slices.Equal(r.Texts("id"), []string{"w"}) || r.Texts("none") != nil {
		t.Error("lists of texts")
	}
	if q, ok := r.Quantity("density", r.Text("density", true), units.Density, units.NoUnit, "2.7 g/cm3"); !ok || q.String() != "0.097 lb/in³" {
		t.Errorf("density %s", q)
	}
	if c := r.Table("composition"); c == nil || c.Text("Si", true) != "7.0" || c.LineOf("Si") != 9 {
		t.Error("the table")
	}
	materials := r.Tables("material")
	if len(materials) != 2 || materials[1].Text("temper", true) != "F" || materials[1].LineOf("temper") != 15 {
		t.Error("the tables")
	}
	if r.Table("none") != nil || r.Tables("none") != nil || len(r.Rest()) != 0 {
		t.Errorf("left over: %q", r.Rest())
	}
	if r.Finish(); len(*errs) > 0 {
		t.Error(*errs)
	}
}

// Every mistake says file, line, record, field and remedy.
func TestMistakes(t *testing.T) {
	for text, want := range map[string]string{
		`id = ""`:                             "w.toml:2: rec, id: is empty\n    remedy: write a value or delete the record",
		`id = 3`:                              "w.toml:2: rec, id: is 3, not text\n    remedy: put it in quotes: id = \"3\"",
		`id = "a\tb"`:                         "holds a control character (U+0009)",
		`idd = "w"`:                           "w.toml:1: rec, id: is missing\n    remedy: add id = \"…\"",
		"id = \"w\"\nlist = \"x\"\nextra = 1": "w.toml:4: rec, extra: is not a key of this record",
		"id = \"w\"\nlist = 1":                "is not a list of tables",
		"id = \"w\"\ntable = 1":               "is not a table",
		"id = \"w\"\nsize = \"26 kis\"":       "\"26 kis\": ",
		"id = \"w\"\nsize = \"30–20 ksi\"":    "understood a range whose first end is the larger; expected the smaller end first",
		"id = \"w\"\nsize = \"4 in\"":         "understood 4 in (length); expected a unit of stress",
	} {
		r, errs := one(t, "[[alloy]]\n"+text+"\n", "alloy")
		r.Label = "rec"
		r.Text("id", true)
		r.Tables("list")
		r.Table("table")
		if size := r.Text("size", false); size != "" {
			if _, ok := r.Quantity("size", size, units.Stress, units.NoUnit, "30 ksi"); ok {
				t.Errorf("%s: taken", text)
			}
		}
		r.Finish()
		if have := errs.Error(); !strings.Contains(have, want) {
			t.Errorf("%s:\nhave %s\nwant %s", text, have, want)
		}
	}
}

// Mistakes of form, each told once and with the line; what is sound is read all
// the same.
func TestForm(t *testing.T) {
	for text, want := range map[string]string{
		"loose = 1\n[[alloy]]\nid = \"w\"":            "1: loose: does not belong to any record\n    remedy: records start with [[alloy]]",
		"[[aloy]]\nid = \"v\"\n[[alloy]]\nid = \"w\"": "1: aloy: is not a kind of record\n    remedy: did you mean alloy?",
		"[[alloy]]\nid = \"v\n[[alloy]]\nid = \"w\"":  "remedy: close the quotes",
		"[[alloy]]\nid = v\n[[alloy]]\nid = \"w\"":    "remedy: put the value in quotes",
		"[[alloy]]\nid\n[[alloy]]\nid = \"w\"":        "write key = \"value\"",
		"[[alloy]]\n[b\n[[alloy]]\nid = \"w\"":        "w.toml:2",
		"\xff\n[[alloy]]\nid = \"w\"":                 "the file is not UTF-8 text",
	} {
		errs := &Errors{}
		list := ReadRecords("w.toml", []byte(text), errs, "alloy")
		if have := errs.Error(); !strings.Contains(have, want) {
			t.Errorf("%q:\nhave %s\nwant %s", text, have, want)
		}
		if n := len(list); n == 0 || list[n-1].Text("id", true) != "w" {
			t.Errorf("%q: the sound record is lost", text)
		}
	}
	errs := &Errors{}
	ReadRecords("w.toml", []byte("loose = 1\n"), errs)
	if have := errs.Error(); !strings.Contains(have, "records start with a name in double brackets: [[loose]]") {
		t.Error(have)
	}
}

func TestMistakesInOrder(t *testing.T) {
	list := Errors{{File: "b", Line: 1}, {File: "a", Line: 9}, {File: "a", Line: 2}}
	if s := list.Sorted(); s[0].Line != 2 || s[1].Line != 9 || s[2].File != "b" {
		t.Errorf("%v", s)
	}
	many := make([]string, 90)
	for i := range many {
		many[i] = fmt.Sprintf("word%02d", i)
	}
	if s := DidYouMean("xyzzy", many); !strings.HasSuffix(s, "word79 and 10 more") {
		t.Error(s)
	}
	if s := DidYouMean("xyzzy", []string{"b", "a"}); s != "use one of: a, b" {
		t.Error(s)
	}
}
