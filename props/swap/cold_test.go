package swap

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"

	"pgregory.net/rapid"
)

// ASTM A352 LCB: 13 ft-lbf at −50 °F; EN 1563 EN-GJS-400-18-LT: 12 J at −20 °C.
func TestImpactInTheCold(t *testing.T) {
	for _, tt := range []struct {
		given, pin string
		joule      float64
	}{
		{"service=-40..100 F", "steel-a352-lcb", 13 * 1.3558179483},
		{"service=-50..100 F", "steel-a352-lcb", 13 * 1.3558179483},
		{"service=-20..40 C", "en-gjs-400-18-lt", 12},
		{"service=-5..40 C", "en-gjs-400-18-lt", 12},
	} {
		v := line(t, catalogSwap(t, tt.given, "gray-30", tt.pin), "cold.impact").Value
		if have := v.Unit.ToSI(v.Mid); math.Abs(have-tt.joule) > 1e-6*tt.joule {
			t.Errorf("%s at %s: %v J, want %v", tt.pin, tt.given, have, tt.joule)
		}
	}
	if l := catalogSwap(t, "service=-40..100 F", "steel-a352-lcb", "steel-a216-wcb").Line("cold.impact"); l == nil || !strings.Contains(l.Reason, "or colder") {
		t.Errorf("a steel without a test in the cold: %+v", l)
	}
	if l := line(t, catalogSwap(t, "service=-40..100 F", "steel-a352-lcb", "a356-t6-pm"), "cold.impact"); l.Words == "" || l.Base == nil || l.Formula.Source == nil {
		t.Errorf("steel to aluminum: %+v", l)
	}
	for _, given := range []string{"service=40..250 F", "service=300 F"} {
		if l := catalogSwap(t, given, "gray-30", "steel-a352-lcb").Line("cold.impact"); l != nil && l.Need == "" {
			t.Errorf("%s: %+v", given, l)
		}
	}
}

// The figure taken was found at the coldest of the part or colder, and a colder part
// never has the figure of a warmer test.
func TestNoImpactFigureFromWarmer(t *testing.T) {
	var tested []*props.Material
	for _, m := range data.Catalog().Materials {
		for _, f := range m.Figures(props.ImpactCharpyV) {
			if f.Cond.HasAt && f.Cond.AtC < 0 {
				tested = append(tested, m)
				break
			}
		}
	}
	if len(tested) < 10 {
		t.Fatalf("only %d metals tested in the cold", len(tested))
	}
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(tested).Draw(t, "metal")
		coldest := rapid.Float64Range(-250, -1).Draw(t, "coldest")
		w := work{}
		w.Coldest = &coldest
		if e := w.tough(m, props.ImpactCharpyV); e.why == "" && e.figures[0].Cond.AtC > coldest+sameHeat {
			t.Fatal(fmt.Sprintf("%s at %v °C rests on a test at %v °C", m.ID, coldest, e.figures[0].Cond.AtC))
		}
	})
}
