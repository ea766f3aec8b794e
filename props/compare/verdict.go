package compare

import (
	"math"

	"alongside/props"
	"alongside/units"
)

// Verdict is what a comparison of one figure with the baseline's says.
type Verdict uint8

// The verdicts.
const (
	NoFigure Verdict = iota // no figure on one side
	Beats                   // disjoint, on the better side
	Misses                  // disjoint, on the worse side
	Level                   // within the rounding or the band
	Overlaps                // ranges cross
	Unlike                  // basis or conditions forbid a comparison
	Neutral                 // neither more nor less is better
	IsBaseline
)

var verdictNames = [...]string{"no figure", "beats", "misses", "level", "overlaps", "unlike", "neutral", "baseline"}

func (v Verdict) String() string { return verdictNames[v] }

// Delta is the difference of a pin from the baseline in the unit of the row
// (temperatures: as a difference). Mid is between the middles of the two
// figures, Lo and Hi are the worst cases of their intervals. Percent and
// Ratio are of the middles; NaN where they mean nothing (temperatures,
// ratings).
type Delta struct {
	Lo, Mid, Hi    float64
	Percent, Ratio float64
	Unit           units.Unit
}

func interval(f *props.Figure, u units.Unit) (lo, mid, hi float64) {
	lo, hi = f.Bounds()
	lo, hi = u.FromSI(f.Value.Unit.ToSI(lo)), u.FromSI(f.Value.Unit.ToSI(hi))
	if lo > hi { // reciprocal units
		lo, hi = hi, lo
	}
	a, z := u.FromSI(f.Value.Unit.ToSI(f.Value.Lo)), u.FromSI(f.Value.Unit.ToSI(f.Value.Hi))
	return lo, (a + z) / 2, hi
}

func delta(pin, base *props.Figure, u units.Unit) *Delta {
	if u.Dimension() != pin.Value.Unit.Dimension() {
		u = pin.Value.Unit
	}
	pl, pm, ph := interval(pin, u)
	bl, bm, bh := interval(base, u)
	d := &Delta{Lo: pl - bh, Mid: pm - bm, Hi: ph - bl, Percent: math.NaN(), Ratio: math.NaN(), Unit: u}
	if dim := u.Dimension(); dim != units.Temperature && dim != units.Rating && bm != 0 {
		d.Percent, d.Ratio = 100*(pm-bm)/bm, pm/bm
	}
	return d
}

// judge applies rules 2 and 3 to two figures that may be compared. band is a
// fraction of the greater middle of the two.
func judge(pin, base *props.Figure, sense props.Sense, target, band float64) Verdict {
	if sense == props.Neutral {
		return Neutral
	}
	u := base.Value.Unit
	pl, pm, ph := interval(pin, u)
	bl, bm, bh := interval(base, u)
	single := pin.Value.Lo == pin.Value.Hi && base.Value.Lo == base.Value.Hi
	// Of the greater figure, so that level is level either way round; exactly
	// 2 % is within a band of 2 %.
	tolerance := band * max(math.Abs(pm), math.Abs(bm)) * (1 + 1e-9)
	if u.Dimension() == units.Temperature || u.Dimension() == units.Rating {
		tolerance = 0
	}
	// Ranges that only touch neither part nor overlap by the noise of conversion.
	noise := 1e-9 * max(math.Abs(ph), math.Abs(bh))
	level := false
	if single {
		pv, _ := units.Convert(pin.Value.Lo, pin.Value.Unit, u)
		level = math.Abs(pv-base.Value.Lo) <= tolerance || (pl < bh-noise && bl < ph-noise)
	} else {
		level = math.Abs(pl-bl) <= tolerance && math.Abs(ph-bh) <= tolerance
	}
	if level {
		return Level
	}
	near := sense == props.Near
	if near {
		t := u.FromSI(target)
		pl, ph = distance(pl, ph, t)
		bl, bh = distance(bl, bh, t)
		sense = props.Less
	}
	better, worse := pl > bh+noise, ph < bl-noise
	if sense == props.Less {
		better, worse = worse, better
	}
	// A conductivity printed as a resistivity runs the other way; a distance from
	// a target does not.
	if u.Reciprocal() && !near {
		better, worse = worse, better
	}
	switch {
	case better:
		return Beats
	case worse:
		return Misses
	}
	return Overlaps
}

// distance is the interval of |x − t| for x in lo..hi.
func distance(lo, hi, t float64) (near, far float64) {
	a, z := math.Abs(lo-t), math.Abs(hi-t)
	if lo <= t && t <= hi {
		return 0, max(a, z)
	}
	return min(a, z), max(a, z)
}
