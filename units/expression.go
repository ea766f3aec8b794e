package units

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// An expression is a product of unit words with exponents, as typed in any
// order and with any separators: cal/(cm·s·°C), cal/cm-s-C, cal cm⁻¹ s⁻¹ °C⁻¹.
type expression struct {
	factors [maxFactors]factor
	n       int
	pow     int // power of ten in front: -6 in 10⁻⁶/K
}

const maxFactors = 8

type factor struct {
	name  string // canonical word; a temperature difference begins with d
	halfs int    // twice the exponent
}

// exprState is what the next word will take up.
type exprState struct {
	sign  int  // -1 in a denominator
	power int  // exponent promised by "sq", "cu" or √, in halves; 0 for none
	delta bool // a temperature difference
}

// parseExpression reads a unit expression. It returns the word that it could
// not take and its byte offset; an empty word at an offset of -1 means success.
func parseExpression(s string, e *expression) (bad string, at int) {
	p := exprParser{s: s, e: e}
	p.coefficient()
	if bad, at = p.group(exprState{sign: 1}, 0); at >= 0 {
		return bad, at
	}
	if p.i < len(s) {
		return s[p.i:], p.i
	}
	return "", -1
}

type exprParser struct {
	s string
	i int
	e *expression
}

// coefficient reads a leading 1, 1e-6, 10^-6, ×10⁻⁶ or x 10-6.
func (p *exprParser) coefficient() {
	p.i = skipSpace(p.s, p.i)
	if next, pow, ok := powerOfTen(p.s, p.i); ok {
		p.i, p.e.pow = next, pow
		return
	}
	rest := p.s[p.i:]
	if !strings.HasPrefix(rest, "1") {
		return
	}
	if next, pow, ok := exponentE(p.s, p.i+1); ok {
		p.i, p.e.pow = next, pow
		return
	}
	if next, pow, ok := tenTo(p.s, p.i); ok {
		p.i, p.e.pow = next, pow
		return
	}
	if j, dashed := dashAt(p.s, min(p.i+2, len(p.s))); dashed && strings.HasPrefix(rest, "10") {
		if next, pow, ok := smallInt(p.s, j); ok && next == j+1 { // 10-6/K
			p.i, p.e.pow = next, -pow
			return
		}
	}
	if after := skipSpace(p.s, p.i+1); after < len(p.s) && p.s[after] == '/' {
		p.i = after
	} else if after == len(p.s) {
		p.i = after
		p.add("1", 2)
	}
}

// group reads words up to the end or a closing parenthesis. After a slash all
// that follows in the group belongs to the denominator, as in W/m·K.
func (p *exprParser) group(st exprState, depth int) (bad string, at int) {
	sign := st.sign
	for p.i < len(p.s) {
		r, size := utf8.DecodeRuneInString(p.s[p.i:])
		switch {
		case r == ')':
			return "", -1
		case r == '(':
			open := p.i
			if depth == 4 {
				return p.s[open:], open
			}
			p.i += size
			if bad, at = p.group(st, depth+1); at >= 0 {
				return bad, at
			}
			st.power, st.delta = 0, false
			if p.i == len(p.s) {
				return p.s[open:], open
			}
			p.i++
		case r == '/' || r == '÷':
			st.sign = -sign
			p.i += size
		case r == '√':
			st.power = 1
			p.i += size
		case r == 'Δ' || r == '∆':
			st.delta = true
			p.i += size
		case isSeparator(r) || isSpace(r) || isDegree(r):
			p.i += size
		default:
			start := p.i
			if !p.word(&st, sign) {
				if p.i == start {
					p.i += size
				}
				return p.s[start:p.i], start
			}
		}
	}
	return "", -1
}

// word reads one word with its exponent and adds it to the expression.
func (p *exprParser) word(st *exprState, sign int) bool {
	var buf [24]byte
	name := p.letters(buf[:0])
	switch strings.ToLower(string(name)) {
	case "per":
		st.sign = -sign
		return true
	case "sq", "square":
		st.power = 4
		return true
	case "cu", "cubic":
		st.power = 6
		return true
	case "sqrt":
		st.power = 1
		return true
	case "deg", "degree", "degrees", "of":
		return true
	case "delta":
		st.delta = true
		return true
	case "diff", "difference", "interval":
		return p.e.makeDelta()
	case "":
		return false
	}
	canon := atom(string(name))
	if canon == "" {
		return false
	}
	if r, size := utf8.DecodeRuneInString(p.s[p.i:]); isDegree(r) && (canon == "F" || canon == "C") && p.degreeEnds(p.i+size) {
		p.i += size // F° and C° are differences
		st.delta = true
	}
	halfs, ok := p.exponent()
	if !ok {
		return false
	}
	if halfs == 0 {
		halfs = 2
		if st.power != 0 {
			halfs = st.power
		}
	}
	st.power = 0
	for canon != "" {
		one := canon
		canon = ""
		if dot := strings.IndexByte(one, '.'); dot >= 0 {
			one, canon = one[:dot], one[dot+1:]
		}
		if st.delta && len(one) == 1 {
			one, st.delta = deltaName(one), false
		}
		if !p.add(one, halfs*st.sign) {
			return false
		}
	}
	return true
}

// degreeEnds reports whether a degree sign behind a letter closes the word, as
// in 20 C°, rather than opening the next one.
func (p *exprParser) degreeEnds(i int) bool {
	r, _ := utf8.DecodeRuneInString(p.s[i:])
	return i >= len(p.s) || !unicode.IsLetter(r)
}

// letters collects a word in ASCII: µ becomes u, Ω becomes ohm.
func (p *exprParser) letters(buf []byte) []byte {
	for p.i < len(p.s) && len(buf) < cap(buf)-4 {
		r, size := utf8.DecodeRuneInString(p.s[p.i:])
		switch {
		case r == '\u00b5' || r == '\u03bc': // micro sign, Greek mu
			buf = append(buf, 'u')
		case r == '\u03a9' || r == '\u2126': // Greek omega, ohm sign
			p.i += size
			return append(buf, "ohm"...)
		case r == '℃':
			buf = append(buf, 'C')
		case r == '℉':
			buf = append(buf, 'F')
		case r == '%' || r == '"' || r == '\'' || r == '″' || r == '′' || r == '”' || r == '’':
			if len(buf) == 0 {
				p.i += size
				buf = append(buf, foldQuote(r))
			}
			return buf
		case r < utf8.RuneSelf && unicode.IsLetter(r):
			buf = append(buf, byte(r))
		case r == '(' && len(buf) > 0:
			label := p.label()
			if label == "" || len(buf)+len(label) > cap(buf) {
				return buf
			}
			p.i += len(label)
			return append(buf, label...)
		default:
			return buf
		}
		p.i += size
	}
	return buf
}

func foldQuote(r rune) byte {
	switch r {
	case '″', '”':
		return '"'
	case '′', '’':
		return '\''
	}
	return byte(r)
}

// label returns the kind of a calorie, Btu or ton that stands in parentheses here.
func (p *exprParser) label() string {
	for _, l := range [...]string{"(IT)", "(th)", "(mean)", "(15C)", "(long)"} {
		if len(p.s)-p.i >= len(l) && strings.EqualFold(p.s[p.i:p.i+len(l)], l) {
			return l
		}
	}
	return ""
}

func (p *exprParser) add(name string, halfs int) bool {
	if p.e.n == maxFactors {
		return false
	}
	p.e.factors[p.e.n] = factor{name, halfs}
	p.e.n++
	return true
}

// makeDelta turns the last word, a temperature, into a difference.
func (e *expression) makeDelta() bool {
	if e.n == 0 {
		return false
	}
	name := deltaName(e.factors[e.n-1].name)
	ok := name != e.factors[e.n-1].name
	e.factors[e.n-1].name = name
	return ok
}

func deltaName(name string) string {
	switch name {
	case "F":
		return "dF"
	case "C":
		return "dC"
	case "K":
		return "dK"
	case "R":
		return "dR"
	}
	return name
}

// key appends the canonical form of the expression: words in the order of the
// alphabet, numerator first. In a compound, K stands for an interval of 1 °C
// and F for one of 1 °F, however they were typed.
func (e *expression) key(b []byte) []byte {
	fs := e.factors[:e.n]
	lone := len(fs) == 1 && fs[0].halfs == 2
	for i := range fs {
		if !lone {
			fs[i].name = interval(fs[i].name)
		}
		for j := i; j > 0 && fs[j].before(fs[j-1]); j-- {
			fs[j], fs[j-1] = fs[j-1], fs[j]
		}
	}
	if e.pow != 0 {
		b = appendInt(append(b, 'e'), e.pow)
		b = append(b, ':')
	}
	slash := false
	for i, f := range fs {
		if f.halfs < 0 && !slash {
			slash = true
			b = append(b, '/')
		} else if i > 0 {
			b = append(b, '.')
		}
		b = append(b, f.name...)
		if h := max(f.halfs, -f.halfs); h != 2 {
			b = appendInt(b, h/2)
			if h%2 == 1 {
				b = append(b, ",5"...)
			}
		}
	}
	return b
}

func (f factor) before(g factor) bool {
	if (f.halfs < 0) != (g.halfs < 0) {
		return f.halfs > 0
	}
	if f.name != g.name {
		return f.name < g.name
	}
	return f.halfs < g.halfs
}

func interval(name string) string {
	switch name {
	case "C", "dC", "dK":
		return "K"
	case "R", "dR", "dF":
		return "F"
	}
	return name
}
