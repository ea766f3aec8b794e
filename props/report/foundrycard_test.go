package report

import (
	"testing"

	"alongside/props/foundry"
	"alongside/units"
)

// Digits as NIST SP 811 (2008) B.7.1, and at least two: 2 mm is 0.0787 in,
// 25 µm is 984 µin.
func TestItemText(t *testing.T) {
	for _, test := range []struct {
		kind   foundry.Kind
		value  string
		system units.System
		want   string
	}{
		{foundry.MinimumWall, "2 mm", units.US, "0.079 in, shell; least"},
		{foundry.MinimumWall, "2 mm", units.SI, "2 mm, shell; least"},
		{foundry.MinimumWall, "0.125 in", units.US, "0.125 in, shell; least"},
		{foundry.MinimumWall, "0.125 in", units.SI, "3.18 mm, shell; least"},
		{foundry.SurfaceFinish, "5–25 µm", units.US, "200–980 µin, shell; least"},
		{foundry.SurfaceFinish, "63–250 µin", units.SI, "1.6–6.4 µm, shell; least"},
		{foundry.PartMass, "50 kg", units.US, "110 lb, shell; least"},
	} {
		q, err := units.Parse(test.value)
		if err != nil {
			t.Fatal(err)
		}
		it := foundry.Item{Kind: test.kind, Value: q, HasValue: true, Printed: test.value, Method: "shell", Condition: "least"}
		if have := ItemText(&it, test.system); have != test.want {
			t.Errorf("%s in %s: have %q, want %q", test.value, test.system, have, test.want)
		}
	}
}
