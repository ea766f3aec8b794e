package report

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/sheet"
	"alongside/units"
)

// Card answers "where does that number come from?" for one property of one
// material: plain text in sections, for a screen or a command to lay out.
type Card struct {
	Title    string
	Sections []Section
}

// Section is a heading with labeled texts under it.
type Section struct{ sheet.List }

// section is an empty section under a heading.
func section(title string) Section { return Section{sheet.List{Title: title}} }

func (s *Section) add(label, text string) {
	if text != "" {
		s.Items = append(s.Items, sheet.Item{Label: label, Text: text})
	}
}

// NewCard collects what is on file for a property of a material, and says
// which figure the bench shows and why. The material need not be pinned.
func NewCard(b *compare.Bench, m *props.Material, p props.PropertyID) *Card {
	c, pin := compareOne(b, m, p)
	card := &Card{Title: titled(&c.Rows[0], m)}
	cell := &c.Rows[0].Cells[pin]
	considered := c.Bench.Figures(m, p)
	list := slices.Clone(considered) // and then what the bench leaves aside
	for _, f := range m.Figures(p) {
		if !slices.Contains(list, f) {
			list = append(list, f)
		}
	}
	if cell.Figure == nil {
		none := section("No figure")
		none.add("", cell.Absent)
		card.Sections = append(card.Sections, none)
	} else {
		card.Sections = append(card.Sections, figureSection(m, cell.Figure), conversions(cell.Figure))
		card.Sections = append(card.Sections, choice(c, pin, considered, len(list)))
	}
	if others := otherFigures(m, cell, list); len(others.Items) > 0 {
		card.Sections = append(card.Sections, others)
	}
	card.Sections = append(card.Sections, alloySection(m))
	if limits := composition(m.Alloy); len(limits.Items) > 0 {
		card.Sections = append(card.Sections, limits)
	}
	return card
}

// compareOne compares the property alone, with the material among the pins.
func compareOne(b *compare.Bench, m *props.Material, p props.PropertyID) (*compare.Comparison, int) {
	bench := *b
	bench.Only = []props.PropertyID{p}
	pin := slices.Index(bench.Pins, m)
	if pin < 0 {
		bench.Pins = append(slices.Clone(bench.Pins), m)
		pin = len(bench.Pins) - 1
	}
	return compare.Compare(bench), pin
}

// figureSection is a figure as its source has it.
func figureSection(m *props.Material, f *props.Figure) Section {
	s := section("As published")
	s.add("figure", f.Value.String()+" "+f.Basis.Phrase())
	s.add("conditions", orNone(f.Cond.String()))
	sourceItems(&s, f.Source)
	s.add("table", f.Table)
	s.add("known", knownText(f.Known(), f.Where, f.Agrees))
	s.add("stated for", statedFor(m, f.Block))
	s.add("note", f.First)
	return s
}

func conversions(f *props.Figure) Section {
	s := section("In every unit")
	var all []string
	for _, u := range units.UnitsOf(f.Value.Unit.Dimension()) {
		if q, err := f.Value.In(u); err == nil {
			all = append(all, q.String())
		}
	}
	s.add("", strings.Join(all, "  ·  "))
	return s
}

// choice says why this figure is shown, and what it was set against.
func choice(c *compare.Comparison, pin int, considered []*props.Figure, onFile int) Section {
	row := &c.Rows[0]
	cell := &row.Cells[pin]
	s := section("On the bench")
	s.add("shown as", cell.Value.String())
	var why string
	switch {
	case onFile == 1:
		why = "the only figure on file"
	case cell.Figure == considered[0]:
		why = "first in the order of the bench: " + orderWords(c.Bench.Basis)
	default:
		why = "the first that shares basis and conditions with a figure of the baseline"
	}
	s.add("why this one", why)
	if cell.Against != nil {
		if value, err := cell.Against.Value.In(row.Unit); err == nil {
			s.add("against", c.Bench.Pins[c.Baseline].Name()+": "+FigureText(cell.Against, value.String()))
		}
	}
	s.add("verdict", verdictText(c, row, cell))
	return s
}

func orderWords(b compare.BasisSetting) string {
	rest := "; standards and handbooks before common practice, figures read before figures from memory"
	if b == compare.MinimumOnly {
		return "specified minimums only, where there are any" + rest
	}
	return "typical, then specified minimum, house, design, estimated minimum, maximum" + rest
}

func otherFigures(m *props.Material, cell *compare.Cell, list []*props.Figure) Section {
	s := section("Other figures on file, in order")
	for _, f := range list {
		if f == cell.Figure {
			continue
		}
		s.add(f.Value.String(), aboutFigure(f, titleCite(f)))
		if f.First != "" {
			s.add("", f.First)
		}
	}
	return s
}

func alloySection(m *props.Material) Section {
	a := m.Alloy
	s := section("Material")
	s.add("id", m.ID)
	s.add("family", a.Family.Name)
	s.add("UNS", a.UNS)
	s.add("also called", strings.Join(AliasTexts(m), "; "))
	s.add("note", a.Note)
	return s
}

// AliasTexts lists the other designations of a material and its alloy:
// "EN 1706 AC-42100 (near)".
func AliasTexts(m *props.Material) []string {
	var out []string
	for _, list := range [][]props.Alias{m.Aliases, m.Alloy.Aliases} {
		for _, a := range list {
			s := a.Name
			if !strings.HasPrefix(s, a.System) {
				s = a.System + " " + s
			}
			if a.Near {
				s += " (near)"
			}
			out = append(out, s)
		}
	}
	return out
}

func composition(a *props.Alloy) Section {
	s := section("Composition limits, % by mass")
	if len(a.Composition.Limits) == 0 {
		return s
	}
	if n := a.Nominal(); n != "" {
		s.add("nominal", n+" (middle of the limits)")
	}
	s.add("", strings.Join(limitTexts(a), "  ·  "))
	if src := a.Composition.Source; src != nil {
		s.add("source", SourceText(src))
	}
	s.add("known", knownText(a.Composition.Known, a.Composition.Where, nil))
	return s
}

// limitTexts are the composition limits as printed: "Si 6.5–7.5".
func limitTexts(a *props.Alloy) []string {
	var out []string
	for _, l := range a.Composition.Limits {
		out = append(out, strings.ReplaceAll(l.Element, "_", " ")+" "+l.Text)
	}
	return out
}

func orNone(s string) string {
	if s == "" {
		return "none stated"
	}
	return s
}
