package units

import (
	"errors"
	"math"
	"strings"
)

// Parse reads a quantity as people type or paste it:
//
//	37 ksi   255MPa   0.097 lb/in³   39% IACS   11.9e-6 /°F   1 1/8 in
//	70–100 HB   20,000 psi   >= 30 ksi   30 ksi min   about 5 %   -40..250 F
//	1 ft 6 in   4 lb 3 oz   37 ksi (255 MPa)   ±0.015 in   10 300 ksi
//
// A number without a unit has the unit One. A unit that may mean several things
// means the most usual; ParseAs knows better. A power of ten belongs to the unit
// where a unit has it, as the heads of tables print it: 11.9e-6 /°F is 11.9 in
// the unit ×10⁻⁶/°F, and 10.3e6 psi is 10.3 Mpsi. It fails with an *Error.
func Parse(s string) (Quantity, error) { return ParseAs(s, NoDimension, NoUnit) }

// ParseAs reads a quantity of dimension d, NoDimension for any. A number typed
// without a unit has the unit assume; with NoUnit a unit is required, except for
// plain numbers and ratings, which have none. It fails with an *Error, also
// where the text holds a quantity of another dimension, two values that disagree,
// or a temperature below absolute zero.
func ParseAs(s string, d Dimension, assume Unit) (Quantity, error) {
	if len(s) > maxInput {
		return Quantity{}, &Error{Input: clip(s), Understood: "a text of more than 200 bytes", Expected: "one quantity such as 37 ksi"}
	}
	t := fold(s)
	q, err := t.quantity(d, assume)
	if err == nil {
		return q, nil
	}
	// 10 300 ksi is tried last, since a space may also separate a scale or a fraction.
	if joined, ok := t.joinThousands(); ok {
		if q, err := joined.quantity(d, assume); err == nil {
			return q, nil
		}
	}
	return Quantity{}, err
}

func (t text) quantity(d Dimension, assume Unit) (Quantity, *Error) {
	p := parser{text: t, want: d, assume: assume}
	p.i = skipSpace(p.s, 0)
	if p.i == len(p.s) {
		return Quantity{}, p.fail(0, "nothing", wantedQuantity(d))
	}
	p.prefix()
	if err := p.numbers(); err != nil {
		return Quantity{}, err
	}
	return p.finish()
}

// parser is the state of reading one quantity.
type parser struct {
	text
	i         int
	want      Dimension
	assume    Unit
	qual      Qualifier
	lo, hi    number
	isRange   bool
	tolerance bool   // a range typed as ± alone
	scale     string // a hardness scale written before its number
	end       int    // where the unit behind the numbers ends
}

// prefix reads qualifiers and a leading hardness scale.
func (p *parser) prefix() {
	if q, next, ok := qualifierBefore(p.s, p.i); ok {
		p.qual, p.i = q, skipSpace(p.s, next)
	}
	rest := p.s[p.i:]
	for _, scale := range &scaleNames {
		if hasPrefixFold(rest, scale) && !splitsWord(rest, len(scale)) {
			p.scale = rest[:len(scale)]
			p.i = skipSpace(p.s, p.i+len(scale))
			break
		}
	}
	if p.scale == "" {
		return
	}
	// HB 500/10 85: the scale goes on to the last space.
	if at := strings.LastIndexByte(p.s[p.i:], ' '); at > 0 && numberAt(p.s, p.i+at+1) {
		if u, ok := brinell(p.scale + " " + p.s[p.i:p.i+at]); ok && u != HBNumber {
			p.scale = u.Symbol()
			p.i += at + 1
		}
	}
}

// finish reads what follows the numbers, a qualifier and the unit, from p.i.
func (p *parser) finish() (Quantity, *Error) {
	if p.end == 0 {
		p.end = len(p.s)
	}
	if end, qual, ok := qualifierAfter(p.s[:p.end], p.i); ok && !p.minutes(end) {
		if p.qual != Exact && p.qual != qual {
			return Quantity{}, p.fail(end, "two limits", "one of them")
		}
		p.end, p.qual = end, qual
	}
	if p.isRange && p.qual != Exact && p.qual != Approx {
		return Quantity{}, p.fail(0, "a range with the limit "+p.qual.String(), "a range or a limit, not both")
	}
	u, err := p.findUnit()
	if err != nil {
		return Quantity{}, err
	}
	if p.want != NoDimension && u.Dimension() != p.want {
		return Quantity{}, p.wrongDimension(u)
	}
	return p.make(u)
}

// minutes reports whether "min" at the end is the unit of time: where a time is
// wanted, or where there is no other unit and none to assume.
func (p *parser) minutes(end int) bool {
	if p.cut(p.i, end).s != "" || !strings.EqualFold(p.cut(p.i, p.end).s, "min") {
		return false
	}
	return p.want == Time || p.want == NoDimension && p.assume == NoUnit && p.scale == ""
}

// findUnit finds the unit, deciding where a power of ten belongs: a branch for each
// place.
func (p *parser) findUnit() (Unit, *Error) {
	tail := p.cut(p.i, p.end)
	if p.scale != "" {
		if tail.s != "" {
			return NoUnit, tail.fail(0, "the scale "+p.scale+" and then "+quote(tail.typed()), "nothing more")
		}
		tail = fold(p.scale)
	}
	// 11.9–12.1 ×10⁻⁶ is a power for both ends.
	if p.isRange && p.hi.times && p.lo.pow == 0 {
		p.lo.pow, p.lo.times = p.hi.pow, true
		p.lo.place = p.lo.written
	}
	if tail.s == "" {
		return p.assumed()
	}
	if p.lo.pow != 0 && p.lo.pow == p.hi.pow {
		if u, err := tail.unit(p.want, p.lo.pow); err == nil && (p.want == NoDimension || u.Dimension() == p.want) {
			p.lo.pow, p.hi.pow = 0, 0
			return u, nil
		}
	}
	if p.isRange && p.hi.times && p.lo.pow != 0 && !p.lo.times { // 1e-7–0.1 ×10⁻⁶/°F
		if u, err := tail.unit(p.want, p.hi.pow); err == nil {
			p.hi.pow = 0
			return u, nil
		}
	}
	return p.unitOf(tail)
}

func (p *parser) unitOf(tail text) (Unit, *Error) {
	want := p.want
	if p.tolerance && (want == NoDimension || want == Temperature) {
		want = TemperatureDifference // ±5 °F is no point on the scale
	}
	u, err := tail.unit(want, 0)
	if err == nil {
		return u, nil
	}
	if u, other, ok := p.special(tail); ok {
		return u, other
	}
	if err.Understood != "" {
		err.Understood = p.shown() + ", but " + err.Understood
	}
	if digitAt(tail.s, 0) {
		err.Understood = p.shown() + " and then " + quote(tail.typed())
		err.Expected = "one number with its unit"
		err.Hint = "for a range type 70-100, for thousands 20,000"
	}
	return NoUnit, err
}

// shown returns what was read of the numbers, for messages.
func (p *parser) shown() string {
	q, _ := p.make(One)
	return q.Number()
}

func (p *parser) assumed() (Unit, *Error) {
	if p.assume != NoUnit {
		return p.assume, nil
	}
	switch p.want {
	case NoDimension, Ratio:
		return One, nil
	case Rating:
		return RatingNumber, nil
	}
	return NoUnit, p.fail(len(p.s), p.shown()+" without a unit", examples(p.want))
}

func (p *parser) wrongDimension(u Unit) *Error {
	q, _ := p.make(u)
	e := p.fail(skipSpace(p.s, p.i), q.String()+" ("+u.Dimension().String()+")", examples(p.want))
	tail := p.cut(p.i, p.end)
	if p.want.Hardness() && u.Dimension().Hardness() {
		e.Hint = "no factor leads from one hardness scale to another"
	} else if x, _, _, ok := parseExpression(tail.s); ok {
		if near := tail.otherPower(x, p.want); near != NoUnit {
			e.Hint = "did you mean " + near.Symbol() + "?"
		}
	}
	return e
}

// make puts the numbers together.
func (p *parser) make(u Unit) (Quantity, *Error) {
	lo, loPlace := p.lo.scaled(u)
	hi, hiPlace := lo, loPlace
	if p.isRange {
		hi, hiPlace = p.hi.scaled(u)
	}
	switch {
	case lo > hi:
		return Quantity{}, p.fail(0, "a range whose first end is the larger", "the smaller end first")
	case math.Abs(lo) > 1e30 || math.Abs(hi) > 1e30:
		return Quantity{}, p.fail(0, "a number above 1e30", "a smaller number")
	}
	place := heldPlace(max(math.Abs(lo), math.Abs(hi)), min(loPlace, hiPlace))
	q := Quantity{Lo: lo, Hi: hi, Place: clampPlace(place), Qual: p.qual, Unit: u}
	var e *Error
	if errors.As(q.Possible(), &e) {
		return Quantity{}, p.fail(0, e.Understood, e.Expected)
	}
	return q, nil
}

// scaled returns the value with its power of ten and its place. The zeros that
// end a whole temperature are significant: 1000 °F is not 900. So are those of a
// strength below 10000 MPa, which standards print to the MPa, and of one below
// 1000000 psi down to the ksi: 1000 MPa is 145 ksi, not 150.
func (n number) scaled(u Unit) (value float64, place int) {
	place = n.place
	switch d := u.Dimension(); {
	case d == Temperature || d == TemperatureDifference, (u == MPa || u == NPerMM2) && n.value < 1e4:
		place = n.written
	case u == PSI && n.value < 1e6:
		place = min(place, 3)
	}
	if n.pow == 0 {
		return n.value, place
	}
	return shift(n.value, n.pow), place + n.pow
}

func wantedQuantity(d Dimension) string {
	switch {
	case d == NoDimension:
		return "a number with a unit, such as 37 ksi"
	case d.plain():
		return "a plain number"
	}
	return "a number with " + examples(d)
}
