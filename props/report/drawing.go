package report

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/part"
	"alongside/props/sheet"
	"alongside/props/watch"
)

// drawingNote says what a drawing note is.
const drawingNote = "A draft to check: every standard in the edition in force, every figure against the order. What the drawing does not say is agreed between buyer and foundry before the first pour."

// Drawing is what the note on a drawing and the request for a quotation are made of.
type Drawing struct {
	Catalog *catalog.Catalog
	Book    *foundry.Book
	Pin     *props.Material
	Given   part.Given
	// Cautions are those of the change; the ones to stop at are open questions.
	Cautions []watch.Caution
}

// drawingLine is one thing that the drawing says, with where it comes from.
type drawingLine struct {
	label string
	foundry.Statement
}

// DrawingDoc is the text for a drawing and an order of the pin: metal, process,
// specification, heat treatment, tolerance, tests and marking, the open questions,
// and the near equivalents of other countries.
func DrawingDoc(d Drawing) *Doc {
	lines, others, open := d.lines(), d.equivalents(), d.questions()
	title := "Drawing note: " + d.Pin.Name()
	data := func() *sheet.Doc {
		t := &sheet.Table{Columns: sheet.Columns("material", "item", "text", "source", "table", "known")}
		for _, l := range slices.Concat(lines, others) {
			t.Add(d.Pin.ID, l.label, l.Text, l.Source.ID, l.Table, l.Known.String())
		}
		for _, q := range open {
			t.Add(d.Pin.ID, "open question", q)
		}
		return dataDoc(t, nil, drawingNote)
	}
	text := func(n *numbering) *sheet.Doc {
		ask := &sheet.Table{Heading: "Still open"}
		for _, q := range open {
			ask.Add(q)
		}
		blocks := append([]sheet.Block{sheet.Title(title)}, filled(n.drawn("", lines), ask, n.drawn("Near equivalents", others))...)
		return &sheet.Doc{Blocks: blocks, Foot: []string{drawingNote}, Caution: Caution}
	}
	lineJSON := func(l *drawingLine) object { return append(object{{"item", l.label}}, statementJSON(&l.Statement)...) }
	return &Doc{text: text, data: data, json: func() object {
		return object{{"material", d.Pin.ID}, {"lines", each(lines, lineJSON)}, {"open", open}, {"equivalents", each(others, lineJSON)}, {"caution", drawingNote + " " + Caution}}
	}}
}

func (n *numbering) drawn(title string, lines []drawingLine) *sheet.Table {
	t := &sheet.Table{Heading: title}
	for _, l := range lines {
		t.Add(l.label, n.statement(l.Statement))
	}
	return t
}

// practice is what nothing is named for.
func (d *Drawing) practice() foundry.Cite {
	for _, s := range d.Book.Sources {
		if s.Kind == "none" {
			return foundry.Cite{Source: s}
		}
	}
	return foundry.Cite{Source: &props.Source{Kind: "none"}}
}

func (d *Drawing) lines() []drawingLine {
	m := d.Pin
	chemistry := d.practice()
	if c := &m.Alloy.Composition; c.Source != nil {
		chemistry = foundry.Cite{Source: c.Source, Known: c.Known}
	}
	uns := ""
	if m.Alloy.UNS != "" {
		uns = ", UNS " + m.Alloy.UNS
	}
	out := []drawingLine{{"Metal", foundry.Statement{Text: m.Alloy.Name + uns + ", " + props.InSentence(m.Alloy.Family.Name), Cite: chemistry}}}
	out = append(out, d.specified()...)
	card := d.Book.Page(d.Catalog, m, nil)
	if card.Why != "" {
		return append(out, drawingLine{"Not cast", foundry.Statement{Text: card.Why, Cite: chemistry}})
	}
	for _, s := range card.Heat.Meaning {
		out = append(out, drawingLine{"Temper", foundry.Statement{Text: m.Temper + ": " + s.Text, Cite: s.Cite}})
	}
	for i := range card.Heat.Schedules {
		s := &card.Heat.Schedules[i]
		out = append(out, drawingLine{"Heat treatment", foundry.Statement{Text: s.String() + ", as usual; the practice named governs", Cite: s.Cite}})
	}
	add := func(items []foundry.Item) {
		for i, it := range items {
			if last := len(out) - 1; i > 0 && it.Kind == items[i-1].Kind && out[last].Source == it.Source && out[last].Known == it.Known {
				out[last].Text += ", or " + drawnItem(&it)
				continue
			}
			out = append(out, drawingLine{it.Kind.String(), foundry.Statement{Text: drawnItem(&it), Cite: it.Cite}})
		}
	}
	grades := card.Of(foundry.Grade)
	add(slices.Concat(grades, card.Of(foundry.Allowance)))
	if len(grades) > 0 {
		out = append(out, drawingLine{"Drawn as", foundry.Statement{Text: "ISO 8062-3 – DCTG n – RMA x (RMAG y): one of the grades above for n and y, x in mm; SMI for mismatch across the parting", Cite: grades[0].Cite}})
	}
	add(slices.Concat(card.Of(foundry.Draft), card.Of(foundry.SurfaceFinish)))
	for _, f := range []struct {
		fact part.Facts
		kind foundry.Kind
	}{{part.Anodize, foundry.Anodizing}, {part.Electroplate, foundry.Plating}, {part.PowderCoat, foundry.PowderCoat}, {part.PressureTight, foundry.Impregnation}} {
		if d.Given.With&f.fact != 0 {
			add(card.Of(f.kind))
		}
	}
	add(d.Book.Order(m))
	return out
}

// drawnItem is a statement of the card for a drawing.
func drawnItem(it *foundry.Item) string {
	text := it.String()
	if it.HasValue {
		text += converted(it.Value)
	}
	return joined("; ", text, it.Method, it.Condition)
}

// specified are the specifications that set a minimum for the material, each with
// the limits it sets.
func (d *Drawing) specified() []drawingLine {
	m := d.Pin
	type limits struct {
		cite  foundry.Cite
		texts []string
	}
	var by []*limits
	for _, p := range []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.HardnessBrinell} {
		for _, f := range m.Figures(p) {
			if f.Basis != props.Minimum || f.Source.Kind != "standard" {
				continue
			}
			i := slices.IndexFunc(by, func(l *limits) bool { return l.cite.Source == f.Source })
			if i < 0 {
				i = len(by)
				by = append(by, &limits{cite: foundry.Cite{Source: f.Source, Table: f.Table, Known: f.Known(), Where: f.Where}})
			}
			if f.Known() == props.Memory {
				by[i].cite.Known = props.Memory // as well known as its least known limit
			}
			by[i].texts = append(by[i].texts, joined(", ", props.InSentence(p.Info().Name)+" "+f.Value.String(), f.Cond.String()))
		}
	}
	if len(by) == 0 {
		return []drawingLine{{"Specification", foundry.Statement{Text: "none on file sets a minimum for " + m.Name() + ": the order must name one", Cite: d.practice()}}}
	}
	var out []drawingLine
	for _, l := range by {
		out = append(out, drawingLine{"Specification", foundry.Statement{Text: shortTitle(l.cite.Source) + ", edition in force; minimum " + strings.Join(l.texts, "; "), Cite: l.cite}})
	}
	return out
}

// questions are what must be settled before the drawing is released.
func (d *Drawing) questions() []string {
	var out []string
	for i := range d.Cautions {
		if c := &d.Cautions[i]; !c.Dismissed && c.Unchecked == "" && c.Severity == watch.Ask {
			out = append(out, sentence(c.Title)+" "+toSettle(c.Ask()))
		}
	}
	return out
}

// abroad are the standards of which near equivalents are told.
var abroad = []string{"EN", "ISO", "JIS", "DIN", "BS"}

// equivalents are the designations of other countries for nearly the same metal,
// with what differs where their own limits are on file.
func (d *Drawing) equivalents() []drawingLine {
	var out []drawingLine
	var unread []string
	for _, a := range slices.Concat(d.Pin.Aliases, d.Pin.Alloy.Aliases) {
		if system, _, _ := strings.Cut(a.System, " "); !slices.Contains(abroad, system) {
			continue
		}
		name := aliasText(a)
		other, _ := d.Catalog.Named(a.Name)
		if other == nil || other.Alloy == d.Pin.Alloy {
			unread = append(unread, name)
			continue
		}
		cite := d.practice()
		if f := least(other, props.TensileStrength); f != nil {
			cite = foundry.Cite{Source: f.Source, Table: f.Table, Known: f.Known()}
		}
		out = append(out, drawingLine{name, foundry.Statement{Text: unlikeTo(d.Pin, other), Cite: cite}})
	}
	if len(unread) > 0 {
		out = append(out, drawingLine{"Not on file", foundry.Statement{Text: "the limits of " + strings.Join(unread, ", ") +
			": compare composition, temper and test bar before one is accepted", Cite: d.practice()}})
	}
	return out
}

// unlikeTo says where a near equivalent sets other limits.
func unlikeTo(m, other *props.Material) string {
	var parts []string
	for _, l := range other.Alloy.Composition.Limits {
		i := slices.IndexFunc(m.Alloy.Composition.Limits, func(own props.Limit) bool { return own.Element == l.Element })
		if i >= 0 && m.Alloy.Composition.Limits[i].Text != l.Text {
			parts = append(parts, l.Element+" "+l.Text+" against "+m.Alloy.Composition.Limits[i].Text)
		}
	}
	for _, p := range []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation} {
		theirs, own := least(other, p), least(m, p)
		if theirs == nil || own == nil {
			continue
		}
		if v, err := own.Value.In(theirs.Value.Unit); err == nil {
			parts = append(parts, props.InSentence(p.Info().Name)+" at least "+joined(", ", theirs.Value.String(), theirs.Cond.String())+" against "+joined(", ", v.String(), own.Cond.String()))
		}
	}
	if len(parts) == 0 {
		return "no limit of the two can be set side by side from what is on file"
	}
	return strings.Join(parts, "; ")
}

func least(m *props.Material, p props.PropertyID) *props.Figure {
	for _, f := range m.Figures(p) {
		if f.Basis == props.Minimum {
			return f
		}
	}
	return nil
}
