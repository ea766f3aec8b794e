package compare

import (
	"math"

	"alongside/props"
	"alongside/units"
)

// Ground is a reason why a difference in one condition can move a figure only
// one way, or only so far.
type Ground struct {
	ID   string
	Says string // as a sentence goes on after "since"
	// Source is the published document behind it, and how well it is known.
	Source string
	// bring bounds what the figure of x would be under the condition of y, as
	// factors of what it is; ok is false where nothing is certain.
	bring func(x, y side) (least, most float64, ok bool)
}

// side is one metal of a pair with its figure.
type side struct {
	m *props.Material
	f *props.Figure
}

var inf = math.Inf(1)

// The grounds. Each holds for one condition; those of several multiply.
var (
	groundBasis = Ground{"basis", "what is typical of a grade is not below its specified minimum nor above its specified maximum",
		"definitions of typical, S-, A- and B-basis, MIL-HDBK-5J 1.4.1 (memory)", bringBasis}
	groundOffset = Ground{"offset", "stress rises with strain, ever more slowly, so that each yield strength lies between the other and the ray through it",
		"stress–strain relation, MIL-HDBK-5J 9.3.2 (memory)", bringOffset}
	groundGauge = Ground{"gauge", "elongation falls as the gauge length grows, and not faster than in proportion",
		"Barba's law, ASTM E8/E8M appendix; of steel ISO 2566-1 and -2 (memory)", bringGauge}
	groundLoad = Ground{"load", "by Meyer's law, with an index of 2 to 2.5, the load moves a Brinell number only so far; one not stated lies between 500 and 3000 kgf on 10 mm",
		"Meyer's law and the loads of ASTM E10 and ISO 6506-1 (memory)", bringLoad}
	groundCycles = Ground{"cycles", "fatigue strength falls with cycles, no faster than a straight line on logarithmic scales from the tensile strength at 1,000; an endurance limit of iron or steel is found at a million or more",
		"S–N diagram of textbooks on machine design (memory)", bringCycles}
	groundLoading = Ground{"loading", "axial fatigue strength is not above bending",
		"load factor of textbooks on machine design (memory)", bringLoading}
	groundTemperature = Ground{"temperature", "between 15 and 150 °C conductivity moves by at most 25 %, specific heat by at most 15 % in 100 °C",
		"figures at two temperatures on file; curves of MIL-HDBK-5J (read)", bringTemperature}
	groundPlace = Ground{"place", "bars cut from an aluminum casting are held to 75 % of the strength and 25 % of the elongation of separately cast bars",
		"ASTM B26/B26M and B108/B108M (memory)", bringPlace}
	groundExpansion = Ground{"expansion", "a mean coefficient of expansion grows with its upper temperature, at most as fast as of the metals read; one without a range ends below 572 °F",
		"means over two ranges on file; curves of MIL-HDBK-5J (read)", bringRange}
)

// bound bounds the ratio of x to y where both stood under the same condition,
// as factors of the ratio of the figures: what is certain of either side.
func (g *Ground) bound(x, y side) (least, most float64, ok bool) {
	a, b, forth := g.bring(x, y)
	c, d, back := g.bring(y, x)
	switch {
	case forth && back:
		return max(a, 1/d), min(b, 1/c), true
	case forth:
		return a, b, true
	case back:
		return 1 / d, 1 / c, true
	}
	return 0, 0, false
}

// bringBasis: the specified limits of a grade bound what is typical of it, one
// heat that fell short aside.
func bringBasis(x, y side) (float64, float64, bool) {
	// Where each basis stands in a grade: what is guaranteed at the bottom, what
	// may not be passed at the top. A house value is a shop's own.
	level := func(b props.Basis) int {
		switch b {
		case props.Minimum, props.Design, props.Estimated:
			return 1
		case props.Typical:
			return 2
		case props.Maximum:
			return 3
		}
		return 0
	}
	a, b := level(x.f.Basis), level(y.f.Basis)
	switch {
	case a == 0 || b == 0 || a == b:
		return 0, 0, false
	case belowMinimum(x.f, x.m.Of(x.f.Property)) || belowMinimum(y.f, y.m.Of(y.f.Property)):
		return 0, 0, false
	case a < b:
		return 1, inf, true
	}
	return 0, 1, true
}

// bringOffset goes from one definition of yield to another along a stress–strain
// curve that rises and bends over. On it the stress at less strain is lower, and
// its ratio to the strain higher: the answer lies between the figure itself and
// the point where the ray from the origin through it meets the other definition.
func bringOffset(x, y side) (float64, float64, bool) {
	modulus, ok := spanOf(x.m, props.ElasticModulus)
	if !ok || !x.f.Cond.RoomTemperature() || !y.f.Cond.RoomTemperature() {
		return 0, 0, false
	}
	least, most := inf, 0.0
	lo, _, hi := x.f.SI()
	for _, s := range [2]float64{lo, hi} {
		for _, e := range modulus {
			strain := s/e + x.f.Cond.Offset/100
			if x.f.Cond.UnderLoad {
				strain = x.f.Cond.Offset / 100
			}
			ray := s / strain
			met := ray * y.f.Cond.Offset / 100
			if !y.f.Cond.UnderLoad {
				met /= 1 - ray/e
			}
			if ray >= e || met <= 0 {
				return 0, 0, false // beyond the elastic line: the figures do not fit
			}
			least, most = min(least, 1, met/s), max(most, 1, met/s)
		}
	}
	return least, most, true
}

// bringGauge: of a round bar. The part of the stretch at the neck is shared out
// over the gauge length. Steels convert by a power of it.
func bringGauge(x, y side) (float64, float64, bool) {
	a, b := gaugeDiameters(x.f.Cond.Gauge), gaugeDiameters(y.f.Cond.Gauge)
	if a == 0 || b == 0 {
		return 0, 0, false
	}
	switch x.m.Alloy.Family.ID {
	case "cast-steel", "wrought-steel": // ISO 2566-1: carbon and low-alloy steel
		k := math.Pow(a/b, 0.4)
		return k, k, true
	}
	return min(1, a/b), max(1, a/b), true
}

// bringLoad works out the indentation from the Brinell number and follows
// Meyer's law, P = a·dⁿ, to the other load.
func bringLoad(x, y side) (float64, float64, bool) {
	lo, _, hi := x.f.SI()
	least, most := inf, 0.0
	for _, from := range loadRatios(x.f.Cond) {
		for _, to := range loadRatios(y.f.Cond) {
			for _, h := range [2]float64{lo, hi} {
				for _, index := range [2]float64{2, 2.5} {
					k, ok := meyer(h, from, to, index)
					if !ok {
						return 0, 0, false
					}
					least, most = min(least, k), max(most, k)
				}
			}
		}
	}
	return least, most, true
}

func loadRatios(c *props.Conditions) []float64 {
	if c.Load == 0 {
		return []float64{5, 30}
	}
	return []float64{loadRatio(c)}
}

// meyer is the Brinell number at one ratio of load to the square of the ball
// diameter, in kgf/mm², over that at another. The depth of the indentation is
// that of a cap of the ball: HB = 2·(P/D²)/(π·(1 − √(1 − (d/D)²))).
func meyer(hb, from, to, index float64) (float64, bool) {
	depth := 2 * from / (math.Pi * hb)
	if !(depth > 0 && depth < 1) {
		return 0, false
	}
	d := math.Sqrt(1-(1-depth)*(1-depth)) * math.Pow(to/from, 1/index)
	d = min(d, 1) // the ball is sunk to its middle
	return 2 * to / (math.Pi * (1 - math.Sqrt(1-d*d))) / hb, true
}

// bringCycles goes along the S–N curve from the life of x to that of y. Drawn on
// logarithmic scales it falls ever more slowly, so that it lies below a chord
// between its ends and above the chord drawn further. The tensile strength at a
// thousand cycles is above the curve.
func bringCycles(x, y side) (float64, float64, bool) {
	tensile, ok := spanOf(x.m, props.TensileStrength)
	if !ok || !x.f.Cond.RoomTemperature() {
		return 0, 0, false
	}
	least, most := inf, 0.0
	lo, _, _ := x.f.SI()
	for _, from := range lives(x) {
		for _, to := range lives(y) {
			if from <= 1e3 || to <= 1e3 || lo <= 0 || lo >= tensile[1] {
				return 0, 0, false
			}
			k := math.Pow(tensile[1]/lo, math.Log(from/to)/math.Log(from/1e3))
			least, most = min(least, 1, k), max(most, 1, k)
		}
	}
	return least, most, len(lives(x)) > 0 && len(lives(y)) > 0
}

// lives are the shortest and the longest life at which a fatigue strength was
// found. A limit of iron or steel without cycles is an endurance limit.
func lives(s side) []float64 {
	switch {
	case s.f.Cond.Cycles != 0:
		return []float64{s.f.Cond.Cycles}
	case s.m.Alloy.Family.Base == "Fe":
		return []float64{1e6, 1e8}
	}
	return nil
}

func bringLoading(x, y side) (float64, float64, bool) {
	switch {
	case x.f.Cond.Loading == "axial":
		return 1, inf, true
	case y.f.Cond.Loading == "axial":
		return 0, 1, true
	}
	return 0, 0, false
}

// bringRange goes from one upper temperature of the mean to another.
func bringRange(x, y side) (float64, float64, bool) {
	slope := growthOfMean(x.m.Alloy.Family.Base) / 100
	least, most := inf, 0.0
	for _, from := range uppers(x.f.Cond) {
		for _, to := range uppers(y.f.Cond) {
			least = min(least, 1, 1/(1+slope*max(from-to, 0)))
			most = max(most, 1, 1+slope*(to-from))
		}
	}
	return least, most, most > 0
}

// uppers are the upper temperatures in °C that a mean from room temperature may
// have.
func uppers(c *props.Conditions) []float64 {
	switch {
	case !c.HasRange:
		return []float64{reference, 300}
	case near(c.FromC, reference, sameTemperature) && c.ToC > reference:
		return []float64{c.ToC}
	}
	return nil
}

func bringTemperature(x, y side) (float64, float64, bool) {
	perHundred := map[props.PropertyID]float64{props.ThermalConductivity: 0.25, props.ElectricalConductivity: 0.25, props.SpecificHeat: 0.15}[x.f.Property]
	a, b := atOr20(x.f.Cond), atOr20(y.f.Cond)
	if perHundred == 0 || min(a, b) < 15 || max(a, b) > 150 {
		return 0, 0, false
	}
	k := 1 + perHundred*math.Abs(a-b)/100
	return 1 / k, k, true
}

// bringPlace goes from separately cast bars to bars cut from the casting, on
// the minimums of the two aluminum specifications.
func bringPlace(x, y side) (float64, float64, bool) {
	if x.m.Alloy.Family.Base != "Al" || x.f.Basis != props.Minimum || x.f.Cond.Bar != props.SeparateBar || y.f.Cond.Bar != props.CutFromCasting {
		return 0, 0, false
	}
	if x.f.Property == props.Elongation {
		return 0.25, 0.25, true
	}
	return 0.75, 0.75, x.f.Property.Info().Strength
}

// spanOf is the least and the greatest figure of a property at room temperature
// in SI, on any basis; ok is false without one.
func spanOf(m *props.Material, p props.PropertyID) (span [2]float64, ok bool) {
	for f := range m.Of(p) {
		if !f.Cond.RoomTemperature() || f.Value.Unit.Dimension() != units.Stress {
			continue
		}
		lo, _, hi := f.SI()
		if !ok {
			span, ok = [2]float64{lo, hi}, true
		}
		span = [2]float64{min(span[0], lo), max(span[1], hi)}
	}
	return span, ok
}

// Under bounds what a figure of a metal would be under the conditions that c
// states, as factors of what it is: 1 and 1 where it was found under them. Where
// nothing is certain ok is false, and why says what differs.
func Under(m *props.Material, f *props.Figure, c *props.Conditions) (least, most float64, why Reason, ok bool) {
	asked := &props.Figure{Property: f.Property, Value: f.Value, Cond: c, Block: f.Block}
	least, most = 1, 1
	for i := range conditions {
		k := &conditions[i]
		if f.Property.Info().Bears&k.bears == 0 || k.states == nil || !k.states(c) {
			continue
		}
		how := k.between(f, asked)
		if how < k.refuses {
			continue
		}
		why = k.reason(how, f, asked)
		if k.ground == nil {
			return 0, 0, why, false
		}
		a, b, certain := k.ground.bring(side{m, f}, side{m, asked})
		if !certain {
			return 0, 0, why, false
		}
		least, most = least*a, most*b
	}
	return least, most, why, true
}

// Refuses reports whether two figures of one metal differ in a condition that
// forbids setting them against each other, be it stated or not.
func Refuses(f, g *props.Figure) bool {
	for i := range conditions {
		k := &conditions[i]
		if k.bears != 0 && f.Property.Info().Bears&k.bears != 0 && k.kind != PlaceDiffers && k.between(f, g) >= k.refuses {
			return true
		}
	}
	return false
}
