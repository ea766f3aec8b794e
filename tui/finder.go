package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/report"
)

// finder pins materials by what the user types, filtering as they type.
type finder struct {
	m     *Model
	field field
	hits  []catalog.Hit
	read  string // what a query that finds nothing was taken for
	at    int
	top   int
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
	f := &finder{m: m, field: newField(m.find.query)}
	f.search()
	return f
}

func (f *finder) search() {
	f.hits, f.read = f.m.o.Catalog.SearchNear(f.field.text())
	f.at, f.top = 0, 0
}

func (f *finder) Title() string { return "Pin a material" }
func (f *finder) Typing() bool  { return true }

// Height leaves the bench in sight in a tall window: it grows as pins are
// added.
func (f *finder) Height(most int) int {
	if len(f.m.bench.Pins) == 0 {
		return most
	}
	return max(most*3/5, 14)
}

func (f *finder) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{b("enter", "pin and close"), b("tab", "pin and stay"), b("↑↓", "choose"), b("ctrl+u", "clear"), escape}
}

func (f *finder) Update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		if msg.Paste && strings.ContainsRune(strings.TrimSpace(string(msg.Runes)), '\n') {
			f.m.pasteMaterials(string(msg.Runes))
			return nil
		}
		f.key(msg)
	case tea.MouseMsg:
		f.mouse(msg)
	}
	return nil
}

func (f *finder) key(msg tea.KeyMsg) {
	_, rows := f.room()
	switch msg.String() {
	case "enter":
		if f.choose() {
			f.m.close()
		}
	case "tab":
		if f.choose() {
			f.field.kept = f.field.text() != "" // the next letter begins anew
		}
	case "up", "ctrl+p":
		f.at--
	case "down", "ctrl+n":
		f.at++
	case "pgup":
		f.at -= rows
	case "pgdown":
		f.at += rows
	default:
		if msg.String() == "/" && (f.field.text() == "" || f.field.kept) {
			return // the key that opens the finder, pressed where it is open
		}
		if f.field.update(msg) {
			f.search()
		}
		f.m.find.query = f.field.text()
	}
	f.at = clamp(f.at, 0, len(f.hits)-1)
}

// choose pins the material under the cursor.
func (f *finder) choose() bool {
	if f.at >= len(f.hits) {
		f.m.warn("nothing found to pin")
		return false
	}
	f.m.pin(f.hits[f.at].Material)
	return true
}

func (f *finder) mouse(msg tea.MouseMsg) {
	head, rows := f.room()
	switch {
	case msg.Button == tea.MouseButtonWheelUp:
		f.at--
	case msg.Button == tea.MouseButtonWheelDown:
		f.at++
	case msg.Action == tea.MouseActionPress && msg.Button == tea.MouseButtonLeft:
		at := f.top + msg.Y - head
		if msg.Y < head || msg.Y >= head+rows || at >= len(f.hits) {
			return
		}
		if at == f.at && f.choose() {
			f.m.close()
			return
		}
		f.at = at
	}
	f.at = clamp(f.at, 0, len(f.hits)-1)
}

// room is how many lines stand above the hits, and how many hits there is
// room for.
func (f *finder) room() (head, rows int) {
	_, h := f.m.panel()
	head = 2 // query, column heads
	if len(f.m.bench.Pins) == 0 {
		head += 2 // what to do
	}
	return head, max(h-head-1, 1) // one line of names below
}

func (f *finder) View() string {
	t := f.m.theme
	w, _ := f.m.panel()
	head, rows := f.room()
	if f.at < f.top {
		f.top = f.at
	}
	f.top = max(f.top, f.at-rows+1)
	var lines []string
	if head == 4 {
		lines = append(lines,
			" Type part of an alloy, temper or process, or another name: 380 die, A356 T6,",
			" class 30. Enter pins it, Tab pins it and stays. The first pin is the baseline.")
	}
	count := fmt.Sprintf("%d of %d", len(f.hits), len(f.m.o.Catalog.Materials))
	if f.read != "" && len(f.hits) > 0 {
		count = cut(fmt.Sprintf("not found; near it, %s: %d", plain(f.read), len(f.hits)), w/2)
	}
	lines = append(lines, " Find: "+pad(f.field.view(t, w-len(count)-9), w-len(count)-9)+" "+t.dim.of(count))
	cols := f.layout(w)
	lines = append(lines, t.dim.of(cols.line(cols.heads(f.m))))
	for i := f.top; i < f.top+rows; i++ {
		if i >= len(f.hits) {
			lines = append(lines, "")
			continue
		}
		lines = append(lines, f.hitLine(cols, i))
	}
	return strings.Join(append(lines, f.namesLine(w)), "\n")
}

func (f *finder) hitLine(c finderColumns, i int) string {
	mat := f.hits[i].Material
	mark := " "
	pinned := slices.Contains(f.m.bench.Pins, mat)
	if pinned {
		mark = "+"
	}
	s := c.line(append([]string{mark, mat.Name(), mat.ID, mat.Alloy.Family.Name}, f.brief(mat)...))
	t := f.m.theme
	switch {
	case i == f.at && t.plain:
		return ">" + s[1:]
	case i == f.at:
		return t.cursor.of(s)
	case pinned:
		return t.dim.of(s)
	}
	return s
}

// namesLine tells how else the material under the cursor is called, so that a
// hit under a foreign name is no surprise.
func (f *finder) namesLine(w int) string {
	t := f.m.theme
	if len(f.hits) == 0 {
		return t.bad.of(cut(" Nothing like that in the catalog. Try fewer letters, or the alloy alone.", w))
	}
	mat := f.hits[f.at].Material
	parts := []string{mat.ID}
	if mat.Alloy.UNS != "" {
		parts = append(parts, "UNS "+mat.Alloy.UNS)
	}
	parts = append(parts, report.AliasTexts(mat)...)
	if slices.Contains(f.m.bench.Pins, mat) {
		parts = append([]string{"+ on the bench"}, parts...)
	}
	return t.dim.of(" " + cut(plain(strings.Join(parts, " · ")), w-1))
}

func (f *finder) brief(mat *props.Material) []string {
	s := &f.m.find
	if s.brief == nil {
		s.brief = map[*props.Material][]string{}
	}
	b, ok := s.brief[mat]
	if !ok {
		b = report.Brief(&f.m.bench, mat, briefProperties)
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
	if w >= roomy {
		c.widths[1] = 32
	}
	left := w - 2 - c.widths[0] - c.widths[1] - 1
	for _, s := range c.heads(f.m)[len(c.widths):] {
		c.figures = append(c.figures, max(width(s), 8))
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
		if u := m.bench.UnitOf(p).Symbol(); u != "" {
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
			b.WriteString(pad(plain(texts[i]), w) + " ")
		}
	}
	for i, s := range texts[len(c.widths):] {
		b.WriteString(padLeft(plain(s), c.figures[i]) + " ")
	}
	return b.String()
}
