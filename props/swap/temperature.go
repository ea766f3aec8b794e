package swap

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// assembly is the temperature in °C at which parts are measured and joined: the
// reference temperature of ISO 1.
const assembly = 20.0

// atAssembly is how far, in °C, an end of a range may be from it and still be
// meant as it: people say 70 °F.
const atAssembly = 1.5

// leg is a change of temperature in °C.
type leg struct {
	id       string
	from, to float64
}

// legs are the changes from the assembly temperature to the cold and the hot
// end; for a range that does not hold it, the range itself.
func (w *work) legs() []leg {
	cold, hot := w.Range()[0], w.Range()[1]
	if cold >= assembly-atAssembly || hot <= assembly+atAssembly {
		return []leg{{"", cold, hot}}
	}
	return []leg{{".hot", assembly, hot}, {".cold", assembly, cold}}
}

func (w *work) legText(l leg) string {
	from, _, _ := strings.Cut(w.temperatureText(l.from), " ")
	return from + " to " + w.temperatureText(l.to)
}

func (w *work) temperatureText(c float64) string {
	u := w.unit(units.Temperature)
	s := strconv.FormatFloat(math.Abs(u.FromSI(c+273.15)), 'f', 0, 64)
	if u.FromSI(c+273.15) <= -0.5 {
		s = "−" + s
	}
	return s + " " + u.Symbol()
}

// strainOf is the growth per length of a material over a leg, with the coefficients it
// rests on.
func strainOf(m *props.Material, l leg) (s expected) {
	g := compare.GrowthOf(m)
	if g == nil {
		s.why = lack(m, props.ThermalExpansion, m.Absent(props.ThermalExpansion))
		if m.Has(props.ThermalExpansion) {
			s.why = "no expansion coefficient with a stated range for " + m.Name()
			s.figures = m.Figures(props.ThermalExpansion)
		}
		return s
	}
	s.figures = g.Figures
	lo, mid, hi, err := g.Strain(l.from, l.to)
	if err != nil {
		s.why = err.Error()
		return s
	}
	s.value = interval{lo: min(lo, mid), mid: mid, hi: max(hi, mid), wide: g.Bounded(l.from, l.to)}
	if s.value.wide {
		s.notes = []string{"the mean of " + m.Name() + " is published over another range only: bounds, not a reading"}
	}
	for _, f := range g.Figures {
		s.value.last = max(s.value.last, math.Abs(mid)*fineness(f.Value))
		s.value.wide = s.value.wide || f.Value.IsRange()
	}
	return s
}

// less is the difference of two strains; two that rest on the same figures differ by
// nothing.
func (e expected) less(o expected) interval {
	if len(e.figures) > 0 && slices.Equal(e.figures, o.figures) {
		return interval{last: e.value.last}
	}
	return e.value.minus(o.value)
}

var (
	growthFormula = read("ΔL = L·(ε(T₂) − ε(T₁)), ε(T) = α(20 °C→T)·(T − 20 °C)", srcMeans)
	mateFormula   = memory("ΔL − ΔLₘ = L·(Δε − Δεₘ)", srcFit)
	boreFormula   = memory("Δc = d·(Δε bore − Δε shaft), both at the same temperature; + opens", srcFit)
	heldFormula   = read("σ = E·Δε, held from end to end; tension where it cools, compression where it heats", srcStrength)
)

// temperature is how the part grows over the service range, on its own and
// against its mate, and the stress where it is not free to.
func (w *work) temperature() {
	if w.Range() == nil {
		for _, l := range []Line{
			{ID: "growth", Name: "Growth", Formula: growthFormula},
			{ID: "mate", Name: "Beyond the mate", Formula: mateFormula},
			{ID: "fit", Name: "Clearance", Formula: boreFormula},
			{ID: "held", Name: "Stress if held", Formula: heldFormula},
		} {
			l.Group = Temperature
			l.wait(needRange)
			w.add(l)
		}
		return
	}
	legs := w.legs()
	whole := legs
	if len(legs) > 1 {
		whole = append([]leg{{"", w.Range()[0], w.Range()[1]}}, legs...)
	}
	for _, at := range whole {
		w.growth(at)
	}
	w.against(legs)
	for _, at := range legs {
		w.held(at)
	}
}

func (w *work) growth(at leg) {
	l := Line{Group: Temperature, ID: "growth" + at.id, Name: "Growth, " + w.legText(at), Formula: growthFormula}
	l.sides(w, strainOf(w.base, at), strainOf(w.pin, at), func(strain interval) *Value {
		if l.missing(w.Length, needLength) {
			return strain.in(w.unit(units.Strain))
		}
		return strain.times(ofGiven(*w.Length)).in(w.unit(units.Length))
	})
	w.add(l)
}

// against is how much more, or less, the part grows than its mate over a size.
func (w *work) against(legs []leg) {
	for _, d := range []struct {
		id, name string
		formula  Formula
		over     *units.Quantity
		need     want
		more     bool
	}{
		{"mate", "Beyond the mate, ", mateFormula, w.Length, needLength, true},
		{"bore", "Bore clearance, ", boreFormula, w.Fit, needFit, true},
		{"shaft", "Shaft clearance, ", boreFormula, w.Fit, needFit, false},
	} {
		if d.id != "mate" && w.Part.Role != "" && string(w.Part.Role) != d.id {
			continue
		}
		for _, at := range legs {
			l := Line{Group: Temperature, ID: d.id + at.id, Name: d.name + w.legText(at), Formula: d.formula}
			switch {
			case w.Mate == nil:
				l.wait(needMate)
			case !l.missing(d.over, d.need):
				size := ofGiven(*d.over)
				if !d.more {
					size = size.negative()
				}
				w.difference(&l, at, size)
			}
			w.add(l)
		}
	}
}

// difference puts the growth beyond that of the mate on a line.
func (w *work) difference(l *Line, at leg, size interval) {
	mate := strainOf(w.Mate, at)
	beyond := func(m *props.Material) expected {
		s := strainOf(m, at)
		s.why, s.value = cmp.Or(s.why, mate.why), s.less(mate).times(size)
		return s
	}
	today, swapped := beyond(w.base), beyond(w.pin)
	swapped.notes = append(swapped.notes, mate.notes...)
	l.sides(w, today, swapped, func(v interval) *Value { return v.in(w.unit(units.Length)) })
	l.Figures = append(l.Figures, uses(w.Mate, "ₘ", mate.figures...)...)
}

// held is the stress in a part that cannot grow at all.
func (w *work) held(at leg) {
	l := Line{Group: Temperature, ID: "held" + at.id, Name: "Stress if held, " + w.legText(at), Formula: heldFormula}
	e := w.pair(props.ElasticModulus)
	if w.rest(&l, e) {
		today, swapped := strainOf(w.base, at), strainOf(w.pin, at)
		today.value, swapped.value = today.value.size().times(ofFigure(e.base)), swapped.value.size().times(ofFigure(e.pin))
		swapped.notes = append(swapped.notes, w.givesWay(swapped.value)...)
		l.sides(w, today, swapped, func(v interval) *Value { return v.in(w.unit(units.Stress)) })
		if l.Base != nil {
			l.Ratio = swapped.value.over(today.value).in(units.One)
		}
	}
	w.add(l)
}

// givesWay warns where a held stress comes up to the pin's yield strength, or
// tensile strength where it has no yield: the stress is then not reached.
func (w *work) givesWay(s interval) []string {
	f := w.bench.Figure(w.pin, props.YieldStrength)
	if f == nil {
		f = w.bench.Figure(w.pin, props.TensileStrength)
	}
	if f == nil || unfit(f) != "" {
		return nil
	}
	name := f.Basis.Phrase() + " " + props.InSentence(f.Property.Info().Name) + " of " + ofFigure(f).in(w.unit(units.Stress)).String()
	lo, mid, _ := f.SI()
	switch {
	case s.mid >= mid:
		return []string{"above the " + name + ": the metal gives way first"}
	case s.hi >= lo:
		return []string{"the worst case reaches the " + name}
	}
	return nil
}
