package spoken

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/spelling"
)

// The words that tell of what the part is made of today: behind its name or before
// it, and those that stand before it alone.
const (
	currentWords  = "today|today's|now|currently|at present|presently|at the moment|current one|current part|current metal|existing one|existing part"
	replacedWords = "replaces|replace|replacing|instead of|in place of"
)

// wishes are words of a sentence that asks for something, which is not there today.
var wishes = strings.Fields("want wants wanted need needs needed like ask asks asking looking make get")

// today takes what the clause says of today's metal out of it: class 30 today,
// currently in bronze. A family alone is not taken for a limit, it is asked which.
func (r *reader) today(in, ts []token) []token {
	at := slices.IndexFunc(ts, func(t token) bool { return t.role == current })
	if at < 0 {
		return ts
	}
	wish := slices.ContainsFunc(in, func(t token) bool { return slices.Contains(wishes, key(t.text)) })
	from, end := at, at+1
	if ts[at].op == needs.AtLeast && !wish { // behind the name
		for from > 0 && ofName(ts[from-1]) {
			from--
		}
	}
	if from == at && !(wish && ts[at].op == needs.AtLeast) {
		start := end
		for start < len(ts) && ts[start].role == link {
			start++
		}
		if n := designation(ts, start); n > start {
			end = n
		}
	}
	rest := append(slices.Clone(ts[:from]), ts[end:]...)
	if name := r.span(slices.DeleteFunc(slices.Clone(ts[from:end]), func(t token) bool { return t.role == current || t.role == link })); name != "" {
		r.setToday(r.span(ts[from:end]), name)
	}
	return r.today(in, rest)
}

func ofName(t token) bool {
	return t.role == unknown || t.role == named || t.role == quantity && t.bare
}

// setToday adds a piece with the metal that a name stands for.
func (r *reader) setToday(text, name string) {
	if m := r.families[key(name)]; m.role == named {
		r.refuse(text, &ParseError{Hint: "today's metal is no limit; name its grade" + r.examples(m.families)})
		return
	}
	m, _, err := r.catalog.ResolveNear(name)
	if err != nil {
		r.refuse(text, &ParseError{Hint: err.Error()})
		return
	}
	r.now = m
	r.out = append(r.out, Piece{Text: text, Today: m, ReadAs: "made of " + m.Name() + " today"})
}

// examples are grades of the families that are asked for often: ", such as
// gray-20, gray-25 or gray-30".
func (r *reader) examples(families []string) string {
	family := needs.Need{Kind: needs.OfFamily, Families: families}
	var ids []string
	for _, id := range r.catalog.Everyday {
		if m := r.catalog.Material(id); m != nil && len(ids) < 3 && family.Admits(m) {
			ids = append(ids, id)
		}
	}
	if len(ids) == 0 {
		return ""
	}
	return ", such as " + strings.Join(ids, " or ")
}

// Today is the metal that the text says the part is made of; nil where it says none.
func (s Said) Today() *props.Material {
	for _, p := range s.Pieces {
		if p.Today != nil {
			return p.Today
		}
	}
	return nil
}

// digits are the numbers that are said in words.
var digits = [...][2]string{
	{"half", "1/2"}, {"quarter", "1/4"}, {"three quarter", "3/4"}, {"three quarters", "3/4"}, {"three eighths", "3/8"}, {"five eighths", "5/8"}, {"an eighth", "1/8"},
	{"one", "1"}, {"two", "2"}, {"three", "3"}, {"four", "4"}, {"five", "5"}, {"six", "6"}, {"seven", "7"},
	{"eight", "8"}, {"nine", "9"}, {"ten", "10"}, {"twelve", "12"}, {"fifteen", "15"}, {"twenty", "20"}, {"thirty", "30"},
}

const measures = `(inch(?:es)?|in\b|foot|feet|ft\b|pounds?|lbs?\b|ounces?|oz\b|kilos?|kg\b|percent|ksi\b|mpa\b|mm\b|degrees)`

var (
	shareWords    = spelling.Pattern{Expr: `(?i)\b(half|twice|double|a third|two thirds|a quarter|three quarters|\d+(?:\.\d+)? times)(?: of)? (as|the|its|today's|lighter|stronger|stiffer|harder)\b`}
	fractionWords = spelling.Pattern{Expr: `(?i)\b(?:an? )?(half|three[ -]quarters?|quarter|three[ -]eighths|five[ -]eighths|an eighth)(?: of)?(?: an?)?[ -]` + measures}
	mixedWords    = spelling.Pattern{Expr: `(?i)\b(one|two|three|four|five|six|seven|eight|nine|ten|twelve|\d+) and (?:a |an |one )?(half|quarter|three[ -]quarters)[ -]` + measures}
	thousandWords = spelling.Pattern{Expr: `(?i)\b(\d+(?:\.\d+)?) thousand\b`}
	minusWords    = spelling.Pattern{Expr: `(?i)\b(?:minus|negative) (\d)`}
	belowWords    = spelling.Pattern{Expr: `(?i)\b(\d+(?:\.\d+)?) (?:degrees )?below zero\b`}
	perDegree     = spelling.Pattern{Expr: `(?i)\bppm per (?:degrees? |deg )?([CFK])\b`}
	perYear       = spelling.Pattern{Expr: `(?i)(\d)\s*/\s*(?:yr|year)\b\.?`}
	countWords    = spelling.Pattern{Expr: `(?i)\b(one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty)[ -]` + measures}
)

// shares are the parts of a whole that are said in words, in percent.
var shares = [...][2]string{
	{"half", "50"}, {"twice", "200"}, {"double", "200"}, {"a third", "33.3"}, {"two thirds", "66.7"}, {"a quarter", "25"}, {"three quarters", "75"},
}

// inDigits writes numbers that are said in words in digits: half an inch, two and a
// half pounds, minus 20, 30 thousand psi, 20000/yr, and shares in percent: half the
// weight.
func inDigits(text string) string {
	of := func(list [][2]string, word string) string {
		for _, said := range list {
			if said[0] == word {
				return said[1]
			}
		}
		return word
	}
	digit := func(word string) string { return of(digits[:], strings.ReplaceAll(strings.ToLower(word), "-", " ")) }
	rewrite := func(pattern *regexp.Regexp, as func(m []string) string) {
		text = pattern.ReplaceAllStringFunc(text, func(s string) string { return as(pattern.FindStringSubmatch(s)) })
	}
	counted := func(m []string) string { return digit(m[1]) + " " + m[2] }
	rewrite(shareWords.Regexp(), func(m []string) string {
		share := of(shares[:], strings.ToLower(m[1]))
		if number, ok := strings.CutSuffix(m[1], " times"); ok {
			share = multiplied(number, 100)
		}
		return share + " % " + m[2]
	})
	rewrite(mixedWords.Regexp(), func(m []string) string { return digit(m[1]) + " " + digit(m[2]) + " " + m[3] })
	rewrite(fractionWords.Regexp(), counted)
	text = minusWords.Regexp().ReplaceAllString(text, "-$1")
	text = belowWords.Regexp().ReplaceAllString(text, "-$1")
	text = perDegree.Regexp().ReplaceAllString(text, "ppm/$1")
	text = perYear.Regexp().ReplaceAllString(text, "$1 a year")
	rewrite(thousandWords.Regexp(), func(m []string) string { return multiplied(m[1], 1000) })
	rewrite(countWords.Regexp(), counted)
	return text
}

// multiplied is a number of digits and a point times a factor.
func multiplied(number string, by float64) string {
	v, _ := strconv.ParseFloat(number, 64)
	return strconv.FormatFloat(by*v, 'f', -1, 64)
}
