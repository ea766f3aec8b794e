package swap

import (
	"alongside/props"
	"alongside/units"
)

var (
	flowFormula        = read("Q = k·A·ΔT/t: Q₂/Q₁ = k₂/k₁; for the same flow t₂/t₁ = k₂/k₁", srcHeat)
	diffusivityFormula = memory("a = k/(ρ·c)", srcThermal)
	resistanceFormula  = read("R = L/(σ·A): R₂/R₁ = σ₁/σ₂", srcCurrent)
	sectionFormula     = read("for the same R: A₂/A₁ = σ₁/σ₂; m₂/m₁ = ρ₂/ρ₁ · σ₁/σ₂", srcCurrent)
	barFormula         = read("R = L²/(σ·V), a straight bar of the part's length and volume", srcCurrent)
)

// heat is what the wall conducts, and how fast it evens out.
func (w *work) heat() {
	k := w.pair(props.ThermalConductivity)
	w.ratio(Line{Group: Heat, ID: "heat.flow", Name: "Heat through the same wall", Formula: flowFormula}, k.ratio(), k)
	wall := Line{Group: Heat, ID: "heat.wall", Name: "Wall for the same heat", Formula: flowFormula}
	if w.rest(&wall, k) {
		w.of(&wall, w.Wall, k.ratio(), needWall)
	}
	w.add(wall)
	w.diffusivity(k)
}

func (w *work) diffusivity(k pair) {
	l := Line{Group: Heat, ID: "heat.diffusivity", Name: "Thermal diffusivity", Formula: diffusivityFormula}
	c, d := w.pair(props.SpecificHeat), w.pair(props.Density)
	if w.rest(&l, k, c, d) {
		u := w.unit(units.ThermalDiffusivity)
		pin := ofFigure(k.pin).over(ofFigure(c.pin).times(ofFigure(d.pin)))
		base := ofFigure(k.base).over(ofFigure(c.base).times(ofFigure(d.base)))
		l.Value, l.Base = pin.in(u), base.in(u)
		l.Ratio = k.ratio().times(c.inverse()).times(d.inverse()).in(units.One)
		if k.pin.Cond.At() != c.pin.Cond.At() && (k.pin.Cond.HasAt || c.pin.Cond.HasAt) {
			l.Notes = append(l.Notes, "conductivity and specific heat are published at different temperatures")
		}
	}
	w.add(l)
}

// current is what the same section resists, and the section that resists no
// more.
func (w *work) current() {
	s := w.pair(props.ElectricalConductivity)
	l := Line{Group: Current, ID: "current.resistance", Name: "Resistance, same shape", Formula: resistanceFormula}
	if w.rest(&l, s) {
		l.Ratio = s.inverse().in(units.One)
		w.bar(&l, s)
	}
	w.add(l)
	w.ratio(Line{Group: Current, ID: "current.section", Name: "Section, same resistance", Formula: sectionFormula}, s.inverse(), s)
	mass := Line{Group: Current, ID: "current.mass", Name: "Mass, same resistance", Formula: sectionFormula}
	d := w.pair(props.Density)
	if w.rest(&mass, s, d) {
		w.masses(&mass, d, s.inverse())
	}
	w.add(mass)
}

// bar sets the resistance of a straight bar of the part's length and volume.
func (w *work) bar(l *Line, s pair) {
	v := w.volume()
	if l.missing(w.Length, needLength) {
		return
	}
	if v == nil {
		l.wait(needMass)
		return
	}
	n := ofGiven(*w.Length)
	shape := n.times(n).over(*v)
	base, pin := shape.over(ofFigure(s.base)), shape.over(ofFigure(s.pin))
	l.Formula = barFormula
	l.Base, l.Value = base.inOhms(pin.mid), pin.inOhms(pin.mid)
}

// inOhms is a resistance in the unit that suits one like it; the units package has none.
func (a interval) inOhms(like float64) *Value {
	symbol, factor := "µΩ", 1e6
	switch {
	case like >= 1:
		symbol, factor = "Ω", 1
	case like >= 1e-3:
		symbol, factor = "mΩ", 1e3
	}
	v := a.times(exact(factor)).in(units.One)
	v.Symbol = symbol
	return v
}
