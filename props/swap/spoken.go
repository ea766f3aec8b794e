package swap

import "strings"

// spokenPoints are the ratios that have a name in speech, rising.
var spokenPoints = []struct {
	ratio float64
	name  string
}{
	{1. / 100, "a hundredth"}, {1. / 20, "a twentieth"}, {1. / 10, "a tenth"}, {1. / 5, "a fifth"}, {1. / 4, "a quarter"}, {1. / 3, "a third"},
	{2. / 5, "two fifths"}, {1. / 2, "half"}, {3. / 5, "three fifths"}, {2. / 3, "two thirds"}, {3. / 4, "three quarters"}, {4. / 5, "four fifths"},
	{9. / 10, "nine tenths"}, {1, "the same"}, {1.1, "1.1 times"}, {1.25, "1¼ times"}, {1.5, "1½ times"}, {1.75, "1¾ times"}, {2, "twice"},
	{2.5, "2½ times"}, {3, "3 times"}, {4, "4 times"}, {5, "5 times"}, {7, "7 times"}, {10, "10 times"}, {20, "20 times"}, {50, "50 times"}, {100, "100 times"},
}

// Spoken is a positive ratio between lo and hi as one says it. The phrase
// always stands for an interval that holds lo to hi: "about" reaches 2 % to
// either side, "a little over" and "a little under" 10 % to one side, "X to Y"
// from X to Y. It is empty where lo to hi is no interval of positive ratios.
func Spoken(lo, hi float64) string {
	if !(lo > 0 && lo <= hi) {
		return ""
	}
	for _, p := range spokenPoints {
		if lo >= 0.98*p.ratio && hi <= 1.02*p.ratio {
			return "about " + p.name
		}
	}
	for _, p := range spokenPoints {
		switch {
		case lo >= p.ratio && hi <= 1.1*p.ratio:
			return "a little over " + p.name
		case lo >= 0.9*p.ratio && hi <= p.ratio:
			return "a little under " + p.name
		}
	}
	from, to := "", ""
	for _, p := range spokenPoints {
		if p.ratio <= lo {
			from = p.name
		}
		if p.ratio >= hi && to == "" {
			to = p.name
		}
	}
	switch {
	case from == "" && to == "":
		return "anything"
	case from == "":
		return "less than " + to
	case to == "":
		return "more than " + from
	}
	if short, ok := strings.CutSuffix(from, " times"); ok && strings.HasSuffix(to, " times") {
		from = short
	}
	return from + " to " + to
}

// SpokenOf is Spoken with what the ratio is of: "about half of today's", "a
// little over twice today's", "about the same as today's". It is empty where
// Spoken is.
func SpokenOf(lo, hi float64, what string) string {
	s := Spoken(lo, hi)
	switch {
	case s == "" || s == "anything":
		return s
	case strings.HasSuffix(s, "the same"):
		return strings.NewReplacer("under the same", "less than", "over the same", "more than", "the same", "the same as").Replace(s) + " " + what
	case strings.HasSuffix(s, " times"), strings.HasSuffix(s, "twice"):
		return s + " " + what
	}
	return s + " of " + what
}
