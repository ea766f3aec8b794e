package swap

import (
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

// pair holds the figures of one property that the bench sets against each
// other, and why it may not or cannot.
type pair struct {
	symbol    string
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

var symbols = [...]string{
	props.Density: "ρ", props.ElasticModulus: "E", props.YieldStrength: "S", props.TensileStrength: "S",
	props.FatigueStrength: "S", props.ThermalConductivity: "k", props.SpecificHeat: "c",
	props.ElectricalConductivity: "σ", props.PatternShrinkage: "s", props.ThermalExpansion: "α",
}

// pair picks the figures of a property by the rule of the bench (see
// props.Compare).
func (w *work) pair(p props.PropertyID) pair {
	if known, ok := w.pairs[p]; ok {
		return known
	}
	found := w.bench.Pair(w.pin, w.base, p)
	out := pair{symbol: symbols[p], pin: found.Figure, base: found.Against}
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

// ratio is pin over baseline; a figure over itself is exactly 1.
func (p pair) ratio() interval {
	if p.pin == p.base {
		return exact(1)
	}
	return ofFigure(p.pin).over(ofFigure(p.base))
}

// inverse is baseline over pin.
func (p pair) inverse() interval {
	if p.pin == p.base {
		return exact(1)
	}
	return ofFigure(p.base).over(ofFigure(p.pin))
}

// used lists the figures of a pair for a line.
func (w *work) used(p pair) []Used {
	var out []Used
	if p.base != nil {
		out = append(out, Used{p.symbol + "₁", w.base, p.base})
	}
	if p.pin != nil {
		out = append(out, Used{p.symbol + "₂", w.pin, p.pin})
	}
	return out
}

// rest adds the figures and cautions of pairs to a line. It returns false, with
// the reason on the line, where one of them allows no comparison.
func (w *work) rest(l *Line, pairs ...pair) bool {
	for _, p := range pairs {
		l.Figures = append(l.Figures, w.used(p)...)
		l.Notes = append(l.Notes, p.notes...)
		if p.why != "" && l.Reason == "" {
			l.Reason = p.why
		}
	}
	return l.Reason == ""
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
	if today == nil {
		l.wait(need)
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
