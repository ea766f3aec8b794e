package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/catalog"
)

// command is what a key does on the bench.
type command struct {
	key.Binding // its help is what the keys line says
	group       string
	shown       string // the keys on the help page; empty: told with another
	words       string // what they do
	needs       need
	do          func(*Model) tea.Cmd
}

// need is what must be there for a command to make sense. Where it is not,
// the key does nothing and is left out of the keys line.
type need uint8

const (
	nothing need = iota
	aPin
	twoPins
	aRow
)

// Groups of the help page, in its order.
const (
	pinKeys  = "Pins"
	viewKeys = "What is compared and shown"
	needKeys = "The customer's limits"
	partKeys = "The customer's part"
	openKeys = "Read and send"
	moveKeys = "Move about"
	progKeys = "Program"
)

// keysLine lists the commands of the keys line by one of their keys, the most
// needed first: the end is cut where the window is narrow.
var keysLine = []string{"?", "/", "b", "t", "p", "s", "enter", "y", "2", "3", "4", "5", "6", "d", "u", "q"}

// on makes a command. keys are parted by blanks; line is its word on the keys
// line, where it has a place there.
func on(needs need, keys, line string, do func(*Model) tea.Cmd) *command {
	all := strings.Fields(keys)
	return &command{Binding: key.NewBinding(key.WithKeys(all...), key.WithHelp(all[0], line)), needs: needs, do: do}
}

// on the help page: in a group, with the keys as shown there.
func (c *command) page(group, shown, words string) *command {
	c.group, c.shown, c.words = group, shown, words
	return c
}

// act, flips and opens turn methods into what a command does.
func act(f func(*Model)) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { f(m); return nil }
}

func flips(f func(*Model, catalog.Direction), d catalog.Direction) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { f(m, d); return nil }
}

func opens(f func(*Model) screen) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { m.open(f(m)); return nil }
}

// enable turns the keys on that make sense now.
func (m *Model) enable() {
	pins, rows := len(m.bench.Pins), len(m.table.Lines)
	for _, c := range m.commands {
		switch c.needs {
		case aPin:
			c.SetEnabled(pins > 0)
		case twoPins:
			c.SetEnabled(pins > 1)
		case aRow:
			c.SetEnabled(pins > 0 && rows > 0)
		}
	}
}

// shortHelp is what the keys line shows.
func (m *Model) shortHelp() []key.Binding {
	if s := m.onTop(); s != nil {
		return s.Keys()
	}
	list := make([]key.Binding, len(keysLine))
	for i, k := range keysLine {
		list[i] = m.byKey[k].Binding
	}
	return list
}
