package compare

import (
	"math"
	"os"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// shop loads the invented test
func shop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func get(t testing.TB, c *catalog.Catalog, id string) *props.Material {
	t.Helper()
	m := c.Material(id)
	if m == nil {
		t.Fatalf("no material %q", id)
	}
	return m
}

// on puts materials on a bench; the first is the baseline.
func on(t testing.TB, c *catalog.Catalog, ids ...string) Bench {
	b := NewBench()
	for _, id := range ids {
		b.Pin(get(t, c, id))
	}
	return b
}

// cellOf works the bench out and returns the cell of the second pin.
func cellOf(t testing.TB, b Bench, p props.PropertyID) *Cell {
	t.Helper()
	b.Only = []props.PropertyID{p}
	return &Compare(b).Rows[0].Cells[1]
}

// A copy is its own; the baseline stays the same material whatever moves.
func TestBenchIsAValue(t *testing.T) {
	c := shop(t)
	b := on(t, c, "x1-f-sand", "x2-f-die", "gray-30")
	b.RowUnits = map[props.PropertyID]units.Unit{props.TensileStrength: units.MPa}
	copied := b.Clone()
	copied.Pins[0], copied.RowUnits[props.TensileStrength] = nil, units.KSI
	if b.Pins[0] == nil || b.UnitOf(props.TensileStrength) != units.MPa || b.UnitOf(props.YieldStrength) != props.YieldStrength.Info().Units[units.US] {
		t.Error("a change reached the bench that was copied")
	}
	if b.Replace(1, b.Pins[2]) || !b.Replace(1, b.Pins[1]) || !b.Replace(1, get(t, c, "x1-t6-pm")) || b.Pins[1].ID != "x1-t6-pm" {
		t.Error("replace")
	}
	b.Baseline = 1
	if b.Move(0, 1) != 1 || b.Pins[b.Baseline].ID != "x1-t6-pm" || b.Move(2, 1) != 2 || b.Move(-1, 1) != -1 {
		t.Errorf("moved: baseline %d", b.Baseline)
	}
	b.Remove(9)
	b.Remove(1)
	if b.Remove(b.Baseline); b.Baseline != 0 || len(b.Pins) != 1 {
		t.Errorf("removed: baseline %d of %d", b.Baseline, len(b.Pins))
	}
}

// The words of settings and verdicts read back as they are written.
func TestSettingsInWords(t *testing.T) {
	d := Percent
	for range deltaModes {
		if back, ok := ParseDelta(d.String()); !ok || back != d {
			t.Errorf("%s", d)
		}
		d = d.Next()
	}
	if _, ok := ParseDelta("often"); ok || d != Percent {
		t.Error("going round")
	}
	for v, want := range map[Verdict]string{Beats: "beats", Misses: "misses", NoFigure: "no figure", Unlike: "unlike"} {
		if v.String() != want {
			t.Errorf("%s, want %s", v, want)
		}
	}
	// Rounded outward, so that the words stay true.
	for b, want := range map[Bound]string{{1.1666, math.Inf(1)}: "1.16 times or more", {0, 0.8571}: "0.858 times or less", {1.1111, 2.2222}: "1.11 to 2.23 times"} {
		if b.String() != want {
			t.Errorf("have %q, want %q", b.String(), want)
		}
	}
}

// Alone, Figure and Figures give one metal's figures in the order of the bench, and
// Along takes those of one basis.
func TestOfOneMetal(t *testing.T) {
	c := shop(t)
	b := NewBench()
	for _, m := range c.Materials {
		for _, p := range props.Properties() {
			list := b.Figures(m, p)
			alone := b.Alone(m, p)
			switch {
			case len(list) == 0:
				if alone.Figure != nil || alone.Absent == "" || b.Figure(m, p) != nil {
					t.Errorf("%s of %s: %+v", p, m.ID, alone)
				}
			case alone.Figure != list[0] || b.Figure(m, p) != list[0] || alone.Verdict == Beats || alone.Comparable():
				t.Errorf("%s of %s: %+v", p, m.ID, alone)
			}
		}
		bases := map[props.Basis]bool{}
		asked := []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation}
		for i, f := range b.Along(m, asked) {
			if (f == nil) != !m.Has(asked[i]) {
				t.Errorf("%s of %s", asked[i], m.ID)
			}
			if f != nil && len(b.Figures(m, asked[i])) > 1 {
				bases[f.Basis] = true
			}
		}
		if len(bases) > 1 {
			t.Errorf("%s: figures of %d bases", m.ID, len(bases))
		}
	}
}
