package sheet

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/rivo/uniseg"
	"pgregory.net/rapid"
)

const warning = "Think before you use this: it is an invented sentence, long enough to be broken."

func sample() *Doc {
	t := &Table{Heading: "heading", Columns: Columns("id", "amount", "why"), Notes: []string{"a note"}}
	t.Columns[1].Align = Right
	t.Add("=HYPERLINK(1)", "-3", "short")
	t.Add("x\x1b[31m", "+12", "a reason that is a good deal longer than the others and has to be broken")
	return &Doc{Blocks: []Block{Title("A <title> | with *signs*"), t}, Notes: []Note{{Mark: "S1", Text: "a source"}}, Caution: warning}
}

func TestFormats(t *testing.T) {
	for format, want := range map[string][]string{
		"text":     {"A <title> | with *signs*\n\nHEADING\nid ", "=HYPERLINK(1)      -3  short\n", "\n                       than the others", "\na note\n\nS1 a source\n\nThink", "\n  enough to be broken."},
		"markdown": {`**A &lt;title&gt; \| with \*signs\***`, "| :--- | ---: | :--- |", "| =HYPERLINK(1) | -3 | short |", "- S1 a source\n", "- " + warning},
		"tsv":      {"'=HYPERLINK(1)\t-3\tshort\n", "\t+12\t", "S1 a source\t\t\n"},
		"csv":      {"'=HYPERLINK(1),-3,short\n"},
		"html":     {"<b>A &lt;title&gt; | with *signs*</b>", ">=HYPERLINK(1)</td>", "S1 a source<br>\n" + warning},
	} {
		have, err := sample().Render(format, 60)
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
				if Width(l) > 60 || strings.TrimRight(l, " ") != l {
					t.Errorf("line of %d: %q", Width(l), l)
				}
			}
		}
	}
	if _, err := sample().Render("pdf", 60); err == nil || !strings.Contains(err.Error(), "text, markdown, html, csv, tsv") {
		t.Errorf("pdf is no format: %v", err)
	}
}

// figures is a table of figures as wide as it has columns.
func figures(columns int) *Table {
	t := &Table{Total: "Count", Columns: []Column{{Name: "Row", Head: []string{}, Keep: true}, {Name: "Unit", Head: []string{}, Keep: true, Close: true}}}
	one := Row{Group: "First", Cells: []Cell{{Text: "a name longer than others, quite", Short: "a name"}, {Text: "ksi"}}}
	two := Row{Group: "Second", Cells: []Cell{{Text: "b"}, {Text: "%"}}}
	for i := range columns {
		c := Column{Name: "Metal", Head: []string{"Metal", "", "sand"}, Align: Figure}
		if i == 1 {
			c.Keep = true
			c.Head = append(c.Head, "base")
		} else {
			c.Total = []string{"beats 1", "misses 0"}
		}
		t.Columns = append(t.Columns, c)
		one.Cells = append(one.Cells, Cell{Text: "37", Mark: "m", Change: "+23 %", Sign: "✓", Notes: []int{1, 2}, Source: "S2"})
		two.Cells = append(two.Cells, Cell{Sign: "–", Notes: []int{1}})
	}
	t.Rows = []Row{one, two}
	return t
}

func TestFigures(t *testing.T) {
	d := &Doc{Blocks: []Block{figures(2)}, Notes: []Note{{Number: 1, Text: "one"}, {Number: 2, Text: "two"}, {Text: "no mark"}}, Foot: []string{"remark"}}
	want := `            Metal          Metal

            sand           sand
            base
FIRST
a name ksi  37m +23 % ✓¹,² 37m +23 % ✓¹,²
SECOND
b      %     –         ¹    –         ¹

Metal: beats 1, misses 0

¹  one
²  two
no mark

remark
`
	have := d.Text(80)
	want = strings.ReplaceAll(strings.Replace(want, "\n\n            sand", "\n            sand", 1), "✓¹,² 37m", "✓¹,²  37m")
	if squeeze(have) != squeeze(want) {
		t.Errorf("have\n%s\nwant\n%s", have, want)
	}
	for _, w := range []string{"| FIRST |  |  |  |", "| 37m +23 % ✓ \\[1\\] \\[2\\] S2 |", "- Metal: beats 1, misses 0", "- \\[1\\] one"} {
		if have := d.Markdown(); !strings.Contains(have, w) {
			t.Errorf("markdown: no %q in\n%s", w, have)
		}
	}
	for _, w := range []string{">Metal<br>sand<br>base</th>", `<td colspan="4"`, "<b>37</b><small>m +23 % ✓ [1] [2] S2</small>", "<tfoot><tr><td", ">Count</td>", ">beats 1<br>misses 0</td>"} {
		if have := d.HTML(); !strings.Contains(have, w) {
			t.Errorf("html: no %q in\n%s", w, have)
		}
	}
	if have := d.CSV(); !strings.Contains(have, "Row,Unit,Metal,Metal\nFirst,,,\n") || !strings.Contains(have, "37m +23 % ✓ [1] [2] S2") {
		t.Errorf("csv:\n%s", have)
	}
}

// squeeze leaves the lines but one blank in place of many.
func squeeze(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = strings.Join(strings.Fields(lines[i]), " ")
	}
	return strings.Join(lines, "\n")
}

// A table that is too wide is broken into parts that each begin with the
// columns to keep, and no line is longer than the page.
func TestBrokenIntoParts(t *testing.T) {
	for _, width := range []int{44, 60, 76, 120} {
		text := (&Doc{Blocks: []Block{figures(6)}}).Text(width)
		parts := strings.Count(text, "base\n")
		if width == 120 && parts != 1 || width == 44 && parts < 3 {
			t.Errorf("width %d: %d parts\n%s", width, parts, text)
		}
		if n := strings.Count(text, "a name"); n != parts {
			t.Errorf("width %d: %d rows in %d parts", width, n, parts)
		}
		for _, l := range strings.Split(text, "\n") {
			if Width(l) > width {
				t.Errorf("width %d: line of %d: %s", width, Width(l), l)
			}
		}
	}
}

func TestListsAndLines(t *testing.T) {
	d := &Doc{Blocks: []Block{
		Lines{"first line", "second line"},
		&List{Title: "list", Items: []Item{{"label", "text"}, {"", "more"}}},
		&Table{Rows: []Row{{Cells: []Cell{{Text: "no head"}}}}},
	}}
	for format, want := range map[string]string{
		"text":     "first line\nsecond line\n\nLIST\nlabel\n  text\n  more\n\nno head\n",
		"markdown": "first line\n\nsecond line\n\n**list**\n\n|  |  |\n| :--- | :--- |\n| label | text |\n|  | more |\n\n|  |\n| :--- |\n| no head |\n",
		"tsv":      "first line\t\nsecond line\t\n\t\nlist\t\nlabel\ttext\n\tmore\n\t\nno head\t\n",
	} {
		if have, _ := d.Render(format, 80); have != want {
			t.Errorf("%s: have\n%q\nwant\n%q", format, have, want)
		}
	}
	if have := d.HTML(); !strings.Contains(have, "first line<br>\nsecond line</p>") || !strings.Contains(have, ">label</td>") || strings.Contains(have, "<thead") {
		t.Error(have)
	}
}

// Width counts cells of a terminal, not runes.
func TestWidth(t *testing.T) {
	for s, want := range map[string]int{"": 0, "abc": 3, "ρ₂/ρ₁": 5, "68–212 °F": 9, "e\u0301": 1, "合金": 4, "✓": 1} {
		if have := Width(s); have != want {
			t.Errorf("Width(%q) = %d, want %d", s, have, want)
		}
	}
	if pad("合金", 6) != "合金  " || superscript(12, 3) != "¹²,³" {
		t.Error("padding or superscripts are wrong")
	}
}

func TestDefuse(t *testing.T) {
	for in, want := range map[string]string{
		"":                   "",
		"47":                 "47",
		"-40":                "-40",
		"-0.002":             "-0.002",
		"+1.5e-6":            "+1.5e-6",
		"=1+1":               "'=1+1",
		"+A1":                "'+A1",
		"-A1":                "'-A1",
		"-2+3":               "'-2+3",
		"@SUM(A1)":           "'@SUM(A1)",
		"\t=1+1":             "' =1+1",
		"\r=1+1":             "' =1+1",
		"＝1+1":               "'＝1+1",
		"-Inf":               "'-Inf",
		"a\x1b[31mb\u202ec":  "a [31mbc",
		"line\nbreak\u2028s": "line break s",
	} {
		if have := cellText(in); have != want {
			t.Errorf("cellText(%q) = %q, want %q", in, have, want)
		}
	}
}

// Whatever a text holds, the cells of a sheet are no formulas, records have
// equal length, and nothing that steers a terminal leaves in any format.
func TestHostileTexts(t *testing.T) {
	hostile := rapid.OneOf(rapid.String(), rapid.StringMatching(`[=+\-@\t\r][ -~]{0,8}`), rapid.Just("</td><script>\x1b]52;c;?\x07|*_`"))
	rapid.Check(t, func(r *rapid.T) {
		d := figures(3)
		d.Heading, d.Columns[2].Name, d.Columns[2].Head[0] = hostile.Draw(r, "heading"), hostile.Draw(r, "name"), hostile.Draw(r, "head")
		d.Rows[0].Group, d.Rows[0].Cells[2].Text, d.Rows[1].Cells[0].Text = hostile.Draw(r, "group"), hostile.Draw(r, "figure"), hostile.Draw(r, "words")
		doc := &Doc{Blocks: []Block{Title(hostile.Draw(r, "title")), Lines{hostile.Draw(r, "line")}, d, &List{Items: []Item{{hostile.Draw(r, "label"), hostile.Draw(r, "text")}}}},
			Notes: []Note{{Mark: "S1", Text: hostile.Draw(r, "note")}}, Foot: []string{hostile.Draw(r, "foot")}}
		for _, format := range Formats() {
			text, _ := doc.Render(format, 60)
			for _, ch := range text {
				if unicode.IsControl(ch) && ch != '\n' && !(format == "tsv" && ch == '\t') {
					r.Fatalf("%s holds %U", format, ch)
				}
			}
			if format == "html" && strings.Contains(text, "<script") {
				r.Fatal("HTML is not escaped")
			}
		}
		records := strings.Split(strings.TrimSuffix(doc.TSV(), "\n"), "\n")
		for _, l := range records {
			if strings.Count(l, "\t") != strings.Count(records[0], "\t") {
				r.Fatalf("records of unequal length: %q", l)
			}
		}
		rows, err := csv.NewReader(strings.NewReader(doc.CSV())).ReadAll()
		if err != nil {
			r.Fatal(err)
		}
		for _, cell := range slices.Concat(rows...) {
			if cell != "" && strings.ContainsAny(cell[:1], "=@\t\r") {
				r.Fatalf("a cell begins like a formula: %q", cell)
			}
		}
	})
}

// A character that Width counts as one cell without looking it up takes one
// cell beside any other of them.
func TestSinglesTakeOneCell(t *testing.T) {
	var all []rune
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if Single(r) {
			all = append(all, r)
		}
	}
	for _, r := range all {
		for _, s := range []string{string(r), string([]rune{'a', r}), string([]rune{r, r, 'a'}), string([]rune{'≥', r, '–'})} {
			if n := uniseg.StringWidth(s); n != len([]rune(s)) {
				t.Errorf("%q (%U) takes %d cells", s, r, n)
			}
		}
	}
	for _, s := range []string{"", "37 ksi", "µin/in·°F", "e\u0301", "界", "👩‍👩‍👧", "a\u200db", "\u202dx", "✓ ✗ ↑"} {
		if have, want := Width(s), uniseg.StringWidth(s); have != want {
			t.Errorf("%q: have %d, want %d", s, have, want)
		}
	}
}

// What Markdown would strike through, it prints.
func TestMarkdownStrikesNothing(t *testing.T) {
	for in, want := range map[string]string{"~~A356~~": `\~\~A356\~\~`, "~A356~": `\~A356\~`} {
		if have := escapeMarkdown(in); have != want {
			t.Errorf("%q is printed %q, want %q", in, have, want)
		}
	}
}
