package sheet

import (
	"strconv"
	"strings"

	"github.com/rivo/uniseg"
)

// least is the narrowest page that text is laid out for.
const least = 40

// Text writes the document as plain lines of up to width cells that stay
// aligned where characters are equally wide. A table that cannot be made so
// narrow is wider. Blocks have an empty line between them.
func (d *Doc) Text(width int) string {
	width = max(width, least)
	var parts []string
	for _, block := range d.Blocks {
		var b strings.Builder
		switch x := block.(type) {
		case Title:
			Wrap(&b, width, "", "", string(x))
		case Lines:
			wrapAll(&b, width, x)
		case *List:
			x.text(&b, width)
		case *Table:
			x.text(&b, width)
		case *Picture:
			x.text(&b, width)
		}
		parts = append(parts, b.String())
	}
	var notes, foot strings.Builder
	for i := range d.Notes {
		n := &d.Notes[i]
		mark := n.Mark
		if n.Number > 0 {
			mark = superscript(n.Number)
		}
		if mark == "" {
			Wrap(&notes, width, "", "  ", n.Text)
		} else {
			Wrap(&notes, width, "", "   ", pad(mark, 2)+" "+n.Text)
		}
	}
	wrapAll(&foot, width, d.Foot)
	if d.Caution != "" {
		wrapAll(&foot, width, []string{d.Caution})
	}
	return joined("\n", append(parts, notes.String(), foot.String())...)
}

// text writes the label on a line of its own and the texts behind an indent.
func (l *List) text(b *strings.Builder, width int) {
	if l.Title != "" {
		Wrap(b, width, "", "", strings.ToUpper(l.Title))
	}
	for _, it := range l.Items {
		if it.Label != "" {
			Wrap(b, width, "", "  ", it.Label)
		}
		Wrap(b, width, "  ", "    ", it.Text)
	}
}

func wrapAll(b *strings.Builder, width int, lines []string) {
	for _, l := range lines {
		Wrap(b, width, "", "  ", l)
	}
}

// Wrap writes a paragraph, cleaned, in lines of up to width cells. Its first
// line begins with one indent, those after it with another.
func Wrap(b *strings.Builder, width int, first, after, text string) {
	at := 0
	for _, word := range strings.Fields(Clean(text)) {
		n := Width(word)
		switch {
		case at == 0:
			b.WriteString(first)
			at = Width(first)
		case at+1+n > width:
			b.WriteString("\n" + after)
			at = Width(after)
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += n
	}
	b.WriteByte('\n')
}

// Width is how many cells of a terminal a text takes. Letters, figures and
// signs of the trade stand in one cell each, which saves looking them up.
func Width(s string) int {
	n := 0
	for _, r := range s {
		if !Single(r) {
			return uniseg.StringWidth(s)
		}
		n++
	}
	return n
}

// Single reports whether a character takes one cell whatever stands beside it:
// Latin and Greek, dashes and quotes, raised and lowered figures, the signs of
// mathematics. Its branches are the blocks of Unicode.
func Single(r rune) bool {
	return ' ' <= r && r < 0x7f || 0xa1 <= r && r < 0x300 && r != 0xad || 0x391 <= r && r < 0x3ca ||
		0x2010 <= r && r < 0x2028 || 0x2070 <= r && r < 0x2095 || 0x2190 <= r && r < 0x2194 || 0x2200 <= r && r < 0x2300 || r == 0x2713 || r == 0x2717
}

// pad fills a text up with blanks to n cells.
func pad(s string, n int) string { return s + blanks(n-Width(s)) }

func blanks(n int) string {
	const some = "                                                                                "
	if n > len(some) {
		return strings.Repeat(" ", n)
	}
	return some[:max(n, 0)]
}

// superscript writes the numbers of notes: "¹,³".
func superscript(notes ...int) string {
	raised := [...]string{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"}
	var s string
	for i, n := range notes {
		if i > 0 {
			s += ","
		}
		for _, digit := range strconv.Itoa(n) {
			s += raised[digit-'0']
		}
	}
	return s
}
