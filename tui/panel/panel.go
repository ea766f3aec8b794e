// Package panel has the panels that open over the bench, a file each. They draw
// what the desk holds and ask it for changes; none knows of another window than
// its own.
//
// To add one: write its file with a type that embeds panel and a constructor that
// returns a desk.Screen, and add one line to the list in commands.go of package tui
// that opens it. Wheel, clicks, the search of a list and the field that takes
// letters come with panel.
package panel

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/desk"
	"alongside/tui/ui"
)

// panel is what the screens have in common.
type panel struct {
	desk    *desk.Desk
	digit   string // the key that opens it from anywhere; "" for none
	about   string // what it is for, in a sentence; "" where its title says all
	list    ui.List
	field   ui.Field // takes the letters while typing
	typing  bool
	problem string // why what was typed cannot be used
}

func (p *panel) Digit() string          { return p.digit }
func (p *panel) About() string          { return p.about }
func (p *panel) List() *ui.List         { return &p.list }
func (p *panel) Height(_, most int) int { return most }
func (p *panel) Typing() bool           { return p.typing }
func (p *panel) Wheel(by int)           { p.list.Move(by) }
func (p *panel) Click(_, y int) bool    { return p.list.Click(y) && !p.typing }

func (p *panel) Type(msg tea.KeyMsg) {
	switch {
	case p.typing && p.desk.TypeInto(&p.field, msg):
		p.problem = ""
	case msg.Paste && !p.typing:
		p.desk.Warn("nothing here takes a pasted text")
	}
}

// problemLines are why what was typed cannot be used.
func (p *panel) problemLines(w int) []string {
	var lines []string
	for reason := range strings.SplitSeq(p.problem, "\n") {
		lines = append(lines, p.desk.Theme.Bad.Wrap(reason, w, 1)...)
	}
	return lines
}

const (
	dot           = " · "
	twoPinsNeeded = "this needs two pins: the metal of today as baseline, and another"
)
