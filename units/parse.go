package units

import (
	"math"
	"strings"
	"unicode/utf8"
)

// Parse reads a quantity as people type or paste it:
//
//	37 ksi   255MPa   0.097 lb/in³   39% IACS   11.9e-6 /°F   1 1/8 in
//	70–100 HB   20,000 psi   >= 30 ksi   30 ksi min   about 5 %   -40..250 F
//
// A number without a unit has the unit One. A unit that may mean several things
// means the most usual; ParseAs knows better. It fails with an *Error.
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
	for _, scale := range [...]string{"HRA", "HRB", "HRC", "HRE", "HRF", "HV", "HK", "HBW", "HBS", "HB", "BHN", "Brinell"} {
		if !hasPrefixFold(rest, scale) || splitsWord(rest, len(scale)) {
			continue
		}
		p.scale = rest[:len(scale)]
		p.i = skipSpace(p.s, p.i+len(scale))
		break
	}
	if p.scale == "" {
		return
	}
	// HB 500/10 85: the scale goes on to the last space.
	if at := strings.LastIndexByte(p.s[p.i:], ' '); at > 0 {
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
	if next, ok := rangeMark(p.s, p.i, true); ok {
		hi, end, err := parseNumber(p.s, next)
		if err != nil {
			return err
		}
		p.hi, p.isRange, p.i = hi, true, end
	}
	p.tail, p.tailAt = p.s[p.i:], p.i
	if !p.isRange {
		return p.secondEnd()
	}
	return nil
}

// tolerance turns 12.4 ± 0.2 into the range 12.2–12.6.
func (p *parser) tolerance(tol number) *Error {
	if tol.value <= 0 || tol.pow != p.lo.pow {
		return &Error{Expected: "a tolerance above 0 after ±", Offset: p.i}
	}
	mid := p.lo.value
	p.lo.place = min(p.lo.place, tol.place)
	p.lo.value = clean(mid - tol.value)
	p.hi = p.lo
	p.hi.value = clean(mid + tol.value)
	p.isRange = true
	p.tail, p.tailAt = p.s[p.i:], p.i
	return nil
}

// secondEnd looks in the tail for the second end of a range whose first end has
// its own unit: 37 ksi to 40 ksi, 68 °F – 212 °F.
func (p *parser) secondEnd() *Error {
	for i := 0; i < len(p.tail); {
		next, ok := rangeMark(p.tail, i, false)
		if !ok {
			_, size := utf8.DecodeRuneInString(p.tail[i:])
			i += size
			continue
		}
		hi, end, err := parseNumber(p.tail, next)
		if err != nil {
			err.Offset += p.tailAt
			return err
		}
		first, second := trimSpace(p.tail[:i]), trimSpace(p.tail[end:])
		if first != "" && second != "" && !strings.EqualFold(first, second) {
			a, errA := lookup(first, p.want, 0)
			rest, _, _ := qualifierAfter(second)
			b, errB := lookup(rest, p.want, 0)
			if errA != nil {
				errA.Offset += p.tailAt
				return errA
			}
			if errB == nil && a != b {
				return &Error{
					Understood: "a range from " + describe(a) + " to " + describe(b),
					Expected:   "one unit for both ends",
					Offset:     p.tailAt + end,
				}
			}
		}
		p.hi, p.isRange = hi, true
		if second == "" {
			p.tail = p.tail[:i]
		} else {
			p.tail, p.tailAt = p.tail[end:], p.tailAt+end
		}
		return nil
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
		if isTwoNumbers(tail) {
			err.Hint = "for a range type 70-100, for thousands 20,000"
		}
		err.Offset += p.tailAt
		return NoUnit, err
	}
	return u, nil
}

func isTwoNumbers(tail string) bool {
	t := trimSpace(tail)
	return t != "" && isDigit(t[0])
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
	lo, loPlace := p.lo.scaled(u.Dimension())
	hi, hiPlace := lo, loPlace
	if p.isRange {
		hi, hiPlace = p.hi.scaled(u.Dimension())
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
	return Quantity{Lo: lo, Hi: hi, Place: clampPlace(min(loPlace, hiPlace)), Qual: p.qual, Unit: u}, nil
}

// scaled returns the value with its power of ten and its place. The zeros that
// end a whole temperature are significant: 1000 °F is not 900.
func (n number) scaled(d Dimension) (value float64, place int) {
	place = n.place
	if d == Temperature || d == TemperatureDifference {
		place = n.written
	}
	if n.pow == 0 {
		return n.value, place
	}
	if n.pow < 0 {
		return n.value / pow10(-n.pow), place + n.pow
	}
	return n.value * pow10(n.pow), place + n.pow
}

// clean drops the binary noise that a sum of two decimals carries.
func clean(v float64) float64 {
	q := Quantity{Lo: v, Hi: v, Place: clampPlace(newDecimal(v).exp - decimalDigits + 2)}
	n, _, err := parseNumber(q.Number(), 0)
	if err != nil {
		return v
	}
	value, _ := n.scaled(NoDimension)
	return value
}

// plusMinus steps over ± or +/-.
func plusMinus(s string, i int) (next int, ok bool) {
	i = skipSpace(s, i)
	for _, mark := range [...]string{"±", "+/-", "+-"} {
		if strings.HasPrefix(s[i:], mark) {
			return skipSpace(s, i+len(mark)), true
		}
	}
	return i, false
}

// rangeMark steps over what parts the ends of a range: a dash, "to", "..", "…"
// or "~", with a number behind it. Next to a number any dash will do; within
// units, where hyphens and exponents live, only a long dash or a spaced one.
func rangeMark(s string, i int, besideNumber bool) (next int, ok bool) {
	start := i
	i = skipSpace(s, i)
	spaced := i > start
	switch {
	case strings.HasPrefix(s[i:], ".."):
		i += 2
		if strings.HasPrefix(s[i:], ".") {
			i++
		}
	case strings.HasPrefix(s[i:], "…"):
		i += len("…")
	case hasPrefixFold(s[i:], "to") && (spaced || besideNumber) && !splitsWord(s, i+2):
		i += 2
	case hasPrefixFold(s[i:], "and") && spaced && besideNumber:
		i += 3
	case besideNumber && strings.HasPrefix(s[i:], "~"):
		i++
	default:
		next, dash := dashAt(s, i)
		if !dash || !besideNumber && !spaced && !strings.HasPrefix(s[i:], "–") && !strings.HasPrefix(s[i:], "—") {
			return start, false
		}
		if !besideNumber && spaced && skipSpace(s, next) == next && s[i] == '-' {
			return start, false // W -1 would be an exponent that lost its ^
		}
		i = next
	}
	i = skipSpace(s, i)
	j, _, _ := signAt(s, i)
	if _, _, isFraction := vulgar(s, j); isFraction {
		return i, true
	}
	j = skipSpace(s, j)
	if j < len(s) && (isDigit(s[j]) || s[j] == '.' && nextDigit(s, j+1)) {
		return i, true
	}
	return start, false
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
