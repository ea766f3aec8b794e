package tui

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/background"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// newlines brings the ends of pasted lines to one form: most terminals send a
// carriage return for each.
var newlines = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// Update takes a message in this order: what concerns every screen, then the
// screen on top, then the bench.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := m.take(msg)
	m.refresh()
	if save := m.Keep(); save != nil {
		cmd = tea.Batch(cmd, save)
	}
	return m, cmd
}

func (m *Model) take(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = max(msg.Width, 0), max(msg.Height, 0)
	case background.Shade:
		if msg != background.Unknown {
			m.shade = msg
			m.restyle()
		}
	case tea.ResumeMsg: // Bubble Tea brings all back but the mouse
		if !m.noMouse {
			return tea.EnableMouseCellMotion
		}
	case tea.KeyMsg:
		if msg.Paste {
			defer m.tellCut(len(string(msg.Runes)))
			msg.Runes = []rune(newlines.Replace(string(msg.Runes)))
		}
		if msg.Type == tea.KeyCtrlJ { // Enter typed while the terminal was not yet ours
			msg.Type = tea.KeyEnter
		}
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	default:
		m.Take(msg)
	}
	return nil
}

// tellCut says that a paste of so many bytes was cut.
func (m *Model) tellCut(bytes int) {
	if bytes >= background.LongestPaste-utf8.UTFMax {
		m.Warnf("the paste was too long: its first %d kB were taken", background.LongestPaste>>10)
	}
}

// isText reports whether a key is a paste or several letters that arrived in one
// message: these are text and never the name of a key.
func isText(msg tea.KeyMsg) bool {
	return msg.Type == tea.KeyRunes && (msg.Paste || len(msg.Runes) > 1)
}

// typing reports whether letters go into a field.
func (m *Model) typing() bool {
	s := m.OnTop()
	return s != nil && s.Typing() || m.search != nil
}

func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	s, c, text := m.OnTop(), m.commandOf(msg), isText(msg)
	if m.tooSmall() {
		s = nil
	}
	switch free := s == nil && m.search == nil; {
	case c != nil && c.needs == always && (free || msg.Type != tea.KeyRunes):
		return c.do(m)
	case m.tooSmall():
		return nil
	case text && !m.typing() && !msg.Paste:
		return m.oneByOne(msg)
	}
	m.Silence()
	switch {
	case m.search != nil:
		m.searchKey(msg, text)
		return nil
	case s != nil:
		return m.screenKey(s, msg, text)
	}
	return m.benchKey(c, msg)
}

// benchKey is a key on the bench.
func (m *Model) benchKey(c *command, msg tea.KeyMsg) tea.Cmd {
	switch {
	case msg.Paste:
		m.paste(string(msg.Runes))
	case c != nil:
		return m.run(c)
	default:
		m.unknown(msg)
	}
	return nil
}

// screenKey is a key in a screen: the screen's own table first, then the ways
// out of it, then what it takes as text.
func (m *Model) screenKey(s desk.Screen, msg tea.KeyMsg, text bool) tea.Cmd {
	if !text {
		if k := append(s.Keys(), m.ways(s)...).Find(msg); k != nil {
			return k.Do()
		}
	}
	if !s.Typing() && !msg.Paste {
		m.unknown(msg)
		return nil
	}
	s.Type(msg)
	return nil
}

// unknown says that a key has no meaning.
func (m *Model) unknown(msg tea.KeyMsg) {
	m.Sayf("%s does nothing here; %s lists the keys", ui.Cut(ui.Plain(msg.String()), 16), m.Label("?"))
}

// oneByOne takes letters typed so fast that they arrive as one message: outside
// a text field each is a key of its own. Where one opens a field the rest is
// text. A terminal that does not mark pastes sends one like this: the name of a
// material is pinned, and nothing in other words copies or takes a pin off.
func (m *Model) oneByOne(msg tea.KeyMsg) tea.Cmd {
	const shortest = 3 // letters that nobody types at once
	if first := msg.Runes[0]; len(msg.Runes) >= shortest && !m.tooSmall() && (unicode.IsLetter(first) || unicode.IsDigit(first)) {
		if found, _ := m.Catalog.Named(string(msg.Runes)); found != nil {
			m.paste(string(msg.Runes))
			return nil
		}
	}
	m.Burst = len(msg.Runes) >= shortest && slices.ContainsFunc(msg.Runes, func(r rune) bool { return r != msg.Runes[0] })
	defer func() { m.Burst = false }()
	var all []tea.Cmd
	for _, r := range msg.Runes {
		all = append(all, m.key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: msg.Alt}))
		m.refresh()
	}
	return tea.Batch(all...)
}

func (m *Model) mouse(msg tea.MouseMsg) tea.Cmd {
	if m.tooSmall() || msg.Action == tea.MouseActionMotion || m.grid == nil {
		return nil
	}
	s, by := m.OnTop(), 1
	switch msg.Button {
	case tea.MouseButtonWheelUp, tea.MouseButtonWheelLeft:
		by = -1
		fallthrough
	case tea.MouseButtonWheelDown, tea.MouseButtonWheelRight:
		switch sideways := msg.Shift || msg.Button == tea.MouseButtonWheelLeft || msg.Button == tea.MouseButtonWheelRight; {
		case s != nil && !sideways:
			s.Wheel(by)
		case s == nil && sideways:
			m.MoveTo(by, 0, false)
		case s == nil:
			m.Rows.Scroll(by * ui.WheelStep)
		}
	case tea.MouseButtonLeft:
		if msg.Action == tea.MouseActionPress {
			m.search = nil
			return m.click(s, msg.X, msg.Y)
		}
	}
	return nil
}

// click goes to the item, cell, row, column or panel at a place of the window.
// A click on what the cursor is on already does what Enter does.
func (m *Model) click(s desk.Screen, x, y int) tea.Cmd {
	if y == 0 {
		return m.clickPanel(x)
	}
	if s != nil {
		if y -= m.height - 2 - m.panel; y >= 0 && s.Click(x, y) {
			return m.screenKey(s, tea.KeyMsg{Type: tea.KeyEnter}, false)
		}
		return nil
	}
	return m.clickCell(x, y)
}

// clickCell is a click on the bench.
func (m *Model) clickCell(x, y int) tea.Cmd {
	col, line := -1, -1
	m.grid.Each(m.First, func(i, at int) {
		if x >= at && x < at+m.grid.Columns[i].Width {
			col = i
		}
	})
	if y >= headLines && y < headLines+m.body {
		line = m.Rows.Item(y - headLines)
	}
	switch {
	case col >= 0 && line >= 0 && col == m.Col && line == m.Rows.At:
		return m.key(tea.KeyMsg{Type: tea.KeyEnter})
	case line >= 0:
		m.Rows.At = line
	case y >= headLines:
		return nil
	}
	if col >= 0 {
		m.Col = col
	}
	return nil
}
