package swap

import (
	"cmp"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

var loadFormula = read("F₂/F₁ = S₂/S₁", srcStrength)

// strengthPair picks the strength that decides. Only Auto falls back from yield
// to tensile, for both metals, and says why.
func (w *work) strengthPair() (p props.PropertyID, found pair) {
	if w.Strength != part.Auto {
		switch w.Strength {
		case part.Yield:
			p = props.YieldStrength
		case part.Tensile:
			p = props.TensileStrength
		case part.Fatigue:
			p = props.FatigueStrength
		}
		found = w.pair(p)
		if p == props.YieldStrength && found.why != "" && (breaks(w.base) || breaks(w.pin)) {
			found.why += "; choose tensile strength to compare the two"
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

// strength is what the part carries, the section that carries as much, and how
// far an applied stress is from the strength.
func (w *work) strength() {
	if w.Strength == part.Auto && breaks(w.base) != breaks(w.pin) {
		w.setAndFracture()
		return
	}
	id, s := w.strengthPair()
	w.ratio(Line{Group: StrengthGroup, ID: "strength.load", Name: "Load, by " + props.InSentence(id.Info().Name), Formula: loadFormula}, s.ratio(), s)
	if w.keeps(part.KeepStrength) {
		w.equal(StrengthGroup, "strength", "equal strength", s, strengthLaws())
	}
	for _, basis := range bases {
		w.margin(marginLine("margin."+basis.String(), "Margin on "+basis.Phrase()), basis, func(*props.Material) props.PropertyID { return id }, w.applied)
	}
}

var bases = [...]props.Basis{props.Minimum, props.Typical}

// breaks reports whether the metal breaks without yielding first.
func breaks(m *props.Material) bool { return m.Absent(props.YieldStrength) != "" }

// giving is a way in which the part gives way, and the strength that stands for it.
type giving struct {
	id, name string
	strength func(*props.Material) props.PropertyID
}

var givings = [...]giving{
	{"set", "to set", func(m *props.Material) props.PropertyID {
		if breaks(m) {
			return props.TensileStrength
		}
		return props.YieldStrength
	}},
	{"fracture", "to fracture", func(*props.Material) props.PropertyID { return props.TensileStrength }},
}

// setAndFracture compares a metal that yields before it breaks with one that does
// not: the load at which the part stays bent or, of the other metal, breaks, and
// the load at which either breaks. Each is told on minimums and on typical figures,
// which are never mixed. The section for equal strength goes by permanent set, on
// minimums where both have them.
func (w *work) setAndFracture() {
	for _, g := range givings {
		for _, basis := range bases {
			w.load(g, basis)
		}
	}
	if w.keeps(part.KeepStrength) {
		s := w.pairOnBasis(givings[0], props.Minimum)
		if s.why != "" {
			s = w.pairOnBasis(givings[0], props.Typical)
		}
		w.equal(StrengthGroup, "strength", "equal strength", s, strengthLaws())
	}
	for _, g := range givings {
		for _, basis := range bases {
			w.margin(marginLine("margin."+g.id+"."+basis.String(), "Margin "+g.name+", "+basis.String()), basis, g.strength, w.applied)
		}
	}
}

// load is the load at which the part gives way, against today's.
func (w *work) load(g giving, basis props.Basis) {
	l := Line{Group: StrengthGroup, ID: "load." + g.id + "." + basis.String(), Name: "Load " + g.name + ", " + basis.String(), Formula: loadFormula}
	if s := w.pairOnBasis(g, basis); w.rest(&l, s) {
		u := w.unit(units.Stress)
		l.Base, l.Value, l.Ratio = ofFigure(s.base).in(u), ofFigure(s.pin).in(u), s.ratio().in(units.One)
		l.Notes = append(l.Notes, w.notAtHeat()...)
	}
	w.add(l)
}

// pairOnBasis is the strength of both metals that stands for a way of giving way.
func (w *work) pairOnBasis(g giving, basis props.Basis) (out pair) {
	side := func(m *props.Material) *props.Figure {
		id := g.strength(m)
		f := w.onBasis(m, id, basis)
		if f == nil {
			out.why = cmp.Or(out.why, w.lacksBasis(m, id, basis))
		} else {
			out.why = cmp.Or(out.why, unfit(f))
		}
		if g.id == "set" && breaks(m) {
			out.notes = append(out.notes, m.Name()+" breaks without yielding: its tensile strength")
		}
		return f
	}
	out.pin, out.base = side(w.pin), side(w.base)
	return out
}

// applied is the stress that the part is given.
func (w *work) applied(*props.Material) expected {
	if w.Stress == nil {
		return expected{need: needStress}
	}
	return expected{value: ofGiven(*w.Stress)}
}

// asDrawn is a line for a stress in the part as it is drawn, whatever its metal.
func (w *work) asDrawn(l Line, stress expected) {
	switch {
	case stress.why != "":
		l.Reason = stress.why
	case stress.waits():
		l.wait(stress.need)
	default:
		l.Value = stress.value.in(w.unit(units.Stress))
		l.Base, l.Notes = l.Value, stress.notes
	}
	w.add(l)
}

// marginLine is a line for margin in the part as it is drawn.
func marginLine(id, name string) Line {
	return Line{Group: StrengthGroup, ID: id, Name: name, Formula: memory("n = S/σ", srcStrength)}
}

// margin puts the strength on one basis over a stress on a line that has its name
// and formula.
func (w *work) margin(l Line, basis props.Basis, strength func(*props.Material) props.PropertyID, stress func(*props.Material) expected) {
	of := func(m *props.Material) expected {
		e, under := w.specified(m, strength(m), basis), stress(m)
		e.why, e.need = cmp.Or(e.why, under.why), under.need
		if e.why != "" || under.waits() {
			e.value = interval{}
			return e
		}
		e.value = e.value.over(under.value)
		if e.figures[0].Source.Trade() {
			e.notes = []string{"common practice, no standard or handbook behind the strength of " + m.Name()}
		}
		return e
	}
	l.sides(w, of(w.base), of(w.pin), func(n interval) *Value { return n.in(units.One) })
	if l.Value != nil {
		if l.Value.Lo < 1 {
			l.Notes = append(l.Notes, "the stress reaches the strength")
		}
		l.Notes = append(append(l.Notes, w.notAtHeat()...), stress(w.pin).notes...)
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
