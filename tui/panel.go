package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"
)

// far is more rows than any list has.
const far = 1 << 20

// step is how far a key or the wheel moves the cursor of a list of which page
// rows are in sight; 0 where it does not.
func step(msg tea.Msg, page int) int {
	switch msg := msg.(type) {
	case tea.MouseMsg:
		switch msg.Button {
		case tea.MouseButtonWheelUp:
			return -1
		case tea.MouseButtonWheelDown:
			return 1
		}
	case tea.KeyMsg:
		switch msg.String() {
		case "up", "k":
			return -1
		case "down", "j":
			return 1
		case "pgup", "ctrl+b":
			return -max(page, 1)
		case "pgdown", "ctrl+f":
			return max(page, 1)
		case "home", "g":
			return -far
		case "end", "G":
			return far
		}
	}
	return 0
}

// pressed is the place of a click of the left button in a screen; ok is false
// for everything else.
func pressed(msg tea.Msg) (x, y int, ok bool) {
	m, is := msg.(tea.MouseMsg)
	if !is || m.Button != tea.MouseButtonLeft || m.Action != tea.MouseActionPress {
		return 0, 0, false
	}
	return m.X, m.Y, true
}

// otherPin goes to another pin beside the baseline, for panels that set one
// pin against it. It reports whether the key was one of those.
func (m *Model) otherPin(k string) bool {
	n, at := len(m.bench.Pins), max(m.col, 1)
	switch k {
	case "left", "h":
		m.goToPin(max(at-1, 1))
	case "right", "l":
		m.goToPin(min(at+1, n-1))
	case "tab":
		m.goToPin(at%(n-1) + 1)
	case "shift+tab":
		m.goToPin((at+n-3)%(n-1) + 1)
	default:
		return false
	}
	return true
}

// benchKeys mean the same in a panel as on the bench: units, basis, undo, redo.
var benchKeys = []string{"s", "m", "u", "ctrl+r"}

// listPanel is a panel whose list a step, a click or a key of its own moves or
// acts on.
type listPanel interface {
	some() bool // there is something to list
	page() int
	move(by int)
	click(x, y int)
	key(name string) tea.Cmd
}

// list routes a message to such a panel.
func (m *Model) list(p listPanel, msg tea.Msg) tea.Cmd {
	k, isKey := msg.(tea.KeyMsg)
	switch name := k.String(); {
	case isKey && slices.Contains(benchKeys, name):
		return m.benchKey(k)
	case !p.some():
	case step(msg, p.page()) != 0:
		p.move(step(msg, p.page()))
	case isKey:
		return p.key(name)
	default:
		if x, y, ok := pressed(msg); ok {
			p.click(x, y)
		}
	}
	return nil
}
