package report

import (
	"fmt"
	"math"

	"alongside/props"
	"alongside/props/compare"
)

// Detail is one cell in words: what the figure is, and what the comparison
// says and why.
type Detail struct {
	What, Verdict string
}

// NewDetail puts the cell of a row and a pin in words.
func NewDetail(c *compare.Comparison, row *compare.Row, pin int) Detail {
	cell := &row.Cells[pin]
	what := titled(row, cell.Material) + ": "
	if cell.Figure == nil {
		what += cell.Absent
	} else {
		what += citedFigure(cell.Figure, cell.Value.String())
	}
	return Detail{what, verdictText(c, row, cell)}
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
	if d.Bound != nil {
		return d.Bound.String() + " the baseline's"
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
			s += ", " + deltaText(mode, cell)
		}
	}
	return s
}

// Brief is a material's figures of a few properties as short texts, as they
// would stand on the bench, each with the mark of its basis; "" where there is none.
func Brief(b *compare.Bench, m *props.Material, list []props.PropertyID, mark func(props.Basis) string) []string {
	out := make([]string, len(list))
	for i, f := range b.Along(m, list) {
		if f != nil {
			out[i] = f.Value.InOrOwn(b.UnitOf(list[i])).Number() + mark(f.Basis)
		}
	}
	return out
}
