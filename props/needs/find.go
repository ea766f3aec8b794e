package needs

import (
	"cmp"
	"math"
	"slices"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// Result is one material held against every need.
type Result struct {
	Material   *props.Material
	Judgements []Judgement
	// OnlyTypical is true when a strength rests on a typical figure.
	OnlyTypical bool
	// Recalled is true when a figure that decides is from memory alone.
	Recalled bool
	// Stops are the judgements not met, the worst first; empty when all are.
	Stops []*Judgement
	// Short is the greatest shortfall; 0 only when every need is met.
	Short float64
	// Lifts are variants of the same alloy (another temper or process) that
	// meet every need; found for near misses.
	Lifts []*props.Material
}

// Unjudged reports whether nothing stops the material but missing figures: it
// may meet every need or not.
func (r *Result) Unjudged() bool {
	return len(r.Stops) > 0 && !slices.ContainsFunc(r.Stops, func(j *Judgement) bool { return j.Status > Undecided })
}

// JudgeAll holds a material against the needs that are not switched off.
func JudgeAll(m *props.Material, list []Need) Result {
	on, _ := hold(m, list, len(list), nil)
	return result(m, list, on)
}

// hold gives the verdicts on the needs that are on, and how many are not met. It ends
// behind the first that is one more than most.
func hold(m *props.Material, list []Need, most int, into []verdict) (on []verdict, misses int) {
	for i := range list {
		if list[i].Off {
			continue
		}
		v := list[i].verdict(m)
		if into = append(into, v); !v.status.Good() {
			if misses++; misses > most {
				break
			}
		}
	}
	return into, misses
}

// result is the judgements by the verdicts that hold gives.
func result(m *props.Material, list []Need, on []verdict) Result {
	r := Result{Material: m, Judgements: make([]Judgement, 0, len(on))}
	for i := range list {
		if list[i].Off {
			continue
		}
		j := list[i].judge(m, on[len(r.Judgements)])
		r.Judgements = append(r.Judgements, j)
		r.OnlyTypical = r.OnlyTypical || j.Status == OnlyTypical
		r.Recalled = r.Recalled || j.Figure != nil && j.Figure.Known() == props.Memory
	}
	for i := range r.Judgements {
		if !r.Judgements[i].Status.Good() {
			r.Stops = append(r.Stops, &r.Judgements[i])
		}
	}
	slices.SortStableFunc(r.Stops, func(a, b *Judgement) int { return cmp.Compare(b.Shortfall(), a.Shortfall()) })
	if len(r.Stops) > 0 {
		r.Short = r.Stops[0].Shortfall()
	}
	return r
}

// Found is what a search of the catalog gives: the materials that meet every
// need, those on typical figures only behind the others and those decided by a
// figure from memory alone last, and those that one or two needs stop, nearest
// first and at the end those that cannot be judged.
type Found struct {
	Met, Near []Result
	// NearTotal is how many near misses there are, Near being the nearest of
	// them; UnjudgedTotal is how many of these cannot be judged.
	NearTotal, UnjudgedTotal int
	// Remembered meet every need too, but all their figures are from memory and
	// they were not asked for.
	Remembered []*props.Material
}

// MaxStops is how many needs may stop a near miss.
const MaxStops = 2

// Screen returns the materials that meet every need, and those that miss no more
// than MaxStops of them.
func Screen(materials []*props.Material, list []Need) (met, near []*props.Material) {
	var on []verdict
	misses := 0
	for _, m := range materials {
		switch on, misses = hold(m, list, MaxStops, on[:0]); {
		case misses == 0:
			met = append(met, m)
		case misses <= MaxStops:
			near = append(near, m)
		}
	}
	return met, near
}

// Offered takes materials known from memory alone apart from the others.
func Offered(materials []*props.Material) (offered, remembered []*props.Material) {
	for _, m := range materials {
		if m.Remembered() {
			remembered = append(remembered, m)
		} else {
			offered = append(offered, m)
		}
	}
	return offered, remembered
}

// Find screens materials. It returns every material that meets the needs, and
// up to near of those that one or two needs stop. A material without a figure
// for a need does not meet it, and is a near miss behind all that have one; last
// come those that only missing figures stop. With near at 0 near misses are
// neither listed nor counted. A material known from memory alone is offered only
// where remembered asks for it.
func Find(materials []*props.Material, list []Need, near int, remembered bool) Found {
	var f Found
	all := materials
	if !remembered {
		var rest []*props.Material
		materials, rest = Offered(materials)
		f.Remembered, _ = Screen(rest, list)
	}
	var missed, unjudged []*Result
	var on []verdict
	misses := 0
	for _, m := range materials {
		switch on, misses = hold(m, list, MaxStops, on[:0]); {
		case misses == 0:
			f.Met = append(f.Met, result(m, list, on))
		case misses <= MaxStops && near > 0:
			r := result(m, list, on)
			if r.Unjudged() {
				unjudged = append(unjudged, &r)
			} else {
				missed = append(missed, &r)
			}
		}
	}
	slices.SortStableFunc(f.Met, func(a, b Result) int {
		return cmp.Or(order(a.Recalled, b.Recalled), order(a.OnlyTypical, b.OnlyTypical))
	})
	nearest := func(a, b *Result) int {
		return cmp.Or(cmp.Compare(a.Short, b.Short), cmp.Compare(len(a.Stops), len(b.Stops)))
	}
	slices.SortStableFunc(missed, nearest)
	slices.SortStableFunc(unjudged, nearest)
	missed = append(missed, unjudged...)
	f.NearTotal, f.UnjudgedTotal = len(missed), len(unjudged)
	for _, r := range missed[:min(max(near, 0), len(missed))] {
		r.Lifts = lifts(r.Material, all, list, remembered)
		f.Near = append(f.Near, *r)
	}
	return f
}

// order puts false before true.
func order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

func lifts(m *props.Material, all []*props.Material, list []Need, remembered bool) []*props.Material {
	var out []*props.Material
	for _, o := range all {
		if o.Alloy != m.Alloy || o == m || !remembered && o.Remembered() {
			continue
		}
		if r := JudgeAll(o, list); len(r.Stops) == 0 {
			out = append(out, o)
		}
	}
	return out
}

// SortByMargin puts the results with the most room to spare first: the least
// margin over all needs, in percent, decides.
func SortByMargin(list []Result) {
	room := func(r Result) float64 {
		least := inf
		for _, j := range r.Judgements {
			if !math.IsNaN(j.Percent) {
				least = min(least, j.Percent)
			}
		}
		return least
	}
	slices.SortStableFunc(list, func(a, b Result) int { return cmp.Compare(room(b), room(a)) })
}

// SortByProperty sorts by the figure a need on the property was judged on, else
// the one the bench shows, in the better direction of the property's sense;
// materials without a figure come last.
func SortByProperty(list []Result, b *compare.Bench, p props.PropertyID) {
	sense, target := b.SenseOf(p)
	value := func(r Result) float64 {
		f := b.Figure(r.Material, p)
		for _, j := range r.Judgements {
			if j.Need.Kind == OfProperty && j.Need.Property == p && j.Figure != nil {
				f = j.Figure
			}
		}
		if f == nil {
			return inf
		}
		_, mid, _ := f.SI()
		switch sense {
		case props.More:
			return -mid
		case props.Near:
			return math.Abs(mid - target)
		}
		return mid
	}
	slices.SortStableFunc(list, func(x, y Result) int { return cmp.Compare(value(x), value(y)) })
}

// likenessRows are the properties that make two metals alike in use.
var likenessRows = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.ElasticModulus, props.Density,
	props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity}

// Unlikeness is the mean distance of a material from the baseline over the
// properties that may be compared, as the logarithm of their ratio; +Inf when
// fewer than three may.
func Unlikeness(b *compare.Bench, m, base *props.Material) float64 {
	sum, n := 0.0, 0
	for _, p := range likenessRows {
		pair := b.Pair(m, base, p)
		if !pair.Comparable() {
			continue
		}
		_, x, _ := pair.Figure.SI()
		_, y, _ := pair.Against.SI()
		sum += math.Abs(math.Log(x / y))
		n++
	}
	if n < 3 {
		return inf
	}
	return sum / float64(n)
}

// SortByLikeness puts the materials most like the baseline first.
func SortByLikeness(list []Result, b *compare.Bench, base *props.Material) {
	unlike := map[*props.Material]float64{}
	for _, r := range list {
		unlike[r.Material] = Unlikeness(b, r.Material, base)
	}
	slices.SortStableFunc(list, func(x, y Result) int { return cmp.Compare(unlike[x.Material], unlike[y.Material]) })
}

// Front keeps the results that no other beats on both properties: for each
// kept one, whatever is better on one of the two is worse on the other.
// Results without a figure for either are left out.
func Front(list []Result, b *compare.Bench, p, q props.PropertyID) []Result {
	type point struct{ x, y float64 }
	score := func(m *props.Material, p props.PropertyID) float64 {
		f := b.Figure(m, p)
		if f == nil {
			return math.NaN()
		}
		_, mid, _ := f.SI()
		switch sense, target := b.SenseOf(p); sense {
		case props.Less:
			return -mid
		case props.Near:
			return -math.Abs(mid - target)
		}
		return mid
	}
	points := make([]point, len(list))
	for i, r := range list {
		points[i] = point{score(r.Material, p), score(r.Material, q)}
	}
	var kept []Result
	for i, a := range points {
		if math.IsNaN(a.x) || math.IsNaN(a.y) {
			continue
		}
		beaten := false
		for _, c := range points {
			if c.x >= a.x && c.y >= a.y && (c.x > a.x || c.y > a.y) {
				beaten = true
				break
			}
		}
		if !beaten {
			kept = append(kept, list[i])
		}
	}
	return kept
}

// BetterThan makes the needs "beats or equals this baseline" on the given
// properties: a bound at the figure that the bench shows of the baseline, in the
// direction of each property's sense, judged by comparison with it as the bench
// does. Properties without a figure or a direction are left out.
func BetterThan(b *compare.Bench, base *props.Material, list []props.PropertyID) []Need {
	var out []Need
	for _, p := range list {
		if n, ok := directed(b, p); ok && n.setAt(b.Figure(base, p), b.UnitOf(p)) {
			n.Than = &Than{base, b.Question}
			out = append(out, n)
		}
	}
	return out
}

// AsGoodAs is a limit at the figure on which a need of a metal is judged, a specified
// minimum of its strength; ok is false where there is none, or no direction.
func AsGoodAs(b *compare.Bench, m *props.Material, p props.PropertyID) (n Need, ok bool) {
	if n, ok = directed(b, p); ok {
		n.Limit.Unit = p.Info().Units[units.US]
		ok = n.setAt(chosen(m, &n), b.UnitOf(p))
	}
	return n, ok
}

// directed is a need in the direction of a property's sense, without its limit.
func directed(b *compare.Bench, p props.PropertyID) (n Need, ok bool) {
	n = Need{Kind: OfProperty, Property: p, Op: AtLeast}
	sense, _ := b.SenseOf(p)
	if sense == props.Less {
		n.Op = AtMost
	}
	return n, sense == props.More || sense == props.Less
}

// setAt sets the limit to the better end of a figure, in a unit.
func (n *Need) setAt(f *props.Figure, u units.Unit) bool {
	if f == nil {
		return false
	}
	n.Limit = f.Value.InOrOwn(u)
	if (n.Op == AtMost) != n.Limit.Unit.Reciprocal() {
		n.Limit.Lo = n.Limit.Hi
	} else {
		n.Limit.Hi = n.Limit.Lo
	}
	if n.Property.Info().Dimension == units.Rating || n.Limit.Unit.Reciprocal() {
		n.Op = n.Op.Turned()
	}
	n.Text = n.String()
	return true
}
