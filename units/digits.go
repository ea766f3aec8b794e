package units

import (
	"math"
	"strconv"
	"strings"
)

// decimalDigits is how many digits of a float64 are looked at when rounding:
// enough for any figure, few enough to drop the noise of binary arithmetic, so
// that 28.574999999999999 counts as the tie 28.575 that it is.
const decimalDigits = 15

// decimal is |v| as digits × 10^place. A new one has decimalDigits digits.
type decimal struct {
	digits int64
	place  int
}

// newDecimal takes a finite v apart.
func newDecimal(v float64) decimal {
	s := strconv.FormatFloat(math.Abs(v), 'e', decimalDigits-1, 64) // d.ddde±xx
	exp, _ := strconv.Atoi(s[decimalDigits+2:])
	digits, _ := strconv.ParseInt(s[:1]+s[2:decimalDigits+1], 10, 64)
	return decimal{digits, exp - decimalDigits + 1}
}

// round returns d without the digits below 10^place. A tie goes to the even digit
// (ASTM E29, rounding method; SP 811 B.7.1).
func (d decimal) round(place int) decimal {
	drop := place - d.place
	switch {
	case drop <= 0:
		return d
	case drop > decimalDigits:
		return decimal{0, place}
	}
	ten := int64(1)
	for range drop {
		ten *= 10
	}
	q, r := d.digits/ten, d.digits%ten
	if r > ten-r || r == ten-r && q%2 == 1 {
		q++
	}
	return decimal{q, place}
}

// first returns the place of the first digit of d.
func (d decimal) first() int { return d.place + len(strconv.FormatInt(d.digits, 10)) - 1 }

// convertedPlace returns the place for the value to that was converted from
// from, which was known to 10^place. It has as many significant digits as from,
// one more where it begins smaller (SP 811 B.7.1, which looks at the first digit
// alone; where those are equal the next ones decide, so that 17 ksi and 18 ksi do
// not both become 120 MPa), and never fewer than least. Where either is zero there
// are no digits to count, and place stays.
func convertedPlace(from, to float64, place int8, least int) int8 {
	if from == 0 || to == 0 || !finite(from) || !finite(to) {
		return place
	}
	f, t := newDecimal(from), newDecimal(to)
	n := max(f.first()-int(place)+1, 1)
	if t.digits < f.digits {
		n++
	}
	p := t.first() - max(n, least) + 1
	if t.round(p).first() > t.first() { // 99.96 to three digits is 100, not 100.0
		p++
	}
	return clampPlace(p)
}

func finite(v float64) bool { return !math.IsInf(v, 0) && !math.IsNaN(v) }

func clampPlace(p int) int8 { return int8(min(max(p, -100), 100)) }

// heldPlace is the place, but no finer than a float64 holds v: digits typed
// beyond the fifteenth are not known.
func heldPlace(v float64, place int) int {
	if v == 0 || !finite(v) {
		return place
	}
	return max(place, newDecimal(v).place)
}

// A number whose first digit stands above 10¹² or below 10⁻⁶ is written with a
// power of ten: 1.72e-8.
const (
	plainAbove = -6
	plainBelow = 12
)

// rounded writes v rounded to 10^place: 20000, 0.097, 1.72e-8.
func rounded(v float64, place int) string {
	switch { // no figure, but the end of an interval may be infinite
	case math.IsNaN(v):
		return "not a number"
	case math.IsInf(v, 1):
		return "∞"
	case math.IsInf(v, -1):
		return "-∞"
	}
	d := newDecimal(v).round(place)
	sign := ""
	if v < 0 {
		sign = "-"
	}
	switch {
	case d.digits == 0 && place < -plainBelow:
		return "0"
	case d.digits == 0: // no -0
		d, sign = decimal{0, min(place, 0)}, ""
	}
	digits := strconv.FormatInt(d.digits, 10)
	if first := d.first(); d.digits != 0 && (first > plainBelow || first < plainAbove) {
		digits += strings.Repeat("0", d.place-place)
		if len(digits) > 1 {
			digits = digits[:1] + "." + digits[1:]
		}
		return sign + digits + "e" + strconv.Itoa(first)
	}
	decimals := max(-place, 0)
	digits += strings.Repeat("0", d.place+decimals)
	if decimals > 0 {
		digits = strings.Repeat("0", max(decimals+1-len(digits), 0)) + digits
		digits = digits[:len(digits)-decimals] + "." + digits[len(digits)-decimals:]
	}
	return sign + digits
}

// Number returns the value without its unit, rounded to its Place with ties to
// the even digit: "255", "2.68", "70–100". A range whose ends round to the same
// number is written once, and one of lengths about zero as "±0.015". There is no
// thousands comma and no "-0".
func (q Quantity) Number() string {
	lo := rounded(q.Lo, int(q.Place))
	if q.Lo == q.Hi {
		return lo
	}
	hi := rounded(q.Hi, int(q.Place))
	switch {
	case lo == hi:
		return lo
	case q.Lo == -q.Hi && q.Unit.Dimension() == Length:
		return "±" + hi
	case strings.HasPrefix(lo, "-") || strings.HasPrefix(hi, "-"):
		return lo + " to " + hi
	}
	return lo + "–" + hi
}

// String returns the quantity as shown: "255 MPa", "≥ 30 ksi", "39 %IACS".
func (q Quantity) String() string {
	s := q.Number()
	if sign := q.Qual.String(); sign != "" {
		s = sign + " " + s
	}
	symbol := q.Unit.Symbol()
	if symbol != "" && (symbol[0] != '/' || q.Unit.Dimension() == ThermalExpansion) {
		s += " "
	}
	return s + symbol
}
