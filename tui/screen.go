package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// screen is a panel that is open over the bench. It holds the *Model that
// opened it and asks that for changes of the bench; Esc closes it.
//
// To add one: write its file with a constructor, and add one line to the list
// in commands.go that opens it.
type screen interface {
	Title() string
	// Update gets keys, pastes and mouse events while the screen is on top. A
	// mouse event's Y counts from the screen's first line.
	Update(tea.Msg) tea.Cmd
	// Height is how many lines the screen would like, given how many there
	// are. The bench stays in sight above where a few rows of it fit.
	Height(most int) int
	// View draws into the room that Model.panel gives. Longer output is cut.
	View() string
	// Keys are what the keys line shows.
	Keys() []key.Binding
	// Typing is true while letters go into a text field.
	Typing() bool
}

// open puts a screen on top; nil, from a constructor with nothing to show, is
// left out.
func (m *Model) open(s screen) {
	if s != nil {
		m.screens = append(m.screens, s)
	}
}

// close takes the top screen away. One that still holds what was typed takes
// it first.
func (m *Model) close() {
	if n := len(m.screens); n > 0 {
		if s, ok := m.screens[n-1].(interface{ closing() }); ok {
			s.closing()
		}
		m.screens = m.screens[:n-1]
	}
}

// onTop is the screen on top, nil when the bench is.
func (m *Model) onTop() screen {
	if n := len(m.screens); n > 0 {
		return m.screens[n-1]
	}
	return nil
}

var escape = key.NewBinding(key.WithKeys("esc"), key.WithHelp("esc", "back"))
