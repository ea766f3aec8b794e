package panel

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// pages is a screen of text that scrolls.
type pages struct {
	panel
	title string
	text  ui.Pages
	more  ui.Keys // besides those that scroll
}

// NewPages opens a text that is laid out for a width.
func NewPages(d *desk.Desk, title, about string, lay func(w int) []string) desk.Screen {
	return newPages(d, title, about, lay)
}

func newPages(d *desk.Desk, title, about string, lay func(w int) []string) *pages {
	return &pages{panel: panel{desk: d, about: about}, title: title, text: ui.Pages{Lay: lay}}
}

// newCardPages shows a source card.
func newCardPages(d *desk.Desk, title, about string, c *report.Card) *pages {
	return newPages(d, title+ui.Plain(c.Title), about, func(w int) []string { return cardLines(d.Theme, c, w) })
}

// Title says which part of a longer text is in sight.
func (p *pages) Title() string {
	if part := p.text.Part(); part != "" {
		return p.title + dot + part
	}
	return p.title
}

func (p *pages) Keys() ui.Keys          { return append(slices.Clone(p.more), p.text.Keys()...) }
func (p *pages) Height(w, most int) int { return min(p.text.Height(w), most) }
func (p *pages) View(w, h int) []string { return p.text.View(w, h) }
func (p *pages) Wheel(by int)           { p.text.Scroll(by * ui.WheelStep) }

// newDocPages shows a document as it leaves the program, and copies it.
func newDocPages(d *desk.Desk, title string, doc *report.Doc, what string) *pages {
	p := newPages(d, title, "", func(w int) []string { return docLines(d.Theme, doc, w) })
	p.more = ui.Keys{ui.Send("y", "copy", "copy it", func() tea.Cmd { return d.CopyDoc(doc, what) })}
	return p
}

// NewPicture draws the row under the cursor.
func NewPicture(d *desk.Desk) desk.Screen {
	doc, err := report.PictureDoc(d.Now().Bench, d.CursorProperty().String())
	if err != nil {
		d.Warn(err.Error())
		return nil
	}
	return newDocPages(d, "Picture: "+d.CursorProperty().Info().Name, doc, "picture")
}

func docLines(t *ui.Theme, doc *report.Doc, w int) []string {
	text, err := doc.Render("text", min(w-1, report.BriefWidth))
	if err != nil {
		text = err.Error()
	}
	var lines []string
	for l := range strings.SplitSeq(strings.TrimRight(text, "\n"), "\n") {
		lines = append(lines, " "+t.Text.Of(ui.Plain(l)))
	}
	return lines
}

// NewCard shows where the figure under the cursor comes from; on the row of a
// need the one it was judged on, on a merit those it is made of.
func NewCard(d *desk.Desk) desk.Screen {
	pin, bench := d.CursorPin(), &d.Now().Bench
	if pin == nil || len(d.Table.Lines) == 0 {
		return nil
	}
	card := report.NewCard(bench, pin, d.CursorProperty())
	if n := d.CursorNeed(); n != nil {
		card = report.NewNeedCard(pin, n)
	} else if duty := d.CursorDuty(); duty != nil {
		card = report.NewMeritCard(bench, pin, duty)
	}
	p := newCardPages(d, "Source: ", "Says where the figure comes from, how it is known, and what else is on file.", card)
	if row := d.CursorRow(); d.Check != nil && row != nil && d.CursorLine().OfProperty() && row.Cells[d.CursorIndex()].Figure != nil {
		p.more = ui.Keys{ui.On("enter", "checked", "you looked this figure up in your own copy of the source", func() { d.Open(newChecked(d)) })}
	}
	return p
}

const cardLabel = 14 // width of the labels of a card

func cardLines(t *ui.Theme, c *report.Card, w int) []string {
	w = min(w, ui.ReadWidth)
	var lines []string
	for i, s := range c.Sections {
		if i > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, " "+t.Heading.Of(s.Title))
		for _, item := range s.Items {
			lines = append(lines, ui.Hanging(t, item.Label, item.Text, cardLabel, w)...)
		}
	}
	return lines
}

// NewLegend explains the signs of the bench.
func NewLegend(d *desk.Desk) desk.Screen {
	return newPages(d, "Signs on the bench", "Explains every sign that the bench can show.", func(w int) []string {
		t := d.Theme
		var lines []string
		for _, l := range append(report.Legend(), bench.OtherSign+" set against another figure of the baseline than the one shown", "none: the metal has no such property",
			"on a need   ✓ met   ✗ not met   ≈ not met in the worst case   – no figure to judge by") {
			for _, part := range strings.Split(strings.ReplaceAll(l, "; ", "   "), "   ") {
				lines = append(lines, t.Text.Wrap(part, w+1, 2)...)
			}
		}
		lines = append(lines, "")
		for _, l := range []string{
			"A verdict compares the pin with the baseline, like with like: same basis, same test conditions. Where they differ the cell says ≠ and counts in no total.",
			"A range is compared as a range; a single figure is known to half of its last digit. The delta is between the middles; the line below the table has the worst and the best case.",
			report.Caution,
		} {
			lines = append(append(lines, t.Dim.Wrap(l, min(w, ui.ReadWidth)-1, 2)...), "")
		}
		return lines
	})
}
