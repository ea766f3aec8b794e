package ui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"
)

// Pages is a text that scrolls. What it says is laid out again when the width
// changes.
type Pages struct {
	Lay func(w int) []string

	lines     []string // laid out for w
	w, h, top int
}

// Height is how many lines the text has in w cells.
func (p *Pages) Height(w int) int {
	if p.lines == nil || p.w != w {
		p.w, p.lines = w, p.Lay(w)
	}
	return len(p.lines)
}

// View is the part in sight.
func (p *Pages) View(w, h int) []string {
	n := p.Height(w)
	p.h = max(h, 1)
	p.scroll(0)
	return p.lines[p.top:min(p.top+p.h, n)]
}

// Part says which lines of a longer text View has shown; "" for all of it.
func (p *Pages) Part() string {
	if n := len(p.lines); n > p.h {
		return fmt.Sprintf("lines %d–%d of %d", p.top+1, min(p.top+p.h, n), n)
	}
	return ""
}

func (p *Pages) scroll(by int) { p.top = Clamp(p.top+by, 0, len(p.lines)-p.h) }

// Keys scroll the text.
func (p *Pages) Keys() Keys {
	return Keys{
		On("up k", "scroll", "scroll; space and b a page, d and u half a page, g and G to the ends", func() { p.scroll(-1) }).As("↑↓ pgup pgdn"),
		On("down j", "", "", func() { p.scroll(1) }),
		On("pgup b ctrl+b", "", "", func() { p.scroll(-p.h) }),
		On("pgdown f ctrl+f space", "", "", func() { p.scroll(p.h) }),
		On("u ctrl+u", "", "", func() { p.scroll(-p.h / 2) }),
		On("d ctrl+d", "", "", func() { p.scroll(p.h / 2) }),
		On("home g ctrl+home", "", "", func() { p.scroll(-len(p.lines)) }),
		On("end G ctrl+end", "", "", func() { p.scroll(len(p.lines)) }),
	}
}

// wheelStep is how many lines one notch of the wheel scrolls a text.
const wheelStep = 3

// Mouse takes the wheel.
func (p *Pages) Mouse(msg tea.MouseMsg) {
	switch msg.Button {
	case tea.MouseButtonWheelUp:
		p.scroll(-wheelStep)
	case tea.MouseButtonWheelDown:
		p.scroll(wheelStep)
	}
}
