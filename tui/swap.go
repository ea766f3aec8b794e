package tui

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
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
				s.results = append(s.results, swap.Work(&m.bench, s.given, m.bench.Pins[m.bench.Baseline], m.bench.Pins[i]))
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
	id    string // of the line under the cursor
	top   int
	first int // scrolling: pins left of the ones shown
	hide  bool

	table *swapTable
	of    *swaps // that table shows
}

func newSwap(m *Model) screen {
	if len(m.bench.Pins) < 2 {
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
	s := "Swap: the part of " + m.bench.Pins[m.bench.Baseline].Name() + " in another metal"
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

func (p *swapPanel) Height(most int) int {
	if !p.some() {
		return 3
	}
	return min(most, len(p.laid().rows)+swapHead+swapFoot+1)
}

func (p *swapPanel) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{
		b("e", "part"), b("c", "case"), b("w", "strength"), b("enter", "formula"), b("←→", "pin"), b("y", "copy"),
		b("r", "aloud"), escape, b("f", "filter"), b("s", "units"), b("m", "basis"), b("u", "undo"),
	}
}

// pin is the place of the pin under the cursor among the swaps.
func (p *swapPanel) pin() int { return clamp(p.m.col-1, 0, len(p.m.swapped().results)-1) }

func (p *swapPanel) result() *swap.Result { return p.m.swapped().results[p.pin()] }

// line is the line under the cursor; nil where every line is hidden.
func (p *swapPanel) line() *swap.Line {
	if at := p.laid().at(p.id); at >= 0 {
		return p.result().Line(p.laid().rows[at].id)
	}
	return nil
}

func (p *swapPanel) Update(msg tea.Msg) tea.Cmd { return p.m.list(p, msg) }

// page is how many rows are in sight, about.
func (p *swapPanel) page() int {
	_, h := p.m.panel()
	return h - swapHead - swapFoot - 1
}

// some reports whether there is a swap: undo may take the pins away.
func (p *swapPanel) some() bool { return len(p.m.swapped().results) > 0 }

func (p *swapPanel) click(_, y int) {
	rows, head := p.laid().rows, len(p.head())
	if y >= head && p.top+y-head < len(rows) {
		p.id = or(rows[p.top+y-head].id, p.id)
	}
}

func (p *swapPanel) key(k string) tea.Cmd {
	m := p.m
	if m.otherPin(k) {
		return nil
	}
	switch k {
	case "f":
		p.hide, p.table = !p.hide, nil
		m.say(map[bool]string{true: "lines without a result are hidden", false: "every line"}[p.hide])
	case "c":
		p.next(part.FieldCase)
	case "w":
		p.next(part.FieldStrength)
	case "e", "i", "+", "/":
		p.form()
	case "enter", "o":
		if l := p.line(); l != nil && !l.Done() && l.Need != "" {
			p.form()
		} else if l != nil {
			m.open(newSwapCard(m, p.result(), l))
		}
	case "r":
		m.open(newWorth(m, p.result()))
	case "y":
		return m.copyDoc(report.SwapDoc(m.swapped().results...), "swap")
	case "Y":
		return m.copyDoc(report.SwapDoc(p.result()), "swap to "+p.result().Pin.Name())
	}
	return nil
}

// move goes by lines, over headings.
func (p *swapPanel) move(by int) {
	rows := p.laid().rows
	at, step := p.laid().at(p.id), 1
	if by < 0 {
		step = -1
	}
	for i := at + step; i >= 0 && i < len(rows) && by != 0; i += step {
		if rows[i].id != "" {
			p.id = rows[i].id
			by -= step
		}
	}
}

// next steps the load case or the strength on.
func (p *swapPanel) next(f part.Field) {
	m := p.m
	next := m.part.Clone()
	if err := next.Set(m.o.Catalog, f, nextChoice(&next, f, 1)); err != nil {
		m.warn(err.Error())
		return
	}
	m.changeCall(func(c *call.Call) { c.Part = next })
	switch f {
	case part.FieldCase:
		m.say("load case: " + or(m.part.Case.String(), "not said"))
	case part.FieldStrength:
		m.say("strength that decides: " + strengthWords(m.part.Strength))
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

// newSwapCard shows how a line of a swap was worked out.
func newSwapCard(m *Model, r *swap.Result, l *swap.Line) screen {
	card := report.NewSwapCard(r, l)
	return newPages(m, "Formula: "+plain(card.Title), func(w int) []string { return cardLines(m.theme, card, w) })
}

// newWorth shows a swap in sentences to read aloud.
func newWorth(m *Model, r *swap.Result) screen {
	base := r.Base.Name()
	return newPages(m, "Read aloud: "+plain(r.Pin.Name())+" for "+plain(base), func(w int) []string {
		var lines []string
		for _, s := range append(r.Worth(), report.SwapCaution) {
			for _, l := range wrap(s, min(w, readWidth)-4) {
				lines = append(lines, "  "+l)
			}
		}
		return lines
	})
}
