package compare

import (
	"fmt"
	"math"
	"sort"

	"alongside/props"
	"alongside/units"
)

// reference is the temperature from which published mean coefficients count,
// in °C; 68 °F.
const reference = 20.0

// Growth is the thermal strain of a material as a function of temperature,
// built from its published mean expansion coefficients.
//
// A mean coefficient belongs to its range. With ε(T) = α(20→T)·(T − 20) the
// strain between two temperatures is ε(T2) − ε(T1). Between the published end
// temperatures the mean coefficient is interpolated linearly. Nearer to the
// reference than the first of them, and from it down to −40 °F where no cold
// coefficient is published, the mean is that one or less, by at most what
// growthOfMean allows; beyond there is no figure.
type Growth struct {
	Material *props.Material
	Figures  []*props.Figure // the coefficients it is built from
	knots    []knot          // in order of temperature, without the reference itself
	across   bool            // a range across the reference stands for one from it
}

// knot is the mean coefficient, in 1/K, between the reference and a
// temperature in °C.
type knot struct{ at, lo, mid, hi float64 }

// coldest is how far below the reference a coefficient from above it bounds the
// growth, in °C: −40 °F.
const coldest = -40.0

// growthOfMean is the most by which a mean coefficient grows with its upper
// temperature, as a fraction in 100 °C, by the base of the metal: the steepest of
// the curves read (MIL-HDBK-5J, figures 3.8.1.0 for A201.0 and 2.2.1.0 for 1025
// steel between 200 and 572 °F, 4.3.3.0 for AZ92A from −100 °F up) and of the
// metals on file with means over two ranges; for a base without one, the
// steepest of all.
func growthOfMean(base string) float64 {
	switch base {
	case "Fe":
		return 0.14
	case "Cu":
		return 0.07
	case "Mg":
		return 0.10
	}
	return 0.20
}

// OutOfRange is the error for a temperature that no published coefficient
// covers.
type OutOfRange struct {
	Material *props.Material
	AtC      float64 // °C
	From, To float64 // °C, the range covered
}

func (e *OutOfRange) Error() string {
	side, limit := "above", e.To
	if e.AtC < e.From {
		side, limit = "below", e.From
	}
	return fmt.Sprintf("no expansion figure for %s %s %.0f °C (%.0f °F)", e.Material.Name(), side, limit, units.DegF.FromSI(limit+273.15))
}

// GrowthOf builds the strain curve of a material from its mean coefficients; the
// best figure of each range is taken. It returns nil when no coefficient with
// a stated range starts or ends near 20 °C, or spans it.
func GrowthOf(m *props.Material) *Growth {
	g := &Growth{Material: m}
	var loose []*props.Figure
	for _, f := range m.Figures(props.ThermalExpansion) {
		c := f.Cond
		switch {
		case !c.HasRange:
		case near(c.FromC, reference, 6):
			g.add(c.ToC, f, 0, 0)
		case near(c.ToC, reference, 6):
			g.add(c.FromC, f, 0, 0)
		default:
			loose = append(loose, f)
		}
	}
	for _, f := range loose {
		// A range across the reference counts to both its ends where no
		// coefficient from the reference itself reaches them.
		// From the reference up the mean is a little more, down a little less.
		if from, to := f.Cond.FromC, f.Cond.ToC; from < reference && reference < to {
			g.add(from, f, g.slope()*(to-reference), 0)
			g.add(to, f, 0, g.slope()*(reference-from))
			g.across = true
		}
	}
	if len(g.knots) == 0 {
		return nil
	}
	sort.Slice(g.knots, func(i, j int) bool { return g.knots[i].at < g.knots[j].at })
	return g
}

// slope is growthOfMean in one degree.
func (g *Growth) slope() float64 { return growthOfMean(g.Material.Alloy.Family.Base) / 100 }

// add takes in a coefficient that may be lower or higher by a fraction.
func (g *Growth) add(at float64, f *props.Figure, lower, higher float64) {
	for _, k := range g.knots {
		if near(k.at, at, 6) {
			return
		}
	}
	lo, mid, hi := interval(f, units.PerK)
	g.knots = append(g.knots, knot{at, lo / (1 + lower), mid, hi * (1 + higher)})
	if len(g.Figures) == 0 || g.Figures[len(g.Figures)-1] != f {
		g.Figures = append(g.Figures, f)
	}
}

// Range is the span of temperatures in °C over which the curve holds.
func (g *Growth) Range() (from, to float64) {
	from, to = g.knots[0].at, max(reference, g.knots[len(g.knots)-1].at)
	if from > reference {
		from = coldest
	}
	return from, to
}

// Bounded reports whether a strain between two temperatures in °C rests on a
// bound rather than on published means alone.
func (g *Growth) Bounded(fromC, toC float64) bool {
	for _, t := range [2]float64{fromC, toC} {
		if e, err := g.to(t); err == nil && e.least < e.most {
			return true
		}
	}
	return false
}

// Strain is the growth per length between two temperatures in °C: the middle
// and the worst cases that the digits and ranges of the coefficients allow,
// each of them on its own. The error is an *OutOfRange.
func (g *Growth) Strain(fromC, toC float64) (lo, mid, hi float64, err error) {
	from, err := g.to(fromC)
	if err != nil {
		return 0, 0, 0, err
	}
	to, err := g.to(toC)
	if err != nil {
		return 0, 0, 0, err
	}
	for i, k := range g.knots {
		w := to.weights[i] - from.weights[i]
		lo += min(w*k.lo, w*k.hi)
		mid += w * k.mid
		hi += max(w*k.lo, w*k.hi)
	}
	if on := shared(from, to); on >= 0 {
		// The mean over part of a published range differs from it as the middles do.
		least, most := g.off(fromC + toC - reference - g.knots[on].at)
		return min(lo*least, lo*most), mid, max(hi*least, hi*most), nil
	}
	for sign, e := range [2]*end{from, to} {
		whole := 0.0
		for i, k := range g.knots {
			whole += float64(2*sign-1) * e.weights[i] * k.hi
		}
		a, b := whole*(e.least-1), whole*(e.most-1)
		lo, hi = lo+min(a, b), hi+max(a, b)
	}
	return lo, mid, hi, nil
}

// Mean is the mean coefficient between two different temperatures in °C, in
// 1/K.
func (g *Growth) Mean(fromC, toC float64) (lo, mid, hi float64, err error) {
	lo, mid, hi, err = g.Strain(fromC, toC)
	d := toC - fromC
	lo, mid, hi = lo/d, mid/d, hi/d
	return min(lo, hi), mid, max(lo, hi), err
}

// end is the strain from the reference to a temperature: how much of each knot's
// coefficient is in it, and by which factors the sum may be off.
type end struct {
	weights     []float64
	on          int // the one knot that it rests on, or else none or several
	least, most float64
}

const none, several = -1, -2

// shared is the one knot that both ends rest on.
func shared(a, b *end) int {
	switch {
	case a.on == none || a.on == b.on:
		return b.on
	case b.on == none:
		return a.on
	}
	return several
}

// off bounds a mean whose middle temperature, doubled, lies so many °C above that
// of the published mean that stands for it, as factors of that mean.
func (g *Growth) off(by float64) (least, most float64) {
	if near(by, 0, sameTemperature) {
		return 1, 1
	}
	return 1 / (1 + g.slope()*max(-by, 0)), 1 + g.slope()*max(by, 0)
}

// to shares the difference of temperature between the published ends on either
// side of t. Between the reference and the nearest published end it is that
// end's own, and so it is below the reference without a cold end; what the mean
// may be off there is bounded.
func (g *Growth) to(t float64) (*end, error) {
	from, to := g.Range()
	const rounding = 0.6 // published limits are whole degrees
	if t < from-rounding || t > to+rounding || math.IsNaN(t) {
		return nil, &OutOfRange{g.Material, t, from, to}
	}
	e, d := &end{make([]float64, len(g.knots)), none, 1, 1}, t-reference
	if d == 0 {
		return e, nil
	}
	below, above := none, none
	for i, k := range g.knots {
		switch {
		case (k.at < reference) != (t < reference) && (t > reference || g.knots[0].at < reference): // of the other side
		case k.at <= t:
			below = i
		case above == none:
			above = i
		}
	}
	if below != none && above != none {
		share := (t - g.knots[below].at) / (g.knots[above].at - g.knots[below].at)
		e.weights[below], e.weights[above], e.on = d*(1-share), d*share, several
		return e, nil
	}
	e.on = max(below, above)
	e.weights[e.on] = d
	if !near(t, reference, 2) { // 70 °F is as good as 68
		e.least, e.most = g.off(t - g.knots[e.on].at)
	}
	return e, nil
}
