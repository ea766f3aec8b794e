package report

import (
	"strings"
	"unicode"
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
	return r != ' ' && !unicode.IsGraphic(r) || r == unicode.ReplacementChar || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r)
}
