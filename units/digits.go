package units

import (
	"math"
	"strconv"
)

// decimalDigits is how many digits of a float64 are looked at when rounding:
// enough for any figure, few enough to drop the noise of binary arithmetic, so
// that 28.574999999999999 counts as the tie 28.575 that it is.
const decimalDigits = 15

// decimal is |v| as d₀.d₁d₂… × 10^exp, with digits as ASCII.
type decimal struct {
	digits [decimalDigits]byte
	exp    int
}

// newDecimal takes a finite v apart. Zero has only zeros and exponent 0.
func newDecimal(v float64) decimal {
	var d decimal
	var buf [32]byte
	b := strconv.AppendFloat(buf[:0], math.Abs(v), 'e', decimalDigits-1, 64)
	d.digits[0] = b[0]
	copy(d.digits[1:], b[2:decimalDigits+1])
	d.exp, _ = strconv.Atoi(string(b[decimalDigits+2:]))
	return d
}

// round keeps the digits down to 10^place. A tie goes to the even digit (ASTM
// E29, rounding method; SP 811 B.7.1). It reports whether anything is left.
func (d *decimal) round(place int) (nonzero bool) {
	keep := d.exp - place + 1 // digits to keep
	switch {
	case d.digits[0] == '0':
		return false
	case keep >= decimalDigits:
		return true
	case keep < 0:
		d.fill(0)
		return false
	}
	up := d.above(keep)
	d.fill(keep)
	if !up {
		return keep > 0
	}
	i := keep - 1
	for ; i >= 0 && d.digits[i] == '9'; i-- {
		d.digits[i] = '0'
	}
	if i >= 0 {
		d.digits[i]++
		return true
	}
	d.digits[0] = '1'
	d.exp++
	return true
}

// above reports whether the digits from keep on round up.
func (d *decimal) above(keep int) bool {
	if c := d.digits[keep]; c != '5' {
		return c > '5'
	}
	for _, c := range d.digits[keep+1:] {
		if c != '0' {
			return true
		}
	}
	return keep > 0 && (d.digits[keep-1]-'0')%2 == 1
}

func (d *decimal) fill(from int) {
	for i := from; i < decimalDigits; i++ {
		d.digits[i] = '0'
	}
}

// at returns the digit at 10^place.
func (d *decimal) at(place int) byte {
	if i := d.exp - place; i >= 0 && i < decimalDigits {
		return d.digits[i]
	}
	return '0'
}

// convertedPlace returns the place for the value to that was converted from
// from, which was known to 10^place. It has as many significant digits as from,
// one more where it begins smaller (SP 811 B.7.1, which looks at the first digit
// alone; where those are equal the next ones decide, so that 17 ksi and 18 ksi do
// not both become 120 MPa), and never fewer than least. Where either is zero there are no digits to count, and place stays.
func convertedPlace(from, to float64, place int8, least int) int8 {
	if from == 0 || to == 0 || !finite(from) || !finite(to) {
		return place
	}
	f, t := newDecimal(from), newDecimal(to)
	n := max(f.exp-int(place)+1, 1)
	if string(t.digits[:]) < string(f.digits[:]) {
		n++
	}
	n = max(n, least)
	p := t.exp - n + 1
	exp := t.exp
	if t.round(p); t.exp > exp { // 99.96 to three digits is 100, not 100.0
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
	return max(place, newDecimal(v).exp-decimalDigits+1)
}
