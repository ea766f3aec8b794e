package sheet

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Clean takes out of a text what must not reach a terminal, a mail or a
// spreadsheet: control characters and line breaks become a blank, marks that
// turn the direction of writing or hide text are dropped.
func Clean(s string) string {
	if strings.IndexFunc(s, unsafe) < 0 {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case !unsafe(r):
			return r
		case unicode.Is(unicode.Cf, r):
			return -1
		}
		return ' '
	}, s)
}

func unsafe(r rune) bool {
	return !Single(r) && (!unicode.IsGraphic(r) || r == unicode.ReplacementChar || unicode.In(r, unicode.Zl, unicode.Zp))
}

// CleanLines is Clean for a text of several lines, which stay.
func CleanLines(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = Clean(lines[i])
	}
	return strings.Join(lines, "\n")
}

// cellText makes a text fit for a cell of a spreadsheet: cleaned, and not a
// formula. A text that begins like one gets an apostrophe, which spreadsheets
// do not show. Numbers with a sign stay numbers.
func cellText(s string) string {
	s = Clean(s)
	if _, err := strconv.ParseFloat(s, 64); err == nil && strings.Trim(s, "+-.0123456789eE") == "" {
		return s
	}
	// A program that trims blanks when it reads finds the sign behind them.
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " "))
	if strings.ContainsRune("=+-@＝＋－＠", first) {
		return "'" + s
	}
	return s
}
