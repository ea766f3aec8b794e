package swap

import (
	"cmp"
	"math"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

var (
	pressFormula  = memory("p = δ/d ÷ [((D² + d²)/(D² − d²) + ν hub)/E hub + ((d² + i²)/(d² − i²) − ν shaft)/E shaft], D outside, i inside; δ at heat = δ + d·(Δε shaft − Δε hub); elastic, moduli at room temperature", srcLame)
	hubFormula    = read("σ = p·(D² + d²)/(D² − d²) at the bore", srcLame)
	shaftFormula  = read("σ = −2p·d²/(d² − i²) at the inside of a hollow shaft, −p in a solid one", srcLame)
	torqueFormula = memory("T = π/2·µ·p·d²·L", srcFit)
	pressMargin   = memory("n = S/σ; σ is the largest difference of two principal stresses where the metal yields, the hoop stress where it breaks", srcShear)
)

// press is a press or shrink fit of the part and its mate: what it presses, how
// the part is stressed and what it holds, at 20 °C and at the ends of the service
// range. Lines appear once an interference is given.
func (w *work) press() {
	if w.Interference == nil {
		return
	}
	first := Line{Group: Joints, ID: "press.pressure", Name: "Contact pressure", Formula: pressFormula}
	switch {
	case w.Mate == nil:
		first.wait(needMate)
	case !first.missing(w.Fit, needFit) && !first.missing(w.Hub, needHub):
		first.Reason = w.unfitPress()
	}
	if first.Need != "" || first.Reason != "" {
		w.add(first)
		return
	}
	var fits []fitted
	for _, at := range w.ends() {
		fits = append(fits, fitted{at, w.grip(w.base, "₁", at), w.grip(w.pin, "₂", at)})
	}
	hoop := hubFormula
	if w.Part.Role == part.Shaft {
		hoop = shaftFormula
	}
	for _, f := range fits {
		w.pressLine("press.pressure", "Contact pressure", pressFormula, f, units.Stress, func(p interval) interval { return p })
	}
	for _, f := range fits {
		w.pressLine("press.hoop", "Hoop stress of the press fit", hoop, f, units.Stress, w.pressHoop)
	}
	for _, basis := range bases {
		w.margin(Line{Group: Joints, ID: "press.margin." + basis.String(), Name: "Margin of the press fit, " + basis.String(), Formula: pressMargin},
			basis, givings[0].strength, func(m *props.Material) expected { return w.presses(m, fits) })
	}
	w.torque(fits)
}

// fitted is a press fit at one temperature, with the part in either metal.
type fitted struct {
	at        leg
	base, pin grip
}

// unfitPress says why the sizes given make no press fit.
func (w *work) unfitPress() string {
	d := w.Fit.Unit.ToSI(w.Fit.Lo)
	switch {
	case w.Fit.IsRange():
		return "a press fit needs one fit diameter"
	case w.Hub.Unit.ToSI(w.Hub.Lo) <= d:
		return "the hub diameter must be above the fit diameter"
	case w.hole().hi >= d:
		return "the inside diameter must be below the fit diameter"
	case w.Interference.Unit.ToSI(w.Interference.Hi) >= d/10:
		return "an interference of a tenth of the diameter is no elastic fit"
	}
	return ""
}

// hole is the inside diameter of the shaft in m; 0 where it is solid. With a
// pressure the inside diameter is that of the vessel.
func (w *work) hole() interval {
	if w.Inside == nil || w.Pressure != nil {
		return exact(0)
	}
	return ofGiven(*w.Inside)
}

// ends are the temperatures at which a fit is looked at: that at which it is
// assembled, and those ends of the service range that are known and differ from it.
func (w *work) ends() []leg {
	out := []leg{{"", assembly, assembly}}
	if w.Hottest != nil && *w.Hottest > assembly+atAssembly {
		out = append(out, leg{".hot", assembly, *w.Hottest})
	}
	if w.Coldest != nil && *w.Coldest < assembly-atAssembly {
		out = append(out, leg{".cold", assembly, *w.Coldest})
	}
	return out
}

// grip is the contact pressure with the part in one metal; its figures are those of
// the part and of its mate.
type grip struct {
	expected
	figures []Used
}

// grip works the contact pressure out for the part in metal m, whose figures
// carry the mark n. It grows with the interference, the hub's diameter and both
// moduli, and falls with the hole in the shaft.
func (w *work) grip(m *props.Material, n string, at leg) grip {
	var g grip
	figure := func(m *props.Material, n string, p props.PropertyID) interval {
		f := w.bench.Figure(m, p)
		switch {
		case f == nil:
			g.why = cmp.Or(g.why, lack(m, p, w.bench.Absent(m, p)))
			return interval{}
		case unfit(f) != "":
			g.why = cmp.Or(g.why, unfit(f))
			return interval{}
		}
		g.figures = append(g.figures, uses(m, n, f)...)
		return ofFigure(f)
	}
	hubE, hubNu := figure(m, n, props.ElasticModulus), figure(m, n, props.PoissonRatio)
	shaftE, shaftNu := figure(w.Mate, "ₘ", props.ElasticModulus), figure(w.Mate, "ₘ", props.PoissonRatio)
	delta, d := ofGiven(*w.Interference), ofGiven(*w.Fit)
	if w.Part.Role == part.Shaft {
		hubE, hubNu, shaftE, shaftNu = shaftE, shaftNu, hubE, hubNu
	}
	if at.from != at.to {
		grows, mate := strainOf(m, at), strainOf(w.Mate, at)
		g.figures = append(append(g.figures, uses(m, n, grows.figures...)...), uses(w.Mate, "ₘ", mate.figures...)...)
		g.why = cmp.Or(g.why, grows.why, mate.why)
		tightens := mate.less(grows).times(d)
		if w.Part.Role == part.Shaft {
			tightens = tightens.negative()
		}
		delta = delta.plus(tightens)
	}
	if g.why != "" {
		return g
	}
	outside, hole := ofGiven(*w.Hub), w.hole()
	g.value = follows(func(side int) float64 {
		return lame(delta.at(side), d.mid, outside.at(side), hole.at(-side), hubE.at(side), hubNu.at(-side), shaftE.at(side), shaftNu.at(side))
	}, delta, d, hubE, shaftE)
	if w.Part.Role == "" {
		g.notes = append(g.notes, "the part is taken as the bore around its mate, not as a bushing in it")
	}
	if delta.mid < 0 {
		g.notes = append(g.notes, "the fit is loose by "+delta.negative().in(w.unit(units.Length)).String())
	} else if g.value.lo == 0 {
		g.notes = append(g.notes, "in the worst case the fit is loose")
	}
	return g
}

// lame is pressFormula in SI: 0 where nothing interferes.
func lame(delta, d, outside, hole, hubE, hubNu, shaftE, shaftNu float64) float64 {
	hub := (outside*outside + d*d) / ((outside - d) * (outside + d))
	shaft := (d*d + hole*hole) / ((d - hole) * (d + hole))
	return max(delta, 0) / d / ((hub+hubNu)/hubE + (shaft-shaftNu)/shaftE)
}

// pressHoop is the hoop stress in the part under a contact pressure, where it is
// largest: at the bore of a hub, at the inside of a shaft.
func (w *work) pressHoop(p interval) interval {
	d, outer, hole := ofGiven(*w.Fit), ofGiven(*w.Hub), w.hole()
	return follows(func(side int) float64 {
		outside, inside := outer.at(-side), hole.at(-side)
		switch {
		case w.Part.Role != part.Shaft:
			return p.at(side) * (outside*outside + d.mid*d.mid) / ((outside - d.mid) * (outside + d.mid))
		case inside == 0:
			return -p.at(-side)
		}
		return -2 * p.at(-side) * d.mid * d.mid / ((d.mid - inside) * (d.mid + inside))
	}, p, d, outer, hole)
}

// pressLine is what follows from the contact pressure at one temperature.
func (w *work) pressLine(id, name string, formula Formula, f fitted, dim units.Dimension, follows func(interval) interval) {
	l := Line{Group: Joints, ID: id + f.at.id, Name: name + ", " + w.temperatureText(f.at.to), Formula: formula}
	l.Figures = union(f.base.figures, f.pin.figures)
	today, swapped := f.base.expected, f.pin.expected
	today.notes = nil
	l.sides(w, today, swapped, func(pressure interval) *Value {
		v := follows(pressure).in(w.unit(dim))
		if v.Unit == units.Joule {
			v.Symbol = "N·m"
		}
		return v
	})
	switch {
	case l.Base == nil:
	case w.base == w.pin:
		l.Ratio = exact(1).in(units.One)
	case today.value.lo > 0 && swapped.value.lo > 0:
		l.Ratio = follows(swapped.value).over(follows(today.value)).in(units.One)
	}
	w.add(l)
}

// presses is the stress that the strength of the part in metal m is held against:
// the largest over all temperatures.
func (w *work) presses(m *props.Material, fits []fitted) expected {
	var out expected
	if w.Part.Role == part.Shaft && breaks(m) {
		out.why = m.Name() + ": the fit presses it together, which its tensile strength does not judge"
		return out
	}
	for _, f := range fits {
		g := f.base
		if m == w.pin {
			g = f.pin
		}
		if g.why != "" {
			if f.at.id == "" {
				return expected{why: g.why}
			}
			out.notes = append(out.notes, "not at "+w.temperatureText(f.at.to)+": "+g.why)
			continue
		}
		s := w.pressHoop(g.value).size()
		if w.Part.Role != part.Shaft && !breaks(m) {
			s = s.plus(g.value)
		}
		most := &out.value
		*most = interval{max(most.lo, s.lo), max(most.mid, s.mid), max(most.hi, s.hi), max(most.last, s.last), most.wide || s.wide}
	}
	return out
}

// torque is what the friction of the fit holds.
func (w *work) torque(fits []fitted) {
	l := Line{Group: Joints, ID: "press.torque", Name: "Torque held", Formula: torqueFormula}
	if l.missing(w.Engaged, needEngaged) || l.missing(w.Friction, needFriction) {
		w.add(l)
		return
	}
	d := ofGiven(*w.Fit)
	arm := d.times(d).times(ofGiven(*w.Engaged)).times(ofGiven(*w.Friction)).times(exact(math.Pi / 2))
	for _, f := range fits {
		w.pressLine("press.torque", "Torque held", torqueFormula, f, units.Energy, func(p interval) interval { return p.times(arm) })
	}
}
