package bench_test

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"alongside/props/sheet"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// Where name, today's value and the pin do not fit side by side, the name is cut,
// never the change.
func TestTheChangeIsNotCut(t *testing.T) {
	for _, value := range []string{"4.29", "−0.00058 to 0.00021", "0.0144–0.0157"} {
		table := &sheet.Table{Columns: []sheet.Column{{Head: []string{""}}, {}, {}, {Head: []string{"today"}}, {Head: []string{"A356.0-T6 permanent mold"}}}}
		table.Rows = []sheet.Row{{Cells: []sheet.Cell{{Text: "Clearance of the bore, 70 to 250 °F"}, {}, {Text: "in"}, {Text: "−0.00058 to 0.00021"}, {Text: value, Mark: "*", Change: "−61 to −56 %"}}}}
		g := bench.NewGrid(table, ui.NewTheme(termenv.Ascii, true), 80)
		if row := ansi.Strip(g.Row(0, 1, -1)); !strings.Contains(row, "−61 to −56%") || ui.Width(row) > 80 {
			t.Errorf("%d cells: %q", ui.Width(row), row)
		}
	}
}
