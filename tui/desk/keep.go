package desk

import (
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/tui/ui"
)

// keeping is how the call is kept on the disk while it changes.
type keeping struct {
	Held    *sheets.Held  // nil where calls are not kept
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

// Keep has the call written beside the screen where it was changed; the newest
// change wins.
func (d *Desk) Keep() tea.Cmd {
	if !d.keeping.changed {
		return nil
	}
	d.keeping.changed, d.last, d.leaving = false, nil, false
	if d.Held == nil {
		d.unsaved = d.Unkept
		return nil
	}
	h := d.Held
	h.Put(*d.Now())
	return func() tea.Msg { return saved{h.Save()} }
}

// SaveCall writes the call now.
func (d *Desk) SaveCall() {
	if err := d.Held.Save(); err != nil {
		d.takeSaved(saved{err})
	}
}

func (d *Desk) takeSaved(msg saved) {
	if d.unsaved = msg.err; msg.err != nil {
		d.Warnf("not saved, the call goes on in memory: %v", msg.err)
	}
}

// LookForLast finds the call to continue, beside the first frames.
func (d *Desk) LookForLast() tea.Cmd {
	f := d.Sheets
	if f == nil || len(d.Pins()) > 0 {
		return nil
	}
	return func() tea.Msg { s, _ := f.Last(); return offered{s} } // a folder that cannot be read is told of when it is written
}

func (d *Desk) takeOffered(msg offered) {
	if len(d.Pins()) == 0 && d.history.Left() == 0 {
		d.last = msg.last
	}
}

// ContinueLast opens the call that is offered, where nothing was typed.
func (d *Desk) ContinueLast() bool {
	if d.last == nil || d.Query != "" {
		return false
	}
	d.OpenCall(d.last.ID)
	return true
}

// Offer is the line that offers the last call; "" for none.
func (d *Desk) Offer() string {
	if d.last == nil || d.Query != "" {
		return ""
	}
	var pins []string
	for _, mat := range d.last.Call.Bench.Pins {
		pins = append(pins, mat.ID)
	}
	return fmt.Sprintf("Enter continues %s; type to begin a new call. Its pins: %s", d.last.Title(), ui.Or(strings.Join(pins, ", "), "no pins"))
}

// OpenCall puts a kept call on the bench in place of the present one, which is
// saved. Where another program has it open, a copy is opened.
func (d *Desk) OpenCall(id string) {
	h, err := d.Sheets.Open(id)
	copied := errors.Is(err, sheets.ErrOpen)
	if copied {
		h, err = d.Sheets.Copy(id)
	}
	if err != nil {
		d.Warn(err.Error())
		return
	}
	if !d.leaveCall() {
		_ = h.Close() // nothing was changed in it
		return
	}
	s := h.Sheet()
	d.show(s.Call, h)
	d.Screens = nil
	switch gone := s.Missing(); {
	case copied:
		d.Warnf("%s is open in another program; this is a copy of it", s.Title())
	case len(gone) > 0:
		d.Warnf("%s; not in the catalog, kept without figures: %s", s.Title(), strings.Join(gone, ", "))
	case len(s.Mistakes) > 0:
		d.Warnf("%s; not understood, and kept: %s", s.Title(), s.Mistakes[0].Problem)
	default:
		d.Sayf("%s", s.Title())
	}
}

// NewCall begins a call on an empty bench. It reports whether it has.
func (d *Desk) NewCall() bool {
	if !d.leaveCall() {
		return false
	}
	d.show(call.Call{Bench: d.Settings.Bench.Clone()}, d.Sheets.New())
	d.Screens = nil
	return true
}

// leaveCall saves the call on the bench and lets other programs have it.
func (d *Desk) leaveCall() bool {
	d.CloseAll() // takes what was typed
	if d.keeping.changed {
		d.keeping.changed = false
		d.Held.Put(*d.Now())
	}
	if err := d.Held.Close(); err != nil {
		d.takeSaved(saved{err})
		return false
	}
	return true
}

func (d *Desk) show(c call.Call, h *sheets.Held) {
	d.history, d.Held, d.last, d.unsaved = call.Start(c), h, nil, nil
	d.Query, d.Col, d.First, d.Rows = "", 0, 0, ui.List{}
	d.Form = map[string]Draft{}
	d.rework()
}

// MayQuit reports whether the program may end. Where the last change could not be
// saved it says so first, and the next time it may.
func (d *Desk) MayQuit() bool {
	if d.unsaved != nil && !d.leaving {
		d.leaving = true
		d.Warnf("quit again to lose what is not saved: %v", d.unsaved)
		return false
	}
	return true
}
