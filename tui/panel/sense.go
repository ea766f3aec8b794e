package panel

import (
	"fmt"

	"alongside/props"
	"alongside/props/compare"
	"alongside/tui/desk"
	"alongside/tui/ui"
	"alongside/units"
)

// sensePanel turns the sense of a row: more, less, neither, or nearest to a
// target that is typed or taken from the pin under the cursor.
type sensePanel struct {
	panel
	property props.PropertyID
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

// NewSense opens the choice of which way a row counts.
func NewSense(d *desk.Desk) desk.Screen {
	if d.OwnRow() {
		return nil
	}
	p := &sensePanel{panel{desk: d, about: "Says whether more or less of this property is better for this customer, or how near a target."}, d.CursorProperty()}
	if p.property == props.NoProperty {
		return nil
	}
	now, _ := d.Now().Bench.SenseOf(p.property)
	for i, c := range senseChoices {
		if c.sense == now {
			p.list.At = i
		}
	}
	suggestion := ""
	if row := d.CursorRow(); row != nil {
		if cell := &row.Cells[d.CursorIndex()]; cell.Figure != nil {
			suggestion = cell.Value.String()
		}
	}
	p.field = ui.NewField(suggestion)
	return p
}

func (p *sensePanel) Title() string       { return "Which way counts: " + p.property.Info().Name }
func (p *sensePanel) Height(int, int) int { return 10 }

func (p *sensePanel) Keys() ui.Keys {
	if p.typing {
		return ui.Keys{ui.On("enter", "take this target", "take this target", p.takeTarget)}
	}
	keys := ui.Keys{
		ui.On("", "choose", "choose by letter", nil).As("m l n t"),
		ui.On("enter", "choose", "choose the one under the cursor", p.take),
	}
	for i, c := range senseChoices {
		keys = append(keys, ui.On(c.letter, "", "", func() { p.list.At = i; p.take() }))
	}
	keys[1].Label = "↑↓ enter"
	return append(keys, p.list.Keys()...)
}

func (p *sensePanel) take() {
	c := senseChoices[p.list.At]
	if c.sense == props.Near {
		p.typing = true
		return
	}
	p.set(compare.SenseSetting{Sense: c.sense})
	p.desk.Sayf("%s: %s", p.property.Info().Name, c.words)
	p.desk.Close()
}

func (p *sensePanel) takeTarget() {
	row := p.desk.Now().Bench.UnitOf(p.property)
	q, err := units.ParseAs(p.field.Text(), row.Dimension(), row)
	switch {
	case err != nil:
		p.problem = err.Error()
		return
	case q.Qual != units.Exact && q.Qual != units.Approx:
		p.problem = "a target is one value or a range, without at least or at most"
		return
	}
	p.set(compare.SenseSetting{Sense: props.Near, Target: q.Unit.ToSI(q.Mid())})
	p.desk.Sayf("%s: nearest to %s", p.property.Info().Name, q)
	p.desk.Close()
}

func (p *sensePanel) set(s compare.SenseSetting) {
	p.desk.Change(func(b *compare.Bench) {
		b.Senses[p.property] = s
		if s.Sense == p.property.Info().Sense {
			delete(b.Senses, p.property)
		}
	})
}

func (p *sensePanel) View(w, h int) []string {
	t := p.desk.Theme
	return p.list.Draw(ui.Listing{
		Head: []string{""}, Items: len(senseChoices), Snug: true,
		Line: func(i int, here bool) string {
			c := &senseChoices[i]
			s := fmt.Sprintf("%s  %s", c.letter, c.words)
			if c.sense == props.Near {
				s = ui.Pad(s, 26)
				if p.typing {
					return " > " + s + p.field.View(t, w-32)
				}
				s += p.field.Text()
			}
			if here {
				return " > " + t.Strong.Of(s)
			}
			return "   " + s
		},
		Foot: func() []string {
			return append([]string{"", t.Dim.Of(ui.Cut("   A target may be typed in any unit: 12 µin/in·°F, 21 um/m-K, 40 ksi.", w)), ""}, t.Bad.Wrap(p.problem, w, 3)...)
		},
	}, h)
}
