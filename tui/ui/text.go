package ui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"alongside/props/sheet"
)

// Ellipsis stands for what is cut.
const Ellipsis = "…"

// Roomy is the width from which on names are written out.
const Roomy = 110

// ReadWidth is the width beyond which running text is hard to read.
const ReadWidth = 110

// Width is the number of cells a text takes, escape sequences aside.
func Width(s string) int {
	n := 0
	for _, r := range s {
		if !sheet.Single(r) {
			return ansi.StringWidth(s)
		}
		n++
	}
	return n
}

// Cut shortens a text to w cells.
func Cut(s string, w int) string {
	if w <= 0 {
		return ""
	}
	if Width(s) <= w {
		return s
	}
	return ansi.Truncate(s, w, Ellipsis)
}

// Pad cuts or fills a text to exactly w cells, text at the left.
func Pad(s string, w int) string {
	s = Cut(s, w)
	return s + Blanks(w-Width(s))
}

// PadLeft does the same with the text at the right.
func PadLeft(s string, w int) string {
	s = Cut(s, w)
	return Blanks(w-Width(s)) + s
}

const manyBlanks = "                                                                                                                                "

// Blanks is n blanks; none where n is not above zero.
func Blanks(n int) string {
	switch {
	case n <= 0:
		return ""
	case n <= len(manyBlanks):
		return manyBlanks[:n]
	}
	return strings.Repeat(" ", n)
}

// Plain takes out what must not reach the terminal.
func Plain(s string) string { return sheet.Clean(s) }

// Wrap breaks a text into lines of at most w cells.
func Wrap(s string, w int) []string {
	if w <= 0 {
		return nil
	}
	return strings.Split(ansi.Wrap(Plain(s), w, ""), "\n")
}

// Fill cuts or fills lines to exactly n.
func Fill(lines []string, n int) []string {
	for len(lines) < n {
		lines = append(lines, "")
	}
	return lines[:max(n, 0)]
}

// Few is at most n lines of w cells; the last one is cut where there are more.
func Few(lines []string, n, w int) []string {
	if len(lines) <= n {
		return lines
	}
	return append(lines[:n-1:n-1], Cut(lines[n-1]+" "+strings.TrimLeft(lines[n], " "), w))
}

// Hanging sets a text beside its label, wrapped under itself. The label takes
// at least labels cells.
func Hanging(t *Theme, label, text string, labels, w int) []string {
	indent := 3
	if label != "" {
		indent = max(labels, Width(label)+2) + 2
	}
	var lines []string
	for i, l := range Wrap(text, w-indent-1) {
		if i == 0 && label != "" {
			lines = append(lines, "  "+t.Dim.Of(Pad(Plain(label), indent-2))+l)
		} else {
			lines = append(lines, Blanks(indent)+l)
		}
	}
	return lines
}

// Clamp keeps v in lo..hi, and at lo where the two cross.
func Clamp(v, lo, hi int) int { return max(lo, min(v, hi)) }

// Or is s, or what stands in for an empty one.
func Or(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}

// Plural is a count with its noun.
func Plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
