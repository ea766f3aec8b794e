package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/report"
	"alongside/tui/ui"
)

// finder pins materials by what the user types, filtering as they type.
type finder struct {
	m     *Model
	field ui.Field
	hits  []catalog.Hit
	read  string // what a query that finds nothing was taken for
	list  ui.List
}

// findState is what the finder remembers from one opening to the next.
type findState struct {
	query string
	// brief keeps the figures shown beside each hit, until the bench changes.
	brief map[*props.Material][]string
}

// briefProperties are the figures shown beside a hit.
var briefProperties = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation}

func newFinder(m *Model) screen {
	f := &finder{m: m, field: ui.NewField(m.finds.query)}
	f.search()
	return f
}

func (f *finder) search() {
	f.hits, f.read = f.m.o.Catalog.SearchNear(f.field.Text())
	f.list = ui.List{}
}

func (f *finder) Title() string { return "Pin a material" }
func (f *finder) Typing() bool  { return true }

// Height leaves the bench in sight in a tall window: it grows as pins are
// added.
func (f *finder) Height(_, most int) int {
	if len(f.m.now().Bench.Pins) == 0 {
		return most
	}
	return max(most*3/5, 14)
}

func (f *finder) Keys() ui.Keys {
	keys := ui.Keys{
		ui.On("enter", "pin and close", "pin this material and close", f.pinAndClose),
		ui.On("tab", "pin and stay", "pin it and find another", f.pinAndStay),
		ui.On("", "choose", "", nil).As("↑↓"),
		ui.On("ctrl+u", "clear", "clear the text", nil),
	}
	if f.field.Fresh() { // the key that opens the finder, pressed where it is open
		keys = append(keys, ui.On("/", "", "", func() {}))
	}
	return append(keys, f.list.TypingKeys()...)
}

func (f *finder) Update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.MouseMsg:
		return f.list.Mouse(msg, func() tea.Cmd { f.pinAndClose(); return nil })
	case tea.KeyMsg:
		if msg.Paste && strings.ContainsRune(strings.TrimSpace(string(msg.Runes)), '\n') {
			f.m.pasteMaterials(string(msg.Runes))
			return nil
		}
		if f.field.Update(msg) {
			f.search()
		}
		f.m.finds.query = f.field.Text()
	}
	return nil
}

func (f *finder) pinAndClose() {
	if f.choose() {
		f.m.close()
	}
}

func (f *finder) pinAndStay() {
	if f.choose() {
		f.field.Keep() // the next letter begins a text
	}
}

// choose pins the material under the cursor.
func (f *finder) choose() bool {
	if f.list.At >= len(f.hits) {
		f.m.warn("nothing found to pin")
		return false
	}
	f.m.pin(f.hits[f.list.At].Material)
	return true
}

func (f *finder) View(w, h int) []string {
	t := f.m.theme
	var lines []string
	if len(f.m.now().Bench.Pins) == 0 {
		lines = append(lines,
			" Type part of an alloy, temper or process, or another name: 380 die, A356 T6,",
			" class 30. Enter pins it, Tab pins it and stays. The first pin is the baseline.")
	}
	count := fmt.Sprintf("%d of %d", len(f.hits), len(f.m.o.Catalog.Materials))
	if f.read != "" && len(f.hits) > 0 {
		count = ui.Cut(fmt.Sprintf("not found; near it, %s: %d", ui.Plain(f.read), len(f.hits)), w/2)
	}
	lines = append(lines, " Find: "+ui.Pad(f.field.View(t, w-len(count)-9), w-len(count)-9)+" "+t.Dim.Of(count))
	cols := f.layout(w)
	lines = append(lines, t.Dim.Of(cols.line(cols.heads(f.m))))
	rows := max(h-len(lines)-1, 1) // one line of names below
	f.list.FitLines(len(f.hits), len(lines), rows)
	end := len(lines) + rows
	for i := f.list.Top; i < f.list.End(); i++ {
		lines = append(lines, f.hitLine(cols, i))
	}
	return append(ui.Fill(lines, end), f.namesLine(w))
}

func (f *finder) hitLine(c finderColumns, i int) string {
	mat := f.hits[i].Material
	mark, t := " ", f.m.theme
	ink := t.Text
	if slices.Contains(f.m.now().Bench.Pins, mat) {
		mark, ink = "+", t.Dim
	}
	s := c.line(append([]string{mark, mat.Name(), mat.ID, mat.Alloy.Family.Name}, f.brief(mat)...))
	return t.Line(s, i == f.list.At, ink)
}

// namesLine tells how else the material under the cursor is called, so that a
// hit under a foreign name is no surprise.
func (f *finder) namesLine(w int) string {
	t := f.m.theme
	if len(f.hits) == 0 {
		return t.Bad.Of(ui.Cut(" Nothing like that in the catalog. Try fewer letters, or the alloy alone.", w))
	}
	mat := f.hits[f.list.At].Material
	parts := []string{mat.ID}
	if mat.Alloy.UNS != "" {
		parts = append(parts, "UNS "+mat.Alloy.UNS)
	}
	parts = append(parts, report.AliasTexts(mat)...)
	if slices.Contains(f.m.now().Bench.Pins, mat) {
		parts = append([]string{"+ on the bench"}, parts...)
	}
	return t.Dim.Of(" " + ui.Cut(ui.Plain(strings.Join(parts, " · ")), w-1))
}

func (f *finder) brief(mat *props.Material) []string {
	s := &f.m.finds
	if s.brief == nil {
		s.brief = map[*props.Material][]string{}
	}
	b, ok := s.brief[mat]
	if !ok {
		b = report.Brief(&f.m.now().Bench, mat, briefProperties)
		s.brief[mat] = b
	}
	return b
}

// finderColumns are the widths of mark, name, id, family and figures; 0 leaves
// a column out.
type finderColumns struct {
	widths  [4]int
	figures []int
}

func (f *finder) layout(w int) finderColumns {
	c := finderColumns{widths: [4]int{1, 27, 0, 0}}
	if w >= ui.Roomy {
		c.widths[1] = 32
	}
	left := w - 2 - c.widths[0] - c.widths[1] - 1
	for _, s := range c.heads(f.m)[len(c.widths):] {
		c.figures = append(c.figures, max(ui.Width(s), 8))
		left -= c.figures[len(c.figures)-1] + 1
	}
	if left >= 14 {
		c.widths[3] = min(left-1, 26)
		left -= c.widths[3] + 1
	}
	if left >= 20 {
		c.widths[2] = min(left-1, 28)
	}
	return c
}

func (c finderColumns) heads(m *Model) []string {
	heads := []string{"", "material", "id", "family"}
	for _, p := range briefProperties {
		s := p.Info().Short
		if u := m.now().Bench.UnitOf(p).Symbol(); u != "" {
			s += " " + u
		}
		heads = append(heads, s)
	}
	return heads
}

func (c finderColumns) line(texts []string) string {
	var b strings.Builder
	b.WriteByte(' ')
	for i, w := range c.widths {
		if w > 0 {
			b.WriteString(ui.Pad(ui.Plain(texts[i]), w) + " ")
		}
	}
	for i, s := range texts[len(c.widths):] {
		b.WriteString(ui.PadLeft(ui.Plain(s), c.figures[i]) + " ")
	}
	return b.String()
}
