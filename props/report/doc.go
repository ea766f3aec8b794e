package report

import (
	"encoding/csv"
	"fmt"
	"strings"
)

// Doc is a titled set of tables with lines below: what a command other than
// compare prints and what the copy panel sends. The sentences in it are
// cleaned and escaped where it is written, not before.
type Doc struct {
	Title  string
	Tables []DocTable
	// Foot stands below the tables: notes, sources, settings. The caution
	// follows it in every format.
	Foot []string
	bare bool // a table without title and foot
}

// DocTable is one table under its heading. Columns from Right on hold figures
// and are set flush right.
type DocTable struct {
	Heading string
	Head    []string // may be empty
	Rows    [][]string
	Right   int
	Notes   []string // lines right below the table
}

// DocFormats lists the formats of Doc.Render.
func DocFormats() []string { return []string{"text", "markdown", "tsv", "csv", "html"} }

// Render writes the document as text (lines of up to width characters where
// the tables allow), markdown, tsv, csv or html.
func (d *Doc) Render(format string, width int) (string, error) {
	var b strings.Builder
	switch format {
	case "text":
		d.text(&b, max(width, 40))
	case "markdown":
		d.markdown(&b)
	case "tsv":
		for _, r := range d.records() {
			b.WriteString(strings.Join(r, "\t") + "\n")
		}
	case "csv":
		if err := csv.NewWriter(&b).WriteAll(d.records()); err != nil { // a strings.Builder takes everything
			panic(err)
		}
	case "html":
		d.html(&b)
	default:
		return "", fmt.Errorf("no format %q; use one of: %s", format, strings.Join(DocFormats(), ", "))
	}
	return b.String(), nil
}

// Render writes the table alone, to stand before something that carries the
// caution.
func (t *DocTable) Render(format string, width int) (string, error) {
	d := Doc{Tables: []DocTable{*t}, bare: true}
	return d.Render(format, width)
}

func (d *Doc) foot() []string {
	if d.bare {
		return nil
	}
	return append(d.Foot[:len(d.Foot):len(d.Foot)], Caution)
}

func (d *Doc) text(b *strings.Builder, width int) {
	if d.Title != "" {
		wrap(b, width, "", d.Title)
	}
	for i, t := range d.Tables {
		if i > 0 || d.Title != "" {
			b.WriteByte('\n')
		}
		if t.Heading != "" {
			wrap(b, width, "", strings.ToUpper(t.Heading))
		}
		t.text(b, width)
		for _, n := range t.Notes {
			wrap(b, width, "  ", n)
		}
	}
	b.WriteByte('\n')
	for _, l := range d.foot() {
		wrap(b, width, "  ", l)
	}
}

// text sets the table in columns. A last column of words that does not fit the
// width is broken into lines that hang below each other.
func (t *DocTable) text(b *strings.Builder, width int) {
	rows := t.Rows
	if len(t.Head) > 0 {
		rows = append([][]string{t.Head}, rows...)
	}
	var widths []int
	for _, r := range rows {
		for i, s := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], length(Clean(s)))
		}
	}
	for _, r := range rows {
		line := ""
		for i, s := range r {
			s = Clean(s)
			if i > 0 {
				line += strings.Repeat(" ", gap)
			}
			switch {
			case i >= t.Right && t.Right > 0:
				line += padLeft(s, widths[i])
			case i == len(r)-1 && length(line)+length(s) > width && length(line) < width-20:
				Wrap(b, width, line, strings.Repeat(" ", length(line)), s)
				line = ""
			default:
				line += pad(s, widths[i])
			}
		}
		if line != "" {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
		}
	}
}

func (d *Doc) markdown(b *strings.Builder) {
	if d.Title != "" {
		b.WriteString("**" + escapeMarkdown(d.Title) + "**\n")
	}
	for _, t := range d.Tables {
		b.WriteByte('\n')
		if t.Heading != "" {
			b.WriteString("**" + escapeMarkdown(t.Heading) + "**\n\n")
		}
		n := 0
		for _, r := range append([][]string{t.Head}, t.Rows...) {
			n = max(n, len(r))
		}
		record := func(cells []string) {
			line := "|"
			for i := range n {
				s := ""
				if i < len(cells) {
					s = escapeMarkdown(cells[i])
				}
				line += " " + s + " |"
			}
			b.WriteString(line + "\n")
		}
		record(t.Head)
		rule := "|"
		for i := range n {
			if t.Right > 0 && i >= t.Right {
				rule += " ---: |"
			} else {
				rule += " :--- |"
			}
		}
		b.WriteString(rule + "\n")
		for _, r := range t.Rows {
			record(r)
		}
		for i, note := range t.Notes {
			if i == 0 {
				b.WriteByte('\n')
			}
			b.WriteString("- " + escapeMarkdown(note) + "\n")
		}
	}
	b.WriteByte('\n')
	for _, l := range d.foot() {
		b.WriteString("- " + escapeMarkdown(l) + "\n")
	}
}

// records is the document for a spreadsheet, formulas defused.
func (d *Doc) records() [][]string {
	var out [][]string
	if d.Title != "" {
		out = append(out, []string{d.Title}, []string{""})
	}
	for i, t := range d.Tables {
		if i > 0 {
			out = append(out, []string{""})
		}
		if t.Heading != "" {
			out = append(out, []string{t.Heading})
		}
		if len(t.Head) > 0 {
			out = append(out, t.Head)
		}
		out = append(out, t.Rows...)
		for _, n := range t.Notes {
			out = append(out, []string{n})
		}
	}
	out = append(out, []string{""})
	for _, l := range d.foot() {
		out = append(out, []string{l})
	}
	for i, r := range out {
		clean := make([]string, len(r))
		for j, s := range r {
			clean[j] = SheetText(s)
		}
		out[i] = clean
	}
	return out
}

func (d *Doc) html(b *strings.Builder) {
	b.WriteString(`<meta charset="utf-8">` + "\n")
	if d.Title != "" {
		b.WriteString(`<p style="` + smallStyle + `"><b>` + escapeHTML(d.Title) + "</b></p>\n")
	}
	lines := func(list []string) {
		if len(list) == 0 {
			return
		}
		escaped := make([]string, len(list))
		for i, l := range list {
			escaped[i] = escapeHTML(l)
		}
		b.WriteString(`<p style="` + smallStyle + `">` + strings.Join(escaped, "<br>\n") + "</p>\n")
	}
	for _, t := range d.Tables {
		if t.Heading != "" {
			b.WriteString(`<p style="` + smallStyle + `"><b>` + escapeHTML(t.Heading) + "</b></p>\n")
		}
		b.WriteString(`<table style="` + tableStyle + `">` + "\n")
		record := func(tag string, cells []string) {
			b.WriteString("<tr>")
			for i, s := range cells {
				style := labelStyle
				switch {
				case tag == "th":
					style = headStyle
				case t.Right > 0 && i >= t.Right:
					style = cellStyle
				}
				b.WriteString("<" + tag + ` style="` + style + `">` + escapeHTML(s) + "</" + tag + ">")
			}
			b.WriteString("</tr>\n")
		}
		if len(t.Head) > 0 {
			record("th", t.Head)
		}
		for _, r := range t.Rows {
			record("td", r)
		}
		b.WriteString("</table>\n")
		lines(t.Notes)
	}
	lines(d.foot())
}
