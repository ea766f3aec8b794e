package tui

import (
	"strings"
	"testing"
)

func TestProcessFrames(t *testing.T) {
	for name, keys := range map[string][]string{
		"panel": nil, "card": {"right", "down", "down", "enter"}, "heat": {"right", "t"}, "designation": {"right", "d"}, "note": {"right", "n"}, "end": {"G", "end"},
	} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, 80, 24, usual...)
			d.press("5")
			d.press(keys...)
			d.fits()
			golden(t, "process-"+name, d.m.View())
		})
	}
	for name, size := range map[string][2]int{"tolerance": {80, 24}, "160x50": {160, 50}} {
		t.Run(name, func(t *testing.T) {
			d := plainDesk(t, size[0], size[1], usual...)
			d.press("5", "i")
			d.typeText("4 in")
			d.press("enter")
			d.fits()
			golden(t, "process-"+name, d.m.View())
		})
	}
}

func TestToleranceOfASize(t *testing.T) {
	d := plainDesk(t, 160, 50, usual...)
	d.press("5", "i")
	d.typeText("4 ksi")
	d.press("enter")
	d.want("4 ksi") // kept, with the reason under it
	d.want("length")
	d.press("ctrl+u")
	d.typeText("100 mm")
	d.press("enter")
	d.want("Tolerance at")
	d.want("±0.089–0.177 in, DCTG 11–13") // half of 4.5 to 9 mm
	d.want("±0.013 in, standard")         // 0.010 in and 0.001 in for each of 2.94 in
	d.press("s")
	d.want("±2.25–4.50 mm, DCTG 11–13")
	d.press("enter")
	d.want("half of it each side")
	d.press("esc", "i", "ctrl+u", "enter")
	d.wantNot("Tolerance at")
}

func TestProcessSources(t *testing.T) {
	d := plainDesk(t, 120, 40, usual...)
	d.press("5", "right")
	d.want("0.150 in*")
	d.want("trade likes it°")
	d.downTo(">Minimum wall")
	d.press("enter")
	d.want("common practice, no standard or handbook named")
	d.want("from memory, not read")
	d.press("esc")
	d.want("Process:")
}

// The panel shares the bench's cursor and survives an undo that takes the pins.
func TestProcessPins(t *testing.T) {
	d := plainDesk(t, 80, 24)
	d.press("esc")
	d.paste(strings.Join(usual, "\n"))
	d.press("5", "left")
	d.want("White 2-F die")
	d.press("u")
	d.press("enter", "t", "d", "i", "down", "right", "G")
	d.fits()
	d.press("ctrl+r")
	d.fits()
	d.want("Black 30 sand")
}
