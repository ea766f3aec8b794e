package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/foundry"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/tui/ui"
	"alongside/units"
)

// processes is what is published for the process of each pin, as displayed.
type processes struct {
	cards      []*foundry.ProcessCard
	size       *units.Quantity             // whose tolerance is looked up; nil: none
	tolerances [][]foundry.ToleranceResult // at that size
}

// foundry is what is published about processes; nil where the program was
// started without it.
func (m *Model) foundry() *foundry.Book {
	if m.o.Foundry == nil {
		return nil
	}
	return m.o.Foundry()
}

func (m *Model) processCards() *processes {
	if m.processes == nil {
		p, book := &processes{size: m.given().Dimension}, m.foundry()
		for _, i := range m.order() {
			p.cards = append(p.cards, book.Card(m.now().Bench.Pins[i]))
			if p.size != nil {
				p.tolerances = append(p.tolerances, book.Tolerance(m.now().Bench.Pins[i], *p.size))
			}
		}
		m.processes = p
	}
	return m.processes
}

// processPanel sets the process cards of the pins side by side, the baseline
// first.
type processPanel struct {
	m     *Model
	list  ui.List
	first int // pins left of the ones that scroll
	w     int

	table *processTable
}

func newProcess(m *Model) screen {
	if m.foundry() == nil {
		m.warn("there is nothing on file about processes here")
		return nil
	}
	return &processPanel{m: m}
}

func (p *processPanel) Title() string {
	s := "Process: tolerances, walls, draft, finish, treatment"
	if all, n := len(p.m.now().Bench.Pins), len(p.laid().columns); n < all && n > 0 {
		s += fmt.Sprintf(" · %d of %d pins", n, all)
	}
	return s
}

func (p *processPanel) Typing() bool           { return false }
func (p *processPanel) Height(_, most int) int { return most }

func (p *processPanel) Keys() ui.Keys {
	m := p.m
	if len(m.now().Bench.Pins) == 0 {
		return m.keys("s", "m", "u", "ctrl+r")
	}
	return append(append(ui.Keys{
		ui.On("/ i +", "size", "a size whose tolerance is shown", func() { m.open(newTolerance(m, p)) }),
		ui.On("enter o", "source", "every statement behind this cell, with its source", func() { m.open(p.source()) }),
		ui.On("t", "heat treat", "heat treatment of this pin", func() {
			m.open(newCardPages(m, "", report.NewHeatCard(m.foundry().HeatTreat(m.cursorPin()))))
		}),
		ui.On("d", "designation", "what its designation says", func() {
			m.open(newCardPages(m, "", report.NewDesignationCard(m.cursorPin(), m.foundry().Designation(m.cursorPin()))))
		}),
		ui.On("left h", "pin", "another pin; also tab", func() { m.moveCol(-1) }).As("←→"),
		ui.On("right l", "", "", func() { m.moveCol(1) }),
		ui.On("tab", "", "", func() { m.nextPin(1) }),
		ui.On("shift+tab", "", "", func() { m.nextPin(-1) }),
		ui.Send("y", "copy", "copy the cards of all pins", func() tea.Cmd { return m.copyProcess(m.now().Bench.Pins, "process cards") }),
		ui.Send("Y", "", "copy the card of this pin", func() tea.Cmd {
			return m.copyProcess([]*props.Material{m.cursorPin()}, "process card of "+m.cursorPin().Name())
		}),
	}, m.keys("s", "m", "u", "ctrl+r")...), p.list.Keys()...)
}

// Update takes the mouse. A click goes to the pin of its column too.
func (p *processPanel) Update(msg tea.Msg) tea.Cmd {
	mouse, ok := msg.(tea.MouseMsg)
	if !ok || len(p.m.now().Bench.Pins) == 0 {
		return nil
	}
	act := func() tea.Cmd { p.m.open(p.source()); return nil }
	t := p.laid()
	if at := (mouse.X - t.label) / max(t.width, 1); ui.Pressed(mouse) && mouse.X >= t.label && at < len(t.columns) && t.columns[at] != p.m.col {
		p.m.goToPin(t.columns[at])
		act = func() tea.Cmd { return nil }
	}
	return p.list.Mouse(mouse, act)
}

func (m *Model) copyProcess(pins []*props.Material, what string) tea.Cmd {
	return m.copyDoc(report.ProcessDoc(m.foundry(), pins, m.processCards().size), what)
}

// source shows every statement behind the cell under the cursor.
func (p *processPanel) source() screen {
	m, t := p.m, p.laid()
	if len(t.rows) == 0 {
		return nil
	}
	cards := m.processCards()
	card := cards.cards[m.col]
	row := &t.rows[p.list.At]
	var c *report.Card
	switch items := card.Of(row.kind); {
	case row.tolerance:
		c = report.NewToleranceCard(card.Material, *cards.size, cards.tolerances[m.col], m.now().Bench.System)
	case len(items) > 0:
		c = report.NewItemsCard(card.Material, row.kind.String(), items)
	default:
		m.warn(strings.ToLower(row.kind.String()) + ", " + card.Material.Name() + ": " + ui.Or(card.Why, "nothing on file"))
		return nil
	}
	return newCardPages(m, "", c)
}

// newTolerance asks for the dimension whose tolerance the panel shows.
func newTolerance(m *Model, p *processPanel) screen {
	return &prompt{
		m: m, title: "Tolerance of a size",
		about: "One dimension of the casting, such as 4 in or 100 mm. Every process then shows what is published for it: by ISO grade, in the trade's first-inch form, and the stock for machining. Empty: none.",
		field: ui.NewField(m.now().Part.Dimension),
		accept: func(s string) error {
			next := m.now().Part.Clone()
			if err := next.Set(m.o.Catalog, part.FieldDimension, s); err != nil {
				return err
			}
			m.changeCall(func(c *call.Call) { c.Part = next })
			p.list = ui.List{}
			return nil
		},
	}
}

func (p *processPanel) View(w, h int) []string {
	p.w = w
	if len(p.m.now().Bench.Pins) == 0 {
		return []string{" The bench is empty."}
	}
	t := p.laid()
	rows := max(h-2, 1) // heads and legend aside
	p.list.Fit(len(t.rows), t.above(len(t.rows)), 1, rows, func(i int) (first, last int) { return t.above(i), t.above(i+1) - 1 })
	lines := []string{p.heads(t)}
	at := 0
	for i := range t.rows {
		for k := range t.rows[i].height() {
			if at >= p.list.Top && at < p.list.End() {
				lines = append(lines, p.lineText(t, i, k))
			}
			at++
		}
	}
	return append(ui.Fill(lines, rows+1), p.m.theme.Dim.Of(ui.Cut(" "+practiceSign+" common practice, no source   ' from memory, not read   +2 more on file: enter", w)))
}

func (p *processPanel) heads(t *processTable) string {
	th := p.m.theme
	s := " " + ui.Pad("", t.label-1)
	for _, at := range t.columns {
		name := ui.Plain(p.m.now().Bench.Pins[p.m.order()[at]].Name())
		ink := th.Strong
		if at == p.m.col {
			ink = th.Heading
			if th.Plain {
				name = ">" + name
			}
		}
		name = ui.Cut(name, t.width-2)
		s += ink.Of(name) + ui.Blanks(t.width-ui.Width(name))
	}
	return s
}

// lineText is the k-th line of a row.
func (p *processPanel) lineText(t *processTable, row, k int) string {
	th, r, here := p.m.theme, &t.rows[row], row == p.list.At
	mark, text := " ", ""
	if k < len(r.label) {
		text = r.label[k]
	}
	label := th.Dim.Of(ui.Pad(text, t.label-2))
	if here {
		label = th.Cursor.Of(text) + ui.Blanks(t.label-2-ui.Width(text))
		if th.Plain && k == 0 {
			mark = ">"
		}
	}
	s := mark + label + " "
	for i, c := range r.cells {
		text, ink := "", th.Text
		if k < len(c) {
			text = c[k]
		}
		if here && t.columns[i] == p.m.col {
			ink = th.Strong
		}
		s += ink.Of(ui.Pad(text, t.width))
	}
	return s
}
