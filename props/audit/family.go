package audit

import (
	"math"
	"slices"

	"alongside/props"
	"alongside/props/catalog"
)

// withinFamily puts figures of room temperature and mean coefficients of
// ranges to 330 °C into the family's band.
func withinFamily(p props.PropertyID) func(*look) {
	return func(l *look) {
		if p == props.ThermalExpansion && nickelIron(l.m.Alloy) {
			return
		}
		for _, b := range l.bandsOf(p.String()) {
			for _, f := range l.room(p) {
				if f.Cond.HasRange && f.Cond.ToC > 330 {
					continue
				}
				if lo, hi := span(f, b.Value.Unit); hi < b.Value.Lo || lo > b.Value.Hi {
					l.find("%s lies outside the family's %g to %g %s", []any{f.Value, b.Value.Lo, b.Value.Hi, b.Value.Unit.Symbol()}, f)
				}
			}
		}
	}
}

// nickelIron reports the austenitic irons: with 13 to 36 % nickel their
// expansion runs from that of copper down to nearly nothing.
func nickelIron(a *props.Alloy) bool {
	return a.Family.Group == "iron" && slices.ContainsFunc(a.Composition.Limits, func(x props.Limit) bool { return x.Element == "Ni" && x.Lo >= 12 })
}

type usualKey struct {
	family   *props.Family
	property props.PropertyID
}

type interval struct{ lo, hi float64 }

// outlierProperties differ little within a family, so that a figure far off
// is a slip of the unit or of the decimal point.
var outlierProperties = []props.PropertyID{props.SpecificHeat, props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity,
	props.TensileStrength, props.YieldStrength, props.Solidus, props.Liquidus, props.LatentHeat, props.FatigueStrength, props.ShearStrength}

// usualValues are the median of the logarithms plus and minus six times their
// median absolute deviation, and no narrower than a factor of 2, for strengths
// of 3.
func usualValues(c *catalog.Catalog) map[usualKey]interval {
	values := map[usualKey][]float64{}
	seen := map[*props.Figure]bool{}
	for _, m := range c.Materials {
		for _, p := range outlierProperties {
			for _, f := range m.Figures(p) {
				if v := logSI(f); !seen[f] && !math.IsNaN(v) {
					seen[f] = true
					k := usualKey{m.Alloy.Family, p}
					values[k] = append(values[k], v)
				}
			}
		}
	}
	usual := map[usualKey]interval{}
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
		usual[k] = interval{m - reach, m + reach}
	}
	return usual
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
		b, ok := l.usual[usualKey{l.m.Alloy.Family, p}]
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
		_, law := conductionOf(l.m.Alloy.Family.Base)
		return nickelIron(l.m.Alloy) || law && len(l.figures[props.ThermalConductivity]) > 0 && len(l.figures[props.ElectricalConductivity]) > 0
	case props.ThermalExpansion:
		return nickelIron(l.m.Alloy)
	}
	return false
}
