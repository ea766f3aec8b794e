package spoken

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/spelling"
	"alongside/units"
)

// word is a word of the text with the place where it stands.
type word struct {
	key      string // in lower case, in the spelling of the table
	from, to int    // bytes of the text
	inside   bool   // in parentheses
	brk      byte   // what ends the piece before it: ',' '.' '\n' ':' or 0
}

// bullet is what a mail or a list sets before a line.
var bullet = spelling.Pattern{Expr: `^[ \t]*(?:(?:[-–—*•·>|]+|\(?[0-9a-z]{1,2}[.)])[ \t]+)+`}

// quoted is the mark of a mail's quotation, which is no bound: a number behind it
// makes it one.
var quoted = spelling.Pattern{Expr: `^[ \t]*>[ \t]*[0-9.]`}

// words splits a text into its words, line by line.
func words(text string) []word {
	var out []word
	at := 0
	for line := range strings.SplitAfterSeq(text, "\n") {
		from := 0
		if !quoted.Regexp().MatchString(line) {
			from = len(bullet.Regexp().FindString(line))
		}
		out = lineWords(out, text, at+from, at+len(line))
		at += len(line)
	}
	return out
}

// lineWords adds the words of text[i:end]. A comma or semicolon ends a piece
// outside parentheses, a point where a sentence ends: a branch a mark.
func lineWords(out []word, text string, i, end int) []word {
	brk, depth := byte('\n'), 0
	for i < end {
		r, size := utf8.DecodeRuneInString(text[i:end])
		if unicode.IsSpace(r) || strings.ContainsRune("()[],;!?:", r) {
			switch {
			case r == '(' || r == '[':
				depth++
			case r == ')' || r == ']':
				depth = max(depth-1, 0)
			case r == ':':
				brk = max(brk, ':')
			case !unicode.IsSpace(r) && depth == 0:
				brk = ','
			}
			i += size
			continue
		}
		w := wordAt(text, i, end)
		w.inside, w.brk = depth > 0, brk
		i, brk = w.to, 0
		switch {
		case w.key == "/" && (w.from == 0 || unicode.IsSpace(rune(text[w.from-1]))):
			brk = ','
			continue
		case strings.HasSuffix(w.key, "."):
			if !abbreviation(w.key) && endsSentence(text[i:end]) {
				brk = '.'
			}
			w.to--
			if w.key = strings.TrimRight(w.key, "."); w.key == "" {
				continue
			}
		}
		out = append(out, w)
	}
	return out
}

var signs = []string{">=", "=>", "≥", "<=", "=<", "≤", "<>", "!=", "≠", "≈", "~", "=", "<", ">"}

// signAt is the length of the sign of comparison that s begins with.
func signAt(s string) int {
	for _, sign := range signs {
		if strings.HasPrefix(s, sign) {
			return len(sign)
		}
	}
	return 0
}

// wordAt is the word or the sign that begins at i. A comma between digits belongs
// to it.
func wordAt(text string, i, end int) word {
	if n := signAt(text[i:end]); n > 0 {
		return word{key: text[i : i+n], from: i, to: i + n}
	}
	j := i
	for j < end && signAt(text[j:end]) == 0 {
		r, size := utf8.DecodeRuneInString(text[j:end])
		if unicode.IsSpace(r) || strings.ContainsRune("()[];!?:", r) || r == ',' && !betweenDigits(text[i:end], j-i) {
			break
		}
		j += size
	}
	w := word{key: key(text[i:j]), from: i, to: j}
	if at := strings.IndexByte(w.key, '/'); at >= 0 && alternatives(text[i:j], w.key) {
		n := max(at, 1) // casting/die is three words
		w.key, w.to = w.key[:n], i+n
	}
	return w
}

func betweenDigits(s string, i int) bool {
	return i > 0 && i+1 < len(s) && isDigit(s[i-1]) && isDigit(s[i+1])
}

// alternatives reports whether a word with a stroke is two words rather than a
// unit, a fraction or a phrase of the table.
func alternatives(typed, key string) bool {
	return len(key) > 1 && len(key) == len(typed) && !strings.ContainsAny(key, "0123456789") && !units.Unitlike(typed) && table()[key].role == unknown
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func abbreviation(k string) bool {
	switch k {
	case "min.", "max.", "approx.", "elong.", "ca.", "no.", "in.", "dia.":
		return true
	}
	return false
}

// endsSentence reports whether a point before rest ends a sentence: a capital
// follows, or nothing.
func endsSentence(rest string) bool {
	rest = strings.TrimSpace(rest)
	r, _ := utf8.DecodeRuneInString(rest)
	return rest == "" || unicode.IsUpper(r)
}

var british = strings.NewReplacer("aluminium", "aluminum", "grey", "gray", "mould", "mold", "anodis", "anodiz", "machineab", "machinab", "_", " ", "’", "'")

var decimalComma = spelling.Pattern{Expr: `(\d),(\d)`}

// key is a word as the table spells it.
func key(s string) string {
	s = british.Replace(strings.ToLower(s))
	if strings.Contains(s, ",") {
		s = decimalComma.Regexp().ReplaceAllString(s, "$1.$2")
	}
	return s
}

// token is a phrase with its meaning, a quantity or a word that is not known.
type token struct {
	meaning
	from, to int
	inside   bool
	brk      byte
	text     string // as typed
	q        units.Quantity
	plain    string // the quantity with a decimal point, as units reads it
	bare     bool   // the quantity has no unit
	degrees  bool   // the quantity is in degrees of no scale
	// Where a mark may be one of thousands or a decimal one, the quantity both ways.
	point, whole string
	more         bool  // 20+
	problem      error // the number has a unit, but units refuses the two together
}

// longest is how many words the longest phrase of the table has.
const longest = 5

// tokens finds the phrases and quantities of a text.
func (r *reader) tokens() []token {
	ws := words(r.text)
	var out []token
	for i := 0; i < len(ws); {
		between := len(out) > 0 && ws[i].brk == 0 && strings.HasSuffix(key(out[len(out)-1].text), "between")
		n, t := r.tokenAt(ws[i:], between)
		t.from, t.to, t.inside, t.brk = ws[i].from, ws[i+n-1].to, ws[i].inside, ws[i].brk
		t.text = r.text[t.from:t.to]
		out = append(out, t)
		i += n
	}
	return r.conditions(out)
}

// tokenAt reads the token that the words begin with, and says how many it has.
func (r *reader) tokenAt(ws []word, between bool) (int, token) {
	if n, t, ok := r.threadAt(ws); ok {
		return n, t
	}
	if n, t, ok := r.quantityAt(ws, between); ok {
		return n, t
	}
	if n, m, ok := r.phraseAt(ws); ok {
		t := token{meaning: m}
		if n == 1 && len(ws) > 1 && m.role == subject && brinellLoad.Regexp().MatchString(ws[1].key) {
			if u, err := units.ParseUnit(ws[0].key + " " + ws[1].key); err == nil {
				t.q.Unit = u // HBW 10/3000 min. 180
				return 2, t
			}
		}
		return n, t
	}
	return 1, token{}
}

// thread is a designation that says itself that it is one, or with a word that does.
var thread = spelling.Pattern{Expr: `(?i)^(M\d+(?:\.\d+)?\s?[x×]\s?\d+(?:\.\d+)?|(?:#|\d+ )?\d+(?:/\d+)?-\d+(?: UN[A-Z]*)?)(\s+(?:tapped|taps?|threads?|screws?|bolts?)\b)?`}

// threadAt reads 1/2-13 UNC, M12x1.75 or 3/4-10 thread.
func (r *reader) threadAt(ws []word) (int, token, bool) {
	m := thread.Regexp().FindStringSubmatch(r.text[ws[0].from:])
	if m == nil || m[2] == "" && !strings.ContainsAny(m[1], "MmUu") {
		return 0, token{}, false
	}
	n := 1
	for end := ws[0].from + len(m[0]); n < len(ws) && ws[n].to <= end; {
		n++
	}
	threads := part.Said{Field: part.FieldWith, Text: part.Threads.ID()}
	return n, token{meaning: meaning{role: said, said: []part.Said{{Field: part.FieldThread, Text: m[1]}, threads}}}, true
}

var brinellLoad = spelling.Pattern{Expr: `^\d+(\.5)?/\d+$`}

// phraseAt finds the longest phrase of the tables that the words begin with.
func (r *reader) phraseAt(ws []word) (int, meaning, bool) {
	for _, l := range letters {
		if r.text[ws[0].from:ws[0].to] == l.letter && len(ws) > 1 && r.limitFollows(ws[1:]) {
			return 1, l.meaning, true
		}
	}
	for n := min(longest, len(ws)); n > 0; n-- {
		phrase := ws[0].key
		for _, w := range ws[1:n] {
			switch w.brk {
			case 0:
				phrase += " " + w.key
			case ',':
				phrase += ", " + w.key // anodizing, appearance
			default:
				phrase = ""
			}
			if phrase == "" {
				break
			}
		}
		if phrase == "" {
			continue
		}
		for _, p := range [...]string{phrase, strings.ReplaceAll(phrase, "-", " ")} {
			if m, ok := r.meaning(p); ok {
				return n, m, true
			}
		}
	}
	return 0, meaning{}, false
}

// meaning looks a phrase up: the table before the words of the catalog.
func (r *reader) meaning(phrase string) (meaning, bool) {
	if m, ok := table()[phrase]; ok && !(m.role == filler && r.families[phrase].role == named) {
		return m, true
	}
	if m, ok := r.families[phrase]; ok {
		return m, true
	}
	temper, said := strings.CutSuffix(phrase, " temper")
	if temper = strings.ToUpper(temper); r.isTemper(temper) && (said || len(temper) > 1) {
		return meaning{role: named, kind: needs.OfTemper, temper: temper}, true
	}
	return meaning{}, false
}

// limitFollows reports whether a bound or a percentage follows, which makes the
// letter before it a sign of a property.
func (r *reader) limitFollows(ws []word) bool {
	if m, ok := table()[ws[0].key]; ok {
		return m.role == bound
	}
	_, t, ok := r.quantityAt(ws, false)
	return ok && !t.bare && t.q.Unit.Dimension() == units.Percent
}
