package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"alongside/props/sheet"
)

const ellipsis = "…"

// width is the number of cells a text takes, escape sequences aside.
func width(s string) int { return ansi.StringWidth(s) }

// cut shortens a text to w cells.
func cut(s string, w int) string {
	if w <= 0 {
		return ""
	}
	if width(s) <= w {
		return s
	}
	return ansi.Truncate(s, w, ellipsis)
}

// pad cuts or fills a text to exactly w cells, text at the left.
func pad(s string, w int) string {
	s = cut(s, w)
	return s + blanks(w-width(s))
}

// padLeft does the same with the text at the right.
func padLeft(s string, w int) string {
	s = cut(s, w)
	return blanks(w-width(s)) + s
}

const manyBlanks = "                                                                                                                                "

func blanks(n int) string {
	switch {
	case n <= 0:
		return ""
	case n <= len(manyBlanks):
		return manyBlanks[:n]
	}
	return strings.Repeat(" ", n)
}

// plain takes out what must not reach the terminal.
func plain(s string) string { return sheet.Clean(s) }

// wrap breaks a text into lines of at most w cells.
func wrap(s string, w int) []string {
	if w <= 0 {
		return nil
	}
	return strings.Split(ansi.Wrap(plain(s), w, ""), "\n")
}
