package report

import (
	"fmt"
	"strconv"

	"alongside/units"
)

// BandText writes a level band as a percentage: "2 %".
func BandText(band float64) string { return strconv.FormatFloat(100*band, 'g', 3, 64) + " %" }

// maxBand keeps the band a rounding allowance: beyond it "level" would hide
// real differences.
const maxBand = 25

// ParseBand reads a level band of 0 to 25 percent, with or without the sign.
func ParseBand(s string) (float64, error) {
	q, err := units.ParseAs(s, units.Percent, units.Pct)
	if err != nil {
		return 0, err
	}
	if q.IsRange() || q.Qual != units.Exact || q.Lo < 0 || q.Lo > maxBand {
		return 0, fmt.Errorf("%q: expected one percentage from 0 to %d", s, maxBand)
	}
	return q.Lo / 100, nil
}
