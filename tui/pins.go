package tui

import "alongside/tui/ui"

// pinKeys go to another pin beside the baseline, for panels that set one pin
// against it. They follow the bench's cursor, and the bench follows them.
func (m *Model) pinKeys() ui.Keys {
	n, at := len(m.now().Bench.Pins), max(m.col, 1)
	return ui.Keys{
		ui.On("left h", "", "another pin; also tab", func() { m.goToPin(max(at-1, 1)) }).As("← →"),
		ui.On("right l", "", "", func() { m.goToPin(min(at+1, n-1)) }),
		ui.On("tab", "", "", func() { m.goToPin(at%(n-1) + 1) }),
		ui.On("shift+tab", "", "", func() { m.goToPin((at+n-3)%(n-1) + 1) }),
	}
}
