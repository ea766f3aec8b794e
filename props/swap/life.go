package swap

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

// inspections are what 14 CFR 25.621 asks of a casting at a casting factor, the
// highest first: of one whose failure can hurt someone, and of any other.
var inspections = []struct {
	least           float64
	critical, other string
}{
	{2, "as at 1.5", "each casting looked at all over"},
	{1.5, "each casting all over by eye and penetrant, the stressed inside by X-ray; one casting tested to the ultimate load × 1.5", "each casting all over by eye and penetrant"},
	{1.25, "each casting all over by eye and penetrant, the stressed inside by X-ray; three castings tested to the ultimate load × 1.25", "each casting all over by eye and penetrant, the stressed inside by X-ray"},
	{1, "a qualified and watched process whose scatter is that of wrought metal, each casting inspected outside and inside, one tested", "bars cut from castings, each casting inspected outside and inside, three tested"},
}

// reserve is the strength over the stress with the factors the part asks for: in
// the wall where one may say what to expect there, else the specified minimum.
func (w *work) reserve() {
	var notes []string
	var under interval
	if w.Casting != nil {
		c := ofGiven(*w.Casting)
		for _, i := range inspections {
			if c.lo >= i.least {
				notes = append(notes, fmt.Sprintf("casting factor %s by 14 CFR 25.621, from memory: failure critical, %s; otherwise, %s", w.Casting, i.critical, i.other))
				break
			}
		}
	}
	factored := w.Safety != nil || w.Casting != nil
	for _, g := range givings {
		if !factored && (w.Stress == nil || !w.castKnown(g)) {
			continue
		}
		l := Line{Group: StrengthGroup, ID: "reserve." + g.id, Name: "Reserve " + g.name, Notes: slices.Clone(notes),
			Formula: memory("S/(σ·n·c), n safety factor, c casting factor; at 1 nothing is left", srcFactor)}
		today, swapped := w.least(w.base, g), w.least(w.pin, g)
		if w.Stress == nil {
			swapped.value, swapped.need = interval{}, needStress
		} else {
			under = ofGiven(*w.Stress).times(w.factor())
		}
		l.beside(w, today, swapped, func(v interval) *Value { return v.over(under).in(units.One) })
		if l.Value != nil {
			l.Notes = append(l.Notes, w.notAtHeat()...)
		}
		w.add(l)
	}
}

// factor is the product of the factors on the strength that the part asks for.
func (w *work) factor() interval {
	f := exact(1)
	for _, q := range []*units.Quantity{w.Safety, w.Casting} {
		if q != nil {
			f = f.times(ofGiven(*q))
		}
	}
	return f
}

// least is the strength to count on: in the wall, else the specified minimum.
func (w *work) least(m *props.Material, g giving) expected {
	p := g.strength(m)
	if w.Wall != nil {
		if e := w.inCasting(m, p); e.why == "" {
			if w.Casting != nil && m.Process != props.Wrought {
				e.notes = append(e.notes, "the casting factor stands on top of the strength in the wall; settle which of the two is wanted")
			}
			return e
		}
	}
	e := w.specified(m, p, props.Minimum)
	if w.Wall != nil && e.why == "" {
		e.notes = []string{"the strength of " + m.Name() + " is that of the test bar, not of the wall"}
	}
	return e
}

// specified is a strength on one basis.
func (w *work) specified(m *props.Material, p props.PropertyID, basis props.Basis) expected {
	f := w.onBasis(m, p, basis)
	if f == nil {
		return expected{why: w.lacksBasis(m, p, basis)}
	}
	return expected{value: ofFigure(f), figures: []*props.Figure{f}, why: unfit(f)}
}

// surfaceLaw gives a and b of the surface factor of the endurance limit of steel,
// a·Su^b, Su in MPa, which is never above 1; a is 0 where no surface is given. Later
// editions of the textbook that the sheets follow fit other numbers to the same tests.
func surfaceLaw(s part.Surface) (a, b float64) {
	switch s {
	case part.Ground:
		return 1.58, -0.085
	case part.MachinedSurface:
		return 4.51, -0.265
	case part.HotRolled:
		return 57.7, -0.718
	case part.Forged:
		return 272, -0.995
	}
	return 0, 0
}

// reliabilityFactor is that of the endurance limit for a standard deviation of 8 %; 0
// where none is asked for.
func reliabilityFactor(r part.Reliability) float64 {
	switch r {
	case "90":
		return 0.897
	case "95":
		return 0.868
	case "99":
		return 0.814
	case "99.9":
		return 0.753
	case "99.99":
		return 0.702
	}
	return 0
}

// limitCycles is the life in cycles at which iron and steel have reached their
// endurance limit.
const limitCycles = 1e6

// fatigue is how far the cycle of stress is from the Goodman line, once cycles, a
// mean stress, a surface or a reliability is given.
func (w *work) fatigue() {
	if w.Cycles == nil && w.Mean == nil && cmp.Or(w.Part.Surface, part.Specimen) == part.Specimen && cmp.Or(w.Part.Reliability, "50") == "50" {
		return
	}
	l := Line{Group: StrengthGroup, ID: "fatigue.reserve", Name: "Reserve in fatigue, Goodman",
		Formula: read("1/n = σa/(ka·ke·Se) + σm/Su, σa = σ − σm; ka surface, ke reliability", srcFatigue)}
	switch {
	case l.missing(w.Stress, needStress), l.missing(w.Cycles, needCycles):
	case w.Mean != nil && ofGiven(*w.Mean).hi >= ofGiven(*w.Stress).lo:
		l.Reason = "the mean stress must lie below the stress, which is the largest of the cycle"
	default:
		l.beside(w, w.goodman(w.base), w.goodman(w.pin), func(v interval) *Value { return v.in(units.One) })
		if w.Mean == nil {
			l.Notes = append(l.Notes, "no mean stress given: the stress swings from tension to as much compression")
		}
		l.Notes = append(l.Notes, "of a smooth bar: notches, porosity and size take more off")
	}
	w.add(l)
}

// goodman is the reserve of one metal.
func (w *work) goodman(m *props.Material) expected {
	e := w.endurance(m)
	if e.why != "" {
		return e
	}
	stress, mean := ofGiven(*w.Stress), exact(0)
	if w.Mean != nil {
		mean = ofGiven(*w.Mean)
	}
	share := stress.minus(mean)
	a, b := surfaceLaw(w.Part.Surface)
	rated := a > 0
	var tensile *props.Figure
	for _, basis := range []props.Basis{props.Minimum, props.Typical, props.Design} {
		tensile = cmp.Or(tensile, w.onBasis(m, props.TensileStrength, basis))
	}
	if (rated || w.Mean != nil) && tensile == nil {
		return expected{why: w.lacksBasis(m, props.TensileStrength, props.Minimum)}
	}
	if tensile != nil && (rated || w.Mean != nil) {
		e.figures = append(e.figures, tensile)
	}
	if rated && m.Alloy.Family.Group == "steel" {
		su := ofFigure(tensile)
		e.value = e.value.times(surfaceFactor(su, a, b))
	} else if rated {
		e.notes = append(e.notes, "the surface factor is published for steel; it is not applied to "+m.Name())
	}
	if ke := reliabilityFactor(w.Part.Reliability); ke > 0 {
		e.value = e.value.times(exact(ke))
		e.notes = append(e.notes, "reliability for a standard deviation of 8 % as of wrought steel; castings scatter more")
	}
	used := share.over(e.value)
	if w.Mean != nil {
		used = used.plus(mean.over(ofFigure(tensile))).with(used)
	}
	e.value = exact(1).over(used)
	return e
}

func surfaceFactor(su interval, a, b float64) interval {
	return follows(func(side int) float64 { return min(1, a*math.Pow(su.at(-side)/1e6, b)) }, su)
}

// endurance is the fatigue strength that holds for the life asked: found at so
// many cycles or more or, of iron and steel, at their endurance limit. Other metals
// have none, so a figure at fewer cycles or at a number not stated does not do. Its
// branches are the reasons why a figure does not do.
func (w *work) endurance(m *props.Material) expected {
	n := ofGiven(*w.Cycles).hi
	ferrous := m.Alloy.Family.Base == "Fe"
	var best *props.Figure
	var more string
	for _, f := range m.Figures(props.FatigueStrength) {
		if f.Basis != props.Typical || !f.Cond.RoomTemperature() || unfit(f) != "" {
			continue
		}
		more = "no fatigue strength at " + props.CyclesText(n) + " cycles on file for " + m.Name()
		holds := f.Cond.Cycles >= n || ferrous && (f.Cond.Cycles == 0 || f.Cond.Cycles >= limitCycles)
		if holds && (best == nil || nearer(f, best, n)) {
			best = f
		}
	}
	switch {
	case best != nil:
	case more == "":
		return expected{why: lack(m, props.FatigueStrength, m.Absent(props.FatigueStrength))}
	case !ferrous:
		return expected{why: more + "; it has no endurance limit, so one at fewer cycles, or at a number not stated, does not do"}
	default:
		return expected{why: more}
	}
	e := expected{value: ofFigure(best), figures: []*props.Figure{best}}
	if best.Cond.Cycles < n {
		e.notes = []string{"the fatigue strength of " + m.Name() + " is taken as its endurance limit"}
	}
	return e
}

// nearer reports whether f tells the strength at n cycles better than g: found at
// fewer cycles of those that are enough, else the lower.
func nearer(f, g *props.Figure, n float64) bool {
	if enough := f.Cond.Cycles >= n; enough != (g.Cond.Cycles >= n) {
		return enough
	} else if enough && f.Cond.Cycles != g.Cond.Cycles {
		return f.Cond.Cycles < g.Cond.Cycles
	}
	return ofFigure(f).mid < ofFigure(g).mid
}
