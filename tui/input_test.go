package tui

import (
	"context"
	"errors"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/background"
	"alongside/tui/clip"
	"alongside/tui/ui"
)

func TestPasteOnTheBenchPins(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30")
	d.paste("w1-t6-pm\r\nWhite 2 die\n\n  w3 t6 sand  \n")
	d.wantPins("*black-30 w1-t6-pm w2-f-die w3-t6-sand")
	d.want("pinned 3 from the paste")
	d.press("u")
	d.wantPins("*black-30")
	d.paste("quit now\nw1-f-sand")
	if d.quit {
		t.Error("a pasted q quit")
	}
	d.wantPins("*black-30 w1-f-sand")
	d.want("pinned 1; no material")
}

func TestPasteIntoTheFinder(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.paste("w1 t6\x1b[2J pm")
	if strings.Contains(d.m.View(), "\x1b[2J") {
		t.Error("a pasted escape sequence reaches the screen")
	}
	d.press("ctrl+u")
	d.paste("w1-t6-pm")
	d.press("enter")
	d.wantPins("*w1-t6-pm")
	d.press("/")
	d.paste("w2 die\nblack-30\n")
	d.wantPins("*w1-t6-pm w2-f-die black-30")
}

// Most terminals send a carriage return for each end of a pasted line.
func TestPastedLineEnds(t *testing.T) {
	for _, end := range []string{"\n", "\r", "\r\n"} {
		d := plainDesk(t, 80, 24)
		d.paste("w2 die" + end + "black-30" + end)
		d.wantPins("*w2-f-die black-30")
		d.press("esc", "2")
		d.paste(strings.ReplaceAll(threeNeeds, "\n", end))
		if n := len(d.m.Now().Needs); n != 3 {
			t.Errorf("%q: have %d needs, want 3", end, n)
		}
	}
}

func TestLettersInOneMessage(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right") // then three keys that arrive together
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("sd/")})
	d.want("SI units · delta amount · typical first")
	d.want("Pin a material")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("white")})
	d.want("Find: white")
}

// The finder is open at the start; the key that opens it does no harm there.
func TestSlashInTheFinder(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.typeText("/w1 t6 pm")
	d.press("tab", "/")
	d.typeText("w2 die")
	d.press("enter")
	d.wantPins("*w1-t6-pm w2-f-die")
}

func TestFinder(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30")
	d.press("/")
	d.typeText("wite 1")
	d.want("not found; near it, white 1: ")
	d.press("ctrl+u")
	d.typeText("qqqq?") // letters, not keys
	d.want("Find: qqqq?")
	d.want("Nothing like that in the catalog")
	d.press("enter")
	d.want("nothing found to pin")
	d.press("ctrl+u")
	d.typeText("wx1")
	d.want("JIS WX1")                                        // says why it was found
	d.press("down", "down", "down", "down", "down", "enter") // known from memory alone: the last
	d.wantPins("*black-30 w1-t6-sand")
	d.press("/")
	d.want("Find: [wx1]")
	d.want("+ White 1-T6 sand")
	d.typeText("w2") // replaces the remembered query
	d.want("Find: w2")
	d.press("esc")
	d.wantPins("*black-30 w1-t6-sand")
}

func TestKeptQueryCanBeEdited(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30")
	d.press("/")
	d.typeText("w12")
	d.press("esc", "/", "backspace")
	d.want("Find: w1_")
}

func TestScreensCloseAndNest(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	for _, open := range []string{"/", "enter", "c", "?", "L", "w", "e"} {
		d.press(open)
		if d.m.OnTop() == nil {
			t.Fatalf("%s opens nothing", open)
		}
		d.press("esc")
		if d.m.OnTop() != nil {
			t.Fatalf("esc does not close what %s opened", open)
		}
	}
	d.press("enter", "?")
	d.want("Keys")
	d.press("?", "esc")
	d.want("Source: ")
	d.press("q")
	if d.quit || d.m.OnTop() != nil {
		t.Error("q on a screen must only close it")
	}
	d.press("enter", "1")
	if d.m.OnTop() != nil {
		t.Error("1 does not go back to the bench")
	}
	d.press("/")
	d.press("ctrl+c")
	if !d.quit {
		t.Error("ctrl+c must quit anywhere")
	}
}

func click(x, y int) tea.MouseMsg {
	return tea.MouseMsg{X: x, Y: y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}
}

// at finds a text in the frame.
func (d *user) at(text string) (x, y int) {
	d.t.Helper()
	for y, l := range strings.Split(d.m.View(), "\n") {
		if before, _, ok := strings.Cut(l, text); ok {
			return ui.Width(before), y
		}
	}
	d.t.Fatalf("no %q in\n%s", text, d.m.View())
	return 0, 0
}

func TestMouse(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.send(click(d.at("13–15")))
	d.want("Fatigue strength, White 1-T6 permanent mold")
	d.wantNot("Source:")
	d.send(click(d.at("13–15")))
	d.want("Source: Fatigue strength")
	wheel := tea.MouseMsg{Button: tea.MouseButtonWheelDown, Y: 10}
	d.send(wheel, wheel)
	d.want("lines 7–")
	d.press("esc")
	d.send(click(d.at("White 3")))
	d.want("Fatigue strength, White 3-T6 sand")
	d.send(click(d.at("Density")))
	d.want("Density, White 3-T6 sand")
	d.send(wheel) // moves what is in sight, not the cursor
	d.want("rows 3–14 of 16")
	d.want("Density, White 3-T6 sand")
	d.send(tea.MouseMsg{Button: tea.MouseButtonWheelLeft})
	d.want(", White 2-F die")
	for _, place := range [][2]int{{0, 0}, {79, 23}, {200, 5}, {5, 99}, {-1, -1}} {
		d.send(click(place[0], place[1]))
	}
	d.press("/")
	d.send(wheel, wheel, tea.MouseMsg{Button: tea.MouseButtonWheelUp})
	d.send(click(d.at("White 1-F sand")), click(d.at("White 1-F sand")))
	d.wantPins("*black-30 w1-t6-pm w2-f-die w3-t6-sand w1-f-sand")
}

func TestCopyFormsAndScopes(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("right", "down", "Y")
	last := func() clip.Payload { return d.copied[len(d.copied)-1] }
	if p := last(); !strings.Contains(p.Text, "Yield strength") || strings.Contains(p.Text, "Density") || p.HTML != "" {
		t.Errorf("row as text: %+v", p)
	}
	d.press("c", "down", "right", "enter")
	if p := last(); !strings.Contains(p.Text, "| Density") {
		t.Errorf("bench as Markdown: %s", p.Text)
	}
	d.press("c", "right", "right", "enter")
	if p := last(); !strings.Contains(p.HTML, "<table") || strings.Contains(p.Text, "<table") || !strings.Contains(p.Text, "Density") {
		t.Errorf("bench as HTML: %+v", p)
	}
	d.want("bench as HTML table: copied with a test")
	d.press("y")
	if last().HTML == "" {
		t.Error("y does not remember the form")
	}
	d.press("c", "left", "down", "down", "enter")
	if p := last(); strings.Contains(p.Text, "White 2") || !strings.Contains(p.Text, "White 1") || !strings.Contains(p.Text, "\t") {
		t.Errorf("cell tab-separated: %q", p.Text)
	}
	for _, p := range d.copied {
		if !strings.Contains(p.Text, "not for design") {
			t.Errorf("no caution in %q", p.Text)
		}
	}
}

// y copies the pin under the cursor in the rows in sight, in words and short enough
// for a mail however large the screen.
func TestCopyOfTheScreen(t *testing.T) {
	small := plainDesk(t, 80, 24, usual...)
	small.press("right", "right", "y")
	if text := small.copied[0].Text; !strings.Contains(text, "White 2-F die against Black 30") || !strings.Contains(text, "Density") || strings.Contains(text, "Machin") || strings.Contains(text, "White 1") {
		t.Errorf("not what is on the screen:\n%s", text)
	}
	large := plainDesk(t, 200, 60, usual...)
	large.press("end", "y")
	if text := large.copied[0].Text; strings.Count(text, "\n") > 45 || strings.Contains(text, "≠") || regexp.MustCompile(`\d'`).MatchString(text) || !strings.Contains(text, "unlike") {
		t.Errorf("%d lines, or marks:\n%s", strings.Count(text, "\n"), text)
	}
}

func TestCopyThatFails(t *testing.T) {
	d := plainDesk(t, 120, 40, usual...)
	for _, test := range []struct {
		err  error
		want string
	}{
		{errors.New("no clipboard, no file"), "the screen as text was not copied: no clipboard, no file"},
		{context.DeadlineExceeded, "the clipboard did not answer in time"},
	} {
		d.m.Copy = func(context.Context, clip.Payload) (string, error) { return "", test.err }
		d.press("y")
		d.want(test.want)
	}
	d.m.Copy = nil
	d.press("y")
	d.want("there is no clipboard")
}

func TestEveryKeyHasOneMeaningAndIsOnTheHelpPage(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range commandList() {
		for _, k := range c.Names {
			if seen[k] {
				t.Errorf("key %q has two meanings", k)
			}
			seen[k] = true
		}
		if (c.Shown == "" || c.Words == "") != (c.Words == "") {
			t.Errorf("%v: keys and words on the help page must go together", c.Names)
		}
	}
	for _, k := range keysLine {
		if !seen[k] {
			t.Errorf("the keys line has %q, which does nothing", k)
		}
	}
	help := strings.Join(helpLines(ui.NewTheme(3, false), nil, commandList(), "", 120), "\n")
	for k := range seen {
		if len(k) == 1 && !strings.Contains(help, k) {
			t.Errorf("key %q is not on the help page", k)
		}
	}
}

// A paste that was cut says so.
func TestCutPaste(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Repeat("w", background.LongestPaste)), Paste: true})
	d.want("the paste was too long: its first 16 kB were taken")
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("short"), Paste: true})
	d.wantNot("too long")
}

// A paste takes what its place can hold, and a line says where that is not all.
func TestLongPastesSaySo(t *testing.T) {
	d := plainDesk(t, 120, 40, "black-30")
	d.paste(strings.Repeat("w1-t6-pm\n", 100) + "w2-f-die\nw3-t6-sand")
	d.want("pinned 100 of the first 100 names of the paste; 2 more were left out")
	if strings.Contains(d.pins(), "w3") {
		t.Errorf("pins: %s", d.pins())
	}
	d = plainDesk(t, 120, 40, usual...)
	for _, open := range [][]string{{"/"}, {"esc", "2"}, {"esc", "D"}} {
		d.press(open...)
		d.paste("a" + strings.Repeat("b", ui.FieldLimit))
		d.want("only the first 200 characters of the paste are taken")
		d.press("ctrl+u")
		d.paste("abc")
		if strings.Contains(d.m.View(), "only the first") {
			t.Errorf("%v: the line stays", open)
		}
		d.press("ctrl+u")
	}
}

// A terminal that does not mark a paste sends its letters like keys.
func TestUnmarkedPaste(t *testing.T) {
	d := plainDesk(t, 120, 40, usual...)
	before := d.pins()
	for _, line := range []string{"w3-t6-sand", "w3-f-sand"} {
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(line)})
		d.press("enter")
	}
	if got := d.pins(); !strings.HasPrefix(strings.ReplaceAll(got, "*", ""), strings.ReplaceAll(before, "*", "")) || !strings.Contains(got, "w3-t6-sand") {
		t.Errorf("pins %s, before %s", got, before)
	}
	d = plainDesk(t, 120, 40, usual...)
	d.m.Copy = func(context.Context, clip.Payload) (string, error) {
		t.Error("letters of a paste copied")
		return "", nil
	}
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("/w3-t6-sand")}) // typed ahead
	d.want("Find: w3-t6-sand")
	d.m.CloseAll()
	for _, words := range []string{"gray", "my part", "xylem", "exam"} {
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(words)})
		d.m.CloseAll()
	}
	if got := len(strings.Fields(d.pins())); got != len(usual) {
		t.Errorf("pins %s", d.pins())
	}
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("xx")}) // a key held down
	if got := len(strings.Fields(d.pins())); got != len(usual)-2 {
		t.Errorf("x held down took off %d pins", len(usual)-got)
	}
}

// The line of a search fills the window and no more.
func TestSearchLineFits(t *testing.T) {
	for _, w := range []int{80, 120, 200} {
		d := plainDesk(t, w, 24, usual...)
		d.press(":")
		d.fits()
		d.typeText("xyzzy")
		d.press("enter")
		d.fits()
	}
}

// v draws the row under the cursor, and says so where there is nothing to draw.
func TestPictureKey(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("v")
	d.want("Picture: Tensile strength")
	d.want("●")
	d.fits()
	d.press("esc", "x", "x", "x", "v")
	d.wantNot("Picture:")
}
