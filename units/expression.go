package units

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// An expression is a product of atoms with exponents, as typed in any order and
// with any separators: cal/(cm·s·°C), cal/cm-s-C, cal cm⁻¹ s⁻¹ °C⁻¹.
type expression struct {
	factors []factor
	pow     int // power of ten in front: -6 in 10⁻⁶/K
}

type factor struct {
	atom string  // a temperature difference begins with d
	exp  float64 // whole or half: MPa·√m
}

// key returns the canonical form of e: the factors in the order of the alphabet
// behind the power of ten. In a compound, K stands for an interval of 1 °C and F
// for one of 1 °F, however they were typed.
func (e expression) key(pow int) string {
	names := make([]string, len(e.factors))
	for i, f := range e.factors {
		if len(e.factors) > 1 || f.exp != 1 {
			f.atom = interval(f.atom)
		}
		names[i] = f.atom + strconv.FormatFloat(f.exp, 'g', -1, 64)
	}
	slices.Sort(names)
	return strconv.Itoa(e.pow+pow) + ":" + strings.Join(names, ".")
}

// atoms returns the atoms of e in the order of the alphabet, without exponents.
func (e expression) atoms() string {
	var names []string
	for _, f := range e.factors {
		names = append(names, interval(f.atom))
	}
	slices.Sort(names)
	return strings.Join(names, " ")
}

func interval(atom string) string {
	switch atom {
	case "C", "dC", "dK":
		return "K"
	case "R", "dR", "dF":
		return "F"
	}
	return atom
}

func isTemperature(atom string) bool { return len(atom) == 1 && strings.Contains("FCKR", atom) }

// exprParser reads an expression from a folded text.
type exprParser struct {
	s     string
	i     int
	e     expression
	power float64 // exponent promised by "sq", "cu" or √, 0 for none
	delta bool    // the next temperature is a difference
}

// parseExpression reads a unit expression. Where it cannot, it returns the place
// of the word that it could not take.
func parseExpression(s string) (e expression, from, to int, ok bool) {
	p := exprParser{s: s}
	p.coefficient()
	from, to, ok = p.group(1)
	if ok && p.i < len(s) { // a parenthesis too many
		return p.e, p.i, len(s), false
	}
	return p.e, from, to, ok && len(p.e.factors) > 0
}

// coefficient reads a leading 1, 1e-6, 10^-6, ×10⁻⁶, x 10-6 or 10-6.
func (p *exprParser) coefficient() {
	p.i = skipSpace(p.s, p.i)
	next, pow, ok := powerOfTen(p.s, p.i)
	rest := p.s[p.i:]
	if !ok && strings.HasPrefix(rest, "1") {
		next, pow, ok = exponentE(p.s, p.i+1)
	}
	if !ok && strings.HasPrefix(rest, "10-") && digitAt(rest, 3) && !digitAt(rest, 4) {
		next, pow, ok = p.i+4, -int(rest[3]-'0'), true
	}
	if ok {
		p.i, p.e.pow = next, pow
		return
	}
	if !strings.HasPrefix(rest, "1") {
		return
	}
	switch after := skipSpace(p.s, p.i+1); {
	case after == len(p.s):
		p.i = after
		p.e.factors = append(p.e.factors, factor{"1", 1})
	case p.s[after] == '/':
		p.i = after
	}
}

// group reads words up to the end or a closing parenthesis; sign is -1 in a
// denominator. After a slash all that follows in the group belongs to the
// denominator, as in W/m·K.
func (p *exprParser) group(sign float64) (from, to int, ok bool) {
	outer := sign
	for p.i < len(p.s) {
		start := p.i
		r, size := utf8.DecodeRuneInString(p.s[p.i:])
		switch {
		case r == ')':
			return 0, 0, true
		case r == '(':
			p.i++
			if from, to, ok = p.group(sign); !ok {
				return from, to, false
			}
			p.power, p.delta = 0, false
			if p.i == len(p.s) {
				return start, p.i, false
			}
			p.i++
		case r == '/':
			sign = -outer
			p.i++
		case strings.ContainsRune("-*., °", r):
			p.i += size
		default:
			word := p.word()
			if strings.EqualFold(word, "per") {
				sign = -outer
			} else if !p.take(word, sign) {
				return start, max(p.i, start+size), false
			}
		}
	}
	return 0, 0, true
}

// take adds a word with its exponent to the expression.
func (p *exprParser) take(word string, sign float64) bool {
	switch strings.ToLower(word) {
	case "sq", "square":
		p.power = 2
		return true
	case "cu", "cubic":
		p.power = 3
		return true
	case "sqrt":
		p.power = 0.5
		return true
	case "deg", "degree", "degrees", "of":
		return true
	case "delta":
		p.delta = true
		return true
	case "diff", "difference", "interval":
		return p.difference()
	}
	product := atom(word)
	if product == "" {
		return false
	}
	after := strings.TrimPrefix(p.s[p.i:], "°") // 20 C° is a difference
	if len(after) < len(p.s[p.i:]) && (product == "F" || product == "C") && (after == "" || !isLetter(after[0])) {
		p.i += len("°")
		p.delta = true
	}
	exp, ok := p.exponent()
	if !ok {
		return false
	}
	if exp == 0 {
		exp = 1
		if p.power != 0 {
			exp = p.power
		}
	}
	p.power = 0
	for a := range strings.SplitSeq(product, ".") {
		if p.delta && isTemperature(a) {
			a, p.delta = "d"+a, false
		}
		p.e.factors = append(p.e.factors, factor{a, exp * sign})
	}
	return true
}

// difference turns the last word, a temperature, into a difference.
func (p *exprParser) difference() bool {
	last := len(p.e.factors) - 1
	if last < 0 || !isTemperature(p.e.factors[last].atom) {
		return false
	}
	p.e.factors[last].atom = "d" + p.e.factors[last].atom
	return true
}

// word reads letters with the kind of a calorie, Btu or ton in parentheses behind
// them, or one of % # ' ".
func (p *exprParser) word() string {
	start := p.i
	for p.i < len(p.s) && isLetter(p.s[p.i]) {
		p.i++
	}
	switch rest := p.s[p.i:]; {
	case p.i > start:
		for _, kind := range [...]string{"(IT)", "(th)", "(mean)", "(15C)", "(long)"} {
			if hasPrefixFold(rest, kind) {
				p.i += len(kind)
			}
		}
	case strings.HasPrefix(rest, "''"):
		p.i += 2
		return `"`
	case rest != "" && strings.IndexByte(`%#'"`, rest[0]) >= 0:
		p.i++
	}
	return p.s[start:p.i]
}

// exponent reads 2, ^2, ^-1, **2, ^0.5, ^1/2 or ^(3/2), 0 where there is none. It
// fails for exponents that are no multiple of a half.
func (p *exprParser) exponent() (exp float64, ok bool) {
	s, i := p.s, p.i
	for _, mark := range [...]string{"**", "^(", "^"} {
		if strings.HasPrefix(s[i:], mark) {
			i += len(mark)
			break
		}
	}
	marked := i > p.i
	paren := strings.HasSuffix(s[:i], "(") && marked
	start := i
	if marked && i < len(s) && (s[i] == '-' || s[i] == '+') {
		i++
	}
	first := i
	for digitAt(s, i) || i > first && i < len(s) && s[i] == '.' && digitAt(s, i+1) {
		i++
	}
	if i == first {
		if marked {
			return 0, false
		}
		return p.flatExponent(), true
	}
	exp, err := strconv.ParseFloat(s[start:i], 64)
	if digitAt(s, first+1) { // no exponent has two digits
		return 0, false
	}
	if strings.HasPrefix(s[i:], "/2") && !digitAt(s, i+2) {
		exp /= 2
		i += 2
	}
	if paren {
		if !strings.HasPrefix(s[i:], ")") {
			return 0, false
		}
		i++
	}
	p.i = i
	return exp, err == nil && exp != 0 && 2*exp == math.Trunc(2*exp)
}

// flatExponent reads the -3 of g cm-3, where pasting has flattened a superscript;
// 0 where there is none.
func (p *exprParser) flatExponent() float64 {
	rest := p.s[p.i:]
	if len(rest) < 2 || rest[0] != '-' || rest[1] < '1' || rest[1] > '4' || len(rest) > 2 && strings.IndexByte(" -*.,)", rest[2]) < 0 {
		return 0
	}
	p.i += 2
	return -float64(rest[1] - '0')
}
