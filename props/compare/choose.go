package compare

import (
	"slices"

	"alongside/props"
)

// likeness is what the table of conditions says of two figures.
type likeness struct {
	refused  bool
	why      Reason // the first condition that refuses
	cautions []Reason
	differ   int // conditions that differ
	unstated int // conditions that only one side states
	// grounds stand where each condition that refuses has one.
	grounds     []*Ground
	least, most float64 // of the ratio at equal conditions, as factors of the ratio of the figures
}

// alike is the test of rule 1.
func (q *Question) alike(x, y side) likeness {
	l := likeness{least: 1, most: 1}
	p := x.f.Property.Info()
	certain := true
	for i := range conditions {
		c := &conditions[i]
		if c.bears != 0 && p.Bears&c.bears == 0 {
			continue
		}
		how, pin, base := c.differ(x.f, y.f)
		switch how {
		case same:
			continue
		case unstated:
			l.unstated++
		case different:
			l.differ++
		}
		if how < c.refuses {
			l.cautions = append(l.cautions, c.words(how, pin, base))
			certain = certain && c.kind != ClassDiffers // another class or section is another grade
			continue
		}
		if !l.refused {
			l.refused, l.why = true, c.words(how, pin, base)
		}
		certain = certain && l.add(c.ground, x, y)
	}
	if q.Basis == MinimumOnly && p.Specified && x.f.Basis != props.Minimum && y.f.Basis != props.Minimum {
		l.refused, l.why = true, Reason{OnlyTypical, "only a " + x.f.Basis.Phrase() + " figure; the bench compares specified minimums"}
		certain = false
	}
	if !certain {
		l.grounds = nil
	}
	return l
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
func (q *Question) choose(pin, base *props.Material, figures, against []*props.Figure, turned bool) Pair {
	var best Pair
	var least preference
	ranks := func(list []*props.Figure) []int {
		r := make([]int, len(list))
		for i, f := range list {
			r[i] = q.rank(f, list)
		}
		return r
	}
	a, b := ranks(figures), ranks(against)
	for i, f := range figures {
		for j, g := range against {
			l := q.alike(side{pin, f}, side{base, g})
			p := q.pairOf(f, g, &l)
			first := i
			if turned {
				first = j
			}
			weak := (a[i]|b[j])&oneHeat != 0 || l.unstated > 0 && (f.Source.Trade() || g.Source.Trade())
			rank := preference{p.kind(&l, weak), l.differ, l.unstated, p.bounds(), a[i] + b[j], max(a[i], b[j]), i + j, max(i, j), first}
			if best.Figure == nil || slices.Compare(rank[:], least[:]) < 0 {
				best, least = p, rank
			}
		}
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
func (p *Pair) kind(l *likeness, weak bool) int {
	switch {
	case p.Verdict == Unlike:
		return 3
	case l.refused:
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

// pairOf judges two figures.
func (q *Question) pairOf(f, g *props.Figure, l *likeness) Pair {
	p := Pair{Figure: f, Against: g}
	sense, target := q.SenseOf(f.Property)
	if !l.refused {
		p.Verdict, p.Reasons = judge(f, g, sense, target, q.Band), l.cautions
		if f.Cond.Bound || g.Cond.Bound {
			p.Bound, p.Grounds = boundOf(f, g, l), []*Ground{&groundExpansion}
		}
		return p
	}
	p.Verdict, p.Reasons, p.Apart = Unlike, []Reason{l.why}, true
	if l.grounds == nil {
		return p
	}
	if v := certain(f, g, l, sense, q.Band); v != Unlike {
		p.Verdict, p.Reasons = v, append([]Reason{l.why}, l.cautions...)
		p.Bound, p.Grounds = boundOf(f, g, l), l.grounds
	}
	return p
}
