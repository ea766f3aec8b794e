package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"alongside/data"
	"alongside/tui/background"
	"alongside/tui/ui"
)

// anyMessage draws what a terminal can send.
func anyMessage(commands []*command) *rapid.Generator[tea.Msg] {
	var keys []string
	for k := range keyTypes {
		if k != "ctrl+z" {
			keys = append(keys, k)
		}
	}
	for _, c := range commands {
		for _, k := range c.Names {
			if len([]rune(k)) == 1 {
				keys = append(keys, k)
			}
		}
	}
	// Map order must not decide what a seed means.
	key := rapid.SampledFrom(sorted(keys))
	text := rapid.OneOf(
		rapid.String(),
		rapid.SampledFrom([]string{"w1-t6-pm\nw2-f-die", "380 die", "40 ksi", "12 µin/in·°F", "\x1b[2J\x1b[31m", "2 %", "-5", "1e400 MPa", "a\u202eb", "宽字"}),
	)
	size := rapid.SampledFrom([]int{0, 1, 16, 24, 40, 60, 61, 79, 80, 110, 160, 300})
	return rapid.Custom(func(t *rapid.T) tea.Msg {
		switch rapid.IntRange(0, 12).Draw(t, "kind") {
		case 0:
			return tea.WindowSizeMsg{Width: size.Draw(t, "w"), Height: size.Draw(t, "h")}
		case 1:
			return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text.Draw(t, "paste")), Paste: true}
		case 2:
			return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text.Draw(t, "typed")), Alt: rapid.Bool().Draw(t, "alt")}
		case 3:
			return tea.MouseMsg{
				X: rapid.IntRange(-2, 310).Draw(t, "x"), Y: rapid.IntRange(-2, 310).Draw(t, "y"), Shift: rapid.Bool().Draw(t, "shift"), Alt: rapid.Bool().Draw(t, "mouse alt"), Ctrl: rapid.Bool().Draw(t, "ctrl"),
				Action: tea.MouseAction(rapid.IntRange(0, 2).Draw(t, "action")), Button: tea.MouseButton(rapid.IntRange(0, 11).Draw(t, "button")),
			}
		case 4:
			return background.Shade(rapid.IntRange(0, 2).Draw(t, "shade"))
		}
		alt := rapid.Bool().Draw(t, "alt")
		if rapid.Bool().Draw(t, "any key") {
			return tea.KeyMsg{Type: tea.KeyType(rapid.SampledFrom(allKeyTypes()).Draw(t, "type")), Alt: alt}
		}
		msg := keyMsg(key.Draw(t, "key"))
		msg.Alt = alt && rapid.Bool().Draw(t, "alt too") // most keys are pressed alone
		return msg
	})
}

// allKeyTypes is every key that Bubble Tea has a name for; ctrl+z aside, which
// stops a program.
func allKeyTypes() []int {
	var list []int
	for kind := -128; kind < 128; kind++ {
		if name := tea.KeyType(kind).String(); name != "" && name != "ctrl+z" {
			list = append(list, kind)
		}
	}
	return list
}

// Every key, with and without alt, at the end of every field and before its last
// letter.
func TestEveryKeyInEveryField(t *testing.T) {
	if testing.Short() {
		t.Skip("every key in every place")
	}
	for name, open := range map[string][]string{
		"finder": {"/"}, "needs": {"2"}, "need": {"n"}, "band": {"e"}, "service": {"S"}, "range": {"E"}, "target": {"w", "t"},
		"size": {"5", "i"}, "mass": {"D"}, "price": {"D", "up", "ctrl+end"},
	} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, 80, 24, usual...)
			again := func(back int) {
				d.m.Screens = nil
				d.press(open...)
				if d.m.OnTop() == nil || !d.m.OnTop().Typing() {
					t.Fatalf("%v opens no field", open)
				}
				d.press("ctrl+u")
				d.typeText("4 in")
				for range back {
					d.press("left")
				}
			}
			for _, kind := range allKeyTypes() {
				for _, r := range []string{"d", "f", "b", "?"} {
					if kind != int(tea.KeyRunes) && r != "d" {
						continue
					}
					for _, alt := range []bool{false, true} {
						for back := range 3 {
							again(back)
							d.send(tea.KeyMsg{Type: tea.KeyType(kind), Runes: []rune(r), Alt: alt})
							d.fits()
						}
					}
				}
			}
		})
	}
}

func sorted(list []string) []string {
	out := strings.Fields(strings.Join(list, " "))
	for i := range out {
		for j := i; j > 0 && out[j] < out[j-1]; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// Whatever comes, nothing panics, the frame fits the window, the bench stays
// whole, and no control character but our own colors reaches the terminal.
func TestAnyMessages(t *testing.T) {
	catalogs := map[string]deskOptions{
		"plain": {w: 80, h: 24, profile: termenv.Ascii},
		"color": {w: 160, h: 50, profile: termenv.TrueColor},
		"real":  {w: 120, h: 40, profile: termenv.ANSI256, catalog: data.Catalog(), book: data.Foundry, rules: data.Watch},
	}
	for name, options := range catalogs {
		t.Run(name, func(t *testing.T) { rapid.Check(t, anyMessages(options)) })
	}
}

func FuzzMessages(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(anyMessages(deskOptions{w: 80, h: 24, profile: termenv.Ascii, catalog: invented(f)})))
}

func anyMessages(options deskOptions) func(*rapid.T) {
	messages := anyMessage(commandList())
	return func(rt *rapid.T) {
		d := newDesk(rt, options)
		if rapid.Bool().Draw(rt, "begin with pins") {
			d.paste(strings.Join(usual, "\n"))
		}
		for _, msg := range rapid.SliceOfN(messages, 1, 40).Draw(rt, "messages") {
			d.send(msg)
			d.check(rt)
		}
	}
}

// check is fits and more, for one run of a property.
func (d *user) check(t *rapid.T) {
	view := d.m.View()
	lines := strings.Split(view, "\n")
	if h := d.m.height; h > 0 && len(lines) > h {
		t.Fatalf("%d lines in a window of %d\n%s", len(lines), h, view)
	}
	for _, l := range lines {
		if w := ui.Width(l); d.m.width > 0 && w > d.m.width {
			t.Fatalf("a line of %d cells in a window of %d: %q", w, d.m.width, l)
		}
	}
	rest := view
	for {
		at := strings.IndexFunc(rest, func(r rune) bool { return r < ' ' && r != '\n' })
		if at < 0 {
			break
		}
		sgr := strings.TrimLeft(strings.TrimPrefix(rest[at:], "\x1b["), "0123456789;")
		if !strings.HasPrefix(rest[at:], "\x1b[") || !strings.HasPrefix(sgr, "m") {
			t.Fatalf("a control character reaches the terminal: %.20q", rest[at:])
		}
		rest = sgr
	}
	b := &d.m.Now().Bench
	if b.Baseline < 0 || b.Baseline >= max(len(b.Pins), 1) {
		t.Fatalf("baseline %d of %d pins", b.Baseline, len(b.Pins))
	}
	if len(b.Pins) > 0 && d.m.CursorPin() == nil {
		t.Fatalf("the cursor is on no pin: column %d of %d", d.m.Col, len(b.Pins))
	}
}
