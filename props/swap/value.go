package swap

import (
	"math"
	"strings"

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
