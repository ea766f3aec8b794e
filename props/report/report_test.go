package report

import (
	"encoding/csv"
	"html"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/sheet"
)

// invented is the test catalog of the commands; its figures are made up.
func invented(t testing.TB, ids ...string) *compare.Comparison {
	t.Helper()
	content, err := os.ReadFile("../../testdata/cmd/invented.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := catalog.LoadFiles(nil, []catalog.File{{Name: "invented.toml", Content: content}})
	if err != nil {
		t.Fatal(err)
	}
	b := compare.NewBench()
	for _, id := range ids {
		m := c.Material(id)
		if m == nil {
			t.Fatalf("no material %s", id)
		}
		b.Pin(m)
	}
	return compare.Compare(b)
}

func render(t testing.TB, format string, c *compare.Comparison, s Scope) string {
	t.Helper()
	text, err := CompareDoc(c, s, Limits{}).Render(format, MailWidth)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// A scope takes its part and the baseline, and leaves the rest.
func TestScopes(t *testing.T) {
	c := invented(t, "t1-f-sand", "t2-die", "l30")
	pin := c.Bench.Pins[2]
	for _, format := range Formats() {
		for name, part := range map[string]struct {
			Scope
			has, hasNot []string
		}{
			"bench":  {Scope{}, []string{"T1.0", "L30", "T2+1"}, nil},
			"row":    {Scope{Property: props.Density}, []string{"T1.0", "L30", "T2+1", "0.26"}, []string{"ensile", "beats 1"}},
			"column": {Scope{Material: pin}, []string{"T1.0", "L30", "ensile"}, []string{"T2+1"}},
			"cell":   {Scope{Property: props.Density, Material: pin}, []string{"T1.0", "L30", "0.26"}, []string{"T2+1", "ensile"}},
		} {
			text := render(t, format, c, part.Scope)
			if format == "html" {
				text = html.UnescapeString(text)
			}
			for _, w := range part.has {
				if !strings.Contains(text, w) {
					t.Errorf("%s as %s: no %q in\n%s", name, format, w, text)
				}
			}
			for _, w := range part.hasNot {
				if strings.Contains(text, w) {
					t.Errorf("%s as %s: %q should not be in\n%s", name, format, w, text)
				}
			}
			if format != "json" {
				for _, w := range strings.Fields(Caution) {
					if !strings.Contains(text, w) {
						t.Errorf("%s as %s: the caution is missing", name, format)
						break
					}
				}
			}
		}
	}
	if len(c.Bench.Pins) != 3 || c.Totals == nil || len(c.Rows) < 5 {
		t.Error("rendering a part changed the comparison")
	}
}

// The baseline stays the baseline when it is not the first pin.
func TestColumnScopeKeepsTheBaseline(t *testing.T) {
	c := invented(t, "t1-f-sand", "t2-die", "l30")
	c.Bench.Baseline = 2
	c = compare.Compare(c.Bench)
	text := render(t, "json", c, Scope{Material: c.Bench.Pins[0]})
	if !strings.Contains(text, `"baseline": "l30"`) || strings.Contains(text, "t2-die") {
		t.Errorf("have\n%.200s", text)
	}
	if alone := render(t, "text", c, Scope{Material: c.Bench.Pins[2]}); !strings.HasPrefix(alone, "Class L30 sand\n") {
		t.Errorf("the baseline alone:\n%.200s", alone)
	}
}

func TestEmptyBench(t *testing.T) {
	for _, format := range Formats() {
		if text := render(t, format, compare.Compare(compare.NewBench()), Scope{}); text == "" {
			t.Errorf("%s of an empty bench is empty", format)
		}
	}
	if _, err := CompareDoc(compare.Compare(compare.NewBench()), Scope{}, Limits{}).Render("pdf", 80); err == nil || !strings.Contains(err.Error(), "markdown") {
		t.Errorf("an unknown format: %v", err)
	}
}

// Whatever a name holds, the cells of a sheet are no formulas, records have
// equal length, and nothing that steers a terminal leaves in any format.
func TestHostileNames(t *testing.T) {
	c := invented(t, "t1-f-sand", "t2-die")
	alloy := c.Bench.Pins[1].Alloy
	rapid.Check(t, func(r *rapid.T) {
		alloy.Name = rapid.OneOf(rapid.String(), rapid.StringMatching(`[=+\-@\t\r][ -~]{0,8}`), rapid.Just("</td><script>\x1b]52;c;?\x07|*_`")).Draw(r, "name")
		for _, format := range Formats() {
			text := render(t, format, c, Scope{})
			for _, ch := range text {
				if unicode.IsControl(ch) && ch != '\n' && !(format == "tsv" && ch == '\t') {
					r.Fatalf("%s holds %U", format, ch)
				}
			}
		}
		records := strings.Split(strings.TrimSuffix(render(t, "tsv", c, Scope{}), "\n"), "\n")
		width := strings.Count(records[0], "\t")
		for _, l := range records {
			if strings.Count(l, "\t") != width {
				r.Fatalf("records of unequal length: %q", l)
			}
		}
		rows, err := csv.NewReader(strings.NewReader(render(t, "csv", c, Scope{}))).ReadAll()
		if err != nil {
			r.Fatal(err)
		}
		for _, cell := range slices.Concat(rows...) {
			if cell != "" && strings.ContainsAny(cell[:1], "=+@\t\r") {
				r.Fatalf("a cell begins like a formula: %q", cell)
			}
		}
		if strings.Contains(render(t, "html", c, Scope{}), "<script") {
			r.Fatal("HTML is not escaped")
		}
	})
}

// A mail keeps the lines whole.
func TestTextFitsAMail(t *testing.T) {
	c := invented(t, "t1-f-sand", "t1-t6-pm", "t2-die", "l30")
	for _, l := range strings.Split(render(t, "text", c, Scope{}), "\n") {
		if sheet.Width(l) > MailWidth {
			t.Errorf("%d characters: %s", sheet.Width(l), l)
		}
		if strings.TrimRight(l, " ") != l {
			t.Errorf("blanks at the end: %q", l)
		}
	}
	if n := strings.Count(render(t, "text", c, Scope{}), "baseline\n"); n < 2 {
		t.Errorf("the baseline heads %d blocks of columns, want each of several", n)
	}
}

func TestPlain(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 255.10601984723454: "255.106019847", 0.1 + 0.2: "0.3", 1e-9: "1e-09", 22600000: "22600000", -0.002: "-0.002",
	} {
		if have := bare(v); have != want {
			t.Errorf("bare(%v) = %q, want %q", v, have, want)
		}
	}
}

func BenchmarkText(b *testing.B) {
	c := invented(b, "t1-f-sand", "t1-t6-pm", "t2-die", "l30")
	b.ReportAllocs()
	for b.Loop() {
		render(b, "text", c, Scope{})
	}
}
