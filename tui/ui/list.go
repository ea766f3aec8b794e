package ui

import tea "github.com/charmbracelet/bubbletea"

// List is a cursor over items and the part of their lines that is in sight. A
// panel calls Fit when it draws; keys, wheel and clicks then refer to what was
// drawn last.
type List struct {
	At  int // the item under the cursor; 0 in an empty list
	Top int // lines above the ones in sight

	items, lines int
	head, rows   int
	place        func(item int) (first, last int)
}

// Fit tells how the items lie on lines, of which there is room for some below
// the panel's head. place is the first and the last line of an item; nil where
// each takes one line. The cursor stays on an item and its lines in sight.
func (l *List) Fit(items, lines, head, rows int, place func(item int) (first, last int)) {
	l.items, l.lines, l.head, l.rows, l.place = items, lines, head, max(rows, 1), place
	l.At = Clamp(l.At, 0, items-1)
	if items > 0 {
		first, last := l.Lines(l.At)
		if l.place != nil && first > 0 && l.itemOn(first-1) < 0 {
			first-- // with the heading of its group
		}
		l.Top = min(max(l.Top, last-l.rows+1), first)
	}
	l.Top = Clamp(l.Top, 0, lines-l.rows)
}

// FitLines is Fit for items of one line each.
func (l *List) FitLines(items, head, rows int) { l.Fit(items, items, head, rows, nil) }

// Lines is the first and the last line of an item.
func (l *List) Lines(item int) (first, last int) {
	if l.place == nil {
		return item, item
	}
	return l.place(item)
}

// End is the line after the last one in sight.
func (l *List) End() int { return min(l.Top+l.rows, l.lines) }

// Move moves the cursor by items.
func (l *List) Move(by int) { l.At = Clamp(l.At+by, 0, l.items-1) }

// page moves the cursor by as many items as are in sight.
func (l *List) page(by int) {
	n := 0
	for i := range l.items {
		if first, last := l.Lines(i); first >= l.Top && last < l.End() {
			n++
		}
	}
	l.Move(by * max(n, 1))
}

// Line is the line of the list at a line of the panel; -1 outside.
func (l *List) Line(y int) int {
	if line := l.Top + y - l.head; y >= l.head && line < l.End() {
		return line
	}
	return -1
}

// Item is the item at a line of the panel; -1 where there is none.
func (l *List) Item(y int) int {
	if line := l.Line(y); line >= 0 {
		return l.itemOn(line)
	}
	return -1
}

func (l *List) itemOn(line int) int {
	for i := range l.items {
		if first, last := l.Lines(i); first <= line && line <= last {
			return i
		}
	}
	return -1
}

// Keys move the cursor of a list.
func (l *List) Keys() Keys {
	return l.keys("up k", "down j", "pgup ctrl+b", "pgdown ctrl+f", "home g ctrl+home", "end G ctrl+end",
		"↑ ↓ k j", "home end", "first, last line; also g G")
}

// TypingKeys move the cursor of a list beside a text field.
func (l *List) TypingKeys() Keys {
	return l.keys("up ctrl+p", "down ctrl+n", "pgup", "pgdown", "ctrl+home", "ctrl+end", "↑ ↓", "ctrl+home", "first line; ctrl+end last")
}

func (l *List) keys(up, down, pgup, pgdown, home, end, arrows, ends, endWords string) Keys {
	return Keys{
		On(up, "", "line up, down; the wheel too", func() { l.Move(-1) }).As(arrows),
		On(down, "", "", func() { l.Move(1) }),
		On(pgup, "", "a page up, down", func() { l.page(-1) }).As("pgup pgdn"),
		On(pgdown, "", "", func() { l.page(1) }),
		On(home, "", endWords, func() { l.Move(-l.items) }).As(ends),
		On(end, "", "", func() { l.Move(l.items) }),
	}
}

// Mouse takes the wheel, and a click of the left button: it goes to the item
// there, and act is called when the cursor was on it before.
func (l *List) Mouse(msg tea.MouseMsg, act func() tea.Cmd) tea.Cmd {
	switch {
	case msg.Button == tea.MouseButtonWheelUp:
		l.Move(-1)
	case msg.Button == tea.MouseButtonWheelDown:
		l.Move(1)
	case Pressed(msg):
		switch item := l.Item(msg.Y); {
		case item == l.At:
			return act()
		case item >= 0:
			l.At = item
		}
	}
	return nil
}

// Pressed reports whether the left button went down.
func Pressed(msg tea.MouseMsg) bool {
	return msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress
}
