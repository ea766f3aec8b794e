package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
	"alongside/tui/ui"
)

// swaps is what the change of metal does to the part, for every pin beside
// the baseline.
type swaps struct {
	given   part.Given
	results []*swap.Result // as displayed, without the baseline
}

// swapped works the swaps out for the bench and the part as they are.
func (m *Model) swapped() *swaps {
	if m.swaps == nil {
		s := &swaps{}
		s.given = m.given()
		for at, i := range m.order() {
			if at > 0 {
				s.results = append(s.results, swap.Work(&m.now().Bench, s.given, m.now().Bench.Pins[m.now().Bench.Baseline], m.now().Bench.Pins[i]))
			}
		}
		m.swaps = s
	}
	return m.swaps
}

// swapPanel lists what the change of metal does to the part, a line a result.
// The pin it tells of is the one under the bench's cursor.
type swapPanel struct {
	m     *Model
	list  ui.List
	id    string // of the line that the cursor was moved to
	found int    // where it is
	first int    // scrolling: pins left of the ones shown
	w     int
	hide  bool

	table *swapTable
	of    *swaps // that table shows
}

func newSwap(m *Model) screen {
	if len(m.now().Bench.Pins) < 2 {
		m.warn(twoPinsNeeded)
		return nil
	}
	return &swapPanel{m: m}
}

const twoPinsNeeded = "this needs two pins: the metal of today as baseline, and another"

func (p *swapPanel) Title() string {
	m := p.m
	if !p.some() {
		return "Swap"
	}
	s := "Swap: the part of " + m.now().Bench.Pins[m.now().Bench.Baseline].Name() + " in another metal"
	all := len(m.swapped().results)
	switch from, n := p.shown(); {
	case n == all:
	case n == 1:
		s += fmt.Sprintf(" · pin %d of %d", from+1, all)
	default:
		s += fmt.Sprintf(" · pins %d–%d of %d", from+1, from+n, all)
	}
	return s
}

func (p *swapPanel) Typing() bool { return false }

func (p *swapPanel) Height(_, most int) int {
	if !p.some() {
		return 3
	}
	return min(most, len(p.laid().rows)+swapHead+swapFoot+1)
}

func (p *swapPanel) Keys() ui.Keys {
	m := p.m
	bench := m.keys("s", "m", "u", "ctrl+r")
	if !p.some() {
		return bench
	}
	return append(append(append(ui.Keys{
		ui.On("e i + /", "part", "the part, at what this line waits for", p.form),
		ui.On("c", "case", "next load case", func() { p.next(part.FieldCase) }),
		ui.On("w", "strength", "next strength that decides", func() { p.next(part.FieldStrength) }),
		ui.On("enter o", "formula", "formula, source and figures of this line", p.enter),
		ui.On("", "pin", "", nil).As("←→"),
		ui.Send("y", "copy", "copy the swap, all pins", func() tea.Cmd { return m.copyDoc(report.SwapDoc(m.swapped().results...), "swap") }),
		ui.Send("Y", "", "copy the swap to this pin", func() tea.Cmd {
			return m.copyDoc(report.SwapDoc(p.result()), "swap to "+p.result().Pin.Name())
		}),
		ui.On("r", "aloud", "the swap in sentences, to read aloud", func() { m.open(newWorth(m, p.result())) }),
		ui.On("f", "filter", "hide lines without a result, show them", p.filter),
	}, bench...), m.pinKeys()...), p.list.Keys()...)
}

// pin is the place of the pin under the cursor among the swaps.
func (p *swapPanel) pin() int { return ui.Clamp(p.m.col-1, 0, len(p.m.swapped().results)-1) }

func (p *swapPanel) result() *swap.Result { return p.m.swapped().results[p.pin()] }

// line is the line under the cursor; nil where every line is hidden.
func (p *swapPanel) line() *swap.Line {
	if t := p.laid(); p.list.At < len(t.lines) {
		return p.result().Line(t.rows[t.lines[p.list.At]].id)
	}
	return nil
}

func (p *swapPanel) Update(msg tea.Msg) tea.Cmd {
	if msg, ok := msg.(tea.MouseMsg); ok && p.some() {
		return p.list.Mouse(msg, func() tea.Cmd { p.enter(); return nil })
	}
	return nil
}

// some reports whether there is a swap: undo may take the pins away.
func (p *swapPanel) some() bool { return len(p.m.swapped().results) > 0 }

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
	m := p.m
	next := m.now().Part.Clone()
	if err := next.Set(m.o.Catalog, f, nextChoice(&next, f, 1)); err != nil {
		m.warn(err.Error())
		return
	}
	m.changeCall(func(c *call.Call) { c.Part = next })
	switch f {
	case part.FieldCase:
		m.say("load case: " + ui.Or(m.now().Part.Case.String(), "not said"))
	case part.FieldStrength:
		m.say("strength that decides: " + strengthWords(m.now().Part.Strength))
	}
}

func strengthWords(s part.Strength) string {
	if s == part.Auto || s == "" {
		return "yield where both have one, else tensile"
	}
	return string(s)
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
	base := r.Base.Name()
	return newPages("Read aloud: "+ui.Plain(r.Pin.Name())+" for "+ui.Plain(base), func(w int) []string {
		var lines []string
		for _, s := range append(r.Worth(), report.SwapCaution) {
			for _, l := range ui.Wrap(s, min(w, ui.ReadWidth)-4) {
				lines = append(lines, "  "+l)
			}
		}
		return lines
	})
}
