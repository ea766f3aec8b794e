package report

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"alongside/props"
	"alongside/props/compare"
)

// MailWidth is a line length that mail programs leave unbroken: RFC 5322,
// section 2.1.1, asks for no more than 78, some break plain text at 76.
const MailWidth = 76

// Text writes a comparison as plain lines that stay aligned in a monospaced
// mail. Where the pins do not fit side by side, blocks of them follow each
// other, each with the baseline first.
func Text(c *compare.Comparison, s Scope) string { return TextWidth(c, s, MailWidth) }

// TextWidth is Text for lines of up to width characters; a table that cannot
// be made so narrow is wider.
func TextWidth(c *compare.Comparison, s Scope, width int) string {
	c = s.of(c)
	t := NewTable(c)
	width = max(width, 40)
	var b strings.Builder
	wrap(&b, width, "", t.Title)
	if len(t.Heads) == 0 {
		return b.String()
	}
	b.WriteByte('\n')
	writeGrid(&b, t, width)
	if len(c.Rows) == 1 {
		b.WriteByte('\n')
		for i := range c.Rows[0].Cells {
			wrap(&b, width, "  ", detail(&c.Rows[0].Cells[i], t))
		}
	}
	for i, l := range t.totalLines(c) {
		if i == 0 {
			b.WriteByte('\n')
		}
		wrap(&b, width, "  ", l)
	}
	writeFoot(&b, t, width)
	return b.String()
}

// writeFoot writes what stands under every table.
func writeFoot(b *strings.Builder, t *Table, width int) {
	b.WriteByte('\n')
	for i, n := range t.Notes {
		wrap(b, width, "   ", pad(superscript([]int{i + 1}), 2)+" "+n)
	}
	for i, s := range t.sources {
		wrap(b, width, "   ", pad("S"+strconv.Itoa(i+1), 2)+" "+s)
	}
	if len(t.Notes)+len(t.sources) > 0 {
		b.WriteByte('\n')
	}
	for _, l := range t.Signs() {
		wrap(b, width, "  ", l)
	}
	wrap(b, width, "  ", t.Setting)
	wrap(b, width, "  ", Caution)
}

// detail is one figure of a row in a sentence, with all that stands behind it.
func detail(c *compare.Cell, t *Table) string {
	s := c.Material.Name() + ": "
	if c.Figure == nil {
		return s + c.Absent
	}
	f := c.Figure
	s += f.Value.String() + ", " + f.Basis.Phrase()
	if cond := f.Cond.String(); cond != "" {
		s += "; " + cond
	}
	s += "; S" + strconv.Itoa(t.source(f.Source))
	if f.Table != "" {
		s += ", " + f.Table
	}
	if aside := t.unread(f); aside != "" {
		s += "; " + aside
	}
	return s
}

// grid is the table as strings, not yet padded. A column of cells has four
// parts: figure, marks, difference and signs.
type grid struct {
	labels, units []string
	heads         [][]string
	parts         [][][4]string // by column and line
	widths        [][4]int
}

func writeGrid(b *strings.Builder, t *Table, width int) {
	g := newGrid(t, false)
	blocks := g.blocks(t.Baseline, width)
	if len(blocks) > 1 {
		short := newGrid(t, true)
		if better := short.blocks(t.Baseline, width); len(better) < len(blocks) {
			g, blocks = short, better
		}
	}
	for i, columns := range blocks {
		if i > 0 {
			b.WriteByte('\n')
		}
		g.write(b, t, columns)
	}
}

func newGrid(t *Table, short bool) *grid {
	g := &grid{parts: make([][][4]string, len(t.Heads)), widths: make([][4]int, len(t.Heads))}
	for i, h := range t.Heads {
		head := []string{Clean(h.Alloy), Clean(h.Temper), h.Process}
		if i == t.Baseline {
			head = append(head, "baseline")
		}
		g.heads = append(g.heads, head)
	}
	for _, l := range t.Lines {
		label := l.Name
		if short || length(label) > longLabel {
			label = l.Short
		}
		g.labels = append(g.labels, label)
		g.units = append(g.units, strings.TrimSpace(l.Unit+" "+l.Sense))
		for i := range l.Cells {
			p := cellParts(&l.Cells[i])
			g.parts[i] = append(g.parts[i], p)
			for j, s := range p {
				g.widths[i][j] = max(g.widths[i][j], length(s))
			}
		}
	}
	return g
}

// cellParts are the figure, its marks, the difference, and the verdict with the
// numbers of its notes. A cell without a figure has a dash in its place.
func cellParts(c *Cell) [4]string {
	if c.Value == "" {
		return [4]string{"–", "", "", superscript(c.Notes)}
	}
	return [4]string{Clean(c.Value), c.marks(), c.Delta, c.Glyph + superscript(c.Notes)}
}

var raised = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// superscript writes the numbers of notes: "¹,³".
func superscript(notes []int) string {
	var parts []string
	for _, n := range notes {
		parts = append(parts, raised.Replace(strconv.Itoa(n)))
	}
	return strings.Join(parts, ",")
}

func (g *grid) columnWidth(i int) int {
	w := g.widths[i]
	body := w[0] + w[1] + w[2] + w[3] + 2
	if w[2] == 0 { // the baseline, or no differences asked for
		body--
	}
	for _, h := range g.heads[i] {
		body = max(body, length(h))
	}
	return body
}

func (g *grid) labelWidths() (label, unit int) {
	for i := range g.labels {
		label, unit = max(label, length(g.labels[i])), max(unit, length(g.units[i]))
	}
	return label, unit
}

const (
	gap       = 2
	longLabel = 26 // longer names give way to their short form
)

// blocks spreads the columns over as many blocks as the width needs. Every
// block begins with the baseline.
func (g *grid) blocks(baseline, width int) [][]int {
	label, unit := g.labelWidths()
	room := width - label - unit - 2*gap - g.columnWidth(baseline)
	block, used := []int{baseline}, 0
	var out [][]int
	for i := range g.heads {
		if i == baseline {
			continue
		}
		w := g.columnWidth(i) + gap
		if used+w > room && len(block) > 1 {
			out = append(out, block)
			block, used = []int{baseline}, 0
		}
		block, used = append(block, i), used+w
	}
	return append(out, block)
}

func (g *grid) write(b *strings.Builder, t *Table, columns []int) {
	label, unit := g.labelWidths()
	line := func(first, second string, cell func(i int) string) {
		s := pad(first, label+1) + pad(second, unit)
		for _, i := range columns {
			s += strings.Repeat(" ", gap) + pad(cell(i), g.columnWidth(i))
		}
		b.WriteString(strings.TrimRight(s, " "))
		b.WriteByte('\n')
	}
	for row := range 4 {
		some := false
		for _, i := range columns {
			some = some || row < len(g.heads[i]) && g.heads[i][row] != ""
		}
		if !some {
			continue
		}
		line("", "", func(i int) string {
			if row >= len(g.heads[i]) {
				return ""
			}
			return g.heads[i][row]
		})
	}
	group := props.Group(255)
	for at, l := range t.Lines {
		if l.Group != group {
			group = l.Group
			b.WriteString(strings.ToUpper(group.String()))
			b.WriteByte('\n')
		}
		line(g.labels[at], g.units[at], func(i int) string {
			p, w := g.parts[i][at], g.widths[i]
			s := padLeft(p[0], w[0]) + pad(p[1], w[1])
			if w[2] > 0 {
				s += " " + padLeft(p[2], w[2])
			}
			if t.Baseline != i {
				s += " "
			}
			return s + p[3]
		})
	}
}

func length(s string) int { return utf8.RuneCountInString(s) }

func pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-length(s))) }

func padLeft(s string, n int) string { return strings.Repeat(" ", max(0, n-length(s))) + s }

func wrap(b *strings.Builder, width int, indent, text string) { Wrap(b, width, "", indent, text) }

// Wrap writes a paragraph in lines of up to width characters. Its first line
// begins with one indent, those after it with another.
func Wrap(b *strings.Builder, width int, first, after, text string) {
	at := 0
	for _, word := range strings.Fields(Clean(text)) {
		n := length(word)
		switch {
		case at == 0:
			b.WriteString(first)
			at = length(first)
		case at+1+n > width:
			b.WriteString("\n" + after)
			at = length(after)
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += n
	}
	b.WriteByte('\n')
}
