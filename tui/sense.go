package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/compare"
	"alongside/tui/ui"
	"alongside/units"
)

// sensePanel turns the sense of a row: more, less, neither, or nearest to a
// target that is typed or taken from the pin under the cursor.
type sensePanel struct {
	m        *Model
	property props.PropertyID
	list     ui.List
	target   ui.Field
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
	now, _ := m.now().Bench.SenseOf(p.property)
	for i, c := range senseChoices {
		if c.sense == now {
			p.list.At = i
		}
	}
	suggestion := ""
	if row := m.cursorRow(); row != nil {
		if cell := &row.Cells[m.cursorIndex()]; cell.Figure != nil {
			suggestion = cell.Value.String()
		}
	}
	p.target = ui.NewField(suggestion)
	return p
}

func (p *sensePanel) Title() string { return "Which way counts: " + p.property.Info().Name }
func (p *sensePanel) Typing() bool  { return p.typing }

func (p *sensePanel) Height(int, int) int { return 10 }

func (p *sensePanel) Keys() ui.Keys {
	if p.typing {
		return ui.Keys{ui.On("enter", "take this target", "take this target", p.takeTarget)}
	}
	keys := ui.Keys{
		ui.On("", "choose", "choose by letter", nil).As("m l n t"),
		ui.On("enter", "choose", "choose the one under the cursor", p.take).As("enter"),
	}
	for i, c := range senseChoices {
		keys = append(keys, ui.On(c.letter, "", "", func() { p.list.At = i; p.take() }))
	}
	keys[1].Label = "↑↓ enter"
	return append(keys, p.list.Keys()...)
}

func (p *sensePanel) Update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.KeyMsg:
		if p.typing && p.target.Update(msg) {
			p.problem = ""
		}
	case tea.MouseMsg:
		if !p.typing {
			return p.list.Mouse(msg, func() tea.Cmd { p.take(); return nil })
		}
	}
	return nil
}

func (p *sensePanel) take() {
	c := senseChoices[p.list.At]
	if c.sense == props.Near {
		p.typing = true
		return
	}
	p.set(compare.SenseSetting{Sense: c.sense})
	p.m.sayf("%s: %s", p.property.Info().Name, c.words)
	p.m.close()
}

func (p *sensePanel) takeTarget() {
	row := p.m.now().Bench.UnitOf(p.property)
	q, err := units.ParseAs(p.target.Text(), row.Dimension(), row)
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

func (p *sensePanel) View(w, h int) []string {
	t := p.m.theme
	p.list.FitLines(len(senseChoices), 1, h-1)
	lines := []string{""}
	for i, c := range senseChoices {
		s := fmt.Sprintf("%s  %s", c.letter, c.words)
		if c.sense == props.Near {
			s = ui.Pad(s, 26)
			switch {
			case p.typing:
				lines = append(lines, " > "+s+p.target.View(t, w-32))
				continue
			default:
				s += p.target.Text()
			}
		}
		mark := "   "
		if i == p.list.At {
			mark = " > "
			s = t.Strong.Of(s)
		}
		lines = append(lines, mark+s)
	}
	lines = append(lines, "", t.Dim.Of(ui.Cut("   A target may be typed in any unit: 12 µin/in·°F, 21 um/m-K, 40 ksi.", w)), "")
	for _, l := range ui.Wrap(p.problem, w-4) {
		lines = append(lines, "   "+t.Bad.Of(l))
	}
	return lines
}
