package spoken

import (
	"math"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/units"
)

// compared reads a limit set by another metal: "lighter than bronze", "yield at
// least that of A356-T6". Of l is known what the words before say. Its branches are the
// ways to say it.
func (r *reader) compared(ts []token, i, from int, l limit) int {
	t := token{meaning: meaning{op: needs.AtLeast}}
	if i < len(ts) && ts[i].role == against {
		t = ts[i]
		i++
	}
	if l.subject != nil {
		t.props = l.subject.props
	}
	t.op = l.directed(t.op)
	if len(t.props) == 0 {
		r.unread(ts[from:])
		return len(ts)
	}
	if i < len(ts) && ts[i].role == quantity && !ts[i].bare { // nothing heavier than 0.1 lb/in3
		s := token{meaning: meaning{role: subject, props: t.props}}
		return r.limitOf(ts, i, from, limit{subject: &s, op: t.op, stated: true})
	}
	end := i
	if !t.alone {
		end = designation(ts, i)
	}
	text := r.measuredBy(r.span(ts[i:end]))
	if text == "" {
		r.refuse(r.span(ts[from:end]), &ParseError{Hint: "than what? name the metal, or say what the part is made of today"})
		return end
	}
	for end < len(ts) && ts[end].role == bound { // or better
		end++
	}
	if t.props = r.onFile(t.props, text); len(t.props) > 1 {
		r.whichOf(&l, t.props, r.text[ts[from].from:ts[end-1].to], ts[from].from)
		return end
	}
	n, source, err := r.figureOf(t.props[0], text)
	switch {
	case err == nil:
		source, err = measure(&n, t, l, source)
	case end < len(ts) && ts[end].role == quantity: // of blue 20 ksi
		end, err = len(ts), &ParseError{Word: r.span(ts[i:end])}
	}
	if err != nil {
		r.refuse(r.span(ts[from:end]), err)
		return end
	}
	if r.take(r.span(ts[from:end]), n, true) {
		r.out[len(r.out)-1].ReadAs += ", " + source
	}
	return end
}

// measure turns a need of another metal's figure into what the words t and l ask of
// it, and tells how much of what figure it is.
func measure(n *needs.Need, t token, l limit, source string) (string, *ParseError) {
	n.Op = t.op
	if n.Property.Info().Sense == props.Less && l.subject != nil && !l.stated {
		n.Op = needs.AtMost
	}
	if l.times == 0 {
		return source, nil
	}
	times, err := multiply(n, l.times, t.role == against)
	return strconv.FormatFloat(100*times, 'g', 4, 64) + " % of " + source, err
}

// onFile are those of several properties of which the metal has a figure, which are
// all that can be meant; the first where it has none.
func (r *reader) onFile(list []props.PropertyID, metal string) []props.PropertyID {
	if len(list) == 1 {
		return list
	}
	var out []props.PropertyID
	for _, p := range list {
		if _, _, err := r.figureOf(p, metal); err == nil {
			out = append(out, p)
		}
	}
	if len(out) == 0 {
		return list[:1]
	}
	return out
}

// whichOf asks which property is compared: the text, which begins at an offset, with
// the name of each in the place of the word that leaves it open.
func (r *reader) whichOf(l *limit, list []props.PropertyID, text string, at int) {
	e := &ParseError{}
	before, after := text[:l.subject.from-at], text[l.subject.to-at:]
	for _, p := range list {
		e.Choices = append(e.Choices, strings.Join(strings.Fields(before+props.InSentence(p.Info().Name)+after), " "))
	}
	r.refuse(strings.Join(strings.Fields(text), " "), e)
}

// measuredBy is the metal that a comparison is with: the one named, else today's,
// else the one named before, as in "as strong as class 30 but lighter"; "" for none.
func (r *reader) measuredBy(named string) string {
	switch {
	case named != "":
		r.than = named
	case r.now != nil:
		return r.now.ID
	}
	return r.than
}

// figureOf is the figure of the metal or the family that a text names, as a need
// that it meets itself; of a family the best there is, so that what is better is
// better than every one.
func (r *reader) figureOf(p props.PropertyID, text string) (n needs.Need, source string, err *ParseError) {
	b := compare.NewBench()
	b.System = r.system
	if m := r.families[key(text)]; m.role == named {
		var best *props.Material
		for _, mat := range r.catalog.Materials {
			family := needs.Need{Kind: needs.OfFamily, Families: m.families}
			if one, ok := needs.AsGoodAs(&b, mat, p); ok && family.Admits(mat) && (best == nil || beyond(&one, &n)) {
				best, n = mat, one
			}
		}
		if best == nil {
			return n, "", &ParseError{Hint: "no figure of it is on file for " + text}
		}
		return n, "the figure of " + best.Name() + ", the best of " + text, nil
	}
	m, resolveErr := r.catalog.Resolve(text)
	if resolveErr != nil {
		return n, "", &ParseError{Hint: resolveErr.Error()}
	}
	n, ok := needs.AsGoodAs(&b, m, p)
	if !ok {
		return n, "", &ParseError{Hint: "no figure of it is on file for " + m.Name()}
	}
	return n, "the figure of " + m.Name(), nil
}

// beyond reports whether a limit asks for more than another on the same property.
func beyond(a, b *needs.Need) bool {
	if a.Limit.Unit.Dimension() != b.Limit.Unit.Dimension() {
		return false // Brinell under another load
	}
	x, y := a.Limit.Unit.ToSI(a.Limit.Lo), b.Limit.Unit.ToSI(b.Limit.Lo)
	if a.Op == needs.AtMost || a.Op == needs.LessThan {
		return x < y
	}
	return x > y
}

// multiple reads a limit that is so many percent of another metal's figure, or more or
// less than it by so many: "20 % lighter than bronze", "50 % the weight of bronze". Its
// branches are the ways to say it.
func (r *reader) multiple(ts []token, i, from int) (next int, ok bool) {
	l := limit{}
	if ts[i].role == bound && i+1 < len(ts) {
		l.op, l.stated = ts[i].op, true
		i++
	}
	if ts[i].role != quantity || ts[i].q.Unit != units.Pct || ts[i].problem != nil {
		return 0, false
	}
	plain := ts[from].role != negation && !ts[i].q.IsRange()
	l.times = ts[i].q.Lo / 100
	if i++; i+1 < len(ts) && isOf(ts[i]) {
		i++
	}
	switch {
	case i == len(ts):
	case ts[i].role == against && len(ts[i].props) > 0:
		if !plain || l.stated && l.op.Closed() != needs.AtLeast {
			r.refuse(r.span(ts[from:]), &ParseError{Hint: "type the limit itself, or say it like 20 % lighter than bronze"})
			return len(ts), true
		}
		l.stated = false
		return r.compared(ts, i, from, l), true
	case plain && r.isShare(ts[i:]):
		l.subject = &ts[i]
		return r.compared(ts, min(i+2, len(ts)), from, l), true
	}
	return 0, false
}

// isShare reports whether a property and the metal whose figure is meant stand behind a
// percentage: the weight of bronze, the weight where it is known what the part is made of.
func (r *reader) isShare(ts []token) bool {
	if ts[0].role != subject || len(ts[0].props) == 0 || ts[0].props[0].Info().Dimension == units.Percent {
		return false
	}
	switch n := len(ts); {
	case n > 2:
		return isOf(ts[1]) && ts[2].role != quantity
	case n == 2:
		return r.now != nil && isOf(ts[1])
	}
	return r.now != nil
}

// multiply makes of a need of a figure one of so many times the figure: by so much more
// or less where a metal is stronger or lighter, else of as much.
func multiply(n *needs.Need, times float64, compared bool) (float64, *ParseError) {
	info := n.Property.Info()
	switch {
	case info.Dimension == units.Rating || info.Dimension == units.Temperature || info.Dimension == units.Percent:
		return 0, &ParseError{Hint: "a share of it says nothing; type the limit itself"}
	case compared && n.Op == needs.MoreThan:
		times = 1 + times
	case compared && n.Op == needs.LessThan:
		times = 1 - times
	case compared && n.Op == needs.AtMost:
		return 0, &ParseError{Hint: "say it the other way round: half as heavy, twice as strong"}
	case compared && info.Sense == props.Less:
		n.Op = needs.AtMost // half as heavy
	}
	if times <= 0 {
		return 0, &ParseError{Hint: "a limit at or below zero asks for nothing"}
	}
	n.Op = n.Op.Closed()
	n.Limit.Lo *= times
	n.Limit.Hi *= times
	n.Limit.Place = min(n.Limit.Place, int8(math.Floor(math.Log10(n.Limit.Lo)))-2) // three digits
	return times, nil
}
