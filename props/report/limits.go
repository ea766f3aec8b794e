package report

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
)

// Limits are the rows that stand above those of a comparison: what the
// customer asks for, and the duties whose merit is shown.
type Limits struct {
	Needs  []needs.Need
	Duties []*needs.Duty
}

// WithNeeds renders a comparison with the customer's limits and the merits: as
// tables of their own before the figures, in JSON the needs as the key
// "needs". A scope of one property is that property alone. Text has lines of
// up to width characters.
func WithNeeds(format string, c *compare.Comparison, s Scope, above Limits, width int) (string, error) {
	if format == "json" {
		return comparisonJSON(s.of(c), above.Needs), nil
	}
	text, err := Render(format, c, s)
	if format == "text" {
		text = TextWidth(c, s, width)
	}
	if err != nil || s.Property != props.NoProperty {
		return text, err
	}
	b := &s.of(c).Bench
	var tables []DocTable
	if len(above.Needs) > 0 {
		tables = append(tables, NeedsTable(b.Pins, above.Needs))
	}
	if len(above.Duties) > 0 {
		tables = append(tables, meritTable(b, above.Duties))
	}
	head := ""
	for i := range tables {
		parts := []DocTable{tables[i]}
		if format == "text" {
			parts = tables[i].split(width)
		}
		for j := range parts {
			s, err := parts[j].Render(format, width)
			if err != nil {
				return "", err
			}
			head += s
		}
	}
	return head + text, nil
}

// split breaks a table that is too wide into several, each with the first
// column and as many others as fit. The notes stand under the last.
func (t *DocTable) split(width int) []DocTable {
	widths := make([]int, len(t.Head))
	for _, r := range append([][]string{t.Head}, t.Rows...) {
		for i, s := range r {
			widths[i] = max(widths[i], length(Clean(s)))
		}
	}
	var out []DocTable
	for from := 1; from < len(widths); {
		to, used := from, widths[0]
		for to < len(widths) && (to == from || used+gap+widths[to] <= width) {
			used += gap + widths[to]
			to++
		}
		part := DocTable{Right: t.Right}
		narrow := func(r []string) []string { return append([]string{r[0]}, r[from:to]...) }
		part.Head = narrow(t.Head)
		for _, r := range t.Rows {
			part.Rows = append(part.Rows, narrow(r))
		}
		out, from = append(out, part), to
	}
	if len(out) == 0 {
		return []DocTable{*t}
	}
	out[0].Heading, out[len(out)-1].Notes = t.Heading, t.Notes
	return out
}

// meritTable sets duties against the pins of a bench: the merit relative to
// the baseline with its bounds. Formula and source, and why there is none,
// stand below.
func meritTable(b *compare.Bench, duties []*needs.Duty) DocTable {
	base := b.Pins[b.Baseline]
	t := DocTable{Heading: "Merit relative to " + base.Name(), Head: []string{"duty"}}
	for _, m := range b.Pins {
		t.Head = append(t.Head, m.ID)
	}
	for _, d := range duties {
		row := []string{d.Name}
		t.Notes = append(t.Notes, d.Name+": "+dutyText(d))
		for _, m := range b.Pins {
			r := d.Relative(b, m, base)
			row = append(row, meritCell(b, m, r))
			if why := r.Why + r.Note; why != "" && m != base {
				t.Notes = append(t.Notes, d.Name+", "+m.ID+": "+why)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func meritCell(b *compare.Bench, m *props.Material, r needs.Merit) string {
	if m == b.Pins[b.Baseline] && r.Why == "" {
		return "1"
	}
	return MeritText(r)
}

// NeedDoc reports one limit: how each material stands to it, on what figure,
// and where that comes from.
func NeedDoc(materials []*props.Material, n *needs.Need) *Doc {
	t := DocTable{Head: []string{"material", "judged on"}}
	for _, m := range materials {
		j := needs.Judge(m, n)
		t.Rows = append(t.Rows, []string{m.Name(), JudgementText(&j)})
		if j.Figure != nil {
			t.Notes = append(t.Notes, m.Name()+": "+FigureText(j.Figure, j.Figure.Value))
		}
	}
	return &Doc{Title: "Needed: " + n.String(), Tables: []DocTable{t}}
}

// MeritDoc reports one duty: the merit of each pin relative to the baseline,
// and the figures it rests on.
func MeritDoc(b *compare.Bench, d *needs.Duty) *Doc {
	t := DocTable{Head: []string{"material", "merit", "rests on"}}
	base := b.Pins[b.Baseline]
	for _, m := range b.Pins {
		r := d.Relative(b, m, base)
		why := r.Why
		if why == "" {
			why = strings.Join(append(figureTexts(b, r.Figures[:len(r.Figures)/2]), nonempty(r.Note)...), "; ")
		}
		t.Rows = append(t.Rows, []string{m.Name(), meritCell(b, m, r), why})
	}
	return &Doc{Title: fmt.Sprintf("Merit for a %s, relative to %s", d.Name, base.Name()), Tables: []DocTable{t}, Foot: []string{dutyText(d)}}
}

func nonempty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

func figureTexts(b *compare.Bench, list []*props.Figure) []string {
	var out []string
	for _, f := range list {
		v := f.Value
		if q, err := v.In(b.UnitOf(f.Property)); err == nil {
			v = q
		}
		out = append(out, strings.ToLower(f.Property.Info().Name)+" "+v.String()+" "+f.Basis.Phrase())
	}
	return out
}

// symbols says what the letters of a duty's formula stand for.
var symbols = []struct{ letter, words string }{
	{"E", "modulus of elasticity"}, {"σ", "yield strength, tensile where a metal has none"}, {"ρ", "density"},
	{"k", "thermal conductivity"}, {"α", "thermal expansion"}, {"κ", "electrical conductivity"},
}

// dutyText is the formula of a duty, what its letters stand for, and its
// source.
func dutyText(d *needs.Duty) string {
	var parts []string
	for _, s := range symbols {
		if strings.Contains(d.Formula, s.letter) {
			parts = append(parts, s.letter+" "+s.words)
		}
	}
	return d.Formula + " (" + strings.Join(parts, ", ") + "); " + d.Source
}

// NewNeedCard says on which figure a limit was judged for a material, and
// where that comes from.
func NewNeedCard(m *props.Material, n *needs.Need) *Card {
	j := needs.Judge(m, n)
	card := &Card{Title: n.String() + ", " + m.Name()}
	judged := Section{Title: "The need"}
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
	s := Section{Title: "The merit"}
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
			rest := Section{Title: of.Name()}
			for _, f := range r.Figures[i*n : (i+1)*n] {
				rest.add(f.Property.Info().Short, FigureText(f, f.Value))
			}
			if i == 0 || of != m {
				card.Sections = append(card.Sections, rest)
			}
		}
	}
	return card
}
