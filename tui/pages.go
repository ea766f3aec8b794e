package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// pages is a screen of text that scrolls.
type pages struct {
	panel
	title string
	text  ui.Pages
	more  ui.Keys // besides those that scroll
}

func newPages(m *Model, title string, lay func(w int) []string) *pages {
	return &pages{panel: panel{m: m}, title: title, text: ui.Pages{Lay: lay}}
}

// newCardPages shows a source card.
func newCardPages(m *Model, title string, c *report.Card) *pages {
	return newPages(m, title+ui.Plain(c.Title), func(w int) []string { return cardLines(m.theme, c, w) })
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
func (p *pages) Wheel(by int)           { p.text.Scroll(by * wheelStep) }

// newDocPages shows a document as it leaves the program, and copies it.
func newDocPages(m *Model, title string, doc *report.Doc, what string) *pages {
	p := newPages(m, title, func(w int) []string { return docLines(m.theme, doc, w) })
	p.more = ui.Keys{ui.Send("y", "copy", "copy it", func() tea.Cmd { return m.copyDoc(doc, what) })}
	return p
}

// newPicture draws the row under the cursor.
func newPicture(m *Model) screen {
	doc, err := report.PictureDoc(m.now().Bench, m.cursorProperty().String())
	if err != nil {
		m.warn(err.Error())
		return nil
	}
	return newDocPages(m, "Picture: "+m.cursorProperty().Info().Name, doc, "picture")
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

// newCard shows where the figure under the cursor comes from; on the row of a
// need the one it was judged on, on a merit those it is made of.
func newCard(m *Model) screen {
	pin, bench := m.cursorPin(), &m.now().Bench
	if pin == nil || len(m.table.Lines) == 0 {
		return nil
	}
	card := report.NewCard(bench, pin, m.cursorProperty())
	if n := m.cursorNeed(); n != nil {
		card = report.NewNeedCard(pin, n)
	} else if d := m.cursorDuty(); d != nil {
		card = report.NewMeritCard(bench, pin, d)
	}
	p := newCardPages(m, "Source: ", card)
	if row := m.cursorRow(); m.o.Check != nil && row != nil && m.cursorLine().OfProperty() && row.Cells[m.cursorIndex()].Figure != nil {
		p.more = ui.Keys{ui.On("enter", "checked", "you looked this figure up in your own copy of the source", func() { m.open(newChecked(m)) })}
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

// newLegend explains the signs of the bench.
func newLegend(m *Model) screen {
	return newPages(m, "Signs on the bench", func(w int) []string {
		t := m.theme
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

// openHelp lists every key by group, those of the panel on top first.
func (m *Model) openHelp() {
	var own ui.Keys
	purpose := about(m.onTop())
	if s := m.onTop(); s != nil {
		if p, ok := s.(*pages); ok && p.title == helpTitle {
			return
		}
		keys, ends := m.panelKeys(s)
		own = append(keys, ends...)
	}
	m.open(newPages(m, helpTitle, func(w int) []string {
		keys := helpLines(m.theme, own, m.commands, m.o.Version, w)
		if purpose == "" {
			return keys
		}
		return append(append(m.theme.Text.Wrap(purpose, min(w, ui.ReadWidth)-1, 1), ""), keys...)
	}))
}

const helpTitle = "Keys"

func helpLines(t *ui.Theme, own ui.Keys, commands []*command, version string, w int) []string {
	var blocks [][]string
	if own != nil {
		blocks = append(blocks, own.Help(t, "In this panel", ""))
	}
	var bench ui.Keys
	for _, c := range commands {
		bench = append(bench, c.Key)
	}
	for _, group := range helpGroups {
		blocks = append(blocks, bench.Help(t, group, group))
	}
	columns := ui.Clamp(w/60, 1, 3)
	lines := ui.Beside(blocks, columns, w/columns)
	lines = append(lines,
		t.Dim.Of(ui.Cut("  Paste ids or designations, one a line, to pin them all. Click a cell to go to it, click it again", w)),
		t.Dim.Of(ui.Cut("  for its source; the wheel scrolls; hold shift to select text as usual.", w)))
	if version != "" {
		lines = append(lines, "", t.Dim.Of(ui.Cut("  Alongside "+version, w)))
	}
	return lines
}
