package compare

import (
	"math"
	"testing"

	"alongside/props"
	"alongside/units"

	"pgregory.net/rapid"
)

// metal is a material with a modulus and a tensile strength, of a base metal.
func metal(t testing.TB, base, family, modulus, tensile string) *props.Material {
	m := &props.Material{Alloy: &props.Alloy{Family: &props.Family{ID: family, Base: base}}}
	for p, text := range map[props.PropertyID]string{props.ElasticModulus: modulus, props.TensileStrength: tensile} {
		q, err := units.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		m.Stated = append(m.Stated, props.Figure{Property: p, Value: q, Cond: &props.Conditions{}, Block: &props.Block{Source: &props.Source{}}})
	}
	return m
}

// value is a figure in a unit with many digits.
func value(p props.PropertyID, v float64, u units.Unit, c props.Conditions) *props.Figure {
	return &props.Figure{Property: p, Value: units.Quantity{Lo: v, Hi: v, Place: -9, Unit: u}, Cond: &c, Block: &props.Block{Source: &props.Source{}}}
}

// holds fails where the ground, brought from x to y, does not leave room for y.
func holds(t interface{ Fatalf(string, ...any) }, g *Ground, m *props.Material, x, y *props.Figure) {
	least, most, ok := g.bring(side{m, x}, side{m, y})
	if r := y.Value.Lo / x.Value.Lo; !ok || r < least*(1-1e-6) || r > most*(1+1e-6) {
		t.Fatalf("%s: %v (%v) to %v (%v) is %.4f times, the ground says %.4f to %.4f, %v", g.ID, x.Value, x.Cond, y.Value, y.Cond, r, least, most, ok)
	}
}

// S–N points of normalized 4130 sheet, unnotched, R = −1, with its tensile strength
// of 117 ksi: MIL-HDBK-5J, figure 2.3.1.2.8(a).
func TestCyclesGroundOnPublishedPoints(t *testing.T) {
	steel := metal(t, "Fe", "wrought-steel", "29 Mpsi", "117 ksi")
	points := []struct{ cycles, ksi float64 }{{13005, 71.5}, {73413, 60.8}, {161456, 57.2}, {447720, 53.8}, {1449018, 50.9}, {3956539, 49.4}, {11671162, 47.7}, {30898179, 46.5}}
	for _, a := range points {
		for _, b := range points {
			holds(t, &groundCycles, steel, value(props.FatigueStrength, a.ksi, units.KSI, props.Conditions{Cycles: a.cycles}), value(props.FatigueStrength, b.ksi, units.KSI, props.Conditions{Cycles: b.cycles}))
		}
	}
}

// The relation of Ramberg and Osgood, e = σ/E + 0.002·(σ/F)ⁿ (MIL-HDBK-5J, 9.3.2),
// gives the strength at any offset and extension; none leaves the ground.
func TestOffsetGroundOnStressStrainCurves(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		f, n := rapid.Float64Range(10, 60).Draw(rt, "yield ksi"), rapid.Float64Range(3, 40).Draw(rt, "n")
		const e = 10000.0
		m := metal(t, "Al", "aluminum", "10000 ksi", "100 ksi")
		plastic := func(s float64) float64 { return 0.002 * math.Pow(s/f, n) }
		solve := func(strain func(float64) float64, want float64) float64 {
			lo, hi := 0.0, 200.0
			for range 100 {
				if mid := (lo + hi) / 2; strain(mid) < want {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo
		}
		figures := []*props.Figure{
			value(props.YieldStrength, solve(plastic, 0.001), units.KSI, props.Conditions{Offset: 0.1}),
			value(props.YieldStrength, f, units.KSI, props.Conditions{Offset: 0.2}),
			value(props.YieldStrength, solve(plastic, 0.005), units.KSI, props.Conditions{Offset: 0.5}),
			value(props.YieldStrength, solve(func(s float64) float64 { return s/e + plastic(s) }, 0.005), units.KSI, props.Conditions{Offset: 0.5, UnderLoad: true}),
		}
		for _, x := range figures {
			for _, y := range figures {
				least, most, ok := groundOffset.bring(side{m, x}, side{m, y})
				if r := y.Value.Lo / x.Value.Lo; ok && (r < least*(1-1e-4) || r > most*(1+1e-4)) {
					rt.Fatalf("%v (%v) to %v (%v): %v times, %v to %v", x.Value, x.Cond, y.Value, y.Cond, r, least, most)
				}
			}
		}
	})
}

// Barba's law: uniform stretch and, over the gauge length, the stretch at the neck.
// ISO 2566-1: 20 % in 4 diameters of carbon steel is 18.3 % in 5.
func TestGaugeGround(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		uniform, neck := rapid.Float64Range(0, 40).Draw(rt, "uniform"), rapid.Float64Range(0.1, 60).Draw(rt, "neck")
		in := func(gauge string) *props.Figure {
			return value(props.Elongation, uniform+neck/gaugeDiameters(gauge), units.Pct, props.Conditions{Gauge: gauge})
		}
		holds(rt, &groundGauge, metal(t, "Al", "aluminum", "10 Mpsi", "40 ksi"), in("2 in"), in("5D"))
		holds(rt, &groundGauge, metal(t, "Al", "aluminum", "10 Mpsi", "40 ksi"), in("5D"), in("3D"))
	})
	steel := metal(t, "Fe", "cast-steel", "30 Mpsi", "70 ksi")
	least, most, ok := groundGauge.bring(side{steel, value(props.Elongation, 20, units.Pct, props.Conditions{Gauge: "4D"})}, side{steel, value(props.Elongation, 18, units.Pct, props.Conditions{Gauge: "5D"})})
	if !ok || math.Abs(20*least-18.3) > 0.05 || least != most {
		t.Errorf("20 %% in 4D of steel is %v to %v %% in 5D", 20*least, 20*most)
	}
}

// Indentations by Meyer's law, P = a·dⁿ, with an index between 2 and 2.5.
func TestLoadGround(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n, small := rapid.Float64Range(2, 2.5).Draw(rt, "index"), rapid.Float64Range(0.15, 0.35).Draw(rt, "d/D at 500 kgf")
		brinell := func(ratio, d float64) float64 { return 2 * ratio / (math.Pi * (1 - math.Sqrt(1-d*d))) }
		large := small * math.Pow(6, 1/n)
		x := value(props.HardnessBrinell, brinell(5, small), units.HB500Number, props.Conditions{Load: 500, Ball: 10})
		y := value(props.HardnessBrinell, brinell(30, large), units.HBNumber, props.Conditions{Load: 3000, Ball: 10})
		m := metal(t, "Al", "aluminum", "10 Mpsi", "40 ksi")
		holds(rt, &groundLoad, m, x, y)
		holds(rt, &groundLoad, m, y, x)
	})
}

// The rest: axial is not above bending, 75 and 25 % of the minimum for bars cut
// from an aluminum casting, 15 W/m·K of 304 at room temperature (EN 10088-1) beside
// 16.3 at 100 °C (9.4 Btu/h·ft·°F at 212 °F), 6.17 and 7.37 µin/in·°F of 1025 steel
// to 200 and to 572 °F (MIL-HDBK-5J, figure 2.2.1.0).
func TestOtherGrounds(t *testing.T) {
	al, fe := metal(t, "Al", "aluminum", "10 Mpsi", "40 ksi"), metal(t, "Fe", "wrought-stainless", "28 Mpsi", "85 ksi")
	holds(t, &groundLoading, al, value(props.FatigueStrength, 10, units.KSI, props.Conditions{Loading: "axial"}), value(props.FatigueStrength, 12, units.KSI, props.Conditions{Loading: "rotating bending"}))
	cast, cut := props.Conditions{Bar: "separately cast bar"}, props.Conditions{Bar: "cut from casting"}
	for p, want := range map[props.PropertyID]float64{props.TensileStrength: 0.75, props.Elongation: 0.25} {
		x, y := value(p, 40, units.KSI, cast), value(p, 40*want, units.KSI, cut)
		x.Block, y.Block = &props.Block{Basis: props.Minimum}, &props.Block{Basis: props.Minimum}
		holds(t, &groundPlace, al, x, y)
	}
	holds(t, &groundTemperature, fe, value(props.ThermalConductivity, 15, units.WPerMK, props.Conditions{}), value(props.ThermalConductivity, 16.27, units.WPerMK, props.Conditions{HasAt: true, AtC: 100}))
	holds(t, &groundExpansion, fe, value(props.ThermalExpansion, 6.17, units.MicroinInF, props.Conditions{HasRange: true, FromC: 21, ToC: 93}), value(props.ThermalExpansion, 7.37, units.MicroinInF, props.Conditions{HasRange: true, FromC: 21, ToC: 300}))
}
