package compare

import (
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"

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
	// Bound is set where the verdict is certain although the figures are apart, or
	// where one of them is bounded itself; Grounds say why.
	Bound   *Bound
	Grounds []*Ground
	// Apart tells that basis or conditions differ, so that nothing may be worked
	// out from the two figures but the Bound.
	Apart bool
}

// Bound is what is certain of the ratio of the pin to the baseline; Least may be
// 0 and Most infinite.
type Bound struct{ Least, Most float64 }

// String says a bound with three digits, rounded so that it stays true: "1.16
// times or more".
func (b *Bound) String() string {
	least, most := threeDigits(b.Least, math.Floor), threeDigits(b.Most, math.Ceil)
	switch {
	case b.Least <= 0:
		return most + " times or less"
	case math.IsInf(b.Most, 1):
		return least + " times or more"
	}
	return least + " to " + most + " times"
}

func threeDigits(v float64, round func(float64) float64) string {
	if v <= 0 || math.IsInf(v, 0) {
		return ""
	}
	place := math.Pow(10, math.Floor(math.Log10(v))-2)
	return strconv.FormatFloat(round(v/place*(1+1e-12))*place, 'g', 3, 64)
}

// Comparable reports whether both have a figure and the two are alike.
func (p *Pair) Comparable() bool {
	return p.Figure != nil && p.Against != nil && p.Verdict != Unlike
}

// Why joins the reasons into one line.
func (p *Pair) Why() string {
	words := make([]string, len(p.Reasons), len(p.Reasons)+len(p.Grounds))
	for i, r := range p.Reasons {
		words[i] = r.Words
	}
	for _, g := range p.Grounds {
		words = append(words, "certain all the same: "+g.Says)
	}
	return strings.Join(words, "; ")
}

// Pair compares a property of two metals by the rules of Compare.
func (q *Question) Pair(pin, base *props.Material, p props.PropertyID) Pair {
	return q.pair(pin, base, p, q.ranked(pin, p), q.ranked(base, p))
}

// Alone is a property of one metal, with nothing to set it against.
func (q *Question) Alone(m *props.Material, p props.PropertyID) Pair {
	return q.pair(m, nil, p, q.ranked(m, p), nil)
}

// pair compares the figures that are considered of a pin and of the baseline.
func (q *Question) pair(pin, base *props.Material, p props.PropertyID, figures, against []ranked) Pair {
	var out Pair
	switch {
	case len(figures) == 0:
		out.Absent = q.Absent(pin, p)
		if len(against) > 0 {
			out.Against = against[0].Figure
		}
		return out
	case len(against) == 0:
		out.Figure = figures[0].Figure
	default:
		out = q.choose(pin, base, figures, against, pin.ID > base.ID)
		if out.Verdict == Neutral {
			out.add(NoSense, "neither more nor less is better unless you set it")
		}
	}
	f := out.Figure
	if how := f.Cond.Interpolated; how != "" {
		out.add(Interpolated, how)
	}
	if f.Source.Trade() {
		out.add(CommonPractice, "common practice, no standard or handbook behind this figure")
	}
	if isShort(f, figures) {
		out.add(BelowMinimum, "typical figure is below the specified minimum of its own grade")
	}
	if isShort(out.Against, against) {
		out.add(BelowMinimum, "the baseline's typical figure is below the specified minimum of its own grade")
	}
	return out
}

func (p *Pair) add(kind ReasonKind, words string) { p.Reasons = append(p.Reasons, Reason{kind, words}) }

// Figure is the metal's figure of a property that is shown first; nil when
// there is none.
func (q *Question) Figure(m *props.Material, p props.PropertyID) *props.Figure {
	if list := q.Figures(m, p); len(list) > 0 {
		return list[0]
	}
	return nil
}

// Along is one figure of each of several properties of a metal, nil where there is
// none. Of what standards specify all stand on one basis as far as they can: the
// one that most of them have, typical where two have as many.
func (q *Question) Along(m *props.Material, list []props.PropertyID) []*props.Figure {
	figures := make([][]ranked, len(list))
	var count [len(Order{})]int
	for i, p := range list {
		figures[i] = q.ranked(m, p)
		var on [len(Order{})]bool
		for _, f := range figures[i] {
			if p.Info().Specified && !on[f.Basis] && !f.short {
				on[f.Basis] = true
				count[f.Basis]++
			}
		}
	}
	basis := props.Typical
	for b := range count {
		if count[b] > count[basis] {
			basis = props.Basis(b)
		}
	}
	out := make([]*props.Figure, len(list))
	for i, p := range list {
		at := slices.IndexFunc(figures[i], func(f ranked) bool { return f.Basis == basis || !p.Info().Specified })
		if len(figures[i]) > 0 {
			out[i] = figures[i][max(at, 0)].Figure
		}
	}
	return out
}

// Figures lists the figures of a property that are considered for a metal, in
// order of preference. A pair may hold a later one, where that one shares basis
// and conditions with the other side's and the first does not.
func (q *Question) Figures(m *props.Material, p props.PropertyID) []*props.Figure {
	var list []*props.Figure
	for _, r := range q.ranked(m, p) {
		list = append(list, r.Figure)
	}
	return list
}

// considered lists them in no order: with a service temperature or a range they
// may be worked out, with minimums only they are the minimums.
func (q *Question) considered(m *props.Material, p props.PropertyID) []*props.Figure {
	list := m.Figures(p)
	switch {
	case p == props.ThermalExpansion && q.Range != nil:
		list, _ = overRange(m, q.Range[0], q.Range[1])
	case p == props.ThermalExpansion && len(list) > 0:
		common, _ := overRange(m, commonRange[0], commonRange[1])
		if len(common) > 0 && !slices.Contains(list, common[0]) {
			list = slices.Concat(common, list)
		}
	case q.Service != nil && hasService(p):
		room := list
		if list = atService(list, *q.Service); len(list) == 0 {
			list = fromRoom(m, p, room, *q.Service)
		}
	case q.Service != nil && p == props.ElasticModulus:
		// Before those at room temperature, which serve where the other side has no curve.
		if !slices.ContainsFunc(list, func(f *props.Figure) bool { return near(atOr20(f.Cond), *q.Service, 2) }) {
			list = append(fromRoom(m, p, list, *q.Service), list...)
		}
	}
	if q.Basis == MinimumOnly && p.Info().Specified {
		return minimumsOf(list)
	}
	return list
}

// ranked is a figure with its place among those that are considered of a metal.
type ranked struct {
	*props.Figure
	rank  int  // the lowest is preferred
	short bool // one heat that fell short of its grade; see belowMinimum
}

// ranked is Figures with the places.
func (q *Question) ranked(m *props.Material, p props.PropertyID) []ranked {
	list := q.considered(m, p)
	out := make([]ranked, len(list))
	for i, f := range list {
		r := ranked{f, TypicalOrder.Of(f, q.Service != nil), belowMinimum(f, slices.Values(list))}
		if p == props.ElasticModulus && f.Cond.Interpolated != "" {
			r.rank -= 32 // the figure at the service temperature before its room-temperature one
		}
		if r.short {
			r.rank += 1 << 11 // more than a basis, less than a trade source
		}
		out[i] = r
	}
	slices.SortStableFunc(out, func(a, b ranked) int { return a.rank - b.rank })
	return out
}

func isShort(f *props.Figure, list []ranked) bool {
	return slices.ContainsFunc(list, func(r ranked) bool { return r.short && r.Figure == f })
}

// belowMinimum reports whether a typical figure lies below a specified minimum
// for the same bar, class and section: one heat in a textbook, not the grade.
func belowMinimum(f *props.Figure, list iter.Seq[*props.Figure]) bool {
	if f.Basis != props.Typical || !f.Property.Info().Specified {
		return false
	}
	_, _, top := f.SI()
	for g := range list {
		if g.Basis != props.Minimum || g.Value.Unit.Dimension() != f.Value.Unit.Dimension() || g.Cond.Class != f.Cond.Class || g.Cond.Section != f.Cond.Section {
			continue
		}
		if least, _, _ := g.SI(); top < least && (g.Cond.Bar == f.Cond.Bar || g.Cond.Bar == "" || f.Cond.Bar == "") {
			return true
		}
	}
	return false
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
