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

// section is a heading with labels and texts in turn under it.
func section(title string, labeled ...string) Section {
	return Section{sheet.List{Title: title}}.with(labeled...)
}

// with is the section with more labels and texts in turn; a label without text
// is left out.
func (s Section) with(labeled ...string) Section {
	for i := 0; i < len(labeled); i += 2 {
		if text := labeled[i+1]; text != "" {
			s.Items = append(s.Items, sheet.Item{Label: labeled[i], Text: text})
		}
	}
	return s
}

// add adds the sections that have something under their heading.
func (c *Card) add(list ...Section) {
	for _, s := range list {
		if len(s.Items) > 0 {
			c.Sections = append(c.Sections, s)
		}
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
	if f := cell.Figure; f == nil {
		card.add(section("No figure", "", cell.Absent))
	} else {
		card.add(figureSection(m, f), conversions(f), choice(c, pin, considered, len(list)))
	}
	card.add(otherFigures(cell.Figure, list), alloySection(m), composition(m.Alloy))
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
	conditions := f.Cond.String()
	if conditions == "" {
		conditions = "none stated"
	}
	return section("As published", "figure", f.Value.String()+" "+f.Basis.Phrase(), "conditions", conditions).published(f.Source).
		with("table", f.Table, "known", knownText(f.Known(), f.Where, f.Agrees), "correction", correction(f), "stated for", statedFor(m, f.Block), "note", f.First)
}

func conversions(f *props.Figure) Section {
	var all []string
	for _, u := range units.UnitsOf(f.Value.Unit.Dimension()) {
		if q, err := f.Value.In(u); err == nil {
			all = append(all, q.String())
		}
	}
	return section("In every unit", "", strings.Join(all, "  ·  "))
}

// choice says why this figure is shown, and what it was set against.
func choice(c *compare.Comparison, pin int, considered []*props.Figure, onFile int) Section {
	row := &c.Rows[0]
	cell := &row.Cells[pin]
	why := "the first that shares basis and conditions with a figure of the baseline"
	switch {
	case onFile == 1:
		why = "the only figure on file"
	case cell.Figure == considered[0]:
		why = "first in the order of the bench: " + orderWords(c.Bench.Basis)
	}
	s := section("On the bench", "shown as", cell.Value.String(), "why this one", why)
	if cell.Against != nil {
		if value, err := cell.Against.Value.In(row.Unit); err == nil {
			s = s.with("against", c.Bench.Pins[c.Baseline].Name()+": "+citedFigure(cell.Against, value.String()))
		}
	}
	return s.with("verdict", verdictText(c, row, cell))
}

func orderWords(b compare.BasisSetting) string {
	rest := "; standards and handbooks before common practice, figures read before figures from memory"
	if b == compare.MinimumOnly {
		return "specified minimums only, where there are any" + rest
	}
	return "typical, then specified minimum, house, design, estimated minimum, maximum" + rest
}

// otherFigures are those of a list besides the one that is shown.
func otherFigures(shown *props.Figure, list []*props.Figure) Section {
	s := section("Other figures on file, in order")
	for _, f := range list {
		if f != shown {
			s = s.with(f.Value.String(), aboutFigure(f, titleCite(f)), "", f.First)
		}
	}
	return s
}

func alloySection(m *props.Material) Section {
	return section("Material").named(m).with("note", m.Alloy.Note)
}

// named is the section with what a material is called.
func (s Section) named(m *props.Material) Section {
	return s.with("id", m.ID, "family", m.Alloy.Family.Name, "UNS", m.Alloy.UNS, "also called", strings.Join(AliasTexts(m), "; "))
}

// AliasTexts lists the other designations of a material and its alloy:
// "EN 1706 AC-42100 (near)".
func AliasTexts(m *props.Material) []string {
	var out []string
	for _, list := range [][]props.Alias{m.Aliases, m.Alloy.Aliases} {
		for _, a := range list {
			out = append(out, aliasText(a))
		}
	}
	return out
}

func aliasText(a props.Alias) string {
	s := a.Name
	if !strings.HasPrefix(s, a.System) {
		s = a.System + " " + s
	}
	if a.Near {
		s += " (near)"
	}
	return s
}

func composition(a *props.Alloy) Section {
	s := section("Composition limits, % by mass")
	c := &a.Composition
	if len(c.Limits) == 0 {
		return s
	}
	if n := a.Nominal(); n != "" {
		s = s.with("nominal", n+" (middle of the limits)")
	}
	return s.with("", strings.Join(limitTexts(a), "  ·  "), "source", sourceText(c.Source), "known", knownText(c.Known, c.Where, nil))
}

// limitTexts are the composition limits as printed: "Si 6.5–7.5".
func limitTexts(a *props.Alloy) []string {
	var out []string
	for _, l := range a.Composition.Limits {
		out = append(out, strings.ReplaceAll(l.Element, "_", " ")+" "+l.Text)
	}
	return out
}
