package bench

import (
	"strings"

	"alongside/props/report"
	"alongside/tui/ui"
)

// Grid is the table fitted to a width in a theme: columns measured, cells
// styled. It is made when the table, the width or the theme changes, and a
// key that only moves the cursor draws from it.
type Grid struct {
	Rows    []Row
	RowOf   []int    // row of each line of the table
	Columns []Column // as displayed: the baseline first
	Gap     int      // blanks before each column
	Labels  Labels

	table  *report.Table
	theme  *ui.Theme
	width  int
	joined joined
}

// Fits reports whether the grid is made for a theme and a width.
func (g *Grid) Fits(t *ui.Theme, w int) bool { return g.theme == t && g.width == w }

// Row is one row of the body: a line of the table, or the heading of a
// group.
type Row struct {
	Line    int // of the table; -1 for a heading
	heading string
}

// Labels are the widths inside the column of row labels: the name, a gap, the
// sign of the sense, the unit.
type Labels struct{ name, gap, unit, Width int }

// Column is how one pin is laid out: the value up to column value, then the
// mark, the delta at the right, the glyph.
type Column struct {
	Pin   int      // index in the table's heads
	Width int      // with the gap before it, where the cursor's bracket stands
	inner int      // value, mark and delta
	value int      // where values end
	mark  int      // width of the marks
	glyph int      // width of the glyphs with the blank before
	cells []string // styled, by line
}

// NewGrid lays a table out.
func NewGrid(t *report.Table, th *ui.Theme, w int) *Grid {
	g := &Grid{table: t, theme: th, width: w}
	for i := range t.Lines {
		if l := &t.Lines[i]; i == 0 || l.Heading() != t.Lines[i-1].Heading() {
			g.Rows = append(g.Rows, Row{-1, l.Heading()})
		}
		g.RowOf = append(g.RowOf, len(g.Rows))
		g.Rows = append(g.Rows, Row{i, ""})
	}
	g.measureLabels()
	if t.Baseline >= 0 {
		g.Columns = append(g.Columns, g.measure(t.Baseline))
	}
	for i := range t.Heads {
		if i != t.Baseline {
			g.Columns = append(g.Columns, g.measure(i))
		}
	}
	g.spread()
	return g
}

// spread uses room that is left over to set the columns further apart.
func (g *Grid) spread() {
	total := g.Labels.Width + 1
	for i := range g.Columns {
		total += g.Columns[i].Width
	}
	if total < g.width {
		g.Labels.gap, total = 1, total+1
		g.Labels.Width++
	}
	for g.Gap = 1; g.Gap < 3 && total+len(g.Columns) <= g.width; g.Gap++ {
		total += len(g.Columns)
		for i := range g.Columns {
			g.Columns[i].Width++
		}
	}
}

// Widths of the label column: short names where room is scarce.
const (
	veryRoomy = 140 // from this width on names are hardly cut
	nameLimit = 28
	longName  = 36
	minColumn = 9
	maxHead   = 18
)

func (g *Grid) name(l *report.Line) string {
	if g.width >= ui.Roomy {
		return ui.Plain(l.Name)
	}
	return ui.Plain(l.Short)
}

func (g *Grid) measureLabels() {
	for i := range g.table.Lines {
		l := &g.table.Lines[i]
		if wide(l) {
			continue
		}
		g.Labels.name = max(g.Labels.name, ui.Width(g.name(l)))
		g.Labels.unit = max(g.Labels.unit, ui.Width(l.Unit))
	}
	limit := nameLimit
	if g.width >= veryRoomy {
		limit = longName
	}
	g.Labels.name = min(max(g.Labels.name, ui.Width("process")), limit)
	g.Labels.Width = 1 + g.Labels.name + 1 + 1 + g.Labels.unit
}

// measure finds the widths of a pin's column. A long value may use the room
// of a delta that it does not have, so the column is as wide as its widest
// cell, not as the sum of its widest parts.
func (g *Grid) measure(pin int) Column {
	c := Column{Pin: pin}
	deltas := map[int]int{}
	for i := range g.table.Lines {
		cell := &g.table.Lines[i].Cells[pin]
		c.mark = max(c.mark, ui.Width(markOf(cell)))
		c.glyph = max(c.glyph, ui.Width(glyphOf(cell)))
	}
	for i := range g.table.Lines {
		cell := &g.table.Lines[i].Cells[pin]
		n := ui.Width(valueOf(cell)) + c.mark
		if cell.Delta != "" {
			n += 1 + ui.Width(DeltaOf(cell))
			deltas[ui.Width(DeltaOf(cell))]++
		}
		c.inner = max(c.inner, n)
	}
	h := &g.table.Heads[pin]
	least := minColumn
	for _, s := range []string{h.Alloy, h.Temper, ProcessWords(h.Process), TotalsOf(h)} {
		least = max(least, min(ui.Width(ui.Plain(s)), maxHead))
	}
	least = max(least, ui.Width(TotalsOf(h)))
	c.inner = max(c.inner, least-c.glyph)
	c.Width = 1 + c.inner + c.glyph
	c.value = c.inner - c.mark
	if usual := mostCommon(deltas); usual > 0 {
		c.value -= 1 + usual
	}
	c.cells = make([]string, len(g.table.Lines))
	return c
}

func mostCommon(count map[int]int) int {
	best, n := 0, 0
	for length, times := range count {
		if times > n || times == n && length > best {
			best, n = length, times
		}
	}
	return best
}

func valueOf(c *report.Cell) string {
	switch {
	case c.Value != "":
		return ui.Plain(c.Value)
	case c.Never:
		return "none"
	}
	return "–"
}

// glyphOf is the sign of the verdict with the blank before it, starred where
// the baseline shows another figure than the one compared with.
func glyphOf(c *report.Cell) string {
	switch {
	case c.Glyph == "" || c.Value == "":
		return ""
	case c.Other:
		return " " + c.Glyph + OtherSign
	}
	return " " + c.Glyph
}

// OtherSign marks such a cell.
const OtherSign = "*"

// MemorySign marks a figure that was remembered, not read.
const MemorySign = "'"

// markOf joins the sign of the basis and the sign of a figure from memory.
func markOf(c *report.Cell) string {
	if c.Memory {
		return c.Mark + MemorySign
	}
	return c.Mark
}

// DeltaOf is the delta without the blank before a percent sign: columns are
// narrow.
func DeltaOf(c *report.Cell) string { return strings.Replace(c.Delta, " %", "%", 1) }

// TotalsOf is the counts of a pin in glyphs, without those that are zero.
func TotalsOf(h *report.Head) string {
	var keep []string
	for _, s := range strings.Fields(h.Short) {
		if r := []rune(s); len(r) > 1 && string(r[1:]) != "0" {
			keep = append(keep, s)
		}
	}
	return strings.Join(keep, " ")
}

// ProcessWords shortens the one long name.
func ProcessWords(s string) string { return strings.Replace(s, "permanent mold", "perm. mold", 1) }

// parts lays out a cell as value, mark, delta and glyph with the blanks
// between them; together they are inner+glyph wide.
func (c *Column) parts(cell *report.Cell) (value, mark, delta, glyph string) {
	value, mark, delta = valueOf(cell), markOf(cell), DeltaOf(cell)
	if cell.Value == "" {
		mark, delta = "", ""
	}
	end := c.value
	if delta != "" {
		end = min(end, c.inner-c.mark-1-ui.Width(delta))
	}
	end = max(end, ui.Width(value))
	value = ui.Blanks(end-ui.Width(value)) + value
	mark = ui.Pad(mark, c.mark)
	delta = ui.Blanks(c.inner-end-c.mark-ui.Width(delta)) + delta
	return value, mark, delta, ui.Pad(glyphOf(cell), c.glyph)
}

// Cell returns a styled cell, kept for the next frame.
func (g *Grid) Cell(c *Column, line int) string {
	if s := c.cells[line]; s != "" {
		return s
	}
	cell := &g.table.Lines[line].Cells[c.Pin]
	value, mark, delta, glyph := c.parts(cell)
	t := g.theme
	body, verdict := t.Text, VerdictInk(t, cell.Verdict)
	switch {
	case cell.Value == "":
		body, verdict = t.Dim, t.Dim
	case c.Pin == g.table.Baseline:
		body = t.Strong
	}
	s := body.Of(value) + t.Dim.Of(mark) + verdict.Of(delta+glyph)
	c.cells[line] = s
	return s
}

// cursorCell is the cell under the cursor with a blank on either side.
func (g *Grid) cursorCell(c *Column, line int) string {
	value, mark, delta, glyph := c.parts(&g.table.Lines[line].Cells[c.Pin])
	s := value + mark + delta + glyph
	if g.theme.Plain {
		return "[" + s + "]"
	}
	return g.theme.Cursor.Of(" " + s + " ")
}

// wide reports whether a line's name may take the room of sense and unit: a
// need has both in its name, a merit needs neither.
func wide(l *report.Line) bool { return !l.OfProperty() }

func (g *Grid) label(line int, picked bool) string {
	l := &g.table.Lines[line]
	if wide(l) {
		name := ui.Cut(g.name(l), g.Labels.Width-1)
		ink, mark := g.theme.Text, " "
		if picked {
			ink = g.theme.Heading
			if g.theme.Plain {
				mark = ">"
			}
		}
		return mark + ink.Of(name) + ui.Blanks(g.Labels.Width-1-ui.Width(name))
	}
	name := ui.Pad(g.name(l), g.Labels.name)
	sense := ui.Pad(l.Sense, 1)
	sense = ui.Blanks(g.Labels.gap) + sense
	unit := ui.Pad(l.Unit, g.Labels.unit)
	t := g.theme
	if picked {
		mark := " "
		if t.Plain {
			mark = ">"
		}
		return mark + t.Heading.Of(strings.TrimRight(name, " ")) + ui.Blanks(g.Labels.name-ui.Width(strings.TrimRight(name, " "))) +
			t.Text.Of(sense) + " " + t.Text.Of(unit)
	}
	return " " + t.Text.Of(name) + t.Dim.Of(sense+" "+unit)
}

// Room is what is left for the pins that scroll, with a blank at the end.
func (g *Grid) Room() int {
	r := g.width - g.Labels.Width - 1
	if len(g.Columns) > 0 {
		r -= g.Columns[0].Width
	}
	return r
}

// Fit is how many columns from the i-th fit beside the baseline; at least one
// where there is one.
func (g *Grid) Fit(i int) int {
	n, room := 0, g.Room()
	for i+n < len(g.Columns) && room >= g.Columns[i+n].Width {
		room -= g.Columns[i+n].Width
		n++
	}
	if n == 0 && i < len(g.Columns) {
		return 1
	}
	return n
}

// joined keeps whole rows for one place of horizontal scrolling.
type joined struct {
	from, n int
	rows    []string
}

// Row is a row of the body with columns from..from+n beside the baseline.
func (g *Grid) Row(r, from, n int) string {
	if g.joined.from != from || g.joined.n != n || g.joined.rows == nil {
		g.joined = joined{from, n, make([]string, len(g.Rows))}
	}
	if s := g.joined.rows[r]; s != "" {
		return s
	}
	s := g.Draw(r, from, n, -1)
	g.joined.rows[r] = s
	return s
}

// Draw is Row with the cursor in a displayed column; -1 draws none.
func (g *Grid) Draw(r, from, n, cursor int) string {
	line := g.Rows[r].Line
	if line < 0 {
		return " " + g.theme.Heading.Of(g.Rows[r].heading)
	}
	var b strings.Builder
	b.WriteString(g.label(line, cursor >= 0))
	after := false // the cursor's cell has drawn the blank behind it
	put := func(i int) {
		gap := g.Gap
		if after {
			gap--
		}
		after = i == cursor
		if after {
			b.WriteString(ui.Blanks(gap-1) + g.cursorCell(&g.Columns[i], line))
			return
		}
		b.WriteString(ui.Blanks(gap))
		b.WriteString(g.Cell(&g.Columns[i], line))
	}
	if len(g.Columns) > 0 {
		put(0)
	}
	for i := from; i < from+n; i++ {
		put(i)
	}
	return b.String()
}
