package units

import (
	"math"
	"strconv"
	"strings"
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

// number reads one number at i: 37, -40, 0.097, 20,000, 1 1/8, 3/8, 11.9e-6,
// 21.4 ×10⁻⁶. It returns the offset behind it.
func (t text) number(i int) (n number, next int, err *Error) {
	s, start := t.s, i
	negative := false
	if i < len(s) && (s[i] == '-' || s[i] == '+') {
		negative = s[i] == '-'
		i = skipSpace(s, i+1)
	}
	digits, next, err := t.digits(i)
	switch {
	case err != nil:
		return n, i, err
	case digits == "":
		return n, start, t.fail(start, "", "a number")
	case len(digits) > 40:
		return n, start, t.fail(start, "", "a number of at most 40 digits")
	}
	n.value, _ = strconv.ParseFloat(digits, 64)
	if point := strings.IndexByte(digits, '.'); point >= 0 {
		n.written = point + 1 - len(digits)
	}
	n.written = heldPlace(n.value, n.written)
	n.place = heldPlace(n.value, significantPlace(digits, n.written))
	if digits == s[i:next] && !strings.Contains(digits, ".") {
		if next, err = t.addFraction(&n, i, next); err != nil {
			return n, next, err
		}
	}
	if negative && n.value != 0 {
		n.value = -n.value
	}
	next = t.power(&n, next)
	if n.pow < -60 || n.pow > 60 {
		return n, next, t.fail(start, "", "a power of ten of at most 60")
	}
	return n, next, nil
}

// addFraction turns the whole number s[i:next] into a fraction where it is the
// numerator of one, 3/8, or stands before one, 1 1/8 and 1-1/8.
func (t text) addFraction(n *number, i, next int) (int, *Error) {
	end, v, ok, err := t.fraction(i, next)
	whole := 0.0
	if !ok && err == nil {
		whole = n.value
		end, v, ok = t.mixedFraction(t.s[i:next], next)
	}
	if !ok {
		return next, err
	}
	n.value, n.place = whole+v, fractionPlace(v)
	n.written = n.place
	return end, nil
}

// power reads the power of ten behind a number.
func (t text) power(n *number, next int) int {
	s := t.s
	if j, pow, ok := exponentE(s, next); ok {
		n.pow, next = pow, j
	} else if j := skipSpace(s, next); j < len(s) && s[j] != '1' {
		if j, pow, ok := powerOfTen(s, j); ok {
			n.pow, n.times, next = pow, true, j
		}
	}
	if n.pow != 0 {
		n.place = n.written
	}
	return next
}

// digits collects digits and the decimal point, dropping thousands commas.
func (t text) digits(start int) (digits string, next int, err *Error) {
	for i, s := start, t.s+" "; ; i++ {
		switch c := s[i]; {
		case isDigit(c):
		case c == '.' && !strings.Contains(s[start:i], ".") && !strings.HasPrefix(s[i:], "..") && (i > start || isDigit(s[i+1])):
		case c == ',' && isDigit(s[i+1]):
			if !thousands(s, start, i) {
				return "", i, t.commaError(start, i)
			}
		default:
			return strings.ReplaceAll(s[start:i], ",", ""), i, nil
		}
	}
}

// thousands reports whether the comma at i stands between groups of three
// digits.
func thousands(s string, start, i int) bool {
	group := i - start
	if before := strings.LastIndexByte(s[start:i], ','); before >= 0 {
		group -= before + 1
		return group == 3 && threeDigits(s[i+1:])
	}
	return group > 0 && group <= 3 && s[start] != '0' && !strings.Contains(s[start:i], ".") && threeDigits(s[i+1:])
}

func (t text) commaError(start, i int) *Error {
	s := t.s
	end := i + 1
	for end < len(s) && (isDigit(s[end]) || s[end] == ',' || s[end] == '.') {
		end++
	}
	e := t.fail(i, "a comma in "+quote(s[start:end]), "commas only between groups of three digits")
	if strings.Count(s[start:end], ",") == 1 && !strings.Contains(s[start:end], ".") {
		e.Hint = "type a point: " + s[start:i] + "." + s[i+1:end]
	}
	return e
}

// fraction reads the fraction whose numerator is s[i:slash].
func (t text) fraction(i, slash int) (next int, v float64, ok bool, err *Error) {
	end := slash + 1
	for digitAt(t.s, end) {
		end++
	}
	if !strings.HasPrefix(t.s[slash:], "/") || end == slash+1 || slash-i > 4 || end-slash > 5 {
		return i, 0, false, nil
	}
	num, _ := strconv.Atoi(t.s[i:slash])
	den, _ := strconv.Atoi(t.s[slash+1 : end])
	if den == 0 {
		return i, 0, false, t.fail(slash+1, "a fraction over 0", "a fraction such as 3/8")
	}
	// 47/23 ksi is two figures, 70/95 ksi a range; neither is a number.
	if den > 12 && (den > 128 || den&(den-1) != 0) || num > den {
		err = t.fail(i, "two numbers with a stroke, "+t.s[i:end], "one number, or a fraction such as 3/8")
		err.Hint = "for a range type 70-95"
		return i, 0, false, err
	}
	return end, float64(num) / float64(den), true, nil
}

// mixedFraction reads the fraction behind a whole number and a space or hyphen:
// the 1/8 of 1 1/8 and 1-1/8. After a zero the hyphen makes a range.
func (t text) mixedFraction(whole string, i int) (next int, v float64, ok bool) {
	j := skipSpace(t.s, i)
	if strings.HasPrefix(t.s[i:], "-") {
		j = i + 1
	}
	if j == i || t.s[j-1] == '-' && whole == "0" || len(whole) > 9 {
		return i, 0, false
	}
	end := j
	for digitAt(t.s, end) {
		end++
	}
	next, v, ok, err := t.fraction(j, end)
	return next, v, ok && err == nil && v < 1
}

// fractionPlace shows the decimals of a binary fraction down to 1/64, and three
// of any other.
func fractionPlace(v float64) int {
	for p := 0; p >= -6; p-- {
		if scaled := v * math.Pow10(-p); scaled == math.Trunc(scaled) {
			return p
		}
	}
	return -3
}

// significantPlace returns the place of the last significant digit. The zeros
// that end a whole number of four digits or more do not count, but the first two
// digits always do: 30000 is known to the thousand, 10600 to the hundred.
func significantPlace(digits string, written int) int {
	if written != 0 || strings.HasSuffix(digits, ".") {
		return written
	}
	digits = strings.TrimLeft(digits, "0")
	if len(digits) < 4 {
		return 0
	}
	return min(len(digits)-len(strings.TrimRight(digits, "0")), len(digits)-2)
}

// shift returns v × 10^pow as if it had been typed so, without the error that a
// product of two binary numbers has.
func shift(v float64, pow int) float64 {
	mantissa, exp, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	n, _ := strconv.Atoi(exp)
	shifted, _ := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(n+pow), 64)
	return shifted
}

// clean drops the binary noise that a sum of two decimals carries.
func clean(v float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'e', decimalDigits-2, 64), 64)
	return r
}
