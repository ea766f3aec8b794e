package units

import (
	"strings"
	"unicode/utf8"
)

// exponent reads 2, ^2, ^-1, **2, ², ⁻¹, ^0.5, ^1/2, ^(3/2), ½ in halves; 0
// where there is none. It fails for exponents that are no multiple of a half.
func (p *exprParser) exponent() (halfs int, ok bool) {
	if strings.HasPrefix(p.s[p.i:], "½") {
		p.i += len("½")
		return 1, true
	}
	if next, n, ok := superscript(p.s, p.i); ok {
		p.i = next
		return 2 * n, n != 0 && n > -10 && n < 10
	}
	i, explicit := p.i, false
	switch rest := p.s[i:]; {
	case strings.HasPrefix(rest, "**"):
		i, explicit = i+2, true
	case strings.HasPrefix(rest, "^"):
		i, explicit = i+1, true
	}
	paren := explicit && i < len(p.s) && p.s[i] == '('
	if paren {
		i++
	}
	neg := false
	if next, minus, ok := signAt(p.s, i); explicit && ok {
		i, neg = next, minus
	}
	if i >= len(p.s) || !isDigit(p.s[i]) {
		if explicit {
			return 0, false
		}
		return p.flatExponent(), true
	}
	halfs = 2 * int(p.s[i]-'0')
	i++
	switch {
	case i+1 < len(p.s) && p.s[i] == '.' && p.s[i+1] == '5':
		halfs, i = halfs+1, i+2
	case i+1 < len(p.s) && p.s[i] == '.' && p.s[i+1] == '0':
		i += 2
	case i+1 < len(p.s) && p.s[i] == '/' && p.s[i+1] == '2' && (i+2 == len(p.s) || !isDigit(p.s[i+2])):
		halfs, i = halfs/2, i+2
	}
	if i < len(p.s) && isDigit(p.s[i]) {
		return 0, false
	}
	if paren {
		if i >= len(p.s) || p.s[i] != ')' {
			return 0, false
		}
		i++
	}
	p.i = i
	if neg {
		halfs = -halfs
	}
	return halfs, halfs != 0
}

// flatExponent reads the -3 of g cm-3, where pasting has flattened a superscript;
// 0 where there is none.
func (p *exprParser) flatExponent() (halfs int) {
	j, dashed := dashAt(p.s, p.i)
	if !dashed || !nextDigit(p.s, j) || p.s[j] == '0' || p.s[j] > '4' {
		return 0
	}
	if r, _ := utf8.DecodeRuneInString(p.s[j+1:]); j+1 < len(p.s) && !isSpace(r) && !isSeparator(r) && r != ')' {
		return 0
	}
	p.i = j + 1
	return -2 * int(p.s[j]-'0')
}
