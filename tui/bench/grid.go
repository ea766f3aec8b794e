// Package bench lays a table of figures out in columns for a width and a theme.
// Which part of it is in sight, and where the cursor is, the screen says.
package bench

import (
	"strings"

	"alongside/props/sheet"
	"alongside/tui/ui"
)

// Grid is a table fitted to a width in a theme: columns measured, cells styled.
// The table's first columns are the names of its rows, their senses and their
// units; the one after these stays put, and the others scroll beside it. It is
// made when table, width or theme change; a key that only moves the cursor draws
// from it.
type Grid struct {
	Columns []Column // as displayed
	Gap     int      // blanks before each column
	Labels  Labels

	table  *sheet.Table
	theme  *ui.Theme
	width  int
	from   int      // columns that joined is made for
	joined []string // whole rows
}

// Fits reports whether the grid is made for a theme and a width.
func (g *Grid) Fits(t *ui.Theme, w int) bool { return g.theme == t && g.width == w }

// Labels are the widths inside the column of row labels: the name, a gap, the
// sign of the sense, the unit.
type Labels struct{ name, gap, sense, unit, Width int }

// Column is how one column of figures is laid out: the text up to column value,
// then the mark, the change at the right, the sign.
type Column struct {
	Width int // with the gap before it, where the cursor's bracket stands
	inner int // text, mark and change
	value int // where texts end
	mark  int // width of the marks
	sign  int // width of the signs with the blank before
}

// labels is how many columns of the table label its rows.
const labels = 3

// NewGrid lays a table out.
func NewGrid(t *sheet.Table, th *ui.Theme, w int) *Grid {
	g := &Grid{table: t, theme: th, width: w}
	g.measureLabels()
	for i := labels; i < len(t.Columns); i++ {
		g.Columns = append(g.Columns, g.measure(i))
	}
	g.makeRoom()
	g.spread()
	return g
}

// makeRoom cuts the names where a column beside the one that stays put would lose
// its end, which is the change.
func (g *Grid) makeRoom() {
	if len(g.Columns) < 2 {
		return
	}
	widest := 0
	for _, c := range g.Columns[1:] {
		widest = max(widest, c.Width)
	}
	over := g.Labels.Width + 1 + g.Columns[0].Width + widest - g.width
	if cut := min(over, g.Labels.name-shortName); cut > 0 {
		g.Labels.name -= cut
		g.Labels.Width -= cut
	}
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

const (
	veryRoomy = 140 // from this width on names are hardly cut
	narrow    = 76  // below this width the change matters more than the name
	nameLimit = 30
	shortName = 20
	longName  = 36
	minColumn = 9
	maxHead   = 18 // of a head of several lines; one that stands alone gets more
	loneHead  = 27
	maxWords  = 20 // of a cell in words beside others
)

// name is the name of a row: its short one where room is scarce.
func (g *Grid) name(r *sheet.Row) string {
	if c := r.Cells[0]; g.width < ui.Roomy && c.Short != "" {
		return ui.Plain(c.Short)
	}
	return ui.Plain(r.Cells[0].Text)
}

// wide reports whether a row's name may take the room of sense and unit.
func wide(r *sheet.Row) bool { return r.Cells[1].Text == "" && r.Cells[2].Text == "" }

func (g *Grid) measureLabels() {
	l, limit := &g.Labels, nameLimit
	switch {
	case g.width >= veryRoomy:
		limit = longName
	case g.width < narrow:
		limit = shortName
	}
	for _, s := range g.table.Columns[0].Head {
		l.name = max(l.name, ui.Width(s))
	}
	for i := range g.table.Rows {
		if r := &g.table.Rows[i]; !wide(r) {
			l.name = max(l.name, ui.Width(g.name(r)))
			l.sense = max(l.sense, ui.Width(r.Cells[1].Text))
			l.unit = max(l.unit, ui.Width(ui.Plain(r.Cells[2].Text)))
		}
	}
	l.name = min(l.name, limit)
	l.Width = 1 + l.name + l.sense + 1 + l.unit
}

// measure finds the widths of a column. A long text may use the room of a change
// that it does not have, so the column is as wide as its widest cell, not as the
// sum of its widest parts. Words do not widen it without bounds: they are cut.
func (g *Grid) measure(i int) Column {
	var c Column
	changes := map[int]int{}
	for r := range g.table.Rows {
		cell := g.cell(r, i)
		c.mark = max(c.mark, ui.Width(cell.Mark))
		c.sign = max(c.sign, ui.Width(signOf(cell)))
	}
	for r := range g.table.Rows {
		cell := g.cell(r, i)
		n := ui.Width(text(cell))
		if cell.Short != "" {
			n = ui.Width(cell.Short)
		} else if cell.Change == "" && cell.Mark == "" && cell.Sign == "" {
			n = min(n, maxWords)
		}
		if n += c.mark; cell.Change != "" {
			n += 1 + ui.Width(change(cell))
			changes[ui.Width(change(cell))]++
		}
		c.inner = max(c.inner, n)
	}
	head := g.table.Columns[i]
	least, limit := minColumn, maxHead
	if len(head.Head) == 1 {
		limit = min(loneHead, g.Room()-2)
	}
	for _, s := range head.Head {
		least = max(least, min(ui.Width(ui.Plain(s)), limit))
	}
	least = max(least, ui.Width(total(head)))
	c.inner = max(c.inner, least-c.sign)
	c.Width = 1 + c.inner + c.sign
	c.value = c.inner - c.mark
	if usual := mostCommon(changes); usual > 0 {
		c.value -= 1 + usual
	}
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

// cell is a cell of the table; those missing at the end of a row are empty.
func (g *Grid) cell(row, column int) *sheet.Cell {
	if cells := g.table.Rows[row].Cells; column < len(cells) {
		return &cells[column]
	}
	return &sheet.Cell{}
}

func text(c *sheet.Cell) string {
	if c.Text == "" {
		return "–"
	}
	return ui.Plain(c.Text)
}

// signOf is the sign with the blank before it.
func signOf(c *sheet.Cell) string {
	if c.Sign == "" {
		return ""
	}
	return " " + c.Sign
}

// change is the change without the blank before a percent sign: columns are
// narrow.
func change(c *sheet.Cell) string { return strings.ReplaceAll(c.Change, " %", "%") }

func total(c sheet.Column) string { return strings.Join(c.Total, " ") }

// Room is what is left for the columns that scroll, with a blank at the end.
func (g *Grid) Room() int {
	r := g.width - g.Labels.Width - 1
	if len(g.Columns) > 0 {
		r -= g.Columns[0].Width
	}
	return r
}

// Fit is how many columns from the i-th fit beside the first; at least one where
// there is one.
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

// Scroll is the first column beside the one that stays put, for the cursor in a
// column to be in sight, as near to what it was as can be.
func (g *Grid) Scroll(first, cursor int) int {
	first = ui.Clamp(first, 1, len(g.Columns)-1)
	if cursor > 0 {
		first = min(first, cursor)
		for cursor >= first+g.Fit(first) {
			first++
		}
	}
	// No empty room at the right while columns are off the screen at the left.
	for first > 1 && first-1+g.Fit(first-1) >= len(g.Columns) {
		first--
	}
	return max(first, 1)
}

// Each calls f for the columns on screen with the cell of the window at which
// they begin.
func (g *Grid) Each(first int, f func(column, x int)) {
	x := g.Labels.Width
	for i := range g.Columns {
		if i == 0 || i >= first && i < first+g.Fit(first) {
			f(i, x)
			x += g.Columns[i].Width
		}
	}
}
