package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/catalog"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// command is what a key does on the bench.
type command struct {
	ui.Key
	shipped []string // the names it has without settings, by which the program knows it
	needs   need
	do      func(*Model) tea.Cmd
}

// need is what must be there for a command to make sense. Where it is not,
// the key says so and is left out of the keys line.
type need uint8

const (
	nothing need = iota
	aPin
	twoPins
	aRow
	always // also while a screen is open or the window is too small
)

// Groups of the help page.
const (
	pinKeys  = "Pins"
	viewKeys = "What is compared and shown"
	needKeys = "The customer's limits"
	partKeys = "The customer's part"
	openKeys = "Read and send"
	moveKeys = "Move about"
	callKeys = "The call"
	progKeys = "Program"
)

// helpGroups is the order of the groups.
var helpGroups = []string{pinKeys, viewKeys, needKeys, partKeys, openKeys, callKeys, moveKeys, progKeys}

// keysLine lists the commands of the keys line by one of their keys, the most
// needed first: the end is cut where the window is narrow.
var keysLine = []string{"?", "/", "b", "t", "p", "s", "enter", "y", "d", ":", "c", "u", "q"}

// on makes a command. line is its word on a keys line, where it has a place
// there.
func on(needs need, names, line string, do func(*Model) tea.Cmd) *command {
	k := ui.On(names, line, "", nil)
	return &command{Key: k, shipped: k.Names, needs: needs, do: do}
}

// on the help page: in a group, with the keys as shown there.
func (c *command) page(group, shown, words string) *command {
	c.Group, c.Shown, c.Words = group, shown, words
	return c
}

// opensPanel reports whether the key opens a panel from any other.
func (c *command) opensPanel() bool { return c.shipped[0] >= "2" && c.shipped[0] <= "9" }

// act, flips, opens and copies turn functions into what a command does.
func act(f func(*Model)) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { f(m); return nil }
}

func flips(f func(*Model, catalog.Direction), d catalog.Direction) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { f(m, d); return nil }
}

func opens(f func(*desk.Desk) desk.Screen) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { m.Open(f(m.Desk)); return nil }
}

func copies(f func(*desk.Desk) tea.Cmd) func(*Model) tea.Cmd {
	return func(m *Model) tea.Cmd { return f(m.Desk) }
}

// lacking is what must be there for a command to make sense and is not; "" where
// it does.
func (m *Model) lacking(c *command) string {
	switch pins := len(m.Pins()); {
	case c.needs == twoPins && pins < 2:
		return "two pins"
	case (c.needs == aPin || c.needs == aRow) && pins == 0:
		return "a pin"
	case c.needs == aRow && len(m.Table.Lines) == 0:
		return "a row"
	}
	return ""
}

// run does what a command does, where that makes sense.
func (m *Model) run(c *command) tea.Cmd {
	if what := m.lacking(c); what != "" {
		m.Warnf("%s needs %s; %s pins a material, %s lists the keys", c.Names[0], what, m.Label("/"), m.Label("?"))
		return nil
	}
	return c.do(m)
}

// commandOf is the command that a message presses; nil where none is.
func (m *Model) commandOf(msg tea.KeyMsg) *command {
	if isText(msg) {
		return nil
	}
	return m.pressed(msg.String())
}

// pressed is the command that has a key now.
func (m *Model) pressed(key string) *command {
	for _, c := range m.commands {
		if slices.Contains(c.Names, key) {
			return c
		}
	}
	return nil
}

// named is the command that has a key without settings.
func (m *Model) named(key string) *command { return commandNamed(m.commands, key) }

// Label is the key that a command has now, for a message.
func (m *Model) Label(shipped string) string { return m.named(shipped).Label }

// BenchKeys are the keys of some commands of the bench, by one of the names they
// have without settings, for the table of a panel in which they mean the same.
func (m *Model) BenchKeys(names ...string) ui.Keys {
	var list ui.Keys
	for _, name := range names {
		c := m.named(name)
		k := c.Key
		k.Group, k.Do = "", func() tea.Cmd { return m.run(c) }
		list = append(list, k)
	}
	return list
}

// PanelKey is the key typed where it opens another panel than the one whose own key
// is given; nil where it does not.
func (m *Model) PanelKey(typed, own string) *ui.Key {
	c := m.pressed(typed)
	if c == nil || !c.opensPanel() || c.shipped[0] == own {
		return nil
	}
	k := c.Key
	k.Do = func() tea.Cmd { m.CloseAll(); return m.run(c) }
	return &k
}

// panelKeys are the keys of a panel, and those that lead back and to this list.
func (m *Model) panelKeys(s desk.Screen) (own, ends ui.Keys) {
	all := append(s.Keys(), m.ways(s)[:2]...).Reached()
	return all[:len(all)-2], all[len(all)-2:]
}

// ways lead out of a screen: back, to the list of its keys, and, while no field
// takes the letters, to a search in its list and to another panel.
func (m *Model) ways(s desk.Screen) ui.Keys {
	if s.Typing() {
		return ui.Keys{ui.On("esc", "back", "back; what was typed is kept", m.Close), ui.On("f1", "keys", "this page", m.openHelp)}
	}
	bench, help := m.Label("1"), m.named("?")
	back := ui.On("esc q "+bench, "back", "back; what was typed is kept", m.Close)
	back.Shown = "esc q " + bench
	ways := ui.Keys{back, ui.On(strings.Join(help.Names, " "), "keys", "this page", m.openHelp).As(help.Label)}
	if list := s.List(); list.Items() > 1 {
		ways = append(ways, ui.On("/", "", "search this list", func() { m.find(list) }))
	}
	for _, c := range m.commands {
		if c.opensPanel() {
			ways = append(ways, ui.Key{Names: c.Names, Do: func() tea.Cmd { m.CloseAll(); return m.run(c) }})
		}
	}
	return ways
}

// keysRow is the last line of the window.
func (m *Model) keysRow() string {
	w := m.width - 2
	if m.search != nil {
		return ui.Keys{ui.On("", "next match", "", nil).As("↑↓"), ui.On("enter", "stay there", "", nil), ui.On("esc", "back", "", nil)}.Row(m.Theme, nil, w)
	}
	if s := m.OnTop(); s != nil {
		own, ends := m.panelKeys(s)
		return own.Row(m.Theme, ends, w)
	}
	var list ui.Keys
	for _, k := range keysLine {
		if c := m.named(k); m.lacking(c) == "" {
			list = append(list, c.Key)
		}
	}
	return list.Row(m.Theme, nil, w)
}
