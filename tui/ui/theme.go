package ui

import (
	"io"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Ink is a style as the two strings that go before and after a text, so that
// drawing a cell is a concatenation.
type Ink struct{ on, off string }

func newInk(s lipgloss.Style) Ink {
	on, off, _ := strings.Cut(s.Render("x"), "x")
	return Ink{on, off}
}

// Of draws a text in the ink.
func (i Ink) Of(s string) string {
	if s == "" {
		return ""
	}
	return i.on + s + i.off
}

// Write writes texts in the ink; nothing where all are empty.
func (i Ink) Write(b *strings.Builder, texts ...string) {
	on := i.on
	for _, s := range texts {
		if s != "" {
			b.WriteString(on)
			b.WriteString(s)
			on = ""
		}
	}
	if slices.ContainsFunc(texts, func(s string) bool { return s != "" }) {
		b.WriteString(i.off)
	}
}

// Wrap breaks a text into lines of up to w cells behind an indent, in the ink;
// none for an empty text.
func (i Ink) Wrap(text string, w, indent int) []string {
	if text == "" {
		return nil
	}
	lines := Wrap(text, w-indent-1)
	for k, l := range lines {
		lines[k] = Blanks(indent) + i.Of(l)
	}
	return lines
}

// Theme is every ink of the screen, made once for a color profile and a
// background.
type Theme struct {
	// Plain is true where the terminal shows no attributes at all; the cursor
	// is then marked with signs.
	Plain bool

	Text, Dim, Strong    Ink
	Heading              Ink // of a group of lines; the cursor's row and column
	Cursor, CursorFound  Ink // of the cursor; letters found there
	Good, Bad            Ink // of the status line
	Blue, Orange, Violet Ink
	faint                Ink
}

// shade pairs a color for dark backgrounds with one for light ones, each for
// 256 and for 16 colors.
type shade struct{ dark, light, dark16, light16 string }

// palette is the colors of a theme. Blue against orange stays apart in every
// common color blindness.
type palette struct{ blue, orange, violet, gray, faint shade }

var standard = palette{
	blue:   shade{"75", "25", "12", "4"},
	orange: shade{"214", "130", "11", "3"},
	violet: shade{"183", "97", "13", "5"},
	gray:   shade{"246", "242", "7", "8"},
	faint:  shade{"240", "250", "8", "7"},
}

// contrast keeps 7:1 against a black or a white background, as WCAG 2.1 asks in
// criterion 1.4.6. Its grays are the color of text that the terminal has.
var contrast = palette{
	blue:   shade{"123", "18", "14", "4"},
	orange: shade{"220", "88", "11", "1"},
	violet: shade{"219", "54", "15", "5"},
}

// NewTheme makes the inks for a terminal with so many colors, light or dark.
func NewTheme(profile termenv.Profile, light bool) *Theme { return inks(profile, light, &standard) }

// NewContrastTheme makes them in colors of high contrast.
func NewContrastTheme(profile termenv.Profile, light bool) *Theme {
	return inks(profile, light, &contrast)
}

func inks(profile termenv.Profile, light bool, p *palette) *Theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(!light)
	style := r.NewStyle
	in := func(s shade) lipgloss.Style {
		c := lipgloss.CompleteColor{TrueColor: s.dark, ANSI256: s.dark, ANSI: s.dark16}
		if light {
			c = lipgloss.CompleteColor{TrueColor: s.light, ANSI256: s.light, ANSI: s.light16}
		}
		return style().Foreground(c)
	}
	return &Theme{
		Plain:       profile == termenv.Ascii,
		Text:        newInk(style()),
		Dim:         newInk(in(p.gray)),
		Strong:      newInk(style().Bold(true)),
		Heading:     newInk(style().Bold(true).Underline(true)),
		Cursor:      newInk(style().Reverse(true)),
		CursorFound: newInk(style().Reverse(true).Underline(true)),
		Good:        newInk(in(p.blue)),
		Bad:         newInk(in(p.orange).Bold(true)),
		Blue:        newInk(in(p.blue)),
		Orange:      newInk(in(p.orange)),
		Violet:      newInk(in(p.violet)),
		faint:       newInk(in(p.faint)),
	}
}

// Chosen marks a word as the chosen one, with or without color.
func (t *Theme) Chosen(s string) string {
	if t.Plain {
		return "[" + s + "]"
	}
	return t.Cursor.Of(s)
}

// Line draws a line of a list that begins with a blank: marked where the
// cursor is, else in its ink.
func (t *Theme) Line(s string, here bool, ink Ink) string { return t.Found(s, "", here, ink) }

// Found is Line with the letters of a query marked.
func (t *Theme) Found(s, query string, here bool, ink Ink) string {
	found := t.Heading
	if here && t.Plain {
		s = ">" + s[1:]
	} else if here {
		ink, found = t.Cursor, t.CursorFound
	}
	if query == "" {
		return ink.Of(s)
	}
	return Marked(s, query, ink, found)
}
