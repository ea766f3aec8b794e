package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/ui"
)

// screen is a panel that is open over the bench. It holds the *Model that
// opened it and asks that for changes of the bench; Esc closes it.
//
// To add one: write its file with a constructor, and add one line to the list
// in commands.go that opens it. Keys, wheel and clicks of a list come with
// ui.List; a text that scrolls is newPages, one value to ask for a prompt.
type screen interface {
	// Height is how many lines of w cells the screen would like, given how many
	// there are. The bench stays in sight above where a few rows of it fit.
	Height(w, most int) int
	// View draws into w by h cells. Longer output is cut.
	View(w, h int) []string
	// Title is asked for after View: it may say which part is in sight.
	Title() string
	// Keys is the table of what keys do here, as View has shown things last. A
	// key of the bench that is not in it does nothing here.
	Keys() ui.Keys
	// Typing is true while letters go into a text field.
	Typing() bool
	// Update gets the keys that the table does not have, pastes and mouse
	// events. A mouse event's Y counts from the screen's first line.
	Update(tea.Msg) tea.Cmd
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

// ways lead out of a screen: back, to the list of its keys, and, while no field
// takes the letters, to another panel in its place.
func (m *Model) ways(s screen) ui.Keys {
	back := ui.On("esc q 1", "back", "back; what was typed is kept", m.close)
	back.Shown = "esc q 1"
	help := ui.On("? f1", "keys", "this page", m.openHelp).As("?")
	if s.Typing() {
		back.Names, back.Shown, help.Names = back.Names[:1], "esc", help.Names[1:]
		help = help.As("f1")
	}
	ways := ui.Keys{back, help}
	if s.Typing() {
		return ways
	}
	for _, c := range m.commands {
		if c.opensPanel() {
			ways = append(ways, ui.Key{Names: c.Names, Do: func() tea.Cmd { m.screens = nil; return m.run(c) }})
		}
	}
	return ways
}
