package needs

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

// limit is a bound on a property, or a size of the part, as far as it was read.
type limit struct {
	subject *token
	amount  *token
	op      Op
	stated  bool // op was said
	cond    props.Conditions
	at      *token // the temperature behind "at"
	tested  bool   // it was said to be that of the test
}

// limit reads a limit from i on, in any order of its words; from is where a
// negation before it stands.
func (r *reader) limit(ts []token, i, from int) int {
	return r.limitOf(ts, i, from, limit{}, i > from)
}

// limitOf goes on with a limit of which something is known; neg is true behind a
// negation that is not used up.
func (r *reader) limitOf(ts []token, i, from int, l limit, neg bool) int {
	for ; i < len(ts); i++ {
		t := &ts[i]
		switch t.role {
		case about:
		case condition:
			l.cond = l.cond.With(t.cond)
		case negation:
			if l.amount != nil && l.subject != nil || i+1 == len(ts) || ts[i+1].role != bound {
				return r.finish(ts[from:i], l, neg, i)
			}
			neg = true
		case link:
			if l.temperature(ts, i) {
				i++
			} else if strings.EqualFold(t.text, "made of") {
				return r.finish(ts[from:i], l, neg, i)
			} else if i+1 < len(ts) && ts[i+1].role != quantity && ts[i+1].role != condition && l.amount != nil {
				return r.finish(ts[from:i], l, neg, i)
			}
		case bound:
			if t.op == Between {
				continue
			}
			if l.amount != nil && (l.stated || !l.takes(t, ts[i+1:])) {
				return r.finish(ts[from:i], l, neg, i)
			}
			l.op, l.stated = t.op, true
			if neg {
				l.op, neg = inverse(t.op), false
			}
		case subject:
			if l.subject != nil && (len(t.fields) == 0 || !slices.Equal(t.fields, l.subject.fields)) {
				return r.finish(ts[from:i], l, neg, i)
			}
			l.subject = t
		case quantity:
			if l.rangeOf(t) {
				continue
			}
			if l.amount != nil {
				return r.finish(ts[from:i], l, neg, i)
			}
			l.amount = t
			if t.more {
				l.op, l.stated = AtLeast, true
			}
		case against, named, unknown:
			if l.amount == nil && l.subject != nil && (t.role == against || strings.EqualFold(ts[i-1].text, "of")) {
				return r.compared(ts, i, from, l.subject, neg)
			}
			if t.role == unknown && !l.whole() {
				r.spoiled(ts[from:], t, l)
				return len(ts)
			}
			return r.finish(ts[from:i], l, neg, i)
		default:
			return r.finish(ts[from:i], l, neg, i)
		}
	}
	return r.finish(ts[from:], l, neg, i)
}

// whole reports whether what was read needs no word more.
func (l *limit) whole() bool {
	return l.amount != nil && (l.subject != nil && !l.amount.bare || l.amount.bare && l.subject != nil && plainUnit(l.subject) || l.subject == nil && !l.amount.bare)
}

// plainUnit reports whether what is named is counted without a unit, as ratings are.
func plainUnit(t *token) bool {
	return len(t.props) > 0 && t.props[0].Info().Units[units.US].Symbol() == ""
}

// temperature takes "at 300 F": where a figure is asked for it may be that of the
// test or that of the service.
func (l *limit) temperature(ts []token, i int) bool {
	word := key(ts[i].text)
	if i+1 == len(ts) || word == "of" || word == "in" || ts[i+1].role != quantity || ts[i+1].q.Unit.Dimension() != units.Temperature {
		return false
	}
	if l.subject == nil && l.amount == nil {
		return false
	}
	l.at, l.tested = &ts[i+1], word != "at" || ts[i].inside
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
		return mine == next || mine == closed(b.op)
	}
	return true
}

// usual is the direction in which a property is limited where none is said;
// Between where there is none that is usual.
func usual(p props.PropertyID, u units.Unit) Op {
	op := Between
	switch info := p.Info(); {
	case info.Dimension == units.Rating, info.Sense == props.More:
		op = AtLeast
	case info.Sense == props.Less:
		op = AtMost
	}
	if u != units.NoUnit && u.Reciprocal() {
		op = turned(op)
	}
	return op
}

// spoiled refuses a limit with a word in it that is not known.
func (r *reader) spoiled(ts []token, t *token, l limit) {
	e := &ParseError{Word: t.text}
	if l.amount != nil && l.amount.bare && l.subject != nil && len(l.subject.props) > 0 {
		var ue *units.Error
		text := l.amount.plain + " " + t.text
		if _, err := units.ParseAs(text, l.subject.props[0].Info().Dimension, units.NoUnit); errors.As(err, &ue) {
			e = &ParseError{Word: text, Hint: expected(ue)}
		}
	} else if l.amount == nil && startsNumber.MatchString(t.text) && l.subject != nil && len(l.subject.props) > 0 {
		var ue *units.Error
		text := r.span(ts[len(ts)-1:])
		if i := strings.Index(r.span(ts), t.text); i >= 0 {
			text = r.span(ts)[i:]
		}
		if _, err := units.ParseAs(text, l.subject.props[0].Info().Dimension, units.NoUnit); errors.As(err, &ue) {
			e = &ParseError{Word: text, Hint: expected(ue)}
		}
	}
	r.refuse(r.span(ts), e)
}

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

// finish makes a piece of what was read and returns where the reading goes on.
func (r *reader) finish(ts []token, l limit, neg bool, next int) int {
	text := r.span(ts)
	switch {
	case l.amount == nil && l.subject != nil && len(l.subject.props) > 0:
		r.refuse(text, &ParseError{Hint: fmt.Sprintf("how much? give a limit, for example %q", example(l.subject.props[0]))})
		return next
	case l.amount == nil || neg:
		r.unread(ts)
		return next
	case l.amount.problem != nil:
		r.refuse(text, problem(l.amount))
		return next
	case l.amount.bare && l.subject != nil && isFit(*l.subject) && !strings.ContainsAny(l.amount.plain, "./ "):
		var p part.Part // 1045 shaft
		if s := (part.Said{Field: part.FieldMate, Text: l.amount.plain}); p.Set(r.catalog, s.Field, s.Text) == nil {
			r.tell(text, s, false)
			return next
		}
	}
	subj := l.subject
	if subj == nil && r.last != nil && fits(r.last.props[0], l.amount.q.Unit) {
		subj = r.last // yield at least 20 ksi at most 30 ksi
	}
	r.last = nil
	list, err := r.readings(&l, subj)
	switch {
	case err != nil:
		r.refuse(text, err)
	case len(list) == 1:
		r.accept(text, list[0], l.subject == nil && subj != nil)
		if subj != nil && len(subj.props) > 0 {
			r.last = subj
		}
	default:
		e := &ParseError{}
		if subj == nil {
			e.Hint = "name a property"
		}
		for _, x := range list {
			e.Choices = append(e.Choices, x.String())
		}
		r.refuse(text, e)
	}
	return next
}

// accept takes the only reading. A second bound of the same property in the other
// direction makes a band of the two.
func (r *reader) accept(text string, x reading, second bool) {
	if x.need == nil {
		r.tell(text, *x.said, x.assumed)
		return
	}
	if second && len(r.out) > 0 {
		if p := &r.out[len(r.out)-1]; p.Need != nil && p.Need.join(x.need) {
			p.Text += " " + text
			p.Need.Text = p.Text
			return
		}
	}
	r.take(text, *x.need, x.assumed)
}

// join makes a band of two opposite bounds that include their ends.
func (n *Need) join(o *Need) bool {
	if n.Property != o.Property || n.Limit.Unit != o.Limit.Unit || n.Cond != o.Cond {
		return false
	}
	lo, hi := n, o
	if n.Op == AtMost {
		lo, hi = o, n
	}
	if lo.Op != AtLeast || hi.Op != AtMost || lo.Limit.Lo >= hi.Limit.Lo {
		return false
	}
	q := lo.Limit
	q.Hi, q.Place = hi.Limit.Hi, min(lo.Limit.Place, hi.Limit.Place)
	n.Op, n.Limit = Between, q
	return true
}
