package units

import (
	"slices"
	"strings"
	"sync"
)

// maxInput is the longest text taken for a unit or a quantity, in bytes.
const maxInput = 200

// index maps the key of an expression to the units it may mean, the most usual
// first. It is built on first use: a run that parses nothing does not pay.
func index() map[string][]Unit {
	indexOnce.Do(func() { indexMap = newIndex() })
	return indexMap
}

var (
	indexOnce sync.Once
	indexMap  map[string][]Unit
)

func newIndex() map[string][]Unit {
	m := make(map[string][]Unit, 2*int(unitCount))
	put := func(spelling string, u Unit) {
		if e, _, _, ok := parseExpression(spelling); ok && !slices.Contains(m[e.key(0)], u) {
			m[e.key(0)] = append(m[e.key(0)], u)
		}
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		put(u.ASCII(), u) // a unit's own name goes before what others may mean by it
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		for spelling := range strings.SplitSeq(u.def().spell, "|") {
			put(spelling, u)
		}
	}
	return m
}

// ParseUnit reads a unit in any usual spelling: unicode or ASCII, µ or u,
// superscripts or not, factors in any order, any case where that is clear. Text
// that fits several units means the most usual: °F is a point on the scale, lb a
// mass, % a percentage. It fails with an *Error.
func ParseUnit(s string) (Unit, error) {
	if len(s) > maxInput {
		return NoUnit, &Error{Input: clip(s), Expected: "a unit", Hint: "the text is too long"}
	}
	t := fold(s)
	u, err := t.cut(0, len(t.s)).unit(NoDimension, 0)
	if err != nil {
		return NoUnit, err
	}
	return u, nil
}

// unit finds the unit that t spells, times 10^pow. Where t fits several, it takes
// the one of dimension want, if there is one.
func (t text) unit(want Dimension, pow int) (Unit, *Error) {
	e, from, to, ok := parseExpression(t.s)
	us := index()[e.key(pow)]
	if (!ok || us == nil) && pow == 0 {
		if u, ok := hardness(t.s); ok {
			return u, nil
		}
	}
	if (!ok || us == nil) && !slices.ContainsFunc(misread[:], func(m misreading) bool { return strings.Contains(t.s, m.typed) }) {
		if lower, _, _, lowerOK := parseExpression(strings.ToLower(t.s)); lowerOK {
			us, ok = index()[lower.key(pow)], true // CAL/CM-S-C, where S is no siemens
		}
	}
	switch {
	case !ok:
		return NoUnit, t.unknown(from, to, want, func() Unit { return t.respelled(want, from, to) })
	case us == nil && slices.ContainsFunc(e.factors, func(f factor) bool { return f.atom == "ton" }):
		err := t.unknown(0, len(t.s), want, nil)
		err.Hint = "say which: short tons (2000 lb), long tons (2240 lb) or t (metric)"
		return NoUnit, err
	case us == nil:
		return NoUnit, t.unknown(0, len(t.s), want, func() Unit { return t.otherPower(e, want) })
	}
	for _, u := range us {
		if u.Dimension() == want {
			return u, nil
		}
	}
	return us[0], nil
}

// unknown reports that t is no unit, or its part from..to no unit word, with what
// the text may be a slip for.
func (t text) unknown(from, to int, want Dimension, near func() Unit) *Error {
	err := t.fail(from, "", examples(want))
	if t.s == "" {
		return err
	}
	whole, bad := t.typed(), t.cut(from, to).typed()
	err.Understood = "no unit in " + quote(bad)
	if bad != whole {
		err.Understood += " of " + quote(whole)
	}
	for _, m := range misread {
		if strings.Contains(whole, m.typed) {
			err.Hint = m.typed + " is " + m.name + "; did you mean " + m.meant + "?"
			return err
		}
	}
	if near != nil && near() != NoUnit {
		err.Hint = "did you mean " + near().Symbol() + "?"
	}
	return err
}

// otherPower returns the unit whose expression differs from e in exponents alone,
// as lb/in² does from lb/in³; NoUnit where there is none.
func (t text) otherPower(e expression, want Dimension) Unit {
	if strings.EqualFold(t.s, "IACS") {
		return IACS
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		o, _, _, ok := parseExpression(u.ASCII())
		if ok && (want == NoDimension || u.Dimension() == want) && len(o.factors) > 1 && e.atoms() == o.atoms() {
			return u
		}
	}
	return NoUnit
}

// respelled returns the unit that t means if its bad word is a slip of one letter,
// or of two in a long word: ksi for kis. The first letter stays, or trades places
// with the second: to change it, as in kPa for hPa, would change the magnitude.
func (t text) respelled(want Dimension, from, to int) Unit {
	bad := strings.ToLower(t.s[from:to])
	best, least := NoUnit, 2+len(bad)/6
	for _, w := range &words {
		for word := range strings.FieldsSeq(w.spellings) {
			n := distance(bad, word)
			if n >= least || !alike(bad, word) {
				continue
			}
			e, _, _, ok := parseExpression(t.s[:from] + word + t.s[to:])
			for _, u := range index()[e.key(0)] {
				if ok && n < least && (want == NoDimension || u.Dimension() == want) {
					best, least = u, n
				}
			}
		}
	}
	return best
}

// alike reports whether a word may be what bad was meant to be: not too short to
// tell, and with the same two letters first, in any order, or the same first one.
func alike(bad, word string) bool {
	if len(bad) < 3 || len(word) < 2 || len(bad) == 3 && len(word) < 3 {
		return false
	}
	return word[0] == bad[0] || word[1] == bad[0] && word[0] == bad[1]
}

// distance is the number of letters to add, drop, change or swap with their
// neighbor to get from a to b.
func distance(a, b string) int {
	before, prev, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, prev, row = prev, row, before
	}
	return prev[len(b)]
}
