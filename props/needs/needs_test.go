package needs_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/spoken"
	"alongside/units"

	"pgregory.net/rapid"
)

// shop is the invented catalog of the props tests.
func shop(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func parse(t testing.TB, c *catalog.Catalog, s string) needs.Need {
	t.Helper()
	n, err := spoken.One(s, c, units.US)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func TestJudge(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct {
		id, need string
		want     needs.Status
		worst    float64
		note     string
	}{
		{"x1-f-sand", "tensile >= 20 ksi", needs.Met, 3, ""},                                 // minimum 23.0
		{"x1-f-sand", "tensile >= 25 ksi", needs.NotMet, -2, "typical 27 ksi would meet it"}, // the minimum decides
		{"x1-f-sand", "tensile >= 23 ksi", needs.Met, 0, ""},                                 // exactly
		{"x1-f-sand", "tensile > 23 ksi", needs.NotMet, 0, ""},                               // excluded
		{"x1-f-sand", "tensile <= 26 ksi", needs.NotMet, -1, ""},                             // typical 27: a minimum is no upper end
		{"x1-t6-sand", "tensile >= 30 ksi", needs.OnlyTypical, 6, ""},                        // typical 36 only
		{"x1-t6-sand", "tensile >= 40 ksi", needs.NotMet, -4, ""},                            //
		{"x1-t6-sand", "HB 60-120", needs.Met, 10, ""},                                       // 70–100
		{"x1-t6-sand", "HB >= 80", needs.Partly, -10, ""},                                    // worst case 70
		{"x1-t6-sand", "HB >= 110", needs.NotMet, -40, ""},                                   //
		{"gray-30", "yield >= 20 ksi", needs.NoFigure, math.NaN(), "gray iron has no yield"}, //
		{"gray-30", "density < 8 g/cm3", needs.NoFigure, math.NaN(), "no figure on file"},    //
		{"x1-f-sand", "conductivity >= 35 %IACS", needs.Met, 5, ""},                          //
		{"x2-f-die", "resistivity <= 5.5 uOhm-cm", needs.Met, 0.5, ""},                       // 5.0 µΩ·cm
		{"x2-f-die", "resistivity <= 4 uOhm-cm", needs.NotMet, -1, ""},                       //
		{"x1-f-sand", "process = pm or sand", needs.Met, math.NaN(), ""},
		{"x1-f-sand", "process = die", needs.NotMet, math.NaN(), ""},
		{"gray-30", "family = aluminum", needs.NotMet, math.NaN(), ""},
		{"x1-t6-pm", "temper = T6", needs.Met, math.NaN(), ""},
		{"x1-t6-pm", "tensile >= 30 ksi", needs.OnlyTypical, 10, "common practice"},
		{"x1-f-sand", "density < 0.1003 lb/in3", needs.Met, 0.0003, needs.WithinRounding},     // 0.100 is 0.0995–0.1005
		{"x1-f-sand", "density < 0.0998 lb/in3", needs.NotMet, -0.0002, needs.WithinRounding}, //
		{"x1-f-sand", "tensile >= 22.98 ksi", needs.Met, 0.02, ""},                            // a specified minimum is not rounded
	} {
		n := parse(t, c, tt.need)
		j := needs.Judge(c.Material(tt.id), &n)
		same := math.Abs(j.Worst-tt.worst) < 1e-9 || math.IsNaN(j.Worst) && math.IsNaN(tt.worst)
		if j.Status != tt.want || !same || !strings.Contains(j.Note, tt.note) {
			t.Errorf("%s, %s:\nhave %v, %v, %q\nwant %v, %v, %q", tt.id, tt.need, j.Status, j.Worst, j.Note, tt.want, tt.worst, tt.note)
		}
	}
}

func TestFind(t *testing.T) {
	c := shop(t)
	list, err := spoken.Read("family = aluminum; tensile >= 35 ksi; HB >= 60", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	f := needs.Find(c.Materials, list, 10, true)
	if have := ids(f.Met); have != "x2-f-die x1-t6-sand" || f.Met[0].Recalled || !f.Met[1].Recalled { // the remembered last
		t.Errorf("have %s", have)
	}
	if have := ids(f.Near); have != "x1-f-sand x1-t6-pm" {
		t.Errorf("near: have %s", have)
	}
	near := f.Near[0]
	if len(near.Stops) != 2 || near.Stops[0].Need.Property != props.TensileStrength || len(near.Lifts) != 1 || near.Lifts[0].ID != "x1-t6-sand" {
		t.Errorf("x1-f-sand is stopped by %d needs and lifted by %v", len(near.Stops), near.Lifts)
	}
}

// A material known from memory alone is offered where it is asked for only, nor does
// it lift another; what rests on its own remembered figure stands last.
func TestRemembered(t *testing.T) {
	c := shop(t)
	list, err := spoken.Read("family = aluminum; tensile >= 35 ksi; HB >= 60", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	f := needs.Find(c.Materials, list, 10, false)
	if len(f.Remembered) != 1 || f.Remembered[0].ID != "x1-t6-sand" || ids(f.Met) != "x2-f-die" || ids(f.Near) != "x1-f-sand x1-t6-pm" || len(f.Near[0].Lifts) != 0 {
		t.Errorf("left out %v, met %s, near %s, lifted by %v", f.Remembered, ids(f.Met), ids(f.Near), f.Near[0].Lifts)
	}
	own := *c.Material("x1-t6-sand")
	block := *own.Stated[0].Block
	own.Stated = slices.Clone(own.Stated)
	own.Stated[0].Block, block.Basis = &block, props.House
	if own.Remembered() {
		t.Error("the shop's own figure counts as remembered")
	}
}

// What only a missing figure stops comes after what misses, counted apart.
func TestUnjudged(t *testing.T) {
	c := shop(t)
	list, err := spoken.Read("density < 0.0001 lb/in3; tensile >= 24 ksi", c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	f := needs.Find(c.Materials, list, 3, true)
	last := f.Near[len(f.Near)-1]
	if have := ids(f.Near); have != "x2-f-die x1-t6-sand x1-t6-pm" || f.NearTotal != 5 || f.UnjudgedTotal != 1 || last.Unjudged() {
		t.Errorf("have %s, the nearest of %d with %d not judged", have, f.NearTotal, f.UnjudgedTotal)
	}
	f = needs.Find(c.Materials, list, 10, true)
	if last := f.Near[len(f.Near)-1]; len(f.Near) != 5 || last.Material.ID != "gray-30" || !last.Unjudged() {
		t.Errorf("have %s, want gray-30 last, without a density", ids(f.Near))
	}
}

func TestShown(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct{ need, want string }{
		{"density < 2.8 g/cm3", "2.77 g/cm³"},
		{"density < 2.77 g/cm3", "2.768 g/cm³"}, // 2.77 would not be below it
		{"density <= 2.77 g/cm3", "2.77 g/cm³"},
		{"density < 0.2 lb/in3", "0.100 lb/in³"},
		{"resistivity <= 5 uOhm-cm", "4.3 µΩ·cm"},
		{"HB 60-120", "55–85 HB 500/10"},
	} {
		n := parse(t, c, tt.need)
		j := needs.Judge(c.Material("x1-f-sand"), &n)
		if have := j.Shown().String(); have != tt.want {
			t.Errorf("%s: have %s, want %s", tt.need, have, tt.want)
		}
	}
}

func ids(list []needs.Result) string {
	var s []string
	for _, r := range list {
		s = append(s, r.Material.ID)
	}
	return strings.Join(s, " ")
}

func TestSwitchedOff(t *testing.T) {
	c := shop(t)
	n := parse(t, c, "tensile >= 99 ksi")
	n.Off = true
	if f := needs.Find(c.Materials, []needs.Need{n}, 0, true); len(f.Met) != len(c.Materials) {
		t.Errorf("a need switched off still stops: %s", ids(f.Met))
	}
}

func anyNeed(t *rapid.T, c *catalog.Catalog) needs.Need {
	p := rapid.SampledFrom([]props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.HardnessBrinell, props.Density, props.ElectricalConductivity, props.FatigueStrength}).Draw(t, "property")
	us := units.UnitsOf(p.Info().Dimension)
	u := rapid.SampledFrom(us).Draw(t, "unit")
	base := p.Info().Units[0]
	v := rapid.Float64Range(0.05, 60).Draw(t, "value")
	x, err := units.Convert(v, base, u)
	if err != nil {
		t.Fatal(err)
	}
	return needs.Need{Property: p, Op: needs.Op(rapid.IntRange(0, 3).Draw(t, "op")), Limit: units.Quantity{Lo: x, Hi: x, Unit: u}}
}

func metSet(c *catalog.Catalog, list []needs.Need) map[*props.Material]bool {
	set := map[*props.Material]bool{}
	for _, r := range needs.Find(c.Materials, list, 0, true).Met {
		set[r.Material] = true
	}
	return set
}

func TestNeedProperties(t *testing.T) {
	c := shop(t)
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) needs.Need { return anyNeed(t, c) }), 1, 4).Draw(t, "needs")
		met := metSet(c, list)
		// The screen agrees with judging one by one.
		for _, m := range c.Materials {
			if r := needs.JudgeAll(m, list); (len(r.Stops) == 0) != met[m] {
				t.Fatalf("%s: screened %v, judged with %d stops", m.ID, met[m], len(r.Stops))
			} else if (r.Short == 0) != met[m] {
				t.Fatalf("%s: shortfall %v though met is %v", m.ID, r.Short, met[m])
			}
		}
		// One more need never enlarges the set.
		for m := range metSet(c, append(list[:len(list):len(list)], anyNeed(t, c))) {
			if !met[m] {
				t.Fatalf("%s is met only with one need more", m.ID)
			}
		}
		// A looser limit never shrinks it.
		loose := append([]needs.Need{}, list...)
		n := &loose[0]
		factor := 0.9
		if op := n.Op; op == needs.AtMost || op == needs.LessThan {
			factor = 1.1
		}
		n.Limit.Lo *= factor
		n.Limit.Hi *= factor
		after := metSet(c, loose)
		for m := range met {
			if !after[m] {
				t.Fatalf("%s is lost by loosening %s", m.ID, n)
			}
		}
		// The unit of a limit never changes a verdict.
		n = &list[0]
		u := rapid.SampledFrom(units.UnitsOf(n.Limit.Unit.Dimension())).Draw(t, "other unit")
		x, err := units.Convert(n.Limit.Lo, n.Limit.Unit, u)
		if err != nil {
			t.Fatal(err)
		}
		if u.Reciprocal() != n.Limit.Unit.Reciprocal() {
			n.Op = n.Op.Turned()
		}
		n.Limit = units.Quantity{Lo: x, Hi: x, Unit: u}
		for m := range metSet(c, list) {
			if !met[m] {
				t.Fatalf("%s: %s in %s changes the verdict", m.ID, n, u)
			}
		}
	})
}

func TestBetterThan(t *testing.T) {
	c := shop(t)
	b := compare.NewBench()
	list := needs.BetterThan(&b, c.Material("x1-f-sand"), []props.PropertyID{props.TensileStrength, props.Density, props.ElectricalConductivity, props.Solidus})
	var have []string
	for i := range list {
		have = append(have, list[i].String())
	}
	if s := strings.Join(have, "; "); s != "tensile strength ≥ 27 ksi; density ≤ 0.100 lb/in³; electrical conductivity ≥ 40 %IACS" {
		t.Errorf("have %s", s)
	}
	if !metSet(c, list)[c.Material("x1-f-sand")] {
		t.Error("the baseline does not equal itself")
	}
}

// A baseline meets what is asked of it, ranges and resistivities included.
func TestBaselineMeetsItsOwnFigures(t *testing.T) {
	c := shop(t)
	for _, unit := range []units.Unit{units.NoUnit, units.MicroOhmCM} {
		b := compare.NewBench()
		if unit != units.NoUnit {
			b.RowUnits = map[props.PropertyID]units.Unit{props.ElectricalConductivity: unit}
		}
		for _, m := range c.Materials {
			for _, p := range props.Properties() {
				for _, n := range needs.BetterThan(&b, m, []props.PropertyID{p}) {
					if j := needs.Judge(m, &n); j.Status == needs.NotMet || j.Status == needs.Partly {
						t.Errorf("%s: %s: %v by %g", m.ID, n.Text, j.Status, j.Worst)
					}
				}
			}
		}
	}
}

func TestFront(t *testing.T) {
	c := shop(t)
	b := compare.NewBench()
	var all []needs.Result
	for _, m := range c.Materials {
		all = append(all, needs.Result{Material: m})
	}
	// 47 ksi at 0.098 lb/in³ is beaten by nothing; 27 and 36 ksi at 0.100 are.
	if have := ids(needs.Front(all, &b, props.TensileStrength, props.Density)); have != "x2-f-die" {
		t.Errorf("have %s", have)
	}
	// On conductivity the X1 alloys (40 %IACS) beat X2 (34): the stronger
	// tempers of X1 come in.
	if have := ids(needs.Front(all, &b, props.TensileStrength, props.ElectricalConductivity)); have != "x1-t6-pm x2-f-die" {
		t.Errorf("have %s", have)
	}
}

// The limit of a need to be as good as another metal is the figure that the verdict
// rests on; where that is another one, no margin to the limit is told.
func TestBetterThanMeansItsLimit(t *testing.T) {
	c := shop(t)
	for _, basis := range []compare.BasisSetting{compare.TypicalFirst, compare.MinimumOnly} {
		b := compare.NewBench()
		b.Basis = basis
		for _, base := range c.Materials {
			for _, n := range needs.BetterThan(&b, base, props.Properties()) {
				for _, m := range c.Materials {
					j := needs.Judge(m, &n)
					if !math.IsNaN(j.Worst) && j.Status.Good() && j.Worst < -1e-9 && b.Pair(m, base, n.Property).Verdict != compare.Level {
						t.Errorf("%s: %s is %v with a margin of %g", m.ID, n.Text, j.Status, j.Worst)
					}
					if !math.IsNaN(j.Best) && j.Status == needs.NotMet && j.Best > 1e-9 {
						t.Errorf("%s: %s is %v with a margin of %g", m.ID, n.Text, j.Status, j.Best)
					}
				}
			}
		}
	}
}
