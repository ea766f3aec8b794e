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

const roomKelvin = 296.0

// conductionLaw is k = slope·T·σ + intercept with the tolerance of its source.
type conductionLaw struct{ slope, intercept, tolerance float64 }

var conductionLaws = map[string]conductionLaw{
	"aluminum":         {2.10e-8, 12.55, 0.15},
	"wrought-aluminum": {2.10e-8, 12.55, 0.15},
	"copper":           {2.39e-8, 7.5, 0.15},
	"wrought-copper":   {2.39e-8, 7.5, 0.15},
	"zinc":             {2.44e-8, 0, 0.10},
	"magnesium":        {2.33e-8, 8, 0.20},
}

// conduction sets every thermal conductivity against the electrical
// conductivity that is shown first.
func conduction(l *look) {
	law, ok := conductionLaws[l.m.Alloy.Family.ID]
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

// elementDensity in g/cm³ at 20 °C.
var elementDensity = map[string]float64{
	"Al": 2.699, "Si": 2.33, "Cu": 8.96, "Mg": 1.738, "Zn": 7.14, "Fe": 7.87, "Ni": 8.90, "Mn": 7.44, "Sn": 7.29, "Pb": 11.34,
	"Ag": 10.49, "Ti": 4.51, "Cr": 7.19, "Bi": 9.79, "Be": 1.85, "Zr": 6.51, "Y": 4.47, "Th": 11.7,
}

var mixtureTolerance = map[string]float64{"aluminum": 0.025, "zinc": 0.025, "magnesium": 0.03}

// mixture compares density with the rule of mixtures over the composition
// limits: 1/ρ = Σ w/ρ. It holds where the elements form no compound that
// takes much less room, so not for copper with aluminum.
func mixture(l *look) {
	tolerance, ok := mixtureTolerance[l.m.Alloy.Family.ID]
	limits := l.m.Alloy.Composition.Limits
	d := first(l.room(props.Density))
	if !ok || d == nil || len(limits) == 0 {
		return
	}
	var mass, volume float64
	base := ""
	for _, x := range limits {
		rho, known := elementDensity[x.Element]
		if x.Text == "remainder" {
			base = x.Element
			continue
		}
		if !known {
			continue
		}
		w := (x.Lo + x.Hi) / 2
		switch {
		case x.Lo == 0:
			w = x.Hi / 4 // an impurity limit is seldom used up
		case x.Hi == 100:
			w = x.Lo // a minimum alone
		}
		mass += w
		volume += w / rho
	}
	rho, known := elementDensity[base]
	if !known || mass >= 100 {
		return
	}
	volume += (100 - mass) / rho
	lo, hi := span(d, units.GPerCM3)
	if m := 100 / volume; hi < m*(1-tolerance) || lo > m*(1+tolerance) {
		l.find("density %s; the composition makes about %.2f g/cm³ (printed %.2f)", []any{d.Value, m, (lo + hi) / 2}, d)
	}
}
