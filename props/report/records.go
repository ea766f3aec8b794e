package report

import (
	"math"

	"alongside/props"
	"alongside/props/sheet"
	"alongside/units"
)

// record is the cells of a spreadsheet by the names of their columns.
type record map[string]string

// cells are those of the columns named, in order.
func (r record) cells(columns []string) []string {
	out := make([]string, len(columns))
	for i, name := range columns {
		out[i] = r[name]
	}
	return out
}

// prefixed heads columns that belong together: "A356.0-T6 sand: value".
func prefixed(prefix string, columns []string) []string {
	out := make([]string, len(columns))
	for i, name := range columns {
		out[i] = prefix + ": " + name
	}
	return out
}

// dataDoc is a sheet: a table of records with lines below.
func dataDoc(t *sheet.Table, notes []sheet.Note, foot ...string) *sheet.Doc {
	return &sheet.Doc{Blocks: []sheet.Block{t}, Notes: notes, Foot: foot, Caution: Caution}
}

// putValue sets the bare ends of a value; "to" is the upper end of a range and
// empty for a single value.
func (r record) putValue(q units.Quantity) {
	r["value"] = bare(q.Lo)
	if q.IsRange() {
		r["to"] = bare(q.Hi)
	}
}

// putFigure sets what there is to know of a figure beside its value.
func (r record) putFigure(f *props.Figure, value units.Quantity) {
	r.putValue(value)
	r["basis"], r["known"], r["conditions"] = f.Basis.String(), f.Known().String(), f.Cond.String()
}

// put sets a number where there is one.
func (r record) put(column string, v float64) {
	if !math.IsNaN(v) && !math.IsInf(v, 0) {
		r[column] = bare(v)
	}
}
