package report

import (
	"alongside/props"
	"alongside/props/compare"
)

// Scope says which part of a comparison leaves the program. The zero value is
// the whole bench; a Property alone is a row, a Material alone is a column,
// both together are a cell. The baseline comes along with a column and a
// cell, since a difference means nothing without it.
type Scope struct {
	Property props.PropertyID // NoProperty: every row
	Material *props.Material  // nil: every column
}

// of narrows a comparison to the scope. The comparison given is not changed.
// Totals stay only where every row stays: a count over one row would pass for
// the count of the bench.
func (s Scope) of(c *compare.Comparison) *compare.Comparison {
	out := *c
	if s.Property != props.NoProperty {
		out.Rows, out.Totals = nil, nil
		for _, row := range c.Rows {
			if row.Property == s.Property {
				out.Rows = append(out.Rows, row)
			}
		}
		out.Bench.HideEmpty, out.Bench.HideLevel = false, false
	}
	if s.Material == nil {
		return &out
	}
	var keep []int
	for i, m := range c.Bench.Pins {
		if i == c.Baseline || m == s.Material {
			if i == c.Baseline {
				out.Baseline = len(keep)
			}
			keep = append(keep, i)
		}
	}
	out.Bench.Pins = pick(c.Bench.Pins, keep)
	out.Bench.Baseline = out.Baseline
	if out.Totals != nil {
		out.Totals = pick(c.Totals, keep)
	}
	rows := out.Rows
	out.Rows = nil
	for _, row := range rows {
		row.Cells = pick(row.Cells, keep)
		some := s.Property != props.NoProperty
		for i := range row.Cells {
			some = some || row.Cells[i].Figure != nil
		}
		if some { // a row that only other pins have figures for stays behind
			out.Rows = append(out.Rows, row)
		}
	}
	return &out
}

func pick[T any](list []T, at []int) []T {
	out := make([]T, len(at))
	for i, j := range at {
		out[i] = list[j]
	}
	return out
}
