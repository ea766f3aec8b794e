package units

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

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
	p.tailAt = skipSpace(p.s, p.i)
	p.tail = p.s[p.tailAt:]
	return nil
}

// clean drops the binary noise that a sum of two decimals carries.
func clean(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', decimalDigits-2, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// secondEnd looks in the tail for the second end of a range whose first end has
// its own unit: 37 ksi to 40 ksi, 68 °F – 212 °F, 68F-212F.
func (p *parser) secondEnd() *Error {
	for i := 0; i < len(p.tail); {
		next, mark := rangeMark(p.tail, i, false)
		if mark != noMark {
			hi, end, err := parseNumber(p.tail, next)
			first, second := trimSpace(p.tail[:i]), trimSpace(p.tail[min(end, len(p.tail)):])
			if mark == clearMark || err == nil && first != "" && strings.EqualFold(first, second) {
				if err == nil {
					err = p.oneUnit(first, second)
				}
				if err != nil {
					err.Offset += p.tailAt
					return err
				}
				p.hi, p.isRange = hi, true
				if second == "" {
					p.tail = p.tail[:i]
				} else {
					end = skipSpace(p.tail, end)
					p.tail, p.tailAt = p.tail[end:], p.tailAt+end
				}
				return nil
			}
		}
		_, size := utf8.DecodeRuneInString(p.tail[i:])
		i += size
	}
	return nil
}

// oneUnit fails where the ends of a range have units that are not the same.
func (p *parser) oneUnit(first, second string) *Error {
	if first == "" || second == "" || strings.EqualFold(first, second) {
		return nil
	}
	a, err := lookup(first, p.want, 0)
	if err != nil {
		return err
	}
	if rest, _, ok := qualifierAfter(second); ok {
		second = rest
	}
	if b, err := lookup(second, p.want, 0); err == nil && a != b {
		return &Error{
			Understood: "a range from " + describe(a) + " to " + describe(b),
			Expected:   "one unit for both ends",
		}
	}
	return nil
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

// A mark parts the ends of a range.
type mark uint8

const (
	noMark    mark = iota
	dashMark       // a dash that may as well be the hyphen of a unit
	clearMark      // "to", "..", a dash beside a number or with space on both sides
)

// rangeMark steps over what parts the ends of a range, up to a number behind it.
func rangeMark(s string, i int, besideNumber bool) (next int, m mark) {
	start := i
	i = skipSpace(s, i)
	spaced := i > start
	m = clearMark
	switch {
	case strings.HasPrefix(s[i:], "..."):
		i += 3
	case strings.HasPrefix(s[i:], ".."):
		i += 2
	case strings.HasPrefix(s[i:], "…"):
		i += len("…")
	case hasPrefixFold(s[i:], "to") && (spaced || besideNumber) && !splitsWord(s, i+2):
		i += 2
	case hasPrefixFold(s[i:], "and") && spaced && besideNumber:
		i += 3
	case besideNumber && strings.HasPrefix(s[i:], "~"):
		i++
	default:
		j, dash := dashAt(s, i)
		if !dash {
			return start, noMark
		}
		if !besideNumber && (!spaced || skipSpace(s, j) == j) {
			m = dashMark
		}
		i = j
	}
	i = skipSpace(s, i)
	if !numberAt(s, i) {
		return start, noMark
	}
	return i, m
}

// numberAt reports whether a number begins at i, with a sign or not.
func numberAt(s string, i int) bool {
	j, _, _ := signAt(s, i)
	j = skipSpace(s, j)
	_, _, isFraction := vulgar(s, j)
	return isFraction || nextDigit(s, j) || j < len(s) && s[j] == '.' && nextDigit(s, j+1)
}
