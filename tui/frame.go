package tui

import (
	"fmt"
	"strings"

	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// The smallest window that shows a usable bench.
const (
	minWidth  = 60
	minHeight = 16
)

const (
	headLines = 5  // title, three lines of column heads, rule
	footLines = 4  // totals, two lines of detail, keys
	leastRows = 5  // of the bench above an open screen, or none
	tall      = 30 // from this height on the status has a line of its own
)

// frame is what surrounds the body, made once a message and joined by View.
type frame struct {
	title, rule, totals, keys string
	panel                     []string // its rule with the title, and its lines
	heads                     [3]string
	detail                    [2]string
}

func (m *Model) tooSmall() bool { return m.width < minWidth || m.height < minHeight }

// layOut shares the lines between head and foot out between the bench and the
// screen that is open over it. The bench gets none where few rows would fit.
func (m *Model) layOut() {
	s := m.onTop()
	if s == nil {
		m.body, m.panel = m.height-headLines-footLines, 0
		if m.height >= tall {
			m.body--
		}
		m.body = max(m.body, 1)
		return
	}
	m.body, m.panel = 0, max(m.height-headLines-2, 1) // status and keys below
	if rows := m.panel - 1 - s.Height(m.width, m.panel); rows >= leastRows {
		m.body, m.panel = rows, m.panel-rows-1
	}
}

// refresh brings everything that View joins up to date with the state. It is
// called once after each message.
func (m *Model) refresh() {
	if m.tooSmall() {
		return
	}
	if m.grid == nil || !m.grid.Fits(m.theme, m.width) {
		m.grid = bench.NewGrid(m.table, m.theme, m.width)
	}
	m.layOut()
	m.settle()
	f := &m.frame
	f.title = m.titleLine()
	f.heads = m.heads()
	f.rule = m.ruleLine()
	f.totals = m.totalsLine()
	f.detail = m.detailLines()
	if s := m.onTop(); s != nil {
		f.panel = append(f.panel[:0], "")
		for _, l := range ui.Fill(s.View(m.width, m.panel), m.panel) {
			f.panel = append(f.panel, ui.Cut(l, m.width))
		}
		title := ui.Cut(ui.Plain(s.Title()), m.width-4)
		f.panel[0] = m.theme.Strong.Of("─ " + title + " " + strings.Repeat("─", m.width-3-ui.Width(title)))
	}
	f.keys = ui.Cut(" "+m.keysRow(), m.width)
}

// View joins the frame.
func (m *Model) View() string {
	if m.width == 0 || m.height == 0 { // the first frame, or a window folded away
		return ""
	}
	if m.tooSmall() {
		return m.smallView()
	}
	var b strings.Builder
	b.Grow(m.width * m.height * 2)
	line := func(s string) {
		b.WriteString(s)
		b.WriteByte('\n')
	}
	line(m.frame.title)
	for _, s := range m.frame.heads {
		line(s)
	}
	if m.body > 0 {
		line(m.frame.rule)
		m.bodyView(line)
	}
	if m.onTop() != nil {
		for _, l := range m.frame.panel {
			line(l)
		}
		line(m.statusLines(1)[0])
		b.WriteString(m.frame.keys)
		return b.String()
	}
	line(m.frame.totals)
	foot := append(m.frame.detail[:len(m.frame.detail):len(m.frame.detail)], "")
	if m.height < tall {
		foot = foot[:len(m.frame.detail)]
	}
	// The status stands on its own line or over the detail, until the next key.
	if status := m.statusLines(len(foot)); m.status != "" {
		foot = append(foot[:len(foot)-len(status)], status...)
	}
	for _, s := range foot {
		line(s)
	}
	b.WriteString(m.frame.keys)
	return b.String()
}

func (m *Model) bodyView(line func(string)) {
	g, n := m.grid, m.body
	columns := g.Fit(m.first)
	for r := m.top; r < m.top+n; r++ {
		switch {
		case r >= len(g.Rows):
			line(m.emptyLine(r))
		case g.Rows[r].Line == m.row && len(g.Columns) > 0:
			line(m.clip(g.Draw(r, m.first, columns, m.col)))
		default:
			line(m.clip(g.Row(r, m.first, columns)))
		}
	}
}

// clip cuts a row where even one pin beside the baseline is too wide.
func (m *Model) clip(s string) string {
	if m.first < len(m.grid.Columns) && m.grid.Room() < m.grid.Columns[m.first].Width {
		return ui.Cut(s, m.width)
	}
	return s
}

func (m *Model) emptyLine(r int) string {
	if r != 1 || len(m.grid.Rows) > 0 {
		return ""
	}
	if len(m.now().Bench.Pins) == 0 {
		return m.theme.Dim.Of(ui.Cut(" The bench is empty. Press / and type part of a designation to pin a material.", m.width))
	}
	return m.theme.Dim.Of(ui.Cut(" The filter hides every row. Press f for the next filter.", m.width))
}

func (m *Model) smallView() string {
	text := fmt.Sprintf("Alongside needs a window of %d×%d or more; this one is %d×%d.", minWidth, minHeight, m.width, m.height)
	lines := ui.Wrap(text, m.width)
	return strings.Join(lines[:min(len(lines), m.height)], "\n")
}

func (m *Model) heads() (lines [3]string) {
	g, t := m.grid, m.theme
	for i, label := range [3]string{"alloy", "temper", "process"} {
		var b strings.Builder
		b.WriteString(t.Dim.Of(" " + ui.Pad(label, g.Labels.Width-1)))
		m.eachColumn(func(at int, c *bench.Column) {
			h := &m.table.Heads[c.Pin]
			text := [3]string{h.Alloy, h.Temper, bench.ProcessWords(h.Process)}[i]
			if text == "" {
				text = "–"
			}
			ink, mark := t.Text, ui.Blanks(g.Gap)
			switch {
			case at == m.col && i == 0:
				ink = t.Heading
				if t.Plain {
					mark = ui.Blanks(g.Gap-1) + ">"
				}
			case at == 0:
				ink = t.Strong
			}
			text = ui.Cut(ui.Plain(text), c.Width-g.Gap)
			b.WriteString(mark + ink.Of(text) + ui.Blanks(c.Width-g.Gap-ui.Width(text)))
		})
		lines[i] = m.clip(b.String())
	}
	return lines
}

// eachColumn calls f for the columns on screen, the baseline first.
func (m *Model) eachColumn(f func(at int, c *bench.Column)) {
	g := m.grid
	if len(g.Columns) == 0 {
		return
	}
	f(0, &g.Columns[0])
	for at := m.first; at < m.first+g.Fit(m.first); at++ {
		f(at, &g.Columns[at])
	}
}

// ruleLine parts head and body. It names the baseline and says how much is
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
	g := m.grid
	if shown := m.body; len(g.Rows) > shown {
		put(1, fmt.Sprintf(" rows %d–%d of %d ", m.top+1, min(m.top+shown, len(g.Rows)), len(g.Rows)))
	}
	if len(g.Columns) > 0 {
		put(g.Labels.Width+g.Gap-1, " baseline ")
		if left := m.first - 1; left > 0 {
			put(g.Labels.Width+g.Columns[0].Width, fmt.Sprintf(" ‹ %d more ", left))
		}
		if right := len(g.Columns) - m.first - g.Fit(m.first); right > 0 {
			s := fmt.Sprintf(" %d more › ", right)
			put(m.width-1-len([]rune(s)), s)
		}
	}
	return m.theme.Dim.Of(string(line))
}

func (m *Model) totalsLine() string {
	g := m.grid
	var b strings.Builder
	b.WriteString(m.theme.Dim.Of(" " + ui.Pad("totals", g.Labels.Width-1)))
	m.eachColumn(func(at int, c *bench.Column) {
		text := bench.TotalsOf(&m.table.Heads[c.Pin])
		b.WriteString(ui.Blanks(g.Gap) + bench.Counts(m.theme, text) + ui.Blanks(c.Width-g.Gap-ui.Width(text)))
	})
	return m.clip(b.String())
}

// detailLines put the cell under the cursor in words.
func (m *Model) detailLines() (lines [2]string) {
	pin, property := m.cursorPin(), m.cursorProperty()
	if pin == nil || len(m.table.Lines) == 0 {
		return lines
	}
	if l := &m.table.Lines[m.row]; !l.OfProperty() {
		lines[0] = " " + ui.Cut(ui.Plain(l.Name+", "+pin.Name()), m.width-1)
		lines[1] = m.theme.Dim.Of(" " + ui.Cut(ui.Plain(l.Cells[m.grid.Columns[m.col].Pin].Why), m.width-1))
		return lines
	}
	for i := range m.comparison.Rows {
		if row := &m.comparison.Rows[i]; row.Property == property {
			d := report.NewDetail(m.comparison, row, m.grid.Columns[m.col].Pin)
			lines[0] = " " + ui.Cut(ui.Plain(d.What), m.width-1)
			lines[1] = m.theme.Dim.Of(" " + ui.Cut(ui.Plain(d.Verdict), m.width-1))
		}
	}
	return lines
}

// statusLines is the status in one or two lines; the second is cut.
func (m *Model) statusLines(most int) []string {
	lines := ui.Wrap(m.status, m.width-1)
	if most = min(most, 2); len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], ui.Cut(rest, m.width-1))
	}
	ink := m.theme.Good
	if m.trouble {
		ink = m.theme.Bad
	}
	for i, l := range lines {
		lines[i] = ink.Of(" " + l)
	}
	return lines
}
