package tui

import (
	"alongside/props"
	"alongside/props/swap"
)

// swapTable is the swaps as texts, measured.
type swapTable struct {
	rows                             []swapRow
	label, unit, base, value, change int // widths; value with its signs
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

// laid is the table of the swaps as they are.
func (p *swapPanel) laid() *swapTable {
	if s := p.m.swapped(); p.table == nil || p.of != s {
		p.table, p.of = newSwapTable(s.results, p.hide), s
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
	c := swapCell{name: plain(l.Name), change: l.Change()}
	if !l.Done() {
		c.why = plain(l.Reason)
		if l.Need != "" {
			c.why = plain(l.Need)
		}
		return c
	}
	switch {
	case l.Value != nil:
		c.value, c.unit = l.Value.Number(), plain(l.Value.UnitText())
		if l.Base != nil {
			c.base = l.Base.Number()
			if u := plain(l.Base.UnitText()); u != c.unit {
				c.base += " " + u
			}
		}
		if c.change == "" {
			c.change = l.RatioText()
		}
	case l.Ratio != nil:
		c.value = l.RatioText()
	default:
		c.value = plain(l.Words)
	}
	c.words = plain(l.Words)
	for _, u := range l.Figures {
		if u.Figure.Known() == props.Memory {
			c.memory = memorySign
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
			t.label = max(t.label, min(width(c.name), swapLabel))
			if c.why != "" {
				continue
			}
			t.unit = max(t.unit, min(width(c.unit), swapUnit))
			t.base = max(t.base, min(width(c.base), swapBase))
			t.value = max(t.value, min(width(c.value), swapValue))
			t.signs = max(t.signs, width(c.memory))
			t.change = max(t.change, width(c.change))
		}
	}
	if len(t.rows) > 0 && len(t.rows[len(t.rows)-1].cells) > 1 {
		t.signs++ // for a star
	}
	t.value = max(t.value, swapLeast) + t.signs
}

// at is the place of the line with an id; where there is none, of the first
// line; -1 where there are no lines.
func (t *swapTable) at(id string) int {
	first := -1
	for i := range t.rows {
		switch t.rows[i].id {
		case "":
		case id:
			return i
		default:
			if first < 0 {
				first = i
			}
		}
	}
	return first
}
