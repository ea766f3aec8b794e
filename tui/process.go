package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/foundry"
	"alongside/props/part"
	"alongside/props/report"
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
			p.cards = append(p.cards, book.Card(m.bench.Pins[i]))
			if p.size != nil {
				p.tolerances = append(p.tolerances, book.Tolerance(m.bench.Pins[i], *p.size))
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
	at    int // row
	top   int // lines of the rows above the ones in sight
	first int // pins left of the ones that scroll

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
	if all, n := len(p.m.bench.Pins), len(p.laid().columns); n < all && n > 0 {
		s += fmt.Sprintf(" · %d of %d pins", n, all)
	}
	return s
}

func (p *processPanel) Typing() bool        { return false }
func (p *processPanel) Height(most int) int { return most }

func (p *processPanel) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{
		b("/", "size"), b("enter", "source"), b("t", "heat treat"), b("d", "designation"), b("←→", "pin"), b("y", "copy"), escape, b("s", "units"),
	}
}

func (p *processPanel) Update(msg tea.Msg) tea.Cmd { return p.m.list(p, msg) }

func (p *processPanel) some() bool { return len(p.m.bench.Pins) > 0 }
func (p *processPanel) page() int  { return 3 }

func (p *processPanel) key(k string) tea.Cmd {
	m := p.m
	switch k {
	case "left", "h":
		m.moveCol(-1)
	case "right", "l":
		m.moveCol(1)
	case "tab":
		m.nextPin(1)
	case "shift+tab":
		m.nextPin(-1)
	case "/", "i", "+":
		m.open(newTolerance(m, p))
	case "enter", "o":
		m.open(p.source())
	case "t":
		card := report.NewHeatCard(m.foundry().HeatTreat(m.cursorPin()))
		m.open(newPages(m, plain(card.Title), func(w int) []string { return cardLines(m.theme, card, w) }))
	case "d":
		card := report.NewDesignationCard(m.cursorPin(), m.foundry().Designation(m.cursorPin()))
		m.open(newPages(m, plain(card.Title), func(w int) []string { return cardLines(m.theme, card, w) }))
	case "y":
		return m.copyProcess(m.bench.Pins, "process cards")
	case "Y":
		return m.copyProcess([]*props.Material{m.cursorPin()}, "process card of "+m.cursorPin().Name())
	}
	return nil
}

func (m *Model) copyProcess(pins []*props.Material, what string) tea.Cmd {
	return m.copyDoc(report.ProcessDoc(m.foundry(), pins, m.processCards().size), what)
}

func (p *processPanel) move(by int) { p.at = clamp(p.at+by, 0, len(p.laid().rows)-1) }

// source shows every statement behind the cell under the cursor.
func (p *processPanel) source() screen {
	m, t := p.m, p.laid()
	if len(t.rows) == 0 {
		return nil
	}
	cards := m.processCards()
	card := cards.cards[m.col]
	row := &t.rows[p.at]
	var c *report.Card
	switch items := card.Of(row.kind); {
	case row.tolerance:
		c = report.NewToleranceCard(card.Material, *cards.size, cards.tolerances[m.col], m.bench.System)
	case len(items) > 0:
		c = report.NewItemsCard(card.Material, row.kind.String(), items)
	default:
		m.warn(strings.ToLower(row.kind.String()) + ", " + card.Material.Name() + ": " + or(card.Why, "nothing on file"))
		return nil
	}
	return newPages(m, plain(c.Title), func(w int) []string { return cardLines(m.theme, c, w) })
}

func (p *processPanel) click(x, y int) {
	t := p.laid()
	line := -p.top
	for i := range t.rows {
		n := t.rows[i].height()
		if y >= 1 && y-1 >= line && y-1 < line+n {
			p.at = i
			break
		}
		line += n
	}
	if at := (x - t.label) / max(t.width, 1); x >= t.label && at < len(t.columns) {
		p.m.goToPin(t.columns[at])
	}
}

// newTolerance asks for the dimension whose tolerance the panel shows.
func newTolerance(m *Model, p *processPanel) screen {
	return &prompt{
		m: m, title: "Tolerance of a size",
		about: "One dimension of the casting, such as 4 in or 100 mm. Every process then shows what is published for it: by ISO grade, in the trade's first-inch form, and the stock for machining. Empty: none.",
		field: newField(m.part.Dimension),
		accept: func(s string) error {
			next := m.part.Clone()
			if err := next.Set(m.o.Catalog, part.FieldDimension, s); err != nil {
				return err
			}
			m.changeCall(func(c *call.Call) { c.Part = next })
			p.at = 0
			return nil
		},
	}
}

func (p *processPanel) View() string {
	w, h := p.m.panel()
	th := p.m.theme
	if len(p.m.bench.Pins) == 0 {
		return " The bench is empty."
	}
	t := p.laid()
	rows, first := max(h-2, 1), t.above(p.at) // heads and legend aside
	p.top = clamp(p.top, t.above(p.at+1)-rows, first)
	p.top = max(min(p.top, first, t.above(len(t.rows))-rows), 0)
	lines := []string{p.heads(t)}
	at := 0
	for i := range t.rows {
		for k := range t.rows[i].height() {
			if at++; at > p.top && len(lines) <= rows {
				lines = append(lines, p.lineText(t, i, k))
			}
		}
	}
	for len(lines) <= rows {
		lines = append(lines, "")
	}
	return strings.Join(append(lines, th.dim.of(cut(" "+practiceSign+" common practice, no source   ' from memory, not read   +2 more on file: enter", w))), "\n")
}

func (p *processPanel) heads(t *processTable) string {
	th := p.m.theme
	s := " " + pad("", t.label-1)
	for _, at := range t.columns {
		name := plain(p.m.bench.Pins[p.m.order()[at]].Name())
		ink := th.strong
		if at == p.m.col {
			ink = th.picked
			if th.plain {
				name = ">" + name
			}
		}
		name = cut(name, t.width-2)
		s += ink.of(name) + blanks(t.width-width(name))
	}
	return s
}

// lineText is the k-th line of a row.
func (p *processPanel) lineText(t *processTable, row, k int) string {
	th, r, here := p.m.theme, &t.rows[row], row == p.at
	mark, text := " ", ""
	if k < len(r.label) {
		text = r.label[k]
	}
	label := th.dim.of(pad(text, t.label-2))
	if here {
		label = th.cursor.of(text) + blanks(t.label-2-width(text))
		if th.plain && k == 0 {
			mark = ">"
		}
	}
	s := mark + label + " "
	for i, c := range r.cells {
		text, ink := "", th.text
		if k < len(c) {
			text = c[k]
		}
		if here && t.columns[i] == p.m.col {
			ink = th.strong
		}
		s += ink.of(pad(text, t.width))
	}
	return s
}
