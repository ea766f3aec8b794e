package tui

import (
	"slices"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/report"
	"alongside/tui/ui"
)

// variants is a menu of materials that may take the place of the pin under the
// cursor.
type variants struct {
	panel
	title string
	all   []*props.Material
}

// newVariants begins on the next one in a direction; all begins with the pin
// itself, and the others follow in that direction.
func newVariants(m *Model, title string, all []*props.Material, d catalog.Direction) screen {
	p := &variants{panel{m: m, list: ui.List{At: 1}}, title, slices.Clone(all)}
	if d == catalog.Back { // the same order whichever key opened it
		slices.Reverse(p.all[1:])
		p.list.At = len(all) - 1
	}
	return p
}

func (p *variants) Title() string          { return p.title }
func (p *variants) Height(_, most int) int { return min(most, len(p.all)+2) }

func (p *variants) Keys() ui.Keys {
	step := func(by int) func() {
		return func() { p.list.At = (p.list.At + by + len(p.all)) % len(p.all) }
	}
	return append(ui.Keys{
		ui.On("enter", "take it", "put it in the place of the pin", p.take),
		ui.On("t p", "next", "next one, going round; T and P back", step(1)).As("↑↓ t p"),
		ui.On("T P", "", "", step(-1)),
	}, p.list.Keys()...)
}

func (p *variants) take() {
	switch mat := p.all[p.list.At]; {
	case mat == p.all[0]:
		p.m.close()
	case slices.Contains(p.m.pins(), mat):
		p.m.warnf("%s is on the bench already", mat.Name())
	default:
		p.m.close()
		p.m.replace(mat)
	}
}

func (p *variants) View(w, h int) []string {
	cols := append(ui.Columns{{Width: 1}, {Head: "material", Width: 32}}, p.m.briefColumns()...)
	return p.list.Draw(ui.Listing{
		Head: []string{p.m.theme.Dim.Of(cols.Heads())}, Items: len(p.all),
		Line: func(i int, here bool) string { return p.m.materialLine(cols, p.all[i], nil, "", here, p.all[i].Name()) },
	}, h)
}

// briefProperties are the figures shown beside a material in a list.
var briefProperties = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation}

// briefColumns are their columns.
func (m *Model) briefColumns() ui.Columns {
	var cols ui.Columns
	for _, p := range briefProperties {
		head := p.Info().Short
		if u := m.now().Bench.UnitOf(p).Symbol(); u != "" {
			head += " " + u
		}
		cols = append(cols, ui.Column{Head: head, Width: max(ui.Width(head), 8), Right: true})
	}
	return cols
}

// materialLine is a material in a list: a sign where it is marked or on the
// bench, texts, and its figures in brief; the letters of a query stand out.
func (m *Model) materialLine(cols ui.Columns, mat *props.Material, marks marked, query string, here bool, texts ...string) string {
	sign, ink := " ", m.theme.Text
	switch {
	case slices.Contains(marks, mat):
		sign, ink = markSign, m.theme.Strong
	case slices.Contains(m.pins(), mat):
		sign, ink = "+", m.theme.Dim
	}
	n := len(texts) + 1
	return m.theme.Found(cols[:n].Line(append([]string{sign}, texts...)...), query, here, ink) + m.theme.Line(cols[n:].Line(m.brief(mat)...)[1:], here && !m.theme.Plain, ink)
}

// markSign is the sign of a marked line.
const markSign = "x"

// brief is the figures of a material in brief, kept until the call changes.
func (m *Model) brief(mat *props.Material) []string {
	b, ok := m.briefs[mat]
	if !ok {
		if m.briefs == nil {
			m.briefs = map[*props.Material][]string{}
		}
		b = report.Brief(&m.now().Bench, mat, briefProperties, report.Mark)
		m.briefs[mat] = b
	}
	return b
}
