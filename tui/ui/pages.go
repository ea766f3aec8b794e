package ui

import "fmt"

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
	p.Scroll(0)
	return p.lines[p.top:min(p.top+p.h, n)]
}

// Part says which lines of a longer text View has shown; "" for all of it.
func (p *Pages) Part() string {
	if n := len(p.lines); n > p.h {
		return fmt.Sprintf("lines %d–%d of %d", p.top+1, min(p.top+p.h, n), n)
	}
	return ""
}

// Scroll moves the part in sight by lines.
func (p *Pages) Scroll(by int) { p.top = Clamp(p.top+by, 0, len(p.lines)-p.h) }

// Keys scroll the text.
func (p *Pages) Keys() Keys {
	return Keys{
		On("up k", "scroll", "scroll; space and b a page, d and u half a page, g and G to the ends", func() { p.Scroll(-1) }).As("↑↓ pgup pgdn"),
		On("down j", "", "", func() { p.Scroll(1) }),
		On("pgup b ctrl+b", "", "", func() { p.Scroll(-p.h) }),
		On("pgdown f ctrl+f space", "", "", func() { p.Scroll(p.h) }),
		On("u ctrl+u", "", "", func() { p.Scroll(-p.h / 2) }),
		On("d ctrl+d", "", "", func() { p.Scroll(p.h / 2) }),
		On("home g ctrl+home", "", "", func() { p.Scroll(-len(p.lines)) }),
		On("end G ctrl+end", "", "", func() { p.Scroll(len(p.lines)) }),
	}
}
