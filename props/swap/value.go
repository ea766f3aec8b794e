package swap

import (
	"math"
	"strings"

	"alongside/props"
	"alongside/units"
)

// Value is a result in the unit it is shown in: the middle and the worst
// cases. Lo ≤ Mid ≤ Hi.
type Value struct {
	Lo, Mid, Hi float64
	Place       int8 // power of ten of the last digit that means something
	Range       bool // a published or given range stands behind it: Lo to Hi is the answer
	Unit        units.Unit
	Symbol      string // where Unit has none: a currency, "Ω"
}

// String is the value as shown, with no more digits than the coarsest figure
// behind it: "1.57 lb", "0.41–0.45 in".
func (v *Value) String() string {
	if v == nil {
		return ""
	}
	s := v.Number()
	if u := v.UnitText(); u != "" {
		s += " " + u
	}
	return s
}

// Number is String without the unit.
func (v *Value) Number() string {
	q := units.Quantity{Lo: v.Mid, Hi: v.Mid, Place: v.Place, Unit: v.Unit}
	if v.Range {
		q.Lo, q.Hi = v.Lo, v.Hi
	}
	return minus.Replace(q.Number())
}

// minus sets a true minus sign before a number, but not in an exponent.
var minus = strings.NewReplacer("e-", "e-", "-", "−")

// UnitText is the symbol of the unit.
func (v *Value) UnitText() string {
	if v.Symbol != "" {
		return v.Symbol
	}
	return v.Unit.Symbol()
}

// in is the interval as a value in u, which must not be a temperature.
func (a interval) in(u units.Unit) *Value {
	lo, mid, hi := u.FromSI(a.lo), u.FromSI(a.mid), u.FromSI(a.hi)
	return &Value{Lo: lo, Mid: mid, Hi: hi, Unit: u, Range: a.wide, Place: place(mid, u.FromSI(a.last))}
}

// exactDigits is how many digits a result shows that rests on no figure.
const exactDigits = 4

// tiny takes up the noise of logarithms.
const tiny = 1e-9

// place is the power of ten of the last digit of v where one in the last digit
// of its coarsest figure is worth last: as many digits as that figure has, one
// more where v begins with a smaller digit (NIST SP 811 (2008) B.7.1).
func place(v, last float64) int8 {
	v = math.Abs(v)
	switch {
	case v == 0 && last == 0:
		return 0
	case v == 0 || last >= v:
		return clampPlace(math.Floor(math.Log10(last) + tiny))
	}
	exponent := math.Floor(math.Log10(v))
	if last == 0 && v == math.Trunc(v) {
		return 0
	}
	if last == 0 {
		return clampPlace(exponent - exactDigits + 1)
	}
	fine := last / v
	digits := math.Floor(1 - math.Log10(fine) + tiny)
	first := math.Floor(math.Pow(10, 1-digits)/fine + tiny)
	if math.Floor(v/math.Pow(10, exponent)+tiny) < first {
		digits++
	}
	p := exponent - digits + 1
	if math.Round(v/math.Pow(10, p)) >= math.Pow(10, digits) { // 99.96 to three digits is 100
		p++
	}
	return clampPlace(p)
}

func clampPlace(p float64) int8 { return int8(max(-100, min(p, 100))) }

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
