package panel

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/sheet"
	"alongside/props/swap"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

const (
	swapHead = 3 // at most: the part, column heads
	swapFoot = 4 // a blank line, the line under the cursor in words
)

// swapView is the swaps laid out as a table, for the pin that the panel tells of
// and a width.
type swapView struct {
	of    []*swap.Result
	col   int
	grid  *bench.Grid
	table *sheet.Table
	ids   []string // of the lines
	id    string   // of the line that the cursor was moved to
	found int      // where it is
	first int      // scrolling: pins left of the ones shown
	lines int      // with headings
}

// lay lays the swaps out as they are. The cursor stays on its line, and comes
// back to it where it was away meanwhile.
func (v *swapView) lay(p *swapPanel, w int) {
	d, all := p.desk, p.desk.Swapped()
	if v.of == nil || &v.of[0] != &all[0] || v.col != p.col() {
		if v.found != p.list.At && p.list.At < len(v.ids) {
			v.id = v.ids[p.list.At]
		}
		v.of, v.col, v.grid = all, p.col(), nil
		v.fill(p.hide)
		v.found = max(slices.Index(v.ids, v.id), 0)
		p.list.At = v.found
	}
	if v.grid == nil || !v.grid.Fits(d.Theme, w) {
		v.grid = bench.NewGrid(v.table, d.Theme, w)
	}
	v.first = v.grid.Scroll(v.first, v.col)
}

// fill makes the table. The name, the unit and the value of today are those of
// the pin under the cursor, else of the first that has a number.
func (v *swapView) fill(hide bool) {
	v.ids, v.lines = nil, 0
	v.table = &sheet.Table{Columns: []sheet.Column{{Head: []string{""}}, {}, {}, {Head: []string{"today"}}}}
	for _, r := range v.of {
		v.table.Columns = append(v.table.Columns, sheet.Column{Head: []string{r.Pin.Name()}})
	}
	group := ""
	for i := range v.of[0].Lines {
		var cells []swapCell
		for _, r := range v.of {
			cells = append(cells, cellOf(r.Line(v.of[0].Lines[i].ID)))
		}
		shown := &cells[v.col-1]
		if k := slices.IndexFunc(cells, func(c swapCell) bool { return c.why == "" }); shown.why != "" && k >= 0 {
			shown = &cells[k]
		}
		if hide && shown.why != "" {
			continue
		}
		row := sheet.Row{Cells: []sheet.Cell{{Text: shown.name}, {}, {Text: ui.Or(shown.unit, " ")}, {Text: ui.Or(shown.base, " ")}}}
		if same := !slices.ContainsFunc(cells, func(c swapCell) bool { return c.why != shown.why }); same && shown.why != "" {
			row.Cells[3] = sheet.Cell{Text: shown.why, Short: "–"}
		} else {
			for k := range cells {
				row.Cells = append(row.Cells, cells[k].beside(shown))
			}
		}
		if g := v.of[0].Lines[i].Group.String(); g != group {
			group, row.Group = g, g
			v.lines++
		}
		v.table.Rows = append(v.table.Rows, row)
		v.ids = append(v.ids, v.of[0].Lines[i].ID)
		v.lines++
	}
}

// swapCell is a line of one swap as texts.
type swapCell struct {
	name, unit, base, value, change string
	why                             string // why there is no number
	memory                          bool   // the result rests on a figure from memory
}

// cellOf is a line of a swap as texts. Where there is no amount the ratio
// stands in its place.
func cellOf(l *swap.Line) swapCell {
	if l == nil {
		return swapCell{why: "not worked out for this pin"}
	}
	c := swapCell{name: l.Name, change: l.Change()}
	switch {
	case !l.Done():
		c.why = ui.Or(l.Need, l.Reason)
		return c
	case l.Value != nil:
		c.value, c.unit = l.Value.Number(), l.Value.UnitText()
		if l.Base != nil {
			c.base = l.Base.Number()
			if u := l.Base.UnitText(); u != c.unit {
				c.base += " " + u
			}
		}
		c.change = ui.Or(c.change, l.RatioText())
	case l.Ratio != nil:
		c.value = l.RatioText()
	default:
		c.value = l.Words
	}
	c.memory = slices.ContainsFunc(l.Figures, func(u swap.Used) bool { return u.Figure.Known() == props.Memory })
	return c
}

// beside is the cell in a row that shows the name, unit and value of today of
// another. A star marks one behind which other ones stand.
func (c *swapCell) beside(shown *swapCell) sheet.Cell {
	if c.why != "" {
		return sheet.Cell{Text: c.why, Short: "–"}
	}
	out := sheet.Cell{Text: c.value, Change: c.change}
	if c.unit != shown.unit && c.unit != "" {
		out.Text += " " + c.unit
	}
	if c.memory {
		out.Mark = report.MemorySign
	}
	if c.base != shown.base || c.name != shown.name {
		out.Mark += bench.OtherSign
	}
	return out
}

func (p *swapPanel) View(w, h int) []string {
	if !p.some() {
		return []string{" " + ui.Cut(twoPinsNeeded, w-2)}
	}
	p.lay(p, w)
	return p.list.Draw(ui.Listing{
		Head: append(p.part(w), p.grid.Heads(p.first, p.col())...), Items: len(p.ids),
		Lines: func(i int, here bool) []string {
			cursor := -1
			if here {
				cursor = p.col()
			}
			line := p.grid.Row(i, p.first, cursor)
			if group := p.table.Rows[i].Group; group != "" {
				return []string{" " + p.desk.Theme.Heading.Of(group), line}
			}
			return []string{line}
		},
		Foot: func() []string { return p.words(w) },
	}, h)
}

// part says what is known of the part.
func (p *swapPanel) part(w int) []string {
	text, now := p.desk.Now().Part.Summary(), &p.desk.Now().Part
	if text == "" {
		return []string{p.desk.Theme.Dim.Of(ui.Cut(" Nothing is said of the part yet: e to type its mass, wall, length, load …", w))}
	}
	if now.Strength == "" || now.Strength == part.Auto {
		text += "; by yield or tensile strength"
	}
	return ui.Few(p.desk.Theme.Text.Wrap("Part: "+text, w, 1), 2, w)
}

// words put the line under the cursor in a sentence, with its cautions, or say
// why there is no number.
func (p *swapPanel) words(w int) []string {
	l, t := p.line(), p.desk.Theme
	lines := []string{""}
	if l == nil {
		return append(lines, t.Dim.Of(" Nothing can be worked out yet. f shows what each line waits for."), "", "")
	}
	head, more := report.SwapLineText(l)
	lines = append(lines, t.Text.Wrap(l.Name+", "+p.result().Pin.Name()+": "+head, w, 1)...)
	lines = append(lines, t.Dim.Wrap(strings.TrimSpace(more), w, 1)...)
	return ui.Fill(ui.Few(lines, swapFoot, w), swapFoot)
}
