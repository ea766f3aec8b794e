package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"alongside/tui/background"
)

func TestBenchFrames(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 40}, {200, 60}, {60, 16}} {
		t.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(t *testing.T) {
			d := plainDesk(t, size[0], size[1], usual...)
			d.press("right", "down")
			d.fits()
			golden(t, fmt.Sprintf("bench-%dx%d", size[0], size[1]), d.m.View())
		})
	}
}

func TestColorFrames(t *testing.T) {
	for _, test := range []struct {
		name    string
		w, h    int
		profile termenv.Profile
		shade   background.Shade
	}{
		{"dark-256-80x24", 80, 24, termenv.ANSI256, background.Dark},
		{"light-16-80x24", 80, 24, termenv.ANSI, background.Light},
		{"light-true-120x40", 120, 40, termenv.TrueColor, background.Light},
		{"dark-16-200x60", 200, 60, termenv.ANSI, background.Dark},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := newDesk(t, deskOptions{w: test.w, h: test.h, profile: test.profile, shade: test.shade}, usual...)
			d.press("right", "down")
			d.fits()
			golden(t, "color-"+test.name, strings.ReplaceAll(d.m.View(), "\x1b", "␛"))
		})
	}
}

// Each screen as it opens over the usual bench at 80×24.
func TestScreenFrames(t *testing.T) {
	for name, keys := range map[string][]string{
		"finder": {"/"}, "card": {"right", "enter"}, "copy": {"c"}, "copy-row": {"c", "down", "right"}, "help": {"?"},
		"legend": {"L"}, "sense": {"w"}, "band": {"e"}, "amount": {"d"}, "minimum-si": {"m", "s"}, "status": {"t"},
	} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, 80, 24, usual...)
			d.press(keys...)
			d.fits()
			golden(t, "screen-"+name, d.m.View())
		})
	}
	t.Run("empty", func(t *testing.T) {
		d := plainDesk(t, 80, 24)
		d.fits()
		golden(t, "screen-empty", d.m.View())
	})
	t.Run("finder-200", func(t *testing.T) {
		d := plainDesk(t, 200, 60, usual...)
		d.press("/")
		d.typeText("white t6")
		d.press("down")
		d.fits()
		golden(t, "screen-finder-200x60", d.m.View())
	})
}

func TestNoColorHasNoEscapes(t *testing.T) {
	d := plainDesk(t, 120, 40, usual...)
	for _, k := range []string{"right", "/", "esc", "enter", "esc", "c", "esc", "?", "esc", "w"} {
		d.press(k)
		if strings.Contains(d.m.View(), "\x1b") {
			t.Fatalf("an escape sequence after %s: %q", k, d.m.View())
		}
	}
}

func TestCursorIsSeenWithoutColor(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right")
	d.want("[")
	d.want(">White 1")
	d.want(">Tensile")
}

func TestSmallWindowSaysSoAndRecovers(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	before := d.m.View()
	for _, size := range [][2]int{{59, 24}, {80, 15}, {10, 3}, {1, 1}} {
		d.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		d.fits()
		d.press("x", "t", "/") // must not change a bench that cannot be seen
		if size[0] > 50 {
			d.want("60×16")
		}
	}
	d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	if after := d.m.View(); after != before {
		t.Errorf("after a small window:\n%s", differences(before, after))
	}
}

func TestBackgroundAnswerChangesTheColors(t *testing.T) {
	d := newDesk(t, deskOptions{w: 80, h: 24, profile: termenv.ANSI256}, usual...)
	dark := d.m.View()
	d.send(background.Light)
	light := d.m.View()
	if light == dark {
		t.Error("light and dark look the same")
	}
	d.send(background.Unknown)
	if d.m.View() != light {
		t.Error("an unknown background changed the colors")
	}
}

// Columns that do not fit are off the screen at the right, and the line says
// how many; the baseline stays.
func TestScrollSideways(t *testing.T) {
	d := plainDesk(t, 60, 20, append(usual, "w1-f-sand", "w1-t6-sand")...)
	d.want("more ›")
	d.want("Black 30")
	d.wantNot("‹")
	d.press("end")
	d.want("‹")
	d.wantNot("›")
	d.want("Black 30")
	d.want(">White 1")
	d.fits()
	d.press("home")
	d.want("more ›")
}

func TestScrollDownKeepsHeads(t *testing.T) {
	d := plainDesk(t, 80, 18, usual...)
	d.press("G")
	d.want("Black 30")
	d.want(">Machining")
	d.want("of ")
	d.press("g")
	d.want("Mechanical")
	d.press("pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "down")
	d.want(">Machining")
	d.press("pgup", "pgup", "pgup", "pgup", "pgup", "pgup")
	d.want(">Tensile")
	d.fits()
}
