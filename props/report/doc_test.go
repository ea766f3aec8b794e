package report

import (
	"strings"
	"testing"
)

var sample = &Doc{
	Title: "A <title> | with *signs*",
	Tables: []DocTable{{
		Heading: "heading", Head: []string{"id", "amount", "why"},
		Rows: [][]string{
			{"=HYPERLINK(1)", "-3", "short"},
			{"x\x1b[31m", "+12", "a reason that is a good deal longer than the others and has to be broken"},
		},
		Notes: []string{"a note"},
	}},
	Foot: []string{"S1 a source"},
}

func TestDoc(t *testing.T) {
	for format, want := range map[string][]string{
		"text":     {"A <title> | with *signs*\n", "HEADING\nid", "=HYPERLINK(1)  -3", "\n                       than the others", "\na note\n", "\nS1 a source\n", Caution[:40]},
		"markdown": {`**A &lt;title&gt; \| with \*signs\***`, "| =HYPERLINK(1) | -3 | short |", "- S1 a source\n", Caution[:20]},
		"tsv":      {"'=HYPERLINK(1)\t-3\tshort\n", "\t+12\t"},
		"csv":      {"'=HYPERLINK(1),-3,short\n"},
		"html":     {"<b>A &lt;title&gt; | with *signs*</b>", ">=HYPERLINK(1)</td>", "S1 a source<br>\n"},
	} {
		have, err := sample.Render(format, 60)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range want {
			if !strings.Contains(have, w) {
				t.Errorf("%s: no %q in\n%s", format, w, have)
			}
		}
		if strings.ContainsRune(have, 0x1b) {
			t.Errorf("%s: an escape left the program", format)
		}
		if format == "text" {
			for _, l := range strings.Split(have, "\n") {
				if length(l) > 60 {
					t.Errorf("line of %d: %s", length(l), l)
				}
			}
		}
	}
	if _, err := sample.Render("pdf", 60); err == nil {
		t.Error("pdf is no format")
	}
}
