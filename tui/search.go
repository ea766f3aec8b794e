package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/ui"
)

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
		if !m.TypeInto(&s.field, msg) {
			return
		}
	}
	if !s.list.Find(s.field.Text(), from, by) {
		m.Warn("nothing like that in this list")
	}
}

// line is the search in place of the status.
func (s *search) line(m *Model, w int) string {
	if m.Trouble {
		w -= ui.Width(m.Status) + 2
	}
	const label = " Search: "
	text := label + ui.Pad(s.field.View(m.Theme, w-len(label)), w-len(label))
	if m.Trouble {
		return text + "  " + m.Theme.Bad.Of(m.Status)
	}
	return text
}
