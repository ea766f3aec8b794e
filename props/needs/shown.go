package needs

import (
	"math"

	"alongside/props"
	"alongside/units"
)

// WithinRounding is the note of a judgement whose Rounding is true.
const WithinRounding = "the limit lies within the figure's rounding"

// Shown is the figure of a judgement in the unit of its need, or in its own
// where that is of another kind (a hardness with its load). It has the digits
// of the figure, and more where rounding to these would contradict the verdict:
// 0.101 lb/in³ under 2.8 g/cm³ is 2.796, not 2.80.
func (j *Judgement) Shown() units.Quantity { return j.Need.shown(j.Figure) }

func (n *Need) shown(f *props.Figure) units.Quantity {
	u := n.Limit.Unit
	q, err := f.Value.In(u)
	if err != nil {
		return f.Value
	}
	want := n.contains(ends(f))
	for range 3 {
		step := math.Pow10(int(q.Place))
		lo, hi := u.ToSI(math.RoundToEven(q.Lo/step)*step), u.ToSI(math.RoundToEven(q.Hi/step)*step)
		if n.contains(min(lo, hi), max(lo, hi)) == want {
			break
		}
		q.Place--
	}
	return q
}

// withinRounding reports whether the limit lies within the rounding of a single
// figure that is not the limit itself. A specified limit has none, and a rating
// is not rounded.
func (n *Need) withinRounding(f *props.Figure) bool {
	d := f.Value.Unit.Dimension()
	if f.Value.IsRange() || d == units.Rating || d != n.Limit.Unit.Dimension() {
		return false
	}
	lo, at, hi := f.SI()
	for _, v := range []float64{n.Limit.Lo, n.Limit.Hi} {
		if limit := n.Limit.Unit.ToSI(v); lo < limit && limit < hi && math.Abs(limit-at) > slack*math.Abs(at) {
			return true
		}
	}
	return false
}
