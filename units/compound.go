package units

import (
	"math"
	"strconv"
	"strings"
)

// special reads a tail that is more than a unit: a fraction of IACS, the thousands
// of 37k psi, the second value of 37 ksi (255 MPa), the inches of 1 ft 6 in. It
// reports whether tail is one of them, and fails where it is one that cannot be.
func (p *parser) special(tail text) (Unit, *Error, bool) {
	if strings.EqualFold(tail.s, "IACS") && p.hi.pow == 0 && p.hi.value <= 1.2 && p.hi.value > 0 {
		p.lo.pow, p.hi.pow = p.lo.pow+2, p.hi.pow+2 // copper itself is 1.0 IACS
		return IACS, nil, true
	}
	if rest, ok := strings.CutPrefix(strings.ToLower(tail.s), "k "); ok && rest == "psi" {
		return KSI, nil, true
	}
	if open := strings.IndexAny(tail.s, "(["); open > 0 && strings.HasSuffix(tail.s, string(")]"[strings.IndexByte("([", tail.s[open])])) {
		u, err := tail.cut(0, open).unit(p.want, 0)
		if err != nil || !numberAt(tail.s, open+1) {
			return NoUnit, nil, false
		}
		return u, p.agree(u, tail, tail.cut(open+1, len(tail.s)-1)), true
	}
	return p.compound(tail)
}

// agree fails where the value in parentheses behind a quantity in u differs from
// it by more than the rounding of both.
func (p *parser) agree(u Unit, tail, inner text) *Error {
	q, err := p.make(u)
	if err != nil {
		return err
	}
	second, err := inner.quantity(u.Dimension(), NoUnit)
	if err != nil {
		return err
	}
	half := func(q Quantity) float64 { return math.Pow10(int(q.Place)) / 2 }
	e := tail.fail(0, q.String()+" and then "+second.String()+", which contradict each other", "two values that agree")
	same, convertErr := q.In(second.Unit)
	if convertErr != nil {
		return e
	}
	edge, _ := convert(q.Lo+half(q), u, second.Unit)
	at, _ := convert(q.Lo, u, second.Unit)
	room := (math.Abs(edge-at) + half(second)) * 1.0001
	if math.Abs(same.Lo-second.Lo) <= room && math.Abs(same.Hi-second.Hi) <= room && q.IsRange() == second.IsRange() {
		return nil
	}
	e.Hint = q.String() + " is " + same.String()
	return e
}

// compound reads the smaller unit of 1 ft 6 in, 1'-6" or 4 lb 3 oz and turns the
// whole into it.
func (p *parser) compound(tail text) (Unit, *Error, bool) {
	at := strings.IndexAny(tail.s, "0123456789")
	if at < 0 || p.isRange || p.lo.written != 0 || p.lo.pow != 0 || p.lo.value < 0 {
		return NoUnit, nil, false
	}
	large, err := tail.cut(0, len(strings.TrimRight(tail.s[:at], " -"))).unit(NoDimension, 0)
	n, next, numberErr := tail.number(at)
	if err != nil || numberErr != nil || n.pow != 0 {
		return NoUnit, nil, false
	}
	small, err := tail.cut(next, len(tail.s)).unit(NoDimension, 0)
	per := map[[2]Unit]float64{{Foot, Inch}: 12, {Pound, Ounce}: 16}[[2]Unit{large, small}]
	switch {
	case err != nil || per == 0:
		return NoUnit, nil, false
	case n.value >= per:
		understood := p.shown() + " " + large.Symbol() + " and then " + quote(tail.s[at:])
		return NoUnit, tail.fail(at, understood, "less than "+strconv.Itoa(int(per))+" "+small.Symbol()), true
	}
	n.value, n.place = clean(p.lo.value*per+n.value), n.written
	p.lo, p.hi = n, n
	return small, nil, true
}

// joinThousands returns t without the spaces that group thousands before a unit,
// as in 10 300 ksi, and whether there are any.
func (t text) joinThousands() (text, bool) {
	var s []byte
	var at []int
	digits, found := 0, false // digits counts those of the group before, -1 for no thousands
	for i := range len(t.s) {
		c := t.s[i]
		if c == ' ' && digits > 0 && digits <= 3 && threeDigits(t.s[i+1:]) && strings.IndexByte("/,", (t.s + " ")[i+4]) < 0 {
			found, digits = true, 0
			continue
		}
		switch {
		case isDigit(c) && digits >= 0:
			digits++
		case c == '.' || c == ',' || c == '/':
			digits = -1
		default:
			digits = 0
		}
		s, at = append(s, c), append(at, t.at[i])
	}
	joined := text{string(s), t.input, append(at, len(t.input))}
	return joined, found && !isDigit(joined.s[len(joined.s)-1])
}
