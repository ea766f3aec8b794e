package tui

import (
	"slices"

	"alongside/props"
	"alongside/props/swap"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// swapTable is the swaps as texts, measured.
type swapTable struct {
	rows                             []swapRow
	lines                            []int // rows that are no headings
	label, unit, base, value, change int   // widths; value with its signs
	signs                            int
}

// swapRow is the heading of a group where id is empty, else a line of the
// swaps with a cell for each.
type swapRow struct {
	id, name string
	cells    []swapCell
	why      string // why no pin has a number, where it is the same for all
}

// shown is the cell whose name, unit and value of today stand for the row: that
// of the pin under the cursor where it has a number.
func (r *swapRow) shown(pin int) *swapCell {
	if r.cells[pin].why == "" {
		return &r.cells[pin]
	}
	for i := range r.cells {
		if r.cells[i].why == "" {
			return &r.cells[i]
		}
	}
	return &r.cells[pin]
}

// swapCell is a line of one swap.
type swapCell struct {
	name, unit, base, value, change string
	words, why                      string // a result in words; why there is no number
	memory                          string // the sign of a figure from memory, where the result rests on one
}

// laid is the table of the swaps as they are. The cursor stays on its line, and
// comes back to it where it was away meanwhile.
func (p *swapPanel) laid() *swapTable {
	if s := p.m.swapped(); p.of != s {
		if p.table != nil && p.list.At != p.found && p.list.At < len(p.table.lines) {
			p.id = p.table.rows[p.table.lines[p.list.At]].id
		}
		p.table, p.of = newSwapTable(s.results, p.hide), s
		p.found = p.table.at(p.id)
		p.list.At = p.found
	}
	return p.table
}

func newSwapTable(results []*swap.Result, hide bool) *swapTable {
	t := &swapTable{}
	group := swap.Group(255)
	for i := range results[0].Lines {
		id := results[0].Lines[i].ID
		row := swapRow{id: id}
		done, same := false, true
		for _, r := range results {
			c := cellOf(r.Line(id))
			row.cells = append(row.cells, c)
			done = done || c.why == ""
			same = same && c.why == row.cells[0].why
		}
		if hide && !done {
			continue
		}
		if same {
			row.why = row.cells[0].why
		}
		if g := results[0].Lines[i].Group; g != group {
			group = g
			t.rows = append(t.rows, swapRow{name: g.String()})
		}
		t.lines = append(t.lines, len(t.rows))
		t.rows = append(t.rows, row)
	}
	t.measure()
	return t
}

// cellOf is a line of a swap as texts. Where there is no amount the ratio
// stands in its place.
func cellOf(l *swap.Line) swapCell {
	if l == nil {
		return swapCell{why: "not worked out for this pin"}
	}
	c := swapCell{name: ui.Plain(l.Name), change: l.Change()}
	if !l.Done() {
		c.why = ui.Plain(l.Reason)
		if l.Need != "" {
			c.why = ui.Plain(l.Need)
		}
		return c
	}
	switch {
	case l.Value != nil:
		c.value, c.unit = l.Value.Number(), ui.Plain(l.Value.UnitText())
		if l.Base != nil {
			c.base = l.Base.Number()
			if u := ui.Plain(l.Base.UnitText()); u != c.unit {
				c.base += " " + u
			}
		}
		if c.change == "" {
			c.change = l.RatioText()
		}
	case l.Ratio != nil:
		c.value = l.RatioText()
	default:
		c.value = ui.Plain(l.Words)
	}
	c.words = ui.Plain(l.Words)
	for _, u := range l.Figures {
		if u.Figure.Known() == props.Memory {
			c.memory = bench.MemorySign
		}
	}
	return c
}

// The widest that parts of the table get.
const (
	swapLabel = 34
	swapUnit  = 8
	swapBase  = 16
	swapValue = 18
	swapLeast = 11
)

func (t *swapTable) measure() {
	t.base, t.change = len("today"), 9
	for i := range t.rows {
		for _, c := range t.rows[i].cells {
			t.label = max(t.label, min(ui.Width(c.name), swapLabel))
			if c.why != "" {
				continue
			}
			t.unit = max(t.unit, min(ui.Width(c.unit), swapUnit))
			t.base = max(t.base, min(ui.Width(c.base), swapBase))
			t.value = max(t.value, min(ui.Width(c.value), swapValue))
			t.signs = max(t.signs, ui.Width(c.memory))
			t.change = max(t.change, ui.Width(c.change))
		}
	}
	if len(t.rows) > 0 && len(t.rows[len(t.rows)-1].cells) > 1 {
		t.signs++ // for a star
	}
	t.value = max(t.value, swapLeast) + t.signs
}

// at is the place among the lines of the one with an id; 0 where there is none.
func (t *swapTable) at(id string) int {
	return max(slices.IndexFunc(t.lines, func(row int) bool { return t.rows[row].id == id }), 0)
}
