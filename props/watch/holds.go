package watch

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/foundry"
	"alongside/units"
)

// answer is whether a limit is crossed.
type answer uint8

const (
	no answer = iota
	yes
	unknown // a figure is missing; the words say which
)

// holds tells whether a limit is crossed, and says so in words. Figures that
// it looks at are shown with the caution.
func (e *evaluation) holds(l *limit, c *Caution) (why string, is answer) {
	switch {
	case l.subject == anodicGap:
		return e.gap(l, c)
	case l.subject == content:
		return e.content(l)
	case l.subject != ofPin && l.subject != ofBaseline:
		return e.said(l)
	case l.op == "absent":
		return e.absent(l)
	case l.op == "unlike":
		return e.unlike(l, c)
	case l.least && l.other != "":
		return e.least(l, c)
	case l.other != "":
		return e.ratio(l, c)
	}
	how := e.bench.Question
	if l.least {
		how.Basis = compare.MinimumOnly
	}
	f := how.Figure(e.pin, l.property)
	if f == nil {
		if l.property.Info().Dimension == units.Rating {
			return "", no // most materials have no rating; nothing is missing
		}
		return missing(l.property, e.pin), unknown
	}
	e.add(c, "pin", e.pin, l.property, f)
	v, err := f.Value.In(l.value.Unit)
	if err != nil {
		return fmt.Sprintf("%s of %s is %s, which does not compare with %s", l.property.Info().Name, e.pin.Name(), f.Value, l.value), unknown
	}
	return l.crossed(v.Lo, v.Hi, l.value.Lo, l.value, "%s %s is", named(l.property, f), e.inRow(l.property, f.Value))
}

// named is a property in a sentence, with the basis of the figure where that is
// not typical: "specified minimum elongation".
func named(p props.PropertyID, f *props.Figure) string {
	name := props.InSentence(p.Info().Name)
	if f.Basis != props.Typical {
		name = f.Basis.Phrase() + " " + name
	}
	return name
}

// said holds what was said of the part against a limit: its service temperature, its
// wall, the pH of its medium. What was not said raises nothing.
func (e *evaluation) said(l *limit) (string, answer) {
	switch l.subject {
	case wall:
		if e.part.Wall == nil {
			return "", no
		}
		w, err := e.part.Wall.In(l.value.Unit)
		if err != nil {
			return "", no
		}
		return l.crossed(w.Lo, w.Hi, l.value.Lo, l.value, "wall %s is", e.part.Wall)
	case acid:
		ph := e.part.Medium.PH
		if ph == nil {
			return "", no
		}
		at := plainNumber(ph[0])
		if ph[1] > ph[0] {
			at += " to " + plainNumber(ph[1])
		}
		return l.crossed(ph[0], ph[1], l.number, plainNumber(l.number), "pH %s is", at)
	}
	t, word := e.part.Hottest, "to"
	if l.subject == serviceMin {
		t, word = e.part.Coldest, "down to"
	}
	if t == nil {
		return "", no
	}
	limitC := units.DegC.FromSI(l.value.Unit.ToSI(l.value.Lo))
	return l.crossed(*t, *t, limitC, l.value, "service %s %s is", word, temperature(*t, l.value.Unit))
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func temperature(c float64, u units.Unit) string {
	return strconv.FormatFloat(math.Round(u.FromSI(units.DegC.ToSI(c))), 'f', 0, 64) + " " + u.Symbol()
}

// gap compares the anodic index of pin and mate.
func (e *evaluation) gap(l *limit, c *Caution) (string, answer) {
	if e.part.Mate == nil {
		return "", no
	}
	a, ok1 := e.rules.book.Anodic(e.pin)
	b, ok2 := e.rules.book.Anodic(e.part.Mate)
	if !ok1 || !ok2 {
		return fmt.Sprintf("the anodic index lists no group for %s or %s", e.pin.Name(), e.part.Mate.Name()), unknown
	}
	d := math.Round(100*math.Abs(a.Volts-b.Volts)) / 100
	suffers, rests := e.pin.Name(), e.part.Mate.Name()
	if b.Volts > a.Volts {
		suffers, rests = rests, suffers
	}
	why, is := l.crossed(d, d, l.number, fmt.Sprintf("%.2f V, and %s corrodes for the good of %s", l.number, suffers, rests),
		"anodic index %s of %s against %s of %s: the difference of %.2f V is", a.Text(), e.pin.Name(), b.Text(), e.part.Mate.Name(), d)
	if is == yes {
		c.fact("anodic index of "+e.pin.Name()+": "+a.Text()+", "+a.Group, a.Cite)
		c.fact("anodic index of "+e.part.Mate.Name()+": "+b.Text()+", "+b.Group, b.Cite)
	}
	return why, is
}

// content compares the content of an element: the least or the most that the
// composition allows, or the nominal one, which is the middle of its range, or
// half of a bare maximum.
func (e *evaluation) content(l *limit) (string, answer) {
	comp := e.pin.Alloy.Composition
	if len(comp.Limits) == 0 {
		return "composition of " + e.pin.Alloy.Name + ": " + compare.NoFigureOnFile, unknown
	}
	if l.element == "alloying" {
		return alloying(l, comp)
	}
	for _, x := range comp.Limits {
		if x.Element != l.element {
			continue
		}
		if x.Text == "remainder" {
			return "", no
		}
		share := (x.Lo + x.Hi) / 2
		switch l.share {
		case "least":
			share = x.Lo
		case "most":
			share = x.Hi
		}
		amount, bare, _ := strings.Cut(x.Text, " ")
		return l.crossed(share, share, l.value.Lo, l.value, "%s %s (%s) is", l.element, strings.TrimSpace(amount+" % "+bare), comp.Source.ID)
	}
	// An element that the composition does not list is taken as none of it
	// for > and as far below for <.
	if l.beyond(0, 0, l.value.Lo) {
		return "no " + l.element + " in the composition", yes
	}
	return "", no
}

// alloying sums the elements of which the composition asks for some, each by
// the middle of its range.
func alloying(l *limit, comp props.Composition) (string, answer) {
	sum, parts := 0.0, []string{}
	for _, x := range comp.Limits {
		if x.Lo > 0 && x.Text != "remainder" {
			sum += (x.Lo + x.Hi) / 2
			parts = append(parts, x.Element+" "+x.Text)
		}
	}
	return l.crossed(sum, sum, l.value.Lo, l.value, "%s %% together (%s) are", strings.Join(parts, ", "), comp.Source.ID)
}

func (e *evaluation) absent(l *limit) (string, answer) {
	m := e.pin
	if l.subject == ofBaseline {
		m = e.base
	}
	if m == nil {
		return "", no
	}
	why := m.Absent(l.property)
	if why == "" || m.Has(l.property) {
		return "", no
	}
	return fmt.Sprintf("%s of %s: %s", l.name(), m.Name(), why), yes
}

func (e *evaluation) unlike(l *limit, c *Caution) (string, answer) {
	if e.base == nil {
		return "", no
	}
	pair := e.bench.Pair(e.pin, e.base, l.property)
	if pair.Verdict != compare.Unlike {
		return "", no
	}
	e.add(c, "pin", e.pin, l.property, pair.Figure)
	e.add(c, "baseline", e.base, l.property, pair.Against)
	return l.name() + ": " + pair.Reasons[0].String(), yes
}

// other is the metal that a limit holds the pin against, and its role; nil where there
// is none.
func (e *evaluation) other(l *limit) (other *props.Material, role string) {
	other, role = e.base, "baseline"
	if l.other == "mate" {
		other, role = e.part.Mate, "mate"
	}
	if other == e.pin {
		other = nil
	}
	return other, role
}

// ratio compares the middle of the pin's figure with a multiple of the
// baseline's or the mate's, like with like.
func (e *evaluation) ratio(l *limit, c *Caution) (string, answer) {
	other, role := e.other(l)
	if other == nil {
		return "", no
	}
	pair := e.ranked(other, l.property)
	fig, against := pair.Figure, pair.Against
	switch {
	case (fig == nil || against == nil) && l.property == props.PatternShrinkage:
		return e.shrinkage(l, other, role, c)
	case fig == nil:
		return missing(l.property, e.pin), unknown
	case against == nil && other.Absent(l.property) != "":
		return "", no // there is nothing to lose or to match
	case against == nil:
		return missing(l.property, other), unknown
	case pair.Apart && (pair.Bound == nil || !l.beyond(pair.Bound.Least, pair.Bound.Most, l.times) || !l.beyond(pair.Bound.Most, pair.Bound.Least, l.times)):
		return l.name() + ": " + pair.Reasons[0].String(), unknown
	}
	e.add(c, "pin", e.pin, l.property, fig)
	e.add(c, role, other, l.property, against)
	if pair.Apart {
		return fmt.Sprintf("%s %s, the %s's %s: %s", l.name(), e.inRow(l.property, fig.Value), role, e.inRow(l.property, against.Value), pair.Bound), yes
	}
	u := fig.Value.Unit
	if u.Reciprocal() { // a resistivity counts as the conductivity it stands for
		u = l.property.Info().Units[units.SI]
	}
	return e.multiple(l, u, l.name(), fig.Value, role+"'s", against.Value)
}

// least holds the pin's figure against a multiple of a figure of the baseline
// or the mate, specified minimum against specified minimum, or else typical
// against typical.
func (e *evaluation) least(l *limit, c *Caution) (string, answer) {
	other, role := e.other(l)
	if other == nil {
		return "", no
	}
	how := e.bench.Question
	how.Basis = compare.MinimumOnly
	fig, against := how.Figure(e.pin, l.property), how.Figure(other, l.against)
	if fig != nil && against != nil && fig.Basis != against.Basis {
		how.Basis = compare.TypicalFirst
		fig, against = how.Figure(e.pin, l.property), how.Figure(other, l.against)
	}
	switch {
	case fig == nil && e.pin.Absent(l.property) != "":
		return "", no // a metal that does not yield takes no set
	case fig == nil:
		return missing(l.property, e.pin), unknown
	case against == nil:
		return missing(l.against, other), unknown
	case fig.Basis != against.Basis:
		return fmt.Sprintf("%s of %s is %s, %s of %s %s", l.name(), e.pin.Name(), fig.Basis.Phrase(),
			props.InSentence(l.against.Info().Name), other.Name(), against.Basis.Phrase()), unknown
	}
	e.add(c, "pin", e.pin, l.property, fig)
	e.add(c, role, other, l.against, against)
	return e.multiple(l, against.Value.Unit, named(l.property, fig), fig.Value, role+"'s "+named(l.against, against), against.Value)
}

// ranked sets the pin against another metal. Where nothing is published over
// the whole service range, what is published still ranks the two expansions.
func (e *evaluation) ranked(other *props.Material, p props.PropertyID) compare.Pair {
	how := e.bench.Question
	pair := how.Pair(e.pin, other, p)
	if p == props.ThermalExpansion && how.Range != nil && (pair.Figure == nil || pair.Against == nil) {
		how.Range = nil
		pair = how.Pair(e.pin, other, p)
	}
	return pair
}

// multiple tells whether the ratio of what the pin has to what the other metal has
// crosses the limit.
func (e *evaluation) multiple(l *limit, u units.Unit, what string, has units.Quantity, whose string, other units.Quantity) (string, answer) {
	x, err1 := has.In(u)
	y, err2 := other.In(u)
	if err1 != nil || err2 != nil || y.Mid() == 0 {
		return l.name() + ": units differ", unknown
	}
	times := x.Mid() / y.Mid()
	if !l.beyond(times, times, l.times) {
		return "", no
	}
	return fmt.Sprintf("%s %s is %s × the %s %s", what, e.inRow(l.property, has), props.TwoDigits(times), whose, e.inRow(l.against, other)), yes
}

// inRow is a figure in the unit of the bench's row.
func (e *evaluation) inRow(p props.PropertyID, q units.Quantity) units.Quantity {
	return q.InOrOwn(e.bench.UnitOf(p))
}

// shrinkage compares pattern shrinkages where the catalog lacks one: those on
// file for the family.
func (e *evaluation) shrinkage(l *limit, other *props.Material, role string, c *Caution) (string, answer) {
	a, b := e.rules.book.Shrinkage(e.pin), e.rules.book.Shrinkage(other)
	switch {
	case len(a) == 0:
		return missing(l.property, e.pin), unknown
	case len(b) == 0:
		return missing(l.property, other), unknown
	}
	why, is := e.multiple(l, units.MMPerM, l.name(), a[0].Value, role+"'s", b[0].Value)
	if is == yes {
		c.fact("pattern shrinkage of "+e.pin.Alloy.Family.Name+": "+a[0].String(), a[0].Cite)
		c.fact("pattern shrinkage of "+other.Alloy.Family.Name+": "+b[0].String(), b[0].Cite)
	}
	return why, is
}

// fact adds a published figure to those of the rule.
func (c *Caution) fact(text string, cite foundry.Cite) {
	c.Facts = append(slices.Clip(c.Facts), foundry.Statement{Text: text, Cite: cite})
}
