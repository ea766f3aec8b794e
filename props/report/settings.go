package report

import (
	"fmt"
	"strconv"
	"strings"

	"alongside/props/compare"
	"alongside/props/part"
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

// degrees is the temperature unit of a system.
func degrees(s units.System) units.Unit { return units.Preferred(units.Temperature, s) }

// ServiceText is the service temperature of the bench in its units, "" when
// none is set.
func ServiceText(b *compare.Bench) string {
	if b.Service == nil {
		return ""
	}
	return temperature(b.System, *b.Service, *b.Service)
}

// RangeText is the expansion range of the bench in its units, "" when none is
// set.
func RangeText(b *compare.Bench) string {
	if b.Range == nil {
		return ""
	}
	return temperature(b.System, b.Range[0], b.Range[1])
}

func temperature(s units.System, fromC, toC float64) string {
	u := degrees(s)
	in := func(c float64) float64 { return u.FromSI(units.DegC.ToSI(c)) }
	return units.Quantity{Lo: in(fromC), Hi: in(toC), Unit: u}.String()
}

// ParseService reads a service temperature, in the unit of the system where
// none is typed; an empty text is none.
func ParseService(s string, system units.System) (*float64, error) {
	if strings.TrimSpace(s) == "" {
		return nil, nil
	}
	at, err := part.Temperature(s, degrees(system))
	if err != nil {
		return nil, err
	}
	return &at, nil
}

// ParseRange reads the two temperatures of an expansion range; an empty text
// is none.
func ParseRange(s string, system units.System) (*[2]float64, error) {
	if strings.TrimSpace(s) == "" {
		return nil, nil
	}
	over, err := part.TemperatureRange(s, degrees(system))
	if err != nil {
		return nil, err
	}
	return &over, nil
}
