package units

import "strings"

// qualifiers gives the words before and behind a value, the longer ones first where
// one begins another.
var qualifiers = [...]struct {
	qual          Qualifier
	before, after string
}{
	{AtLeast, ">=|=>|at least|no less than|not less than|minimum|min.|min", "minimum|min.|min|or more"},
	{AtMost, "<=|=<|at most|up to|no more than|not more than|maximum|max.|max", "maximum|max.|max|or less"},
	{MoreThan, ">|more than|greater than|over|above", ""},
	{LessThan, "<|less than|under|below", ""},
	{Approx, "~|approximately|approx.|approx|about|circa|ca.", "approximately|approx.|approx"},
}

// qualifierBefore reads a qualifier at i and returns the offset behind it.
func qualifierBefore(s string, i int) (q Qualifier, next int, ok bool) {
	for _, w := range &qualifiers {
		for word := range strings.SplitSeq(w.before, "|") {
			if hasPrefixFold(s[i:], word) && !splitsWord(s, i+len(word)) {
				return w.qual, i + len(word), true
			}
		}
	}
	return Exact, i, false
}

// qualifierAfter finds a qualifier, in parentheses or not, at the end of s and not
// before start. It returns where what stands before it ends.
func qualifierAfter(s string, start int) (end int, q Qualifier, ok bool) {
	inner, paren := strings.CutSuffix(strings.TrimRight(s, " "), ")")
	for _, w := range &qualifiers {
		for word := range strings.SplitSeq(w.after, "|") {
			at := len(inner) - len(word)
			if word == "" || at < start || !strings.EqualFold(inner[at:], word) || splitsWord(s, at) {
				continue
			}
			before, open := strings.CutSuffix(inner[:at], "(")
			if open != paren || strings.HasSuffix(before, "/") {
				continue
			}
			before = strings.TrimRight(strings.TrimRight(before, " "), ",")
			return max(len(before), start), w.qual, true
		}
	}
	return len(s), Exact, false
}
