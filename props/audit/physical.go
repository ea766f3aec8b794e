package audit

import (
	"alongside/props"
	"alongside/units"
)

func solidusBelowLiquidus(l *look) {
	for _, s := range l.figures[props.Solidus] {
		for _, q := range l.figures[props.Liquidus] {
			if s.Block == q.Block && s.Value.Unit.ToSI(s.Value.Lo) >= q.Value.Unit.ToSI(q.Value.Hi) {
				l.find("solidus %s is not below liquidus %s", []any{s.Value, q.Value}, s, q)
			}
		}
	}
}

// expansionRises: a mean coefficient grows with the end of its range. A fall
// within the rounding of the two figures is none.
func expansionRises(l *look) {
	list := l.figures[props.ThermalExpansion]
	for _, a := range list {
		for _, b := range list {
			if !a.Cond.HasRange || !b.Cond.HasRange || a.Block.Source != b.Block.Source ||
				a.Cond.FromC != b.Cond.FromC || a.Cond.ToC+10 > b.Cond.ToC || a.Cond.ToC <= a.Cond.FromC {
				continue
			}
			alo, _ := span(a, units.MicromMK)
			_, bhi := span(b, units.MicromMK)
			if bhi < alo {
				l.find("%s over %s, but only %s over %s", []any{a.Value, a.Cond.Range(), b.Value, b.Cond.Range()}, b, a)
			}
		}
	}
}

// shearModulus: E = 2G(1+ν) for isotropic metals, on intervals.
func shearModulus(l *look) {
	for _, g := range l.room(props.ShearModulus) {
		for _, e := range l.room(props.ElasticModulus) {
			if e.Block.Source != g.Block.Source {
				continue
			}
			elo, ehi := span(e, units.GPa)
			glo, ghi := span(g, units.GPa)
			// Ends of two ranges belong together: the stiffer iron has the
			// higher value of both.
			lo, hi := elo/(2*glo)-1, ehi/(2*ghi)-1
			if e.Value.Lo == e.Value.Hi || g.Value.Lo == g.Value.Hi {
				lo, hi = elo/(2*ghi)-1, ehi/(2*glo)-1
			}
			lo, hi = min(lo, hi), max(lo, hi)
			if hi < 0.18 || lo > 0.38 {
				l.find("E %s and G %s make Poisson's ratio %.2f to %.2f", []any{e.Value, g.Value, lo, hi}, g, e)
			}
			for _, n := range l.room(props.PoissonRatio) {
				nlo, nhi := n.Value.Interval()
				if n.Block.Source == g.Block.Source && (hi < nlo-0.03 || lo > nhi+0.03) {
					l.find("E %s and G %s make Poisson's ratio %.2f to %.2f; printed is %s", []any{e.Value, g.Value, lo, hi, n.Value}, g, e, n)
				}
			}
		}
	}
}

// elasticSet: the three elastic constants that a material shows first belong
// together, whatever their sources.
func elasticSet(l *look) {
	e, g, n := first(l.room(props.ElasticModulus)), first(l.room(props.ShearModulus)), first(l.room(props.PoissonRatio))
	if e == nil || g == nil || n == nil || e.Value.IsRange() || g.Value.IsRange() {
		return
	}
	elo, ehi := span(e, units.GPa)
	glo, ghi := span(g, units.GPa)
	nlo, nhi := n.Value.Interval()
	lo, hi := elo/(2*ghi)-1, ehi/(2*glo)-1
	if hi < nlo-0.01 || lo > nhi+0.01 {
		l.find("E %s (%s) and G %s (%s) make Poisson's ratio %.3f to %.3f; shown is %s (%s)",
			[]any{e.Value, e.Source.ID, g.Value, g.Source.ID, lo, hi, n.Value, n.Source.ID}, g, e, n)
	}
}

const roomKelvin = 296.0

// conductionLaw is k = slope·T·σ + intercept with the tolerance of its source.
type conductionLaw struct{ slope, intercept, tolerance float64 }

// conductionOf is the law published for the alloys of a base element; ok is false
// where there is none.
func conductionOf(base string) (law conductionLaw, ok bool) {
	switch base {
	case "Al":
		return conductionLaw{2.10e-8, 12.55, 0.15}, true
	case "Cu":
		return conductionLaw{2.39e-8, 7.5, 0.15}, true
	case "Zn":
		return conductionLaw{2.44e-8, 0, 0.10}, true
	case "Mg":
		return conductionLaw{2.33e-8, 8, 0.20}, true
	}
	return law, false
}

// conduction sets every thermal conductivity against the electrical
// conductivity that is shown first.
func conduction(l *look) {
	law, ok := conductionOf(l.m.Alloy.Family.Base)
	e := first(l.room(props.ElectricalConductivity))
	if !ok || e == nil {
		return
	}
	elo, ehi := span(e, units.SPerM)
	at := func(sigma float64) float64 { return law.slope*roomKelvin*sigma + law.intercept }
	for _, k := range l.room(props.ThermalConductivity) {
		klo, khi := span(k, units.WPerMK)
		if khi < at(elo)*(1-law.tolerance) || klo > at(ehi)*(1+law.tolerance) {
			l.find("%s; from %s the family's relation makes %.0f W/m·K (printed %.0f)",
				[]any{k.Value, e.Value, at((elo + ehi) / 2), (klo + khi) / 2}, k, e)
		}
	}
}

func first(list []*props.Figure) *props.Figure {
	if len(list) == 0 {
		return nil
	}
	return list[0]
}
