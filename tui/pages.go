package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/viewport"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/report"
)

// pages is a screen of text that scrolls. What it says is laid out anew when
// the width changes.
type pages struct {
	m     *Model
	title string
	lay   func(w int) []string
	view  viewport.Model
	lines []string // laid out for the width of view
}

func newPages(m *Model, title string, lay func(w int) []string) *pages {
	return &pages{m: m, title: title, lay: lay, view: viewport.New(0, 0)}
}

// Title says which part of a longer text is in sight.
func (p *pages) Title() string {
	p.fit()
	if n, h := len(p.lines), p.view.Height; n > h {
		return fmt.Sprintf("%s · lines %d–%d of %d", p.title, p.view.YOffset+1, min(p.view.YOffset+h, n), n)
	}
	return p.title
}

func (p *pages) Typing() bool { return false }

func (p *pages) Keys() []key.Binding {
	return []key.Binding{
		escape,
		key.NewBinding(key.WithKeys("up"), key.WithHelp("↑↓ pgup pgdn", "scroll")),
		key.NewBinding(key.WithKeys("q"), key.WithHelp("q", "back")),
	}
}

func (p *pages) Height(most int) int {
	p.layOut()
	return min(len(p.lines), most)
}

func (p *pages) layOut() {
	if p.lines == nil || p.view.Width != p.m.width {
		p.view.Width = p.m.width
		p.lines = p.lay(p.m.width)
		p.view.SetContent(strings.Join(p.lines, "\n"))
	}
}

func (p *pages) fit() {
	p.layOut()
	_, p.view.Height = p.m.panel()
	p.view.SetYOffset(p.view.YOffset)
}

func (p *pages) Update(msg tea.Msg) tea.Cmd {
	p.fit()
	if k, ok := msg.(tea.KeyMsg); ok {
		switch k.String() {
		case "g", "home":
			p.view.GotoTop()
			return nil
		case "G", "end":
			p.view.GotoBottom()
			return nil
		}
	}
	p.view, _ = p.view.Update(msg)
	return nil
}

func (p *pages) View() string {
	p.fit()
	return p.view.View()
}

// newCard shows where the figure under the cursor comes from; on the row of a
// need the one it was judged on, on a merit those it is made of.
func newCard(m *Model) screen {
	pin, property := m.cursorPin(), m.cursorProperty()
	if pin == nil || m.row >= len(m.table.Lines) {
		return nil
	}
	var card *report.Card
	if n := m.cursorNeed(); n != nil {
		card = report.NewNeedCard(pin, n)
	} else if d := m.cursorDuty(); d != nil {
		card = report.NewMeritCard(&m.bench, pin, d)
	} else {
		card = report.NewCard(&m.bench, pin, property)
	}
	return newPages(m, "Source: "+plain(card.Title), func(w int) []string { return cardLines(m.theme, card, w) })
}

const (
	cardLabel = 14  // width of the labels of a card
	readWidth = 110 // longer lines are hard to read
)

func cardLines(t *theme, c *report.Card, w int) []string {
	w = min(w, readWidth)
	var lines []string
	for i, s := range c.Sections {
		if i > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, " "+t.group.of(s.Title))
		for _, item := range s.Items {
			lines = append(lines, hanging(t, item.Label, item.Text, w)...)
		}
	}
	return lines
}

// hanging sets a text beside its label, wrapped under itself.
func hanging(t *theme, label, text string, w int) []string {
	indent := 3
	if label != "" {
		indent = max(cardLabel, width(label)+2) + 2
	}
	var lines []string
	for i, l := range wrap(text, w-indent-1) {
		if i == 0 && label != "" {
			lines = append(lines, "  "+t.dim.of(pad(plain(label), indent-2))+l)
		} else {
			lines = append(lines, blanks(indent)+l)
		}
	}
	return lines
}

// newLegend explains the signs of the bench.
func newLegend(m *Model) screen {
	return newPages(m, "Signs on the bench", func(w int) []string {
		t := m.theme
		var lines []string
		for _, l := range append(report.Legend(), otherSign+" set against another figure of the baseline than the one shown", "none: the metal has no such property",
			"on a need   ✓ met   ✗ not met   ≈ not met in the worst case   – no figure to judge by") {
			for _, part := range strings.Split(strings.ReplaceAll(l, "; ", "   "), "   ") {
				lines = append(lines, wrap("  "+part, w)...)
			}
		}
		lines = append(lines, "")
		for _, l := range []string{
			"A verdict compares the pin with the baseline, like with like: same basis, same test conditions. Where they differ the cell says ≠ and counts in no total.",
			"A range is compared as a range; a single figure is known to half of its last digit. The delta is between the middles; the line below the table has the worst and the best case.",
			report.Caution,
		} {
			for _, s := range wrap(l, min(w, readWidth)-4) {
				lines = append(lines, "  "+t.dim.of(s))
			}
			lines = append(lines, "")
		}
		return lines
	})
}

// newHelp lists every key by group.
func newHelp(m *Model) screen {
	return newPages(m, helpTitle, func(w int) []string { return helpLines(m.theme, m.commands, m.o.Version, w) })
}

const (
	helpTitle    = "Keys"
	helpKeyWidth = 11
)

func helpLines(t *theme, commands []*command, version string, w int) []string {
	var blocks [][]string
	for _, group := range []string{pinKeys, viewKeys, needKeys, partKeys, openKeys, moveKeys, progKeys} {
		block := []string{" " + t.group.of(group)}
		for _, c := range commands {
			if c.group == group {
				block = append(block, "  "+t.strong.of(pad(c.shown, helpKeyWidth))+" "+c.words)
			}
		}
		blocks = append(blocks, append(block, ""))
	}
	columns := clamp(w/60, 1, 3)
	lines := beside(blocks, columns, w/columns)
	lines = append(lines,
		t.dim.of(cut("  Paste ids or designations, one a line, to pin them all. Click a cell to go to it, click it again", w)),
		t.dim.of(cut("  for its source; the wheel scrolls; hold shift to select text as usual.", w)))
	if version != "" {
		lines = append(lines, "", t.dim.of(cut("  Alongside "+version, w)))
	}
	return lines
}

// beside spreads blocks over columns of equal width, filling each before the
// next.
func beside(blocks [][]string, columns, w int) []string {
	total := 0
	for _, b := range blocks {
		total += len(b)
	}
	var cols [][]string
	var col []string
	for _, b := range blocks {
		if len(col) > 0 && len(col)+len(b) > (total+columns-1)/columns+4 && len(cols) < columns-1 {
			cols, col = append(cols, col), nil
		}
		col = append(col, b...)
	}
	cols = append(cols, col)
	var lines []string
	for i := 0; ; i++ {
		s, any := "", false
		for _, c := range cols {
			text := ""
			if i < len(c) {
				text, any = c[i], true
			}
			s += pad(text, w)
		}
		if !any {
			return lines
		}
		lines = append(lines, strings.TrimRight(s, " "))
	}
}
