package audit

import (
	"math"
	"slices"

	"alongside/props"
	"alongside/units"
)

// limits are the values in which every metal of a family lies.
type limits struct {
	family   string
	property props.PropertyID
	lo, hi   float64
	unit     units.Unit
}

var familyLimits = []limits{
	{"aluminum", props.ElasticModulus, 9.5, 12, units.Mpsi},
	{"wrought-aluminum", props.ElasticModulus, 9.8, 11.5, units.Mpsi},
	{"magnesium", props.ElasticModulus, 6.2, 6.8, units.Mpsi},
	{"zinc", props.ElasticModulus, 10.5, 14.5, units.Mpsi},
	{"gray-iron", props.ElasticModulus, 9.0, 24, units.Mpsi},
	{"ductile-iron", props.ElasticModulus, 15.5, 26, units.Mpsi},
	{"austempered-iron", props.ElasticModulus, 21, 25, units.Mpsi},
	{"malleable-iron", props.ElasticModulus, 23, 28, units.Mpsi},
	{"compacted-iron", props.ElasticModulus, 18, 24, units.Mpsi},
	{"cast-steel", props.ElasticModulus, 27.5, 31, units.Mpsi},
	{"wrought-steel", props.ElasticModulus, 28, 31, units.Mpsi},
	{"cast-stainless", props.ElasticModulus, 24, 30, units.Mpsi},
	{"wrought-stainless", props.ElasticModulus, 27, 30, units.Mpsi},
	{"copper", props.ElasticModulus, 10, 22, units.Mpsi},
	{"wrought-copper", props.ElasticModulus, 14, 22.5, units.Mpsi},

	{"aluminum", props.Density, 2.50, 3.00, units.GPerCM3},
	{"wrought-aluminum", props.Density, 2.63, 2.86, units.GPerCM3},
	{"magnesium", props.Density, 1.74, 1.90, units.GPerCM3},
	{"zinc", props.Density, 4.9, 6.8, units.GPerCM3},
	{"gray-iron", props.Density, 6.8, 7.4, units.GPerCM3},
	{"ductile-iron", props.Density, 6.8, 7.7, units.GPerCM3},
	{"austempered-iron", props.Density, 6.9, 7.2, units.GPerCM3},
	{"malleable-iron", props.Density, 7.15, 7.45, units.GPerCM3},
	{"compacted-iron", props.Density, 6.9, 7.3, units.GPerCM3},
	{"cast-steel", props.Density, 7.7, 7.95, units.GPerCM3},
	{"wrought-steel", props.Density, 7.7, 7.95, units.GPerCM3},
	{"cast-stainless", props.Density, 7.5, 8.3, units.GPerCM3},
	{"wrought-stainless", props.Density, 7.6, 8.1, units.GPerCM3},
	{"copper", props.Density, 7.2, 9.4, units.GPerCM3},
	{"wrought-copper", props.Density, 7.5, 8.97, units.GPerCM3},
}

func withinFamily(p props.PropertyID) func(*look) {
	return func(l *look) {
		for _, b := range familyLimits {
			if b.property != p || b.family != l.m.Alloy.Family.ID {
				continue
			}
			for _, f := range l.room(p) {
				if lo, hi := span(f, b.unit); hi < b.lo || lo > b.hi {
					l.find("%s lies outside the family's %g to %g %s", []any{f.Value, b.lo, b.hi, b.unit.Symbol()}, f)
				}
			}
		}
	}
}

func poisson(l *look) {
	for _, f := range l.room(props.PoissonRatio) {
		if lo, hi := f.Value.Interval(); hi < 0.20 || lo > 0.36 {
			l.find("%s lies outside 0.20 to 0.36", []any{f.Value}, f)
		}
	}
}

type bandKey struct {
	family   *props.Family
	property props.PropertyID
}

type band struct{ lo, hi float64 }

// outlierProperties differ little within a family, so that a figure far off
// is a slip of the unit or of the decimal point.
var outlierProperties = []props.PropertyID{props.SpecificHeat, props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity,
	props.TensileStrength, props.YieldStrength, props.Solidus, props.Liquidus, props.LatentHeat, props.FatigueStrength, props.ShearStrength}

// familyBands are the median of the logarithms plus and minus six times their
// median absolute deviation, and no narrower than a factor of 2, for strengths
// of 3.
func familyBands(c *props.Catalog) map[bandKey]band {
	values := map[bandKey][]float64{}
	seen := map[*props.Figure]bool{}
	for _, m := range c.Materials {
		for _, p := range outlierProperties {
			for _, f := range m.Figures(p) {
				if v := logSI(f); !seen[f] && !math.IsNaN(v) {
					seen[f] = true
					k := bandKey{m.Alloy.Family, p}
					values[k] = append(values[k], v)
				}
			}
		}
	}
	bands := map[bandKey]band{}
	for k, v := range values {
		if len(v) < 10 {
			continue
		}
		m := median(v)
		off := make([]float64, len(v))
		for i := range v {
			off[i] = math.Abs(v[i] - m)
		}
		least := 2.0
		if k.property.Info().Strength {
			least = 3
		}
		reach := max(6*median(off), math.Log(least))
		bands[k] = band{m - reach, m + reach}
	}
	return bands
}

func logSI(f *props.Figure) float64 {
	return math.Log((f.Value.Unit.ToSI(f.Value.Lo) + f.Value.Unit.ToSI(f.Value.Hi)) / 2)
}

func median(v []float64) float64 {
	s := slices.Clone(v)
	slices.Sort(s)
	return s[len(s)/2]
}

func outlier(l *look) {
	for _, p := range outlierProperties {
		b, ok := l.bands[bandKey{l.m.Alloy.Family, p}]
		if !ok {
			continue
		}
		for _, f := range l.room(p) {
			if v := logSI(f); v < b.lo || v > b.hi {
				l.find("%s lies far from the rest of the family", []any{f.Value}, f)
			}
		}
	}
}
