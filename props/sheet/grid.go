package sheet

import "strings"

const (
	gap       = 2
	longLabel = 26 // a longer text gives way to its short form
	wordRoom  = 20 // narrower than this a column of words is not broken into lines
)

// grid is a table as strings in columns, not yet padded.
type grid struct {
	t       *Table
	heads   [][]string    // by column
	cells   [][][4]string // by column and row: text, mark, change, sign
	widths  [][4]int
	spread  []bool // the column has changes or signs
	columns []int  // how wide each is
}

// text writes the table under its heading. One that is too wide and has
// columns to keep is broken into parts that each begin with these.
func (t *Table) text(b *strings.Builder, width int) {
	if t.Heading != "" {
		Wrap(b, width, "", "  ", strings.ToUpper(t.Heading))
	}
	g := newGrid(t, false)
	parts := g.parts(width)
	if len(parts) > 1 {
		short := newGrid(t, true)
		if better := short.parts(width); len(better) < len(parts) || g.overflows(parts, width) {
			g, parts = short, better
		}
	}
	for i, columns := range parts {
		if i > 0 {
			b.WriteByte('\n')
		}
		g.write(b, columns, width)
	}
	wrapAll(b, width, t.Notes)
	if totals := t.totals(); len(totals) > 0 {
		b.WriteByte('\n')
		wrapAll(b, width, totals)
	}
}

func newGrid(t *Table, short bool) *grid {
	n := t.width()
	g := &grid{t: t, heads: make([][]string, n), cells: make([][][4]string, n), widths: make([][4]int, n), spread: make([]bool, n), columns: make([]int, n)}
	for i := range n {
		c := t.column(i)
		head := c.Head
		if head == nil {
			head = []string{c.Name}
		}
		for _, h := range head {
			g.heads[i] = append(g.heads[i], Clean(h))
			g.columns[i] = max(g.columns[i], Width(Clean(h)))
		}
		g.cells[i] = make([][4]string, 0, len(t.Rows))
		for r := range t.Rows {
			cell := t.Rows[r].cell(i)
			p := cell.parts(c.Align, short)
			g.cells[i] = append(g.cells[i], p)
			for j, s := range p {
				g.widths[i][j] = max(g.widths[i][j], Width(s))
			}
			g.spread[i] = g.spread[i] || p[2] != "" || cell.Text != "" && cell.Sign != ""
		}
		g.columns[i] = max(g.columns[i], g.body(i, c.Align))
	}
	return g
}

// parts are what is set below its like. A figure that there is none of has a
// dash in its place.
func (c *Cell) parts(a Align, short bool) [4]string {
	text := c.Text
	if c.Short != "" && (short || Width(text) > longLabel) {
		text = c.Short
	}
	switch {
	case a != Figure:
		return [4]string{Clean(text)}
	case text == "":
		return [4]string{"–", "", "", superscript(c.Notes...)}
	}
	return [4]string{Clean(text), Clean(c.Mark), Clean(c.Change), Clean(c.Sign) + superscript(c.Notes...)}
}

// body is how wide the cells of a column are.
func (g *grid) body(i int, a Align) int {
	w := g.widths[i]
	if a != Figure {
		return w[0]
	}
	n := w[0] + w[1] + w[2] + w[3] + 1
	if w[2] > 0 {
		n++
	}
	return n
}

// parts spreads the columns over as many parts as the width needs.
func (g *grid) parts(width int) [][]int {
	var keep, rest []int
	for i := range g.columns {
		if g.t.column(i).Keep {
			keep = append(keep, i)
		} else {
			rest = append(rest, i)
		}
	}
	if len(keep) == 0 || len(rest) == 0 {
		return [][]int{append(keep, rest...)}
	}
	used := 0
	for n, i := range keep {
		used += g.space(n, i) + g.columns[i]
	}
	var out [][]int
	part, at := keep[:len(keep):len(keep)], used
	for _, i := range rest {
		w := gap + g.columns[i]
		if at+w > width && len(part) > len(keep) {
			out = append(out, part)
			part, at = keep[:len(keep):len(keep)], used
		}
		part, at = append(part, i), at+w
	}
	return append(out, part)
}

// overflows reports whether a part is wider than the text.
func (g *grid) overflows(parts [][]int, width int) bool {
	for _, part := range parts {
		used := 0
		for n, i := range part {
			used += g.space(n, i) + g.columns[i]
		}
		if used > width {
			return true
		}
	}
	return false
}

// space is how many blanks stand before a column that is the n-th of its part.
func (g *grid) space(n, i int) int {
	switch {
	case n == 0:
		return 0
	case g.t.column(i).Close:
		return gap - 1
	}
	return gap
}

func (g *grid) write(b *strings.Builder, columns []int, width int) {
	for row := 0; g.deeper(columns, row); row++ {
		var line strings.Builder
		for n, i := range columns {
			s := ""
			if row < len(g.heads[i]) {
				s = g.heads[i][row]
			}
			line.WriteString(blanks(g.space(n, i)))
			g.align(&line, i, s)
		}
		if s := line.String(); strings.TrimSpace(s) != "" {
			writeLine(b, s)
		}
	}
	for r := range g.t.Rows {
		if group := g.t.Rows[r].Group; group != "" {
			Wrap(b, width, "", "  ", strings.ToUpper(group))
		}
		g.writeRow(b, columns, r, width)
	}
}

// deeper reports whether a head has a line of that number.
func (g *grid) deeper(columns []int, row int) bool {
	for _, i := range columns {
		if row < len(g.heads[i]) {
			return true
		}
	}
	return false
}

// writeRow sets a row in columns. Words at its end that do not fit the width
// are broken into lines that hang below each other.
func (g *grid) writeRow(b *strings.Builder, columns []int, r, width int) {
	var line strings.Builder
	at := 0
	for n, i := range columns {
		line.WriteString(blanks(g.space(n, i)))
		at += g.space(n, i)
		p := g.cells[i][r]
		last := i == len(g.t.Rows[r].Cells)-1
		if last && g.t.column(i).Align == Left && at+Width(p[0]) > width && at < width-wordRoom {
			Wrap(b, width, line.String(), blanks(at), p[0])
			return
		}
		if g.t.column(i).Align == Figure {
			g.figure(&line, i, p)
		} else {
			g.align(&line, i, p[0])
		}
		at += g.columns[i]
	}
	writeLine(b, line.String())
}

// align sets a text at its side of a column.
func (g *grid) align(line *strings.Builder, i int, s string) {
	if g.t.column(i).Align == Right {
		line.WriteString(blanks(g.columns[i] - Width(s)))
		line.WriteString(s)
		return
	}
	line.WriteString(s)
	line.WriteString(blanks(g.columns[i] - Width(s)))
}

// figure sets the parts of a cell below those of the rows above.
func (g *grid) figure(line *strings.Builder, i int, p [4]string) {
	w := g.widths[i]
	used := w[0] + w[1]
	for _, s := range []string{blanks(w[0] - Width(p[0])), p[0], p[1], blanks(w[1] - Width(p[1]))} {
		line.WriteString(s)
	}
	if w[2] > 0 {
		line.WriteString(blanks(1+w[2]-Width(p[2])) + p[2])
		used += 1 + w[2]
	}
	if g.spread[i] {
		line.WriteByte(' ')
		used++
	}
	line.WriteString(p[3])
	line.WriteString(blanks(g.columns[i] - used - Width(p[3])))
}

func writeLine(b *strings.Builder, line string) {
	b.WriteString(strings.TrimRight(line, " "))
	b.WriteByte('\n')
}
