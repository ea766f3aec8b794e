package bench

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
	"alongside/units"
)

// Figures are never cut: a column is as wide as its widest cell in every
// system of units.
func TestFiguresAreWhole(t *testing.T) {
	c := data.Catalog()
	theme := ui.NewTheme(termenv.Ascii, false)
	for _, mat := range c.Materials {
		for _, system := range []units.System{units.US, units.SI, units.CGS} {
			b := compare.NewBench()
			b.System, b.Pins = system, []*props.Material{c.Material("gray-30"), mat}
			table := report.NewTable(compare.Compare(b))
			g := NewGrid(New(table), theme, 60)
			col := &g.Columns[1]
			for i := range table.Lines {
				cell := &table.Lines[i].Cells[1]
				var b strings.Builder
				g.writeCell(&b, 1, i, false)
				s := b.String()
				for _, part := range []string{cell.Value, strings.ReplaceAll(cell.Delta, " %", "%")} {
					if !strings.Contains(s, part) {
						t.Fatalf("%s %s: %q does not hold %q", mat.ID, table.Lines[i].Name, s, part)
					}
				}
				if ui.Width(s) != col.Width-g.Gap {
					t.Fatalf("%s %s: %q is not %d wide", mat.ID, table.Lines[i].Name, s, col.Width-g.Gap)
				}
			}
		}
	}
}
