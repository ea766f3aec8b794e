package ui

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// luminance is the relative luminance of a color of the 256 that xterm has (WCAG
// 2.1, definition of relative luminance).
func luminance(t *testing.T, index string) float64 {
	n, err := strconv.Atoi(index)
	if err != nil {
		t.Fatal(err)
	}
	c := termenv.ConvertToRGB(termenv.ANSI256Color(n))
	lin := func(v float64) float64 {
		if v <= 0.03928 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}

// Every color of the theme of high contrast keeps 7:1 against black on dark
// backgrounds and against white on light ones (WCAG 2.1, 1.4.6).
func TestContrast(t *testing.T) {
	seen := 0
	for name, s := range map[string]shade{"blue": contrast.blue, "orange": contrast.orange, "violet": contrast.violet} {
		for _, c := range []string{s.dark, s.dark16} {
			seen++
			if r := (luminance(t, c) + 0.05) / 0.05; r < 7 {
				t.Errorf("%s %s is %.1f:1 against black", name, c, r)
			}
		}
		for _, c := range []string{s.light, s.light16} {
			if r := 1.05 / (luminance(t, c) + 0.05); r < 7 {
				t.Errorf("%s %s is %.1f:1 against white", name, c, r)
			}
		}
	}
	if seen != 6 {
		t.Fatal(seen)
	}
}

// In high contrast nothing is gray: what is dim has the color of text that the
// terminal has, which reads well whatever the background.
func TestContrastHasNoGray(t *testing.T) {
	color := regexp.MustCompile(`\x1b\[[0-9;]*38;5;`)
	for _, light := range []bool{false, true} {
		std, th := NewTheme(termenv.ANSI256, light), NewContrastTheme(termenv.ANSI256, light)
		if !color.MatchString(std.Dim.Of("x")) || color.MatchString(th.Dim.Of("x")+th.faint.Of("x")+th.Text.Of("x")+th.Strong.Of("x")) {
			t.Errorf("dim is %q, faint %q", th.Dim.Of("x"), th.faint.Of("x"))
		}
		if th.Blue == std.Blue || th.Orange == std.Orange || th.Blue == th.Orange || !color.MatchString(th.Blue.Of("x")) {
			t.Errorf("blue %q, orange %q", th.Blue.Of("x"), th.Orange.Of("x"))
		}
		if th.Cursor == th.Text || lipgloss.Width(th.Cursor.Of("x")) != 1 {
			t.Error("the cursor does not show")
		}
	}
	if p := NewContrastTheme(termenv.Ascii, false); !p.Plain || p.Blue.Of("x") != "x" {
		t.Error("colors where there are none")
	}
}
