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
	judged := section("The need", "needed", n.String(), "judged", JudgementText(&j))
	if j.Figure != nil {
		judged = judged.with("on", "the "+j.Figure.Basis.Phrase()+" below; "+judgedFirst)
	}
	card.add(judged)
	if n.Kind == needs.OfProperty {
		if j.Figure != nil {
			card.add(figureSection(m, j.Figure), conversions(j.Figure))
		}
		card.add(otherFigures(j.Figure, m.Figures(n.Property)))
	}
	card.add(alloySection(m))
	return card
}

const judgedFirst = "strength and elongation are judged on specified minimums where they are published, other properties on typical figures"

// NewMeritCard says what a merit of a pin is made of.
func NewMeritCard(b *compare.Bench, m *props.Material, d *needs.Duty) *Card {
	base := b.Pins[b.Baseline]
	r := d.Relative(b, m, base)
	s := section("The merit", "duty", d.Name, "formula", dutyText(d), "none", r.Why)
	if r.Why == "" {
		s = s.with("relative", meritText(r)+" × "+base.Name()+"; in brackets the worst and the best case of the figures")
	}
	card := &Card{Title: d.Name + ", " + m.Name()}
	card.add(s.with("note", r.Note, "", "It is a number for this duty alone, never a score of the metal."))
	n := len(r.Figures) / 2
	for i, of := range []*props.Material{m, base} {
		rest := section(of.Name())
		for _, f := range r.Figures[i*n : (i+1)*n] {
			rest = rest.with(f.Property.Info().Short, citedFigure(f, f.Value.String()))
		}
		if i == 0 || of != m {
			card.add(rest)
		}
	}
	return card
}
