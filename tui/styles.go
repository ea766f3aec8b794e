package tui

import (
	"io"
	"strings"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/background"
)

// ink is a style as the two strings that go before and after a text, so that
// drawing a cell is a concatenation.
type ink struct{ on, off string }

func newInk(s lipgloss.Style) ink {
	on, off, _ := strings.Cut(s.Render("x"), "x")
	return ink{on, off}
}

func (i ink) of(s string) string {
	if s == "" {
		return ""
	}
	return i.on + s + i.off
}

// theme is every style of the screen, made once for a colour profile and a
// background.
type theme struct {
	// plain is true where the terminal shows no attributes at all; the cursor
	// is then marked with brackets.
	plain bool

	text, dim, strong, title, group, rule ink
	base                                  ink // the baseline column
	cursor, picked                        ink // the cell, and its row and column
	good, bad                             ink // status line
	verdict                               [compare.IsBaseline + 1]ink
	help                                  help.Styles
}

// shade pairs a colour for dark backgrounds with one for light ones, each for
// 256 and for 16 colours.
type shade struct{ dark, light, dark16, light16 string }

// The verdict colours are blue against orange, which stay apart in every
// common colour blindness; the glyph says the same without colour.
var (
	blue   = shade{"75", "25", "12", "4"}
	orange = shade{"214", "130", "11", "3"}
	violet = shade{"183", "97", "13", "5"}
	gray   = shade{"246", "242", "7", "8"}
	faint  = shade{"240", "250", "8", "7"}
)

func newTheme(profile termenv.Profile, bg background.Shade) *theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(bg != background.Light)
	color := func(s shade) lipgloss.TerminalColor {
		if bg == background.Light {
			return lipgloss.CompleteColor{TrueColor: s.light, ANSI256: s.light, ANSI: s.light16}
		}
		return lipgloss.CompleteColor{TrueColor: s.dark, ANSI256: s.dark, ANSI: s.dark16}
	}
	style := r.NewStyle
	in := func(s shade) lipgloss.Style { return style().Foreground(color(s)) }
	t := &theme{
		plain:  profile == termenv.Ascii,
		text:   newInk(style()),
		dim:    newInk(in(gray)),
		strong: newInk(style().Bold(true)),
		title:  newInk(style().Bold(true)),
		group:  newInk(style().Bold(true).Underline(true)),
		rule:   newInk(in(faint)),
		base:   newInk(style().Bold(true)),
		cursor: newInk(style().Reverse(true)),
		picked: newInk(style().Bold(true).Underline(true)),
		good:   newInk(in(blue)),
		bad:    newInk(in(orange).Bold(true)),
		help: help.Styles{
			Ellipsis: in(gray), ShortKey: style().Bold(true), ShortDesc: in(gray), ShortSeparator: in(faint),
		},
	}
	for v, s := range map[compare.Verdict]lipgloss.Style{
		compare.NoFigure: in(gray), compare.Neutral: in(gray), compare.Beats: in(blue), compare.Misses: in(orange), compare.Level: style(),
		compare.Overlaps: in(violet), compare.Unlike: in(gray), compare.IsBaseline: style().Bold(true),
	} {
		t.verdict[v] = newInk(s)
	}
	return t
}

// counts colours counts like "✓4 ✗1" by their glyphs.
func (t *theme) counts(s string) string {
	parts := strings.Split(s, " ")
	for i, part := range parts {
		for v := range t.verdict {
			if sign := report.Glyph(compare.Verdict(v)); sign != "" && strings.HasPrefix(part, sign) {
				parts[i] = t.verdict[v].of(part)
			}
		}
	}
	return strings.Join(parts, " ")
}
