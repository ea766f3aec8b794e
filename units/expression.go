package units

import (
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
		names[i] = f.atom + strconv.Itoa(int(10*f.exp)) // 5 for √
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
	case "cu", "cubic":
		p.power = 3
	case "sqrt":
		p.power = 0.5
	case "deg", "degree", "degrees", "of":
	case "delta":
		p.delta = true
	case "diff", "difference", "interval":
		return p.difference()
	default:
		return p.factors(atom(word), sign)
	}
	return true
}

// factors adds the atoms of a word, with the exponent behind it.
func (p *exprParser) factors(product string, sign float64) bool {
	if product == "" {
		return false
	}
	after, degree := strings.CutPrefix(p.s[p.i:], "°")
	if degree && (product == "F" || product == "C") && !splitsWord("x"+after, 1) { // 20 C° is a difference
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

var exponents = [...]struct {
	text  string
	value float64
}{
	{"0.5", 0.5}, {"1.5", 1.5}, {"2.5", 2.5}, {"1/2", 0.5}, {"3/2", 1.5}, {"5/2", 2.5}, {"1.0", 1}, {"2.0", 2}, {"3.0", 3},
	{"1", 1}, {"2", 2}, {"3", 3}, {"4", 4}, {"5", 5}, {"6", 6}, {"7", 7}, {"8", 8}, {"9", 9},
}

// exponent reads 2, ^2, ^-1, **2, ^0.5, ^1/2 or ^(3/2), 0 where there is none. It
// fails for a number that is no exponent of a unit.
func (p *exprParser) exponent() (exp float64, ok bool) {
	rest, mark := p.s[p.i:], ""
	for _, m := range [...]string{"**", "^(", "^"} {
		if mark == "" && strings.HasPrefix(rest, m) {
			mark = m
		}
	}
	rest = rest[len(mark):]
	sign := 1.0
	if after, minus := strings.CutPrefix(rest, "-"); minus && mark != "" {
		rest, sign = after, -1
	}
	for _, e := range &exponents {
		after, found := strings.CutPrefix(rest, e.text)
		if !found || digitAt(after, 0) {
			continue
		}
		if mark == "^(" {
			after, found = strings.CutPrefix(after, ")")
		}
		p.i = len(p.s) - len(after)
		return sign * e.value, found
	}
	if mark != "" || digitAt(rest, 0) {
		return 0, false
	}
	return p.flatExponent(), true
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
