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

// HTML writes the document as tables that paste into a mail. It is a fragment,
// not a page. Every text goes through escaped before it meets a tag.
func (d *Doc) HTML() string {
	var b strings.Builder
	b.WriteString("<meta charset=\"utf-8\">\n")
	for _, block := range d.Blocks {
		switch x := block.(type) {
		case Title:
			b.WriteString(paragraph(bold(string(x))))
		case Lines:
			b.WriteString(paragraph(escaped(x...)))
		case *List:
			x.table().html(&b)
		case *Table:
			x.html(&b)
		}
	}
	b.WriteString(paragraph(escaped(d.below()...)))
	return b.String()
}

func (t *Table) html(b *strings.Builder) {
	b.WriteString(paragraph(bold(t.Heading)) + "<table style=\"" + tableStyle + "\">\n")
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
