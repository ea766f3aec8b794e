package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/background"
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
	return m, cmd
}

func (m *Model) take(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = max(msg.Width, 0), max(msg.Height, 0)
	case background.Shade:
		if msg != background.Unknown {
			m.o.Background = msg
			m.restyle()
		}
	case rulesRead:
		m.rules = m.o.Watch()
	case copied:
		m.takeCopied(msg)
	case tea.KeyMsg:
		if msg.Paste {
			msg.Runes = []rune(newlines.Replace(string(msg.Runes)))
		}
		return m.key(msg)
	case tea.MouseMsg:
		return m.mouse(msg)
	}
	return nil
}

func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	s, c := m.onTop(), m.find(msg)
	if m.tooSmall() {
		s = nil
	}
	if c != nil && c.needs == always && (s == nil || msg.Type != tea.KeyRunes) {
		return c.do(m)
	}
	if m.tooSmall() {
		return nil
	}
	if msg.Type == tea.KeyRunes && !msg.Paste && len(msg.Runes) > 1 && (s == nil || !s.Typing()) {
		return m.oneByOne(msg)
	}
	m.status, m.trouble = "", false
	switch {
	case s != nil:
		return m.screenKey(s, msg)
	case msg.Paste:
		m.pasteMaterials(string(msg.Runes))
	case c != nil:
		return m.run(c)
	}
	return nil
}

// screenKey is a key in a screen: the screen's own table first, then the ways
// out of it, then what it takes as text.
func (m *Model) screenKey(s screen, msg tea.KeyMsg) tea.Cmd {
	if !msg.Paste {
		if k := append(s.Keys(), m.ways(s)...).Find(msg); k != nil {
			return k.Do()
		}
	}
	return s.Update(msg)
}

// oneByOne takes letters typed so fast that they arrive as one message: outside
// a text field each is a key of its own.
func (m *Model) oneByOne(msg tea.KeyMsg) tea.Cmd {
	var all []tea.Cmd
	for _, r := range msg.Runes {
		all = append(all, m.key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: msg.Alt}))
		m.refresh()
	}
	return tea.Batch(all...)
}

// say puts a message on the status line, until the next key.
func (m *Model) say(s string) { m.status, m.trouble = ui.Plain(s), false }

func (m *Model) sayf(format string, args ...any) { m.say(fmt.Sprintf(format, args...)) }

// warn says that something did not work.
func (m *Model) warn(s string) { m.status, m.trouble = ui.Plain(s), true }

func (m *Model) warnf(format string, args ...any) { m.warn(fmt.Sprintf(format, args...)) }
