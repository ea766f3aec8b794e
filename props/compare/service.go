package compare

import (
	"fmt"
	"sort"
	"strings"

	"alongside/props"
	"alongside/units"
)

// hasService reports whether the service temperature of the bench applies to a
// property.
func hasService(p props.PropertyID) bool { return p.Info().Strength || p == props.Elongation }

// atService replaces a property's figures by those that hold at a service
// temperature in °C: figures published there, or interpolated linearly between
// two published temperatures of the same source, basis and exposure. Nothing
// is taken from outside the published temperatures.
func atService(list []*props.Figure, t float64) []*props.Figure {
	var out []*props.Figure
	for _, f := range list {
		within := 2.0 // °C: 300 °F and 150 °C are one
		if f.Cond.RoomTemperature() {
			within = 6
		}
		if near(atOr20(f.Cond), t, within) {
			out = append(out, f)
		}
	}
	if len(out) > 0 {
		return out
	}
	for _, f := range list {
		if atOr20(f.Cond) >= t {
			continue
		}
		if above := nextAbove(list, f, t); above != nil {
			out = append(out, between(f, above, t))
		}
	}
	return out
}

// nextAbove is the figure of the same series that is the next beyond t; nil where
// there is none, or another of the series lies nearer below t than f.
func nextAbove(list []*props.Figure, f *props.Figure, t float64) *props.Figure {
	var above *props.Figure
	for _, g := range list {
		if g == f || g.Block.Source != f.Block.Source || g.Basis != f.Basis || !sameSeries(f.Cond, g.Cond) {
			continue
		}
		switch at := atOr20(g.Cond); {
		case at > atOr20(f.Cond) && at < t:
			return nil
		case at > t && (above == nil || at < atOr20(above.Cond)):
			above = g
		}
	}
	return above
}

func sameSeries(a, b *props.Conditions) bool {
	return a.Hours == b.Hours && a.Offset == b.Offset && a.UnderLoad == b.UnderLoad && a.Gauge == b.Gauge &&
		a.Bar == b.Bar && a.Section == b.Section && a.Class == b.Class && a.Cycles == b.Cycles
}

// between is a figure interpolated linearly in temperature.
func between(a, b *props.Figure, t float64) *props.Figure {
	w := (t - atOr20(a.Cond)) / (atOr20(b.Cond) - atOr20(a.Cond))
	bv, err := b.Value.In(a.Value.Unit)
	if err != nil {
		return a
	}
	v := a.Value
	v.Lo += w * (bv.Lo - v.Lo)
	v.Hi += w * (bv.Hi - v.Hi)
	v.Place = max(a.Value.Place, bv.Place)
	c := *a.Cond
	c.HasAt, c.AtC, c.AtText = true, t, temperatureText(t, a, b)
	c.Interpolated = fmt.Sprintf("interpolated between %s and %s", atText(a.Cond), atText(b.Cond))
	return &props.Figure{Property: a.Property, Value: v, Cond: &c, Block: a.Block}
}

// temperatureText writes t in the unit in which the source gives its
// temperatures.
func temperatureText(t float64, f, g *props.Figure) string {
	if strings.HasSuffix(f.Cond.At(), "F") || strings.HasSuffix(g.Cond.At(), "F") {
		return fmt.Sprintf("%.0f °F", units.DegF.FromSI(t+273.15))
	}
	return fmt.Sprintf("%.0f °C", t)
}

func atText(c *props.Conditions) string {
	if !c.HasAt {
		return "room temperature"
	}
	return c.At()
}

// noServiceFigure says at which temperatures the property is published.
func noServiceFigure(list []*props.Figure) string {
	var at []float64
	for _, f := range list {
		t := atOr20(f.Cond)
		if i := sort.SearchFloat64s(at, t); i == len(at) || at[i] != t {
			at = append(at[:i], append([]float64{t}, at[i:]...)...)
		}
	}
	words := make([]string, len(at))
	for i, t := range at {
		words[i] = fmt.Sprintf("%.0f °C (%.0f °F)", t, units.DegF.FromSI(t+273.15))
	}
	return "no figure at the service temperature; published at " + strings.Join(words, ", ")
}

// commonRange is the range in °C to which means are brought unless another is
// asked for: 68–212 °F.
var commonRange = [2]float64{reference, 100}

// overRange is the mean expansion coefficient over a range: as published, or
// worked out by the rule of Growth.
func overRange(m *props.Material, fromC, toC float64) ([]*props.Figure, string) {
	for _, f := range m.Figures(props.ThermalExpansion) {
		if f.Cond.HasRange && near(f.Cond.FromC, fromC, sameTemperature) && near(f.Cond.ToC, toC, sameTemperature) {
			return []*props.Figure{f}, ""
		}
	}
	g := GrowthOf(m)
	if g == nil {
		return nil, "no expansion coefficient with a stated range"
	}
	lo, _, hi, err := g.Mean(fromC, toC)
	if err != nil {
		return nil, err.Error()
	}
	first := g.Figures[0]
	u := first.Value.Unit
	v := units.Quantity{Lo: u.FromSI(lo), Hi: u.FromSI(hi), Place: first.Value.Place, Unit: u}
	bound := g.Bounded(fromC, toC)
	if half := v.Hi - v.Lo; !bound && half < 1.5*pow10(int(v.Place)) {
		// As exact as a single printed figure: show it as one.
		v.Lo = (v.Lo + v.Hi) / 2
		v.Hi = v.Lo
	} else {
		bound = bound || g.across
	}
	c := props.Conditions{HasRange: true, FromC: fromC, ToC: toC, Bound: bound,
		Interpolated: fmt.Sprintf("from published means over %s", rangesText(g.Figures))}
	return []*props.Figure{{Property: props.ThermalExpansion, Value: v, Cond: &c, Block: first.Block}}, ""
}

func rangesText(list []*props.Figure) string {
	words := make([]string, len(list))
	for i, f := range list {
		words[i] = f.Cond.Range()
	}
	return strings.Join(words, ", ")
}

func pow10(n int) float64 {
	v := 1.0
	for ; n > 0; n-- {
		v *= 10
	}
	for ; n < 0; n++ {
		v /= 10
	}
	return v
}
