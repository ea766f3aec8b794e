package needs

import (
	"cmp"
	"fmt"
	"math"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// Status is how a material stands to one need.
type Status uint8

// The states of a need. Undecided: figures are on file, but under conditions that
// leave it open. OnlyTypical: a strength or elongation that only a typical figure
// meets, because no specified limit is on file. Partly: a published range meets
// the limit at one end only, so the worst case does not.
const (
	NoFigure Status = iota
	Undecided
	NotMet
	Partly
	OnlyTypical
	Met
)

var statusNames = [...]string{"no figure", "undecided", "not met", "not met in the worst case", "met on typical figures only", "met"}

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
// the limits that its standard specifies first; other properties on the figure the
// bench shows. A published range must meet the limit at its worse end, and so must
// what is typical where the limit has an upper end. A single figure is taken as
// printed; where its rounding reaches over the limit the judgement says so. A
// limit that states its conditions is held against figures under these, or what is
// certain under them; figures under several conditions that disagree leave a limit
// without conditions undecided.
func Judge(m *props.Material, n *Need) Judgement {
	return n.judge(m, n.verdict(m))
}

// judge adds to a verdict how clear it is and what there is to know.
func (n *Need) judge(m *props.Material, v verdict) Judgement {
	j := Judgement{Need: n, Worst: math.NaN(), Best: math.NaN(), Percent: math.NaN()}
	j.Status, j.Figure, j.Note = v.status, v.figure, v.note
	if j.Figure == nil {
		return j
	}
	if v.plain {
		j.margins(v.lo, v.hi)
	}
	j.addNote(n.otherBasis(m, &j))
	if j.Figure.Source.Trade() {
		j.addNote("common practice, no standard or handbook behind the figure")
	}
	if j.Rounding = v.plain && n.withinRounding(j.Figure); j.Rounding {
		j.Note = join(WithinRounding, j.Note)
	}
	return j
}

func (j *Judgement) addNote(s string) { j.Note = join(j.Note, s) }

func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// verdict is what decides of a judgement.
type verdict struct {
	status Status
	figure *props.Figure
	note   string
	lo, hi float64 // SI, what is held against the limit
	plain  bool    // lo and hi are the figure itself, so that it has a margin
}

// verdict answers the need: by kind of metal, by comparison with another one, or
// by figures, a branch each; figures that disagree decide nothing.
func (n *Need) verdict(m *props.Material) verdict {
	switch {
	case n.Kind != OfProperty && n.Admits(m):
		return verdict{status: Met}
	case n.Kind != OfProperty:
		return verdict{status: NotMet}
	case n.Than != nil:
		return n.against(m)
	}
	f := chosen(m, n)
	if f == nil {
		note := m.Absent(n.Property)
		if note == "" {
			note = compare.NoFigureOnFile
		}
		return verdict{note: note}
	}
	v := n.under(m, f)
	if !v.plain || n.Cond != (props.Conditions{}) {
		return v
	}
	for g := range m.Of(n.Property) {
		if g == f || g.Basis != f.Basis || !usable(g, n) || g.Source.Trade() && !f.Source.Trade() ||
			g.Cond.Class != f.Cond.Class || g.Cond.Section != f.Cond.Section || !compare.Refuses(f, g) {
			continue
		}
		if other := n.under(m, g); other.status.Good() != v.status.Good() {
			v.status, v.plain = Undecided, false
			v.note = fmt.Sprintf("%s and %s do not agree on it: state the condition of the test", figureWords(f), figureWords(g))
			return v
		}
	}
	return v
}

func figureWords(f *props.Figure) string {
	if c := f.Cond.String(); c != "" {
		return f.Value.String() + " (" + c + ")"
	}
	return f.Value.String()
}

// under holds one figure against the limit, brought to the limit's conditions
// where these are stated.
func (n *Need) under(m *props.Material, f *props.Figure) verdict {
	v := verdict{figure: f, plain: true}
	v.lo, v.hi = ends(f)
	least, most := 1.0, 1.0
	var why compare.Reason
	if n.Cond != (props.Conditions{}) || f.Value.Unit != n.Limit.Unit {
		var ok bool
		if least, most, why, ok = compare.Under(m, f, n.conditions()); !ok {
			v.status, v.plain, v.note = Undecided, false, why.String()
			return v
		}
	}
	if least != 1 || most != 1 {
		v.lo, v.hi, v.plain, v.note = v.lo*least, v.hi*most, false, why.String()+"; certain all the same"
	}
	if top := n.top(m, f); top != nil {
		_, hi := ends(top)
		if v.hi = max(v.hi, hi*most); v.plain && n.contains(v.lo, v.hi) < n.contains(ends(f)) {
			v.note = fmt.Sprintf("%s %s is above it", top.Basis.Phrase(), n.shown(top))
		}
	}
	v.status = n.status(v.lo, v.hi, f.Basis)
	if !v.plain && v.status == Partly {
		v.status, v.note = Undecided, why.String()
	}
	return v
}

// conditions are those that the limit states; of Brinell the unit says the load.
func (n *Need) conditions() *props.Conditions {
	c := n.Cond
	if n.Limit.Unit.Dimension().Brinell() {
		if load, ball, ok := n.Limit.Unit.BrinellLoad(); ok {
			c.Load, c.Ball = load, ball
		}
	}
	return &c
}

// top is the figure that an upper limit is held against besides a specified
// minimum: the specified maximum, else what is typical; nil where a lower limit
// is all there is.
func (n *Need) top(m *props.Material, f *props.Figure) *props.Figure {
	if _, hi, _, _ := n.bounds(); f.Basis != props.Minimum || math.IsInf(hi, 1) {
		return nil
	}
	var best *props.Figure
	order := compare.Order{props.Maximum: 0, props.Typical: 1, props.House: 2, props.Estimated: 3, props.Design: 3, props.Minimum: 3}
	for g := range m.Of(n.Property) {
		if order[g.Basis] < 3 && usable(g, n) && g.Cond.Class == f.Cond.Class && g.Cond.Section == f.Cond.Section && (best == nil || order.Of(g, false) < order.Of(best, false)) {
			best = g
		}
	}
	return best
}

// against is the answer by comparison: the bench's own verdict.
func (n *Need) against(m *props.Material) verdict {
	if m == n.Than.Material {
		v := verdict{status: Met, figure: n.Than.Question.Figure(m, n.Property), plain: true}
		v.lo, v.hi = ends(v.figure)
		return v
	}
	pair := n.Than.Question.Pair(m, n.Than.Material, n.Property)
	v := verdict{figure: pair.Figure, note: pair.Why()}
	switch pair.Verdict {
	case compare.Beats, compare.Level:
		if v.status = Met; guarded(n.Property) && pair.Figure.Basis != props.Minimum && pair.Figure.Basis != props.Design {
			v.status = OnlyTypical
		}
	case compare.Overlaps:
		v.status = Partly
	case compare.Misses:
		v.status = NotMet
	case compare.Unlike:
		v.status = Undecided
	default:
		v.note = cmp.Or(pair.Absent, compare.NoFigureOnFile)
	}
	if v.figure != nil && !pair.Apart {
		v.lo, v.hi = ends(v.figure)
		v.plain = v.figure.Value.Unit.Dimension() == n.Limit.Unit.Dimension()
	}
	if f := pair.Against; v.plain && f != nil && !n.isAt(f) {
		v.plain, v.note = false, join(fmt.Sprintf("compared with %s, %s", n.Than.Material.Name(), figureWords(f)+" "+f.Basis.Phrase()), v.note)
	}
	return v
}

// isAt reports whether the limit is an end of a figure.
func (n *Need) isAt(f *props.Figure) bool {
	lo, hi := ends(f)
	at := n.Limit.Unit.ToSI(n.Limit.Lo)
	return math.Abs(at-lo) <= slack*math.Abs(lo) || math.Abs(at-hi) <= slack*math.Abs(hi)
}

// otherBasis says where the minimum decides though a typical figure would meet
// the limit.
func (n *Need) otherBasis(m *props.Material, j *Judgement) string {
	if !guarded(n.Property) || j.Figure.Basis != props.Minimum || j.Status != NotMet && j.Status != Partly || n.Op == AtMost || n.Op == LessThan || n.Op == Between {
		return ""
	}
	for _, g := range m.Figures(n.Property) {
		if a, z := ends(g); g.Basis == props.Typical && usable(g, n) && n.status(a, z, g.Basis).Good() {
			return fmt.Sprintf("typical %s would meet it", n.shown(g))
		}
	}
	return ""
}

// usable reports whether a need can be judged on a figure: it holds at room
// temperature and in the same kind of unit; Brinell numbers are brought from load
// to load by what is certain. A specified maximum counts for an upper limit only.
func usable(f *props.Figure, n *Need) bool {
	have, want := f.Value.Unit.Dimension(), n.Limit.Unit.Dimension()
	_, hi, _, _ := n.bounds()
	return (have == want || have.Brinell() && want.Brinell()) && (f.Basis != props.Maximum || !math.IsInf(hi, 1)) && f.Cond.RoomTemperature()
}

// guarded reports whether a need on the property is judged on specified
// minimums first: strengths, and what standards specify beside them, such as
// elongation.
func guarded(p props.PropertyID) bool { return p.Info().Strength || p.Info().Specified }

// maximumOrder is that of a need with an upper limit alone on what standards
// specify.
var maximumOrder = compare.Order{props.Maximum: 0, props.Typical: 1, props.House: 2, props.Estimated: 3, props.Design: 4, props.Minimum: 5}

// chosen is the figure that a need on a material is judged on; nil when there
// is none.
func chosen(m *props.Material, n *Need) *props.Figure {
	order := &compare.TypicalOrder
	if guarded(n.Property) {
		order = &compare.MinimumOrder
		if n.Op == AtMost || n.Op == LessThan {
			order = &maximumOrder
		}
	}
	var best *props.Figure
	for f := range m.Of(n.Property) {
		if usable(f, n) && (best == nil || order.Of(f, false) < order.Of(best, false)) {
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
	if guarded(n.Property) && b != props.Minimum && b != props.Maximum && b != props.Design {
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
	case j.Status <= Undecided:
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
