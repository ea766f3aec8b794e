package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/part"
)

// factsPanel switches on and off what the part has and goes through.
type factsPanel struct {
	m   *Model
	at  int
	top int // rows above the ones in sight
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

func (p *factsPanel) Typing() bool        { return false }
func (p *factsPanel) Height(most int) int { return min(most, p.perColumn()+4) }

func (p *factsPanel) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{b("a b c …", "on or off"), b("space", "the one under the cursor"), b("u", "undo"), escape}
}

// columns is how many columns of facts there is room for.
func (p *factsPanel) columns() int { return clamp(p.m.width/factWidth, 1, 3) }

func (p *factsPanel) perColumn() int {
	n := p.columns()
	return (len(part.AllFacts()) + n - 1) / n
}

const factWidth = 40

func (p *factsPanel) Update(msg tea.Msg) tea.Cmd {
	all := part.AllFacts()
	p.at += clamp(step(msg, p.perColumn()), -len(all), len(all))
	if x, y, ok := pressed(msg); ok && x >= 0 && y >= 1 && p.top+y <= p.perColumn() {
		if i := x/factWidth*p.perColumn() + p.top + y - 1; i < len(all) {
			p.at = i
			p.toggle(all[i])
		}
	}
	if msg, ok := msg.(tea.KeyMsg); ok && step(msg, 1) == 0 {
		switch k := msg.String(); k {
		case "left", "h":
			p.at -= p.perColumn()
		case "right", "l":
			p.at += p.perColumn()
		case "u", "ctrl+r":
			return p.m.benchKey(msg)
		case " ", "enter":
			p.toggle(all[p.at])
		default:
			if i := strings.Index(factLetters, k); len(k) == 1 && i >= 0 && i < len(all) {
				p.at = i
				p.toggle(all[i])
			}
		}
	}
	p.at = clamp(p.at, 0, len(all)-1)
	return nil
}

func (p *factsPanel) toggle(f part.Facts) { p.m.changeCall(func(c *call.Call) { c.Part.With ^= f }) }

func (p *factsPanel) View() string {
	all, per := part.AllFacts(), p.perColumn()
	w, h := p.m.panel()
	rows := clamp(h-3, 1, per) // blank lines and words aside
	p.top = clamp(p.top, p.at%per-rows+1, p.at%per)
	lines := []string{""}
	for row := p.top; row < min(p.top+rows, per); row++ {
		s := ""
		for i := row; i < len(all); i += per {
			s += p.fact(i, all[i])
		}
		lines = append(lines, cut(s, w))
	}
	// The whole of what may be cut above.
	return strings.Join(append(lines, "", p.m.theme.dim.of(cut("   "+all[p.at].String(), w))), "\n")
}

func (p *factsPanel) fact(i int, f part.Facts) string {
	t := p.m.theme
	on, ink := "[ ]", t.dim
	if p.m.part.With&f != 0 {
		on, ink = "[x]", t.strong
	}
	text := pad(on+" "+f.String(), factWidth-4)
	letter := " "
	if i < len(factLetters) {
		letter = factLetters[i : i+1]
	}
	switch {
	case i == p.at && t.plain:
		return ">" + letter + " " + text + " "
	case i == p.at:
		return " " + t.cursor.of(letter+" "+text) + " "
	}
	return " " + t.strong.of(letter) + " " + ink.of(text) + " "
}
