package compare

import (
	"slices"

	"alongside/props"
)

// BasisSetting says which figures are compared.
type BasisSetting uint8

// TypicalFirst compares typical figures where both sides have them, else the
// next basis they share. MinimumOnly compares specified minimums only, for
// the properties that standards specify.
const (
	TypicalFirst BasisSetting = iota
	MinimumOnly
)

func (s BasisSetting) String() string {
	if s == MinimumOnly {
		return "minimum"
	}
	return "typical"
}

// SenseSetting is the user's choice for a row. Target is in SI and used with
// props.Near.
type SenseSetting struct {
	Sense  props.Sense
	Target float64
}

// DefaultBand is the fraction of the greater figure within which two figures
// count as level.
const DefaultBand = 0.02

// Question is how two metals are compared, whichever they are.
type Question struct {
	Basis BasisSetting
	Band  float64 // see DefaultBand
	// Service, in °C, is the temperature at which strength and elongation are
	// compared; nil means room temperature.
	Service *float64
	// Range, in °C, is the range over which expansion is compared; nil means
	// the ranges as published.
	Range  *[2]float64
	Senses map[props.PropertyID]SenseSetting
}

// SenseOf is the sense of a property, and the target in SI when it is Near.
func (q *Question) SenseOf(p props.PropertyID) (props.Sense, float64) {
	if s, ok := q.Senses[p]; ok {
		return s.Sense, s.Target
	}
	return p.Info().Sense, 0
}

// Pair is one property of two metals: the figures set against each other and
// what the comparison says.
type Pair struct {
	Figure  *props.Figure // of the pin; nil when there is none
	Against *props.Figure // of the baseline; nil when there is none
	Absent  string        // why the pin has no figure
	Verdict Verdict
	Reasons []Reason
}

// Comparable reports whether both have a figure and the two are alike.
func (p *Pair) Comparable() bool {
	return p.Figure != nil && p.Against != nil && p.Verdict != Unlike
}

// Why joins the reasons into one line.
func (p *Pair) Why() string {
	s := ""
	for i, r := range p.Reasons {
		if i > 0 {
			s += "; "
		}
		s += r.String()
	}
	return s
}

// Pair compares a property of two metals by the rules of Compare.
func (q *Question) Pair(pin, base *props.Material, p props.PropertyID) Pair {
	return q.pair(pin, p, q.Figures(pin, p), q.Figures(base, p), pin.ID > base.ID)
}

// Alone is a property of one metal, with nothing to set it against.
func (q *Question) Alone(m *props.Material, p props.PropertyID) Pair {
	return q.pair(m, p, q.Figures(m, p), nil, false)
}

// pair compares the figures that are considered of a pin and of the baseline;
// see choose for turned.
func (q *Question) pair(pin *props.Material, p props.PropertyID, figures, base []*props.Figure, turned bool) Pair {
	var out Pair
	switch {
	case len(figures) == 0:
		out.Absent = q.Absent(pin, p)
		if len(base) > 0 {
			out.Against = base[0]
		}
		return out
	case len(base) == 0:
		out.Figure = figures[0]
	default:
		out = q.judged(p, figures, base, turned)
	}
	f := out.Figure
	if how := f.Cond.Interpolated; how != "" {
		out.Reasons = append(out.Reasons, Reason{Interpolated, how, ""})
	}
	if f.Source.Trade() {
		out.Reasons = append(out.Reasons, Reason{CommonPractice, "this figure", ""})
	}
	return out
}

// judged is the pair where both sides have figures.
func (q *Question) judged(p props.PropertyID, figures, base []*props.Figure, turned bool) Pair {
	f, g, why := q.choose(figures, base, turned)
	out := Pair{Figure: f, Against: g}
	if why.Kind != NoReason {
		out.Verdict, out.Reasons = Unlike, []Reason{why}
		return out
	}
	out.Reasons = cautions(f, g)
	sense, target := q.SenseOf(p)
	if out.Verdict = judge(f, g, sense, target, q.Band); out.Verdict == Neutral {
		out.Reasons = append(out.Reasons, Reason{Kind: NoSense})
	}
	return out
}

// Figure is the metal's figure of a property that is shown first; nil when
// there is none.
func (q *Question) Figure(m *props.Material, p props.PropertyID) *props.Figure {
	if list := q.Figures(m, p); len(list) > 0 {
		return list[0]
	}
	return nil
}

// Figures lists the figures of a property that are considered for a metal, in
// order of preference: with a service temperature or a range they may be worked
// out, with minimums only they are the minimums. A pair may hold a later one,
// where that one shares basis and conditions with the other side's and the
// first does not.
func (q *Question) Figures(m *props.Material, p props.PropertyID) []*props.Figure {
	list := m.Figures(p)
	switch {
	case p == props.ThermalExpansion && q.Range != nil:
		list, _ = overRange(m, q.Range[0], q.Range[1])
	case q.Service != nil && hasService(p):
		list = atService(list, *q.Service)
	}
	if q.Basis == MinimumOnly && p.Info().Specified {
		list = minimumsOf(list)
	}
	slices.SortStableFunc(list, func(a, b *props.Figure) int {
		return TypicalOrder.Of(a, q.Service != nil) - TypicalOrder.Of(b, q.Service != nil)
	})
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

// Order says which basis is preferred: the lower number.
type Order [6]int

// TypicalOrder is the order of a comparison, MinimumOrder that of a need on
// what standards specify.
var (
	TypicalOrder = Order{props.Typical: 0, props.Minimum: 1, props.House: 2, props.Design: 3, props.Estimated: 4, props.Maximum: 5}
	MinimumOrder = Order{props.Minimum: 0, props.Typical: 1, props.Estimated: 2, props.House: 3, props.Design: 4, props.Maximum: 5}
)

// Of ranks a figure; the lowest is preferred. Room temperature goes before
// others unless figures at a service temperature are asked for, then a standard
// or handbook before common practice, then the basis, then the figure's own
// rank.
func (o *Order) Of(f *props.Figure, atService bool) int {
	rank := o[f.Basis]<<8 + f.Rank()
	if f.Source.Trade() {
		rank += 1 << 12
	}
	if !atService && !f.Cond.RoomTemperature() {
		rank += 1 << 13
	}
	return rank
}

// Absent says why a metal shows no figure of a property (rule 4).
func (q *Question) Absent(m *props.Material, p props.PropertyID) string {
	if why := m.Absent(p); why != "" {
		return why
	}
	if list := m.Figures(p); len(list) > 0 {
		if p == props.ThermalExpansion && q.Range != nil {
			_, why := overRange(m, q.Range[0], q.Range[1])
			return why
		}
		return noServiceFigure(list)
	}
	return NoFigureOnFile
}

// NoFigureOnFile is what a cell says whose property the catalog does not have.
const NoFigureOnFile = "no figure on file"
