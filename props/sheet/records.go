package sheet

import (
	"encoding/csv"
	"strings"
)

// TSV writes the document for pasting into a spreadsheet: a record a line, the
// cells with a tab between them.
func (d *Doc) TSV() string {
	var b strings.Builder
	for _, r := range d.records() {
		b.WriteString(strings.Join(r, "\t") + "\n")
	}
	return b.String()
}

// CSV is TSV with commas and quotes as in RFC 4180.
func (d *Doc) CSV() string {
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(d.records()); err != nil { // a strings.Builder takes everything
		panic(err)
	}
	return b.String()
}

// records are the document for a spreadsheet: of equal length, formulas
// defused.
func (d *Doc) records() [][]string {
	var out [][]string
	one := func(lines ...string) {
		for _, l := range lines {
			out = append(out, []string{l})
		}
	}
	for i, block := range d.Blocks {
		if i > 0 {
			one("")
		}
		switch x := block.(type) {
		case *Picture:
			out = append(out, x.table().records()...)
		case Title:
			one(string(x))
		case Lines:
			one(x...)
		case *List:
			out = append(out, x.table().records()...)
		case *Table:
			out = append(out, x.records()...)
		}
	}
	if below := d.below(); len(below) > 0 {
		one(append([]string{""}, below...)...)
	}
	width := 0
	for _, r := range out {
		width = max(width, len(r))
	}
	for i, r := range out {
		cells := make([]string, width)
		for j, s := range r {
			cells[j] = cellText(s)
		}
		out[i] = cells
	}
	return out
}

func (t *Table) records() [][]string {
	var out [][]string
	if t.Heading != "" {
		out = append(out, []string{t.Heading})
	}
	if t.headed() {
		var head []string
		for i := range t.Columns {
			head = append(head, t.Columns[i].Name)
		}
		out = append(out, head)
	}
	for r := range t.Rows {
		row := &t.Rows[r]
		if row.Group != "" {
			out = append(out, []string{row.Group})
		}
		var cells []string
		for i := range row.Cells {
			cells = append(cells, row.Cells[i].line())
		}
		out = append(out, cells)
	}
	for _, l := range append(t.Notes[:len(t.Notes):len(t.Notes)], t.totals()...) {
		out = append(out, []string{l})
	}
	return out
}
