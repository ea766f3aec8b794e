package swap

import (
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

// Work says what becomes of a part when its metal, the baseline's, gives way to
// the pin's. The bench decides which figures are compared and in which units
// the results are. Lines that cannot be worked out are there all the same, with
// what they need or why there is no number.
func Work(b *compare.Bench, g part.Given, base, pin *props.Material) *Result {
	w := &work{Given: g, bench: b.Clone(), base: base, pin: pin, pairs: map[props.PropertyID]pair{}}
	w.shape()
	w.stiffness()
	w.strength()
	w.castStrength()
	w.reserve()
	w.hot()
	w.cold()
	w.creep()
	w.fatigue()
	w.pressure()
	w.temperature()
	w.permanent()
	w.press()
	w.thread()
	w.bearing()
	w.heat()
	w.current()
	w.foundry()
	w.price()
	today, swapped := w.cost()
	return &Result{Base: base, Pin: pin, Given: w.Given, System: b.System, Lines: w.lines, Today: today, Swapped: swapped}
}

// keeps reports whether the lines of an equal stiffness or strength are wanted.
func (w *work) keeps(k part.Keep) bool { return w.Keep == part.KeepAll || w.Keep == k }

// masses sets the mass today, the mass in the pin's metal with the section that
// many times as large, and their ratio.
func (w *work) masses(l *Line, density pair, section interval) {
	ratio := density.ratio().times(section)
	if w.Mass != nil || w.Volume == nil {
		w.of(l, w.Mass, ratio, needMass)
		return
	}
	u, v := w.unit(units.Mass), ofGiven(*w.Volume)
	l.Ratio = ratio.in(units.One)
	l.Base, l.Value = v.times(ofFigure(density.base)).in(u), v.times(ofFigure(density.pin)).times(section).in(u)
}

// volume is the metal in the part: as given, or from its mass today.
func (w *work) volume() *interval {
	if w.Volume != nil {
		v := ofGiven(*w.Volume)
		return &v
	}
	if d := w.pair(props.Density); w.Mass != nil && d.base != nil && unfit(d.base) == "" {
		v := ofGiven(*w.Mass).over(ofFigure(d.base))
		return &v
	}
	return nil
}

// shape is the part as it is drawn, poured in the other metal.
func (w *work) shape() {
	l := Line{Group: Shape, ID: "shape.mass", Name: "Mass", Formula: read("m₂/m₁ = ρ₂/ρ₁; m = ρ·V", srcDefined)}
	d := w.pair(props.Density)
	if w.rest(&l, d) {
		w.masses(&l, d, exact(1))
		l.Notes = append(l.Notes, w.disagreement(d.base)...)
	} else if v := w.volume(); v != nil && d.pin != nil && unfit(d.pin) == "" {
		// The baseline's density is missing, but the volume tells the mass.
		l.Value = v.times(ofFigure(d.pin)).in(w.unit(units.Mass))
		l.Notes, l.Reason = append(l.Notes, l.Reason), ""
	}
	w.add(l)
}

// loose is how far mass and volume may be from the density of the baseline
// before it is said.
const loose = 0.05

// disagreement tells where a mass and a volume given do not fit the metal. The
// mass is what is calculated with.
func (w *work) disagreement(density *props.Figure) []string {
	if w.Mass == nil || w.Volume == nil {
		return nil
	}
	m := ofGiven(*w.Volume).times(ofFigure(density))
	g := ofGiven(*w.Mass)
	if g.lo <= m.hi*(1+loose) && g.hi >= m.lo*(1-loose) {
		return nil
	}
	return []string{"the mass and the volume given do not fit the density of " + w.base.Name() + ": that volume would be " +
		m.in(w.unit(units.Mass)).String() + "; the mass was taken"}
}

var frequencyFormula = memory("f₂/f₁ = √(E₂/E₁ · ρ₁/ρ₂), same shape and supports", srcStrength)

// stiffness is how far the part bends, how fast it rings, and the section that bends
// no further.
func (w *work) stiffness() {
	e := w.pair(props.ElasticModulus)
	w.ratio(Line{Group: Stiffness, ID: "stiffness.deflection", Name: "Deflection, same load", Formula: read("δ₂/δ₁ = E₁/E₂", srcStrength)}, e.inverse(), e)
	d := w.pair(props.Density)
	w.ratio(Line{Group: Stiffness, ID: "stiffness.frequency", Name: "Natural frequency", Formula: frequencyFormula}, e.ratio().times(d.inverse()).raised(1./2), e, d)
	if w.keeps(part.KeepStiffness) {
		w.equal(Stiffness, "stiffness", "equal stiffness", e, stiffnessLaws())
	}
}

// equal adds the section, the wall and the mass at equal stiffness or strength.
func (w *work) equal(g Group, id, what string, p pair, laws map[part.Case]law) {
	line := func(end, name string, formula Formula) Line {
		return Line{Group: g, ID: id + end, Name: name + ", " + what, Formula: formula}
	}
	law, ok := laws[w.Case]
	if !ok {
		l := line(".section", "Section", Formula{})
		l.wait(needCase)
		w.add(l)
		return
	}
	// Where the measure is the wall itself one line tells both.
	wall, need := line(".wall", law.name, law.formula), needWall
	if w.Case == part.FixedBeam {
		need = needDepth
	}
	section := p.inverse().raised(law.section)
	if w.Case == part.Tie || w.Case == part.Beam {
		w.ratio(line(".section", law.name, law.formula), section, p)
		wall.Name = "Wall, " + what
	}
	if w.rest(&wall, p) {
		w.of(&wall, w.Wall, p.inverse().raised(law.wall), need)
	}
	w.add(wall)
	mass, d := line(".mass", "Mass", law.formula), w.pair(props.Density)
	if w.rest(&mass, p, d) {
		w.masses(&mass, d, section)
	}
	w.add(mass)
}
