package tui

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// say types the part of these tests into the open form, from its first field.
func (d *user) sayPart() {
	for _, text := range []string{"4.2 lb", "", "3/8 in", "12 in"} {
		d.typeText(text)
		d.press("enter")
	}
	d.press("right", "right", "enter", "enter", "enter")                      // a plate; keep and strength as they are
	for _, text := range []string{"70..200 F", "", "", "w1-t6-pm", "5 ksi"} { // medium and hours not said
		d.typeText(text)
		d.press("enter")
	}
	d.press("down", "enter") // past what is asked of a pressure, to the fit
	d.typeText("1.5 in")
	d.downTo(" > Metal prices")
	d.press("enter")
	for _, text := range []string{"0.60 USD/lb", "1.20 USD/lb"} {
		d.typeText(text)
		d.press("enter")
	}
	d.press("esc")
}

// A topic of the form is closed until something of it is said or asked for; what is
// typed in it is kept when it is closed again.
func TestFormTopics(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("4", "e")
	d.want("Pressure …")
	d.wantNot("Inside diameter")
	d.downTo(" > Pressure …")
	d.typeText("x") // a heading takes no text
	d.press("enter")
	d.want("> Pressure ")
	d.typeText("150 psi")
	d.press("up", "enter")
	d.wantNot("150 psi")
	d.press("esc", "e")
	d.want("150 psi")
	d.press("esc", "esc", "u")
}

func TestSwapFrames(t *testing.T) {
	for name, keys := range map[string][]string{
		"panel": nil, "end": {"G"}, "hidden": {"right", "f"}, "card": {"down", "enter"}, "worth": {"r"}, "form": {"e"},
	} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, 80, 24, usual...)
			d.press("4", "e")
			d.sayPart()
			d.press(keys...)
			d.fits()
			golden(t, "swap-"+name, d.m.View())
		})
	}
	t.Run("unsaid", func(t *testing.T) {
		d := plainDesk(t, 80, 24, usual...)
		d.press("4")
		d.fits()
		golden(t, "swap-unsaid", d.m.View())
	})
	t.Run("160x50", func(t *testing.T) {
		d := plainDesk(t, 160, 50, usual...)
		d.press("4", "e")
		d.sayPart()
		d.press("tab", "down", "down")
		d.fits()
		golden(t, "swap-160x50", d.m.View())
	})
}

// 7 is the brief of today's metal and the pins beside it, of the part and the
// needs as they are; y copies the page that is shown.
func TestBriefPanel(t *testing.T) {
	d := plainDesk(t, 80, 50, usual...)
	d.press("4", "e")
	d.sayPart()
	d.press("7")
	d.fits()
	golden(t, "brief", d.m.View())
	d.press("s")
	d.want("MPa")
	d.press("esc")
	d.want("[1 bench]")
	alone := plainDesk(t, 80, 24, usual[0])
	alone.press("7")
	alone.want("two pins")
}

// r on the brief writes the report to a new file; one that is there is not written over.
func TestReportKey(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("7", "r") // the invented data are read by now
	t.Chdir(t.TempDir())
	d.press("enter")
	d.want("the report is written to report.html")
	if page, err := os.ReadFile("report.html"); err != nil || !strings.Contains(string(page), "<h2>Watch-outs</h2>") {
		t.Errorf("%v, %d bytes", err, len(page))
	}
	d.press("r", "enter")
	d.want("is there already")
}

// Of many pins the brief is of the one under the cursor; + takes more on the page.
func TestBriefOfMany(t *testing.T) {
	d := plainDesk(t, 100, 50, append(usual, "w1-f-sand")...)
	d.press("home", "7")
	d.want("pin 1 of 4")
	d.want("proposed: White 1-T6 permanent mold")
	d.press("right", "right")
	d.want("pin 3 of 4")
	d.press("+", "+")
	d.want("pins 2–4 of 4")
	d.press("+")
	d.want("pin 3 of 4")
}

func TestPartIsTyped(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("4", "e")
	d.typeText("-3 lb")
	d.press("enter")
	d.want("must be above zero")
	d.want("-3 lb") // what was typed is kept
	d.press("esc")
	d.want("kept in the form")
	if d.m.Now().Part.Mass != "" {
		t.Fatalf("mass %q was taken", d.m.Now().Part.Mass)
	}
	d.press("e")
	d.want("-3 lb")
	d.want("must be above zero")
	d.press("ctrl+u")
	d.typeText("4.2 lb")
	d.press("down")
	d.wantNot("above zero")
	d.typeText("q4?") // letters, not keys
	d.press("ctrl+u", "esc")
	if d.quit || d.m.Now().Part.Mass != "4.2 lb" {
		t.Fatalf("mass %q, quit %v", d.m.Now().Part.Mass, d.quit)
	}
	d.want("1.57")
	d.press("u")
	if d.m.Now().Part.Mass != "" {
		t.Error("u did not take the mass back")
	}
	d.press("ctrl+r")
	d.want("1.57")
}

// Leaving the form takes what stands in its field.
func TestPartTakenOnEscape(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("D")
	d.typeText("2 kg")
	d.press("esc")
	if d.m.Now().Part.Mass != "2 kg" {
		t.Errorf("mass %q", d.m.Now().Part.Mass)
	}
}

func TestSwapAsksForWhatALineNeeds(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("4")
	d.want("needs a load case")
	d.press("c")
	d.want("load case: tie")
	d.want("Area, equal stiffness")
	d.press("c")
	d.want("Thickness, equal stiffness")
	d.press("G", "enter") // the price of the first pin
	d.typeText("1.20/lb")
	d.press("esc")
	if have := d.m.Now().Part.Price["w1-t6-pm"]; have == "" {
		t.Errorf("prices %v", d.m.Now().Part.Price)
	}
}

func TestSwapStrengthIsChosen(t *testing.T) {
	d := plainDesk(t, 80, 24, "w1-t6-pm", "w2-f-die")
	d.press("4")
	d.want("Load, by yield strength")
	d.press("w", "w")
	d.want("Load, by tensile strength")
	d.press("w")
	d.want("Load, by fatigue strength")
	d.press("w")
	d.want("Load, by yield strength")
}

// The panel follows the bench's cursor, and the bench the panel's.
func TestSwapPins(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("4")
	d.want("White 1-T6 permanent mold")
	d.press("right")
	d.want("White 2-F die")
	if d.m.CursorPin().ID != "w2-f-die" {
		t.Errorf("the bench is on %s", d.m.CursorPin().ID)
	}
	d.press("tab", "tab")
	d.want("White 1-T6 permanent mold")
	d.press("left")
	d.want("White 1-T6 permanent mold")
}

func TestSwapIsCopied(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("4", "y")
	if len(d.copied) != 1 {
		t.Fatalf("copied %d", len(d.copied))
	}
	for _, want := range []string{"WHITE 1", "WHITE 2", "WHITE 3", "not for design"} {
		if !strings.Contains(d.copied[0].Text, want) {
			t.Errorf("no %q in\n%s", want, d.copied[0].Text)
		}
	}
	d.press("right", "Y")
	if text := d.copied[1].Text; strings.Contains(text, "WHITE 1") || !strings.Contains(text, "WHITE 2") {
		t.Errorf("one pin copied as\n%s", text)
	}
}

// Undo in the panel may leave nothing to swap.
func TestSwapWithoutPins(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.press("esc", "4")
	d.want("needs two pins")
	d.paste("black-30\nw1-t6-pm")
	d.press("4", "u")
	d.want("needs two pins")
	d.press("e", "down", "enter", "y", "right", "f", "c")
	d.fits()
	d.press("ctrl+r")
	d.want("Same shape")
}

// A digit opens another panel from any other.
func TestPanelsFollowEachOther(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	for _, k := range []struct{ key, title string }{
		{"4", "Swap:"}, {"5", "Process:"}, {"enter", "ISO 8062-3 grade, "}, {"4", "Swap:"}, {"2", "Needs:"}, {"esc", "Tensile"}, {"5", "Process:"},
	} {
		d.press(k.key)
		if k.title == "Needs:" {
			d.press("down") // out of the text field
		}
		d.want(k.title)
		if n := len(d.m.Screens); n > 2 {
			t.Errorf("%d screens after %s", n, k.key)
		}
	}
}

func TestPanelsTakeTheMouse(t *testing.T) {
	click := func(x, y int) tea.Msg {
		return tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}
	}
	d := plainDesk(t, 80, 24, usual...)
	d.press("4")
	d.send(tea.MouseMsg{Button: tea.MouseButtonWheelDown})
	d.want(">Deflection")
	for y, l := range strings.Split(d.m.View(), "\n") {
		if strings.Contains(l, "Load to set, minimum") {
			d.send(click(5, y))
		}
	}
	d.want(">Load to set, minimum")
	d.press("e")
	for y, l := range strings.Split(d.m.View(), "\n") {
		if strings.Contains(l, "Service range") {
			d.send(click(5, y))
		}
	}
	d.want("> Service range")
	d.press("esc", "5")
	for y, l := range strings.Split(d.m.View(), "\n") {
		if strings.Contains(l, "Surface finish") {
			d.send(click(60, y))
		}
	}
	d.want(">Surface finish")
	d.want(">White 1-T6 permanent mold")
}
