package units

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// Parse reads a quantity as people type or paste it:
//
//	37 ksi   255MPa   0.097 lb/in³   39% IACS   11.9e-6 /°F   1 1/8 in
//	70–100 HB   20,000 psi   >= 30 ksi   30 ksi min   about 5 %   -40..250 F
//
// A number without a unit has the unit One. A unit that may mean several things
// means the most usual; ParseAs knows better. A power of ten belongs to the unit
// where a unit has it, as the heads of tables print it: 11.9e-6 /°F is 11.9 in
// the unit ×10⁻⁶/°F, and 10.3e6 psi is 10.3 Mpsi. It fails with an *Error.
func Parse(s string) (Quantity, error) { return ParseAs(s, NoDimension, NoUnit) }

// ParseAs reads a quantity of dimension d, NoDimension for any. A number typed
// without a unit has the unit assume; with NoUnit a unit is required, except for
// plain numbers and ratings, which have none. It fails with an *Error, also
// where the text holds a quantity of another dimension.
func ParseAs(s string, d Dimension, assume Unit) (Quantity, error) {
	q, err := parseQuantity(s, d, assume)
	if err != nil {
		return Quantity{}, err.locate(s, 0)
	}
	return q, nil
}

func parseQuantity(s string, d Dimension, assume Unit) (Quantity, *Error) {
	if len(s) > maxInput {
		return Quantity{}, &Error{Understood: "a text of more than 200 bytes", Expected: "one quantity such as 37 ksi"}
	}
	p := parser{s: s, want: d, assume: assume}
	p.i = skipSpace(s, 0)
	if p.i == len(s) {
		return Quantity{}, &Error{Understood: "nothing", Expected: wantedQuantity(d)}
	}
	p.prefix()
	if err := p.numbers(); err != nil {
		return Quantity{}, err
	}
	return p.finish()
}

// parser is the state of reading one quantity.
type parser struct {
	s       string
	i       int
	want    Dimension
	assume  Unit
	qual    Qualifier
	lo, hi  number
	isRange bool
	tail    string // what follows the numbers
	tailAt  int
	scale   string // a hardness scale written before its number
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
	if at := strings.LastIndexByte(p.s[p.i:], ' '); at > 0 && numberAt(p.s, skipSpace(p.s, p.i+at)) {
		if u, ok := brinell(p.scale + " " + p.s[p.i:p.i+at]); ok && u != HBNumber {
			p.scale = u.Symbol()
			p.i = skipSpace(p.s, p.i+at)
		}
	}
}

// numbers reads the number or the two ends of a range, and the tail.
func (p *parser) numbers() *Error {
	var err *Error
	start := p.i
	if p.lo, p.i, err = parseNumber(p.s, p.i); err != nil {
		if err.Understood == "" && err.Expected == "a number" {
			err.Understood = "no number in " + quote(trimSpace(p.s[start:]))
			err.Expected = wantedQuantity(p.want)
		}
		return err
	}
	p.hi = p.lo
	if next, ok := plusMinus(p.s, p.i); ok {
		tol, next, err := parseNumber(p.s, next)
		if err != nil {
			return err
		}
		p.i = next
		return p.tolerance(tol)
	}
	if next, mark := rangeMark(p.s, p.i, true); mark != noMark {
		hi, end, err := parseNumber(p.s, next)
		if err != nil {
			return err
		}
		p.hi, p.isRange, p.i = hi, true, end
	}
	p.tailAt = skipSpace(p.s, p.i)
	p.tail = p.s[p.tailAt:]
	if !p.isRange {
		return p.secondEnd()
	}
	return nil
}

// finish reads the tail: a qualifier and the unit.
func (p *parser) finish() (Quantity, *Error) {
	tail := p.tail
	if rest, qual, ok := qualifierAfter(tail); ok && !p.minutes(rest, tail) {
		if p.qual != Exact && p.qual != qual {
			return Quantity{}, &Error{Understood: "two limits", Expected: "one of them", Offset: p.tailAt + len(rest)}
		}
		tail, p.qual = rest, qual
	}
	if p.isRange && p.qual != Exact && p.qual != Approx {
		return Quantity{}, &Error{Understood: "a range with the limit " + p.qual.String(), Expected: "a range or a limit, not both"}
	}
	u, err := p.unit(tail)
	if err != nil {
		return Quantity{}, err
	}
	if p.want != NoDimension && u.Dimension() != p.want {
		return Quantity{}, p.wrongDimension(u)
	}
	return p.quantity(u)
}

// minutes reports whether "min" at the end is the unit of time: where a time is
// wanted, or where there is no other unit and none to assume.
func (p *parser) minutes(rest, tail string) bool {
	if trimSpace(rest) != "" || !strings.EqualFold(trimSpace(tail), "min") {
		return false
	}
	return p.want == Time || p.want == NoDimension && p.assume == NoUnit && p.scale == ""
}

// unit finds the unit of the tail, deciding where a power of ten belongs.
func (p *parser) unit(tail string) (Unit, *Error) {
	if p.scale != "" {
		if trimSpace(tail) != "" {
			return NoUnit, &Error{Understood: "the scale " + p.scale + " and then " + quote(trimSpace(tail)), Expected: "nothing more", Offset: p.tailAt}
		}
		tail = p.scale
	}
	// 11.9–12.1 ×10⁻⁶ is a power for both ends.
	if p.isRange && p.hi.times && p.lo.pow == 0 {
		p.lo.pow, p.lo.times = p.hi.pow, true
		p.lo.place = p.lo.written
	}
	if trimSpace(tail) == "" {
		return p.assumed()
	}
	if p.lo.pow != 0 && p.lo.pow == p.hi.pow {
		if u, err := lookup(tail, p.want, p.lo.pow); err == nil && (p.want == NoDimension || u.Dimension() == p.want) {
			p.lo.pow, p.hi.pow = 0, 0
			return u, nil
		}
	}
	u, err := lookup(tail, p.want, 0)
	if err != nil {
		q, _ := p.quantity(One)
		if err.Understood != "" {
			err.Understood = q.Number() + ", but " + err.Understood
		}
		if t := trimSpace(tail); nextDigit(t, 0) {
			err.Understood = q.Number() + " and then " + quote(t)
			err.Expected = "one number with its unit"
			err.Hint = "for a range type 70-100, for thousands 20,000"
		}
		err.Offset += p.tailAt
		return NoUnit, err
	}
	return u, nil
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
	q, _ := p.quantity(One)
	return NoUnit, &Error{Understood: q.Number() + " without a unit", Expected: examples(p.want), Offset: len(p.s)}
}

func (p *parser) wrongDimension(u Unit) *Error {
	q, _ := p.quantity(u)
	e := &Error{
		Understood: q.String() + " (" + u.Dimension().String() + ")",
		Expected:   examples(p.want),
		Offset:     p.tailAt,
	}
	switch {
	case p.want.Hardness() && u.Dimension().Hardness():
		e.Hint = "no factor leads from one hardness scale to another"
	case trimSpace(p.tail) != "":
		if near := nearest(trimSpace(p.tail), p.want); near != NoUnit {
			e.Hint = "did you mean " + near.Symbol() + "?"
		}
	}
	return e
}

// quantity puts the numbers together.
func (p *parser) quantity(u Unit) (Quantity, *Error) {
	lo, loPlace := p.lo.scaled(u)
	hi, hiPlace := lo, loPlace
	if p.isRange {
		hi, hiPlace = p.hi.scaled(u)
	}
	if lo > hi {
		return Quantity{}, &Error{
			Understood: "a range whose first end is the larger",
			Expected:   "the smaller end first",
		}
	}
	if math.Abs(lo) > 1e30 || math.Abs(hi) > 1e30 {
		return Quantity{}, &Error{Understood: "a number above 1e30", Expected: "a smaller number"}
	}
	place := min(loPlace, hiPlace)
	if lo != 0 || hi != 0 { // no more digits than a float64 holds
		place = max(place, newDecimal(max(math.Abs(lo), math.Abs(hi))).exp-decimalDigits+1)
	}
	return Quantity{Lo: lo, Hi: hi, Place: clampPlace(place), Qual: p.qual, Unit: u}, nil
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

// shift returns v × 10^pow as if it had been typed so, without the error that a
// product of two binary numbers has.
func shift(v float64, pow int) float64 {
	var buf [40]byte
	b := strconv.AppendFloat(buf[:0], v, 'e', -1, 64)
	e := bytes.IndexByte(b, 'e')
	exp, err := strconv.Atoi(string(b[e+1:]))
	if err != nil {
		return v
	}
	shifted, _ := strconv.ParseFloat(string(appendInt(b[:e+1], exp+pow)), 64)
	return shifted
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
