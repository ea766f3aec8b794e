package report

import (
	"strconv"
	"strings"

	"alongside/props/compare"
)

// Markdown writes a comparison as a pipe table with notes, sources and the
// caution below.
func Markdown(c *compare.Comparison, s Scope) string {
	c = s.of(c)
	t := NewTable(c)
	var b strings.Builder
	b.WriteString("**" + escapeMarkdown(t.Title) + "**\n")
	if len(t.Heads) == 0 {
		return b.String()
	}
	record := func(cells []string) { b.WriteString("| " + strings.Join(cells, " | ") + " |\n") }
	head, rule := []string{"Property", "Unit"}, []string{":---", ":---"}
	for i, m := range c.Bench.Pins {
		name := escapeMarkdown(m.Name())
		if i == t.Baseline {
			name += " (baseline)"
		}
		head, rule = append(head, name), append(rule, "---:")
	}
	b.WriteByte('\n')
	record(head)
	record(rule)
	for _, l := range t.Lines {
		cells := []string{escapeMarkdown(l.Name), escapeMarkdown(strings.TrimSpace(l.Unit + " " + l.Sense))}
		for i := range l.Cells {
			cells = append(cells, escapeMarkdown(cellLine(&l.Cells[i])))
		}
		record(cells)
	}
	b.WriteByte('\n')
	for _, l := range append(t.totalLines(c), t.footLines()...) {
		b.WriteString("- " + escapeMarkdown(l) + "\n")
	}
	return b.String()
}

// cellLine is a cell in one line: "37m +23 % ✓ [1] S2".
func cellLine(c *Cell) string {
	parts := []string{c.Value + c.marks(), c.Delta, c.Glyph}
	for _, n := range c.Notes {
		parts = append(parts, "["+strconv.Itoa(n)+"]")
	}
	if c.Source > 0 {
		parts = append(parts, "S"+strconv.Itoa(c.Source))
	}
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, " ")
}

// totalLines are the counts of each pin, a line each; none for a single row.
func (t *Table) totalLines(c *compare.Comparison) []string {
	var out []string
	for i, h := range t.Heads {
		if i != t.Baseline && h.Total != "" {
			out = append(out, c.Bench.Pins[i].Name()+": "+h.Total)
		}
	}
	return out
}

// marks are the signs that stand at the figure: of its basis, and of memory.
func (c *Cell) marks() string {
	if c.Memory {
		return c.Mark + "'"
	}
	return c.Mark
}

// footLines are the notes, sources, signs, setting and caution, a line each.
func (t *Table) footLines() []string {
	var out []string
	for i, n := range t.Notes {
		out = append(out, "["+strconv.Itoa(i+1)+"] "+n)
	}
	for i, s := range t.Sources {
		out = append(out, "S"+strconv.Itoa(i+1)+" "+s)
	}
	out = append(out, t.Signs()...)
	return append(out, t.Setting, Caution)
}

var markdownSigns = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "[", `\[`, "]", `\]`, "#", `\#`, "&", "&amp;")

func escapeMarkdown(s string) string { return markdownSigns.Replace(Clean(s)) }
