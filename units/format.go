package units

// Number returns the value without its unit, rounded to its Place with ties to
// the even digit: "255", "2.68", "70–100". A range whose ends round to the same
// number is written once. There is no thousands comma and no "-0".
func (q Quantity) Number() string {
	var buf [64]byte
	return string(q.appendNumber(buf[:0]))
}

// String returns the quantity as shown: "255 MPa", "≥ 30 ksi", "39 %IACS".
func (q Quantity) String() string {
	var buf [96]byte
	return string(q.Append(buf[:0]))
}

// Append appends String to b.
func (q Quantity) Append(b []byte) []byte {
	if sign := q.Qual.String(); sign != "" {
		b = append(append(b, sign...), ' ')
	}
	b = q.appendNumber(b)
	if symbol := q.Unit.Symbol(); symbol != "" {
		if symbol[0] != '/' || q.Unit.Dimension() == ThermalExpansion {
			b = append(b, ' ')
		}
		b = append(b, symbol...)
	}
	return b
}

func (q Quantity) appendNumber(b []byte) []byte {
	start := len(b)
	b = appendRounded(b, q.Lo, int(q.Place))
	if q.Lo == q.Hi {
		return b
	}
	end := len(b)
	if q.Lo < 0 || q.Hi < 0 {
		b = append(b, " to "...)
	} else {
		b = append(b, "–"...)
	}
	hi := len(b)
	b = appendRounded(b, q.Hi, int(q.Place))
	if string(b[start:end]) == string(b[hi:]) {
		return b[:end]
	}
	return b
}

// A number whose first digit stands above 10¹² or below 10⁻⁶ is written with a
// power of ten: 1.72e-8.
const (
	plainAbove = -6
	plainBelow = 12
)

// appendRounded appends v rounded to 10^place: 20000, 0.097, 1.72e-8.
func appendRounded(b []byte, v float64, place int) []byte {
	if !finite(v) { // no figure, but the end of an interval may be infinite
		switch {
		case v > 0:
			return append(b, "∞"...)
		case v < 0:
			return append(b, "-∞"...)
		}
		return append(b, "not a number"...)
	}
	d := newDecimal(v)
	if !d.round(place) {
		d.exp = 0
		if place < -plainBelow {
			place = 0
		}
	} else {
		if v < 0 {
			b = append(b, '-')
		}
		if d.exp > plainBelow || d.exp < plainAbove {
			return d.appendScientific(b, place)
		}
	}
	for p := max(d.exp, 0); p >= min(place, 0); p-- {
		if p == -1 {
			b = append(b, '.')
		}
		b = append(b, d.at(p))
	}
	return b
}

func (d *decimal) appendScientific(b []byte, place int) []byte {
	b = append(b, d.digits[0])
	for p := d.exp - 1; p >= place; p-- {
		if p == d.exp-1 {
			b = append(b, '.')
		}
		b = append(b, d.at(p))
	}
	return appendInt(append(b, 'e'), d.exp)
}
