package spoken

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/units"
)

// limit is a bound on a property, or a size of the part, as far as it was read.
type limit struct {
	subject *token
	amount  *token
	op      needs.Op
	stated  bool // op was said
	not     bool // behind a negation that is not used up
	cond    props.Conditions
	at      *token  // the temperature behind "at"
	tested  bool    // it was said to be that of the test
	times   float64 // how much of the figure of another metal, or by how much more or less; 0 where not said
}

// limit reads a limit from i on, in any order of its words; from is where a
// negation before it stands.
func (r *reader) limit(ts []token, i, from int) int {
	return r.limitOf(ts, i, from, limit{not: i > from})
}

// limitOf goes on with a limit of which something is known.
func (r *reader) limitOf(ts []token, i, from int, l limit) int {
	for i < len(ts) {
		t := &ts[i]
		if l.amount == nil && l.subject != nil && (t.role == against || (t.role == named || t.role == unknown) && (l.stated || isOf(ts[i-1]))) {
			return r.compared(ts, i, from, l)
		}
		if t.role == unknown && !l.whole() {
			r.spoiled(ts[from:], l, t)
			return len(ts)
		}
		n := l.take(ts[i:])
		if n == 0 {
			break
		}
		i += n
	}
	return r.finish(ts[from:i], l, i)
}

// directed is the bound that was said, or else op, the reverse of it behind a negation.
func (l *limit) directed(op needs.Op) needs.Op {
	if l.stated {
		op = l.op
	}
	if l.not {
		op = op.Inverse()
	}
	return op
}

func isOf(t token) bool { return strings.EqualFold(t.text, "of") }

// take takes what the tokens begin with into the limit, and says how many they
// are; 0 where they belong to something else.
func (l *limit) take(ts []token) int {
	t := &ts[0]
	switch t.role {
	case about:
		return 1
	case condition:
		l.cond = l.cond.With(t.cond)
		return 1
	case negation:
		if l.not = len(ts) > 1 && ts[1].role == bound && (l.amount == nil || l.subject == nil); l.not {
			return 1
		}
	case link:
		return l.link(ts)
	case bound:
		return l.bound(ts)
	case subject:
		if l.subject == nil || len(t.fields) > 0 && slices.Equal(t.fields, l.subject.fields) {
			l.subject = t
			return 1
		}
	case quantity:
		return l.quantity(t)
	}
	return 0
}

// quantity takes the amount, or the range of an expansion.
func (l *limit) quantity(t *token) int {
	switch {
	case l.rangeOf(t):
		return 1
	case l.amount != nil:
		return 0
	}
	if l.amount = t; t.more {
		l.op, l.stated = needs.AtLeast, true
	}
	return 1
}

// link takes "of", "in" and "at", the last with the temperature behind it.
func (l *limit) link(ts []token) int {
	switch {
	case l.temperature(ts):
		return 2
	case strings.EqualFold(ts[0].text, "made of"), l.amount != nil && len(ts) > 1 && ts[1].role != quantity && ts[1].role != condition:
		return 0
	}
	return 1
}

// bound takes a bound, the reverse of it behind a negation.
func (l *limit) bound(ts []token) int {
	t := &ts[0]
	if t.op == needs.Between {
		return 1
	}
	if l.amount != nil && (l.stated || !l.takes(t, ts[1:])) {
		return 0
	}
	l.op, l.stated = t.op, true
	if l.not {
		l.op, l.not = t.op.Inverse(), false
	}
	return 1
}

// whole reports whether what was read needs no word more.
func (l *limit) whole() bool {
	return l.amount != nil && (!l.amount.bare || l.subject != nil && plainUnit(l.subject))
}

// plainUnit reports whether what is named is counted without a unit, as ratings are.
func plainUnit(t *token) bool {
	return len(t.props) > 0 && t.props[0].Info().Units[units.US].Symbol() == ""
}

// temperature takes "at 300 F": where a figure is asked for it may be that of the
// test or that of the service.
func (l *limit) temperature(ts []token) bool {
	word := key(ts[0].text)
	if len(ts) == 1 || !strings.HasSuffix(word, "at") || ts[1].role != quantity || ts[1].q.Unit.Dimension() != units.Temperature || l.subject == nil && l.amount == nil {
		return false
	}
	l.at, l.tested = &ts[1], word != "at" || ts[0].inside
	return true
}

// rangeOf takes the temperature range of an expansion.
func (l *limit) rangeOf(t *token) bool {
	if l.subject == nil || len(l.subject.props) != 1 || l.subject.props[0] != props.ThermalExpansion || t.q.Unit.Dimension() != units.Temperature || !t.q.IsRange() {
		return false
	}
	return l.cond.Add(t.q.String())
}

// takes reports whether a bound behind an amount belongs to it rather than to what
// follows: 20 ksi min, yield 20 ksi min.
func (l *limit) takes(b *token, rest []token) bool {
	if len(rest) == 0 {
		return true
	}
	switch rest[0].role {
	case quantity:
		return false
	case subject:
		if l.subject == nil {
			return true // 20 ksi min yield
		}
		if len(l.subject.props) == 0 || len(rest[0].props) == 0 {
			return false
		}
		mine, next := usual(l.subject.props[0], units.NoUnit), usual(rest[0].props[0], units.NoUnit)
		return mine == next || mine == b.op.Closed()
	}
	return true
}

// usual is the direction in which a property is limited where none is said;
// Between where there is none that is usual.
func usual(p props.PropertyID, u units.Unit) needs.Op {
	op := needs.Between
	switch info := p.Info(); {
	case info.Dimension == units.Rating, info.Sense == props.More:
		op = needs.AtLeast
	case info.Sense == props.Less:
		op = needs.AtMost
	}
	if u != units.NoUnit && u.Reciprocal() {
		op = op.Turned()
	}
	return op
}

// spoiled refuses a limit with a word in it that is not known: what units say of a
// number with it, or the word.
func (r *reader) spoiled(ts []token, l limit, t *token) {
	if l.amount != nil && l.amount.bare {
		t = l.amount
	}
	e := &ParseError{Word: t.text}
	if l.subject != nil && len(l.subject.props) > 0 && startsNumber.Regexp().MatchString(t.text) {
		var ue *units.Error
		text := r.text[t.from:ts[len(ts)-1].to]
		if _, err := units.ParseAs(text, l.subject.props[0].Info().Dimension, units.NoUnit); errors.As(err, &ue) {
			e = &ParseError{Word: text, Hint: expected(ue)}
		}
	}
	r.refuse(r.span(ts), e)
}

// isMate reports whether a number before shaft or bore is a metal's: 1045 shaft.
func (r *reader) isMate(l *limit) bool {
	if !l.amount.bare || l.subject == nil || !isFit(*l.subject) || strings.ContainsAny(l.amount.plain, "./ ") {
		return false
	}
	var p part.Part
	return p.Set(r.catalog, part.FieldMate, l.amount.plain) == nil
}

// problem is why units refuses a number with its unit.
func problem(t *token) *ParseError {
	var ue *units.Error
	if errors.As(t.problem, &ue) {
		return &ParseError{Word: t.text, Hint: expected(ue)}
	}
	return &ParseError{Hint: t.problem.Error()}
}

// expected is the remedy of an error of reading a quantity.
func expected(e *units.Error) string {
	switch {
	case e.Hint != "":
		return e.Hint
	case e.Understood != "":
		return e.Understood + "; expected " + e.Expected
	}
	return "expected " + e.Expected
}

// finish makes a piece of what was read and returns where the reading goes on. Its
// branches are what may be missing.
func (r *reader) finish(ts []token, l limit, next int) int {
	text := r.span(ts)
	if l.amount == nil && l.subject == nil && l.at != nil { // what was said at the temperature is not of a figure
		l.amount, l.at = l.at, nil
	}
	subj := l.subject
	if subj == nil && l.amount != nil && r.last != nil && fits(r.last.props[0], l.amount.q.Unit) {
		subj = r.last // yield at least 20 ksi at most 30 ksi
	}
	r.last = nil
	switch {
	case l.amount == nil && subj != nil && len(subj.props) > 0 && r.now != nil && isOf(ts[len(ts)-1]): // the strength of today's
		r.compared(ts, len(ts), 0, l)
	case l.amount == nil && subj != nil && len(subj.props) > 0:
		r.refuse(text, &ParseError{Hint: fmt.Sprintf("how much? give a limit, for example %q", example(subj.props[0]))})
	case l.amount == nil && !l.not && l.cond.Cycles > 0:
		r.tell(text, part.Said{Field: part.FieldCycles, Text: strconv.FormatFloat(l.cond.Cycles, 'f', -1, 64)}, true)
	case l.amount == nil || l.not:
		r.unread(ts)
	case l.amount.problem != nil:
		r.refuse(text, problem(l.amount))
	case r.isMate(&l):
		r.tell(text, part.Said{Field: part.FieldMate, Text: l.amount.plain}, false)
	default:
		r.decide(text, &l, subj)
	}
	return next
}

// decide takes the only way to understand a limit, or asks which is meant.
func (r *reader) decide(text string, l *limit, subj *token) {
	list, err := r.readings(l, subj)
	switch {
	case err != nil:
		r.refuse(text, err)
		return
	case len(list) == 1:
		r.accept(text, list[0], l.subject == nil && subj != nil)
		if subj != nil && len(subj.props) > 0 {
			r.last = subj
		}
		return
	}
	e := &ParseError{}
	if subj == nil {
		e.Hint = "name a property"
	}
	for _, x := range list {
		e.Choices = append(e.Choices, x.String())
	}
	r.refuse(text, e)
}

// accept takes the only reading. A second bound of the same property in the other
// direction makes a band of the two.
func (r *reader) accept(text string, x reading, second bool) {
	if x.need == nil {
		r.tell(text, *x.said, x.assumed)
		return
	}
	if second && len(r.out) > 0 {
		if p := &r.out[len(r.out)-1]; p.Need != nil && join(p.Need, x.need) {
			p.Text += " " + text
			p.Need.Text = p.Text
			return
		}
	}
	r.take(text, *x.need, x.assumed)
}

// join makes a band of two opposite bounds that include their ends.
func join(n, o *needs.Need) bool {
	if n.Property != o.Property || n.Limit.Unit != o.Limit.Unit || n.Cond != o.Cond {
		return false
	}
	lo, hi := n, o
	if n.Op == needs.AtMost {
		lo, hi = o, n
	}
	if lo.Op != needs.AtLeast || hi.Op != needs.AtMost || lo.Limit.Lo >= hi.Limit.Lo {
		return false
	}
	q := lo.Limit
	q.Hi, q.Place = hi.Limit.Hi, min(lo.Limit.Place, hi.Limit.Place)
	n.Op, n.Limit = needs.Between, q
	return true
}
