package units

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The characters that people type and paste. All functions take a text and a
// byte offset and return the offset behind what they read.

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// isSpace takes in the no-break, thin and zero-width spaces that come with
// pasted text.
func isSpace(r rune) bool {
	switch r {
	case '\u200b', '\u200c', '\u200d', '\u2060', '\ufeff':
		return true
	}
	return unicode.IsSpace(r)
}

func isSeparator(r rune) bool {
	switch r {
	case '-', '·', '*', '.', '•', '∙', '⋅', '×', '‐', '‑', '–', ',':
		return true
	}
	return false
}

func isDegree(r rune) bool { return r == '°' || r == 'º' || r == '˚' }

func skipSpace(s string, i int) int {
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		if !isSpace(r) {
			break
		}
		i += size
	}
	return i
}

func trimSpace(s string) string { return strings.TrimFunc(s, isSpace) }

// dashAt reads one hyphen, dash or minus.
func dashAt(s string, i int) (next int, ok bool) {
	r, size := utf8.DecodeRuneInString(s[i:])
	switch r {
	case '-', '‐', '‑', '‒', '–', '—', '−':
		return i + size, true
	}
	return i, false
}

// signAt reads a plus or minus.
func signAt(s string, i int) (next int, minus, ok bool) {
	if i < len(s) && s[i] == '+' {
		return i + 1, false, true
	}
	next, ok = dashAt(s, i)
	return next, ok, ok
}

// superscript reads a superscript integer such as ⁻⁶.
func superscript(s string, i int) (next, n int, ok bool) {
	neg, digits := false, 0
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		d := strings.IndexRune("⁰¹²³⁴⁵⁶⁷⁸⁹", r)
		switch {
		case d >= 0:
			n = 10*n + superscriptDigit(r)
			digits++
		case r == '⁻' && digits == 0 && !neg:
			neg = true
		case r == '⁺' && digits == 0 && !neg:
		default:
			size = 0
		}
		if size == 0 || digits > 3 {
			break
		}
		i += size
	}
	if neg {
		n = -n
	}
	return i, n, digits > 0 && digits <= 3
}

func superscriptDigit(r rune) int {
	switch r {
	case '¹':
		return 1
	case '²':
		return 2
	case '³':
		return 3
	}
	return int(r - '⁰')
}

// smallInt reads a signed integer of at most three digits.
func smallInt(s string, i int) (next, n int, ok bool) {
	next, neg, _ := signAt(s, i)
	start := next
	for next < len(s) && isDigit(s[next]) && next-start < 4 {
		n = 10*n + int(s[next]-'0')
		next++
	}
	if neg {
		n = -n
	}
	return next, n, next > start && next-start < 4
}

// exponentE reads the e-6 of 11.9e-6.
func exponentE(s string, i int) (next, n int, ok bool) {
	if i >= len(s) || (s[i] != 'e' && s[i] != 'E') {
		return i, 0, false
	}
	next, n, ok = smallInt(s, i+1)
	if !ok {
		return i, 0, false
	}
	return next, n, true
}

// powerOfTen reads ×10⁻⁶, x10^-6, *10**-6, and x 10-6 or × 106, which is what is
// left when pasting has flattened a superscript.
func powerOfTen(s string, i int) (next, n int, ok bool) {
	r, size := utf8.DecodeRuneInString(s[i:])
	switch r {
	case '×', 'x', 'X', '*', '·', '⋅', '∙':
	default:
		return i, 0, false
	}
	j := skipSpace(s, i+size)
	if !strings.HasPrefix(s[j:], "10") {
		return i, 0, false
	}
	if next, n, ok = tenTo(s, j); ok {
		return next, n, true
	}
	if next, n, ok = smallInt(s, j+2); ok && n > -100 && n < 100 {
		return next, n, true
	}
	return i, 0, false
}

// tenTo reads 10⁻⁶, 10^-6 or 10**-6.
func tenTo(s string, i int) (next, n int, ok bool) {
	if !strings.HasPrefix(s[i:], "10") {
		return i, 0, false
	}
	j := i + 2
	if next, n, ok = superscript(s, j); ok {
		return next, n, true
	}
	switch {
	case strings.HasPrefix(s[j:], "^("):
		if next, n, ok = smallInt(s, j+2); ok && strings.HasPrefix(s[next:], ")") {
			return next + 1, n, true
		}
	case strings.HasPrefix(s[j:], "^"):
		if next, n, ok = smallInt(s, j+1); ok {
			return next, n, true
		}
	case strings.HasPrefix(s[j:], "**"):
		if next, n, ok = smallInt(s, j+2); ok {
			return next, n, true
		}
	}
	return i, 0, false
}

func appendInt(b []byte, n int) []byte { return strconv.AppendInt(b, int64(n), 10) }
