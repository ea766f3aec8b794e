package report

import (
	"html"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
)

// The styles stand in every cell: mail programs drop style sheets.
const (
	tableStyle = `border-collapse:collapse;font-family:Arial,Helvetica,sans-serif;font-size:10pt`
	cellStyle  = `border:1px solid #999;padding:2px 6px;text-align:right;white-space:nowrap`
	labelStyle = `border:1px solid #999;padding:2px 6px;text-align:left`
	headStyle  = `border:1px solid #999;padding:2px 6px;text-align:left;vertical-align:bottom;background:#eee`
	groupStyle = `border:1px solid #999;padding:2px 6px;text-align:left;background:#f6f6f6;font-weight:bold`
	smallStyle = `font-family:Arial,Helvetica,sans-serif;font-size:9pt`
)

// HTML writes a comparison as a table that pastes into a mail, with notes,
// sources and the caution below. It is a fragment, not a page.
func HTML(c *compare.Comparison, s Scope) string {
	c = s.of(c)
	t := NewTable(c)
	var b strings.Builder
	b.WriteString(`<meta charset="utf-8">` + "\n")
	b.WriteString(`<p style="` + smallStyle + `"><b>` + escapeHTML(t.Title) + "</b></p>\n")
	if len(t.Heads) == 0 {
		return b.String()
	}
	cell := func(tag, style, inner string) {
		b.WriteString("<" + tag + ` style="` + style + `">` + inner + "</" + tag + ">")
	}
	b.WriteString(`<table style="` + tableStyle + `">` + "\n<thead><tr>")
	cell("th", headStyle, "Property")
	cell("th", headStyle, "Unit")
	for i, h := range t.Heads {
		var lines []string
		for _, l := range []string{h.Alloy, h.Temper, h.Process} {
			if l != "" {
				lines = append(lines, escapeHTML(l))
			}
		}
		if i == t.Baseline {
			lines = append(lines, "baseline")
		}
		cell("th", headStyle, strings.Join(lines, "<br>"))
	}
	b.WriteString("</tr></thead>\n<tbody>\n")
	group := props.Group(255)
	for _, l := range t.Lines {
		if l.Group != group {
			group = l.Group
			b.WriteString(`<tr><td colspan="` + strconv.Itoa(2+len(t.Heads)) + `" style="` + groupStyle + `">` + group.String() + "</td></tr>\n")
		}
		b.WriteString("<tr>")
		cell("td", labelStyle, escapeHTML(l.Name))
		cell("td", labelStyle, escapeHTML(strings.TrimSpace(l.Unit+" "+l.Sense)))
		for i := range l.Cells {
			cell("td", cellStyle, cellHTML(&l.Cells[i]))
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n")
	if c.Totals != nil && len(t.Heads) > 1 {
		b.WriteString("<tfoot><tr>")
		cell("td", labelStyle, "Count")
		cell("td", labelStyle, "")
		for _, h := range t.Heads {
			cell("td", labelStyle, strings.ReplaceAll(escapeHTML(h.Total), ", ", "<br>"))
		}
		b.WriteString("</tr></tfoot>\n")
	}
	b.WriteString("</table>\n" + `<p style="` + smallStyle + `">`)
	for i, l := range t.footLines() {
		if i > 0 {
			b.WriteString("<br>\n")
		}
		b.WriteString(escapeHTML(l))
	}
	b.WriteString("</p>\n")
	return b.String()
}

// cellHTML sets the figure in bold and all else small.
func cellHTML(c *Cell) string {
	rest, bold := *c, ""
	rest.Value = ""
	if c.Value != "" {
		bold = "<b>" + escapeHTML(c.Value) + "</b>"
		if c.marks() == "" {
			bold += " "
		}
	}
	return bold + "<small>" + escapeHTML(cellLine(&rest)) + "</small>"
}

func escapeHTML(s string) string { return html.EscapeString(Clean(s)) }
