package units

import "math"

// Qualifier says how the value of a quantity is meant.
type Qualifier uint8

// The qualifiers. Exact is the zero value: the figure as it stands.
const (
	Exact    Qualifier = iota // 37 ksi
	Approx                    // about 37 ksi
	AtLeast                   // 37 ksi min, ≥ 37 ksi
	AtMost                    // 37 ksi max, ≤ 37 ksi
	MoreThan                  // > 37 ksi
	LessThan                  // < 37 ksi
)

var qualifierSigns = [...]string{Exact: "", Approx: "≈", AtLeast: "≥", AtMost: "≤", MoreThan: ">", LessThan: "<"}

// String returns the sign of the qualifier, "" for Exact, "≥" for AtLeast.
func (q Qualifier) String() string {
	if int(q) >= len(qualifierSigns) {
		return ""
	}
	return qualifierSigns[q]
}

// flip returns the qualifier of the reciprocal: at least becomes at most.
func (q Qualifier) flip() Qualifier {
	switch q {
	case AtLeast:
		return AtMost
	case AtMost:
		return AtLeast
	case MoreThan:
		return LessThan
	case LessThan:
		return MoreThan
	}
	return q
}

// Quantity is a value, or a range of values, with its unit and the digits it
// was written with. Lo and Hi keep the full value; Place says how many of its
// digits mean something.
type Quantity struct {
	Lo, Hi float64 // Lo == Hi for a single value, else Lo < Hi
	// Place is the power of ten of the last significant digit: 0 for 37, -3
	// for 0.097, -1 for 12.0, 3 for 30000. For a range it is that of the end
	// written more finely.
	Place int8
	Qual  Qualifier
	Unit  Unit
}

// IsRange reports whether q is a range rather than a single value.
func (q Quantity) IsRange() bool { return q.Lo != q.Hi }

// Mid returns the middle of the range, or the value.
func (q Quantity) Mid() float64 {
	if q.Lo == q.Hi {
		return q.Lo
	}
	return q.Lo/2 + q.Hi/2
}

// Interval returns the values that q stands for: a range as it is, a single
// value plus and minus half a unit of its last digit, and for a limit all
// beyond it, with an infinite end. It belongs to the unit in which the figure was
// written: convert its ends, since converting q first would narrow it.
func (q Quantity) Interval() (lo, hi float64) {
	switch q.Qual {
	case AtLeast, MoreThan:
		return q.Lo, math.Inf(1)
	case AtMost, LessThan:
		return math.Inf(-1), q.Hi
	}
	if q.Lo != q.Hi {
		return q.Lo, q.Hi
	}
	half := math.Pow10(int(q.Place)) / 2
	return q.Lo - half, q.Hi + half
}

// Possible fails with an *Error where q is a temperature below absolute zero by
// all that its digits allow: -460 °F is absolute zero to the degree, -500 °F does
// not exist. Every other quantity is possible.
func (q Quantity) Possible() error {
	return aboveZero(q.Lo, math.Pow10(min(int(q.Place), 0))/2, q.Unit)
}

// InOrOwn returns q in another unit as In does, and as it is where In fails: a
// figure of another kind, such as a hardness scale, stays in its own unit.
func (q Quantity) InOrOwn(u Unit) Quantity {
	if v, err := q.In(u); err == nil {
		return v
	}
	return q
}

// In returns q in another unit of its dimension. Lo and Hi keep their full
// value. Place follows NIST SP 811 (2008) B.7.1: as many significant digits as
// the figure had, and one more where the first digit becomes smaller. A
// temperature keeps its resolution instead; a length, area, volume or mass, which
// people state rather than measure, shows at least three digits (1 in is
// 25.4 mm, not 30). The ends of a reciprocal trade places. It fails with an
// *Error where the dimensions differ, where zero has no reciprocal and where q is
// not Possible.
func (q Quantity) In(u Unit) (Quantity, error) {
	if err := q.Possible(); err != nil {
		return Quantity{}, err
	}
	if u == q.Unit && u.Dimension() != NoDimension {
		return q, nil
	}
	lo, err := convert(q.Lo, q.Unit, u)
	if err != nil {
		return Quantity{}, err
	}
	hi, err := convert(q.Hi, q.Unit, u)
	if err != nil {
		return Quantity{}, err
	}
	r := Quantity{Lo: lo, Hi: hi, Qual: q.Qual, Unit: u}
	if q.Unit.Dimension() == Temperature {
		r.Place = q.Place
	} else {
		least := 1
		if statedSize(u.Dimension()) {
			least = 3
		}
		// A range shows both ends to the finer of their two places.
		r.Place = min(convertedPlace(q.Lo, lo, q.Place, least), convertedPlace(q.Hi, hi, q.Place, least))
	}
	r.Place = clampPlace(max(heldPlace(lo, int(r.Place)), heldPlace(hi, int(r.Place))))
	if q.Unit.Reciprocal() != u.Reciprocal() {
		if (q.Lo < 0) != (q.Hi < 0) {
			return Quantity{}, zeroReciprocal(q.Unit, u)
		}
		r.Lo, r.Hi, r.Qual = hi, lo, q.Qual.flip()
	}
	return r, nil
}

func statedSize(d Dimension) bool { return d == Length || d == Area || d == Volume || d == Mass }
