package ui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// WheelStep is how many lines one notch of the wheel scrolls.
const WheelStep = 3

// List is a cursor over items and the part of their lines that is in sight.
// Keys, wheel, clicks and searches refer to what Draw has shown last.
type List struct {
	At  int // the item under the cursor; 0 in an empty list
	Top int // lines above the ones in sight

	shown      Listing
	head, rows int
	starts     []int // the line on which each item begins, and the end; nil where each takes one line
}

// Listing is what a list shows. here tells of the item under the cursor.
type Listing struct {
	Head  []string
	Items int
	Line  func(i int, here bool) string   // of an item; called for those in sight only
	Lines func(i int, here bool) []string // in place of Line where items take several, headings included
	Tall  func(i int) int                 // how many, where Lines is to be called for those in sight only
	Foot  func() []string                 // of the item under the cursor; may be nil
	Snug  bool                            // the foot stands right below a short list, not at the bottom
}

// Draw is the listing in h lines, with the cursor on an item and that in sight.
func (l *List) Draw(s Listing, h int) []string {
	l.shown, l.starts = s, nil
	l.At = Clamp(l.At, 0, s.Items-1)
	var foot, all []string
	if s.Foot != nil {
		foot = s.Foot()
	}
	l.head, l.rows = len(s.Head), max(h-len(s.Head)-len(foot), 1)
	if s.Lines != nil {
		l.starts = make([]int, s.Items+1)
		for i := range s.Items {
			if s.Tall != nil {
				l.starts[i+1] = l.starts[i] + s.Tall(i)
				continue
			}
			all = append(all, s.Lines(i, i == l.At)...)
			l.starts[i+1] = len(all)
		}
	}
	first, end := l.span(l.At)
	l.Top = Clamp(min(max(l.Top, end-l.rows), first), 0, l.lines()-l.rows)
	lines := slices.Clone(s.Head)
	switch {
	case s.Tall != nil:
		for i := range s.Items {
			if a, b := l.span(i); b > l.Top && a < l.end() {
				lines = append(lines, s.Lines(i, i == l.At)[max(l.Top-a, 0):min(b, l.end())-a]...)
			}
		}
	case s.Lines != nil:
		lines = append(lines, all[l.Top:l.end()]...)
	default:
		for i := l.Top; i < l.end(); i++ {
			lines = append(lines, s.Line(i, i == l.At))
		}
	}
	if !s.Snug {
		lines = Fill(lines, l.head+l.rows)
	}
	return append(lines, foot...)
}

// span is the first line of an item and the one after its last.
func (l *List) span(item int) (first, end int) {
	switch {
	case l.starts == nil:
		return item, item + 1
	case item+1 < len(l.starts):
		return l.starts[item], l.starts[item+1]
	}
	return 0, 0
}

func (l *List) lines() int {
	if l.starts == nil {
		return l.shown.Items
	}
	return l.starts[l.shown.Items]
}

// end is the line after the last one in sight.
func (l *List) end() int { return min(l.Top+l.rows, l.lines()) }

// InSight is the first item that is whole in sight, and the one after the last.
func (l *List) InSight() (first, end int) {
	first, end = l.shown.Items, 0
	for i := range l.shown.Items {
		if a, b := l.span(i); a >= l.Top && b <= l.end() {
			first, end = min(first, i), i+1
		}
	}
	return min(first, end), end
}

// Move moves the cursor by items.
func (l *List) Move(by int) { l.At = Clamp(l.At+by, 0, l.shown.Items-1) }

// Page moves the cursor by as many items as are in sight.
func (l *List) Page(by int) {
	first, end := l.InSight()
	l.Move(by * max(end-first, 1))
}

// Scroll moves the lines in sight, and the cursor only where it would get out of
// sight.
func (l *List) Scroll(by int) {
	l.Top = Clamp(l.Top+by, 0, l.lines()-l.rows)
	if first, end := l.InSight(); first < end {
		l.At = Clamp(l.At, first, end-1)
	}
}

// Item is the item at a line of the panel; -1 where there is none.
func (l *List) Item(y int) int {
	line := l.Top + y - l.head
	for i := range l.shown.Items {
		if a, b := l.span(i); y >= l.head && line < l.end() && a <= line && line < b {
			return i
		}
	}
	return -1
}

// Click goes to the item at a line of the panel. It reports whether the cursor
// was on it before.
func (l *List) Click(y int) bool {
	item := l.Item(y)
	if item < 0 || item == l.At {
		return item >= 0
	}
	l.At = item
	return false
}

// Find goes to the first item that has every word of a text, from an item on
// and round the end; by is 1 or -1. It reports whether there is one.
func (l *List) Find(text string, from, by int) bool {
	words, n := strings.Fields(strings.ToLower(text)), l.shown.Items
	for k := range n {
		i := ((from+k*by)%n + n) % n
		var line string
		if l.shown.Lines != nil {
			line = strings.Join(l.shown.Lines(i, false), " ")
		} else {
			line = l.shown.Line(i, false)
		}
		line = strings.ToLower(ansi.Strip(line))
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(line, w) }) {
			l.At = i
			return true
		}
	}
	return false
}

// Items is how many items were shown.
func (l *List) Items() int { return l.shown.Items }

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
		On(pgup, "", "a page up, down", func() { l.Page(-1) }).As("pgup pgdn"),
		On(pgdown, "", "", func() { l.Page(1) }),
		On(home, "", endWords, func() { l.Move(-l.shown.Items) }).As(ends),
		On(end, "", "", func() { l.Move(l.shown.Items) }),
	}
}

// Column is a column of a list: its head, its width, and whether its texts end
// alike.
type Column struct {
	Head  string
	Width int // 0 leaves it out
	Right bool
}

// Columns lay out the lines of a list.
type Columns []Column

// Line is a line of the list, cut to its columns.
func (c Columns) Line(texts ...string) string {
	var b strings.Builder
	b.WriteByte(' ')
	for i, col := range c {
		pad := Pad
		if col.Right {
			pad = PadLeft
		}
		if col.Width > 0 {
			b.WriteString(pad(Plain(texts[i]), col.Width) + " ")
		}
	}
	return b.String()
}

// Heads is the line above.
func (c Columns) Heads() string {
	heads := make([]string, len(c))
	for i := range c {
		heads[i] = c[i].Head
	}
	return c.Line(heads...)
}

// Room is what is left of w cells.
func (c Columns) Room(w int) int {
	w--
	for _, col := range c {
		if col.Width > 0 {
			w -= col.Width + 1
		}
	}
	return w
}
