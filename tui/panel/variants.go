package panel

import (
	"slices"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// variants is a menu of materials that may take the place of the pin under the
// cursor.
type variants struct {
	panel
	title string
	all   []*props.Material
}

// NewVariants opens a menu of variants. It begins on the next one in a direction; all begins with the pin
// itself, and the others follow in that direction.
func NewVariants(d *desk.Desk, title string, all []*props.Material, way catalog.Direction) desk.Screen {
	p := &variants{panel{desk: d, about: "Puts another temper or process of the same alloy in the place of the pin.", list: ui.List{At: 1}}, title, slices.Clone(all)}
	if way == catalog.Back { // the same order whichever key opened it
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
		p.desk.Close()
	case slices.Contains(p.desk.Pins(), mat):
		p.desk.Warnf("%s is on the bench already", mat.Name())
	default:
		p.desk.Close()
		p.desk.Replace(mat)
	}
}

func (p *variants) View(w, h int) []string {
	cols := append(ui.Columns{{Width: 1}, {Head: "material", Width: 32}}, p.briefColumns()...)
	return p.list.Draw(ui.Listing{
		Head: []string{p.desk.Theme.Dim.Of(cols.Heads())}, Items: len(p.all),
		Line: func(i int, here bool) string { return p.materialLine(cols, p.all[i], nil, "", here, p.all[i].Name()) },
	}, h)
}

// briefColumns are those of the figures shown beside a material in a list.
func (p *panel) briefColumns() ui.Columns {
	var cols ui.Columns
	for _, property := range desk.BriefProperties {
		head := property.Info().Short
		if u := p.desk.Now().Bench.UnitOf(property).Symbol(); u != "" {
			head += " " + u
		}
		cols = append(cols, ui.Column{Head: head, Width: max(ui.Width(head), 8), Right: true})
	}
	return cols
}

// materialLine is a material in a list: a sign where it is marked or on the
// bench, texts, and its figures in brief; the letters of a query stand out.
func (p *panel) materialLine(cols ui.Columns, mat *props.Material, marks marked, query string, here bool, texts ...string) string {
	d := p.desk
	sign, ink := " ", d.Theme.Text
	switch {
	case slices.Contains(marks, mat):
		sign, ink = markSign, d.Theme.Strong
	case slices.Contains(d.Pins(), mat):
		sign, ink = "+", d.Theme.Dim
	}
	n := len(texts) + 1
	return d.Theme.Found(cols[:n].Line(append([]string{sign}, texts...)...), query, here, ink) + d.Theme.Line(cols[n:].Line(d.Brief(mat)...)[1:], here && !d.Theme.Plain, ink)
}

// markSign is the sign of a marked line.
const markSign = "x"
