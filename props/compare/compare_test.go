package compare

import (
	"math"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"

	"pgregory.net/rapid"
)

func TestVerdicts(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct {
		name     string
		base     string
		pin      string
		property props.PropertyID
		set      func(*Bench)
		want     Verdict
		why      string // part of the reason
	}{
		{"typical against typical", "x1-f-sand", "x2-f-die", props.TensileStrength, nil, Beats, ""},
		{"no shared basis", "gray-30", "x2-f-die", props.TensileStrength, nil, Unlike, "typical against specified minimum"},
		{"minimums shared though typical is shown first", "gray-30", "x1-f-sand", props.TensileStrength, nil, Misses, ""},
		{"only minimums, pin has a typical figure only", "x1-f-sand", "x2-f-die", props.TensileStrength, minimums, Unlike, "typical"},
		{"minimums do not touch what standards do not specify", "x1-f-sand", "x2-f-die", props.Density, minimums, Level, ""},
		{"yield offset against extension under load", "x1-f-sand", "x2-f-die", props.YieldStrength, nil, Unlike, "yield at 0.5 % extension under load against 0.2 % offset"},
		{"Brinell loads", "x1-f-sand", "x2-f-die", props.HardnessBrinell, nil, Unlike, "Brinell at 3000 kgf/10 mm against 500 kgf/10 mm"},
		{"fatigue cycles", "x1-f-sand", "x2-f-die", props.FatigueStrength, nil, Beats, "fatigue at 10^7 cycles"},
		{"fatigue cycles stated on one side only", "x1-f-sand", "x1-t6-pm", props.FatigueStrength, nil, Unlike, "fatigue cycles not stated for this figure"},
		{"expansion range not stated", "x1-f-sand", "x2-f-die", props.ThermalExpansion, nil, Unlike, "range of the mean expansion not stated for this figure"},
		{"ranges that cross", "x1-f-sand", "x1-t6-sand", props.HardnessBrinell, nil, Overlaps, ""},
		{"same figure", "x1-f-sand", "x1-t6-sand", props.Elongation, nil, Level, ""},
		{"a small difference within the band", "x1-f-sand", "x2-f-die", props.Density, nil, Level, ""},
		{"the same outside a narrower band", "x1-f-sand", "x2-f-die", props.Density, func(b *Bench) { b.Band = 0.001 }, Beats, ""},
		{"sense turned", "x1-f-sand", "x2-f-die", props.Density, func(b *Bench) {
			b.Band = 0.001
			b.Senses = map[props.PropertyID]SenseSetting{props.Density: {Sense: props.More}}
		}, Misses, ""},
		{"neutral sense", "x1-f-sand", "x2-f-die", props.TensileStrength, func(b *Bench) {
			b.Senses = map[props.PropertyID]SenseSetting{props.TensileStrength: {Sense: props.Neutral}}
		}, Neutral, "neither"},
		{"neutral sense, same figure", "x1-f-sand", "x1-t6-sand", props.Elongation, func(b *Bench) {
			b.Senses = map[props.PropertyID]SenseSetting{props.Elongation: {Sense: props.Neutral}}
		}, Neutral, "neither"},
		{"nearest to a target", "x1-f-sand", "x2-f-die", props.TensileStrength, func(b *Bench) {
			b.Senses = map[props.PropertyID]SenseSetting{props.TensileStrength: {props.Near, units.KSI.ToSI(30)}}
		}, Misses, ""},
		{"a resistivity against a conductivity", "x1-f-sand", "x2-f-die", props.ElectricalConductivity, nil, Misses, ""},
		{"does not exist", "x1-f-sand", "gray-30", props.YieldStrength, nil, NoFigure, ""},
		{"trade figures carry a caution", "x1-t6-sand", "x1-t6-pm", props.TensileStrength, nil, Beats, "common practice"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := on(t, c, tt.base, tt.pin)
			if tt.set != nil {
				tt.set(&b)
			}
			cell := cellOf(t, b, tt.property)
			if cell.Verdict != tt.want || !strings.Contains(cell.Why(), tt.why) {
				t.Errorf("\nhave: %v (%s)\nwant: %v (%s)", cell.Verdict, cell.Why(), tt.want, tt.why)
			}
			if (cell.Verdict == Unlike) == (cell.Delta != nil) && cell.Figure != nil {
				t.Errorf("a delta is drawn only from like figures: %v, delta %v", cell.Verdict, cell.Delta)
			}
		})
	}
}

func minimums(b *Bench) { b.Basis = MinimumOnly }

func TestAbsentIsNotZero(t *testing.T) {
	c := shop(t)
	cell := cellOf(t, on(t, c, "x1-f-sand", "gray-30"), props.YieldStrength)
	if cell.Figure != nil || cell.Absent != "gray iron has no yield point" {
		t.Errorf("have %v, %q", cell.Figure, cell.Absent)
	}
	if cell = cellOf(t, on(t, c, "x1-f-sand", "gray-30"), props.Density); cell.Absent != NoFigureOnFile {
		t.Errorf("have %q", cell.Absent)
	}
}

func TestDeltaBounds(t *testing.T) {
	// 36 ksi against 27 ksi, each known to half a ksi: 9, at worst 8, at best 10.
	d := cellOf(t, on(t, shop(t), "x1-f-sand", "x1-t6-sand"), props.TensileStrength).Delta
	for _, v := range []struct{ have, want float64 }{{d.Lo, 8}, {d.Mid, 9}, {d.Hi, 10}, {d.Percent, 100 * 9. / 27}, {d.Ratio, 36. / 27}} {
		if math.Abs(v.have-v.want) > 1e-9 {
			t.Errorf("have %v, want %v", v.have, v.want)
		}
	}
}

func TestTotalsCountEveryRowOnce(t *testing.T) {
	c := shop(t)
	cmp := Compare(on(t, c, "x1-f-sand", "x2-f-die", "gray-30", "x1-t6-pm"))
	for i, total := range cmp.Totals {
		n := total.Beats + total.Misses + total.Level + total.Overlaps + total.Unlike + total.NoFigure + total.Neutral
		want := len(cmp.Rows)
		if i == cmp.Baseline {
			want = n // the baseline is set against nothing
			if total.Beats+total.Misses != 0 {
				t.Errorf("the baseline beats itself: %+v", total)
			}
		}
		if n != want {
			t.Errorf("%s: counted %d of %d rows", total.Material.ID, n, want)
		}
	}
}

// Units, and which of two metals is the baseline, must not change what is
// true.
func TestVerdictProperties(t *testing.T) {
	c := shop(t)
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SampledFrom(c.Materials).Draw(t, "a")
		b := rapid.SampledFrom(c.Materials).Draw(t, "b")
		p := rapid.SampledFrom(props.Properties()).Draw(t, "property")
		if a == b {
			return
		}
		verdict := func(base, pin *props.Material, s units.System) Verdict {
			bench := Bench{Pins: []*props.Material{base, pin}, View: View{System: s}, Only: []props.PropertyID{p}}
			return Compare(bench).Rows[0].Cells[1].Verdict
		}
		us := verdict(a, b, units.US)
		for _, s := range []units.System{units.SI, units.CGS} {
			if v := verdict(a, b, s); v != us {
				t.Fatalf("%s: %v in US units, %v in %v", p, us, v, s)
			}
		}
		opposite := map[Verdict]Verdict{Beats: Misses, Misses: Beats, NoFigure: NoFigure, Neutral: Neutral, Level: Level, Overlaps: Overlaps, Unlike: Unlike}
		if back := verdict(b, a, units.US); back != opposite[us] {
			t.Fatalf("%s: %s %v %s, but the other way round %v", p, b.ID, us, a.ID, back)
		}
	})
}

// 0.098 and 0.100 lb/in³ are level whichever is the baseline.
func TestLevelEitherWay(t *testing.T) {
	c := shop(t)
	there := cellOf(t, on(t, c, "x1-f-sand", "x2-f-die"), props.Density).Verdict
	back := cellOf(t, on(t, c, "x2-f-die", "x1-f-sand"), props.Density).Verdict
	if there != Level || back != Level {
		t.Errorf("there %v, back %v", there, back)
	}
}

func TestBenchKeepsItsBaseline(t *testing.T) {
	c := shop(t)
	rapid.Check(t, func(t *rapid.T) {
		b := NewBench()
		for range rapid.IntRange(1, 20).Draw(t, "steps") {
			var base *props.Material
			if len(b.Pins) > 0 {
				base = b.Pins[b.Baseline]
			}
			i := rapid.IntRange(-1, len(b.Pins)).Draw(t, "i")
			switch rapid.IntRange(0, 2).Draw(t, "what") {
			case 0:
				b.Pin(rapid.SampledFrom(c.Materials).Draw(t, "m"))
			case 1:
				b.Remove(i)
				base = nil
			case 2:
				b.Move(i, rapid.SampledFrom([]int{1, -1}).Draw(t, "by"))
			}
			if len(b.Pins) > 0 && (b.Baseline < 0 || b.Baseline >= len(b.Pins)) {
				t.Fatalf("baseline %d of %d pins", b.Baseline, len(b.Pins))
			}
			if base != nil && b.Pins[b.Baseline] != base {
				t.Fatalf("moving changed the baseline to %s", b.Pins[b.Baseline].ID)
			}
		}
	})
}

func TestFlips(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct {
		name string
		step func(*props.Material, catalog.Direction) *props.Material
		from string
		d    catalog.Direction
		want string
	}{
		{"temper", c.NextTemper, "x1-f-sand", catalog.Forward, "x1-t6-sand"},
		{"temper round", c.NextTemper, "x1-t6-sand", catalog.Forward, "x1-f-sand"},
		{"temper alone", c.NextTemper, "x1-t6-pm", catalog.Back, "x1-t6-pm"},
		{"process keeps the temper", c.NextProcess, "x1-t6-sand", catalog.Forward, "x1-t6-pm"},
		{"process without that temper", c.NextProcess, "x1-f-sand", catalog.Forward, "x1-t6-pm"},
		{"alloy of the same process", c.NextAlloy, "x1-f-sand", catalog.Forward, "x1-f-sand"},
		{"alloy alone in the family", c.NextAlloy, "gray-30", catalog.Forward, "gray-30"},
	} {
		if have := tt.step(get(t, c, tt.from), tt.d); have.ID != tt.want {
			t.Errorf("%s: have %s, want %s", tt.name, have.ID, tt.want)
		}
	}
}
