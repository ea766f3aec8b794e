package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/ui"
)

// screen is a panel that is open over the bench. It asks the Model that opened
// it for changes of the call; Esc closes it.
//
// To add one: write its file with a type that embeds panel and a constructor,
// and add one line to the list in commands.go that opens it. Wheel, clicks, the
// search of a list and the field that takes letters come with panel.
type screen interface {
	// Title is asked for after View: it may say which part is in sight.
	Title() string
	// View draws into w by h cells. Longer output is cut.
	View(w, h int) []string
	// Keys is the table of what keys do here, as View has shown things last. A
	// key of the bench that is not in it does nothing here.
	Keys() ui.Keys

	// What panel does unless the screen has its own.

	// Height is how many lines of w cells the screen would like, given how many
	// there are. The bench stays in sight above where a few rows of it fit.
	Height(w, most int) int
	// Typing is true while letters go into a text field.
	Typing() bool
	// Type gets the keys that the table does not have, and pastes.
	Type(tea.KeyMsg)
	// Wheel and Click get the mouse; y counts from the line below the title. A
	// click that Click says true to presses Enter.
	Wheel(by int)
	Click(x, y int) bool
	base() *panel
}

// panel is what the screens have in common.
type panel struct {
	m       *Model
	digit   string // the key that opens it from anywhere; "" for none
	list    ui.List
	field   ui.Field // takes the letters while typing
	typing  bool
	problem string // why what was typed cannot be used
}

func (p *panel) base() *panel           { return p }
func (p *panel) Height(_, most int) int { return most }
func (p *panel) Typing() bool           { return p.typing }
func (p *panel) Wheel(by int)           { p.list.Move(by) }
func (p *panel) Click(_, y int) bool    { return p.list.Click(y) && !p.typing }

func (p *panel) Type(msg tea.KeyMsg) {
	switch {
	case p.typing && p.m.typeInto(&p.field, msg):
		p.problem = ""
	case msg.Paste && !p.typing:
		p.m.warn("nothing here takes a pasted text")
	}
}

// problemLines are why what was typed cannot be used.
func (p *panel) problemLines(w int) []string {
	var lines []string
	for reason := range strings.SplitSeq(p.problem, "\n") {
		lines = append(lines, p.m.theme.Bad.Wrap(reason, w, 1)...)
	}
	return lines
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

func (m *Model) closeAll() {
	for len(m.screens) > 0 {
		m.close()
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
// takes the letters, to a search in its list and to another panel.
func (m *Model) ways(s screen) ui.Keys {
	if s.Typing() {
		return ui.Keys{ui.On("esc", "back", "back; what was typed is kept", m.close), ui.On("f1", "keys", "this page", m.openHelp)}
	}
	bench, help := m.label("1"), m.named("?")
	back := ui.On("esc q "+bench, "back", "back; what was typed is kept", m.close)
	back.Shown = "esc q " + bench
	ways := ui.Keys{back, ui.On(strings.Join(help.Names, " "), "keys", "this page", m.openHelp).As(help.Label)}
	if list := &s.base().list; list.Items() > 1 {
		ways = append(ways, ui.On("/", "", "search this list", func() { m.find(list) }))
	}
	for _, c := range m.commands {
		if c.opensPanel() {
			ways = append(ways, ui.Key{Names: c.Names, Do: func() tea.Cmd { m.closeAll(); return m.run(c) }})
		}
	}
	return ways
}

// search is a search in a list: the cursor goes along while words are typed.
type search struct {
	list  *ui.List
	from  int
	field ui.Field
}

func (m *Model) find(list *ui.List) {
	m.search = &search{list, list.At, ui.NewField("")}
}

// searchKey takes a key of a search, or text. Enter and Esc end it, Esc where it
// began.
func (m *Model) searchKey(msg tea.KeyMsg, text bool) {
	s, by, from, name := m.search, 1, m.search.from, msg.String()
	if text {
		name = ""
	}
	switch name {
	case "enter", "esc":
		m.search = nil
		if name == "esc" {
			s.list.At = s.from
		}
		return
	case "down", "ctrl+n":
		from = s.list.At + 1
	case "up", "ctrl+p":
		from, by = s.list.At-1, -1
	default:
		if !m.typeInto(&s.field, msg) {
			return
		}
	}
	if !s.list.Find(s.field.Text(), from, by) {
		m.warn("nothing like that in this list")
	}
}

// line is the search in place of the status.
func (s *search) line(m *Model, w int) string {
	if m.trouble {
		w -= ui.Width(m.status) + 2
	}
	const label = " Search: "
	text := label + ui.Pad(s.field.View(m.theme, w-len(label)), w-len(label))
	if m.trouble {
		return text + "  " + m.theme.Bad.Of(m.status)
	}
	return text
}
