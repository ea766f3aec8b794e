package tui

import (
	"strings"
	"testing"
)

// What stands above the table leaves with it, in every format.
func TestCopyHasNeedsAndMerits(t *testing.T) {
	for _, format := range []int{0, 1, 2, 3} {
		d := plainDesk(t, 80, 24, usual...)
		d.press("2")
		d.paste("yield >= 20 ksi\ndensity < 2.8 g/cm3")
		d.press("down", "space", "esc", "M", "down", "enter", "esc", "G") // the second need is off
		d.m.Format = format
		d.press("c", "down", "enter") // the whole bench
		if len(d.copied) != 1 {
			t.Fatalf("%d copies", len(d.copied))
		}
		text := d.copied[0].Text + d.copied[0].HTML
		for _, want := range []string{"yield strength ≥ 20 ksi", "light stiff beam", "2.27 (", "ensile"} {
			if !strings.Contains(text, want) {
				t.Errorf("format %d: no %q in\n%s", format, want, text)
			}
		}
		if strings.Contains(text, "2.8 g/cm") {
			t.Errorf("format %d: a need that is off was copied", format)
		}
		if format == 0 {
			for _, l := range strings.Split(text, "\n") {
				if len([]rune(l)) > 76 {
					t.Errorf("a line of %d: %s", len([]rune(l)), l)
				}
			}
		}
	}
}

// Row and cell on a need are the need; on a merit the merit.
func TestCopyOfANeedRow(t *testing.T) {
	d := plainDesk(t, 80, 24, usual...)
	d.press("2")
	d.paste("yield >= 20 ksi")
	d.press("enter", "esc", "M", "down", "enter", "esc", "g", "Y", "right", "c", "down", "down", "down")
	d.want("yield strength ≥ 20 ksi, White 1-T6 permanent mold against Black 30 sa")
	d.press("enter", "down", "Y")
	if len(d.copied) != 3 {
		t.Fatalf("%d copies", len(d.copied))
	}
	row, cell, merit := d.copied[0].Text, d.copied[1].Text, d.copied[2].Text
	for _, want := range []string{"Needed: yield strength ≥ 20 ksi", "White 3", "specified minimum", "not for design"} {
		if !strings.Contains(row, want) {
			t.Errorf("no %q in\n%s", want, row)
		}
	}
	if strings.Contains(cell, "White 3") || !strings.Contains(cell, "White 1") || !strings.Contains(cell, "Needed") {
		t.Errorf("cell:\n%s", cell)
	}
	if !strings.Contains(merit, "light stiff beam") || !strings.Contains(merit, "E modulus of elasticity") || strings.Contains(merit, "TENSILE") {
		t.Errorf("merit:\n%s", merit)
	}
}

// Enter on a need opens the figure it was judged on, though the row of the
// property shows another; keys that bear on a property say why they do not.
func TestKeysOnANeedRow(t *testing.T) {
	d := plainDesk(t, 100, 40, usual...)
	d.press("2")
	d.paste("tensile >= 20 ksi")
	d.press("enter", "esc", "g", "right", "enter")
	d.want("Source: tensile strength ≥ 20 ksi, White 1-T6 permanent mold")
	d.want("specified minimum: met")
	d.press("esc")
	for _, k := range []string{"r", "R", "w"} {
		past := d.m.Left()
		d.press(k)
		d.want("a need has the unit and direction it was typed with; n edits it")
		if d.m.Left() != past {
			t.Errorf("%s changed the bench", k)
		}
	}
	d.press("n")
	d.want("Edit: tensile >= 20 ksi")
	d.press("esc", "M", "down", "enter", "esc")
	d.want(">light stiff beam") // the cursor goes to the new row
	d.press("r")
	d.want("a merit is a ratio to the baseline")
	d.press("n")
	d.want("a merit is no limit")
	d.press("enter")
	d.want("E^(1/2)/ρ (E modulus of elasticity, ρ density)")
}

// Only rows on which something can be compared become needs.
func TestBetterThanBaselineAsksWhatPinsHave(t *testing.T) {
	d := plainDesk(t, 100, 30, "w1-t6-pm")
	d.press("B")
	for _, n := range d.m.Now().Needs {
		if n.Property.Info().Short == "Fatigue" {
			t.Error("one pin: fatigue is asked for")
		}
	}
	if len(d.m.Now().Needs) < 3 {
		t.Errorf("%d needs", len(d.m.Now().Needs))
	}
	d = plainDesk(t, 100, 30, "w1-t6-pm", "black-30")
	d.press("B")
	for _, n := range d.m.Now().Needs {
		if n.Property.Info().Short == "Yield" {
			t.Error("yield is asked for, which the other pin has not")
		}
	}
}
