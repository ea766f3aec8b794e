package tui

import (
	"errors"
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/tui/ui"
)

// keeping is how the call is kept on the disk while it changes.
type keeping struct {
	held    *sheets.Held  // nil where calls are not kept
	last    *sheets.Sheet // the call that the first finder offers to continue
	unsaved error         // why the last change is not on the disk
	changed bool          // since keep
	leaving bool          // quit was asked for with a change that is not saved
}

// saved tells how writing the call went; offered is the call kept last.
type (
	saved   struct{ err error }
	offered struct{ last *sheets.Sheet }
)

// begin keeps the call under a new name, from its first change on.
func (m *Model) begin() {
	if m.o.Sheets != nil {
		m.held = m.o.Sheets.New()
	}
}

// keep has the call written beside the screen where it was changed; the newest
// change wins.
func (m *Model) keep() tea.Cmd {
	if !m.keeping.changed {
		return nil
	}
	m.keeping.changed, m.last, m.leaving = false, nil, false
	if m.held == nil {
		m.unsaved = m.o.Unkept
		return nil
	}
	h := m.held
	h.Put(*m.now())
	return func() tea.Msg { return saved{h.Save()} }
}

func (m *Model) takeSaved(msg saved) {
	if m.unsaved = msg.err; msg.err != nil {
		m.warnf("not saved, the call goes on in memory: %v", msg.err)
	}
}

// lookForLast finds the call to continue, beside the first frames.
func (m *Model) lookForLast() tea.Cmd {
	f := m.o.Sheets
	if f == nil || len(m.pins()) > 0 {
		return nil
	}
	return func() tea.Msg { s, _ := f.Last(); return offered{s} } // a folder that cannot be read is told of when it is written
}

func (m *Model) takeOffered(msg offered) {
	if len(m.pins()) == 0 && m.history.Left() == 0 {
		m.last = msg.last
	}
}

// continueLast opens the call that is offered, where nothing was typed.
func (m *Model) continueLast() bool {
	if m.last == nil || m.query != "" {
		return false
	}
	m.openCall(m.last.ID)
	return true
}

// offer is the line that offers the last call; "" for none.
func (m *Model) offer() string {
	if m.last == nil || m.query != "" {
		return ""
	}
	var pins []string
	for _, mat := range m.last.Call.Bench.Pins {
		pins = append(pins, mat.ID)
	}
	return fmt.Sprintf("Enter continues %s; type to begin a new call. Its pins: %s", m.last.Title(), ui.Or(strings.Join(pins, ", "), "no pins"))
}

// openCall puts a kept call on the bench in place of the present one, which is
// saved. Where another program has it open, a copy is opened.
func (m *Model) openCall(id string) {
	h, err := m.o.Sheets.Open(id)
	copied := errors.Is(err, sheets.ErrOpen)
	if copied {
		h, err = m.o.Sheets.Copy(id)
	}
	if err != nil {
		m.warn(err.Error())
		return
	}
	if !m.leaveCall() {
		_ = h.Close() // nothing was changed in it
		return
	}
	s := h.Sheet()
	m.show(s.Call, h)
	m.screens = nil
	switch gone := s.Missing(); {
	case copied:
		m.warnf("%s is open in another program; this is a copy of it", s.Title())
	case len(gone) > 0:
		m.warnf("%s; not in the catalog, kept without figures: %s", s.Title(), strings.Join(gone, ", "))
	case len(s.Mistakes) > 0:
		m.warnf("%s; not understood, and kept: %s", s.Title(), s.Mistakes[0].Problem)
	default:
		m.sayf("%s", s.Title())
	}
}

// newCall begins a call on an empty bench.
func (m *Model) newCall() {
	if !m.leaveCall() {
		return
	}
	m.show(call.Call{Bench: m.o.Settings.Bench.Clone()}, m.o.Sheets.New())
	m.screens = nil
	m.open(newFinder(m))
}

// leaveCall saves the call on the bench and lets other programs have it.
func (m *Model) leaveCall() bool {
	m.closeAll() // takes what was typed
	if m.keeping.changed {
		m.keeping.changed = false
		m.held.Put(*m.now())
	}
	if err := m.held.Close(); err != nil {
		m.takeSaved(saved{err})
		return false
	}
	return true
}

func (m *Model) show(c call.Call, h *sheets.Held) {
	m.history, m.held, m.last, m.unsaved = call.Start(c), h, nil, nil
	m.query, m.col, m.first, m.rows = "", 0, 0, ui.List{}
	m.form = formState{}
	m.rework()
}

// quit ends the program. Where the last change could not be saved it says so
// first, and the next time ends.
func (m *Model) quit() tea.Cmd {
	if m.unsaved != nil && !m.leaving {
		m.leaving = true
		m.warnf("quit again to lose what is not saved: %v", m.unsaved)
		return nil
	}
	return tea.Quit
}

// interrupt quits as quit does; the program tells by its exit code.
func (m *Model) interrupt() tea.Cmd {
	if m.quit() == nil {
		return nil
	}
	return tea.Interrupt
}

// newName, newSaid and newNote ask for what is kept with the call.
func newName(m *Model) screen {
	return newPrompt(m, "Name of the call", "Under this name the call is found again.", m.now().Name, func(s string) error {
		m.changeCall(func(c *call.Call) { c.Name = strings.TrimSpace(s) })
		return nil
	})
}

func newSaid(m *Model) screen {
	return newPrompt(m, "The customer's words", "A line as the customer said it. "+strings.Join(m.now().Said, " / "), "", func(s string) error {
		if s = strings.TrimSpace(s); s != "" {
			m.changeCall(func(c *call.Call) { c.Said = append(c.Said, s) })
		}
		return nil
	})
}

func newNote(m *Model) screen {
	about := "Kept with the time."
	for _, n := range m.now().Notes {
		about += " " + n.At.Local().Format("15:04") + " " + n.Text + "."
	}
	return newPrompt(m, "Note", about, "", func(s string) error {
		if s = strings.TrimSpace(s); s != "" {
			m.changeCall(func(c *call.Call) { c.Notes = append(c.Notes, call.NewNote(time.Now(), s)) })
		}
		return nil
	})
}
