package report

import (
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
)

// NewNeedCard says on which figure a limit was judged for a material, and
// where that comes from.
func NewNeedCard(m *props.Material, n *needs.Need) *Card {
	j := needs.Judge(m, n)
	card := &Card{Title: n.String() + ", " + m.Name()}
	judged := section("The need")
	judged.add("needed", n.String())
	judged.add("judged", JudgementText(&j))
	if j.Figure != nil {
		judged.add("on", "the "+j.Figure.Basis.Phrase()+" below; "+judgedFirst)
	}
	card.Sections = append(card.Sections, judged)
	if n.Kind == needs.OfProperty {
		if j.Figure != nil {
			card.Sections = append(card.Sections, figureSection(m, j.Figure), conversions(j.Figure))
		}
		if others := otherFigures(m, &compare.Cell{Pair: compare.Pair{Figure: j.Figure}}, m.Figures(n.Property)); len(others.Items) > 0 {
			card.Sections = append(card.Sections, others)
		}
	}
	card.Sections = append(card.Sections, alloySection(m))
	return card
}

const judgedFirst = "strength and elongation are judged on specified minimums where they are published, other properties on typical figures"

// NewMeritCard says what a merit of a pin is made of.
func NewMeritCard(b *compare.Bench, m *props.Material, d *needs.Duty) *Card {
	base := b.Pins[b.Baseline]
	r := d.Relative(b, m, base)
	s := section("The merit")
	s.add("duty", d.Name)
	s.add("formula", dutyText(d))
	if r.Why != "" {
		s.add("none", r.Why)
	} else {
		s.add("relative", MeritText(r)+" × "+base.Name()+"; in brackets the worst and the best case of the figures")
	}
	s.add("note", r.Note)
	s.add("", "It is a number for this duty alone, never a score of the metal.")
	card := &Card{Title: d.Name + ", " + m.Name(), Sections: []Section{s}}
	if n := len(r.Figures) / 2; n > 0 {
		for i, of := range []*props.Material{m, base} {
			rest := section(of.Name())
			for _, f := range r.Figures[i*n : (i+1)*n] {
				rest.add(f.Property.Info().Short, FigureText(f, f.Value.String()))
			}
			if i == 0 || of != m {
				card.Sections = append(card.Sections, rest)
			}
		}
	}
	return card
}
