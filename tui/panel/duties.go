package panel

import (
	"slices"

	"alongside/props/call"
	"alongside/props/needs"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// duties chooses for which duties the bench shows a merit.
type duties struct{ panel }

// NewDuties opens the choice of duties.
func NewDuties(d *desk.Desk) desk.Screen {
	return &duties{panel{desk: d, about: "Adds a row that ranks the pins for one duty, such as the lightest plate of equal stiffness."}}
}

func (p *duties) Title() string          { return "Merit relative to the baseline, for a duty you pick" }
func (p *duties) Height(_, most int) int { return min(most, len(needs.Duties())+4) }

func (p *duties) Keys() ui.Keys {
	return append(ui.Keys{
		ui.On("enter space", "show or hide", "show or hide the merit for this duty", p.toggle),
		ui.On("", "choose", "", nil).As("↑↓"),
	}, append(p.list.Keys(), p.desk.BenchKeys("u", "ctrl+r")...)...)
}

// toggle shows or hides a merit, and puts the bench's cursor on its row.
func (p *duties) toggle() {
	pick := &needs.Duties()[p.list.At]
	p.desk.ChangeCall(func(c *call.Call) {
		if i := slices.Index(c.Duties, pick); i >= 0 {
			c.Duties = slices.Delete(c.Duties, i, i+1)
		} else {
			c.Duties = append(c.Duties, pick)
		}
	})
	for i := range p.desk.Table.Lines {
		if p.desk.Table.Lines[i].Duty == pick {
			p.desk.Rows.At = i
		}
	}
}

func (p *duties) View(w, h int) []string {
	t, list := p.desk.Theme, needs.Duties()
	return p.list.Draw(ui.Listing{
		Items: len(list), Snug: true,
		Line: func(i int, here bool) string {
			mark := "   "
			if slices.Contains(p.desk.Now().Duties, &list[i]) {
				mark = "on "
			}
			return t.Line(ui.Pad(" "+mark+" "+ui.Pad(list[i].Formula, 10)+" "+list[i].Name, w), here, t.Text)
		},
		Foot: func() []string {
			l := &list[p.list.At]
			return append([]string{""}, t.Dim.Wrap(l.Formula+": "+l.Source+". It is a number for this duty alone, never a score of the metal.", w, 1)...)
		},
	}, h)
}
