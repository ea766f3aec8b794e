package tui

import (
	"slices"

	"alongside/props/call"
	"alongside/props/needs"
	"alongside/tui/ui"
)

// duties chooses for which duties the bench shows a merit.
type duties struct{ panel }

func newDuties(m *Model) screen { return &duties{panel{m: m}} }

func (d *duties) Title() string          { return "Merit relative to the baseline, for a duty you pick" }
func (d *duties) Height(_, most int) int { return min(most, len(needs.Duties())+4) }

func (d *duties) Keys() ui.Keys {
	return append(ui.Keys{
		ui.On("enter space", "show or hide", "show or hide the merit for this duty", d.toggle),
		ui.On("", "choose", "", nil).As("↑↓"),
	}, append(d.list.Keys(), d.m.keys("u", "ctrl+r")...)...)
}

// toggle shows or hides a merit, and puts the bench's cursor on its row.
func (d *duties) toggle() {
	pick := &needs.Duties()[d.list.At]
	d.m.changeCall(func(c *call.Call) {
		if i := slices.Index(c.Duties, pick); i >= 0 {
			c.Duties = slices.Delete(c.Duties, i, i+1)
		} else {
			c.Duties = append(c.Duties, pick)
		}
	})
	for i := range d.m.table.Lines {
		if d.m.table.Lines[i].Duty == pick {
			d.m.rows.At = i
		}
	}
}

func (d *duties) View(w, h int) []string {
	t, list := d.m.theme, needs.Duties()
	return d.list.Draw(ui.Listing{
		Items: len(list), Snug: true,
		Line: func(i int, here bool) string {
			mark := "   "
			if slices.Contains(d.m.now().Duties, &list[i]) {
				mark = "on "
			}
			return t.Line(ui.Pad(" "+mark+" "+ui.Pad(list[i].Formula, 10)+" "+list[i].Name, w), here, t.Text)
		},
		Foot: func() []string {
			l := &list[d.list.At]
			return append([]string{""}, t.Dim.Wrap(l.Formula+": "+l.Source+". It is a number for this duty alone, never a score of the metal.", w, 1)...)
		},
	}, h)
}
