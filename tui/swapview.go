package tui

import (
	"strings"

	"alongside/props/part"
	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

const (
	swapHead = 2 // the part, column heads
	swapFoot = 4 // a blank line, the line under the cursor in words
)

// head says what is known of the part.
func (p *swapPanel) head() []string {
	m, t, w := p.m, p.m.theme, p.w
	text := m.now().Part.Summary()
	if text == "" {
		return []string{t.Dim.Of(ui.Cut(" Nothing is said of the part yet: e to type its mass, wall, length, load …", w)), p.columnHeads()}
	}
	if s := m.now().Part.Strength; s == "" || s == part.Auto {
		text += "; by yield or tensile strength"
	}
	lines := ui.Wrap("Part: "+text, w-2)
	if len(lines) > 2 {
		lines = []string{lines[0], ui.Cut(strings.Join(lines[1:], " "), w-2)}
	}
	for i := range lines {
		lines[i] = " " + lines[i]
	}
	return append(lines, p.columnHeads())
}

func (p *swapPanel) columnHeads() string {
	t := p.laid()
	s := " " + ui.Pad("", t.label+1+t.unit) + " " + p.m.theme.Strong.Of(ui.PadLeft("today", t.base))
	from, n := p.shown()
	for i := from; i < from+n; i++ {
		name := ui.Cut(ui.Plain(p.m.swapped().results[i].Pin.Name()), t.value+1+t.change)
		ink := p.m.theme.Strong
		if i == p.pin() && n > 1 {
			ink = p.m.theme.Heading
			if p.m.theme.Plain {
				name = ui.Cut(">"+name, t.value+1+t.change)
			}
		}
		s += " " + ui.Blanks(t.value+1+t.change-ui.Width(name)) + ink.Of(name) + " "
	}
	return s
}

// shown is which pins there is room for.
func (p *swapPanel) shown() (from, n int) {
	t := p.laid()
	w := p.w
	all := len(p.m.swapped().results)
	n = ui.Clamp((w-1-t.label-1-t.unit-1-t.base)/(t.value+1+t.change+2), 1, all)
	p.first = ui.Clamp(p.first, p.pin()-n+1, p.pin())
	p.first = ui.Clamp(p.first, 0, all-n)
	return p.first, n
}

func (p *swapPanel) View(w, h int) []string {
	p.w = w
	if !p.some() {
		return []string{" " + ui.Cut(twoPinsNeeded, w-2)}
	}
	t := p.laid()
	lines := p.head()
	foot := p.words(w)
	rows := max(h-len(lines)-len(foot), 1)
	p.list.Fit(len(t.lines), len(t.rows), len(lines), rows, func(i int) (first, last int) { return t.lines[i], t.lines[i] })
	from, n := p.shown()
	for i := p.list.Top; i < p.list.End(); i++ {
		lines = append(lines, ui.Cut(p.rowText(i, from, n, len(t.lines) > 0 && i == t.lines[p.list.At]), w))
	}
	return append(ui.Fill(lines, len(lines)+rows-(p.list.End()-p.list.Top)), foot...)
}

func (p *swapPanel) rowText(i, from, n int, here bool) string {
	t, th := p.laid(), p.m.theme
	r := &t.rows[i]
	if r.id == "" {
		return " " + th.Heading.Of(r.name)
	}
	c := r.shown(p.pin())
	mark, name := " ", th.Text.Of(ui.Pad(c.name, t.label))
	if here {
		name = th.Cursor.Of(ui.Pad(c.name, t.label))
		if th.Plain {
			mark = ">"
		}
	}
	s := mark + name
	w := p.w
	switch {
	case r.why != "" || n == 1 && c.why != "":
		return s + "  " + th.Dim.Of(ui.Cut(ui.Or(r.why, c.why), w-ui.Width(s)-3))
	case n == 1 && c.words != "":
		return s + "  " + ui.Cut(c.words, w-ui.Width(s)-3)
	}
	s += " " + th.Dim.Of(ui.Pad(c.unit, t.unit)) + " " + th.Strong.Of(ui.PadLeft(c.base, t.base))
	for k := from; k < from+n; k++ {
		s += p.cellText(&r.cells[k], c, here && k == p.pin() && n > 1)
	}
	return s
}

// cellText is the cell of a pin. A star marks a cell behind which another value
// of today or another strength stands than is shown beside it.
func (p *swapPanel) cellText(c, shown *swapCell, here bool) string {
	t, th := p.laid(), p.m.theme
	value, signs := c.value, c.memory
	if c.why != "" {
		value, signs = "–", ""
	} else if c.base != shown.base || c.name != shown.name {
		signs += bench.OtherSign
	}
	if c.unit != shown.unit && c.unit != "" {
		value += " " + c.unit
	}
	body := ui.PadLeft(value, t.value-t.signs) + ui.Pad(signs, t.signs) + " " + ui.PadLeft(c.change, t.change)
	if c.words == value && value != "" {
		body = ui.PadLeft(value, t.value+1+t.change)
	}
	switch {
	case here && th.Plain:
		return "[" + body + "]"
	case here:
		return th.Cursor.Of(" " + body + " ")
	case c.why != "":
		return " " + th.Dim.Of(body) + " "
	}
	return " " + body + " "
}

// words put the line under the cursor in a sentence, with its cautions, or say
// why there is no number.
func (p *swapPanel) words(w int) []string {
	l, t := p.line(), p.m.theme
	lines := []string{""}
	if l == nil {
		return append(lines, t.Dim.Of(" Nothing can be worked out yet. f shows what each line waits for."), "", "")
	}
	head, more := report.SwapLineText(l)
	for _, s := range ui.Wrap(l.Name+", "+p.result().Pin.Name()+": "+head, w-2) {
		lines = append(lines, " "+s)
	}
	for _, s := range ui.Wrap(more, w-2) {
		lines = append(lines, t.Dim.Of(" "+s))
	}
	if len(lines) > swapFoot {
		lines = append(lines[:swapFoot-1], ui.Cut(lines[swapFoot-1], w-2)+ui.Ellipsis)
	}
	for len(lines) < swapFoot {
		lines = append(lines, "")
	}
	return lines
}
