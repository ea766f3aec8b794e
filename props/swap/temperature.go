package swap

import (
	"math"
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

// strain is the growth per length of a material over a leg, and the
// coefficients it rests on; why says that there is none.
type strain struct {
	interval
	of      *props.Material
	figures []*props.Figure
	why     string
	bounded bool // it rests on a bound besides the coefficients
}

func strainOf(m *props.Material, l leg) strain {
	s := strain{of: m}
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
	fine := 0.0
	s.bounded = g.Bounded(l.from, l.to)
	s.wide = s.bounded
	for _, f := range g.Figures {
		fine = max(fine, fineness(f.Value))
		s.wide = s.wide || f.Value.IsRange()
	}
	s.interval = interval{min(lo, mid), mid, max(hi, mid), math.Abs(mid) * fine, s.wide}
	return s
}

// less is the difference of two strains; two that rest on the same figures
// differ by nothing.
func (s strain) less(o strain) interval {
	if len(s.figures) > 0 && len(s.figures) == len(o.figures) {
		same := true
		for i := range s.figures {
			same = same && s.figures[i] == o.figures[i]
		}
		if same {
			return interval{last: s.last}
		}
	}
	return s.minus(o.interval)
}

// addStrains puts the coefficients of strains on a line, and a word where one is
// bounded rather than published.
func (l *Line) addStrains(symbols []string, strains ...strain) {
	for i, s := range strains {
		l.Figures = append(l.Figures, s.used(symbols[i])...)
		if s.bounded {
			l.Notes = append(l.Notes, "the mean of "+s.of.Name()+" is published over another range only: bounds, not a reading")
		}
	}
}

func (s strain) used(symbol string) []Used {
	var out []Used
	for _, f := range s.figures {
		out = append(out, Used{symbol, s.of, f})
	}
	return out
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
	base, pin := strainOf(w.base, at), strainOf(w.pin, at)
	l.addStrains([]string{"α₁", "α₂"}, base, pin)
	amount := func(s strain) *Value {
		switch {
		case s.why != "":
			return nil
		case w.Length == nil:
			return s.in(w.unit(units.Strain))
		}
		return s.times(ofGiven(*w.Length)).in(w.unit(units.Length))
	}
	l.Base, l.Value, l.Reason = amount(base), amount(pin), pin.why
	if l.Value != nil {
		if w.Length == nil {
			l.wait(needLength)
		}
		if base.why != "" {
			l.Notes = append(l.Notes, base.why)
		}
	} else {
		l.Base = nil
	}
	w.add(l)
}

// against adds the lines that need a mate.
func (w *work) against(legs []leg) {
	for _, at := range legs {
		l := Line{Group: Temperature, ID: "mate" + at.id, Name: "Beyond the mate, " + w.legText(at), Formula: mateFormula}
		w.difference(&l, at, w.Length, needLength, 1)
	}
	for _, role := range []struct {
		id, name string
		sign     float64
	}{{"bore", "Bore clearance, ", 1}, {"shaft", "Shaft clearance, ", -1}} {
		for _, at := range legs {
			if w.Part.Role != "" && string(w.Part.Role) != role.id {
				continue
			}
			l := Line{Group: Temperature, ID: role.id + at.id, Name: role.name + w.legText(at), Formula: boreFormula}
			w.difference(&l, at, w.Fit, needFit, role.sign)
		}
	}
}

// difference works out how much more the part grows than its mate over a size.
func (w *work) difference(l *Line, at leg, over *units.Quantity, need want, sign float64) {
	switch {
	case w.Mate == nil:
		l.wait(needMate)
	case over == nil:
		l.wait(need)
	default:
		base, pin, mate := strainOf(w.base, at), strainOf(w.pin, at), strainOf(w.Mate, at)
		l.addStrains([]string{"α₁", "α₂", "αₘ"}, base, pin, mate)
		amount := func(s strain) *Value {
			d := s.less(mate).times(ofGiven(*over))
			if sign < 0 {
				d = d.negative()
			}
			return d.in(w.unit(units.Length))
		}
		switch {
		case pin.why != "":
			l.Reason = pin.why
		case mate.why != "":
			l.Reason = mate.why
		default:
			l.Value = amount(pin)
			if base.why == "" {
				l.Base = amount(base)
			} else {
				l.Notes = append(l.Notes, base.why)
			}
		}
	}
	w.add(*l)
}

// held is the stress in a part that cannot grow at all.
func (w *work) held(at leg) {
	l := Line{Group: Temperature, ID: "held" + at.id, Name: "Stress if held, " + w.legText(at), Formula: heldFormula}
	e := w.pair(props.ElasticModulus)
	base, pin := strainOf(w.base, at), strainOf(w.pin, at)
	if w.rest(&l, e) {
		l.addStrains([]string{"α₁", "α₂"}, base, pin)
		if l.Reason = pin.why; l.Reason == "" {
			s := pin.size().times(ofFigure(e.pin))
			l.Value = s.in(w.unit(units.Stress))
			l.Notes = append(l.Notes, w.givesWay(s)...)
			if base.why == "" {
				b := base.size().times(ofFigure(e.base))
				l.Base = b.in(w.unit(units.Stress))
				l.Ratio = s.over(b).in(units.One)
			} else {
				l.Notes = append(l.Notes, base.why)
			}
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
