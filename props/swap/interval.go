package swap

import (
	"math"

	"alongside/props"
	"alongside/units"
)

// interval is a worked quantity in SI: its middle, and the worst cases that
// the figures behind it allow.
type interval struct {
	lo, mid, hi float64
	// last is the worth of one in the last meaningful digit of mid, after the
	// coarsest figure behind it; 0 where mid is exact.
	last float64
	// wide is true where a range stands behind the result, so that one number
	// does not tell it.
	wide bool
}

func exact(v float64) interval { return interval{lo: v, mid: v, hi: v} }

// ofFigure is the interval of a figure by Figure.SI.
func ofFigure(f *props.Figure) interval {
	lo, mid, hi := f.SI()
	return interval{lo, mid, hi, math.Abs(mid) * fineness(f.Value), f.Value.IsRange()}
}

// fineness is one in the last digit of a quantity over its value; for a range,
// over its smaller end.
func fineness(q units.Quantity) float64 {
	v := math.Min(math.Abs(q.Lo), math.Abs(q.Hi))
	if v == 0 {
		v = math.Max(math.Abs(q.Lo), math.Abs(q.Hi))
	}
	if v == 0 {
		return 0
	}
	return math.Pow10(int(q.Place)) / v
}

// statedDigits is how many digits a size of the part is good for, however few
// the customer said: 1 in is not meant as 1 in give or take half an inch.
const statedDigits = 3

// ofGiven is the interval of something the user gave: a range as it stands, a
// value as if it were exact.
func ofGiven(q units.Quantity) interval {
	lo, hi := q.Unit.ToSI(q.Lo), q.Unit.ToSI(q.Hi)
	fine := fineness(q)
	if v := math.Abs(q.Lo); v > 0 {
		fine = math.Min(fine, math.Pow10(int(math.Floor(math.Log10(v)))-statedDigits+1)/v)
	}
	mid := lo/2 + hi/2
	return interval{lo, mid, hi, math.Abs(mid) * fine, q.IsRange()}
}

func (a interval) fineness() float64 {
	if a.mid == 0 {
		return 0
	}
	return a.last / math.Abs(a.mid)
}

// with gives the result the digits and width of what it was worked out from.
func (a interval) with(from ...interval) interval {
	fine := 0.0
	for _, f := range from {
		fine = math.Max(fine, f.fineness())
		a.wide = a.wide || f.wide
	}
	a.last = math.Abs(a.mid) * fine
	// The ends are worked out by other steps than the middle; rounding must not
	// put it outside.
	a.lo, a.hi = math.Min(a.lo, a.mid), math.Max(a.hi, a.mid)
	return a
}

func (a interval) times(b interval) interval {
	w, x, y, z := a.lo*b.lo, a.lo*b.hi, a.hi*b.lo, a.hi*b.hi
	return interval{lo: min(w, x, y, z), mid: a.mid * b.mid, hi: max(w, x, y, z)}.with(a, b)
}

// over divides by an interval that does not hold zero.
func (a interval) over(b interval) interval {
	w, x, y, z := a.lo/b.lo, a.lo/b.hi, a.hi/b.lo, a.hi/b.hi
	return interval{lo: min(w, x, y, z), mid: a.mid / b.mid, hi: max(w, x, y, z)}.with(a, b)
}

// at is the low end (−1), the middle (0) or the high end (1).
func (a interval) at(side int) float64 { return [...]float64{a.lo, a.mid, a.hi}[side+1] }

// follows is what a formula gives at its low end, its middle and its high end, from
// quantities with each of which it rises or falls all the way.
func follows(formula func(side int) float64, from ...interval) interval {
	return interval{lo: formula(-1), mid: formula(0), hi: formula(1)}.with(from...)
}

// raised is a positive interval to a positive power.
func (a interval) raised(p float64) interval {
	return follows(func(side int) float64 { return math.Pow(a.at(side), p) }, a)
}

// plus and minus keep the place of the coarser of the two.
func (a interval) plus(b interval) interval {
	return interval{a.lo + b.lo, a.mid + b.mid, a.hi + b.hi, max(a.last, b.last), a.wide || b.wide}
}

func (a interval) minus(b interval) interval { return a.plus(b.negative()) }

func (a interval) negative() interval { return interval{-a.hi, -a.mid, -a.lo, a.last, a.wide} }

// size is the interval of the absolute value.
func (a interval) size() interval {
	switch {
	case a.lo >= 0:
		return a
	case a.hi <= 0:
		return a.negative()
	}
	return interval{0, math.Abs(a.mid), max(-a.lo, a.hi), a.last, a.wide}
}
