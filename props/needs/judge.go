package needs

import (
	"fmt"
	"math"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// Status is how a material stands to one need.
type Status uint8

// The states of a need. OnlyTypical: a strength or elongation that only
// a typical figure meets, because no specified minimum is on file. Partly: a published range
// meets the limit at one end only, so the worst case does not.
const (
	NoFigure Status = iota
	NotMet
	Partly
	OnlyTypical
	Met
)

var statusNames = [...]string{"no figure", "not met", "not met in the worst case", "met on typical figures only", "met"}

func (s Status) String() string { return statusNames[s] }

// Good reports whether the need is met, be it on typical figures only.
func (s Status) Good() bool { return s >= OnlyTypical }

// Judgement is how a material stands to one need, with the figure it rests on.
type Judgement struct {
	Need   *Need
	Status Status
	Figure *props.Figure // nil for needs on process, family or temper
	// Worst and Best are the margins at the two ends of the figure in the unit
	// of the need: positive inside the limit, negative outside. NaN when there
	// is no figure.
	Worst, Best float64
	// Percent is the worst margin relative to the limit.
	Percent float64
	// Rounding is true when the limit lies within the rounding of a single
	// figure, so that the verdict stands on the figure as printed only.
	Rounding bool
	Note     string // what else there is to know, "" for nothing
}

// Judge holds a material against one need. A strength or an elongation is judged on
// specified minimums first; other properties on the figure the bench shows. A published
// range must meet the limit at its worse end. A single figure is taken as
// printed; where its rounding reaches over the limit the judgement says so.
func Judge(m *props.Material, n *Need) Judgement {
	j := Judgement{Need: n, Worst: math.NaN(), Best: math.NaN(), Percent: math.NaN()}
	if n.Kind != OfProperty {
		j.Status = NotMet
		if n.admits(m) {
			j.Status = Met
		}
		return j
	}
	f := chosen(m, n)
	if f == nil {
		j.Note = m.Absent(n.Property)
		if j.Note == "" {
			j.Note = compare.NoFigureOnFile
		}
		return j
	}
	j.Figure = f
	lo, hi := ends(f)
	j.Status = n.status(lo, hi, f.Basis)
	j.margins(lo, hi)
	if guarded(n.Property) && f.Basis == props.Minimum && !j.Status.Good() {
		for _, g := range m.Figures(n.Property) {
			if a, z := ends(g); g.Basis == props.Typical && usable(g, n.Limit.Unit.Dimension()) && n.status(a, z, g.Basis).Good() {
				j.Note = fmt.Sprintf("typical %s would meet it", n.shown(g))
				break
			}
		}
	}
	if f.Source.Trade() {
		j.Note = "common practice, no standard or handbook behind the figure"
	}
	if j.Rounding = n.withinRounding(f); j.Rounding && j.Note != "" {
		j.Note = WithinRounding + "; " + j.Note
	} else if j.Rounding {
		j.Note = WithinRounding
	}
	return j
}

// usable reports whether a need in this dimension can be judged on a figure: it
// holds at room temperature and in the same kind of unit. A Brinell limit
// without a load is held against any load.
func usable(f *props.Figure, d units.Dimension) bool {
	fd := f.Value.Unit.Dimension()
	return (fd == d || d == units.HBUnstated && fd.Brinell()) && f.Basis != props.Maximum && f.Cond.RoomTemperature()
}

// guarded reports whether a need on the property is judged on specified
// minimums first: strengths, and what standards specify beside them, such as
// elongation.
func guarded(p props.PropertyID) bool { return p.Info().Strength || p.Info().Specified }

// chosen is the figure that a need on a material is judged on; nil when there
// is none.
func chosen(m *props.Material, n *Need) *props.Figure {
	order := &compare.TypicalOrder
	if guarded(n.Property) {
		order = &compare.MinimumOrder
	}
	var best *props.Figure
	d := n.Limit.Unit.Dimension()
	for f := range m.All() {
		if f.Property == n.Property && usable(f, d) && (best == nil || order.Of(f, false) < order.Of(best, false)) {
			best = f
		}
	}
	return best
}

// ends are the printed values in SI, without the rounding of a single figure:
// 20 ksi meets a need of 20 ksi.
func ends(f *props.Figure) (lo, hi float64) {
	a, z := f.Value.Unit.ToSI(f.Value.Lo), f.Value.Unit.ToSI(f.Value.Hi)
	return min(a, z), max(a, z)
}

// slack takes up the rounding of a conversion, never that of a figure.
const slack = 1e-9

func (n *Need) status(lo, hi float64, b props.Basis) Status {
	switch n.contains(lo, hi) {
	case 0:
		return NotMet
	case 1:
		return Partly
	}
	if guarded(n.Property) && b != props.Minimum && b != props.Design {
		return OnlyTypical
	}
	return Met
}

// contains reports whether the interval lies outside the limits (0), partly
// inside (1) or inside (2).
func (n *Need) contains(lo, hi float64) int {
	a, z, openA, openZ := n.bounds()
	in := func(v float64) bool {
		tolerance := slack * math.Abs(v)
		if v < a-tolerance || v > z+tolerance {
			return false
		}
		return !(openA && v <= a+tolerance) && !(openZ && v >= z-tolerance)
	}
	switch l, h := in(lo), in(hi); {
	case l && h:
		return 2
	case l || h || lo < a && hi > z:
		return 1
	}
	return 0
}

// margins sets how far inside the limits the worse and the better end lie.
func (j *Judgement) margins(lo, hi float64) {
	a, z, _, _ := j.Need.bounds()
	inside := func(v float64) float64 { return min(v-a, z-v) }
	worst, best := inside(lo), inside(hi)
	if worst > best {
		worst, best = best, worst
	}
	limit := a
	if math.IsInf(a, 0) || !math.IsInf(z, 0) && z-lo < lo-a {
		limit = z
	}
	j.Percent = percent(worst, limit, j.Need.Limit.Unit)
	j.Worst, j.Best = inUnit(worst, limit, j.Need.Limit.Unit), inUnit(best, limit, j.Need.Limit.Unit)
}

// inUnit turns a margin in SI into the unit of the limit; reciprocal units
// need the limit it counts from.
func inUnit(margin, limit float64, u units.Unit) float64 {
	if u.Reciprocal() {
		return u.FromSI(limit) - u.FromSI(limit+margin)
	}
	return u.FromSI(limit+margin) - u.FromSI(limit)
}

func percent(margin, limit float64, u units.Unit) float64 {
	if limit == 0 || math.IsInf(limit, 0) || u.Dimension() == units.Temperature || u.Dimension() == units.Rating {
		return math.NaN()
	}
	return 100 * margin / limit
}

// Shortfall is how far a judgement lies outside its limit, as a fraction of
// it: 0 when the need is met, 1 for a need on process, family or temper, +Inf
// without a figure.
func (j *Judgement) Shortfall() float64 {
	switch {
	case j.Status.Good():
		return 0
	case j.Status == NoFigure:
		return inf
	case j.Need.Kind != OfProperty:
		return 1
	case math.IsNaN(j.Percent):
		return math.Abs(j.Worst) // ratings and temperatures, in steps or degrees
	}
	// A bound that is exactly reached but excluded leaves nothing short; it is
	// not met all the same.
	return max(-j.Percent/100, slack)
}
