package data_test

import (
	"math"
	"os"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
)

// A bench set to 68–212 °F has to serve the metals that are swapped most, even
// where the source prints its coefficient over another range: gray iron over
// 0–100 °C, the machinery steels over 20–100 °C or 70–200 °F.
func TestGrowthOverTheUsualRange(t *testing.T) {
	c, err := catalog.Load(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]float64{ // µm/m·K between 20 and 100 °C
		"gray-30":                 10.5, // 0–100 °C, ASM handbook volume 1
		"a356-t6-pm":              21.4, // 11.9 µin/in·°F over 68–212 °F, ASM
		"1045-hot-rolled-wrought": 11.6, // 20–100 °C, ASM handbook volume 1
		"1018-cold-drawn-wrought": 12.1, // 6.7 µin/in·°F over 70–200 °F, boiler code section II part D
		"c93200-sand":             18.0, // 10.0 µin/in·°F over 68–212 °F, copper alloy data sheet
		"zn-3-die":                27.4, // 15.2 µin/in·°F over 68–212 °F, zinc property sheet
	} {
		m := c.Material(id)
		if m == nil {
			t.Errorf("no material %s", id)
			continue
		}
		g := compare.GrowthOf(m)
		if g == nil {
			t.Errorf("%s: no coefficient with a range", id)
			continue
		}
		_, mean, _, err := g.Mean(20, 100)
		if err != nil || math.Abs(mean*1e6-want) > 0.06 {
			t.Errorf("%s: mean %.2f µm/m·K, %v; want %.1f", id, mean*1e6, err, want)
		}
	}
	usable, all := map[*props.Family]int{}, map[*props.Family]int{}
	for _, m := range c.Materials {
		all[m.Alloy.Family]++
		if g := compare.GrowthOf(m); g != nil {
			if _, _, _, err := g.Mean(20, 100); err == nil {
				usable[m.Alloy.Family]++
			}
		}
	}
	for _, f := range c.Families {
		if all[f] > 0 {
			t.Logf("%-18s %3d of %3d materials have an expansion for 68–212 °F", f.ID, usable[f], all[f])
		}
	}
}
