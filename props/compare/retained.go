package compare

import (
	"cmp"
	"fmt"
	"slices"

	"alongside/props"
)

// RetainedOf is the property that says in percent what a metal keeps of p at heat;
// NoProperty where there is none.
func RetainedOf(p props.PropertyID) props.PropertyID {
	switch p {
	case props.TensileStrength:
		return props.TensileRetained
	case props.YieldStrength:
		return props.YieldRetained
	case props.ElasticModulus:
		return props.ModulusRetained
	}
	return props.NoProperty
}

// fromRoom works out the figures of a property at t °C: each of the list that
// holds at room temperature times the percentage that the metal's curves give
// at t; it keeps its basis. Nothing is taken from outside a curve. The longest
// exposure comes first. The curves of yield are of the 0.2 % offset and serve no
// other. The curves are the figures of MIL-HDBK-5J named in the data.
func fromRoom(m *props.Material, p props.PropertyID, list []*props.Figure, t float64) []*props.Figure {
	curve := RetainedOf(p)
	if curve == props.NoProperty {
		return nil
	}
	percents := percentsAt(m.Figures(curve), t)
	var out []*props.Figure
	for _, pct := range percents {
		for _, f := range list {
			if !f.Cond.RoomTemperature() || f.Cond.UnderLoad || (f.Cond.Offset != 0 && f.Cond.Offset != 0.2) {
				continue
			}
			v := f.Value
			v.Lo *= pct.Value.Lo / 100
			v.Hi *= pct.Value.Hi / 100
			c := *f.Cond
			c.HasAt, c.AtC, c.AtText, c.Hours = true, t, pct.Cond.At(), pct.Cond.Hours
			c.Interpolated = retainedWords(pct)
			out = append(out, &props.Figure{Property: p, Value: v, Cond: &c, Block: f.Block, Agrees: f.Agrees})
		}
	}
	return out
}

// percentsAt is one percentage for each exposure whose curve covers t, the
// longest exposure first.
func percentsAt(points []*props.Figure, t float64) []*props.Figure {
	byHours := map[float64][]*props.Figure{}
	for _, f := range points {
		byHours[f.Cond.Hours] = append(byHours[f.Cond.Hours], f)
	}
	var out []*props.Figure
	for _, curve := range byHours {
		if at := atService(curve, t); len(at) > 0 {
			out = append(out, at[0])
		}
	}
	slices.SortFunc(out, func(a, b *props.Figure) int { return cmp.Compare(b.Cond.Hours, a.Cond.Hours) })
	return out
}

func retainedWords(pct *props.Figure) string {
	exposure := ""
	if pct.Cond.Hours != 0 {
		exposure = fmt.Sprintf(" up to %g h", pct.Cond.Hours)
	}
	return fmt.Sprintf("%.3g %% of room temperature at %s%s (%s, %s)", pct.Value.Lo, pct.Cond.At(), exposure, pct.Source.ID, pct.Table)
}
