package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// burst sends a text as a terminal without bracketed paste does that is read at
// once: words as one message each, blanks between.
func (d *user) burst(s string) {
	for i, word := range strings.Split(s, " ") {
		if i > 0 {
			d.press("space")
		}
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
	}
}

// What arrives in one read is text in every field, though it reads like a key.
func TestWordsThatReadLikeKeys(t *testing.T) {
	for _, text := range []string{"up to 250 F", "home base", "end use", "tab x", "esc x", "ctrl+c x", "enter it", "f1 car", "down a", "delete me", "ctrl+u x", "space x"} {
		for name, open := range map[string][]string{"needs": {"2"}, "finder": {"/", "ctrl+u"}, "part": {"D"}, "band": {"e", "ctrl+u"}, "search": {"4", "/"}, "rows": {":"}} {
			d := plainDesk(t, 100, 40, usual...)
			d.press(open...)
			d.burst(text)
			if d.quit {
				t.Fatalf("%s: %q quits", name, text)
			}
			d.want(text)
		}
	}
}

// A burst outside a field is letters, never the name of a key.
func TestBurstOnTheBench(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.burst("ctrl+z")
	if d.quit {
		t.Error("a burst quits")
	}
	if d.m.Bench().Basis != 0 && d.pins() == "" {
		t.Error("a burst took the pins")
	}
}

// Choice rows take the word that is typed, or its beginning; a letter is never
// an arrow.
func TestChoicesAreTyped(t *testing.T) {
	for _, test := range []struct {
		down        int
		text        string
		case_, keep string
	}{
		{4, "plate", "plate", ""}, {4, "tie", "tie", ""}, {4, "bea", "beam", ""}, {4, "fixed beam", "fixed-beam", ""}, {4, "fixed-", "fixed-beam", ""},
		{4, "hl", "", ""}, {5, "shape", "", "shape"}, {5, "stiff", "", "stiffness"}, {5, "str", "", "strength"},
	} {
		d := plainDesk(t, 100, 40, usual...)
		d.press("D")
		for range test.down {
			d.press("down")
		}
		d.typeText(test.text)
		d.press("enter")
		if now := d.m.Now().Part; string(now.Case) != test.case_ || string(now.Keep) != test.keep {
			t.Errorf("%q: case %q, keep %q", test.text, now.Case, now.Keep)
		}
	}
	d := plainDesk(t, 100, 40, usual...)
	d.press("D", "down", "down", "down", "down")
	d.burst("plate")
	d.want("[plate]")
	d.press("backspace")
	d.typeText("x")
	d.want(`no word begins with "x"; there are: tie, plate`)
}

// A text that was refused is typed over.
func TestRefusedTextIsTypedOver(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("D")
	d.typeText("4.2 ksi")
	d.press("enter")
	d.typeText("4.2 lb")
	d.press("enter")
	if have := d.m.Now().Part.Mass; have != "4.2 lb" {
		t.Errorf("mass %q", have)
	}
}

// The form opens on what is not said yet, not where it was left.
func TestFormOpensOnWhatIsMissing(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("D", "up", "ctrl+end", "esc", "D")
	d.want("> Mass")
	d.typeText("4.2 lb")
	d.press("esc", "D")
	d.want("> Volume")
}

// The first line names the panels at every width from 80 on, the open one in
// brackets, and is clicked.
func TestFirstLineNamesThePanels(t *testing.T) {
	d := watchDesk(t, 80, 24)
	first := func() string { line, _, _ := strings.Cut(d.m.View(), "\n"); return strings.TrimSpace(line) }
	for key, name := range map[string]string{"2": "2 needs", "4": "4 swap", "5": "5 process", "6": "6 watch-outs"} {
		d.press(key)
		want := strings.Replace("1 bench 2 needs 3 candidates 4 swap 5 process 6 watch-outs", name, "["+name+"]", 1)
		if !strings.HasPrefix(first(), want) {
			t.Errorf("after %s: %s", key, first())
		}
		d.press("esc")
	}
	if !strings.HasPrefix(first(), "[1 bench] 2 needs") {
		t.Error(first())
	}
	d.send(click(d.at("4 swap")))
	d.want("[4 swap]")
	d.press("enter") // the form over it
	d.want("[4 swap]")
	d.send(click(d.at("1 bench")))
	d.want("[1 bench]")
	if d.m.OnTop() != nil {
		t.Error("a click on the bench leaves a panel open")
	}
}

func TestSearchInAList(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("4", "/")
	d.typeText("strength equal")
	d.want("Search: strength equal")
	d.press("enter")
	d.want(">Section, equal strength")
	d.press("/")
	d.typeText("zzz")
	d.want("nothing like that in this list")
	d.press("esc")
	d.want(">Section, equal strength")
	d.press("/")
	d.typeText("mass")
	d.press("up", "enter")
	d.wantNot(">Section, equal strength")
	d.press("esc", ":")
	d.typeText("dens")
	d.press("enter")
	d.want(">Density")
	if d.m.search != nil {
		t.Error("Enter does not end the search")
	}
	d.press(":")
	d.send(click(d.at("4 swap"))) // a click ends it too
	d.press("down")
	d.want(">Deflection")
}

// Space after an arrow marks, before one it is a letter; Enter pins the marked.
func TestFinderMarksSeveral(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.typeText("white 1")
	d.want("Find: white 1")
	d.press("down", "up", "space", "space")
	d.want("2 marked")
	d.typeText("t6")
	d.want("2 marked") // another query keeps them
	d.press("enter")
	d.wantPins("*w1-f-sand w1-t6-pm")
	d.want("pinned 2")
}

func TestCandidatesMarkSeveral(t *testing.T) {
	d := plainDesk(t, 100, 30, "black-30")
	d.press("2")
	d.paste("tensile >= 30 ksi")
	d.press("enter", "esc", "3", "space", "space", "space", "enter")
	if n := len(d.m.Pins()); n != 3 {
		t.Errorf("pins: %s", d.pins())
	}
	d.want("+✓")
}

// The letters that were found stand out, also on the line of the cursor.
func TestFoundLettersStandOut(t *testing.T) {
	d := newDesk(t, deskOptions{w: 100, h: 30, profile: 2}, usual...)
	d.press("/")
	d.typeText("w1t6 perm")
	if view := d.m.View(); !strings.Contains(view, "perm\x1b") {
		t.Errorf("perm is not marked in\n%q", view)
	}
}

// Several tempers are chosen from a menu that begins with the next one.
func TestMenuOfTempers(t *testing.T) {
	d := realDesk(t, 80, 24, "gray-30", "a356-t6-pm")
	d.press("right", "t")
	d.want("Another temper for A356.0-T6 permanent mold")
	d.want(">  A356.0-T61 permanent mold")
	d.press("t")
	d.wantNot(">  A356.0-T61 permanent mold")
	d.press("T", "enter")
	d.wantPins("*gray-30 a356-t61-pm")
	d.press("T")
	d.want(">  A356.0-T6 permanent mold")
	d.press("esc")
	d.wantPins("*gray-30 a356-t61-pm")
}

// A key that does nothing says so; one that needs more says what.
func TestKeysThatDoNothingSaySo(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.press("esc")
	for key, want := range map[string]string{"b": "b needs two pins", "y": "y needs a pin", "5": "5 needs a pin", "z": "z does nothing here; ? lists the keys", "Z": "Z does nothing"} {
		d.press(key)
		d.want(want)
	}
	d.paste("black-30\nw1-t6-pm")
	d.press("4", "X")
	d.want("X does nothing here")
}

// A digit alone is no limit: Enter opens the panel it stands for.
func TestDigitInTheNeedsField(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("2", "4")
	d.want("enter opens 4 swap")
	d.press("enter")
	d.want("[4 swap]")
	d.press("2")
	d.typeText("30 ksi tensile min")
	d.want("Add: 30 ksi tensile min")
}

// Units and deltas go back as well as on.
func TestBackToTheLastUnits(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	start := d.m.Bench()
	back := func(r string) { d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(r), Alt: true}) }
	d.press("s", "d")
	back("s")
	back("d")
	if b := d.m.Bench(); b.System != start.System || b.Delta != start.Delta {
		t.Errorf("system %v, delta %v", b.System, b.Delta)
	}
}

// The columns of the candidates are as wide as their heads, at every width, and
// a narrow swap keeps its changes.
func TestColumnsUseTheRoom(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("2")
	d.paste("yield >= 20 ksi\nelongation >= 1 %\nconductivity >= 20 %IACS\ndensity < 0.2 lb/in3")
	d.press("esc", "3")
	d.want("Yield ksi  Elong % Elec cond %IACS Density lb/in³")
	for _, w := range []int{60, 70} {
		d = plainDesk(t, w, 24, usual...)
		d.press("4")
		d.want("−63%")
		d.fits()
	}
}

// What plus and minus mean on the rows of needs stands above them: there they
// are no differences from the baseline.
func TestNeedRowsSayWhatTheirSignsMean(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.wantNot("inside the limit")
	d.press("2")
	d.paste("density < 2.8 g/cm3")
	d.press("enter", "esc", "g")
	d.want("Needs  + inside the limit, − outside")
}

// The wheel moves what is in sight; the cursor goes along only where it would
// get out of sight.
func TestWheelOnTheBench(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	wheel := tea.MouseMsg{Button: tea.MouseButtonWheelDown}
	d.press("down", "down", "down", "down")
	d.send(wheel)
	d.want(">Shear")
	d.want("rows 3–14 of 16")
	d.send(wheel, wheel, wheel)
	d.wantNot("Tensile    ↑")
	d.want("rows 6–16 of 16")
}

// Enter typed before the terminal was in raw mode comes as a line feed.
func TestLineFeedIsEnter(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.typeText("white 2")
	d.send(tea.KeyMsg{Type: tea.KeyCtrlJ})
	d.wantPins("*w2-f-die")
}
