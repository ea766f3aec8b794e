package sheet

import (
	"html"
	"strconv"
	"strings"
)

// The styles stand in every cell: mail programs drop style sheets.
const (
	border      = "border:1px solid #999;padding:2px 6px;text-align:"
	tableStyle  = "border-collapse:collapse;font-family:Arial,Helvetica,sans-serif;font-size:10pt"
	figureStyle = border + "right;white-space:nowrap"
	labelStyle  = border + "left"
	headStyle   = border + "left;vertical-align:bottom;background:#eee"
	groupStyle  = border + "left;background:#f6f6f6;font-weight:bold"
	smallStyle  = "font-family:Arial,Helvetica,sans-serif;font-size:9pt"
)

// pageHead begins a whole page that fits Letter and A4: a word too long for its
// cell or line is broken, but no heading, label or figure; wide tables are small.
const pageHead = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<style>
@page { margin: 15mm }
body { font-family: Arial, Helvetica, sans-serif; max-width: 180mm; margin: 0 auto; padding: 4mm; overflow-wrap: anywhere } @media print { body { padding: 0 } }
h1 { font-size: 16pt } h2 { font-size: 13pt; margin-top: 1.5em; border-bottom: 1px solid #999 } h3 { font-size: 10.5pt; margin-bottom: 0.3em }
h1, h2, h3 { break-after: avoid } tr { break-inside: avoid } thead { display: table-header-group } tfoot { display: table-row-group }
td, th { white-space: normal !important } svg, img { max-width: 100%; height: auto }
th, td b, td:first-child, td:nth-child(2):not(:last-child) { overflow-wrap: normal }
table:has(th:nth-child(7)) { font-size: 8pt !important } table:has(th:nth-child(7)) :is(td, th) { padding: 1px 3px !important }
</style>
`

// HTML writes the document as tables that paste into a mail: a fragment, or a whole
// page where it is to be one. Every text goes through escaped before it meets a tag.
func (d *Doc) HTML() string {
	if !d.Page {
		return "<meta charset=\"utf-8\">\n" + d.body()
	}
	title := ""
	for _, block := range d.Blocks {
		if t, ok := block.(Title); ok && title == "" {
			title = string(t)
		}
	}
	return pageHead + "<title>" + escaped(title) + "</title>\n</head>\n<body>\n" + d.body() + "</body>\n</html>\n"
}

// heading is a text above what it heads, in a page by its level.
func (d *Doc) heading(level int, text string) string {
	if !d.Page || text == "" {
		return paragraph(bold(text))
	}
	h := "h" + strconv.Itoa(level)
	return "<" + h + ">" + escaped(text) + "</" + h + ">\n"
}

func (d *Doc) body() string {
	var b strings.Builder
	level := 1
	for _, block := range d.Blocks {
		switch x := block.(type) {
		case *Picture:
			b.WriteString(d.heading(3, x.Title) + "<svg" + svg(false, x) + paragraph(escaped(x.Alt)))
		case Title:
			b.WriteString(d.heading(level, string(x)))
			level = 2
		case Lines:
			b.WriteString(paragraph(escaped(x...)))
		case *List:
			t := x.table()
			b.WriteString(d.heading(3, t.Heading))
			t.html(&b)
		case *Table:
			b.WriteString(d.heading(3, x.Heading))
			x.html(&b)
		}
	}
	b.WriteString(paragraph(escaped(d.below()...)))
	return b.String()
}

func (t *Table) html(b *strings.Builder) {
	b.WriteString("<table style=\"" + tableStyle + "\">\n")
	if t.headed() {
		b.WriteString("<thead><tr>")
		for i := range t.Columns {
			head := joined("\n", t.Columns[i].Head...)
			if head == "" {
				head = t.Columns[i].Name
			}
			b.WriteString(tag("th", headStyle, lines(strings.Split(head, "\n"))))
		}
		b.WriteString("</tr></thead>\n")
	}
	b.WriteString("<tbody>\n")
	for r := range t.Rows {
		row := &t.Rows[r]
		if row.Group != "" {
			b.WriteString("<tr>" + tag("td colspan=\""+strconv.Itoa(t.width())+"\"", groupStyle, escaped(row.Group)) + "</tr>\n")
		}
		b.WriteString("<tr>")
		for i := range row.Cells {
			b.WriteString(row.Cells[i].html(t.column(i).Align))
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n")
	if len(t.totals()) > 0 {
		b.WriteString("<tfoot><tr>")
		for i := range t.Columns {
			total := t.Columns[i].Total
			if i == 0 {
				total = []string{t.Total}
			}
			b.WriteString(tag("td", labelStyle, lines(total)))
		}
		b.WriteString("</tr></tfoot>\n")
	}
	b.WriteString("</table>\n" + paragraph(escaped(t.Notes...)))
}

// html sets the text of a figure in bold and all else small.
func (c *Cell) html(a Align) string {
	text := escaped(c.Text)
	switch {
	case a == Right:
		return tag("td", figureStyle, text)
	case a == Left:
		return tag("td", labelStyle, text)
	case c.Text != "" && c.Mark == "":
		text = bold(c.Text) + " "
	case c.Text != "":
		text = bold(c.Text)
	}
	beside := *c
	beside.Text = ""
	return tag("td", figureStyle, text+"<small>"+escaped(beside.line())+"</small>")
}

// escaped are texts, cleaned and escaped, as lines of a paragraph.
func escaped(texts ...string) string {
	out := make([]string, len(texts))
	for i, s := range texts {
		out[i] = html.EscapeString(Clean(s))
	}
	return strings.Join(out, "<br>\n")
}

// lines are texts on lines of their own in a cell.
func lines(texts []string) string { return strings.ReplaceAll(escaped(texts...), "<br>\n", "<br>") }

func bold(s string) string {
	if s == "" {
		return ""
	}
	return "<b>" + escaped(s) + "</b>"
}

// tag puts what is escaped already into a tag with a style.
func tag(name, style, inner string) string {
	end, _, _ := strings.Cut(name, " ")
	return "<" + name + " style=\"" + style + "\">" + inner + "</" + end + ">"
}

// paragraph is what is escaped already as a paragraph, "" for nothing.
func paragraph(inner string) string {
	if inner == "" {
		return ""
	}
	return tag("p", smallStyle, inner) + "\n"
}
