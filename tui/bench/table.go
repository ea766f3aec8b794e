package bench

import (
	"cmp"
	"fmt"
	"strings"

	"alongside/props/report"
	"alongside/props/sheet"
)

const (
	// OtherSign marks a cell that is set against another figure of the baseline
	// than the one shown.
	OtherSign = "†"
	// none stands where a metal has no such property.
	none = "none"
)

// New is the table of the bench for a Grid: the baseline first.
func New(t *report.Table) *sheet.Table {
	rows := 0 // that count
	for i := range t.Lines {
		if t.Lines[i].OfProperty() {
			rows++
		}
	}
	out := &sheet.Table{Columns: []sheet.Column{{Head: []string{"alloy", "temper", "process"}, Name: fmt.Sprintf("totals of %d", rows)}, {}, {}}}
	order := Order(len(t.Heads), t.Baseline)
	for _, pin := range order {
		h := &t.Heads[pin]
		process := strings.Replace(h.Process, "permanent mold", "perm. mold", 1) // the one long name
		out.Columns = append(out.Columns, sheet.Column{Head: []string{h.Alloy, cmp.Or(h.Temper, "–"), process}, Total: []string{totals(h.Short)}})
	}
	for i := range t.Lines {
		l := &t.Lines[i]
		row := sheet.Row{Group: l.Heading(), Cells: []sheet.Cell{{Text: l.Name, Short: l.Short}, {Text: l.Sense}, {Text: l.Unit}}}
		if !l.OfProperty() { // a need has both in its name, a merit needs neither
			row.Cells[1].Text, row.Cells[2].Text = "", ""
		}
		for _, pin := range order {
			row.Cells = append(row.Cells, cellOf(&l.Cells[pin]))
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// Order lists n pins as displayed: the baseline, then the others.
func Order(n, baseline int) []int {
	var order []int
	for i := range n {
		if i != baseline {
			order = append(order, i)
		}
	}
	if n > 0 {
		order = append([]int{baseline}, order...)
	}
	return order
}

func cellOf(c *report.Cell) sheet.Cell {
	switch {
	case c.Value == "" && c.Never:
		return sheet.Cell{Text: none}
	case c.Value == "":
		return sheet.Cell{}
	}
	out := sheet.Cell{Text: c.Value, Mark: c.Mark, Change: c.Delta, Sign: c.Glyph}
	if c.Memory {
		out.Mark += report.MemorySign
	}
	if c.Other && c.Glyph != "" {
		out.Sign += OtherSign
	}
	return out
}

// totals is the counts of a pin in signs, without those that are zero.
func totals(short string) string {
	var keep []string
	for _, s := range strings.Fields(short) {
		if r := []rune(s); len(r) > 1 && string(r[1:]) != "0" {
			keep = append(keep, s)
		}
	}
	return strings.Join(keep, " ")
}
