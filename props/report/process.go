package report

import (
	"math"
	"slices"
	"strings"

	"alongside/props/foundry"
	"alongside/props/sheet"
	"alongside/units"
)

// processNote says how process data are to be read.
const processNote = "Tolerances, walls, draft and finish are what a process usually attains; the foundry that quotes the part decides. Schedules of heat treatment are ranges; the practice named governs. ISO 8062-3 takes wall thickness one grade coarser than the grade of the casting. On the drawing: ISO 8062-3 – DCTG n – RMA x (RMAG y), and SMI for mismatch across the parting."

// ProcessDoc sets the process cards of materials side by side: the tolerance
// of the dimension for which the pages were opened (nil: none), each line of the
// card, heat treatment, and what the designations say. The first table is in units
// of the system; below, units are those of the sources, lengths in the other system
// too.
func ProcessDoc(pages []*foundry.Page, dimension *units.Quantity, system units.System) *Doc {
	return &Doc{
		text: func(n *numbering) *sheet.Doc { return processText(pages, dimension, system, n) },
		data: func() *sheet.Doc { return processData(pages) },
		json: func() object { return processJSON(pages) },
	}
}

func processText(pages []*foundry.Page, dimension *units.Quantity, system units.System, n *numbering) *sheet.Doc {
	var names []string
	for _, p := range pages {
		names = append(names, p.Material.Name())
	}
	w := &processWriter{pages, n}
	tables := []*sheet.Table{w.glance(system)}
	if dimension != nil {
		tables = append(tables, w.tolerance(*dimension))
	}
	tables = append(append(tables, w.card()...), w.heat(), w.designation())
	d := &sheet.Doc{Blocks: append([]sheet.Block{sheet.Title("Process card: " + strings.Join(names, ", "))}, filled(tables...)...)}
	d.Foot, d.Caution = []string{processNote}, Caution
	return d
}

// filled are the tables that have a row.
func filled(tables ...*sheet.Table) []sheet.Block {
	var out []sheet.Block
	for _, t := range tables {
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	return out
}

type processWriter struct {
	pages []*foundry.Page
	*numbering
}

func (w *processWriter) tolerance(dimension units.Quantity) *sheet.Table {
	t := &sheet.Table{Heading: "Tolerance of " + dimension.String() + converted(dimension), Columns: sheet.Columns("material", "plus or minus", "by")}
	for _, p := range w.pages {
		name := p.Material.Name()
		for _, r := range p.Tolerances {
			if r.Source == nil {
				t.Add(name, "–", r.Why)
				continue
			}
			value, how := "–", r.How
			switch full := r.Full.String(); {
			case r.Why != "":
			case r.Kind == foundry.ISOGrade:
				value, how = "±"+likeTyped(r.PlusMinus, dimension), "total "+full
			case r.Kind == foundry.MachiningStock:
				value, how = likeTyped(r.Full, dimension)+" stock", full+" on each face, where this is the largest dimension of the casting"
			case r.Kind == foundry.DieDraft:
				value = likeTyped(r.PlusMinus, dimension) + " a side"
			default:
				value = "±" + likeTyped(r.PlusMinus, dimension)
			}
			by := joined("; ", strings.TrimSpace(r.Kind.String()+" "+r.Name), how, r.Method, r.Condition, r.Why) + " [" + w.cited(r.Cite)
			if r.By.Source != nil {
				by += "; by " + w.cited(r.By)
			}
			t.Add(name, value, by+"]")
		}
	}
	return t
}

// likeTyped writes a tolerance in the inches or millimeters of the dimension.
func likeTyped(q, dimension units.Quantity) string {
	u := units.MM
	switch dimension.Unit {
	case units.Inch, units.Foot, units.Mil, units.Microinch:
		u = units.Inch
	}
	q = q.InOrOwn(u)
	if u == units.Inch {
		q.Place = max(q.Place, -4) // no finer than a tenth of a thou
	}
	return q.String()
}

// glance sets the figures of the cards side by side, a line of the card to a
// row. Where figures about the family are on file, those for any metal are
// left to the tables below; so are words.
func (w *processWriter) glance(system units.System) *sheet.Table {
	t := &sheet.Table{Heading: "At a glance", Columns: sheet.Columns("")}
	for _, p := range w.pages {
		t.Columns = append(t.Columns, sheet.Column{Name: p.Material.Name()})
	}
	for _, k := range foundry.Kinds() {
		row, filled := []string{k.String()}, false
		for _, p := range w.pages {
			cell := glanceCell(inSystem(p.Of(k), system))
			filled = filled || cell != ""
			row = append(row, cell)
		}
		if filled {
			t.Add(row...)
		}
	}
	heat := []string{"Heat treated"}
	for _, p := range w.pages {
		heat = append(heat, p.Heat.Normally)
	}
	t.Add(heat...)
	return t
}

// inSystem gives the items of a row in one system of units.
func inSystem(items []foundry.Item, system units.System) []foundry.Item {
	for i := range items {
		it := &items[i]
		if !it.HasValue || it.Unit != "" {
			continue
		}
		v := rounded(it.Value, itemUnit(it, system))
		if v.Unit == it.Value.Unit {
			continue
		}
		printed := v.String()
		if v.Hi > 10*v.Lo { // the digits of 0.05 are not those of 50
			hi := v
			hi.Lo, hi.Place = hi.Hi, max(hi.Place, int8(math.Log10(hi.Hi))-1)
			lo, _, _ := strings.Cut(v.Number(), "–")
			printed = lo + "–" + hi.String()
		}
		it.Value, it.Printed = v, printed
	}
	return items
}

// glanceCell puts the figures of a line into few words: one span for each
// unit.
func glanceCell(items []foundry.Item) string {
	particular := slices.ContainsFunc(items, func(it foundry.Item) bool { return it.Particular && it.HasValue })
	var parts []string
	var spans []span
	for i := range items {
		it := &items[i]
		value, _ := itemText(it)
		switch {
		case value == "" || particular && !it.Particular:
		case it.HasValue && it.Value.Qual == units.Exact && it.Value.Unit.Dimension() != units.Rating:
			spans = addSpan(spans, it)
		default:
			if it.HasValue {
				value = it.String()
				if it.Value.Unit.Dimension() == units.Rating {
					value = it.Printed + " of 5, 1 best"
				}
			}
			if !slices.Contains(parts, value) {
				parts = append(parts, value)
			}
		}
	}
	for _, s := range spans {
		parts = append(parts, s.String())
	}
	return strings.Join(parts, ", ")
}

// span is what several figures of one unit reach over.
type span struct {
	lo, hi units.Quantity // single values
	only   string         // as printed, while there is but one figure
	unit   string
}

func addSpan(spans []span, it *foundry.Item) []span {
	lo, hi := it.Value, it.Value
	lo.Hi, hi.Lo = lo.Lo, hi.Hi
	for i := range spans {
		s := &spans[i]
		if s.lo.Unit != lo.Unit {
			continue
		}
		s.only = ""
		if lo.Lo < s.lo.Lo {
			s.lo = lo
		}
		if hi.Hi > s.hi.Hi {
			s.hi = hi
		}
		return spans
	}
	return append(spans, span{lo, hi, it.String(), it.Unit})
}

func (s span) String() string {
	switch {
	case s.only != "":
		return s.only
	case s.lo.Lo == s.hi.Lo:
		return s.lo.String() + s.unit
	}
	return s.lo.Number() + "–" + s.hi.String() + s.unit
}

// card has a table for each line of the process card.
func (w *processWriter) card() []*sheet.Table {
	none := &sheet.Table{Heading: "No process card", Columns: sheet.Columns("material", "why")}
	for _, p := range w.pages {
		if p.Why != "" {
			none.Add(p.Material.Name(), p.Why)
		}
	}
	tables := []*sheet.Table{none}
	for _, k := range foundry.Kinds() {
		t := &sheet.Table{Heading: k.String(), Columns: sheet.Columns("material", "figure", "conditions and source")}
		for _, p := range w.pages {
			for _, it := range p.Of(k) {
				value, rest := itemText(&it)
				t.Add(p.Material.Name(), value, joined(" ", joined("; ", rest, it.Method, it.Condition), "["+w.cited(it.Cite)+"]"))
			}
		}
		tables = append(tables, t)
	}
	return tables
}

// shortText is the length up to which words stand in the column of figures.
const shortText = 14

// itemText splits a statement into its figure and its words.
func itemText(it *foundry.Item) (value, words string) {
	switch {
	case it.HasValue:
		return it.Printed + converted(it.Value) + it.Unit, it.Text
	case sheet.Width(it.Text) <= shortText:
		return it.Text, ""
	}
	return "", it.Text
}

// converted is a length in the unit of the other system, in parentheses.
func converted(q units.Quantity) string {
	other := map[units.Unit]units.Unit{units.Inch: units.MM, units.MM: units.Inch, units.Microinch: units.Micrometer, units.Micrometer: units.Microinch}
	if u, ok := other[q.Unit]; ok {
		if v, err := q.In(u); err == nil && v.Lo != 0 {
			return " (" + v.String() + ")"
		}
	}
	return ""
}

func (w *processWriter) heat() *sheet.Table {
	t := &sheet.Table{Heading: "Heat treatment card", Columns: sheet.Columns("material", "", "statement and source")}
	for _, p := range w.pages {
		m, c := p.Material, p.Heat
		row := func(label, text string) { t.Add(m.Name(), label, text) }
		for _, s := range c.Meaning {
			row("temper "+m.Temper, w.statement(s))
		}
		for i, s := range c.Reasons {
			label := ""
			if i == 0 {
				label = "normally: " + c.Normally
			}
			row(label, w.statement(s))
		}
		if len(c.Tempers) > 0 {
			row("on file", "solution-treated tempers of the alloy by this process: "+strings.Join(c.Tempers, ", "))
		}
		schedule := func(s *foundry.Schedule) string {
			return joined("; ", s.String(), s.Note) + " [" + w.cited(s.Cite) + "]"
		}
		for i := range c.Schedules {
			row("schedule", schedule(&c.Schedules[i]))
		}
		if c.Why != "" {
			row("schedule", c.Why)
		}
		for i := range c.Others {
			row("for "+c.Others[i].Temper, schedule(&c.Others[i]))
		}
	}
	return t
}

func (w *processWriter) designation() *sheet.Table {
	t := &sheet.Table{Heading: "What the designation says", Columns: sheet.Columns("material", "part", "meaning and source")}
	for _, p := range w.pages {
		for _, e := range p.Designation {
			t.Add(p.Material.Name(), e.Part, e.Text+" ["+w.cited(e.Cite)+"]")
		}
		if a := p.Anodic; a != nil {
			t.Add(p.Material.Name(), "anodic index", a.Text()+", "+a.Group+" ["+w.cited(a.Cite)+"]")
		}
	}
	return t
}
