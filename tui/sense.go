package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// sensePanel turns the sense of a row: more, less, neither, or nearest to a
// target that is typed or taken from the pin under the cursor.
type sensePanel struct {
	m        *Model
	property props.PropertyID
	at       int
	target   field
	typing   bool
	problem  string
}

var senseChoices = []struct {
	letter, words string
	sense         props.Sense
}{
	{"m", "more is better", props.More},
	{"l", "less is better", props.Less},
	{"n", "neither: no verdict, only the difference", props.Neutral},
	{"t", "nearest to a target", props.Near},
}

func newSense(m *Model) screen {
	if m.ownRow() {
		return nil
	}
	p := &sensePanel{m: m, property: m.cursorProperty()}
	if p.property == props.NoProperty {
		return nil
	}
	now, _ := m.bench.SenseOf(p.property)
	for i, c := range senseChoices {
		if c.sense == now {
			p.at = i
		}
	}
	suggestion := ""
	if row := m.cursorRow(); row != nil {
		if cell := &row.Cells[m.cursorIndex()]; cell.Figure != nil {
			suggestion = cell.Value.String()
		}
	}
	p.target = newField(suggestion)
	return p
}

func (p *sensePanel) Title() string { return "Which way counts: " + p.property.Info().Name }
func (p *sensePanel) Typing() bool  { return p.typing }

func (p *sensePanel) Height(int) int { return 10 }

func (p *sensePanel) Keys() []key.Binding {
	if p.typing {
		return []key.Binding{key.NewBinding(key.WithKeys("enter"), key.WithHelp("enter", "take this target")), escape}
	}
	return []key.Binding{
		key.NewBinding(key.WithKeys("m"), key.WithHelp("m l n t", "choose")),
		key.NewBinding(key.WithKeys("up"), key.WithHelp("↑↓ enter", "choose")),
		escape,
	}
}

func (p *sensePanel) Update(msg tea.Msg) tea.Cmd {
	k, ok := msg.(tea.KeyMsg)
	if !ok {
		return nil
	}
	if p.typing {
		if k.String() == "enter" {
			p.takeTarget()
		} else if p.target.update(k) {
			p.problem = ""
		}
		return nil
	}
	switch k.String() {
	case "up", "k":
		p.at = clamp(p.at-1, 0, len(senseChoices)-1)
	case "down", "j":
		p.at = clamp(p.at+1, 0, len(senseChoices)-1)
	case "enter":
		p.take()
	default:
		for i, c := range senseChoices {
			if c.letter == k.String() {
				p.at = i
				p.take()
			}
		}
	}
	return nil
}

func (p *sensePanel) take() {
	c := senseChoices[p.at]
	if c.sense == props.Near {
		p.typing = true
		return
	}
	p.set(compare.SenseSetting{Sense: c.sense})
	p.m.sayf("%s: %s", p.property.Info().Name, c.words)
	p.m.close()
}

func (p *sensePanel) takeTarget() {
	row := p.m.bench.UnitOf(p.property)
	q, err := units.ParseAs(p.target.text(), row.Dimension(), row)
	switch {
	case err != nil:
		p.problem = err.Error()
		return
	case q.Qual != units.Exact && q.Qual != units.Approx:
		p.problem = "a target is one value or a range, without at least or at most"
		return
	}
	p.set(compare.SenseSetting{Sense: props.Near, Target: q.Unit.ToSI(q.Mid())})
	p.m.sayf("%s: nearest to %s", p.property.Info().Name, q)
	p.m.close()
}

func (p *sensePanel) set(s compare.SenseSetting) {
	p.m.change(func(b *compare.Bench) {
		b.Senses[p.property] = s
		if s.Sense == p.property.Info().Sense {
			delete(b.Senses, p.property)
		}
	})
}

func (p *sensePanel) View() string {
	t := p.m.theme
	w, _ := p.m.panel()
	lines := []string{""}
	for i, c := range senseChoices {
		s := fmt.Sprintf("%s  %s", c.letter, c.words)
		if c.sense == props.Near {
			s = pad(s, 26)
			switch {
			case p.typing:
				lines = append(lines, " > "+s+p.target.view(t, w-32))
				continue
			default:
				s += p.target.text()
			}
		}
		mark := "   "
		if i == p.at {
			mark = " > "
			s = t.strong.of(s)
		}
		lines = append(lines, mark+s)
	}
	lines = append(lines, "", t.dim.of(cut("   A target may be typed in any unit: 12 µin/in·°F, 21 um/m-K, 40 ksi.", w)), "")
	for _, l := range wrap(p.problem, w-4) {
		lines = append(lines, "   "+t.bad.of(l))
	}
	return strings.Join(lines, "\n")
}
