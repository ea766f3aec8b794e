package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/needs"
	"alongside/tui/ui"
)

// duties chooses for which duties the bench shows a merit.
type duties struct {
	m    *Model
	list ui.List
}

func newDuties(m *Model) screen { return &duties{m: m} }

func (d *duties) Title() string          { return "Merit relative to the baseline, for a duty you pick" }
func (d *duties) Typing() bool           { return false }
func (d *duties) Height(_, most int) int { return min(most, len(needs.Duties())+4) }

func (d *duties) Keys() ui.Keys {
	return append(ui.Keys{
		ui.On("enter space", "show or hide", "show or hide the merit for this duty", d.toggle),
		ui.On("", "choose", "", nil).As("↑↓"),
	}, append(d.list.Keys(), d.m.keys("u", "ctrl+r")...)...)
}

func (d *duties) Update(msg tea.Msg) tea.Cmd {
	if msg, ok := msg.(tea.MouseMsg); ok {
		return d.list.Mouse(msg, func() tea.Cmd { d.toggle(); return nil })
	}
	return nil
}

func (d *duties) toggle() {
	pick := &needs.Duties()[d.list.At]
	d.m.changeCall(func(c *call.Call) {
		if i := slices.Index(c.Duties, pick); i >= 0 {
			c.Duties = slices.Delete(c.Duties, i, i+1)
		} else {
			c.Duties = append(c.Duties, pick)
		}
	})
	d.m.goToMerit(pick)
}

// goToMerit puts the cursor on the merit's row where there is one.
func (m *Model) goToMerit(d *needs.Duty) {
	for i := range m.table.Lines {
		if m.table.Lines[i].Duty == d {
			m.row = i
		}
	}
}

func (d *duties) View(w, h int) []string {
	t, list := d.m.theme, needs.Duties()
	words := ui.Wrap(list[d.list.At].Formula+": "+list[d.list.At].Source+". It is a number for this duty alone, never a score of the metal.", w-2)
	d.list.FitLines(len(list), 0, h-len(words)-1)
	var lines []string
	for i := d.list.Top; i < d.list.End(); i++ {
		mark := "   "
		if slices.Contains(d.m.now().Duties, &list[i]) {
			mark = "on "
		}
		s := ui.Pad(ui.Cut(" "+mark+" "+ui.Pad(list[i].Formula, 10)+" "+list[i].Name, w), w)
		lines = append(lines, t.Line(s, i == d.list.At, t.Text))
	}
	lines = append(lines, "")
	for _, l := range words {
		lines = append(lines, t.Dim.Of(" "+l))
	}
	return lines
}
