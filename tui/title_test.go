package tui

import "testing"

// What departs from the usual stands first and is in sight at 80 columns, with
// a count of watch-outs beside it.
func TestTitleTellsWhatDeparts(t *testing.T) {
	d := watchDesk(t, 80, 24)
	d.press("right", "F", "a", "esc")
	d.want("US units · typical first")
	d.want("3 watch-outs, 1 STOP (key 6)")
	d.press("m", "f", "S")
	d.typeText("200 C")
	d.press("enter")
	d.want("at 392 °F · minimums · some rows hidden")
	d.press("E")
	d.typeText("68-212")
	d.press("enter", "e")
	d.typeText("5")
	d.press("enter")
	d.fits()
	d.want("at 392 °F · minimums · some rows hidden · exp. 68–212 °F · level 5 %")
}
