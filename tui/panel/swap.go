package panel

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// swapPanel lists what the change of metal does to the part, a line a result.
// The pin it tells of is the one under the bench's cursor.
type swapPanel struct {
	panel
	swapView
	hide bool // lines without a result
}

// NewSwap opens what the change of metal does to the part.
func NewSwap(d *desk.Desk) desk.Screen {
	if len(d.Pins()) < 2 {
		d.Warn(twoPinsNeeded)
		return nil
	}
	return &swapPanel{panel: panel{desk: d, digit: "4", about: "Works out what another metal does to the customer's part: mass, wall, load, growth, heat."}}
}

// some reports whether there is a swap: undo may take the pins away.
func (p *swapPanel) some() bool { return len(p.desk.Swapped()) > 0 }

// col is the pin that the panel tells of, as displayed.
func (p *swapPanel) col() int { return ui.Clamp(p.desk.Col, 1, len(p.desk.Swapped())) }

func (p *swapPanel) result() *swap.Result { return p.desk.Swapped()[p.col()-1] }

// line is the line under the cursor; nil where every line is hidden.
func (p *swapPanel) line() *swap.Line {
	if p.list.At < len(p.ids) {
		return p.result().Line(p.ids[p.list.At])
	}
	return nil
}

func (p *swapPanel) Title() string {
	if !p.some() {
		return "Swap"
	}
	s := "Swap: the part of " + p.desk.Baseline().Name() + " in another metal"
	all := len(p.desk.Swapped())
	switch n := p.grid.Fit(p.first); {
	case n == all:
	case n == 1:
		s += fmt.Sprintf(" · pin %d of %d", p.first, all)
	default:
		s += fmt.Sprintf(" · pins %d–%d of %d", p.first, p.first+n-1, all)
	}
	return s
}

func (p *swapPanel) Height(w, most int) int {
	if !p.some() {
		return 3
	}
	p.lay(p, w)
	return min(most, p.lines+swapHead+swapFoot+1)
}

func (p *swapPanel) Keys() ui.Keys {
	d := p.desk
	bench := d.BenchKeys("s", "m", "u", "ctrl+r")
	if !p.some() {
		return bench
	}
	return slices.Concat(ui.Keys{
		ui.On("e i +", "part", "the part, at what this line waits for", p.form),
		ui.On("c", "case", "next load case", func() { p.next(part.FieldCase) }),
		ui.On("w", "strength", "next strength that decides", func() { p.next(part.FieldStrength) }),
		ui.On("enter o", "formula", "formula, source and figures of this line", p.enter),
		ui.Send("y", "copy", "copy the swap, all pins", func() tea.Cmd { return d.CopyDoc(report.SwapDoc(d.Swapped()...), "swap") }),
		ui.Send("Y", "", "copy the swap to this pin", func() tea.Cmd {
			return d.CopyDoc(report.SwapDoc(p.result()), "swap to "+p.result().Pin.Name())
		}),
		ui.On("r", "aloud", "the swap in sentences, to read aloud", func() { d.Open(newWorth(d, p.result())) }),
		ui.On("f", "filter", "hide lines without a result, show them", p.filter),
	}, d.PinKeys(true), bench, p.list.Keys())
}

func (p *swapPanel) filter() {
	p.hide, p.of = !p.hide, nil
	p.desk.Say(map[bool]string{true: "lines without a result are hidden", false: "every line"}[p.hide])
}

// enter opens what a line without a number waits for, else how it was worked
// out.
func (p *swapPanel) enter() {
	if l := p.line(); l != nil && !l.Done() && l.Need != "" {
		p.form()
	} else if l != nil {
		p.desk.Open(newCardPages(p.desk, "Formula: ", "Shows the formula of this line with its figures and their sources.", report.NewSwapCard(p.result(), l)))
	}
}

// next steps the load case or the strength on.
func (p *swapPanel) next(f part.Field) {
	if err := p.desk.SetPart(f, nextChoice(&p.desk.Now().Part, f, 1)); err != nil {
		p.desk.Warn(err.Error())
		return
	}
	now := &p.desk.Now().Part
	switch {
	case f == part.FieldCase:
		p.desk.Say("load case: " + ui.Or(now.Case.String(), notSaid))
	case now.Strength == part.Auto || now.Strength == "":
		p.desk.Say("strength that decides: yield where both have one, else tensile")
	default:
		p.desk.Say("strength that decides: " + string(now.Strength))
	}
}

// form opens the part on what the line under the cursor waits for.
func (p *swapPanel) form() {
	if l := p.line(); l != nil {
		if f, ok := l.Lacks(); ok {
			row := partRow{field: f}
			if f == part.FieldPrice {
				row.pin = p.result().Pin
			}
			p.desk.Open(newPartOn(p.desk, row))
			return
		}
	}
	p.desk.Open(NewPart(p.desk))
}

// newWorth shows a swap in sentences to read aloud.
func newWorth(d *desk.Desk, r *swap.Result) desk.Screen {
	return newPages(d, "Read aloud: "+ui.Plain(r.Pin.Name())+" for "+ui.Plain(r.Base.Name()), "Puts the change into words for the telephone.", func(w int) []string {
		var lines []string
		for _, s := range append(r.Worth(), report.SwapCaution) {
			lines = append(lines, d.Theme.Text.Wrap(s, min(w, ui.ReadWidth)-1, 2)...)
		}
		return lines
	})
}
