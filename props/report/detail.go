package report

import (
	"fmt"
	"math"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// Detail is one cell in words: what the figure is, and what the comparison
// says and why.
type Detail struct {
	What, Verdict string
}

// NewDetail puts the cell of a row and a pin in words.
func NewDetail(c *compare.Comparison, row *compare.Row, pin int) Detail {
	cell := &row.Cells[pin]
	what := row.Property.Info().Name + ", " + cell.Material.Name() + ": "
	if cell.Figure == nil {
		what += cell.Absent
	} else {
		what += FigureText(cell.Figure, cell.Value)
	}
	return Detail{what, verdictText(c, row, cell)}
}

// FigureText is a figure in one line: value in the unit wanted, basis,
// conditions, source, and whether it was read.
func FigureText(f *props.Figure, value units.Quantity) string {
	s := value.String() + " " + f.Basis.Phrase()
	if cond := f.Cond.String(); cond != "" {
		s += "; " + cond
	}
	s += "; " + f.Source.Title
	if f.Table != "" {
		s += ", " + f.Table
	}
	switch f.Known() {
	case props.Memory:
		s += " (from memory)"
	case props.Agreed:
		s += " (" + unread(props.Agreed, f.Agrees.Title) + ")"
	}
	return s
}

func verdictText(c *compare.Comparison, row *compare.Row, cell *compare.Cell) string {
	var s string
	switch cell.Verdict {
	case compare.IsBaseline:
		s = "the baseline"
	case compare.NoFigure:
		base := &row.Cells[c.Baseline]
		switch {
		case cell.Figure == nil:
			s = "no figure, nothing to compare"
		case base.Absent != "":
			s = "nothing to compare with: the baseline has none (" + base.Absent + ")"
		default:
			s = "nothing to compare with: the baseline has none"
		}
	case compare.Neutral:
		s = "neither better nor worse"
	case compare.Unlike:
		s = "unlike, counts in no total"
	default:
		s = verdictPhrases[cell.Verdict]
	}
	if d := deltaWords(cell); d != "" {
		s += ": " + d
	}
	if why := cell.Why(); why != "" {
		if cell.Verdict == compare.Unlike {
			return s + ": " + why
		}
		s += "; " + why
	}
	return s
}

var verdictPhrases = [...]string{
	compare.Beats: "beats the baseline", compare.Misses: "misses the baseline", compare.Level: "level with the baseline",
	compare.Overlaps: "overlaps the baseline", compare.IsBaseline: "the baseline",
}

// deltaWords writes a difference in full: "+10 ksi (+9 to +11), +32 %, 1.3×".
func deltaWords(cell *compare.Cell) string {
	d := cell.Delta
	if d == nil {
		return ""
	}
	n := amountDecimals(cell)
	s := signed(d.Mid, n)
	if u := d.Unit.Symbol(); u != "" {
		s += " " + u
	}
	switch lo, hi := signed(d.Lo, n), signed(d.Hi, n); {
	case math.IsInf(d.Lo, 0) && math.IsInf(d.Hi, 0):
	case math.IsInf(d.Hi, 0):
		s += fmt.Sprintf(" (at least %s)", lo)
	case math.IsInf(d.Lo, 0):
		s += fmt.Sprintf(" (at most %s)", hi)
	case lo != hi:
		s += fmt.Sprintf(" (%s to %s)", lo, hi)
	}
	for _, mode := range []compare.DeltaMode{compare.Percent, compare.Ratio} {
		if !math.IsNaN(d.Percent) {
			s += ", " + DeltaText(mode, cell)
		}
	}
	return s
}

// Brief is a material's figures of a few properties as short texts, as they
// would stand on the bench, "" where there is none.
func Brief(b *compare.Bench, m *props.Material, list []props.PropertyID) []string {
	out := make([]string, len(list))
	for i, p := range list {
		if f := b.Figure(m, p); f != nil {
			value := f.Value
			if v, err := value.In(b.UnitOf(p)); err == nil {
				value = v
			}
			out[i] = value.Number() + Mark(f.Basis)
		}
	}
	return out
}

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
