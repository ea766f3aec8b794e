package report

import (
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
)

// A need without a margin shows none.
func TestNeedWithoutMargin(t *testing.T) {
	c := data.Catalog()
	b := compare.NewBench()
	for _, id := range []string{"gray-40", "a356-t6-pm", "c95400-sand", "319-t6-sand"} {
		b.Pin(c.Material(id))
	}
	bare := 0
	for _, base := range b.Pins {
		for _, l := range NeedLines(b.Pins, needs.BetterThan(&b, base, props.Properties())) {
			for i, cell := range l.Cells {
				if strings.Contains(cell.Delta+cell.Why, "aN") {
					t.Errorf("%s, %s: %q, %s", b.Pins[i].ID, l.Name, cell.Delta, cell.Why)
				}
				if cell.Value != "" && cell.Delta == "" {
					bare++
				}
			}
		}
	}
	if bare == 0 {
		t.Error("every cell has a margin")
	}
}
