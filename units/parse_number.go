package units

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// number is one number as written. Its value is value × 10^pow, kept apart
// because a power of ten may belong to the unit, as in 11.9 ×10⁻⁶/°F.
type number struct {
	value   float64
	place   int  // power of ten of the last significant digit of value
	written int  // power of ten of the last digit written; below place for 30000
	pow     int  // power of ten that follows, 0 for none
	times   bool // pow was written as × 10ⁿ, not as eⁿ
}

// maxDigits bounds the digits of one number, maxPower its power of ten.
const (
	maxDigits = 40
	maxPower  = 60
)

// parseNumber reads one number at i: 37, -40, 0.097, 20,000, 1 1/8, 3/8, 1½,
// 11.9e-6, 21.4 ×10⁻⁶. It returns the offset behind it, or an error at an offset
// of s.
func parseNumber(s string, i int) (n number, next int, err *Error) {
	start := i
	neg := false
	if j, minus, ok := signAt(s, i); ok {
		i, neg = j, minus
		i = skipSpace(s, i)
	}
	var buf [maxDigits + 4]byte
	text, whole, next, err := digits(s, i, buf[:0])
	if err != nil {
		return n, i, err
	}
	if j, v, ok := vulgar(s, next); ok { // ½, 1½, 1 ½
		return fraction(text, v, neg, j)
	}
	if len(text) == 0 {
		return n, start, &Error{Expected: "a number", Offset: start}
	}
	if whole {
		if j, v, ok, err := slashFraction(s, i, next); err != nil {
			return n, next, err
		} else if ok { // 3/8
			return fraction(nil, v, neg, j)
		}
		if k, v, ok := mixedFraction(s, text, next); ok { // 1 1/8, 1-1/8
			return fraction(text, v, neg, k)
		}
	}
	n.value, _ = strconv.ParseFloat(string(text), 64)
	if neg && n.value != 0 {
		n.value = -n.value
	}
	n.written = heldPlace(n.value, writtenPlace(text))
	n.place = heldPlace(n.value, significantPlace(text, n.written))
	if j, pow, ok := exponentE(s, next); ok {
		n.pow, next = pow, j
	} else if j, pow, ok := powerOfTen(s, skipSpace(s, next)); ok {
		n.pow, n.times, next = pow, true, j
	}
	if n.pow != 0 {
		n.place = n.written
	}
	if n.pow < -maxPower || n.pow > maxPower {
		return n, next, &Error{Expected: "a power of ten of at most 60", Offset: start}
	}
	return n, next, nil
}

// digits collects digits and the decimal point, dropping thousands commas. It
// reports whether they make a plain whole number without commas.
func digits(s string, i int, b []byte) (text []byte, whole bool, next int, err *Error) {
	start, point, comma := i, -1, -1
	for ; i < len(s); i++ {
		c := s[i]
		switch {
		case isDigit(c):
			b = append(b, c)
			if len(b) > maxDigits {
				return nil, false, start, &Error{Expected: "a number of at most 40 digits", Offset: start}
			}
			continue
		case c == '.' && point < 0 && !strings.HasPrefix(s[i:], "..") && (len(b) > 0 || nextDigit(s, i+1)):
			point = i
			b = append(b, c)
			continue
		case c == ',' && nextDigit(s, i+1):
			if point >= 0 || !thousands(s, start, i, comma) {
				return nil, false, i, commaError(s, start, i)
			}
			comma = i
			continue
		}
		if n := thinGroup(s, i); n > 0 && point < 0 && comma < 0 && len(b) > 0 {
			i += n - 1
			continue
		}
		break
	}
	return b, len(b) > 0 && point < 0 && comma < 0, i, nil
}

func nextDigit(s string, i int) bool { return i < len(s) && isDigit(s[i]) }

// thousands reports whether the comma at i stands between groups of three
// digits. The comma before it was at before, -1 for none.
func thousands(s string, start, i, before int) bool {
	if before >= 0 {
		if i-before != 4 {
			return false
		}
	} else if i-start > 3 || s[start] == '0' {
		return false
	}
	return nextDigit(s, i+1) && nextDigit(s, i+2) && nextDigit(s, i+3) && !nextDigit(s, i+4)
}

func commaError(s string, start, i int) *Error {
	end := i + 1
	for end < len(s) && (isDigit(s[end]) || s[end] == ',' || s[end] == '.') {
		end++
	}
	e := &Error{Understood: "a comma in " + quote(s[start:end]), Expected: "commas only between groups of three digits", Offset: i}
	if strings.Count(s[start:end], ",") == 1 && !strings.Contains(s[start:end], ".") {
		e.Hint = "type a point: " + s[start:i] + "." + s[i+1:end]
	}
	return e
}

// thinGroup returns the width of a no-break or thin space at i that parts
// thousands, as SI tables print them; 0 where there is none.
func thinGroup(s string, i int) int {
	r, size := utf8.DecodeRuneInString(s[i:])
	switch r {
	case '\u00a0', '\u2007', '\u2009', '\u202f':
		if j := i + size; j+2 < len(s) && isDigit(s[j]) && isDigit(s[j+1]) && isDigit(s[j+2]) && !nextDigit(s, j+3) {
			return size
		}
	}
	return 0
}

// vulgar reads a fraction of one character, after a space or not.
func vulgar(s string, i int) (next int, v float64, ok bool) {
	i = skipSpace(s, i)
	r, size := utf8.DecodeRuneInString(s[i:])
	switch r {
	case '½':
		v = 1. / 2
	case '¼':
		v = 1. / 4
	case '¾':
		v = 3. / 4
	case '⅛':
		v = 1. / 8
	case '⅜':
		v = 3. / 8
	case '⅝':
		v = 5. / 8
	case '⅞':
		v = 7. / 8
	case '⅓':
		v = 1. / 3
	case '⅔':
		v = 2. / 3
	default:
		return i, 0, false
	}
	return i + size, v, true
}

// slashFraction reads the fraction whose numerator is s[i:slash].
func slashFraction(s string, i, slash int) (next int, v float64, ok bool, err *Error) {
	j := slash
	switch {
	case strings.HasPrefix(s[j:], "/"):
		j++
	case strings.HasPrefix(s[j:], "⁄"):
		j += len("⁄")
	default:
		return i, 0, false, nil
	}
	end := j
	for end < len(s) && isDigit(s[end]) {
		end++
	}
	if end == j || slash-i > 4 || end-j > 4 {
		return i, 0, false, nil
	}
	num, _ := strconv.Atoi(s[i:slash])
	den, _ := strconv.Atoi(s[j:end])
	if den == 0 {
		return i, 0, false, &Error{Understood: "a fraction over 0", Expected: "a fraction such as 3/8", Offset: j}
	}
	// 47/23 ksi is two figures, 70/95 ksi a range; neither is a number.
	if den > 12 && (den > 128 || den&(den-1) != 0) || num > den {
		return i, 0, false, &Error{Understood: "two numbers with a stroke, " + s[i:end], Expected: "one number, or a fraction such as 3/8", Hint: "for a range type 70-95", Offset: i}
	}
	return end, float64(num) / float64(den), true, nil
}

// mixedFraction reads the fraction behind a whole number and a space or hyphen:
// the 1/8 of 1 1/8 and 1-1/8. After a zero the hyphen makes a range.
func mixedFraction(s string, whole []byte, i int) (next int, v float64, ok bool) {
	j, dashed := dashAt(s, i)
	if !dashed {
		j = skipSpace(s, i)
	}
	if j == i || !nextDigit(s, j) || dashed && string(whole) == "0" {
		return i, 0, false
	}
	end := j
	for nextDigit(s, end) {
		end++
	}
	next, v, ok, err := slashFraction(s, j, end)
	return next, v, ok && err == nil && v < 1
}

// fraction makes the number whole + v. Its place shows the decimals of a binary
// fraction down to 1/64, and three of any other.
func fraction(whole []byte, v float64, neg bool, next int) (number, int, *Error) {
	n := number{value: v, place: -3}
	if len(whole) > 0 {
		w, err := strconv.ParseFloat(string(whole), 64)
		if err != nil || w > 1e9 {
			return n, next, &Error{Expected: "a smaller number before the fraction"}
		}
		n.value += w
	}
	for p := 0; p >= -6; p-- {
		if scaled := v * math.Pow10(-p); scaled == math.Trunc(scaled) {
			n.place = p
			break
		}
	}
	if neg && n.value != 0 {
		n.value = -n.value
	}
	n.written = n.place
	return n, next, nil
}

func writtenPlace(text []byte) int {
	for i, c := range text {
		if c == '.' {
			return i + 1 - len(text)
		}
	}
	return 0
}

// significantPlace returns the place of the last significant digit. The zeros
// that end a whole number of four digits or more do not count, but the first two
// digits always do: 30000 is known to the thousand, 10600 to the hundred.
func significantPlace(text []byte, written int) int {
	if written != 0 || text[len(text)-1] == '.' {
		return written
	}
	for len(text) > 0 && text[0] == '0' {
		text = text[1:]
	}
	if len(text) < 4 {
		return 0
	}
	place := 0
	for place < len(text)-2 && text[len(text)-1-place] == '0' {
		place++
	}
	return place
}
