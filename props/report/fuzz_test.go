package report

import (
	"testing"

	"alongside/units"
)

// What the settings of the bench take is possible, to the digits typed: -460 °F is
// absolute zero.
func FuzzSettings(f *testing.F) {
	for _, seed := range []string{"", "2 %", "0", "25", "26", "-1 %", "NaN", "300 F", "-460 F", "1e9 F", "68-400 °F", "400-68 F", "20..200 C", "68 to", "\xff", "3 ksi", "300 K"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		if band, err := ParseBand(typed); err == nil && !(band >= 0 && band <= maxBand/100.) {
			t.Errorf("%q is a band of %v", typed, band)
		}
		for _, system := range []units.System{units.US, units.SI} {
			if at, err := ParseService(typed, system); err == nil && at != nil && !(*at >= -273.7 && *at < 1e4) {
				t.Errorf("%q is %v °C", typed, *at)
			}
			if over, err := ParseRange(typed, system); err == nil && over != nil && !(over[0] >= -273.7 && over[0] < over[1] && over[1] < 1e4) {
				t.Errorf("%q is %v °C", typed, *over)
			}
		}
	})
}
