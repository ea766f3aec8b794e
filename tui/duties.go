package tui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/needs"
)

// duties chooses for which duties the bench shows a merit.
type duties struct {
	m  *Model
	at int
}

func newDuties(m *Model) screen { return &duties{m: m} }

func (d *duties) Title() string       { return "Merit relative to the baseline, for a duty you pick" }
func (d *duties) Typing() bool        { return false }
func (d *duties) Height(most int) int { return min(most, len(needs.Duties())+4) }

func (d *duties) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{b("enter", "show or hide"), b("↑↓", "choose"), escape}
}

func (d *duties) Update(msg tea.Msg) tea.Cmd {
	k, ok := msg.(tea.KeyMsg)
	if !ok {
		return nil
	}
	list := needs.Duties()
	switch k.String() {
	case "up", "k":
		d.at--
	case "down", "j":
		d.at++
	case "enter", " ":
		pick := &list[d.at]
		defer d.m.goToMerit(pick)
		d.m.changeCall(func(c *call.Call) {
			if i := slices.Index(c.Duties, pick); i >= 0 {
				c.Duties = slices.Delete(c.Duties, i, i+1)
			} else {
				c.Duties = append(c.Duties, pick)
			}
		})
	}
	d.at = clamp(d.at, 0, len(list)-1)
	return nil
}

// goToMerit puts the cursor on the merit's row where there is one.
func (m *Model) goToMerit(d *needs.Duty) {
	if i := slices.Index(m.duties, d); i >= 0 && len(m.bench.Pins) > 0 {
		m.row = m.needsOn() + i
	}
}

func (d *duties) View() string {
	t := d.m.theme
	w, _ := d.m.panel()
	var lines []string
	list := needs.Duties()
	for i := range list {
		mark := "   "
		if slices.Contains(d.m.duties, &list[i]) {
			mark = "on "
		}
		s := pad(cut(" "+mark+" "+pad(list[i].Formula, 10)+" "+list[i].Name, w), w)
		switch {
		case i == d.at && t.plain:
			s = ">" + s[1:]
		case i == d.at:
			s = t.cursor.of(s)
		}
		lines = append(lines, s)
	}
	lines = append(lines, "")
	for _, l := range wrap(list[d.at].Formula+": "+list[d.at].Source+". It is a number for this duty alone, never a score of the metal.", w-2) {
		lines = append(lines, t.dim.of(" "+l))
	}
	return strings.Join(lines, "\n")
}
