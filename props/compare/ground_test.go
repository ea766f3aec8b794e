package compare

import (
	"os"
	"slices"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
)

// A ground says how far a condition can move a figure. Of one metal two figures
// that differ in such conditions only are both on file: the one must lie where
// the other and the grounds say.
func TestGroundsHoldWithinOneMetal(t *testing.T) {
	c, err := catalog.Load(os.DirFS("../../data"))
	if err != nil {
		t.Fatal(err)
	}
	q := Question{Band: DefaultBand}
	held := map[*Ground]int{}
	for _, m := range c.Materials {
		for _, p := range props.Properties() {
			figures := m.Figures(p)
			for i, f := range figures {
				for _, g := range figures[:i] {
					l := q.alike(side{m, f}, side{m, g})
					if l.grounds == nil || l.apart[len(conditions)-2] != same {
						continue // of another kind of bar
					}
					for _, ground := range l.grounds {
						held[ground]++
					}
					if b := boundOf(f, g, &l); b.Least > 1+1e-9 || b.Most < 1-1e-9 {
						t.Errorf("%s: %v %v (%v, %s) against %v (%v, %s): %v", m.ID, p, f.Value, f.Cond, f.Source.ID, g.Value, g.Cond, g.Source.ID, l.grounds[0].ID)
					}
				}
			}
		}
	}
	for i := range conditions {
		if g := conditions[i].ground; g != nil {
			t.Logf("%s: %d pairs", g.ID, held[g])
		}
	}
}

// has reports whether a reason of the kind is told.
func (p *Pair) has(kind ReasonKind) bool {
	return slices.ContainsFunc(p.Reasons, func(r Reason) bool { return r.Kind == kind })
}

// explained are the metals whose own sources conflict, or whose minimum lies so
// far below what is typical that minimums and typical figures order two metals
// differently; both statements are then true of their basis.
var explained = map[string]string{
	"az91e-t6-sand":        "minimum of bars cut from the casting, 117 MPa, against a typical 275 MPa of separate bars",
	"hc":                   "minimum 55 ksi of a grade that typically has 110 ksi",
	"cc50":                 "minimum 55 ksi of a grade that typically has 97 ksi",
	"cb30":                 "minimum 65 ksi of a grade that typically has 95 ksi",
	"ca40":                 "typical elongation of one treatment, below the minimum",
	"ae42-die":             "two associations, 27 and 34 ksi",
	"5052-h34-wrought":     "elongation of sheet and of round bar",
	"zn-5-die":             "elongation of a thin aged test piece, 3.6 %, and of a new bar, 7 %",
	"316-annealed-wrought": "typical hardness of bar, limit of plate",
}

// What the grounds say of two unlike figures is never the opposite of what like
// figures of the same two metals say.
func TestGroundsNeverContradictLikeFigures(t *testing.T) {
	if testing.Short() {
		t.Skip("looks at every pair of the catalog")
	}
	c, err := catalog.Load(os.DirFS("../../data"))
	if err != nil {
		t.Fatal(err)
	}
	q := Question{Band: DefaultBand}
	bounded := 0
	for _, p := range props.Properties() {
		lists := make([][]ranked, len(c.Materials))
		for i, m := range c.Materials {
			lists[i] = q.ranked(m, p)
		}
		for i, a := range c.Materials {
			for j, b := range c.Materials[:i] {
				if len(lists[i])*len(lists[j]) < 2 {
					continue
				}
				like := q.pair(a, b, p, lists[i], lists[j])
				if like.Verdict != Beats && like.Verdict != Misses || like.Bound != nil || like.has(BelowMinimum) || like.has(OffsetDiffers) {
					continue
				}
				for _, f := range lists[i] {
					for _, g := range lists[j] {
						l := q.alike(side{a, f.Figure}, side{b, g.Figure})
						if l.grounds == nil {
							continue
						}
						sense, _ := q.SenseOf(p)
						v := certain(f.Figure, g.Figure, &l, sense, q.Band)
						if v == Unlike {
							continue
						}
						bounded++
						if v != like.Verdict && explained[a.ID] == "" && explained[b.ID] == "" {
							t.Errorf("%s %v %s, %v: %v %v (%s) against %v %v (%s); like: %v %v (%s) against %v %v (%s)", a.ID, v, b.ID, p, f.Value, f.Cond, f.Source.ID, g.Value, g.Cond, g.Source.ID,
								like.Figure.Value, like.Figure.Cond, like.Figure.Source.ID, like.Against.Value, like.Against.Cond, like.Against.Source.ID)
						}
					}
				}
			}
		}
	}
	t.Logf("%d bounded verdicts", bounded)
}
