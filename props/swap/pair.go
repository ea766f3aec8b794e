package swap

import (
	"cmp"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

// pair holds the figures of one property that the bench sets against each
// other, and why it may not or cannot.
type pair struct {
	pin, base *props.Figure // as far as on file
	why       string        // no comparison: unlike, or none on file
	notes     []string
}

// work carries what a swap is worked out from.
type work struct {
	part.Given
	bench     compare.Bench
	base, pin *props.Material
	pairs     map[props.PropertyID]pair
	lines     []Line
}

// symbolOf is a property in the formulas.
func symbolOf(p props.PropertyID) string {
	switch p {
	case props.Density:
		return "ρ"
	case props.ElasticModulus:
		return "E"
	case props.PoissonRatio:
		return "ν"
	case props.ThermalExpansion:
		return "α"
	case props.ThermalConductivity:
		return "k"
	case props.SpecificHeat:
		return "c"
	case props.ElectricalConductivity:
		return "σ"
	case props.PatternShrinkage:
		return "s"
	}
	return "S" // a strength
}

// uses are figures of a metal as put into a formula, where the mark is that of the metal.
func uses(m *props.Material, mark string, figures ...*props.Figure) (out []Used) {
	for _, f := range figures {
		if f != nil {
			out = append(out, Used{symbolOf(f.Property) + mark, m, f})
		}
	}
	return out
}

// pair picks the figures of a property by the rule of the bench (see
// props.Compare).
func (w *work) pair(p props.PropertyID) pair {
	if known, ok := w.pairs[p]; ok {
		return known
	}
	found := w.bench.Pair(w.pin, w.base, p)
	out := pair{pin: found.Figure, base: found.Against}
	switch {
	case out.pin == nil:
		out.why = lack(w.pin, p, found.Absent)
	case out.base == nil:
		out.why = lack(w.base, p, w.bench.Absent(w.base, p))
	case found.Apart:
		out.why = "unlike figures: " + found.Reasons[0].String()
		if found.Bound != nil {
			out.why += "; certain is " + found.Bound.String() + " today's"
		}
	default:
		for _, r := range found.Reasons {
			if r.Kind != compare.NoSense {
				out.notes = append(out.notes, p.Info().Name+": "+r.String())
			}
		}
	}
	for _, f := range []*props.Figure{out.pin, out.base} {
		if out.why == "" {
			out.why = unfit(f)
		}
	}
	w.pairs[p] = out
	return out
}

// lack says why a material has no figure.
func lack(m *props.Material, p props.PropertyID, absent string) string {
	if absent == "" || absent == compare.NoFigureOnFile {
		return "no " + props.InSentence(p.Info().Name) + " on file for " + m.Name()
	}
	return m.Name() + ": " + absent
}

// unfit says why a figure cannot be calculated with, though it can be shown: its
// interval, on which a division may rest, reaches zero.
func unfit(f *props.Figure) string {
	if lo, _ := f.Value.Interval(); lo > 0 || f.Property == props.PatternShrinkage {
		return ""
	}
	return f.Property.Info().Name + ": the published figure reaches zero, " + f.Value.String()
}

// ratio is pin over baseline, nothing where they are not compared; a figure over
// itself is exactly 1.
func (p pair) ratio() interval {
	switch {
	case p.why != "":
		return interval{}
	case p.pin == p.base:
		return exact(1)
	}
	return ofFigure(p.pin).over(ofFigure(p.base))
}

// inverse is baseline over pin.
func (p pair) inverse() interval { return pair{pin: p.base, base: p.pin, why: p.why}.ratio() }

// rest adds the figures and cautions of pairs to a line. It returns false, with
// the reason on the line, where one of them allows no comparison.
func (w *work) rest(l *Line, pairs ...pair) bool {
	for _, p := range pairs {
		l.Figures = append(append(l.Figures, uses(w.base, "₁", p.base)...), uses(w.pin, "₂", p.pin)...)
		l.Notes = append(l.Notes, p.notes...)
		l.Reason = cmp.Or(l.Reason, p.why)
	}
	return l.Reason == ""
}

// ratio is a line of which there is no more than a ratio, where the pairs allow it.
func (w *work) ratio(l Line, r interval, pairs ...pair) {
	if w.rest(&l, pairs...) {
		l.Ratio = r.in(units.One)
	}
	w.add(l)
}

// add finishes a line.
func (w *work) add(l Line) {
	if l.Reason != "" {
		l.Need = ""
		l.Notes = nil
	}
	w.lines = append(w.lines, l)
}

func (w *work) unit(d units.Dimension) units.Unit { return units.Preferred(d, w.bench.System) }

// of sets value, baseline and ratio of a line from a size that the part has
// today and the ratio. Where the size was not given, need says so.
func (w *work) of(l *Line, today *units.Quantity, ratio interval, need want) {
	l.Ratio = ratio.in(units.One)
	if l.missing(today, need) {
		return
	}
	u := w.unit(today.Unit.Dimension())
	l.Base, l.Value = stated(*today, u), ratio.times(ofGiven(*today)).in(u)
}

// stated shows a size with the digits it was given with.
func stated(q units.Quantity, u units.Unit) *Value {
	v := ofGiven(q).in(u)
	if in, err := q.In(u); err == nil {
		v.Place = in.Place
	}
	return v
}
