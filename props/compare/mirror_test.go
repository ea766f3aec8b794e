package compare

import (
	"os"
	"slices"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

// Who is the baseline does not decide who is the better: over every pair of the
// catalog and every property, B against A is the mirror of A against B, drawn
// from the same two figures.
func TestMirror(t *testing.T) {
	if testing.Short() {
		t.Skip("looks at every pair of the catalog")
	}
	c, err := catalog.Load(os.DirFS("../../data"))
	if err != nil {
		t.Fatal(err)
	}
	hot := 150.0
	for name, s := range map[string]struct {
		q    Question
		bear func(props.PropertyID) bool // on which properties the setting bears
	}{
		"typical":    {Question{Band: DefaultBand}, func(props.PropertyID) bool { return true }},
		"minimum":    {Question{Band: DefaultBand, Basis: MinimumOnly}, func(p props.PropertyID) bool { return p.Info().Specified }},
		"at 302 °F":  {Question{Band: DefaultBand, Service: &hot}, func(p props.PropertyID) bool { return hasService(p) || p == props.ElasticModulus }},
		"68–392 °F":  {Question{Band: DefaultBand, Range: &[2]float64{20, 200}}, func(p props.PropertyID) bool { return p == props.ThermalExpansion }},
		"-40–212 °F": {Question{Band: DefaultBand, Range: &[2]float64{-40, 100}}, func(p props.PropertyID) bool { return p == props.ThermalExpansion }},
	} {
		for _, p := range props.Properties() {
			if s.bear(p) {
				t.Run(name+", "+p.Info().Name, func(t *testing.T) {
					t.Parallel()
					mirrored(t, s.q, p, c.Materials)
				})
			}
		}
	}
}

func mirrored(t *testing.T, q Question, p props.PropertyID, materials []*props.Material) {
	turned := map[Verdict]Verdict{Beats: Misses, Misses: Beats, Level: Level, Overlaps: Overlaps, Unlike: Unlike, Neutral: Neutral}
	lists := make([][]ranked, len(materials))
	for i, m := range materials {
		lists[i] = q.ranked(m, p)
	}
	for i, a := range materials {
		for j, b := range materials[:i] {
			if len(lists[i]) == 0 || len(lists[j]) == 0 || slices.Equal(lists[i], lists[j]) {
				continue
			}
			ab, ba := q.pair(a, b, p, lists[i], lists[j]), q.pair(b, a, p, lists[j], lists[i])
			if ab.Verdict != turned[ba.Verdict] || ab.Figure != ba.Against || ab.Against != ba.Figure {
				t.Errorf("%s %v %s (%v, %v); the other way round %v (%v, %v)", a.ID, ab.Verdict, b.ID,
					ab.Figure.Value, ab.Against.Value, ba.Verdict, ba.Against.Value, ba.Figure.Value)
			}
		}
	}
}
