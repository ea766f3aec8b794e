package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/part"
	"alongside/tui/ui"
)

// factsPanel switches on and off what the part has and goes through.
type factsPanel struct {
	m    *Model
	list ui.List
	per  int // facts in a column
}

func newFacts(m *Model) screen { return &factsPanel{m: m} }

// factLetters are the keys of the facts in order: those that mean nothing else
// in the panel.
const factLetters = "abcdefimnoprstvwxyzABCDEFIMNOP"

func (p *factsPanel) Title() string {
	s := "Conditions: what the part has and goes through"
	if words, _ := p.m.watchWords(); words != "" {
		s += " · " + strings.TrimSuffix(words, watchKey)
	}
	return s
}

func (p *factsPanel) Typing() bool           { return false }
func (p *factsPanel) Height(w, most int) int { return min(most, perColumn(w)+4) }

func (p *factsPanel) Keys() ui.Keys {
	all := part.AllFacts()
	keys := ui.Keys{
		ui.On("", "on or off", "switch the fact with this letter on or off", nil).As("a b c …"),
		ui.On("space enter", "the one under the cursor", "switch the one under the cursor on or off", p.toggle),
		ui.On("left h", "", "column", func() { p.list.Move(-p.per) }).As("← →"),
		ui.On("right l", "", "", func() { p.list.Move(p.per) }),
	}
	for i := range min(len(all), len(factLetters)) {
		keys = append(keys, ui.On(factLetters[i:i+1], "", "", func() { p.list.At = i; p.toggle() }))
	}
	return append(append(keys, p.m.keys("u", "ctrl+r")...), p.list.Keys()...)
}

// perColumn is how many facts stand in a column where there is room for as many
// columns as w cells have.
func perColumn(w int) int {
	n := ui.Clamp(w/factWidth, 1, 3)
	return (len(part.AllFacts()) + n - 1) / n
}

const factWidth = 40

// Update takes the mouse. The facts stand in columns, so a line has several.
func (p *factsPanel) Update(msg tea.Msg) tea.Cmd {
	mouse, ok := msg.(tea.MouseMsg)
	if !ok {
		return nil
	}
	if !ui.Pressed(mouse) {
		return p.list.Mouse(mouse, nil)
	}
	if line := p.list.Line(mouse.Y); line >= 0 && mouse.X >= 0 {
		if i := mouse.X/factWidth*p.per + line; i < len(part.AllFacts()) {
			if i == p.list.At {
				p.toggle()
			}
			p.list.At = i
		}
	}
	return nil
}

// toggle switches the fact under the cursor.
func (p *factsPanel) toggle() {
	f := part.AllFacts()[p.list.At]
	p.m.changeCall(func(c *call.Call) { c.Part.With ^= f })
}

func (p *factsPanel) View(w, h int) []string {
	all := part.AllFacts()
	p.per = perColumn(w)
	rows := ui.Clamp(h-3, 1, p.per) // blank lines and words aside
	p.list.Fit(len(all), p.per, 1, rows, func(i int) (first, last int) { return i % p.per, i % p.per })
	lines := []string{""}
	for row := p.list.Top; row < p.list.End(); row++ {
		s := ""
		for i := row; i < len(all); i += p.per {
			s += p.fact(i, all[i])
		}
		lines = append(lines, ui.Cut(s, w))
	}
	// The whole of what may be cut above.
	return append(lines, "", p.m.theme.Dim.Of(ui.Cut("   "+all[p.list.At].String(), w)))
}

func (p *factsPanel) fact(i int, f part.Facts) string {
	t := p.m.theme
	on, ink := "[ ]", t.Dim
	if p.m.now().Part.With&f != 0 {
		on, ink = "[x]", t.Strong
	}
	text := ui.Pad(on+" "+f.String(), factWidth-4)
	letter := " "
	if i < len(factLetters) {
		letter = factLetters[i : i+1]
	}
	switch {
	case i == p.list.At && t.Plain:
		return ">" + letter + " " + text + " "
	case i == p.list.At:
		return " " + t.Cursor.Of(letter+" "+text) + " "
	}
	return " " + t.Strong.Of(letter) + " " + ink.Of(text) + " "
}
