package tui

import (
	"strings"

	"alongside/props/part"
	"alongside/props/report"
)

const (
	swapHead = 2 // the part, column heads
	swapFoot = 4 // a blank line, the line under the cursor in words
)

// head says what is known of the part.
func (p *swapPanel) head() []string {
	m, t := p.m, p.m.theme
	w, _ := m.panel()
	text := m.part.Summary()
	if text == "" {
		return []string{t.dim.of(cut(" Nothing is said of the part yet: e to type its mass, wall, length, load …", w)), p.columnHeads()}
	}
	if s := m.part.Strength; s == "" || s == part.Auto {
		text += "; by yield or tensile strength"
	}
	lines := wrap("Part: "+text, w-2)
	if len(lines) > 2 {
		lines = []string{lines[0], cut(strings.Join(lines[1:], " "), w-2)}
	}
	for i := range lines {
		lines[i] = " " + lines[i]
	}
	return append(lines, p.columnHeads())
}

func (p *swapPanel) columnHeads() string {
	t := p.laid()
	s := " " + pad("", t.label+1+t.unit) + " " + p.m.theme.base.of(padLeft("today", t.base))
	from, n := p.shown()
	for i := from; i < from+n; i++ {
		name := cut(plain(p.m.swapped().results[i].Pin.Name()), t.value+1+t.change)
		ink := p.m.theme.strong
		if i == p.pin() && n > 1 {
			ink = p.m.theme.picked
			if p.m.theme.plain {
				name = cut(">"+name, t.value+1+t.change)
			}
		}
		s += " " + blanks(t.value+1+t.change-width(name)) + ink.of(name) + " "
	}
	return s
}

// shown is which pins there is room for.
func (p *swapPanel) shown() (from, n int) {
	t := p.laid()
	w, _ := p.m.panel()
	all := len(p.m.swapped().results)
	n = clamp((w-1-t.label-1-t.unit-1-t.base)/(t.value+1+t.change+2), 1, all)
	p.first = clamp(p.first, p.pin()-n+1, p.pin())
	p.first = clamp(p.first, 0, all-n)
	return p.first, n
}

func (p *swapPanel) View() string {
	w, h := p.m.panel()
	if !p.some() {
		return " " + cut(twoPinsNeeded, w-2)
	}
	t := p.laid()
	lines := p.head()
	foot := p.words(w)
	rows := max(h-len(lines)-len(foot), 1)
	at := t.at(p.id)
	if at > 0 && t.rows[at-1].id == "" {
		p.top = min(p.top, at-1) // with the heading of its group
	}
	p.top = clamp(p.top, at-rows+1, max(at, 0))
	p.top = clamp(p.top, 0, len(t.rows)-rows)
	from, n := p.shown()
	for i := p.top; i < p.top+rows; i++ {
		if i < len(t.rows) {
			lines = append(lines, cut(p.rowText(i, from, n, i == at), w))
		} else {
			lines = append(lines, "")
		}
	}
	return strings.Join(append(lines, foot...), "\n")
}

func (p *swapPanel) rowText(i, from, n int, here bool) string {
	t, th := p.laid(), p.m.theme
	r := &t.rows[i]
	if r.id == "" {
		return " " + th.group.of(r.name)
	}
	c := r.shown(p.pin())
	mark, name := " ", th.text.of(pad(c.name, t.label))
	if here {
		name = th.cursor.of(pad(c.name, t.label))
		if th.plain {
			mark = ">"
		}
	}
	s := mark + name
	w, _ := p.m.panel()
	switch {
	case r.why != "" || n == 1 && c.why != "":
		return s + "  " + th.dim.of(cut(or(r.why, c.why), w-width(s)-3))
	case n == 1 && c.words != "":
		return s + "  " + cut(c.words, w-width(s)-3)
	}
	s += " " + th.dim.of(pad(c.unit, t.unit)) + " " + th.base.of(padLeft(c.base, t.base))
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
		signs += otherSign
	}
	if c.unit != shown.unit && c.unit != "" {
		value += " " + c.unit
	}
	body := padLeft(value, t.value-t.signs) + pad(signs, t.signs) + " " + padLeft(c.change, t.change)
	if c.words == value && value != "" {
		body = padLeft(value, t.value+1+t.change)
	}
	switch {
	case here && th.plain:
		return "[" + body + "]"
	case here:
		return th.cursor.of(" " + body + " ")
	case c.why != "":
		return " " + th.dim.of(body) + " "
	}
	return " " + body + " "
}

// words put the line under the cursor in a sentence, with its cautions, or say
// why there is no number.
func (p *swapPanel) words(w int) []string {
	l, t := p.line(), p.m.theme
	lines := []string{""}
	if l == nil {
		return append(lines, t.dim.of(" Nothing can be worked out yet. f shows what each line waits for."), "", "")
	}
	head, more := report.SwapLineText(l)
	for _, s := range wrap(l.Name+", "+p.result().Pin.Name()+": "+head, w-2) {
		lines = append(lines, " "+s)
	}
	for _, s := range wrap(more, w-2) {
		lines = append(lines, t.dim.of(" "+s))
	}
	if len(lines) > swapFoot {
		lines = append(lines[:swapFoot-1], cut(lines[swapFoot-1], w-2)+ellipsis)
	}
	for len(lines) < swapFoot {
		lines = append(lines, "")
	}
	return lines
}
