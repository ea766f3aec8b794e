package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
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
		for at := range m.pins() {
			p.cards = append(p.cards, book.Card(m.pinAt(at)))
			if p.size != nil {
				p.tolerances = append(p.tolerances, book.Tolerance(m.pinAt(at), *p.size))
			}
		}
		m.processes = p
	}
	return m.processes
}

// processPanel sets the process cards of the pins side by side, the baseline
// first.
type processPanel struct {
	panel
	processView
}

func newProcess(m *Model) screen {
	if m.foundry() == nil {
		m.warn("there is nothing on file about processes here")
		return nil
	}
	return &processPanel{panel: panel{m: m, digit: "5"}}
}

func (p *processPanel) Title() string {
	s := "Process: tolerances, walls, draft, finish, treatment"
	if all, n := len(p.m.pins()), len(p.columns); n < all && n > 0 {
		s += fmt.Sprintf(" · %d of %d pins", n, all)
	}
	return s
}

func (p *processPanel) Keys() ui.Keys {
	m := p.m
	bench := m.keys("s", "m", "u", "ctrl+r")
	if len(m.pins()) == 0 {
		return bench
	}
	return slices.Concat(ui.Keys{
		ui.On("i + e", "size", "a size whose tolerance is shown", func() { m.open(newTolerance(m, p)) }),
		ui.On("enter o", "source", "every statement behind this cell, with its source", func() { m.open(p.source()) }),
		ui.On("t", "heat treat", "heat treatment of this pin", func() {
			m.open(newCardPages(m, "", report.NewHeatCard(m.foundry().HeatTreat(m.cursorPin()))))
		}),
		ui.On("d", "designation", "what its designation says", func() {
			m.open(newCardPages(m, "", report.NewDesignationCard(m.cursorPin(), m.foundry().Designation(m.cursorPin()))))
		}),
		ui.On("n", "note", "what the drawing and the order of this pin must say", func() { m.open(newDrawing(m)) }),
	}, m.pinKeys(false), ui.Keys{
		ui.Send("y", "copy", "copy the cards of all pins", func() tea.Cmd { return m.copyProcess(m.pins(), "process cards") }),
		ui.Send("Y", "", "copy the card of this pin", func() tea.Cmd {
			return m.copyProcess([]*props.Material{m.cursorPin()}, "process card of "+m.cursorPin().Name())
		}),
	}, bench, p.list.Keys())
}

func (m *Model) copyProcess(pins []*props.Material, what string) tea.Cmd {
	return m.copyDoc(report.ProcessDoc(m.foundry(), pins, m.processCards().size, m.now().Bench.System), what)
}

// newDrawing is the note for the drawing and the order of the pin under the cursor.
func newDrawing(m *Model) screen {
	pin, base, now := m.cursorPin(), m.baseline(), m.now()
	if pin == base {
		base = nil
	}
	d := report.Drawing{Book: m.foundry(), Pin: pin, Given: m.given(), Named: m.designated}
	if m.o.Watch != nil {
		m.rules = m.o.Watch()
		d.Cautions = m.rules.Evaluate(now.Bench, base, pin, d.Given, now.Aside)
	}
	return newDocPages(m, "Drawing note, "+pin.Name(), report.DrawingDoc(d), "drawing note of "+pin.Name())
}

// designated is the material that a designation names, nil for none or several.
func (m *Model) designated(designation string) *props.Material {
	found, _ := m.o.Catalog.Named(designation)
	return found
}

// Click goes to the pin of its column too.
func (p *processPanel) Click(x, y int) bool {
	if at := (x - p.label) / max(p.width, 1); x >= p.label && at < len(p.columns) && p.columns[at] != p.m.col {
		p.m.goToPin(p.columns[at])
		p.list.Click(y)
		return false
	}
	return p.list.Click(y)
}

// source shows every statement behind the cell under the cursor.
func (p *processPanel) source() screen {
	if p.list.At >= len(p.rows) {
		return nil
	}
	m, cards, row := p.m, p.m.processCards(), &p.rows[p.list.At]
	card := cards.cards[m.col]
	switch items := card.Of(row.kind); {
	case row.tolerance:
		return newCardPages(m, "", report.NewToleranceCard(card.Material, *cards.size, cards.tolerances[m.col], m.now().Bench.System))
	case len(items) > 0:
		return newCardPages(m, "", report.NewItemsCard(card.Material, row.kind.String(), items))
	}
	m.warn(strings.ToLower(row.kind.String()) + ", " + card.Material.Name() + ": " + ui.Or(card.Why, "nothing on file"))
	return nil
}

// newTolerance asks for the dimension whose tolerance the panel shows.
func newTolerance(m *Model, p *processPanel) screen {
	return newPrompt(m, "Tolerance of a size",
		"One dimension of the casting, such as 4 in or 100 mm. Every process then shows what is published for it: by ISO grade, in the trade's first-inch form, and the stock for machining. Empty: none.",
		m.now().Part.Dimension, func(s string) error {
			p.list = ui.List{}
			return m.setPart(part.FieldDimension, s)
		})
}

func (p *processPanel) View(w, h int) []string {
	if len(p.m.pins()) == 0 {
		return []string{" The bench is empty."}
	}
	p.lay(p.m, w)
	return p.list.Draw(ui.Listing{
		Head: []string{p.heads()}, Items: len(p.rows), Lines: p.lines,
		Foot: func() []string {
			return []string{p.m.theme.Dim.Of(ui.Cut(" "+practiceSign+" common practice, no source   ' from memory, not read   +2 more on file: enter", w))}
		},
	}, h)
}

func (p *processPanel) heads() string {
	t := p.m.theme
	s := ui.Blanks(p.label)
	for _, at := range p.columns {
		name, ink := ui.Plain(p.m.pinAt(at).Name()), t.Strong
		if at == p.m.col {
			ink = t.Heading
			if t.Plain {
				name = ">" + name
			}
		}
		name = ui.Cut(name, p.width-2)
		s += ink.Of(name) + ui.Blanks(p.width-ui.Width(name))
	}
	return s
}

// lines sets the cells of a row side by side.
func (p *processPanel) lines(row int, here bool) []string {
	t, r := p.m.theme, &p.rows[row]
	var lines []string
	for k := range r.height() {
		mark, text := " ", ""
		if k < len(r.label) {
			text = r.label[k]
		}
		label := t.Dim.Of(ui.Pad(text, p.label-2))
		if here {
			label = t.Cursor.Of(text) + ui.Blanks(p.label-2-ui.Width(text))
			if t.Plain && k == 0 {
				mark = ">"
			}
		}
		s := mark + label + " "
		for i, c := range r.cells {
			text, ink := "", t.Text
			if k < len(c) {
				text = c[k]
			}
			if here && p.columns[i] == p.m.col {
				ink = t.Strong
			}
			s += ink.Of(ui.Pad(text, p.width))
		}
		lines = append(lines, s)
	}
	return lines
}
