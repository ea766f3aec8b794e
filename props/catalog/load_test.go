package catalog

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/record"
)

const head = `[[source]]
id = "S"
title = "Invented handbook"
kind = "handbook"

[[family]]
id = "aluminum"
name = "aluminum"

[[alloy]]
id = "x1"
name = "X1"
family = "aluminum"
[[alloy.material]]
temper = "T6"
process = "sand"
`

const figures = head + `[[alloy.material.figures]]
basis = "typical"
source = "S"
known = "read"
`

var remembered = strings.Replace(figures, `known = "read"`, `known = "memory"`, 1)

// A figure from memory that agrees with another document stands between those
// that were read and those from memory alone; a source knows its successor.
func TestDegrees(t *testing.T) {
	in := remembered + `density = "2.71 g/cm3"` + "\n" +
		strings.TrimPrefix(remembered, head) + `density = "2.72 g/cm3; agrees T"` + "\n" +
		strings.TrimPrefix(figures, head) + `density = "2.73 g/cm3"` + "\n" +
		"[[source]]\nid = \"T\"\ntitle = \"Dataset\"\nkind = \"trade\"\nsuccessor = \"S\"\n[[everyday]]\nids = [\"x1-t6-sand\"]\n"
	c, err := Load(fstest.MapFS{"f.toml": {Data: []byte(in)}})
	if err != nil {
		t.Fatal(err)
	}
	list := get(t, c, "x1-t6-sand").Figures(props.Density)
	for i, want := range []struct {
		value float64
		known props.Known
	}{{2.73, props.Read}, {2.72, props.Agreed}, {2.71, props.Memory}} {
		if f := list[i]; f.Value.Lo != want.value || f.Known() != want.known || (f.Agrees != nil) != (want.known == props.Agreed) {
			t.Errorf("place %d: %v %v, want %v", i, f.Value, f.Known(), want)
		}
	}
	if s := list[1].Agrees; s == nil || s.ID != "T" || s.Successor == nil || s.Successor.ID != "S" {
		t.Errorf("agrees with %+v", s)
	}
	if len(c.Everyday) != 1 || c.Everyday[0] != "x1-t6-sand" {
		t.Errorf("everyday %v", c.Everyday)
	}
}

// Every mistake a person makes gets file, line, field and remedy.
func TestLoadErrors(t *testing.T) {
	for _, tt := range []struct{ name, in, want string }{
		{"unknown unit", figures + `tensile_strength = "37 kis"`, `bad.toml:21: x1-t6-sand, tensile_strength: "37 kis"`},
		{"wrong dimension", figures + `tensile_strength = "0.1 lb/in3"`, `bad.toml:21: x1-t6-sand, tensile_strength: "0.1 lb/in3"`},
		{"no unit", figures + `density = "0.097"`, `bad.toml:21: x1-t6-sand, density`},
		{"comma decimal", figures + `density = "0,097 lb/in3"`, `bad.toml:21: x1-t6-sand, density: "0,097 lb/in3"`},
		{"unquoted comma decimal", figures + `density = 0,097`, `bad.toml:21: `},
		{"bare number", figures + `density = 0.097`, `bad.toml:21: x1-t6-sand, density: is 0.097, not text`},
		{"swapped range", figures + `hardness_brinell = "100–70"`, `bad.toml:21: x1-t6-sand, hardness_brinell`},
		{"text in a number", figures + `elongation = "twelve %"`, `bad.toml:21: x1-t6-sand, elongation`},
		{"more than all", figures + `elongation = "200 %"`, `bad.toml:21: x1-t6-sand, elongation: "200 %": cannot be above 100 %`},
		{"more than an isotropic metal has", figures + `poisson_ratio = "0.7"`, `cannot be above 0.5`},
		{"range without its end", figures + `tensile_strength = "30– ksi"`, "understood a range without its second end; expected a range such as 30-40"},
		{"power too large", figures + `tensile_strength = "1e400 ksi"`, `tensile_strength: "1e400 ksi": expected a power of ten of at most 60`},
		{"composition below 0", head + "[alloy.composition]\nsource = \"S\"\nknown = \"read\"\nSi = \"-3\"", `bad.toml:20: x1, Si: "-3" is not from 0 to 100 %`},
		{"composition above 100", head + "[alloy.composition]\nsource = \"S\"\nknown = \"read\"\nSi = \"300 max\"", `bad.toml:20: x1, Si: "300 max" is not from 0 to 100 %`},
		{"no element", head + "[alloy.composition]\nsource = \"S\"\nknown = \"read\"\nXx = \"1\"", "bad.toml:20: x1, Xx: is not the symbol of an element"},
		{"prose", "Dear all, figures follow.", "bad.toml:1: is no line of the form key = \"value\"\n    remedy: write key"},
		{"negative", figures + `elongation = "-2 %"`, `cannot be negative`},
		{"zero", figures + `elongation = "0 %"`, `zero is not a figure`},
		{"rating out of range", figures + `rating_fluidity = 7`, `a rating is a whole number from 1 (best) to 5`},
		{"limit instead of a value", figures + `tensile_strength = ">= 30 ksi"`, `is a limit`},
		{"overlong text", figures + `elongation = "` + strings.Repeat("4", 100_000) + `"`, "…\n    remedy: "},
		{"id of odd characters", strings.Replace(head, `id = "x1"`, `id = "x 1/.."`, 1), `"x 1/.." holds more than letters`},
		{"figure and none", figures + "density = \"2.7 g/cm3\"\n[alloy.material.none]\ndensity = \"too light\"", "density: has a figure, and a reason why there is none"},
		{"unknown condition", figures + `yield_strength = "20 ksi; 0.2 % ofset"`, `"0.2 % ofset" is not a known condition`},
		{"unknown property", figures + `tensil_strength = "20 ksi"`, "did you mean tensile_strength?"},
		{"empty block", figures, "the block holds no figure"},
		{"wrong basis", head + "[[alloy.material.figures]]\nbasis = \"typicl\"\nsource = \"S\"\nknown = \"read\"\ndensity = \"1 g/cm3\"", `bad.toml:18: x1-t6-sand, basis: "typicl" is not a basis`},
		{"unknown source", head + "[[alloy.material.figures]]\nbasis = \"typical\"\nsource = \"T\"\nknown = \"read\"\ndensity = \"1 g/cm3\"", `bad.toml:19: x1-t6-sand, source: "T" is not in the source list`},
		{"unknown process", strings.Replace(head, `"sand"`, `"snad"`, 1), "bad.toml:16: x1, process: \"snad\" is not a process\n    remedy: use one of: sand, pm"},
		{"unknown family", strings.Replace(head, `family = "aluminum"`, `family = "aluminium"`, 1), "did you mean aluminum?"},
		{"unknown key", head + "color = \"blue\"", `bad.toml:17: x1-t6-sand, color: is not a key of this record`},
		{"duplicate material", head + "[[alloy.material]]\ntemper = \"T6\"\nprocess = \"sand\"", `bad.toml:17: x1-t6-sand, id: "x1-t6-sand" is already in bad.toml:14`},
		{"duplicate key", head + "temper = \"T7\"", "bad.toml:17: "},
		{"open quotes", figures + `density = "0.1 lb/in3`, "close the quotes"},
		{"control character", strings.Replace(head, `"X1"`, `"X1\u001b[31m"`, 1), "bad.toml:12: x1, name: holds a control character (U+001B)"},
		{"not UTF-8", figures + "density = \"2.7 g/cm3; (\xb5)\"", "bad.toml:21: the file is not UTF-8 text"},
		{"unknown property that does not exist", "[[alloy]]\n[alloy.none]\n0 = \"\"", `0: is not a property`},
		{"missing key", strings.Replace(head, "kind = \"handbook\"\n", "", 1), "bad.toml:1: S, kind: is missing"},
		{"stray key before any record", "density = 1\n" + head, "bad.toml:1: density: does not belong to any record"},
		{"agreement of a figure that was read", figures + `density = "2.7 g/cm3; agrees S"`, `bad.toml:21: x1-t6-sand, density: agrees with another document, but was read`},
		{"agreement with nothing", remembered + `density = "2.7 g/cm3; agrees T"`, `bad.toml:21: x1-t6-sand, density: "T", with which the figure agrees, is not in the source list`},
		{"agreement with its own source", remembered + `density = "2.7 g/cm3; agrees S"`, `agrees with its own source`},
		{"unknown successor", strings.Replace(head, "kind = ", "successor = \"T\"\nkind = ", 1), `bad.toml:4: S, successor: "T" is not another source of the list`},
		{"its own successor", strings.Replace(head, "kind = ", "successor = \"S\"\nkind = ", 1), `successor: "S" is not another source`},
		{"everyday material that is none", head + "[[everyday]]\nids = [\"x1-t6-pm\"]", `bad.toml:18: ids: "x1-t6-pm" is not a material`},
		{"everyday material twice", head + "[[everyday]]\nids = [\"x1-t6-sand\", \"x1-t6-sand\"]", `"x1-t6-sand" stands twice`},
		{"unknown record", head + "[[aloy]]\nid = \"y\"", "did you mean alloy?"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Load(fstest.MapFS{"bad.toml": {Data: []byte(tt.in)}})
			var list record.Errors
			if !errors.As(err, &list) || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("\nhave: %v\nwant: %s", err, tt.want)
			}
			for _, e := range list {
				if e.Remedy == "" || e.Line < 1 {
					t.Errorf("no line or remedy: %v", e)
				}
			}
		})
	}
}

// bands is a family with one block of bands, the figures of which a test adds.
const bands = `[[family]]
id = "tin"
name = "tin"
base = "Sn"
group = "white-metal"
[[family.bands]]
from = "invented tables"
`

func TestFamilyErrors(t *testing.T) {
	for _, tt := range []struct{ name, in, want string }{
		{"not a symbol", strings.Replace(bands, "Sn", "tin", 1) + `density = "7.2–7.4 g/cm3"`, "bad.toml:4: tin, base: \"tin\" is not the symbol of an element\n    remedy: write it like Al or Fe"},
		{"no source", strings.Replace(bands, `from = "invented tables"`, "", 1) + `density = "7.2–7.4 g/cm3"`, "bad.toml:6: tin, from: is missing"},
		{"unknown band", bands + `densty = "7.2–7.4 g/cm3"`, "bad.toml:8: tin, densty: takes no band\n    remedy: did you mean density?"},
		{"a property without a rule", bands + `elongation = "1–4 %"`, "bad.toml:8: tin, elongation: takes no band\n    remedy: use one of: compressive_per_tensile, density"},
		{"no unit", bands + `density = "7.2–7.4"`, "bad.toml:8: tin, density: \"7.2–7.4\""},
		{"wrong dimension", bands + `density = "7.2–7.4 ksi"`, "bad.toml:8: tin, density: \"7.2–7.4 ksi\""},
		{"one end", bands + `density = "7.2 g/cm3"`, "bad.toml:8: tin, density: \"7.2 g/cm3\" is not a range\n    remedy: write the lower and the upper end, e.g. \"1.5–2.5 g/cm³\""},
		{"limit", bands + `density = ">= 7.2 g/cm3"`, "is not a range"},
		{"high to low", bands + `poisson_ratio = "0.4–0.3"`, "bad.toml:8: tin, poisson_ratio"},
		{"condition", bands + `density = "7.2–7.4 g/cm3; at 300 °F"`, "bad.toml:8: tin, density: \"at 300 °F\" does not belong to a band"},
		{"more than the load", bands + `tensile_per_brinell = "300–400 psi; 500 kgf/10 mm; at 300 °F"`, "bad.toml:8: tin, tensile_per_brinell: \"at 300 °F\" does not belong"},
		{"twice", bands + `tensile_per_brinell = ["300–400 psi; 500 kgf/10 mm", "200–400 psi; 500 kgf/10 mm"]`, "bad.toml:8: tin, tensile_per_brinell: has a band already"},
		{"no value", bands + `density = ";"`, "bad.toml:8: tin, density: has no value"},
		{"number", bands + `density = 7.2`, "bad.toml:8: tin, density: is 7.2, not text"},
		{"empty block", bands, "bad.toml:6: tin: the block holds no band"},
		{"not a list", strings.ReplaceAll(strings.Replace(bands, "[[family.bands]]", "[family.bands]", 1), "bands]]", "bands]"), "write [[family.bands]] with double brackets"},
		{"group named like an earlier family", head + strings.Replace(bands, "white-metal", "aluminum", 1) + `density = "7.2–7.4 g/cm3"`, "bad.toml:21: tin, group: \"aluminum\" is the id of a family\n    remedy: give the group a word that is no family's id"},
		{"family named like a group", strings.Replace(bands, "white-metal", "aluminum", 1) + "density = \"7.2–7.4 g/cm3\"\n" + head, "bad.toml:15: aluminum, id: \"aluminum\" is the group of tin\n    remedy: give the family another id"},
		{"group named like its family", strings.Replace(bands, "white-metal", "tin", 1) + `density = "7.2–7.4 g/cm3"`, "bad.toml:5: tin, group: \"tin\" is the id of a family"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Load(fstest.MapFS{"bad.toml": {Data: []byte(tt.in)}})
			var list record.Errors
			if !errors.As(err, &list) || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("\nhave: %v\nwant: %s", err, tt.want)
			}
			for _, e := range list {
				if e.Remedy == "" || e.Line < 1 {
					t.Errorf("no line or remedy: %v", e)
				}
			}
		})
	}
}

func TestFamilyBands(t *testing.T) {
	c, err := Load(fstest.MapFS{"f.toml": {Data: []byte(bands + "density = \"7.20–7.40 g/cm3\"\ntensile_per_brinell = [\"300–400 psi; 500 kgf/10 mm\", \"300–450 psi\"]\n")}})
	if err != nil {
		t.Fatal(err)
	}
	f := c.Families[0]
	if f.Base != "Sn" || f.Group != "white-metal" || !f.Among([]string{"white-metal"}) || !f.Among([]string{"tin"}) || f.Among([]string{"", "lead"}) {
		t.Errorf("have %+v", f)
	}
	want := []string{"density 7.20–7.40 g/cm³ 0", "tensile_per_brinell 300–400 psi 500", "tensile_per_brinell 300–450 psi 0"}
	for i, b := range f.Bands {
		if have := fmt.Sprintf("%s %v %g", b.Of, b.Value, b.Load); i >= len(want) || have != want[i] || b.From != "invented tables" {
			t.Errorf("have %s from %s", have, b.From)
		}
	}
	if len(f.Bands) != len(want) {
		t.Errorf("%d bands, want %d", len(f.Bands), len(want))
	}
}

func TestLoadAcceptsWhatEditorsWrite(t *testing.T) {
	for name, in := range map[string]string{
		"byte order mark":     "\xef\xbb\xbf" + figures + `density = "2.70 g/cm3"`,
		"CRLF":                strings.ReplaceAll(figures+`density = "2.70 g/cm3"`, "\n", "\r\n"),
		"tabs between fields": figures + "density\t=\t\"2.70 g/cm3\"\t# comment",
	} {
		c, err := Load(fstest.MapFS{"f.toml": {Data: []byte(in)}})
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if f := get(t, c, "x1-t6-sand").Figures(props.Density); len(f) != 1 || f[0].Value.Lo != 2.70 || f[0].Value.Place != -2 {
			t.Errorf("%s: have %+v", name, f)
		}
	}
}

func TestOneBadRecordHidesNoOther(t *testing.T) {
	in := figures + "density = \"0.1 lb/in3\n\n[[alloy]]\nid = \"x2\"\nname = \"X2\"\nfamily = \"nothing\"\n"
	_, err := Load(fstest.MapFS{"bad.toml": {Data: []byte(in)}})
	for _, want := range []string{"bad.toml:21:", "bad.toml:26: x2, family"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("have: %v\nwant: %s", err, want)
		}
	}
}

func TestLargeFile(t *testing.T) {
	if testing.Short() {
		t.Skip("builds 10 MB")
	}
	in := head + strings.Repeat("# "+strings.Repeat("x", 998)+"\n", 10_000) + "[[alloy.material]]\ntemper = \"F\"\nprocess = \"sand\"\ntempo = \"\"\n"
	_, err := Load(fstest.MapFS{"big.toml": {Data: []byte(in)}})
	if err == nil || !strings.Contains(err.Error(), "big.toml:10020: x1-f-sand, tempo") {
		t.Errorf("have %v", err)
	}
}

func TestLoadKeepsTheDigits(t *testing.T) {
	f := get(t, shop(t), "x1-f-sand").Figures(props.TensileStrength)
	have := []string{}
	for _, x := range f {
		have = append(have, x.Value.String()+" "+x.Basis.String())
	}
	want := "23.0 ksi minimum|27 ksi typical|20 ksi typical|12 ksi typical"
	if strings.Join(have, "|") != want {
		t.Errorf("\nhave: %s\nwant: %s", strings.Join(have, "|"), want)
	}
}

func TestFamilyFigures(t *testing.T) {
	c := shop(t)
	f := get(t, c, "gray-30").Figures(props.PatternShrinkage)
	if len(f) != 1 || !f[0].Inherited || !f[0].Block.Family {
		t.Errorf("have %v", f)
	}
	if len(get(t, c, "x1-f-sand").Figures(props.PatternShrinkage)) != 0 {
		t.Error("another family has it too")
	}
}

func TestClassFigures(t *testing.T) {
	const family = "[[source]]\nid = \"H\"\ntitle = \"Handbook\"\nkind = \"handbook\"\n" +
		"[[family]]\nid = \"steel\"\nname = \"steel\"\n" +
		"[[family.figures]]\nbasis = \"typical\"\nsource = \"H\"\nknown = \"read\"\nclasses = [\"carbon\"]\ndensity = \"0.283 lb/in3\"\n"
	alloy := func(id, class string) string {
		return "[[alloy]]\nid = \"" + id + "\"\nname = \"" + id + "\"\nfamily = \"steel\"\n" + class + "[[alloy.material]]\nprocess = \"sand\"\n"
	}
	c, err := Load(fstest.MapFS{"f.toml": {Data: []byte(family + alloy("a", "class = \"carbon\"\n") + alloy("b", ""))}})
	if err != nil {
		t.Fatal(err)
	}
	if n := len(get(t, c, "a-sand").Figures(props.Density)); n != 1 {
		t.Errorf("the class has %d figures", n)
	}
	if n := len(get(t, c, "b-sand").Figures(props.Density)); n != 0 {
		t.Errorf("a metal outside the class has %d figures", n)
	}
	_, err = Load(fstest.MapFS{"f.toml": {Data: []byte(family + alloy("a", "class = \"carbn\"\n"))}})
	if want := `f.toml:18: a, class: "carbn" is not a class that figures of the family name`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("have %v\nwant %s", err, want)
	}
}

func FuzzLoad(f *testing.F) {
	whole, err := os.ReadFile("../testdata/shop.toml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(whole))
	f.Add(figures + `yield_strength = "20 ksi; at 300 °F; after 10000 h; (note; more)"`)
	f.Add(bands + `tensile_per_brinell = "300–400 psi; 500 kgf/10 mm"`)
	f.Fuzz(func(t *testing.T, in string) {
		c, err := Load(fstest.MapFS{"f.toml": {Data: []byte(in)}})
		var list record.Errors
		if err != nil && (!errors.As(err, &list) || list.Error() == "") {
			t.Fatalf("not a list of errors: %v", err)
		}
		if err == nil {
			for _, m := range c.Materials {
				compare.Compare(compare.Bench{Pins: []*props.Material{m, c.Materials[0]}})
				compare.GrowthOf(m)
			}
		}
	})
}
