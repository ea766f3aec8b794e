package panel

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/foundry"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// processPanel sets the process cards of the pins side by side, the baseline
// first.
type processPanel struct {
	panel
	processView
}

// NewProcess opens the process cards.
func NewProcess(d *desk.Desk) desk.Screen {
	if d.Book() == nil {
		d.Warn("there is nothing on file about processes here")
		return nil
	}
	return &processPanel{panel: panel{desk: d, digit: "5", about: "Says what the process of each pin holds: tolerances, walls, draft, finish, heat treatment."}}
}

func (p *processPanel) Title() string {
	s := "Process: tolerances, walls, draft, finish, treatment"
	if all, n := len(p.desk.Pins()), len(p.columns); n < all && n > 0 {
		s += fmt.Sprintf(" · %d of %d pins", n, all)
	}
	return s
}

func (p *processPanel) Keys() ui.Keys {
	d := p.desk
	bench := d.BenchKeys("s", "m", "u", "ctrl+r")
	if len(d.Pins()) == 0 {
		return bench
	}
	return slices.Concat(ui.Keys{
		ui.On("i + e", "size", "a size whose tolerance is shown", func() { d.Open(newTolerance(d, p)) }),
		ui.On("enter o", "source", "every statement behind this cell, with its source", func() { d.Open(p.source()) }),
		ui.On("t", "heat treat", "heat treatment of this pin", func() {
			d.Open(newCardPages(d, "", "", report.NewHeatCard(p.page().Heat)))
		}),
		ui.On("d", "designation", "what its designation says", func() {
			d.Open(newCardPages(d, "", "", report.NewDesignationCard(d.CursorPin(), p.page().Designation)))
		}),
		ui.On("n", "note", "what the drawing and the order of this pin must say", func() { d.Open(newDrawing(d)) }),
	}, d.PinKeys(false), ui.Keys{
		ui.Send("y", "copy", "copy the cards of all pins", func() tea.Cmd { return copyProcess(d, d.ProcessPages(), "process cards") }),
		ui.Send("Y", "", "copy the card of this pin", func() tea.Cmd {
			return copyProcess(d, []*foundry.Page{p.page()}, "process card of "+d.CursorPin().Name())
		}),
	}, bench, p.list.Keys())
}

func copyProcess(d *desk.Desk, pages []*foundry.Page, what string) tea.Cmd {
	return d.CopyDoc(report.ProcessDoc(pages, d.Given().Dimension, d.Now().Bench.System), what)
}

// newDrawing is the note for the drawing and the order of the pin under the cursor.
func newDrawing(d *desk.Desk) desk.Screen {
	pin, base, now := d.CursorPin(), d.Baseline(), d.Now()
	if pin == base {
		base = nil
	}
	note := report.Drawing{Catalog: d.Catalog, Book: d.Book(), Pin: pin, Given: d.Given()}
	if d.Watch != nil {
		d.Rules = d.Watch()
		note.Cautions = d.Rules.Evaluate(now.Bench, base, pin, note.Given, now.Aside)
	}
	return newDocPages(d, "Drawing note, "+pin.Name(), report.DrawingDoc(note), "drawing note of "+pin.Name())
}

// Click goes to the pin of its column too.
func (p *processPanel) Click(x, y int) bool {
	if at := (x - p.label) / max(p.width, 1); x >= p.label && at < len(p.columns) && p.columns[at] != p.desk.Col {
		p.desk.GoToPin(p.columns[at])
		p.list.Click(y)
		return false
	}
	return p.list.Click(y)
}

// page is what is on file about the pin under the cursor.
func (p *processPanel) page() *foundry.Page { return p.desk.ProcessPages()[p.desk.Col] }

// source shows every statement behind the cell under the cursor.
func (p *processPanel) source() desk.Screen {
	if p.list.At >= len(p.rows) {
		return nil
	}
	d, card, row := p.desk, p.page(), &p.rows[p.list.At]
	switch items := card.Of(row.kind); {
	case row.tolerance:
		return newCardPages(d, "", "", report.NewToleranceCard(card.Material, *d.Given().Dimension, card.Tolerances, d.Now().Bench.System))
	case len(items) > 0:
		return newCardPages(d, "", "", report.NewItemsCard(card.Material, row.kind.String(), items))
	}
	d.Warn(strings.ToLower(row.kind.String()) + ", " + card.Material.Name() + ": " + ui.Or(card.Why, "nothing on file"))
	return nil
}

// newTolerance asks for the dimension whose tolerance the panel shows.
func newTolerance(d *desk.Desk, p *processPanel) desk.Screen {
	return newPrompt(d, "Tolerance of a size",
		"One dimension of the casting, such as 4 in or 100 mm. Every process then shows what is published for it: by ISO grade, in the trade's first-inch form, and the stock for machining. Empty: none.",
		d.Now().Part.Dimension, func(s string) error {
			p.list = ui.List{}
			return d.SetPart(part.FieldDimension, s)
		})
}

func (p *processPanel) View(w, h int) []string {
	if len(p.desk.Pins()) == 0 {
		return []string{" The bench is empty."}
	}
	p.lay(p.desk, w)
	return p.list.Draw(ui.Listing{
		Head: []string{p.heads()}, Items: len(p.rows), Lines: p.lines,
		Foot: func() []string {
			return []string{p.desk.Theme.Dim.Of(ui.Cut(" "+practiceSign+" common practice, no source   "+report.RecalledSign+"   +2 more on file: enter", w))}
		},
	}, h)
}

func (p *processPanel) heads() string {
	t := p.desk.Theme
	s := ui.Blanks(p.label)
	for _, at := range p.columns {
		name, ink := ui.Plain(p.desk.PinAt(at).Name()), t.Strong
		if at == p.desk.Col {
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
	t, r := p.desk.Theme, &p.rows[row]
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
			if here && p.columns[i] == p.desk.Col {
				ink = t.Strong
			}
			s += ink.Of(ui.Pad(text, p.width))
		}
		lines = append(lines, s)
	}
	return lines
}
