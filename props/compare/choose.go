package compare

import (
	"slices"

	"alongside/props"
)

// likeness is what the table of conditions says of two figures.
type likeness struct {
	apart    [len(conditions)]degree
	refused  bool
	differ   int // conditions that differ
	unstated int // conditions that are not stated
	// grounds stand where each condition that refuses has one.
	grounds     []*Ground
	least, most float64 // of the ratio at equal conditions, as factors of the ratio of the figures
}

// alike is the test of rule 1.
func (q *Question) alike(x, y side) likeness {
	l := likeness{least: 1, most: 1}
	p := x.f.Property.Info()
	l.refused = q.onlyTypical(x.f, y.f)
	certain := !l.refused
	for i := range conditions {
		c := &conditions[i]
		if c.bears != 0 && p.Bears&c.bears == 0 {
			continue
		}
		how := c.between(x.f, y.f)
		l.apart[i] = how
		switch {
		case how == unstated:
			l.unstated++
		case how == different:
			l.differ++
		}
		switch {
		case how == same:
		case how >= c.refuses:
			l.refused = true
			certain = certain && l.add(c.ground, x, y)
		case c.kind == ClassDiffers:
			certain = false // another class or section is another grade
		}
	}
	if !certain {
		l.grounds = nil
	}
	return l
}

// onlyTypical reports whether minimums are asked for and neither figure is one.
func (q *Question) onlyTypical(f, g *props.Figure) bool {
	return q.Basis == MinimumOnly && f.Property.Info().Specified && f.Basis != props.Minimum && g.Basis != props.Minimum
}

// reasons are what the reader is told of two figures: first why they are apart,
// then what to bear in mind.
func (q *Question) reasons(l *likeness, f, g *props.Figure) []Reason {
	var first, rest []Reason
	if q.onlyTypical(f, g) {
		first = append(first, Reason{OnlyTypical, "only a " + f.Basis.Phrase() + " figure; the bench compares specified minimums"})
	}
	for i, how := range l.apart {
		switch {
		case how == same:
		case how >= conditions[i].refuses:
			first = append(first, conditions[i].reason(how, f, g))
		default:
			rest = append(rest, conditions[i].reason(how, f, g))
		}
	}
	return append(first, rest...)
}

// add bounds the ratio by one ground more; false where it proves nothing.
func (l *likeness) add(g *Ground, x, y side) bool {
	if g == nil {
		return false
	}
	least, most, ok := g.bound(x, y)
	if ok {
		l.least *= least
		l.most *= most
		l.grounds = append(l.grounds, g)
	}
	return ok
}

// choose applies rule 1: of the pairs on file the one that is alike, else one
// that a ground decides, else the one that differs least; among equals the one
// that differs in fewer conditions, states more of them and is preferred.
// Nothing in it asks which side is the baseline: turned says that the pin's id
// comes after the baseline's, and settles a tie the same way from both sides.
func (q *Question) choose(pin, base *props.Material, figures, against []ranked, turned bool) Pair {
	var best Pair
	var like likeness
	var least preference
	for i, f := range figures {
		for j, g := range against {
			l := q.alike(side{pin, f.Figure}, side{base, g.Figure})
			p := q.judged(f.Figure, g.Figure, &l)
			first := i
			if turned {
				first = j
			}
			weak := f.short || g.short || l.unstated > 0 && (f.Source.Trade() || g.Source.Trade())
			rank := preference{p.kind(weak), l.differ, l.unstated, p.bounds(), f.rank + g.rank, max(f.rank, g.rank), i + j, max(i, j), first}
			if best.Figure == nil || slices.Compare(rank[:], least[:]) < 0 {
				best, like, least = p, l, rank
			}
		}
	}
	best.Reasons = q.reasons(&like, best.Figure, best.Against)
	if best.Verdict == Unlike {
		best.Reasons = best.Reasons[:1]
	}
	return best
}

// preference ranks a pair, the lower first: its kind; in how many conditions the
// two differ, how many only one side states, how many of the figures are bounds
// themselves, how both figures rank, their places among what is considered, and
// at last the side whose id comes first.
type preference [9]int

// kind is 0 for a pair that is alike, 1 for one that a ground decides, 2 for one
// that is alike but weak: a trade source leaves a condition out, or a figure is
// that of one heat below its grade; 3 for the rest.
func (p *Pair) kind(weak bool) int {
	switch {
	case p.Verdict == Unlike:
		return 3
	case p.Apart:
		return 1
	case weak:
		return 2
	}
	return 0
}

// bounds counts the figures that are bounds themselves.
func (p *Pair) bounds() int {
	n := 0
	for _, f := range [2]*props.Figure{p.Figure, p.Against} {
		if f.Cond.Bound {
			n++
		}
	}
	return n
}

// judged is the verdict of two figures, without the words.
func (q *Question) judged(f, g *props.Figure, l *likeness) Pair {
	p := Pair{Figure: f, Against: g, Apart: l.refused}
	sense, target := q.SenseOf(f.Property)
	switch {
	case !p.Apart:
		p.Verdict = judge(f, g, sense, target, q.Band)
		if f.Cond.Bound || g.Cond.Bound {
			p.Bound, p.Grounds = boundOf(f, g, l), []*Ground{&groundExpansion}
		}
	case l.grounds == nil:
		p.Verdict = Unlike
	default:
		if p.Verdict = certain(f, g, l, sense, q.Band); p.Verdict != Unlike {
			p.Bound, p.Grounds = boundOf(f, g, l), l.grounds
		}
	}
	return p
}
