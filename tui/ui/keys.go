package ui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// Key is one line of a table of keys: what the keys do, and what the keys line
// and the help page say of them.
type Key struct {
	Names []string // as Bubble Tea calls them; "space" for a blank
	Label string   // the keys as the keys line writes them
	Line  string   // the word beside it; empty: not on the keys line
	Group string   // heading on the help page
	Shown string   // the keys as the help page writes them
	Words string   // what they do, on the help page; empty: told with another key
	// Do is nil where a field or another key of the table does it.
	Do func() tea.Cmd
}

// Keys is a table of keys. Where a name stands twice the first one counts.
type Keys []Key

// On is a key that shows and changes things, by its names with blanks between;
// nil where the text field does it
// or another key of the table.
func On(names, line, words string, do func()) Key {
	if do == nil {
		return Send(names, line, words, nil)
	}
	return Send(names, line, words, func() tea.Cmd { do(); return nil })
}

// Send is a key whose work may go on beside the screen.
func Send(names, line, words string, do func() tea.Cmd) Key {
	all, first := strings.Fields(names), ""
	if len(all) > 0 {
		first = all[0]
	}
	return Key{Names: all, Label: first, Line: line, Shown: first, Words: words, Do: do}
}

// As is the key with the keys written in another way than by the first name.
func (k Key) As(shown string) Key {
	k.Label, k.Shown = shown, shown
	return k
}

// Find is the key that a message presses; nil where none is.
func (k Keys) Find(msg tea.KeyMsg) *Key {
	name := msg.String()
	if name == " " {
		name = "space"
	}
	for i := range k {
		if k[i].Do != nil && slices.Contains(k[i].Names, name) {
			return &k[i]
		}
	}
	return nil
}

// Reached is the table as Find goes through it: without the names that a key
// further up has, and without keys that have none left.
func (k Keys) Reached() Keys {
	var out Keys
	taken := map[string]bool{}
	for _, e := range k {
		if e.Do == nil || len(e.Names) == 0 {
			out = append(out, e)
			continue
		}
		left := slices.DeleteFunc(slices.Clone(e.Names), func(n string) bool { return taken[n] })
		if len(left) == 0 {
			continue
		}
		if taken[e.Label] {
			e = e.As(left[0])
		}
		for _, n := range left {
			taken[n] = true
		}
		out = append(out, e)
	}
	return out
}

// Row draws a keys line in w cells. The keys of the end are always on it;
// of the others those that fit, the first ones first.
func (k Keys) Row(t *Theme, end Keys, w int) string {
	const gap = 2
	var b strings.Builder
	used := 0
	put := func(e *Key) {
		if used > 0 {
			b.WriteString(t.faint.Of(Blanks(gap)))
			used += gap
		}
		b.WriteString(t.Strong.Of(e.Label) + " " + t.Dim.Of(e.Line))
		used += e.width()
	}
	room := w
	for i := range end {
		room -= end[i].width() + gap
	}
	var shown []*Key
	all := 0
	for i := range k {
		if k[i].Line != "" {
			shown = append(shown, &k[i])
			all += k[i].width() + gap
		}
	}
	if len(end) > 0 && all-gap > room {
		room -= gap // for the ellipsis
	}
	for _, e := range shown {
		need := e.width()
		if used > 0 {
			need += gap
		}
		if used+need > room {
			if len(end) > 0 || used+gap <= room+1 {
				b.WriteString(" " + t.faint.Of(Ellipsis))
				used += gap
			}
			break
		}
		put(e)
	}
	for i := range end {
		put(&end[i])
	}
	return b.String()
}

func (k *Key) width() int { return Width(k.Label) + 1 + Width(k.Line) }

const helpKeyWidth = 11

// Help is the keys of a group with what they do, under its heading.
func (k Keys) Help(t *Theme, heading, group string) []string {
	block := []string{" " + t.Heading.Of(heading)}
	for i := range k {
		if e := &k[i]; e.Group == group && e.Words != "" {
			block = append(block, "  "+t.Strong.Of(Pad(e.Shown, max(helpKeyWidth, Width(e.Shown))))+" "+e.Words)
		}
	}
	return append(block, "")
}

// Beside spreads blocks of lines over columns of equal width, filling each
// before the next.
func Beside(blocks [][]string, columns, w int) []string {
	total, longest := 0, 0
	for _, b := range blocks {
		total += len(b)
	}
	var cols [][]string
	for _, b := range blocks {
		last := len(cols) - 1
		if last < 0 || len(cols[last])+len(b) > (total+columns-1)/columns+4 && len(cols) < columns {
			cols, last = append(cols, nil), last+1
		}
		cols[last] = append(cols[last], b...)
		longest = max(longest, len(cols[last]))
	}
	lines := make([]string, longest)
	for _, c := range cols {
		for i, l := range Fill(c, longest) {
			lines[i] += Pad(l, w)
		}
	}
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return lines
}
