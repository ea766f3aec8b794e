package tui

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/report"
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
	heads                     [3]string
	detail                    [2]string
}

func (m *Model) tooSmall() bool { return m.width < minWidth || m.height < minHeight }

// body is how many rows of the bench are in sight between head and foot, or
// between head and an open screen.
func (m *Model) body() int {
	if s := m.onTop(); s != nil {
		most := max(m.height-headLines-2, 1) // status and keys below
		if rows := most - 1 - s.Height(most); rows >= leastRows {
			return rows
		}
		return 0
	}
	n := m.height - headLines - footLines
	if m.height >= tall {
		n--
	}
	return max(n, 1)
}

// panel is the room of the screen that is open over the bench.
func (m *Model) panel() (w, h int) {
	h = m.height - headLines - 2
	if rows := m.body(); rows > 0 {
		h -= rows + 1
	}
	return m.width, max(h, 1)
}

// panelTop is the window line on which that screen begins.
func (m *Model) panelTop() int {
	_, h := m.panel()
	return m.height - 2 - h
}

// refresh brings everything that View joins up to date with the state. It is
// called once after each message.
func (m *Model) refresh() {
	if m.tooSmall() {
		return
	}
	if m.grid == nil || m.grid.width != m.width || m.grid.theme != m.theme {
		m.grid = newGrid(m.table, m.theme, m.width)
	}
	m.settle()
	m.enable()
	f := &m.frame
	f.title = m.titleLine()
	f.heads = m.heads()
	f.rule = m.ruleLine()
	f.totals = m.totalsLine()
	f.detail = m.detailLines()
	m.help.Width = m.width - 2
	f.keys = cut(" "+m.help.ShortHelpView(m.shortHelp()), m.width)
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
	s := m.onTop()
	if s == nil || m.body() > 0 {
		line(m.frame.rule)
		m.bodyView(line)
	}
	if s != nil {
		w, h := m.panel()
		title := cut(plain(s.Title()), w-4)
		line(m.theme.strong.of("─ " + title + " " + strings.Repeat("─", w-3-width(title))))
		for _, l := range fill(s.View(), h) {
			line(cut(l, w))
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

func fill(s string, h int) []string {
	lines := strings.Split(s, "\n")
	for len(lines) < h {
		lines = append(lines, "")
	}
	return lines[:h]
}

func (m *Model) bodyView(line func(string)) {
	g, n := m.grid, m.body()
	columns := g.fit(m.first)
	for r := m.top; r < m.top+n; r++ {
		switch {
		case r >= len(g.rows):
			line(m.emptyLine(r))
		case g.rows[r].line == m.row && len(g.columns) > 0:
			line(m.clip(g.draw(r, m.first, columns, m.col)))
		default:
			line(m.clip(g.row(r, m.first, columns)))
		}
	}
}

// clip cuts a row where even one pin beside the baseline is too wide.
func (m *Model) clip(s string) string {
	if m.first < len(m.grid.columns) && m.grid.room() < m.grid.columns[m.first].width {
		return cut(s, m.width)
	}
	return s
}

func (m *Model) emptyLine(r int) string {
	if r != 1 || len(m.grid.rows) > 0 {
		return ""
	}
	if len(m.bench.Pins) == 0 {
		return m.theme.dim.of(cut(" The bench is empty. Press / and type part of a designation to pin a material.", m.width))
	}
	return m.theme.dim.of(cut(" The filter hides every row. Press f for the next filter.", m.width))
}

func (m *Model) smallView() string {
	text := fmt.Sprintf("Alongside needs a window of %d×%d or more; this one is %d×%d.", minWidth, minHeight, m.width, m.height)
	lines := wrap(text, m.width)
	return strings.Join(lines[:min(len(lines), m.height)], "\n")
}

func (m *Model) heads() (lines [3]string) {
	g, t := m.grid, m.theme
	for i, label := range [3]string{"alloy", "temper", "process"} {
		var b strings.Builder
		b.WriteString(t.dim.of(" " + pad(label, g.labels.width-1)))
		m.eachColumn(func(at int, c *column) {
			h := &m.table.Heads[c.pin]
			text := [3]string{h.Alloy, h.Temper, processWords(h.Process)}[i]
			if text == "" {
				text = "–"
			}
			ink, mark := t.text, blanks(g.gap)
			switch {
			case at == m.col && i == 0:
				ink = t.picked
				if t.plain {
					mark = blanks(g.gap-1) + ">"
				}
			case at == 0:
				ink = t.base
			}
			text = cut(plain(text), c.width-g.gap)
			b.WriteString(mark + ink.of(text) + blanks(c.width-g.gap-width(text)))
		})
		lines[i] = m.clip(b.String())
	}
	return lines
}

// eachColumn calls f for the columns on screen, the baseline first.
func (m *Model) eachColumn(f func(at int, c *column)) {
	g := m.grid
	if len(g.columns) == 0 {
		return
	}
	f(0, &g.columns[0])
	for at := m.first; at < m.first+g.fit(m.first); at++ {
		f(at, &g.columns[at])
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
	if shown := m.body(); len(g.rows) > shown {
		put(1, fmt.Sprintf(" rows %d–%d of %d ", m.top+1, min(m.top+shown, len(g.rows)), len(g.rows)))
	}
	if len(g.columns) > 0 {
		put(g.labels.width+g.gap-1, " baseline ")
		if left := m.first - 1; left > 0 {
			put(g.labels.width+g.columns[0].width, fmt.Sprintf(" ‹ %d more ", left))
		}
		if right := len(g.columns) - m.first - g.fit(m.first); right > 0 {
			s := fmt.Sprintf(" %d more › ", right)
			put(m.width-1-len([]rune(s)), s)
		}
	}
	return m.theme.dim.of(string(line))
}

func (m *Model) totalsLine() string {
	g := m.grid
	var b strings.Builder
	b.WriteString(m.theme.dim.of(" " + pad("totals", g.labels.width-1)))
	m.eachColumn(func(at int, c *column) {
		text := totalsOf(&m.table.Heads[c.pin])
		b.WriteString(blanks(g.gap) + m.theme.counts(text) + blanks(c.width-g.gap-width(text)))
	})
	return m.clip(b.String())
}

// detailLines put the cell under the cursor in words.
func (m *Model) detailLines() (lines [2]string) {
	pin, property := m.cursorPin(), m.cursorProperty()
	if pin == nil || len(m.table.Lines) == 0 {
		return lines
	}
	if l := &m.table.Lines[m.row]; l.Group >= props.Needs {
		lines[0] = " " + cut(plain(l.Name+", "+pin.Name()), m.width-1)
		lines[1] = m.theme.dim.of(" " + cut(plain(l.Cells[m.grid.columns[m.col].pin].Why), m.width-1))
		return lines
	}
	for i := range m.comparison.Rows {
		if row := &m.comparison.Rows[i]; row.Property == property {
			d := report.NewDetail(m.comparison, row, m.grid.columns[m.col].pin)
			lines[0] = " " + cut(plain(d.What), m.width-1)
			lines[1] = m.theme.dim.of(" " + cut(plain(d.Verdict), m.width-1))
		}
	}
	return lines
}

// statusLines is the status in one or two lines; the second is cut.
func (m *Model) statusLines(most int) []string {
	lines := wrap(m.status, m.width-1)
	if most = min(most, 2); len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], cut(rest, m.width-1))
	}
	ink := m.theme.good
	if m.trouble {
		ink = m.theme.bad
	}
	for i, l := range lines {
		lines[i] = ink.of(" " + l)
	}
	return lines
}
