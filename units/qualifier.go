package units

import "strings"

// words before a value, the longer ones first where one begins another.
var qualifiersBefore = [...]struct {
	text string
	qual Qualifier
}{
	{">=", AtLeast}, {"=>", AtLeast}, {"≥", AtLeast}, {"⩾", AtLeast},
	{"<=", AtMost}, {"=<", AtMost}, {"≤", AtMost}, {"⩽", AtMost},
	{">", MoreThan}, {"<", LessThan},
	{"~", Approx}, {"≈", Approx}, {"≃", Approx}, {"∼", Approx},
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

// qualifierAfter cuts a qualifier, in parentheses or not, off the end of s.
func qualifierAfter(s string) (rest string, q Qualifier, ok bool) {
	t := strings.TrimRightFunc(s, isSpace)
	inner, paren := strings.CutSuffix(t, ")")
	for _, w := range &qualifiersAfter {
		at := len(inner) - len(w.text)
		if at < 0 || !strings.EqualFold(inner[at:], w.text) {
			continue
		}
		before := inner[:at]
		if paren {
			if before, ok = strings.CutSuffix(before, "("); !ok {
				continue
			}
		}
		if before != "" && isLetter(before[len(before)-1]) || strings.HasSuffix(before, "/") {
			continue
		}
		return strings.TrimRight(strings.TrimRightFunc(before, isSpace), ","), w.qual, true
	}
	return s, Exact, false
}

func hasPrefixFold(s, prefix string) bool {
	return len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix)
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// splitsWord reports whether cutting s at i would part a word.
func splitsWord(s string, i int) bool {
	return i > 0 && i < len(s) && isLetter(s[i-1]) && isLetter(s[i])
}
