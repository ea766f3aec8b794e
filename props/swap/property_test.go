package swap

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"

	"pgregory.net/rapid"
)

// anyPart draws a part with any of its fields given.
func anyPart(t *rapid.T, c *catalog.Catalog) part.Part {
	var p part.Part
	set := func(f part.Field, format string, args ...any) {
		if rapid.Bool().Draw(t, "give "+f.String()) {
			if err := p.Set(c, f, fmt.Sprintf(format, args...)); err != nil {
				t.Fatal(err)
			}
		}
	}
	size := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	set(part.FieldMass, "%.3f lb", size("mass", 0.01, 500))
	set(part.FieldVolume, "%.3f cm3", size("volume", 0.1, 1e5))
	set(part.FieldWall, "%.2f mm", size("wall", 0.5, 100))
	set(part.FieldLength, "%.1f in", size("length", 0.1, 200))
	set(part.FieldStress, "%.2f ksi", size("stress", 0.1, 50))
	set(part.FieldSafety, "%.2f", size("safety", 1, 4))
	set(part.FieldCasting, "%.2f", size("casting", 1, 2))
	set(part.FieldCycles, "%.0f", size("cycles", 1e3, 1e9))
	set(part.FieldMean, "%.3f ksi", size("mean", 0.01, 20))
	for _, f := range []part.Field{part.FieldPlace, part.FieldSurface, part.FieldReliability} {
		set(f, "%s", rapid.SampledFrom(f.Info().Words).Draw(t, f.String()))
	}
	set(part.FieldPressure, "%.1f psi", size("pressure", 1, 5000))
	set(part.FieldInside, "%.1f mm", size("inside", 1, 2000))
	set(part.FieldFit, "%.1f mm", size("fit", 1, 500))
	set(part.FieldRole, "%s", rapid.SampledFrom(part.FieldRole.Info().Words).Draw(t, "role"))
	set(part.FieldInterference, "%.4f..%.4f mm", 0.001, size("interference", 0.001, 1))
	set(part.FieldHub, "%.1f mm", size("hub", 1, 900))
	set(part.FieldEngaged, "%.1f mm", size("engaged", 1, 500))
	set(part.FieldFriction, "%.2f", size("friction", 0.05, 1))
	set(part.FieldQuality, "%.2f", size("quality", 0.3, 1))
	set(part.FieldTest, "%.1f psi", size("test", 1, 8000))
	set(part.FieldThread, "%s", rapid.SampledFrom([]string{"1/2-13 UNC", "M12x1.75", "#10-32 UNF", "1 1/8-7"}).Draw(t, "thread"))
	set(part.FieldEngagement, "%.2f mm", size("engagement", 1, 60))
	set(part.FieldBolt, "%.1f ksi", size("bolt", 30, 200))
	set(part.FieldClamp, "%.0f lbf", size("clamp", 100, 30000))
	set(part.FieldHead, "%.2f mm", size("head", 5, 60))
	set(part.FieldHole, "%.2f mm", size("hole", 4, 40))
	cold := size("cold", -60, 150)
	set(part.FieldService, "%.0f..%.0f C", cold, cold+size("rise", 2, 300))
	set(part.FieldCase, "%s", rapid.SampledFrom(part.FieldCase.Info().Words).Draw(t, "case"))
	set(part.FieldKeep, "%s", rapid.SampledFrom(part.FieldKeep.Info().Words).Draw(t, "keep"))
	set(part.FieldStrength, "%s", rapid.SampledFrom(part.FieldStrength.Info().Words).Draw(t, "strength"))
	set(part.FieldMate, "%s", anyMaterial(t, c, "mate").ID)
	set(part.FieldQuantity, "%d a year", rapid.IntRange(1, 1e6).Draw(t, "quantity"))
	return p
}

func anyMaterial(t *rapid.T, c *catalog.Catalog, label string) *props.Material {
	return rapid.SampledFrom(c.Materials).Draw(t, label)
}

func workOn(t *rapid.T, c *catalog.Catalog, b compare.Bench, p part.Part, base, pin *props.Material) *Result {
	g, err := p.Read(c)
	if err != nil {
		t.Fatal(err)
	}
	return Work(&b, g, base, pin)
}

// priced is the catalog with the figures and rates of the demo's invented foundry.
func priced(t *testing.T) *catalog.Catalog {
	files, err := catalog.ReadFiles(data.Demo, []string{"demo/house.toml"})
	if err != nil {
		t.Fatal(err)
	}
	c, err := catalog.LoadFiles(data.Catalog(), files)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// values are all results of a line, with a word for each.
func values(l *Line) map[string]*Value {
	out := map[string]*Value{}
	for word, v := range map[string]*Value{"value": l.Value, "base": l.Base, "ratio": l.Ratio} {
		if v != nil {
			out[word] = v
		}
	}
	return out
}

func TestAnySwapIsSound(t *testing.T) {
	c := priced(t)
	rapid.Check(t, func(t *rapid.T) {
		b := compare.NewBench()
		b.System = rapid.SampledFrom([]units.System{units.US, units.SI, units.CGS}).Draw(t, "system")
		b.Basis = rapid.SampledFrom([]compare.BasisSetting{compare.TypicalFirst, compare.MinimumOnly}).Draw(t, "basis")
		base, pin := anyMaterial(t, c, "base"), anyMaterial(t, c, "pin")
		p := anyPart(t, c)
		if err := p.Set(c, part.FieldPrice, pin.ID+"=1.20 USD/lb"); err != nil {
			t.Fatal(err)
		}
		r := workOn(t, c, b, p, base, pin)
		seen := map[string]bool{}
		for i := range r.Lines {
			l := &r.Lines[i]
			if seen[l.ID] {
				t.Fatalf("two lines %s", l.ID)
			}
			seen[l.ID] = true
			if !l.Done() && l.Need == "" && l.Reason == "" {
				t.Fatalf("%s has neither a result nor a need nor a reason", l.ID)
			}
			if l.Reason != "" && (l.Value != nil || l.Ratio != nil || l.Words != "") {
				t.Fatalf("%s has a number in spite of %q", l.ID, l.Reason)
			}
			if l.Done() && l.Formula.Source == nil {
				t.Fatalf("%s has no source for its formula", l.ID)
			}
			for word, v := range values(l) {
				if !(v.Lo <= v.Mid && v.Mid <= v.Hi) || math.IsInf(v.Lo, 0) || math.IsInf(v.Hi, 0) {
					t.Fatalf("%s %s: %v..%v..%v", l.ID, word, v.Lo, v.Mid, v.Hi)
				}
				if strings.ContainsAny(v.String(), "NI") && v.Symbol == "" && strings.Contains(v.Number(), "N") {
					t.Fatalf("%s %s shows %q", l.ID, word, v)
				}
			}
		}
		for _, s := range r.Worth() {
			if !strings.HasSuffix(s, ".") || strings.Contains(s, "  ") {
				t.Fatalf("sentence %q", s)
			}
		}
	})
}

// figuresOf are the figures of a line regardless of order.
func figuresOf(l *Line) []string {
	var out []string
	for _, u := range l.Figures {
		out = append(out, fmt.Sprintf("%p", u.Figure))
	}
	slices.Sort(out)
	return out
}

// From A to B and back to A a part is what it was: every ratio of one way is
// the reciprocal of the other's.
func TestThereAndBack(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		b := compare.NewBench()
		p := anyPart(t, c)
		x, y := anyMaterial(t, c, "x"), anyMaterial(t, c, "y")
		there, back := workOn(t, c, b, p, x, y), workOn(t, c, b, p, y, x)
		for i := range there.Lines {
			l := &there.Lines[i]
			m := back.Line(l.ID)
			if l.Ratio == nil || m == nil || m.Ratio == nil || !slices.Equal(figuresOf(l), figuresOf(m)) {
				continue // another pair of figures is alike the other way round
			}
			if got := l.Ratio.Mid * m.Ratio.Mid; math.Abs(got-1) > 1e-9 {
				t.Fatalf("%s: %v there, %v back", l.ID, l.Ratio.Mid, m.Ratio.Mid)
			}
			if l.Ratio.Lo*m.Ratio.Hi < 1-1e-9 || l.Ratio.Hi*m.Ratio.Lo > 1+1e-9 {
				t.Fatalf("%s: %v..%v there, %v..%v back", l.ID, l.Ratio.Lo, l.Ratio.Hi, m.Ratio.Lo, m.Ratio.Hi)
			}
		}
	})
}

// The mass that comes out, swapped back, is the mass that went in.
func TestMassThereAndBack(t *testing.T) {
	c := data.Catalog()
	b := compare.NewBench()
	x, y := c.Material("gray-30"), c.Material("a356-t6-pm")
	part := partOf(t, c, "mass=4.2 lb|case=plate|wall=3/8 in")
	g, _ := part.Read(c)
	out := Work(&b, g, x, y).Line("stiffness.mass").Value
	back := units.Quantity{Lo: out.Mid, Hi: out.Mid, Place: -12, Unit: out.Unit}
	g.Mass = &back
	if have := Work(&b, g, y, x).Line("stiffness.mass").Value.Mid; math.Abs(have-4.2) > 1e-9 {
		t.Errorf("have %v lb, want 4.2", have)
	}
}

func TestEqualShapeIsTheRatioOfDensities(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		base, pin := anyMaterial(t, c, "base"), anyMaterial(t, c, "pin")
		b := compare.NewBench()
		l := workOn(t, c, b, anyPart(t, c), base, pin).Line("shape.mass")
		pair := b.Pair(pin, base, props.Density)
		if !pair.Comparable() {
			if l.Ratio != nil {
				t.Fatalf("a ratio of %v without two densities", l.Ratio.Mid)
			}
			return
		}
		_, p, _ := pair.Figure.SI()
		_, q, _ := pair.Against.SI()
		if l.Ratio == nil || math.Abs(l.Ratio.Mid-p/q) > 1e-12 {
			t.Fatalf("have %v, want %v", l.Ratio, p/q)
		}
		if l.Value != nil && l.Base != nil && math.Abs(l.Value.Mid/l.Base.Mid-p/q) > 1e-9 {
			t.Fatalf("masses %v and %v, densities %v and %v", l.Value.Mid, l.Base.Mid, p, q)
		}
	})
}

func TestSwapForItselfChangesNothing(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		m := anyMaterial(t, c, "material")
		r := workOn(t, c, compare.NewBench(), anyPart(t, c), m, m)
		for i := range r.Lines {
			l := &r.Lines[i]
			if v := l.Ratio; v != nil && !strings.HasPrefix(l.ID, "held") && (v.Lo != 1 || v.Mid != 1 || v.Hi != 1) {
				t.Fatalf("%s: %v..%v..%v times itself", l.ID, v.Lo, v.Mid, v.Hi)
			}
		}
	})
}

// Whatever a figure really is within its interval, the result worked out from
// it lies within the interval of the line.
func TestIntervalsHoldEveryPoint(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		base, pin := anyMaterial(t, c, "base"), anyMaterial(t, c, "pin")
		p := part.Part{Mass: "4.2 lb", Wall: "3/8 in", Case: part.Case(rapid.SampledFrom(part.FieldCase.Info().Words).Draw(t, "case"))}
		r := workOn(t, c, compare.NewBench(), p, base, pin)
		within := func(id string, want func(x map[string]float64) float64) {
			l := r.Line(id)
			if l == nil || l.Ratio == nil {
				return
			}
			point := map[string]float64{}
			for _, u := range l.Figures {
				lo, _, hi := u.Figure.SI()
				point[u.Symbol] = rapid.Float64Range(lo, hi).Draw(t, id+u.Symbol)
			}
			if base == pin || len(l.Figures) >= 2 && l.Figures[0].Figure == l.Figures[1].Figure {
				return // one figure cannot be two values
			}
			if x := want(point); x < l.Ratio.Lo*(1-1e-9) || x > l.Ratio.Hi*(1+1e-9) {
				t.Fatalf("%s: %v is outside %v..%v", id, x, l.Ratio.Lo, l.Ratio.Hi)
			}
		}
		within("shape.mass", func(x map[string]float64) float64 { return x["ρ₂"] / x["ρ₁"] })
		within("stiffness.deflection", func(x map[string]float64) float64 { return x["E₁"] / x["E₂"] })
		within("load.set.minimum", func(x map[string]float64) float64 { return x["S₂"] / x["S₁"] })
		within("strength.load", func(x map[string]float64) float64 { return x["S₂"] / x["S₁"] })
		within("current.resistance", func(x map[string]float64) float64 { return x["σ₁"] / x["σ₂"] })
		within("heat.flow", func(x map[string]float64) float64 { return x["k₂"] / x["k₁"] })
		wall := map[part.Case]float64{part.Tie: 1, part.Plate: 1. / 3, part.Beam: 1. / 4, part.FixedBeam: 1. / 3}[p.Case]
		within("stiffness.wall", func(x map[string]float64) float64 { return math.Pow(x["E₁"]/x["E₂"], wall) })
	})
}

// The unit in which a size is typed, and the units of the bench, change how a
// result is written and nothing else.
func TestUnitsNeverChangeAResult(t *testing.T) {
	c := data.Catalog()
	rapid.Check(t, func(t *rapid.T) {
		base, pin := anyMaterial(t, c, "base"), anyMaterial(t, c, "pin")
		p := anyPart(t, c)
		us, si := compare.NewBench(), compare.NewBench()
		si.System = units.SI
		a := workOn(t, c, us, p, base, pin)
		g, err := p.Read(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range []**units.Quantity{&g.Mass, &g.Volume, &g.Wall, &g.Length, &g.Stress, &g.Pressure, &g.Inside, &g.Fit, &g.Interference, &g.Hub, &g.Engaged, &g.Test, &g.Engagement, &g.Bolt, &g.Clamp, &g.Head, &g.Hole} {
			if *q == nil {
				continue
			}
			u := rapid.SampledFrom(units.UnitsOf((*q).Unit.Dimension())).Draw(t, "unit")
			in, err := (*q).In(u)
			if err != nil {
				t.Fatal(err)
			}
			*q = &in
		}
		b := Work(&si, g, base, pin)
		for i := range a.Lines {
			l, m := &a.Lines[i], &b.Lines[i]
			if l.ID != m.ID || l.Need != m.Need || (l.Reason == "") != (m.Reason == "") {
				t.Fatalf("line %s: %q %q against %s: %q %q", l.ID, l.Need, l.Reason, m.ID, m.Need, m.Reason)
			}
			for word, v := range values(l) {
				w := values(m)[word]
				if w == nil {
					t.Fatalf("%s has no %s in SI", l.ID, word)
				}
				for _, x := range [][2]float64{{v.Lo, w.Lo}, {v.Mid, w.Mid}, {v.Hi, w.Hi}} {
					have, want := w.Unit.ToSI(x[1]), v.Unit.ToSI(x[0])
					if math.Abs(have-want) > 1e-9*math.Max(math.Abs(want), math.Abs(v.Unit.ToSI(v.Hi-v.Lo)))+1e-15 {
						t.Fatalf("%s %s: %v in US, %v in SI", l.ID, word, want, have)
					}
				}
			}
		}
	})
}
