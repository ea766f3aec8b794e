package tui

import (
	"fmt"
	"strings"
	"testing"
)

const threeNeeds = "yield >= 20 ksi\ndensity < 2.8 g/cm3\nprocess = pm or sand"

func TestNeedsFrames(t *testing.T) {
	for name, keys := range map[string][]string{
		"panel": {"2", "down"}, "bench": nil, "candidates": {"3"}, "near": {"3", "G"}, "edit": {"2", "down", "enter"}, "merit": {"M", "down", "enter", "esc", "g", "down", "down", "down"},
	} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, 80, 24, usual...)
			d.press("2")
			d.paste(threeNeeds)
			d.press("esc", "g")
			d.press(keys...)
			d.fits()
			golden(t, "needs-"+name, d.m.View())
		})
	}
}

func TestTypedNeeds(t *testing.T) {
	d := plainDesk(t, 100, 30, usual...)
	d.press("2")
	d.typeText("yeild >= 20 ksi")
	d.press("enter")
	d.want("did you mean yield?")
	d.want("yeild >= 20 ksi") // what was typed is kept
	d.press("ctrl+u")
	d.typeText("yield >= 20 ksi")
	d.press("enter")
	d.want("yield strength ≥ 20 ksi")
	d.typeText("q") // a letter, not quit
	if d.quit {
		t.Fatal("a typed q quit")
	}
	d.press("ctrl+u", "down", "enter", "ctrl+u")
	d.typeText("yield >= 25 ksi")
	d.press("enter")
	d.want("yield strength ≥ 25 ksi")
	d.wantNot("≥ 20 ksi")
	d.press("space")
	if len(d.m.Now().NeedsOn()) != 0 {
		t.Error("space did not switch the need off")
	}
	d.press("esc")
	d.wantNot("25 ksi")
	d.press("u", "u") // on again, then as first typed
	if have := d.m.Now().Needs[0].String(); have != "yield strength ≥ 20 ksi" || len(d.m.Now().NeedsOn()) != 1 {
		t.Errorf("after undo: %s", have)
	}
}

func TestNeedsAreOrderedAndDeleted(t *testing.T) {
	d := plainDesk(t, 100, 30, usual...)
	d.press("2")
	d.paste(threeNeeds)
	d.press("down", "k", "k", ">")
	order := func() string {
		var s []string
		for i := range d.m.Now().Needs {
			s = append(s, d.m.Now().Needs[i].Kind.String()+d.m.Now().Needs[i].Property.String())
		}
		return strings.Join(s, " ")
	}
	if have := order(); have != "density yield_strength process" {
		t.Errorf("have %s", have)
	}
	d.press("x")
	if have := order(); have != "density process" {
		t.Errorf("have %s", have)
	}
	d.press("u", "u", "ctrl+r", "ctrl+r")
	if have := order(); have != "density process" {
		t.Errorf("after undo and redo: have %s", have)
	}
}

// n makes a need of the row under the cursor at the baseline's figure.
func TestNeedFromARow(t *testing.T) {
	d := plainDesk(t, 100, 30, usual...)
	d.press("n")
	d.want("tensile strength ≥ 30 ksi")
	d.press("enter", "esc")
	d.want("Needs")
	if len(d.m.Now().Needs) != 1 {
		t.Errorf("%d needs", len(d.m.Now().Needs))
	}
}

func TestBetterThanBaseline(t *testing.T) {
	d := plainDesk(t, 100, 30, usual...)
	d.press("B")
	d.want("beat or equal Black 30 sand")
	if len(d.m.Now().Needs) == 0 {
		t.Fatal("no needs")
	}
	d.press("u")
	if len(d.m.Now().Needs) != 0 {
		t.Error("u did not take them back")
	}
}

func TestCandidatesArePinned(t *testing.T) {
	d := plainDesk(t, 100, 30, "black-30")
	d.press("3")
	d.want("no needs yet")
	d.paste("tensile >= 35 ksi")
	d.press("enter", "esc", "3", "enter")
	if len(d.m.Now().Bench.Pins) != 2 {
		t.Errorf("pins: %s", d.pins())
	}
	d.press("o")
	d.want("by margin")
	d.press("y")
	if len(d.copied) != 1 || !strings.Contains(d.copied[0].Text, "tensile strength ≥ 35 ksi") || !strings.Contains(d.copied[0].Text, "not for design") {
		t.Errorf("copied %+v", d.copied)
	}
}

// The title names what is traded off even in a narrow window.
func TestTradeOffFront(t *testing.T) {
	d := plainDesk(t, 80, 24, "black-30")
	d.press("2")
	d.paste("tensile >= 20 ksi\ndensity < 9 g/cm3")
	d.press("esc", "3", "f")
	d.want("Trade-off front, Tensile and Density: ")
	d.want(" that meet every need, by ")
	d.press("f")
	d.want("Candidates: ")
}

// The need under the cursor stays in sight however long the list is.
func TestLongNeedsList(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("2")
	for i := range 40 {
		d.paste(fmt.Sprintf("tensile >= %d ksi\n", i+1))
	}
	d.want(" 40 ksi")
	d.press("down")
	for i := 39; i >= 0; i-- {
		d.want(fmt.Sprintf("≥ %d ksi", i+1))
		d.fits()
		d.press("up")
	}
}

// What no figure judges is not shown as a miss, and a list that is cut says so.
// What is known from memory alone is offered with one key only.
func TestCandidatesFromMemory(t *testing.T) {
	d := plainDesk(t, 100, 40, "w1-t6-pm")
	d.press("2")
	d.paste("yield >= 20 ksi; density < 2.8 g/cm3")
	d.press("enter", "esc", "3")
	d.want("Left out, known from memory alone: 1; m offers them")
	d.wantNot("✓ White 1-T6 sand")
	d.press("m", "end")
	d.want("✓ White 1-T6 sand")
	d.wantNot("m offers them")
	d.press("m")
	d.wantNot("✓ White 1-T6 sand")
}

func TestCandidatesThatCannotBeJudged(t *testing.T) {
	d := plainDesk(t, 100, 30, "w1-t6-pm")
	d.press("2")
	d.paste("yield >= 20 ksi")
	d.press("enter", "esc", "3", "G")
	d.want("Black 30 sand: yield strength ≥ 20 ksi: no figure")
	d.want("– Black 30 sand")
	d.wantNot("✗ Black 30 sand")
}

// A sentence as spoken becomes needs and part data, said again where something was
// left out; what is not understood stays in the field, each piece with its reason.
func TestSentence(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("2")
	d.typeText("20 ksi yield, wobbly, permanent mold, 4.2 lb, strength > 30 ksi, yield >= 20 ksi")
	d.press("enter")
	var have []string
	for i := range d.m.Now().Needs {
		have = append(have, d.m.Now().Needs[i].String())
	}
	if s := strings.Join(have, "; "); s != "yield strength ≥ 20 ksi; process = permanent mold" || d.m.Now().Part.Mass != "4.2 lb" {
		t.Errorf("have %s, mass %q", s, d.m.Now().Part.Mass)
	}
	d.want("wobbly; strength > 30 ksi")
	d.want(`need "wobbly"`)
	d.want(`need "strength > 30 ksi": say which`)
	d.want(`"20 ksi yield" read as: yield strength ≥ 20 ksi`)
	d.press("ctrl+u")
	d.typeText("pm")
	d.press("enter")
	if n := len(d.m.Now().Needs); n != 2 {
		t.Errorf("the same need twice makes %d", n)
	}
}

// A sentence pasted on the bench is read as needs and part; today's metal becomes
// the baseline. A list of names is pinned as before.
func TestSentencePastedOnTheBench(t *testing.T) {
	d := plainDesk(t, 100, 40, "w1-t6-pm")
	d.paste("black 30 today, 4.2 lb, tensile at least 20 ksi, splendid")
	d.wantPins("w1-t6-pm *black-30")
	d.want("tensile strength ≥ 20 ksi")
	d.want(`"splendid" is not understood`)
	if have := d.m.Now().Part.Mass; have != "4.2 lb" {
		t.Errorf("mass %q", have)
	}
	d.press("esc")
	d.paste("w2-f-die\nw3-t6-sand")
	d.wantPins("w1-t6-pm *black-30 w2-f-die w3-t6-sand")
}
