package units

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// text is a text folded to plain ASCII as far as it has an equivalent: µΩ·cm is
// uohm *cm and 10⁻⁶ is 10^-6. Its bytes remember where in the input they came from,
// so that an error can quote and point at what was typed.
type text struct {
	s     string
	input string
	at    []int // offset in input of each byte of s, and of the end
}

// folds gives the plain form of characters that people type and paste. Spaces,
// superscripts and the ohm, which depend on their neighbors, are in plain.
var folds = [...]struct{ from, to string }{
	{"‐‑‒–—−", "-"}, {"·•∙⋅×", "*"}, {"÷⁄", "/"}, {"µμΜ", "u"}, {"√", " sqrt "}, {"Δ∆", " delta "},
	{"º˚", "°"}, {"℃", "°C"}, {"℉", "°F"}, {"″”", `"`}, {"′’", "'"}, {"‰", "permille"}, {"…", "..."},
	{"½", "1/2"}, {"¼", "1/4"}, {"¾", "3/4"}, {"⅛", "1/8"}, {"⅜", "3/8"}, {"⅝", "5/8"}, {"⅞", "7/8"}, {"⅓", "1/3"}, {"⅔", "2/3"},
	{"±", "+/-"}, {"≥⩾", ">="}, {"≤⩽", "<="}, {"≈≃∼", "~"},
}

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻"

func fold(input string) text {
	t := text{input: input}
	var b strings.Builder
	raised := false // in a superscript
	for i, r := range input {
		_, size := utf8.DecodeRuneInString(input[i:])
		plain := plain(b.String(), r, input[i:i+size], input[i+size:])
		if up := strings.ContainsRune(superscripts, r); up != raised {
			if raised = up; up {
				plain = "^" + plain
			} else if isDigit(input[i]) {
				plain = " " + plain
			}
		}
		for range len(plain) {
			t.at = append(t.at, i)
		}
		b.WriteString(plain)
	}
	t.at = append(t.at, len(input))
	t.s = b.String()
	return t
}

// plain folds one character, given what stands before it, folded, and behind it.
func plain(before string, r rune, typed, after string) string {
	last := byte(' ')
	if before != "" {
		last = before[len(before)-1]
	}
	switch {
	case strings.ContainsRune("\u00a0\u2007\u2009\u202f", r) && isDigit(last) && threeDigits(after):
		return "" // a thin space between thousands, as SI tables print them
	case isSpace(r):
		return " "
	case r < utf8.RuneSelf:
		return typed
	case r == '\u03a9' || r == '\u2126': // Greek omega, ohm sign
		if next, _ := utf8.DecodeRuneInString(after); unicode.IsLetter(next) {
			return "ohm "
		}
		return "ohm"
	}
	if i := slices.Index([]rune(superscripts), r); i >= 0 {
		return "0123456789+-"[i : i+1]
	}
	return folded(last, r, typed, after)
}

func folded(last byte, r rune, typed, after string) string {
	for _, f := range &folds {
		if !strings.ContainsRune(f.from, r) || r == 'Μ' && strings.HasPrefix(after, "Ω") { // a megohm?
			continue
		}
		switch {
		case !isDigit(f.to[0]):
			return f.to
		case isDigit(last): // 1½
			return " " + f.to + " "
		case isLetter(last): // MPa·m½
			return "^" + f.to + " "
		}
		return f.to + " "
	}
	return typed
}

// threeDigits reports whether s begins with three digits and no fourth.
func threeDigits(s string) bool {
	return len(s) >= 3 && isDigit(s[0]) && isDigit(s[1]) && isDigit(s[2]) && !digitAt(s, 3)
}

// cut returns the part of t from i to j, without the spaces around it.
func (t text) cut(i, j int) text {
	for i < j && t.s[i] == ' ' {
		i++
	}
	for j > i && t.s[j-1] == ' ' {
		j--
	}
	return text{t.s[i:j], t.input, t.at[i : j+1]}
}

// typed returns t as it was typed.
func (t text) typed() string { return t.input[t.at[0]:t.at[len(t.s)]] }

// isSpace takes in the no-break, thin and zero-width spaces that come with
// pasted text.
func isSpace(r rune) bool {
	return unicode.IsSpace(r) || strings.ContainsRune("\u200b\u200c\u200d\u2060\ufeff", r)
}

func trimSpace(s string) string { return strings.TrimFunc(s, isSpace) }

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func digitAt(s string, i int) bool { return i < len(s) && isDigit(s[i]) }

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

func hasPrefixFold(s, prefix string) bool {
	return len(s) >= len(prefix) && strings.EqualFold(s[:len(prefix)], prefix)
}

// splitsWord reports whether cutting s at i would split a word.
func splitsWord(s string, i int) bool {
	return i > 0 && i < len(s) && isLetter(s[i-1]) && isLetter(s[i])
}

// skipSpace and the functions below take a folded text and an offset and return
// the offset behind what they read.
func skipSpace(s string, i int) int {
	for i < len(s) && s[i] == ' ' {
		i++
	}
	return i
}

// integer reads a signed integer of at most three digits.
func integer(s string, i int) (next, n int, ok bool) {
	next = i
	if next < len(s) && (s[next] == '-' || s[next] == '+') {
		next++
	}
	start := next
	for digitAt(s, next) && next-start < 4 {
		n = 10*n + int(s[next]-'0')
		next++
	}
	if s[i:start] == "-" {
		n = -n
	}
	return next, n, next > start && next-start < 4
}

// exponentE reads the e-6 of 11.9e-6.
func exponentE(s string, i int) (next, n int, ok bool) {
	if i >= len(s) || s[i]|0x20 != 'e' {
		return i, 0, false
	}
	return integer(s, i+1)
}

// powerOfTen reads 10⁻⁶, 10^-6 or 10**-6, and behind a sign of multiplication
// also 10-6 or 106, which is what is left when pasting has flattened a superscript.
func powerOfTen(s string, i int) (next, n int, ok bool) {
	times := i < len(s) && strings.IndexByte("xX*", s[i]) >= 0
	if times {
		i = skipSpace(s, i+1)
	}
	if !strings.HasPrefix(s[i:], "10") {
		return i, 0, false
	}
	i += 2
	switch {
	case strings.HasPrefix(s[i:], "^("):
		next, n, ok = integer(s, i+2)
		return next + 1, n, ok && strings.HasPrefix(s[next:], ")")
	case strings.HasPrefix(s[i:], "^"):
		return integer(s, i+1)
	case strings.HasPrefix(s[i:], "**"):
		return integer(s, i+2)
	}
	next, n, ok = integer(s, i)
	return next, n, ok && times && n > -100 && n < 100
}
