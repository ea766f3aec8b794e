package panel

import (
	"strings"

	"alongside/props/call"
	"alongside/props/part"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// factsPanel switches on and off what the part has and goes through. The facts
// stand in columns: the list is that of the lines.
type factsPanel struct {
	panel
	per int // facts in a column
	col int // of the cursor
}

// NewFacts opens the conditions of the part.
func NewFacts(d *desk.Desk) desk.Screen {
	return &factsPanel{panel: panel{desk: d, about: "Takes what the part has and goes through; the watch-outs go by it."}, per: 1}
}

// factLetters are the keys of the facts in order: those that mean nothing else
// in the panel.
const factLetters = "abcdefimnoprstvwxyzABCDEFIMNOP"

func (p *factsPanel) Title() string {
	s := "Conditions: what the part has and goes through"
	if words, _ := p.desk.WatchWords(); words != "" {
		s += dot + strings.TrimSuffix(words, p.desk.WatchKey())
	}
	return s
}

func (p *factsPanel) Height(w, most int) int { return min(most, perColumn(w)+4) }

func (p *factsPanel) Keys() ui.Keys {
	keys := ui.Keys{
		ui.On("", "on or off", "switch the fact with this letter on or off", nil).As("a b c …"),
		ui.On("space enter", "the one under the cursor", "switch the one under the cursor on or off", func() { p.toggle(p.at()) }),
		ui.On("left h", "", "column", func() { p.col-- }).As("← →"),
		ui.On("right l", "", "", func() { p.col++ }),
	}
	for i := range min(len(part.AllFacts()), len(factLetters)) {
		keys = append(keys, ui.On(factLetters[i:i+1], "", "", func() { p.toggle(i) }))
	}
	return append(append(keys, p.desk.BenchKeys("u", "ctrl+r")...), p.list.Keys()...)
}

// perColumn is how many facts stand in a column where there is room for as many
// columns as w cells have.
func perColumn(w int) int {
	n := ui.Clamp(w/factWidth, 1, 3)
	return (len(part.AllFacts()) + n - 1) / n
}

const factWidth = 40

func (p *factsPanel) Click(x, y int) bool {
	before := p.at()
	p.list.Click(y)
	p.col = max(x, 0) / factWidth
	return p.list.Item(y) >= 0 && p.at() == before
}

// at is the fact under the cursor, which it keeps on one.
func (p *factsPanel) at() int {
	last := len(part.AllFacts()) - 1
	p.col = ui.Clamp(p.col, 0, (last-p.list.At)/p.per)
	return p.col*p.per + p.list.At
}

// toggle goes to a fact and switches it.
func (p *factsPanel) toggle(i int) {
	p.col, p.list.At = i/p.per, i%p.per
	p.desk.ChangeCall(func(c *call.Call) { c.Part.With ^= part.AllFacts()[i] })
}

func (p *factsPanel) View(w, h int) []string {
	all := part.AllFacts()
	p.per = perColumn(w)
	return p.list.Draw(ui.Listing{
		Head: []string{""}, Items: p.per, Snug: true,
		Line: func(row int, _ bool) string {
			s := ""
			for i := row; i < len(all); i += p.per {
				s += p.fact(i, all[i])
			}
			return ui.Cut(s, w)
		},
		Foot: func() []string { // the whole of what may be cut above
			return []string{"", p.desk.Theme.Dim.Of(ui.Cut("   "+all[p.at()].String(), w))}
		},
	}, h)
}

func (p *factsPanel) fact(i int, f part.Facts) string {
	t := p.desk.Theme
	on, ink := "[ ]", t.Dim
	if p.desk.Now().Part.With&f != 0 {
		on, ink = "[x]", t.Strong
	}
	text := ui.Pad(on+" "+f.String(), factWidth-4)
	letter := " "
	if i < len(factLetters) {
		letter = factLetters[i : i+1]
	}
	switch {
	case i == p.at() && t.Plain:
		return ">" + letter + " " + text + " "
	case i == p.at():
		return " " + t.Cursor.Of(letter+" "+text) + " "
	}
	return " " + t.Strong.Of(letter) + " " + ink.Of(text) + " "
}
