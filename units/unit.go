package units

import (
	"fmt"
	"math"
	"strconv"
)

// Unit is one unit of measure: an index into the unit table, so that it can
// stand in static data. The zero value is NoUnit.
type Unit uint8

// NoUnit is the absence of a unit. A plain number has the unit One.
const NoUnit Unit = 0

// def is one row of the unit table. The SI value of a reading v is
//
//	(v - zero) · num / den        and, for a reciprocal unit,
//	den / (v · num)
//
// with 273.15 K added for a temperature, whose zero is the reading at 0 °C.
type def struct {
	dim    Dimension
	recip  bool    // resistivity, measured against conductivity
	rare   bool    // read and shown, but not listed by UnitsOf
	num    float64 // numerator of the factor to SI
	den    float64 // denominator of the factor to SI
	zero   float64 // reading at 0 °C, temperatures only
	symbol string  // as shown
	ascii  string  // as typed, left out where it equals symbol
	spell  string  // further expressions that mean this unit, separated by |
}

// def returns the row of u, that of NoUnit for a number outside the table.
func (u Unit) def() *def {
	if u >= unitCount {
		u = NoUnit
	}
	return &table[u]
}

// Symbol returns the unit as shown: "lb/in³", "µin/in·°F", "W/m·K". It is empty
// for NoUnit, plain numbers and ratings.
func (u Unit) Symbol() string { return u.def().symbol }

// ASCII returns the unit in plain ASCII: "lb/in3", "uin/in-F", "W/m-K".
func (u Unit) ASCII() string {
	if d := u.def(); d.ascii != "" {
		return d.ascii
	}
	return u.def().symbol
}

// String returns Symbol.
func (u Unit) String() string { return u.Symbol() }

// Dimension returns what the unit measures, NoDimension for NoUnit.
func (u Unit) Dimension() Dimension { return u.def().dim }

// Reciprocal reports whether the unit measures the reciprocal of its
// dimension's SI unit, as resistivity does for conductivity.
func (u Unit) Reciprocal() bool { return u.def().recip }

// ToSI returns the reading v in the coherent SI unit of the dimension: Pa,
// kg/m³, S/m, K. Percent, ratings and hardness numbers stay as they are. A
// resistivity of 0 gives +Inf; Convert reports it as an error instead.
func (u Unit) ToSI(v float64) float64 {
	d := u.def()
	if d.recip {
		return d.den / (v * d.num)
	}
	si := (v - d.zero) * d.num / d.den
	if d.dim == Temperature {
		si += iceKelvin
	}
	return si
}

// FromSI is the reverse of ToSI.
func (u Unit) FromSI(v float64) float64 {
	d := u.def()
	if d.recip {
		return d.den / (v * d.num)
	}
	if d.dim == Temperature {
		v -= iceKelvin
	}
	return v*d.den/d.num + d.zero
}

// Convert returns the reading v, taken in from, as a reading in to, in full
// precision. It fails with an *Error where the dimensions differ, where a zero has
// no reciprocal and where a temperature lies below absolute zero.
func Convert(v float64, from, to Unit) (float64, error) {
	if err := aboveZero(v, 0, from); err != nil {
		return 0, err
	}
	return convert(v, from, to)
}

func convert(v float64, from, to Unit) (float64, error) {
	f, t := from.def(), to.def()
	switch {
	case f.dim != t.dim || f.dim == NoDimension:
		return 0, mismatch(from, to)
	case from == to:
		return v, nil
	case f.recip == t.recip:
		return (v-f.zero)*(f.num*t.den)/(f.den*t.num) + t.zero, nil
	case v == 0:
		return 0, zeroReciprocal(from, to)
	}
	return f.den * t.den / (v * f.num * t.num), nil
}

// aboveZero fails with an *Error where v, in the unit u and known to ± half, is a
// temperature below absolute zero.
func aboveZero(v, half float64, u Unit) error {
	const noise = 1e-9 // of the conversion of a reading at absolute zero itself
	if u.Dimension() != Temperature || math.IsInf(v, -1) || u.ToSI(v+half) >= -noise || math.IsNaN(v) {
		return nil
	}
	return &Error{
		Understood: strconv.FormatFloat(v, 'f', -1, 64) + " " + u.Symbol() + ", below absolute zero",
		Expected:   "a temperature of at least -459.67 °F (-273.15 °C)",
	}
}

// UnitsOf returns the units of d in the order of the constants, the usual ones first,
// without those that are only read; none for NoDimension.
func UnitsOf(d Dimension) []Unit {
	var us []Unit
	for u := NoUnit + 1; u < unitCount; u++ {
		if u.Dimension() == d && !u.def().rare {
			us = append(us, u)
		}
	}
	return us
}

// BrinellLoad is the load in kgf and the ball diameter in mm of a Brinell unit;
// ok is false for other units and where the unit states none.
func (u Unit) BrinellLoad() (load, ball float64, ok bool) {
	n, _ := fmt.Sscanf(u.Symbol(), "HB %g/%g", &load, &ball)
	return load, ball, n == 2
}

// BrinellUnit returns the Brinell unit for a load in kgf and a ball diameter in
// mm, as in 500 kgf/10 mm, and false where the table has none.
func BrinellUnit(load, ball float64) (Unit, bool) {
	want := "HB " + strconv.FormatFloat(load, 'f', -1, 64) + "/" + strconv.FormatFloat(ball, 'f', -1, 64)
	for u := HB500Number; u <= HB187x2Number; u++ {
		if u.Symbol() == want {
			return u, true
		}
	}
	return NoUnit, false
}
