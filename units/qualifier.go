package units

import "strings"

// words before a value, the longer ones first where one begins another.
var qualifiersBefore = [...]struct {
	text string
	qual Qualifier
}{
	{">=", AtLeast}, {"=>", AtLeast},
	{"<=", AtMost}, {"=<", AtMost},
	{">", MoreThan}, {"<", LessThan},
	{"~", Approx},
	{"at least", AtLeast}, {"no less than", AtLeast}, {"not less than", AtLeast},
	{"minimum", AtLeast}, {"min.", AtLeast}, {"min", AtLeast},
	{"at most", AtMost}, {"up to", AtMost}, {"no more than", AtMost}, {"not more than", AtMost},
	{"maximum", AtMost}, {"max.", AtMost}, {"max", AtMost},
	{"more than", MoreThan}, {"greater than", MoreThan}, {"over", MoreThan}, {"above", MoreThan},
	{"less than", LessThan}, {"under", LessThan}, {"below", LessThan},
	{"approximately", Approx}, {"approx.", Approx}, {"approx", Approx}, {"about", Approx},
	{"circa", Approx}, {"ca.", Approx},
}

var qualifiersAfter = [...]struct {
	text string
	qual Qualifier
}{
	{"minimum", AtLeast}, {"min.", AtLeast}, {"min", AtLeast}, {"or more", AtLeast},
	{"maximum", AtMost}, {"max.", AtMost}, {"max", AtMost}, {"or less", AtMost},
	{"approximately", Approx}, {"approx.", Approx}, {"approx", Approx},
}

// qualifierBefore reads a qualifier at i and returns the offset behind it.
func qualifierBefore(s string, i int) (q Qualifier, next int, ok bool) {
	for _, w := range &qualifiersBefore {
		if hasPrefixFold(s[i:], w.text) && !splitsWord(s, i+len(w.text)) {
			return w.qual, i + len(w.text), true
		}
	}
	return Exact, i, false
}

// qualifierAfter finds a qualifier, in parentheses or not, at the end of s and not
// before start. It returns where what stands before it ends.
func qualifierAfter(s string, start int) (end int, q Qualifier, ok bool) {
	inner, paren := strings.CutSuffix(strings.TrimRight(s, " "), ")")
	for _, w := range &qualifiersAfter {
		at := len(inner) - len(w.text)
		if at < start || !strings.EqualFold(inner[at:], w.text) {
			continue
		}
		before := inner[:at]
		if paren {
			if before, ok = strings.CutSuffix(before, "("); !ok {
				continue
			}
		}
		if splitsWord(s, at) || strings.HasSuffix(before, "/") {
			continue
		}
		before = strings.TrimRight(strings.TrimRight(before, " "), ",")
		return max(len(before), start), w.qual, true
	}
	return len(s), Exact, false
}
