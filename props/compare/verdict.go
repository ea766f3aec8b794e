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
	// Bound, of an unlike pair that is certain all the same: the ratio lies between
	// Least and Most, and so do the percentages; Mid, Percent and Ratio are NaN.
	Bound *Bound
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

func delta(p *Pair, u units.Unit) *Delta {
	pin, base := p.Figure, p.Against
	if u.Dimension() != pin.Value.Unit.Dimension() {
		u = pin.Value.Unit
	}
	pl, pm, ph := interval(pin, u)
	bl, bm, bh := interval(base, u)
	d := &Delta{Lo: pl - bh, Mid: pm - bm, Hi: ph - bl, Percent: math.NaN(), Ratio: math.NaN(), Unit: u}
	if dim := u.Dimension(); dim != units.Temperature && dim != units.Rating && bm != 0 {
		d.Percent, d.Ratio = 100*(pm-bm)/bm, pm/bm
	}
	if p.Bound != nil {
		b := *p.Bound
		if u.Reciprocal() {
			b.Least, b.Most = 1/b.Most, 1/b.Least
		}
		d.Bound, d.Percent, d.Ratio, d.Mid = &b, math.NaN(), math.NaN(), math.NaN()
		d.Lo, d.Hi = bl*(b.Least-1), bh*(b.Most-1)
	}
	return d
}

// boundOf is the ratio of two figures, between what their digits and ranges and
// the grounds allow.
func boundOf(f, g *props.Figure, l *likeness) *Bound {
	pl, _, ph := f.SI()
	bl, _, bh := g.SI()
	b := Bound{0, inf}
	if bh > 0 {
		b.Least = max(0, pl*l.least/bh)
	}
	if bl > 0 {
		b.Most = ph * l.most / bl
	}
	return &b
}

// certain is the verdict of two unlike figures where the grounds leave one: the
// difference is beyond the band whatever they were under equal conditions.
func certain(f, g *props.Figure, l *likeness, sense props.Sense, band float64) Verdict {
	b := boundOf(f, g, l)
	higher, lower := b.Least*(1-band) > 1+1e-9, b.Most < (1-band)*(1-1e-9)
	switch {
	case sense == props.Neutral:
		return Neutral
	case sense == props.More && higher, sense == props.Less && lower:
		return Beats
	case sense == props.More && lower, sense == props.Less && higher:
		return Misses
	}
	return Unlike
}

// judge applies rules 2 and 3 to two figures that may be compared. band is a
// fraction of the greater middle of the two. Its branches are those of the rules.
func judge(pin, base *props.Figure, sense props.Sense, target, band float64) Verdict {
	if sense == props.Neutral {
		return Neutral
	}
	u := base.Value.Unit
	pl, pm, ph := interval(pin, u)
	bl, bm, bh := interval(base, u)
	// Of the greater figure, so that level is level either way round; exactly
	// 2 % is within a band of 2 %.
	tolerance := band * max(math.Abs(pm), math.Abs(bm)) * (1 + 1e-9)
	if u.Dimension() == units.Temperature || u.Dimension() == units.Rating {
		tolerance = 0
	}
	noise := 1e-9 * max(math.Abs(pm), math.Abs(bm)) // of conversion
	if pin.Value.IsRange() || base.Value.IsRange() {
		if max(ph, bh)-min(pl, bl) <= tolerance {
			return Level
		}
	} else if math.Abs(pm-bm) <= tolerance || (pl < bh-noise && bl < ph-noise) {
		return Level
	}
	near := sense == props.Near
	if near {
		t := u.FromSI(target)
		pl, ph = distance(pl, ph, t)
		bl, bh = distance(bl, bh, t)
		sense = props.Less
	}
	if pin.Value.IsRange() && base.Value.IsRange() {
		noise = -noise // ranges that touch do not overlap
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
