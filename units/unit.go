package units

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
	num    float64 // numerator of the factor to SI
	den    float64 // denominator of the factor to SI
	zero   float64 // reading at 0 °C, temperatures only
	symbol string  // as shown
	ascii  string  // as typed, left out where it equals symbol
	spell  string  // further expressions that mean this unit, parted by |
}

var noUnit = def{num: 1, den: 1}

// def returns the row of u. The rows stand in one file a subject, as data that
// needs no work when the program starts.
func (u Unit) def() *def {
	switch {
	case u == NoUnit || u >= unitCount:
		return &noUnit
	case u < stressEnd:
		return &stressTable[u-NoUnit-1]
	case u < thermalEnd:
		return &thermalTable[u-stressEnd]
	case u < electricalEnd:
		return &electricalTable[u-thermalEnd]
	case u < sizeEnd:
		return &sizeTable[u-electricalEnd]
	}
	return &numberTable[u-sizeEnd]
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
// precision. It fails with an *Error where the dimensions differ and where a
// zero has no reciprocal.
func Convert(v float64, from, to Unit) (float64, error) {
	f, t := from.def(), to.def()
	if f.dim != t.dim || f.dim == NoDimension {
		return 0, mismatch(from, to)
	}
	switch {
	case from == to:
		return v, nil
	case f.recip != t.recip:
		if v == 0 {
			return 0, zeroReciprocal(from, to)
		}
		return f.den * t.den / (v * f.num * t.num), nil
	}
	return (v-f.zero)*(f.num*t.den)/(f.den*t.num) + t.zero, nil
}

// UnitsOf returns the units of d in table order, the usual ones first; none for
// NoDimension.
func UnitsOf(d Dimension) []Unit {
	var us []Unit
	for u := NoUnit + 1; u < unitCount; u++ {
		if u.Dimension() == d {
			us = append(us, u)
		}
	}
	return us
}

// BrinellUnit returns the Brinell unit for a load in kgf and a ball diameter in
// mm, as in 500 kgf/10 mm, and false where the table has none.
func BrinellUnit(load, ball float64) (Unit, bool) {
	for _, b := range [...]struct {
		load, ball float64
		unit       Unit
	}{
		{500, 10, HB500Number}, {1000, 10, HB1000Number}, {1500, 10, HB1500Number}, {3000, 10, HB3000Number},
		{125, 5, HB125x5Number}, {250, 5, HB250x5Number}, {750, 5, HB750x5Number},
		{62.5, 2.5, HB62x2Number}, {187.5, 2.5, HB187x2Number},
	} {
		if b.load == load && b.ball == ball {
			return b.unit, true
		}
	}
	return NoUnit, false
}
