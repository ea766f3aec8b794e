package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// The smallest window that shows a usable bench.
const (
	minWidth  = 60
	minHeight = 16
)

const (
	headLines = 6  // panels, title, three lines of column heads, rule
	footLines = 4  // totals, two lines of detail, keys
	leastRows = 5  // of the bench above an open screen, or none
	tall      = 30 // from this height on the status has a line of its own
)

func (m *Model) tooSmall() bool { return m.width < minWidth || m.height < minHeight }

// View is the frame as the last message left it.
func (m *Model) View() string { return m.frame }

// refresh draws the frame. It is called once after each message.
func (m *Model) refresh() {
	switch {
	case m.width == 0 || m.height == 0: // the first frame, or a window folded away
		m.frame = ""
		return
	case m.tooSmall():
		text := fmt.Sprintf("Alongside needs a window of %d×%d or more; this one is %d×%d.", minWidth, minHeight, m.width, m.height)
		lines := ui.Wrap(text, m.width)
		m.frame = strings.Join(lines[:min(len(lines), m.height)], "\n")
		return
	}
	if m.grid == nil || m.gridOf != m.Table || !m.grid.Fits(m.Theme, m.width) {
		m.gridOf = m.Table
		m.grid = bench.NewGrid(bench.New(m.Table), m.Theme, m.width)
	}
	m.layOut()
	m.Col = ui.Clamp(m.Col, 0, len(m.grid.Columns)-1)
	m.First = m.grid.Scroll(m.First, m.Col)
	rows := m.rowLines()
	lines := append([]string{m.panelsLine(), m.titleLine()}, m.grid.Heads(m.First, m.Col)...)
	if m.body > 0 {
		lines = append(append(lines, m.ruleLine()), rows...)
	}
	if s := m.OnTop(); s != nil {
		lines = append(lines, m.panelLines(s)...)
	} else {
		lines = append(append(lines, m.grid.Totals(m.First)), m.footLines()...)
	}
	lines = append(lines, ui.Cut(" "+m.keysRow(), m.width))
	m.frame = strings.Join(lines, "\n")
}

// layOut shares the lines between head and foot out between the bench and the
// screen that is open over it. The bench gets none where few rows would fit.
func (m *Model) layOut() {
	s := m.OnTop()
	if s == nil {
		m.body, m.panel = m.height-headLines-footLines, 0
		if m.height >= tall {
			m.body--
		}
		return
	}
	m.body, m.panel = 0, max(m.height-headLines-2, 1) // status and keys below
	if rows := m.panel - 1 - s.Height(m.width, m.panel); rows >= leastRows {
		m.body, m.panel = rows, m.panel-rows-1
	}
}

// rowLines is the part of the table in sight.
func (m *Model) rowLines() []string {
	tall := func(i int) int {
		if i == 0 || m.Table.Lines[i].Heading() != m.Table.Lines[i-1].Heading() {
			return 2
		}
		return 1
	}
	listing := ui.Listing{Items: len(m.Table.Lines), Tall: tall, Lines: func(i int, here bool) []string {
		cursor := -1
		if here && len(m.grid.Columns) > 0 {
			cursor = m.Col
		}
		row := m.grid.Row(i, m.First, cursor)
		if tall(i) > 1 {
			l := &m.Table.Lines[i]
			heading := " " + m.Theme.Heading.Of(l.Heading())
			if l.Need != nil {
				heading += m.Theme.Dim.Of("  + inside the limit, − outside")
			}
			return []string{heading, row}
		}
		return []string{row}
	}}
	switch {
	case m.body == 0: // as it was, for the search and the cursor
		m.Rows.At = ui.Clamp(m.Rows.At, 0, listing.Items-1)
		return nil
	case len(m.Pins()) == 0:
		listing.Head = append([]string{""}, m.Theme.Dim.Wrap("The bench is empty. Press "+m.Label("/")+" and type part of a designation to pin a material.", m.width, 1)...)
	case listing.Items == 0:
		listing.Head = append([]string{""}, m.Theme.Dim.Wrap("The filter hides every row. Press "+m.Label("f")+" for the next filter.", m.width, 1)...)
	}
	return ui.Fill(m.Rows.Draw(listing, m.body), m.body)
}

// ruleLine separates head and body. It names the baseline and says how much is
// off the screen.
func (m *Model) ruleLine() string {
	line := []rune(strings.Repeat("─", m.width))
	put := func(at int, s string) {
		for i, r := range []rune(s) {
			if at+i >= 0 && at+i < len(line) {
				line[at+i] = r
			}
		}
	}
	g, n := m.grid, len(m.Table.Lines)
	if first, end := m.Rows.InSight(); end-first < n {
		put(1, fmt.Sprintf(" rows %d–%d of %d ", first+1, end, n))
	}
	if len(g.Columns) > 0 {
		put(g.Labels.Width+g.Gap-1, " baseline ")
		if left := m.First - 1; left > 0 {
			put(g.Labels.Width+g.Columns[0].Width, fmt.Sprintf(" ‹ %d more ", left))
		}
		if right := len(g.Columns) - m.First - g.Fit(m.First); right > 0 {
			s := fmt.Sprintf(" %d more › ", right)
			put(m.width-1-len([]rune(s)), s)
		}
	}
	return m.Theme.Dim.Of(string(line))
}

// panelLines is the open screen under its title, and the status below.
func (m *Model) panelLines(s desk.Screen) []string {
	view := ui.Fill(s.View(m.width, m.panel), m.panel)
	title := ui.Cut(ui.Plain(s.Title()), m.width-4)
	lines := []string{m.Theme.Strong.Of("─ " + title + " " + strings.Repeat("─", m.width-3-ui.Width(title)))}
	for _, l := range view {
		lines = append(lines, ui.Cut(l, m.width))
	}
	return append(lines, m.statusLines(1)[0])
}

// footLines put the cell under the cursor in words. The status stands on its own
// line or over them, until the next key.
func (m *Model) footLines() []string {
	foot := make([]string, m.height-headLines-m.body-footLines+2)
	what, more := m.detail()
	foot[0] = " " + ui.Cut(ui.Plain(what), m.width-1)
	foot[1] = m.Theme.Dim.Of(" " + ui.Cut(ui.Plain(more), m.width-1))
	if m.Status != "" || m.search != nil {
		status := m.statusLines(len(foot))
		copy(foot[len(foot)-len(status)+1:], status)
	}
	return foot
}

// detail is the cell under the cursor in two sentences.
func (m *Model) detail() (what, more string) {
	l, at := m.CursorLine(), m.CursorIndex()
	if at < 0 || l.Cells == nil {
		return "", ""
	}
	if row := m.CursorRow(); row != nil && l.OfProperty() {
		d := report.NewDetail(m.Comparison, row, at)
		return d.What, d.Verdict
	}
	return l.Name + ", " + m.CursorPin().Name(), l.Cells[at].Why
}

// statusLines is the status in one or two lines; the second is cut.
func (m *Model) statusLines(most int) []string {
	if m.search != nil {
		return []string{m.search.line(m, m.width), ""}
	}
	ink := m.Theme.Good
	if m.Trouble {
		ink = m.Theme.Bad
	}
	return append(ui.Few(ink.Wrap(m.Status, m.width+1, 1), min(most, 2), m.width), "")
}

// panels are the commands that lead to the bench and to the panels that a digit
// opens from anywhere.
func (m *Model) panels() []*command {
	list := []*command{m.named("1")}
	for _, c := range m.commands {
		if c.opensPanel() {
			list = append(list, c)
		}
	}
	return list
}

// panelNames are the bench and these panels, with the one that is open marked.
func (m *Model) panelNames() []string {
	open := "1"
	if len(m.Screens) > 0 {
		if d := m.Screens[0].Digit(); d != "" {
			open = d
		}
	}
	var names []string
	for _, c := range m.panels() {
		name := c.Label + " " + ui.Or(c.Line, "bench")
		if c.shipped[0] == open {
			name = "[" + name + "]"
		}
		names = append(names, name)
	}
	return names
}

// panelsLine is the first line of the window.
func (m *Model) panelsLine() string {
	s := " "
	for _, name := range m.panelNames() {
		ink := m.Theme.Dim
		if name[0] == '[' {
			ink = m.Theme.Strong
		}
		s += ink.Of(name) + " "
	}
	const program = "Alongside "
	if room := m.width - ui.Width(s) - len(program); room > 0 {
		return s + ui.Blanks(room) + m.Theme.Strong.Of(program)
	}
	return ui.Cut(s, m.width)
}

// clickPanel goes to the panel whose name is at a place of the line.
func (m *Model) clickPanel(x int) tea.Cmd {
	at := 1
	for i, name := range m.panelNames() {
		if x >= at && x < at+ui.Width(name) && name[0] != '[' {
			m.CloseAll()
			m.Silence()
			return m.run(m.panels()[i])
		}
		at += ui.Width(name) + 1
	}
	return nil
}
