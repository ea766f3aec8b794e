package spoken

import (
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/spelling"
	"alongside/units"
)

var startsNumber = spelling.Pattern{Expr: `^(?:[-+−±]|\+/-)?(?:\d|\.\d|[½¼¾⅛⅜⅝⅞])`}

// quantityAt reads the number, range or quantity that the words begin with, the
// longest that units understands. Only behind "between" does "and" join two ends.
func (r *reader) quantityAt(ws []word, between bool) (int, token, bool) {
	if !startsNumber.Regexp().MatchString(ws[0].key) {
		return 0, token{}, false
	}
	var failed error
	reach := r.reach(ws, between)
	for n := reach; n > 0; n-- {
		text := strings.TrimSuffix(r.text[ws[0].from:ws[n-1].to], ",")
		if strings.Contains(text, "(") {
			text += ")"
		}
		t, err := amount(text)
		if n == reach && err != nil {
			failed = err
		}
		switch {
		case err != nil:
			continue
		case t.bare && n < reach && !t.degrees:
			t.problem, n = failed, reach // 40-30 ksi, -600 F
		}
		return n, t, true
	}
	return 0, token{}, false
}

// amount reads the text of a quantity.
func amount(text string) (token, error) {
	t := token{meaning: meaning{role: quantity}}
	if head, rest, ok := strings.Cut(text, "+"); ok && head != "" && isDigit(head[len(head)-1]) && (rest == "" || rest[0] == ' ') {
		text, t.more = head+rest, true
	}
	text, t.degrees = degrees(text)
	t.plain = decimalPoint(text)
	q, err := units.Parse(t.plain)
	if err == nil && (q.Qual != units.Exact || t.degrees && q.Unit != units.One) {
		err = &units.Error{Input: text, Expected: "a quantity without a bound"}
	}
	t.q, t.bare = q, q.Unit == units.One
	t.point, t.whole = otherReading(text, q.Unit)
	return t, err
}

// degrees takes a degree without a scale off the end.
func degrees(text string) (string, bool) {
	for _, end := range [...]string{"degrees", "degree", "deg.", "deg", "°"} {
		if n := len(text) - len(end); n >= 0 && strings.EqualFold(text[n:], end) {
			return strings.TrimSpace(text[:n]), true
		}
	}
	return text, false
}

var fourDigits = spelling.Pattern{Expr: `^\d{4}$`}

// reach is how many words can belong to one quantity. Its branches are the kinds of
// words that go on with one.
func (r *reader) reach(ws []word, between bool) int {
	n := 1
	for n < len(ws) && ws[n].brk == 0 && n < 10 {
		k, last := ws[n].key, ws[n-1].key
		number := n+1 < len(ws) && ws[n+1].brk == 0 && startsNumber.Regexp().MatchString(ws[n+1].key)
		switch {
		case ws[n].inside && !ws[0].inside:
			return r.inParentheses(ws, n)
		case k == "in" && n == 1 && fourDigits.Regexp().MatchString(ws[0].key): // on 1045 in water
			return n
		case brinellLoad.Regexp().MatchString(k) && strings.HasPrefix(last, "hb"):
		case startsNumber.Regexp().MatchString(k):
			if !continues(last, k) {
				return n
			}
		case k == "and":
			if !between || !number {
				return n
			}
		case strings.Contains("|to|-|–|..|...|", "|"+k+"|"):
			if !number {
				return n
			}
		case k == "in":
			if !isDigit(last[len(last)-1]) && !strings.HasSuffix(last, "cu") && !strings.HasSuffix(last, "sq") {
				return n
			}
		case k == "deg" || k == "degree" || k == "degrees":
		case !r.unitWord(ws[n]):
			return n
		}
		n++
	}
	return n
}

// continues reports whether a number goes on with a second one: 1 1/8, 10 300,
// 4 lb 3 oz, 30 to 40.
func continues(last, k string) bool {
	switch strings.Trim(last, "0123456789-+") {
	case "ft", "feet", "foot", "'", "lb", "lbs", "pounds", "to", "and", "–", "..", "...", "ksi-":
		return true
	case "":
		return last == "-" || strings.Contains(k, "/") || len(k) == 3 && isDigit(k[0]) && isDigit(k[2])
	}
	return false
}

// inParentheses takes the second value of 37 ksi (255 MPa), where the parentheses
// hold that alone.
func (r *reader) inParentheses(ws []word, n int) int {
	if n < 2 || !startsNumber.Regexp().MatchString(ws[n].key) {
		return n
	}
	end := n
	for end < len(ws) && ws[end].inside && ws[end].brk == 0 && (end == n || r.unitWord(ws[end])) {
		end++
	}
	if strings.HasPrefix(r.text[ws[end-1].to:], ")") {
		return end
	}
	return n
}

// unitWord reports whether a word can stand in a unit. A word that the table knows
// is no unit, but for those that are both.
func (r *reader) unitWord(w word) bool {
	switch k := w.key; k {
	case "hb", "hbw", "hbs", "bhn", "brinell", "hrb", "hre", "rockwell", "iacs", "f", "c":
		return true
	case "a", "e", "o":
		return false
	}
	if _, known := r.meaning(w.key); known {
		return false
	}
	return units.Unitlike(r.text[w.from:w.to])
}

var (
	commas         = spelling.Pattern{Expr: `\d+(?:,\d+)+`}
	thousandsComma = spelling.Pattern{Expr: `^[1-9]\d{0,2}(?:,\d{3})+$`}
	thousandsPoint = spelling.Pattern{Expr: `\b[1-9]\d{0,2}\.\d{3}\b`}
)

// decimalPoint writes a decimal comma as a point. A comma before three digits is
// one of thousands, which units reads.
func decimalPoint(s string) string {
	return commas.Regexp().ReplaceAllStringFunc(s, func(n string) string {
		if thousandsComma.Regexp().MatchString(n) || strings.Count(n, ",") > 1 {
			return n
		}
		return strings.Replace(n, ",", ".", 1)
	})
}

// otherReading reads a quantity the other way, where its comma or point before
// three digits may be either mark: point is the text with a decimal point, whole
// that with all its digits; both are "" where there is but one way. With US units
// a comma is always one of thousands, and a point one of thousands only with units
// whose usual figures are that large.
func otherReading(s string, u units.Unit) (point, whole string) {
	n := commas.Regexp().FindString(s)
	switch {
	case thousandsComma.Regexp().MatchString(n) && strings.Count(n, ",") == 1 && !strings.HasSuffix(n, ",000") && metric(u):
	case u == units.PSI || u == units.MPa || u == units.NPerMM2 || u == units.KgPerM3:
		n = thousandsPoint.Regexp().FindString(s)
	default:
		n = ""
	}
	if n == "" {
		return "", ""
	}
	digits := strings.NewReplacer(",", "", ".", "").Replace(n)
	last := len(digits) - 3
	decimal := strings.TrimSuffix(strings.TrimRight(digits[:last]+"."+digits[last:], "0"), ".")
	if !strings.HasSuffix(digits, "0") {
		decimal += "0" // not three digits again
	}
	return strings.Replace(s, n, decimal, 1), strings.Replace(s, n, digits, 1)
}

func metric(u units.Unit) bool {
	switch u {
	case units.MPa, units.NPerMM2, units.KgPerM3, units.GPerCM3, units.WPerMK, units.MM, units.Kg, units.GPa:
		return true
	}
	return false
}

// conditions joins the tokens that state a condition of the test: 0.2 % offset,
// 10^8 cycles, in 2 in, at 300 °F, 500 kg load.
func (r *reader) conditions(in []token) []token {
	var out []token
	for i := 0; i < len(in); {
		n, c, ok := r.conditionAt(in[i:])
		if t := in[i]; !ok && t.inside && i > 0 && isYield(in[i-1]) && t.q.Unit == units.Pct { // yield (0.2 %)
			n, c, ok = 1, props.Conditions{Offset: t.q.Lo}, true
		}
		if !ok {
			out = append(out, in[i])
			i++
			continue
		}
		t := in[i]
		t.meaning = meaning{role: condition, cond: c}
		t.to = in[i+n-1].to
		t.text = r.text[t.from:t.to]
		out = append(out, t)
		i += n
	}
	return out
}

// conditionAt reads the condition that the tokens begin with: how many tokens it
// has, and what it states.
func (r *reader) conditionAt(in []token) (n int, c props.Conditions, ok bool) {
	var next []string // the words behind the first token
	for _, t := range in[1:min(4, len(in))] {
		if t.brk != 0 && !t.inside {
			break
		}
		next = append(next, key(t.text))
	}
	if in[0].role == link {
		return r.conditionBehind(key(in[0].text), in[1:1+len(next)])
	}
	if n, v, isCycles := cycles(in[0].text, next); isCycles {
		return n, props.Conditions{Cycles: v}, true
	}
	if t := in[0]; t.role == quantity && !t.q.IsRange() {
		n, c = measured(t, next, in)
	}
	return n, c, n > 0
}

// conditionBehind reads the condition behind "in" or "at": a gauge length, or one
// that could as well stand alone.
func (r *reader) conditionBehind(link string, in []token) (n int, c props.Conditions, ok bool) {
	if len(in) == 0 || in[0].role != quantity {
		return 0, c, false
	}
	if link == "at" {
		n, c, ok = r.conditionAt(in)
		return n + 1, c, ok
	}
	if link == "in" {
		c.Gauge = gauge(in[0])
	}
	return 2, c, c.Gauge != ""
}

// measured reads, a branch each, a condition that begins with a quantity and goes on with the
// words next: 0.2 % offset, 0.5 % extension under load, 500 kg load.
func measured(t token, next []string, in []token) (n int, c props.Conditions) {
	behind := strings.Join(next, " ")
	switch {
	case t.q.Unit == units.Pct && strings.HasPrefix(behind, "offset"):
		c.Offset = t.q.Lo
		return 2, c
	case t.q.Unit == units.Pct && strings.HasPrefix(behind, "eul"):
		c.Offset, c.UnderLoad = t.q.Lo, true
		return 2, c
	case t.q.Unit == units.Pct && strings.HasPrefix(behind, "extension under load"):
		c.Offset, c.UnderLoad = t.q.Lo, true
		return 4, c
	case t.q.Unit == units.Pct && t.q.Lo <= 0.5 && len(next) > 0 && in[1].brk == 0 && isYield(in[1]):
		c.Offset = t.q.Lo
		return 1, c
	case (t.q.Unit == units.Kg || t.q.Unit == units.KgForce) && strings.HasPrefix(behind, "load"):
		c.Load, c.Ball = t.q.Lo, 10
		if len(next) == 3 && next[2] == "ball" && in[2].q.Unit == units.MM {
			c.Ball = in[2].q.Lo
			return 4, c
		}
		return 2, c
	}
	return 0, c
}

func isYield(t token) bool {
	return t.role == subject && len(t.props) == 1 && t.props[0] == props.YieldStrength
}

// gauge is a gauge length as figures state it; "" where none has it.
func gauge(t token) string {
	for _, known := range props.GaugeLengths() {
		if strings.EqualFold(known, t.text) {
			return known // 5D, which units takes for days
		}
		if k, err := units.Parse(known); err == nil && k.Lo == t.q.Lo && k.Unit == t.q.Unit {
			return known
		}
	}
	return ""
}

// leastCycles is the shortest life that is called one of fatigue.
const leastCycles = 1000

var cyclesNumber = spelling.Pattern{Expr: `^(?:([0-9.]+)\s*[x×*]\s*)?10\^?(\d{1,2})$`}

// cycles reads a number of cycles: 10^8, 5x10^8, 1e7 cycles, 500 million cycles.
func cycles(text string, next []string) (n int, v float64, ok bool) {
	n, factor := 1, 1.0
	if len(next) > 0 && next[0] == "million" {
		factor, n = 1e6, 2
	}
	said := len(next) >= n && next[n-1] == "cycles"
	if m := cyclesNumber.Regexp().FindStringSubmatch(strings.ToLower(text)); m != nil && (said || strings.Contains(text, "^")) {
		mantissa := m[1]
		if mantissa == "" {
			mantissa = "1"
		}
		if said {
			n++
		}
		v, err := strconv.ParseFloat(mantissa+"e"+m[2], 64)
		return n, v, err == nil && v >= leastCycles
	}
	if !said {
		return 0, 0, false
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", ""), 64)
	return n + 1, v * factor, err == nil && v*factor >= leastCycles
}
