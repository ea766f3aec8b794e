package units

import (
	"strings"
	"sync"
)

// maxInput is the longest text taken for a unit or a quantity, in bytes.
const maxInput = 200

// index maps the key of an expression to the units it may mean, the most usual
// first. It is built on first use: a run that parses nothing does not pay.
var index = sync.OnceValue(func() map[string][]Unit {
	m := make(map[string][]Unit, 2*int(unitCount))
	put := func(text string, u Unit) {
		var e expression
		if _, at := parseExpression(text, &e); at >= 0 || e.n == 0 {
			return
		}
		k := string(e.key(nil))
		for _, have := range m[k] {
			if have == u {
				return
			}
		}
		m[k] = append(m[k], u)
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		put(u.ASCII(), u) // a unit's own name goes before what others may mean by it
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		for spell := range strings.SplitSeq(u.def().spell, "|") {
			put(spell, u)
		}
	}
	return m
})

// ParseUnit reads a unit in any usual spelling: unicode or ASCII, µ or u,
// superscripts or not, factors in any order, any case where that is clear. Text
// that fits several units means the most usual: °F is a point on the scale, lb a
// mass, % a percentage. It fails with an *Error.
func ParseUnit(s string) (Unit, error) {
	u, err := lookup(s, NoDimension, 0)
	if err != nil {
		err.locate(s, 0)
		return NoUnit, err
	}
	return u, nil
}

// lookup finds the unit that s spells, times 10^pow. Where s fits several, it
// takes the one of dimension want, if there is one. The offset in its error
// counts from the start of s.
func lookup(s string, want Dimension, pow int) (Unit, *Error) {
	if len(s) > maxInput {
		return NoUnit, &Error{Expected: "a unit", Hint: "the text is too long"}
	}
	units, bad, at := find(s, pow)
	if units == nil && pow == 0 {
		if u, ok := hardness(s); ok {
			return u, nil
		}
	}
	if units == nil && !caseMatters(s) {
		if lower := strings.ToLower(s); lower != s {
			units, _, _ = find(lower, pow)
		}
	}
	if units == nil {
		return NoUnit, unknown(s, want, bad, max(at, 0))
	}
	for _, u := range units {
		if u.Dimension() == want {
			return u, nil
		}
	}
	return units[0], nil
}

func find(s string, pow int) (units []Unit, bad string, at int) {
	var e expression
	if bad, at = parseExpression(s, &e); at >= 0 {
		return nil, bad, at
	}
	if e.n == 0 {
		return nil, s, 0
	}
	e.pow += pow
	var buf [96]byte
	return index()[string(e.key(buf[:0]))], s, 0
}

// caseMatters reports whether s holds a prefix that lower case would change
// into another.
func caseMatters(s string) bool {
	return strings.Contains(s, "mS") || strings.Contains(s, "mPa") || strings.Contains(s, "Mm")
}

// unknown reports text that is no unit, with the nearest one.
func unknown(s string, want Dimension, bad string, at int) *Error {
	e := &Error{Expected: examples(want), Offset: at}
	t := trimSpace(s)
	switch {
	case t == "":
		return e
	case strings.HasPrefix(t, "mPa"):
		e.Hint = "mPa is millipascal; did you mean MPa?"
	case strings.HasPrefix(t, "Mm"):
		e.Hint = "Mm is megameter; did you mean mm?"
	case strings.Contains(t, "mS"):
		e.Hint = "mS is millisiemens; did you mean MS?"
	default:
		if u := nearest(t, want); u != NoUnit {
			e.Hint = "did you mean " + u.Symbol() + "?"
		}
	}
	e.Understood = "no unit in " + quote(trimSpace(bad))
	if trimSpace(bad) != t {
		e.Understood += " of " + quote(t)
	}
	return e
}

// nearest returns the unit whose spelling is the closest to s by edit distance,
// among those of dimension want where one is wanted; NoUnit where none is close.
func nearest(s string, want Dimension) Unit {
	if len(s) > 40 {
		return NoUnit
	}
	s = strings.ToLower(s)
	best, at := NoUnit, min(1+len(s)/3, len(s)-1) // one letter at least must agree
	for u := NoUnit + 1; u < unitCount; u++ {
		if u.Symbol() == "" || (want != NoDimension && u.Dimension() != want) {
			continue
		}
		for _, name := range [...]string{u.Symbol(), u.ASCII()} {
			if n := distance(s, strings.ToLower(name)); n <= at && (n < at || best == NoUnit) {
				best, at = u, n
			}
		}
	}
	return best
}

// distance is the number of letters to add, drop, change or swap with their
// neighbor to get from a to b.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, prev, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(x); i++ {
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, prev, row = prev, row, before
	}
	return prev[len(y)]
}
