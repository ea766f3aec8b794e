// Package compare sets the figures of one material against another's: which
// pair of figures, whether they may be compared, and what the comparison says.
// The rules are those in the comment of Compare.
package compare

import (
	"alongside/props"
	"alongside/units"
)

// Cell is one material's place in a row.
type Cell struct {
	Material *props.Material
	Figure   *props.Figure  // the figure shown; nil when there is none
	Value    units.Quantity // Figure in the unit of the row
	Absent   string         // why there is no figure
	Against  *props.Figure  // the baseline's figure it was set against
	Delta    *Delta
	Verdict  Verdict
	Reasons  []Reason
}

// Why joins the reasons into one line.
func (c *Cell) Why() string {
	s := ""
	for i, r := range c.Reasons {
		if i > 0 {
			s += "; "
		}
		s += r.String()
	}
	return s
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
	Material                                                *props.Material
	Beats, Misses, Level, Overlaps, Unlike, NoFigure, Other int
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
//  1. Like with like. Of all figures on file the pair is taken that shares
//     basis and conditions and stands first in the order of preference
//     (typical, then minimum, maximum, design, house; with the bench set to
//     minimums, only minimums for properties that standards specify). When no
//     pair is alike, the first figure of each side is shown and the verdict
//     is unlike, with the reason.
//  2. Intervals. A published range is an interval; a single figure is known to
//     half of its last printed digit, a specified limit is exact. Beats and misses need disjoint
//     intervals; level means that both ends agree within the band, or that
//     two single figures agree within their rounding; else the verdict is
//     overlaps.
//  3. Sense. More or less is better, or the nearest to a target.
//  4. Absent is not zero. A figure that is not on file, or does not exist,
//     is reported as such with verdict none.
//  5. Expansion coefficients are only compared over the same range; with a
//     range set on the bench they are worked out for it by Growth.
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
			c.Totals[i].count(&row.Cells[i])
		}
	}
	return c
}

func (t *Total) count(c *Cell) {
	switch c.Verdict {
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
	case None:
		if c.Figure == nil || c.Against == nil {
			t.NoFigure++
		} else {
			t.Other++
		}
	}
}

func (b *Bench) row(p props.PropertyID) Row {
	row := Row{Property: p, Unit: b.UnitOf(p), Cells: make([]Cell, len(b.Pins))}
	row.Sense, row.Target = b.SenseOf(p)
	base := b.Figures(b.Pins[b.Baseline], p)
	for i, m := range b.Pins {
		cell := &row.Cells[i]
		cell.Material = m
		if i == b.Baseline {
			b.baselineCell(cell, base)
		} else {
			b.pinCell(cell, &row, b.Figures(m, p), base)
		}
		if cell.Figure == nil {
			cell.Absent = b.absent(m, p)
			continue
		}
		cell.Value = inRow(cell.Figure.Value, row.Unit)
		if how := cell.Figure.Cond.Interpolated; how != "" {
			cell.Reasons = append(cell.Reasons, Reason{Interpolated, how, ""})
		}
		if cell.Figure.Source.Trade() {
			cell.Reasons = append(cell.Reasons, Reason{CommonPractice, "this figure", ""})
		}
	}
	return row
}

// inRow converts to the unit of the row; figures of another kind (a hardness
// scale) stay in their own.
func inRow(q units.Quantity, u units.Unit) units.Quantity {
	if v, err := q.In(u); err == nil {
		return v
	}
	return q
}

func (b *Bench) baselineCell(cell *Cell, base []*props.Figure) {
	cell.Verdict = IsBaseline
	if len(base) > 0 {
		cell.Figure = base[0]
	} else {
		cell.Verdict = None
	}
}

func (b *Bench) pinCell(cell *Cell, row *Row, pin, base []*props.Figure) {
	if len(pin) > 0 {
		cell.Figure = pin[0]
	}
	if len(pin) == 0 || len(base) == 0 {
		return
	}
	fig, against, reason := b.pair(row.Property, pin, base)
	cell.Figure, cell.Against = fig, against
	if reason.Kind != NoReason {
		cell.Verdict, cell.Reasons = Unlike, []Reason{reason}
		return
	}
	cell.Reasons = cautions(fig, against)
	if against != base[0] {
		cell.Reasons = append(cell.Reasons, Reason{OtherBaseFigure, "",
			against.Basis.Phrase() + " " + inRow(against.Value, row.Unit).String()})
	}
	cell.Delta = delta(fig, against, row.Unit)
	cell.Verdict = judge(fig, against, row.Sense, row.Target, b.Band)
	if cell.Verdict == None {
		cell.Reasons = append(cell.Reasons, Reason{Kind: NoSense})
	}
}

// Figure is the material's figure of a property that the bench shows first;
// nil when there is none.
func (b *Bench) Figure(m *props.Material, p props.PropertyID) *props.Figure {
	if list := b.Figures(m, p); len(list) > 0 {
		return list[0]
	}
	return nil
}

// Pair picks the figures of two materials that are set against each other by
// rule 1 of Compare. Either is nil when there is none on file; why is set
// when the two must not be compared.
func (b *Bench) Pair(pin, base *props.Material, p props.PropertyID) (fig, against *props.Figure, why Reason) {
	return b.pair(p, b.Figures(pin, p), b.Figures(base, p))
}

func (b *Bench) pair(p props.PropertyID, pin, base []*props.Figure) (fig, against *props.Figure, why Reason) {
	if len(pin) > 0 && len(base) > 0 {
		fig, against, why = choosePair(pin, base)
		if why.Kind == NoReason && b.Basis == MinimumOnly && p.Info().Specified && fig.Basis != props.Minimum {
			why = Reason{OnlyTypical, fig.Basis.Phrase(), ""}
		}
		return fig, against, why
	}
	if len(pin) > 0 {
		fig = pin[0]
	}
	if len(base) > 0 {
		against = base[0]
	}
	return fig, against, Reason{}
}

// choosePair applies rule 1: the first pair that is alike, in the order of
// the pin's preferences and then the baseline's. When none is, the first of
// each with the reason that keeps them apart.
func choosePair(pin, base []*props.Figure) (fig, against *props.Figure, why Reason) {
	var apart Reason
	for _, f := range pin {
		for _, g := range base {
			if f.Basis != g.Basis {
				continue
			}
			r := unlike(f, g)
			if r.Kind == NoReason {
				return f, g, r
			}
			if apart.Kind == NoReason {
				fig, against, apart = f, g, r
			}
		}
	}
	if apart.Kind != NoReason {
		return fig, against, apart
	}
	return pin[0], base[0], Reason{BasisDiffers, pin[0].Basis.Phrase(), base[0].Basis.Phrase()}
}

// Figures lists the figures of a property that the bench considers for a
// material, in its order of preference: with a service temperature or a range
// set they may be worked out, with minimums only they are the minimums.
// Compare may show a later one, where that one shares basis and conditions
// with the baseline's and the first does not.
func (b *Bench) Figures(m *props.Material, p props.PropertyID) []*props.Figure {
	list := m.Figures(p)
	switch {
	case p == props.ThermalExpansion && b.Range != nil:
		list, _ = overRange(m, b.Range[0], b.Range[1])
	case b.Service != nil && hasService(p):
		list = atService(list, *b.Service)
	}
	if b.Basis == MinimumOnly && p.Info().Specified {
		list = minimumsOf(list)
	}
	order := func(f *props.Figure) int {
		o := int(f.Basis)
		if b.Service == nil && !f.Cond.RoomTemperature() {
			o += 16
		}
		if f.Source.Trade() {
			o += 8
		}
		return o
	}
	for i := 1; i < len(list); i++ {
		for j := i; j > 0 && order(list[j]) < order(list[j-1]); j-- {
			list[j], list[j-1] = list[j-1], list[j]
		}
	}
	return list
}

// minimumsOf keeps the specified minimums; all figures where there are none, so
// that the cell still shows what is on file.
func minimumsOf(list []*props.Figure) []*props.Figure {
	var kept []*props.Figure
	for _, f := range list {
		if f.Basis == props.Minimum {
			kept = append(kept, f)
		}
	}
	if len(kept) == 0 {
		return list
	}
	return kept
}

// absent says why a material shows no figure of a property.
func (b *Bench) absent(m *props.Material, p props.PropertyID) string {
	if why := m.Absent(p); why != "" {
		return why
	}
	if list := m.Figures(p); len(list) > 0 {
		if p == props.ThermalExpansion && b.Range != nil {
			_, why := overRange(m, b.Range[0], b.Range[1])
			return why
		}
		return noServiceFigure(list)
	}
	return NoFigureOnFile
}

// NoFigureOnFile is what a cell says whose property the catalog does not have.
const NoFigureOnFile = "no figure on file"
