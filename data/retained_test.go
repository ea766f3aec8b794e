package data_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
)

// The percentages are those of the figures of MIL-HDBK-5J named beside them; the
// figure at temperature is that percentage of the figure at room temperature.
func TestRetainedStrength(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		id      string
		p       props.PropertyID
		f       float64 // °F
		percent float64 // 0: the curves do not reach
		hours   float64
	}{
		{"az92a-t6-sand", props.TensileStrength, 300, 67.1, 1000},                    // Figure 4.3.3.1.1(a)
		{"az92a-t6-sand", props.TensileStrength, 275, (82.8 + 67.1) / 2, 1000},       // halfway
		{"az92a-t6-sand", props.TensileStrength, 600, 19.3, 0.5},                     // the 1000 h curve ends at 400 °F
		{"az92a-t6-sand", props.YieldStrength, 400, 47.2, 1000},                      // Figure 4.3.3.1.1(b)
		{"az92a-t6-sand", props.TensileStrength, 700, 0, 0},                          // beyond
		{"az92a-t6-sand", props.TensileStrength, -40, 0, 0},                          // below
		{"17-4ph-h1025-wrought", props.TensileStrength, 600, 80.3, 0},                // Figure 2.6.9.2.1
		{"17-4ph-h1150-wrought", props.YieldStrength, 300, 95.5, 0},                  // Figure 2.6.9.6.1
		{"4340-qt-1000f-wrought", props.YieldStrength, 500, 83.0, 0.5},               // Figure 2.3.1.1.1
		{"4340-qt-1000f-wrought", props.TensileStrength, 1000, 0, 0},                 // at the tempering temperature
		{"4340-qt-1000f-wrought", props.ElasticModulus, -100, 103.0, 0.5},            // Figure 2.3.1.1.4
		{"4340-qt-1000f-wrought", props.ElasticModulus, -50, (103 + 101.2) / 2, 0.5}, // halfway
	} {
		m := c.Material(x.id)
		if m == nil {
			t.Errorf("no material %s", x.id)
			continue
		}
		at := (x.f - 32) / 1.8
		hot := (&compare.Question{Service: &at}).Figures(m, x.p)
		room := (&compare.Question{}).Figures(m, x.p)
		if x.percent == 0 {
			if len(hot) > 0 {
				t.Errorf("%s %s at %v °F: %v, want none", x.id, x.p, x.f, hot[0].Value)
			}
			continue
		}
		if len(hot) == 0 || len(room) == 0 {
			t.Errorf("%s %s at %v °F: nothing", x.id, x.p, x.f)
			continue
		}
		h, r := hot[0], room[0]
		if have := h.Value.Lo / r.Value.Lo * 100; math.Abs(have-x.percent) > 0.01 || h.Basis != r.Basis || h.Cond.Hours != x.hours ||
			math.Abs(h.Cond.AtC-at) > 0.1 || !strings.Contains(h.Cond.Interpolated, "% of room temperature at ") {
			t.Errorf("%s %s at %v °F: %.2f %% %v after %g h, %s; want %.2f %% after %g h", x.id, x.p, x.f, have, h.Basis, h.Cond.Hours, h.Cond, x.percent, x.hours)
		}
	}
	for _, p := range props.Properties() {
		if p >= props.TensileRetained {
			t.Errorf("%s is a row of the bench", p)
		}
	}
}
