package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/tui/panel"
	"alongside/tui/ui"
)

func realDesk(t testing.TB, w, h int, ids ...string) *user {
	t.Helper()
	return newDesk(t, deskOptions{w: w, h: h, profile: termenv.Ascii, catalog: data.Catalog(), book: data.Foundry, rules: data.Watch}, ids...)
}

// The trap of the trade: a typical die-cast figure beside specified minimums
// of gravity castings is no loss of the castings.
func TestTypicalAgainstMinimumIsUnlike(t *testing.T) {
	d := realDesk(t, 120, 40, "a380-f-die", "319-t6-sand")
	d.press("m")
	for i := range d.m.Comparison.Rows {
		row := &d.m.Comparison.Rows[i]
		if row.Property == props.TensileStrength && row.Cells[1].Verdict != compare.Unlike {
			t.Errorf("verdict %v", row.Cells[1].Verdict)
		}
	}
	d.press("right")
	d.want("unlike, counts in no total")
}

// Three letters and Enter pin what is meant.
func TestShortQueries(t *testing.T) {
	for query, want := range map[string]string{"a356t6pm": "a356-t6-pm", "a380": "a380-f-die", "gray 30": "gray-30"} {
		d := realDesk(t, 80, 24)
		d.typeText(query)
		d.press("enter")
		d.wantPins("*" + want)
	}
}

// Every material can be pinned and every cell opened, at the smallest window.
func TestEveryMaterialAndCard(t *testing.T) {
	c := data.Catalog()
	d := realDesk(t, minWidth, minHeight, "gray-30")
	for _, mat := range c.Materials {
		d.m.Change(func(b *compare.Bench) { b.Pins = []*props.Material{d.m.Now().Bench.Pins[0], mat} })
		d.m.Col = 1
		d.send(tea.WindowSizeMsg{Width: minWidth, Height: minHeight})
		d.fits()
		if testing.Short() {
			continue
		}
		for i := range d.m.Table.Lines {
			d.m.Rows.At = i
			card := panel.NewCard(d.m.Desk)
			for _, l := range card.View(minWidth, 1000) {
				if ui.Width(l) > minWidth {
					t.Fatalf("%s: a line of %d cells: %q", card.Title(), ui.Width(l), l)
				}
			}
		}
	}
}

// eightPins is the bench of the speed target: 8 pins, at least 45 rows.
func eightPins(b *testing.B) *user {
	d := realDesk(b, 200, 60, "gray-30", "a356-t6-pm", "380-f-die", "319-t6-sand", "zn-3-die", "za-12-sand", "c83600-sand", "ductile-65-45-12")
	profile := termenv.TrueColor
	d.m.profile = &profile
	d.m.restyle()
	d.m.refresh()
	if n := len(d.m.Table.Lines); n < 40 {
		b.Fatalf("only %d rows", n)
	}
	return d
}

// BenchmarkKey is one Update and one View, for keys that move the cursor and
// for keys that change the bench.
func BenchmarkKey(b *testing.B) {
	for name, keys := range map[string][]string{
		"move": {"down", "right", "up", "left"}, "units": {"s"}, "flip": {"a"}, "delta": {"d"}, "finder": {"a", "3", "backspace", "backspace"},
		"swap": {"down", "right", "up", "left"}, "swap-units": {"s"}, "swap-case": {"c"},
		"needs": {"a", "backspace"}, "process": {"down", "right", "up", "left"}, "watch": {"down", "right", "up", "left"}, "watch-aside": {"d"},
	} {
		b.Run(name, func(b *testing.B) {
			d := eightPins(b)
			d.press("right")
			open := map[string]string{"finder": "/", "needs": "2", "swap": "4", "process": "5", "watch": "6"}
			if panel, _, _ := strings.Cut(name, "-"); open[panel] != "" {
				d.press(open[panel])
			}
			if name == "needs" {
				d.paste("yield >= 20 ksi; elongation >= 3 %; conductivity >= 35 %IACS")
			}
			b.ReportAllocs()
			n := 0
			for b.Loop() {
				d.m.Update(keyMsg(keys[n%len(keys)]))
				n++
				if len(d.m.View()) == 0 {
					b.Fatal("nothing drawn")
				}
			}
		})
	}
}

// BenchmarkStart is the first frame without the terminal.
func BenchmarkStart(b *testing.B) {
	data.Catalog()
	for b.Loop() {
		eightPins(b).m.View()
	}
}
