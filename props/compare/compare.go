// Package compare sets the figures of one material against another's: which
// pair of figures, whether they may be compared, and what the comparison says.
// The rules are those in the comment of Compare; Question.Pair asks them of one
// property of two metals.
package compare

import (
	"slices"

	"alongside/props"
	"alongside/units"
)

// Cell is one material's place in a row.
type Cell struct {
	Material *props.Material
	Pair
	Value units.Quantity // Figure in the unit of the row
	// Also holds, of the baseline, further figures that a pin was set against.
	Also  []*props.Figure
	Delta *Delta
}

// Row is one property over all pins.
type Row struct {
	Property props.PropertyID
	Unit     units.Unit
	Sense    props.Sense
	Target   float64 // SI, with Sense Near
	Cells    []Cell
}

// Total counts a pin's verdicts. It is a count, never a score.
type Total struct {
	Material                                                  *props.Material
	Beats, Misses, Level, Overlaps, Unlike, NoFigure, Neutral int
}

// Comparison is the bench worked out: plain data that the screen, the
// commands and the copy formats render.
type Comparison struct {
	Bench    Bench
	Rows     []Row
	Totals   []Total
	Baseline int // index of the baseline pin; -1 when there are no pins
}

// Compare sets each pin against the baseline, property by property.
//
//  1. Like with like (choose, alike). Of all figures on file the pair is taken
//     that shares basis and conditions and is preferred; with minimums only,
//     only minimums for properties that standards specify. The choice does not
//     know which side is the baseline, so that B against A is the mirror of A
//     against B. When no pair is alike, both figures are shown and the verdict
//     is unlike, with the reason.
//  2. Intervals (judge). A published range is an interval; a single figure is
//     known to half of its last printed digit, a specified limit is exact.
//     Beats and misses need disjoint intervals; level means that both ends
//     agree within the band, or that two single figures agree within their
//     rounding; else the verdict is overlaps.
//  3. Sense (judge). More or less is better, or the nearest to a target; a
//     property without a better is neutral.
//  4. Absent is not zero (Question.Absent). A figure that is not on file, or
//     does not exist, is reported as such with the verdict no figure.
//  5. Expansion coefficients are only compared over the same range; with a
//     range set on the bench they are worked out for it (Growth). Strength at a
//     service temperature is published there or interpolated (atService), else
//     room temperature times a published percentage (fromRoom), as is modulus.
//  6. Totals are counts.
func Compare(b Bench) *Comparison {
	c := &Comparison{Bench: b, Baseline: b.Baseline}
	if len(b.Pins) == 0 {
		c.Baseline = -1
		return c
	}
	c.Totals = make([]Total, len(b.Pins))
	for i, m := range b.Pins {
		c.Totals[i].Material = m
	}
	for _, p := range b.properties() {
		row := b.row(p)
		c.Rows = append(c.Rows, row)
		for i := range row.Cells {
			c.Totals[i].count(row.Cells[i].Verdict)
		}
	}
	return c
}

func (t *Total) count(v Verdict) {
	switch v {
	case Beats:
		t.Beats++
	case Misses:
		t.Misses++
	case Level:
		t.Level++
	case Overlaps:
		t.Overlaps++
	case Unlike:
		t.Unlike++
	case NoFigure:
		t.NoFigure++
	case Neutral:
		t.Neutral++
	}
}

func (b *Bench) row(p props.PropertyID) Row {
	row := Row{Property: p, Unit: b.UnitOf(p), Cells: make([]Cell, len(b.Pins))}
	row.Sense, row.Target = b.SenseOf(p)
	base := b.Pins[b.Baseline]
	figures := b.ranked(base, p)
	for i, m := range b.Pins {
		if i != b.Baseline {
			row.Cells[i] = newCell(m, b.pair(m, base, p, b.ranked(m, p), figures), row.Unit)
		}
	}
	b.baseCell(&row, figures)
	return row
}

// baseCell shows of the baseline the figures that the pins were set against: the
// preferred one among them first, else what is preferred of all.
func (b *Bench) baseCell(row *Row, figures []ranked) {
	var drawn []*props.Figure
	shown := figures
	for i, f := range figures {
		if slices.ContainsFunc(row.Cells, func(c Cell) bool { return c.Against == f.Figure && c.Comparable() }) {
			if drawn == nil {
				shown = figures[i:]
			}
			drawn = append(drawn, f.Figure)
		}
	}
	m := b.Pins[b.Baseline]
	cell := newCell(m, b.pair(m, nil, row.Property, shown, nil), row.Unit)
	if len(figures) > 0 {
		cell.Verdict = IsBaseline
	}
	if len(drawn) > 1 {
		cell.Also = drawn[1:]
	}
	row.Cells[b.Baseline] = cell
	for i := range row.Cells {
		if c := &row.Cells[i]; c.Comparable() && c.Against != shown[0].Figure {
			c.add(OtherBaseFigure, "against the baseline's "+c.Against.Basis.Phrase()+" "+c.Against.Value.InOrOwn(row.Unit).String())
		}
	}
}

// newCell shows a pair in the unit of a row.
func newCell(m *props.Material, p Pair, u units.Unit) Cell {
	c := Cell{Material: m, Pair: p}
	if p.Figure != nil {
		c.Value = p.Figure.Value.InOrOwn(u)
	}
	if p.Comparable() {
		c.Delta = delta(&p, u)
	}
	return c
}
