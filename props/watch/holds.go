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
	switch l.subject {
	case serviceMax, serviceMin:
		return e.service(l)
	case wall:
		return e.wall(l)
	case acid:
		return e.acid(l)
	case anodicGap:
		return e.gap(l, c)
	case content:
		return e.content(l)
	}
	switch {
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
	if !l.beyond(v.Lo, v.Hi, l.value.Lo) {
		return "", no
	}
	return fmt.Sprintf("%s %s is %s %s", named(l.property, f), e.inRow(l.property, f.Value), l.side(), l.value), yes
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

func (e *evaluation) wall(l *limit) (string, answer) {
	if e.part.Wall == nil {
		return "", no
	}
	w, err := e.part.Wall.In(l.value.Unit)
	if err != nil || !l.beyond(w.Lo, w.Hi, l.value.Lo) {
		return "", no
	}
	return fmt.Sprintf("wall %s is %s %s", e.part.Wall, l.side(), l.value), yes
}

// acid compares the pH of the medium; where it was not said nothing is raised.
func (e *evaluation) acid(l *limit) (string, answer) {
	ph := e.part.Medium.PH
	if ph == nil || !l.beyond(ph[0], ph[1], l.number) {
		return "", no
	}
	at := strconv.FormatFloat(ph[0], 'f', -1, 64)
	if ph[1] > ph[0] {
		at += " to " + strconv.FormatFloat(ph[1], 'f', -1, 64)
	}
	return fmt.Sprintf("pH %s is %s %s", at, l.side(), strconv.FormatFloat(l.number, 'f', -1, 64)), yes
}

func (e *evaluation) service(l *limit) (string, answer) {
	t, word := e.part.Hottest, "to"
	if l.subject == serviceMin {
		t, word = e.part.Coldest, "down to"
	}
	if t == nil {
		return "", no
	}
	limitC := units.DegC.FromSI(l.value.Unit.ToSI(l.value.Lo))
	if !l.beyond(*t, *t, limitC) {
		return "", no
	}
	return fmt.Sprintf("service %s %s is %s %s", word, temperature(*t, l.value.Unit), l.side(), l.value), yes
}

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
	if !l.beyond(d, d, l.number) {
		return "", no
	}
	suffers, rests := e.pin.Name(), e.part.Mate.Name()
	if b.Volts > a.Volts {
		suffers, rests = rests, suffers
	}
	why := fmt.Sprintf("anodic index %s of %s against %s of %s: the difference of %.2f V is %s %.2f V, and %s corrodes for the good of %s",
		a.Text(), e.pin.Name(), b.Text(), e.part.Mate.Name(), d, l.side(), l.number, suffers, rests)
	c.Facts = append(slices.Clone(c.Facts),
		foundry.Statement{Text: "anodic index of " + e.pin.Name() + ": " + a.Text() + ", " + a.Group, Cite: a.Cite},
		foundry.Statement{Text: "anodic index of " + e.part.Mate.Name() + ": " + b.Text() + ", " + b.Group, Cite: b.Cite})
	return why, yes
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
		if !l.beyond(share, share, l.value.Lo) {
			return "", no
		}
		amount, bare, _ := strings.Cut(x.Text, " ")
		return fmt.Sprintf("%s %s (%s) is %s %s", l.element, strings.TrimSpace(amount+" % "+bare), comp.Source.ID, l.side(), l.value), yes
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
	if !l.beyond(sum, sum, l.value.Lo) {
		return "", no
	}
	return fmt.Sprintf("%s %% together (%s) are %s %s", strings.Join(parts, ", "), comp.Source.ID, l.side(), l.value), yes
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
	return fmt.Sprintf("%s of %s: %s", props.InSentence(l.property.Info().Name), m.Name(), why), yes
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
	return props.InSentence(l.property.Info().Name) + ": " + pair.Reasons[0].String(), yes
}

// ratio compares the middle of the pin's figure with a multiple of the
// baseline's or the mate's, like with like.
func (e *evaluation) ratio(l *limit, c *Caution) (string, answer) {
	other, role := e.base, "baseline"
	if l.other == "mate" {
		other, role = e.part.Mate, "mate"
	}
	if other == nil || other == e.pin {
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
		return props.InSentence(l.property.Info().Name) + ": " + pair.Reasons[0].String(), unknown
	}
	e.add(c, "pin", e.pin, l.property, fig)
	e.add(c, role, other, l.property, against)
	if pair.Apart {
		return fmt.Sprintf("%s %s, the %s's %s: %s", props.InSentence(l.property.Info().Name), e.inRow(l.property, fig.Value), role, e.inRow(l.property, against.Value), pair.Bound), yes
	}
	u := fig.Value.Unit
	if u.Reciprocal() { // a resistivity counts as the conductivity it stands for
		u = l.property.Info().Units[units.SI]
	}
	x, err1 := fig.Value.In(u)
	y, err2 := against.Value.In(u)
	if err1 != nil || err2 != nil || y.Mid() == 0 {
		return props.InSentence(l.property.Info().Name) + ": units differ", unknown
	}
	return e.against(l, fig.Value, against.Value, x.Mid()/y.Mid(), role)
}

// least holds the pin's figure against a multiple of a figure of the baseline
// or the mate, specified minimum against specified minimum, or else typical
// against typical.
func (e *evaluation) least(l *limit, c *Caution) (string, answer) {
	other, role := e.base, "baseline"
	if l.other == "mate" {
		other, role = e.part.Mate, "mate"
	}
	if other == nil || other == e.pin {
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
		return fmt.Sprintf("%s of %s is %s, %s of %s %s", props.InSentence(l.property.Info().Name), e.pin.Name(), fig.Basis.Phrase(),
			props.InSentence(l.against.Info().Name), other.Name(), against.Basis.Phrase()), unknown
	}
	e.add(c, "pin", e.pin, l.property, fig)
	e.add(c, role, other, l.against, against)
	x, err := fig.Value.In(against.Value.Unit)
	if err != nil || against.Value.Mid() == 0 {
		return props.InSentence(l.property.Info().Name) + ": units differ", unknown
	}
	times := x.Mid() / against.Value.Mid()
	if !l.beyond(times, times, l.times) {
		return "", no
	}
	return fmt.Sprintf("%s %s is %s × the %s's %s %s", named(l.property, fig), e.inRow(l.property, fig.Value), twoDigits(times), role,
		named(l.against, against), e.inRow(l.against, against.Value)), yes
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

// against tells whether a ratio crosses the limit.
func (e *evaluation) against(l *limit, fig, other units.Quantity, times float64, role string) (string, answer) {
	if !l.beyond(times, times, l.times) {
		return "", no
	}
	return fmt.Sprintf("%s %s is %s × the %s's %s", props.InSentence(l.property.Info().Name), e.inRow(l.property, fig), twoDigits(times), role, e.inRow(l.property, other)), yes
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
	x, err1 := a[0].Value.In(units.MMPerM)
	y, err2 := b[0].Value.In(units.MMPerM)
	if err1 != nil || err2 != nil || y.Mid() == 0 {
		return props.InSentence(l.property.Info().Name) + ": units differ", unknown
	}
	why, is := e.against(l, a[0].Value, b[0].Value, x.Mid()/y.Mid(), role)
	if is == yes {
		c.Facts = append(slices.Clone(c.Facts),
			foundry.Statement{Text: "pattern shrinkage of " + e.pin.Alloy.Family.Name + ": " + a[0].String(), Cite: a[0].Cite},
			foundry.Statement{Text: "pattern shrinkage of " + other.Alloy.Family.Name + ": " + b[0].String(), Cite: b[0].Cite})
	}
	return why, is
}

// twoDigits writes a ratio: 0.70, 1.9, 24.
func twoDigits(v float64) string {
	decimals := 2
	switch {
	case v >= 10:
		decimals = 0
	case v >= 1:
		decimals = 1
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
