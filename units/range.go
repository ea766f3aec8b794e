package units

import "strings"

// numbers reads the number or the two ends of a range, and leaves p.i and p.end
// at the ends of the unit.
func (p *parser) numbers() *Error {
	start := p.i
	if next, ok := plusMinus(p.s, p.i); ok { // ±0.015 in, about zero
		p.tolerance = true
		return p.addTolerance(next)
	}
	var err *Error
	if p.lo, p.i, err = p.number(p.i); err != nil {
		if err.Understood == "" && err.Expected == "a number" {
			err.Understood = "no number in " + quote(p.cut(start, len(p.s)).typed())
			err.Expected = wantedQuantity(p.want)
		}
		return err
	}
	p.hi = p.lo
	if next, ok := plusMinus(p.s, p.i); ok {
		return p.addTolerance(next)
	}
	if next, mark := rangeMark(p.s, p.i, true); mark != noMark {
		p.isRange = true
		p.hi, p.i, err = p.number(next)
		return err
	}
	if end, ok := strings.CutPrefix(p.s[skipSpace(p.s, p.i):], "-"); ok && (end == "" || end[0] == ' ') {
		return p.fail(p.i, "a range without its second end", "a range such as 30-40")
	}
	return p.secondEnd()
}

// addTolerance reads the tolerance at i: 12.4 ± 0.2 is the range 12.2–12.6.
func (p *parser) addTolerance(i int) *Error {
	tol, next, err := p.number(i)
	if err != nil {
		return err
	}
	p.i = next
	if p.tolerance {
		p.lo.pow, p.lo.place, p.lo.written = tol.pow, tol.place, tol.written
	}
	if tol.value <= 0 || tol.pow != p.lo.pow {
		return p.fail(next, "", "a tolerance above 0 after ±")
	}
	mid := p.lo.value
	p.lo.place = min(p.lo.place, tol.place)
	p.lo.written = min(p.lo.written, tol.written)
	p.hi = p.lo
	p.lo.value, p.hi.value = clean(mid-tol.value), clean(mid+tol.value)
	p.isRange = true
	return nil
}

// secondEnd looks behind the first number for the second end of a range whose
// first end has its own unit: 37 ksi to 40 ksi, 68 °F – 212 °F, 68F-212F.
func (p *parser) secondEnd() *Error {
	for i := p.i; i < len(p.s); i++ {
		next, mark := rangeMark(p.s, i, false)
		if mark == noMark {
			continue
		}
		hi, end, err := p.number(next)
		first, second := p.cut(p.i, i), p.cut(min(end, len(p.s)), len(p.s))
		if mark != clearMark && (err != nil || first.s == "" || !strings.EqualFold(first.s, second.s)) {
			continue
		}
		if err == nil {
			err = p.oneUnit(first, second)
		}
		if err != nil {
			return err
		}
		p.hi, p.isRange = hi, true
		if second.s == "" {
			p.end = i
		} else {
			p.i = skipSpace(p.s, end)
		}
		return nil
	}
	return nil
}

// oneUnit fails where the ends of a range have units that are not the same.
func (p *parser) oneUnit(first, second text) *Error {
	if first.s == "" || second.s == "" || strings.EqualFold(first.s, second.s) {
		return nil
	}
	a, err := first.unit(p.want, 0)
	if err != nil {
		return err
	}
	if end, _, ok := qualifierAfter(second.s, 0); ok {
		second = second.cut(0, end)
	}
	b, err := second.unit(p.want, 0)
	if err == nil && a != b {
		return first.fail(0, "a range from "+describe(a)+" to "+describe(b), "one unit for both ends")
	}
	return err
}

// plusMinus steps over ± or +/-.
func plusMinus(s string, i int) (next int, ok bool) {
	i = skipSpace(s, i)
	for _, mark := range [...]string{"+/-", "+-"} {
		if strings.HasPrefix(s[i:], mark) {
			return skipSpace(s, i+len(mark)), true
		}
	}
	return i, false
}

// A mark stands between the ends of a range.
type mark uint8

const (
	noMark    mark = iota
	dashMark       // a dash that may as well be the hyphen of a unit
	clearMark      // "to", "..", a dash beside a number or with space on both sides
)

// rangeMark steps over what stands between the ends of a range, up to a number
// behind it.
func rangeMark(s string, i int, besideNumber bool) (next int, m mark) {
	next = skipSpace(s, i)
	spaced := next > i
	length := 0
	for _, w := range [...]struct {
		text string
		fits bool
	}{{"...", true}, {"..", true}, {"to", spaced || besideNumber}, {"and", spaced && besideNumber}, {"~", besideNumber}, {"-", true}} {
		if length == 0 && w.fits && hasPrefixFold(s[next:], w.text) && !splitsWord(s, next+len(w.text)) {
			length = len(w.text)
		}
	}
	m = clearMark
	if dash := strings.HasPrefix(s[next:], "-"); dash && !besideNumber && (!spaced || skipSpace(s, next+1) == next+1) {
		m = dashMark
	}
	next = skipSpace(s, next+length)
	if length == 0 || !numberAt(s, next) {
		return i, noMark
	}
	return next, m
}

// numberAt reports whether a number begins at i, with a sign or not.
func numberAt(s string, i int) bool {
	i = skipSpace(s, i)
	if i < len(s) && (s[i] == '-' || s[i] == '+') {
		i = skipSpace(s, i+1)
	}
	return digitAt(s, i) || strings.HasPrefix(s[i:], ".") && digitAt(s, i+1)
}
