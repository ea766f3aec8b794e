package audit

import (
	"math"
	"slices"

	"alongside/props"
	"alongside/props/catalog"
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

	{"aluminum", props.PoissonRatio, 0.32, 0.35, units.One},
	{"wrought-aluminum", props.PoissonRatio, 0.32, 0.35, units.One},
	{"magnesium", props.PoissonRatio, 0.33, 0.36, units.One},
	{"zinc", props.PoissonRatio, 0.24, 0.33, units.One},
	{"gray-iron", props.PoissonRatio, 0.20, 0.30, units.One},
	{"ductile-iron", props.PoissonRatio, 0.26, 0.31, units.One},
	{"austempered-iron", props.PoissonRatio, 0.24, 0.29, units.One},
	{"malleable-iron", props.PoissonRatio, 0.24, 0.29, units.One},
	{"compacted-iron", props.PoissonRatio, 0.24, 0.29, units.One},
	{"cast-steel", props.PoissonRatio, 0.26, 0.32, units.One},
	{"wrought-steel", props.PoissonRatio, 0.26, 0.32, units.One},
	{"cast-stainless", props.PoissonRatio, 0.25, 0.33, units.One},
	{"wrought-stainless", props.PoissonRatio, 0.25, 0.33, units.One},
	{"copper", props.PoissonRatio, 0.29, 0.38, units.One},
	{"wrought-copper", props.PoissonRatio, 0.29, 0.38, units.One},

	{"aluminum", props.ThermalExpansion, 17.5, 27, units.MicromMK},
	{"wrought-aluminum", props.ThermalExpansion, 18.5, 26.5, units.MicromMK},
	{"magnesium", props.ThermalExpansion, 24.5, 28, units.MicromMK},
	{"zinc", props.ThermalExpansion, 22.5, 29, units.MicromMK},
	{"gray-iron", props.ThermalExpansion, 8, 13.5, units.MicromMK},
	{"ductile-iron", props.ThermalExpansion, 9.5, 13.5, units.MicromMK},
	{"austempered-iron", props.ThermalExpansion, 11, 16, units.MicromMK},
	{"malleable-iron", props.ThermalExpansion, 10, 13.5, units.MicromMK},
	{"compacted-iron", props.ThermalExpansion, 9.5, 13.5, units.MicromMK},
	{"cast-steel", props.ThermalExpansion, 10.5, 14.5, units.MicromMK},
	{"wrought-steel", props.ThermalExpansion, 10.5, 14.5, units.MicromMK},
	{"cast-stainless", props.ThermalExpansion, 9.5, 18, units.MicromMK},
	{"wrought-stainless", props.ThermalExpansion, 9.5, 18.5, units.MicromMK},
	{"copper", props.ThermalExpansion, 15.5, 22, units.MicromMK},
	{"wrought-copper", props.ThermalExpansion, 15.5, 22, units.MicromMK},
}

// withinFamily puts figures of room temperature and mean coefficients of
// ranges to 330 °C into the family's band.
func withinFamily(p props.PropertyID) func(*look) {
	return func(l *look) {
		if p == props.ThermalExpansion && nickelIron(l.m.Alloy) {
			return
		}
		for _, b := range familyLimits {
			if b.property != p || b.family != l.m.Alloy.Family.ID {
				continue
			}
			for _, f := range l.room(p) {
				if f.Cond.HasRange && f.Cond.ToC > 330 {
					continue
				}
				if lo, hi := span(f, b.unit); hi < b.lo || lo > b.hi {
					l.find("%s lies outside the family's %g to %g %s", []any{f.Value, b.lo, b.hi, b.unit.Symbol()}, f)
				}
			}
		}
	}
}

// nickelIron reports the austenitic irons: with 13 to 36 % nickel their
// expansion runs from that of copper down to nearly nothing.
func nickelIron(a *props.Alloy) bool {
	for _, x := range a.Composition.Limits {
		if x.Element == "Ni" && x.Lo >= 12 {
			switch a.Family.ID {
			case "gray-iron", "ductile-iron":
				return true
			}
		}
	}
	return false
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
func familyBands(c *catalog.Catalog) map[bandKey]band {
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
		if !ok || spread(l, p) {
			continue
		}
		for _, f := range l.room(p) {
			if v := logSI(f); v < b.lo || v > b.hi {
				l.find("%s lies far from the rest of the family", []any{f.Value}, f)
			}
		}
	}
}

// spread reports properties that run over a wide span within the family for a
// known reason: the nickel of austenitic irons, and conduction from the pure
// metal to its alloys where heat and current are set against each other by
// another rule.
func spread(l *look, p props.PropertyID) bool {
	switch p {
	case props.ThermalConductivity, props.ElectricalConductivity:
		_, law := conductionLaws[l.m.Alloy.Family.ID]
		return nickelIron(l.m.Alloy) || law && len(l.figures[props.ThermalConductivity]) > 0 && len(l.figures[props.ElectricalConductivity]) > 0
	case props.ThermalExpansion:
		return nickelIron(l.m.Alloy)
	}
	return false
}
