package catalog

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"alongside/props/record"
)

// impossible are figures of tensile strength, density and so on that no metal
// has or nobody can have meant.
var impossible = map[string][]string{
	"tensile_strength": {
		"", " ", ";", "ksi", "-1 ksi", "0 ksi", "NaN ksi", "Inf ksi", "-Inf ksi", "1e61 ksi", "1e308 ksi", "1e400 ksi", "-1e308 ksi", "0x1p3 ksi", "1_000 ksi",
		"30– ksi", "30- ksi", "–30 ksi", "40–30 ksi", "30–40–50 ksi", "30,5 ksi", "3,00,0 ksi", "30.5.1 ksi", "30..40 ksi ksi", "30 ksi 40", "thirty ksi", "≥ 30 ksi", "30 ksi min", "< 30 ksi",
		"30 kis", "30 °F", "30 %", "30 lb/in3", "30 HB", "30", "30 ksi; at -900 °F", "30 ksi; at NaN °F", "30 ksi; nonsense", "30 ksi; agrees nothing", "30 ksi; agrees LAB",
		"3/0 ksi", "47/23 ksi", "±5 ksi ksi", "5 ± 0 ksi", "$30 ksi", "=30 ksi", "'30 ksi", "30 ksi'; drop", "<b>30</b> ksi", "%s ksi", "${HOME} ksi", "\\\\u001b[2J", "\\u0000", "\\u001b[31m30 ksi", "30\\nksi", "30\\tksi",
		"٣٠ ksi", "३० ksi", "三十 ksi", "30\u202e ksi ik", "30 ksi\ufeff x", "１e９９ ksi", strings.Repeat("3", 41) + " ksi", strings.Repeat("30 ", 200) + "ksi", strings.Repeat("(", 300), strings.Repeat("-", 300) + "1 ksi", "30 " + strings.Repeat("k", 199) + "i",
	},
	"density":           {"-1 g/cm3", "0 g/cm3", "-0.1–0.2 lb/in3", "2.7", "2.7 g", "2.7 g/cm2", "1e99 g/cm3"},
	"elongation":        {"200 %", "-1 %", "0 %", "101 %", "99–101 %", "1e9 %", "2 in"},
	"reduction_of_area": {"100.1 %", "-1 %", "200"},
	"poisson_ratio":     {"7", "0.51", "-0.1", "0.3 ksi", "0.3–0.6"},
	"solidus":           {"-600 °F", "-300 °C", "-1 K", "-1 °R", "1e40 °F", "1200"},
	"thermal_expansion": {"6 uin/in-F; -900–68 °F", "6 uin/in-F; 212–68 °F", "6", "6 uin/in-F; 68–212 ksi"},
	"rating_fluidity":   {"0", "6", "-1", "2.5", "1e9", "one"},
	"hardness_brinell":  {"-70", "0", "100–70", "70 HRB", "1e40"},
}

// slips are whole lines or marks of the file of test bars and what a slip or an
// attacker puts there.
var slips = [][2]string{
	{`id = "LAB"`, `id = "STANDARD"`}, {`id = "LAB"`, `id = ""`}, {`id = "LAB"`, ""}, {`id = "LAB"`, "id = 7"}, {`id = "LAB"`, "id = [\"LAB\"]"}, {`id = "LAB"`, "id = {}"}, {`id = "LAB"`, "id = 1979-05-27T07:32:00Z"}, {`id = "LAB"`, "id = nan"},
	{`kind = "house"`, `kind = "hoose"`}, {`kind = "house"`, ""}, {`kind = "house"`, "kind = \"house\"\nkind = \"house\""}, {`kind = "house"`, "\"\" = 1"}, {`kind = "house"`, "a.b.c = 1"},
	{"[[source]]", "[source]"}, {"[[source]]", "[[sauce]]"}, {"[[source]]", "[[source"}, {"[[source]]", "[[]]"}, {"[[source]]", "[[source.source]]"}, {"[[source]]", "{}"}, {"[[source]]", ""},
	{"[[house]]", "[house]"}, {"[[house]]", ""}, {"[[house.figures]]", "[house.figures]"}, {"[[house.figures]]", ""}, {"[[house.figures]]", "[[house.figures.figures]]"},
	{`material = "x1-f-sand"`, ""}, {`material = "x1-f-sand"`, "material = \"../../etc/passwd\""}, {`material = "x1-f-sand"`, "material = \"" + strings.Repeat("x", 100_000) + "\""}, {`material = "x1-f-sand"`, "material = \"x1-f-sand\u001b[2J\""},
	{`basis = "house"`, `basis = "guess"`}, {`basis = "house"`, ""}, {`source = "LAB"`, `source = "LAP"`}, {`source = "LAB"`, ""}, {`known = "read"`, `known = "maybe"`}, {`known = "read"`, ""},
	{"tensile_strength", "tensil_strength"}, {"tensile_strength", strings.Repeat("k", 1_000_000)}, {"tensile_strength", "\"tensile\\u0000\""}, {"tensile_strength", "tensile strength"}, {"tensile_strength", "=cmd()"},
	{`"28.4`, `28.4`}, {`"28.4`, `"""28.4`}, {`"28.4`, `'28.4`}, {`28.4`, "\xff\xfe"}, {`28.4`, "\x00"}, {`28.4`, "\x1b[2J"},
}

// wholes are files that are no data file at all.
var wholes = map[string]string{
	"empty": "", "blank": " \n\t\n", "a comment": "# figures\n", "a byte order mark": "\xef\xbb\xbf", "JSON": `{"alloy": [{"id": "x"}]}`, "CSV": "alloy,tensile\nx,30\n", "prose": "Dear all, figures follow.\n", "YAML": "alloy:\n  id: x\n",
	"UTF-16": "\xff\xfe[\x00[\x00", "zeros": strings.Repeat("\x00", 4096), "ones": strings.Repeat("\xff", 4096), "a program": "\x7fELF\x02\x01\x01", "HTML": "<html><body>", "escapes": "\x1b]52;c;aGk=\x07", "a page of =": strings.Repeat("=", 10_000),
	"deep dotted key": strings.Repeat("a.", 20_000) + "a = 1", "deep header": "[" + strings.Repeat("a.", 20_000) + "a]", "deep list": "a = " + strings.Repeat("[", 1_000_000), "deep tables": "a = " + strings.Repeat("{a=", 50_000), "one long line": "a = \"" + strings.Repeat("x", 5_000_000),
	"many records": strings.Repeat("[[alloy]]\n", 10_000), "many keys": "[[alloy]]\n" + manyKeys(10_000), "many unknown": strings.Repeat("[[aloy]]\n", 10_000), "many quotes": strings.Repeat("\"", 100_000), "many brackets": strings.Repeat("[[", 50_000) + strings.Repeat("]]", 50_000),
	"composition below 0": composed(`Si = "-3"`), "composition above 100": composed(`Si = "300"`), "no element": composed(`Xx = "1"`), "composition in ksi": composed(`Si = "3 ksi"`), "composition of words": composed(`Si = "much"`),
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "k%d = 1\n", i)
	}
	return b.String()
}

func composed(line string) string {
	return "[[alloy]]\nid = \"z9\"\nname = \"Z9\"\nfamily = \"aluminum\"\n[alloy.composition]\nsource = \"STANDARD\"\nknown = \"read\"\n" + line + "\n[[alloy.material]]\nprocess = \"sand\"\n"
}

// Whatever stands in a shop's file, each mistake is told with its line and what to
// do, in a text that a person can read, and soon.
func TestHostileFiles(t *testing.T) {
	base := shop(t)
	files := map[string]string{}
	for key, values := range impossible {
		for _, v := range values {
			files[key+" "+v] = strings.Replace(bars, `tensile_strength = "28.4–31.0 ksi"`, key+` = "`+v+`"`, 1)
		}
	}
	for _, s := range slips {
		s[1] = strings.Replace(s[1], "STANDARD", base.Sources[0].ID, 1)
		if !strings.Contains(bars, s[0]) {
			t.Fatalf("%q is not in the file of test bars", s[0])
		}
		files[s[0]+" → "+s[1]] = strings.Replace(bars, s[0], s[1], 1)
	}
	for name, text := range wholes {
		files[name] = strings.Replace(text, "STANDARD", base.Sources[0].ID, 1)
	}
	if len(files) < 131 {
		t.Errorf("only %d files", len(files))
	}
	for name, text := range files {
		start := time.Now()
		_, err := LoadFiles(base, []File{{"h.toml", []byte(text)}})
		var list record.Errors
		if name = fmt.Sprintf("%.60q", name); !errors.As(err, &list) {
			t.Errorf("%s: accepted, %v", name, err)
			continue
		}
		for _, e := range list {
			if e.Line < 1 || e.Remedy == "" || e.Problem == "" || strings.Contains(e.Problem, "understood ;") {
				t.Errorf("%s: no line, problem or remedy: %v", name, e)
			}
		}
		if n := len(err.Error()); n > 120_000 {
			t.Errorf("%s: told in %d bytes", name, n)
		}
		if took := time.Since(start); took > 10*time.Second {
			t.Errorf("%s took %v", name, took)
		}
	}
}
