package audit

import (
	"sync"

	"alongside/props"
	"alongside/units"
)

// element holds density in g/cm³ at 20 °C (0: not a metal that counts in a
// mixture) and specific heat in J/kg·K at 25 °C.
type element struct{ density, heat float64 }

// elements are handbook values of the pure elements (chemistry and physics
// handbook tables; memory).
var elements = sync.OnceValue(func() map[string]element {
	return map[string]element{
		"Al": {2.699, 897}, "Si": {2.33, 712}, "Cu": {8.96, 385}, "Mg": {1.738, 1023}, "Zn": {7.14, 388}, "Fe": {7.87, 449},
		"Ni": {8.90, 444}, "Mn": {7.44, 479}, "Sn": {7.29, 227}, "Pb": {11.34, 130}, "Ag": {10.49, 235}, "Ti": {4.51, 523},
		"Cr": {7.19, 449}, "Bi": {9.79, 122}, "Be": {1.85, 1825}, "Zr": {6.51, 278}, "Y": {4.47, 298}, "Th": {11.7, 118},
		"C": {0, 709}, "Mo": {10.2, 251}, "Co": {8.9, 421}, "Nb": {8.57, 265}, "V": {6.1, 489}, "W": {19.3, 132}, "Sb": {6.69, 207},
	}
})

// shares are the mass fractions in the middle of the composition limits; an
// impurity limit is seldom used up and counts a quarter. An alloy without
// limits on file has none.
func shares(a *props.Alloy) map[string]float64 {
	out, sum, rest := map[string]float64{}, 0.0, ""
	for _, x := range a.Composition.Limits {
		w := (x.Lo + x.Hi) / 2
		switch {
		case x.Text == "remainder":
			rest = x.Element
			continue
		case x.Lo == 0:
			w = x.Hi / 4
		case x.Hi == 100: // a minimum alone
			w = x.Lo
		}
		if _, known := elements()[x.Element]; known {
			out[x.Element] = w
			sum += w
		}
	}
	switch {
	case rest != "" && sum < 100:
		out[rest] += 100 - sum
		sum = 100
	case sum < 85 || sum > 115: // does not describe the whole alloy
		return nil
	}
	for e := range out {
		out[e] /= sum
	}
	return out
}

// mixture compares density with the rule of mixtures over the composition
// limits: 1/ρ = Σ w/ρ. It does not hold for copper with more than little
// aluminum, silicon or beryllium, which dissolve in it and take far less room
// than by themselves.
func mixture(l *look) {
	d := first(l.room(props.Density))
	w := shares(l.m.Alloy)
	if d == nil || w == nil || l.m.Alloy.Family.Base == "Cu" && w["Al"]+w["Si"]+w["Be"] > 0.007 {
		return
	}
	volume := 0.0
	for e, share := range w {
		if rho := elements()[e].density; rho > 0 {
			volume += share / rho
		}
	}
	lo, hi := span(d, units.GPerCM3)
	for _, b := range l.bandsOf(props.DensityPerMixture) {
		if m := 1 / volume; hi < m*b.Value.Lo || lo > m*b.Value.Hi {
			l.find("density %s; the composition makes about %.2f g/cm³ (printed %.2f)", []any{d.Value, m, (lo + hi) / 2}, d)
		}
	}
}

// The heat that atoms take up rises with temperature, so that tables stated
// for 100 °C lie above the values of the elements at 25 °C.
const heatBelow, heatAbove = 0.10, 0.15

// specificHeat compares with the mass-weighted heats of the elements (Kopp
// and Neumann); where no composition is on file, with that of the base metal.
func specificHeat(l *look) {
	w := shares(l.m.Alloy)
	if w == nil {
		base := l.m.Alloy.Family.Base
		if _, known := elements()[base]; !known {
			return
		}
		w = map[string]float64{base: 1}
	}
	sum := 0.0
	for e, share := range w {
		sum += share * elements()[e].heat
	}
	for _, f := range l.figures[props.SpecificHeat] {
		if f.Cond.HasAt && f.Cond.AtC > 110 || f.Cond.HasRange && f.Cond.ToC > 110 {
			continue
		}
		if lo, hi := span(f, units.JPerKgK); hi < sum*(1-heatBelow) || lo > sum*(1+heatAbove) {
			l.find("%s; its elements make about %.0f J/kg·K (printed %.0f)", []any{f.Value, sum, (lo + hi) / 2}, f)
		}
	}
}
