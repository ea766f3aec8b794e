package report

import (
	"strings"

	"alongside/props/compare"
	"alongside/units"
)

// RowUnits lists the units a row can sensibly be shown in, beginning with
// those of the unit systems and of the sources: units in which the row's
// figures do not turn into long strings of zeros.
func RowUnits(row *compare.Row) []units.Unit {
	var out []units.Unit
	add := func(u units.Unit) {
		for _, have := range out {
			if have == u {
				return
			}
		}
		out = append(out, u)
	}
	for _, u := range row.Property.Info().Units {
		add(u)
	}
	d := row.Unit.Dimension()
	for i := range row.Cells {
		if f := row.Cells[i].Figure; f != nil && f.Value.Unit.Dimension() == d {
			add(f.Value.Unit)
		}
	}
	for _, u := range units.UnitsOf(d) {
		if readable(row, u) {
			add(u)
		}
	}
	return out
}

func readable(row *compare.Row, u units.Unit) bool {
	any := false
	for i := range row.Cells {
		f := row.Cells[i].Figure
		if f == nil {
			continue
		}
		q, err := f.Value.In(u)
		if err != nil {
			continue
		}
		any = true
		q.Hi = q.Lo
		s := strings.TrimPrefix(q.Number(), "-")
		if len(strings.Replace(s, ".", "", 1)) > 5 || strings.HasPrefix(s, "0.0") || strings.Contains(s, "e") {
			return false
		}
	}
	return any
}
