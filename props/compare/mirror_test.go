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
	mirrored := map[Verdict]Verdict{Beats: Misses, Misses: Beats, Level: Level, Overlaps: Overlaps, Unlike: Unlike, Neutral: Neutral}
	for _, basis := range []BasisSetting{TypicalFirst, MinimumOnly} {
		q := Question{Basis: basis, Band: DefaultBand}
		pairs := 0
		for _, p := range props.Properties() {
			if basis == MinimumOnly && !p.Info().Specified {
				continue
			}
			lists := make([][]*props.Figure, len(c.Materials))
			for i, m := range c.Materials {
				lists[i] = q.Figures(m, p)
			}
			for i, a := range c.Materials {
				for j, b := range c.Materials[:i] {
					if len(lists[i]) == 0 || len(lists[j]) == 0 || slices.Equal(lists[i], lists[j]) {
						continue
					}
					pairs++
					ab, ba := q.pair(a, b, p, lists[i], lists[j]), q.pair(b, a, p, lists[j], lists[i])
					if ab.Verdict != mirrored[ba.Verdict] || ab.Figure != ba.Against || ab.Against != ba.Figure {
						t.Errorf("%v, %v: %s %v %s (%v, %v); the other way round %v (%v, %v)", basis, p, a.ID, ab.Verdict, b.ID,
							ab.Figure.Value, ab.Against.Value, ba.Verdict, ba.Against.Value, ba.Figure.Value)
					}
				}
			}
		}
		t.Logf("%v: %d pairs of figures", basis, pairs)
	}
}
