package desk

import (
	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/ui"
)

// Screen is a panel that is open over the bench. It asks the desk for changes of
// the call; Esc closes it. Package panel says how to add one.
type Screen interface {
	// Title is asked for after View: it may say which part is in sight.
	Title() string
	// About says in one sentence what the screen is for; "" where its title says all.
	About() string
	// View draws into w by h cells. Longer output is cut.
	View(w, h int) []string
	// Keys is the table of what keys do here, as View has shown things last. A
	// key of the bench that is not in it does nothing here.
	Keys() ui.Keys
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
	// Digit is the key that opens it from anywhere; "" for none.
	Digit() string
	// List is the list that a search goes through.
	List() *ui.List
}

// Open puts a screen on top; nil, from a constructor with nothing to show, is
// left out.
func (d *Desk) Open(s Screen) {
	if s != nil {
		d.Screens = append(d.Screens, s)
	}
}

// Close takes the top screen away. One that still holds what was typed takes
// it first.
func (d *Desk) Close() {
	if n := len(d.Screens); n > 0 {
		if s, ok := d.Screens[n-1].(interface{ Closing() }); ok {
			s.Closing()
		}
		d.Screens = d.Screens[:n-1]
	}
}

// CloseAll closes every screen.
func (d *Desk) CloseAll() {
	for len(d.Screens) > 0 {
		d.Close()
	}
}

// OnTop is the screen on top, nil when the bench is.
func (d *Desk) OnTop() Screen {
	if n := len(d.Screens); n > 0 {
		return d.Screens[n-1]
	}
	return nil
}
