package swap

import (
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

var strengths = map[part.Strength]props.PropertyID{
	part.Yield: props.YieldStrength, part.Tensile: props.TensileStrength, part.Fatigue: props.FatigueStrength,
}

// strengthPair picks the strength that decides. Only Auto falls back from yield
// to tensile, for both metals, and says why.
func (w *work) strengthPair() (p props.PropertyID, found pair) {
	if w.Strength != part.Auto {
		p = strengths[w.Strength]
		found = w.pair(p)
		if p == props.YieldStrength && found.why != "" {
			found.why += noYield(w.base, w.pin)
		}
		return p, found
	}
	yield := w.pair(props.YieldStrength)
	if yield.why == "" {
		return props.YieldStrength, yield
	}
	found = w.pair(props.TensileStrength)
	found.notes = append([]string{"tensile strength taken for both; " + yield.why}, found.notes...)
	return props.TensileStrength, found
}

// noYield offers tensile strength where one of the metals has no yield point.
func noYield(materials ...*props.Material) string {
	for _, m := range materials {
		if m.Absent(props.YieldStrength) != "" {
			return "; choose tensile strength to compare the two"
		}
	}
	return ""
}

// strength is what the part carries, the section that carries as much, and how
// far an applied stress is from the strength.
func (w *work) strength() {
	id, s := w.strengthPair()
	what := props.InSentence(id.Info().Name)
	l := Line{Group: StrengthGroup, ID: "strength.load", Name: "Load, by " + what, Formula: read("F₂/F₁ = S₂/S₁", srcStrength)}
	if w.rest(&l, s) {
		l.Ratio = s.ratio().in(units.One)
	}
	w.add(l)
	if w.keeps(part.KeepStrength) {
		w.equal(StrengthGroup, "strength", "equal strength", s, strengthLaws())
	}
	w.margin(id, props.Minimum)
	w.margin(id, props.Typical)
}

// margin is the strength on one basis over the applied stress, for the part as
// it is drawn.
func (w *work) margin(p props.PropertyID, basis props.Basis) {
	l := Line{Group: StrengthGroup, ID: "margin." + basis.String(), Name: "Margin on " + basis.Phrase(),
		Formula: memory("n = S/σ", srcStrength)}
	factor := func(m *props.Material, symbol string) (*Value, string) {
		f := w.onBasis(m, p, basis)
		if f == nil {
			return nil, w.lacksBasis(m, p, basis)
		}
		l.Figures = append(l.Figures, Used{symbol, m, f})
		if why := unfit(f); why != "" {
			return nil, why
		}
		if w.Stress == nil {
			return nil, ""
		}
		if f.Source.Trade() {
			l.Notes = append(l.Notes, "common practice, no standard or handbook behind the strength of "+m.Name())
		}
		return ofFigure(f).over(ofGiven(*w.Stress)).in(units.One), ""
	}
	var lacking string
	l.Base, lacking = factor(w.base, "S₁")
	l.Value, l.Reason = factor(w.pin, "S₂")
	switch {
	case l.Reason != "":
		l.Base = nil
	case w.Stress == nil:
		l.wait(needStress)
	default:
		if lacking != "" {
			l.Notes = append(l.Notes, lacking)
		}
		if l.Value.Lo < 1 {
			l.Notes = append(l.Notes, "the stress reaches the strength")
		}
		l.Notes = append(l.Notes, w.notAtHeat()...)
	}
	w.add(l)
}

// onBasis is the figure of a property on one basis that the bench would show;
// nil when there is none.
func (w *work) onBasis(m *props.Material, p props.PropertyID, basis props.Basis) *props.Figure {
	b := w.bench
	b.Basis = compare.TypicalFirst
	if basis == props.Minimum {
		b.Basis = compare.MinimumOnly
	}
	if f := b.Figure(m, p); f != nil && f.Basis == basis {
		return f
	}
	if b.Service != nil {
		return nil
	}
	for _, f := range m.Figures(p) {
		if f.Basis == basis {
			return f
		}
	}
	return nil
}

func (w *work) lacksBasis(m *props.Material, p props.PropertyID, basis props.Basis) string {
	name := props.InSentence(p.Info().Name)
	if why := m.Absent(p); why != "" {
		return m.Name() + ": " + why
	}
	s := "no " + basis.Phrase() + " " + name + " on file for " + m.Name()
	if w.bench.Service != nil {
		s += " at the service temperature"
	}
	return s
}

// warm is the service temperature in °C from which strengths found at room
// temperature need a word.
const warm = 100

// notAtHeat warns that room-temperature strengths are set against a part that
// gets hot.
func (w *work) notAtHeat() []string {
	if w.Range() == nil || w.Range()[1] < warm || w.bench.Service != nil {
		return nil
	}
	return []string{"strength at room temperature; the part gets to " + w.temperatureText(w.Range()[1])}
}
