package tui

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
	"alongside/tui/ui"
)

// swaps is what the change of metal does to the part, for every pin beside the
// baseline, as displayed.
type swaps []*swap.Result

// swapped works the swaps out for the bench and the part as they are; nil without
// two pins.
func (m *Model) swapped() swaps {
	if m.swaps == nil && len(m.pins()) > 1 {
		given := m.given()
		for at := 1; at < len(m.pins()); at++ {
			m.swaps = append(m.swaps, swap.Work(&m.now().Bench, given, m.baseline(), m.pinAt(at)))
		}
	}
	return m.swaps
}

// swapPanel lists what the change of metal does to the part, a line a result.
// The pin it tells of is the one under the bench's cursor.
type swapPanel struct {
	panel
	swapView
	hide bool // lines without a result
}

func newSwap(m *Model) screen {
	if len(m.pins()) < 2 {
		m.warn(twoPinsNeeded)
		return nil
	}
	return &swapPanel{panel: panel{m: m, digit: "4"}}
}

const twoPinsNeeded = "this needs two pins: the metal of today as baseline, and another"

// some reports whether there is a swap: undo may take the pins away.
func (p *swapPanel) some() bool { return len(p.m.swapped()) > 0 }

// col is the pin that the panel tells of, as displayed.
func (p *swapPanel) col() int { return ui.Clamp(p.m.col, 1, len(p.m.swapped())) }

func (p *swapPanel) result() *swap.Result { return p.m.swapped()[p.col()-1] }

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
	s := "Swap: the part of " + p.m.baseline().Name() + " in another metal"
	all := len(p.m.swapped())
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
	m := p.m
	bench := m.keys("s", "m", "u", "ctrl+r")
	if !p.some() {
		return bench
	}
	return slices.Concat(ui.Keys{
		ui.On("e i +", "part", "the part, at what this line waits for", p.form),
		ui.On("c", "case", "next load case", func() { p.next(part.FieldCase) }),
		ui.On("w", "strength", "next strength that decides", func() { p.next(part.FieldStrength) }),
		ui.On("enter o", "formula", "formula, source and figures of this line", p.enter),
		ui.Send("y", "copy", "copy the swap, all pins", func() tea.Cmd { return m.copyDoc(report.SwapDoc(m.swapped()...), "swap") }),
		ui.Send("Y", "", "copy the swap to this pin", func() tea.Cmd {
			return m.copyDoc(report.SwapDoc(p.result()), "swap to "+p.result().Pin.Name())
		}),
		ui.On("r", "aloud", "the swap in sentences, to read aloud", func() { m.open(newWorth(m, p.result())) }),
		ui.On("f", "filter", "hide lines without a result, show them", p.filter),
	}, m.pinKeys(true), bench, p.list.Keys())
}

func (p *swapPanel) filter() {
	p.hide, p.of = !p.hide, nil
	p.m.say(map[bool]string{true: "lines without a result are hidden", false: "every line"}[p.hide])
}

// enter opens what a line without a number waits for, else how it was worked
// out.
func (p *swapPanel) enter() {
	if l := p.line(); l != nil && !l.Done() && l.Need != "" {
		p.form()
	} else if l != nil {
		p.m.open(newCardPages(p.m, "Formula: ", report.NewSwapCard(p.result(), l)))
	}
}

// next steps the load case or the strength on.
func (p *swapPanel) next(f part.Field) {
	if err := p.m.setPart(f, nextChoice(&p.m.now().Part, f, 1)); err != nil {
		p.m.warn(err.Error())
		return
	}
	now := &p.m.now().Part
	switch {
	case f == part.FieldCase:
		p.m.say("load case: " + ui.Or(now.Case.String(), notSaid))
	case now.Strength == part.Auto || now.Strength == "":
		p.m.say("strength that decides: yield where both have one, else tensile")
	default:
		p.m.say("strength that decides: " + string(now.Strength))
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
			p.m.open(newPartOn(p.m, row))
			return
		}
	}
	p.m.open(newPart(p.m))
}

// newWorth shows a swap in sentences to read aloud.
func newWorth(m *Model, r *swap.Result) screen {
	return newPages(m, "Read aloud: "+ui.Plain(r.Pin.Name())+" for "+ui.Plain(r.Base.Name()), func(w int) []string {
		var lines []string
		for _, s := range append(r.Worth(), report.SwapCaution) {
			lines = append(lines, m.theme.Text.Wrap(s, min(w, ui.ReadWidth)-1, 2)...)
		}
		return lines
	})
}
