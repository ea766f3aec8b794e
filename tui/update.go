package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/background"
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
	switch msg.String() {
	case "ctrl+c":
		return tea.Quit
	case "ctrl+z":
		return tea.Suspend
	}
	if m.tooSmall() {
		if msg.String() == "q" {
			return tea.Quit
		}
		return nil
	}
	s := m.onTop()
	// Letters typed fast arrive as one message; outside a text field each is
	// a key of its own.
	if msg.Type == tea.KeyRunes && !msg.Paste && len(msg.Runes) > 1 && (s == nil || !s.Typing()) {
		var all []tea.Cmd
		for _, r := range msg.Runes {
			all = append(all, m.key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: msg.Alt}))
		}
		return tea.Batch(all...)
	}
	m.status, m.trouble = "", false
	switch {
	case s == nil && msg.Paste:
		m.pasteMaterials(string(msg.Runes))
		return nil
	case s == nil:
		return m.benchKey(msg)
	case msg.String() == "esc", msg.String() == "q" && !s.Typing(), msg.String() == "1" && !s.Typing():
		m.close()
		return nil
	case !s.Typing() && m.panelKey(msg.String(), s):
		m.screens = nil
		return m.benchKey(msg)
	case msg.String() == "?" && !s.Typing():
		if p, ok := s.(*pages); !ok || p.title != helpTitle {
			m.open(newHelp(m))
		}
		return nil
	}
	return s.Update(msg)
}

// panelKey reports whether a key opens another panel in place of the screens
// that are open. In the needs panel 2 adds one.
func (m *Model) panelKey(k string, s screen) bool {
	_, own := s.(*needsPanel)
	return len(k) == 1 && k >= "2" && k <= "9" && m.byKey[k] != nil && !(own && k == "2")
}

func (m *Model) benchKey(msg tea.KeyMsg) tea.Cmd {
	if c := m.byKey[msg.String()]; c != nil && c.Enabled() {
		return c.do(m)
	}
	return nil
}

// say puts a message on the status line, until the next key.
func (m *Model) say(s string) { m.status, m.trouble = plain(s), false }

func (m *Model) sayf(format string, args ...any) { m.say(fmt.Sprintf(format, args...)) }

// warn says that something did not work.
func (m *Model) warn(s string) { m.status, m.trouble = plain(s), true }

func (m *Model) warnf(format string, args ...any) { m.warn(fmt.Sprintf(format, args...)) }
