package sheet

import (
	"strings"
	"sync"
)

// Markdown writes the document with pipe tables.
func (d *Doc) Markdown() string {
	var parts []string
	for _, block := range d.Blocks {
		var b strings.Builder
		switch x := block.(type) {
		case *Picture:
			var drawn strings.Builder
			x.text(&drawn, MailWidth)
			b.WriteString("```\n" + strings.ReplaceAll(drawn.String(), "```", "'''") + "```\n")
		case Title:
			b.WriteString(strong(string(x)))
		case Lines:
			for i, l := range x {
				if i > 0 {
					b.WriteByte('\n')
				}
				b.WriteString(escapeMarkdown(l) + "\n")
			}
		case *List:
			x.table().markdown(&b)
		case *Table:
			x.markdown(&b)
		}
		parts = append(parts, b.String())
	}
	return joined("\n", append(parts, bullets(d.below()))...)
}

// table is the list as a table of labels and texts.
func (l *List) table() *Table {
	t := &Table{Heading: l.Title, Columns: Columns("", "")}
	for _, it := range l.Items {
		t.Add(it.Label, it.Text)
	}
	return t
}

func (t *Table) markdown(b *strings.Builder) {
	if t.Heading != "" {
		b.WriteString(strong(t.Heading) + "\n")
	}
	n := t.width()
	record := func(cell func(i int) string) {
		b.WriteByte('|')
		for i := range n {
			b.WriteString(" " + cell(i) + " |")
		}
		b.WriteByte('\n')
	}
	record(func(i int) string { return escapeMarkdown(t.column(i).Name) })
	record(func(i int) string {
		if t.column(i).Align == Left {
			return ":---"
		}
		return "---:"
	})
	for r := range t.Rows {
		row := &t.Rows[r]
		if row.Group != "" {
			record(func(i int) string {
				if i == 0 {
					return escapeMarkdown(strings.ToUpper(row.Group))
				}
				return ""
			})
		}
		record(func(i int) string { return escapeMarkdown(row.cell(i).line()) })
	}
	if notes := bullets(append(t.Notes[:len(t.Notes):len(t.Notes)], t.totals()...)); notes != "" {
		b.WriteString("\n" + notes)
	}
}

func strong(s string) string { return "**" + escapeMarkdown(s) + "**\n" }

func bullets(lines []string) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString("- " + escapeMarkdown(l) + "\n")
	}
	return b.String()
}

var markdownSigns = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "[", `\[`, "]", `\]`, "#", `\#`, "~", `\~`, "&", "&amp;")
})

func escapeMarkdown(s string) string { return markdownSigns().Replace(Clean(s)) }
