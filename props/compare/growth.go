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
// temperatures the mean coefficient is interpolated linearly; outside them
// there is no figure.
type Growth struct {
	Material *props.Material
	Figures  []*props.Figure // the coefficients it is built from
	knots    []knot          // in order of temperature, without the reference itself
}

// knot is the mean coefficient, in 1/K, between the reference and a
// temperature in °C.
type knot struct{ at, lo, mid, hi float64 }

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
			g.add(c.ToC, f)
		case near(c.ToC, reference, 6):
			g.add(c.FromC, f)
		default:
			loose = append(loose, f)
		}
	}
	for _, f := range loose {
		// A range across the reference counts to both its ends where no
		// coefficient from the reference itself reaches them.
		if f.Cond.FromC < reference && reference < f.Cond.ToC {
			g.add(f.Cond.FromC, f)
			g.add(f.Cond.ToC, f)
		}
	}
	if len(g.knots) == 0 {
		return nil
	}
	sort.Slice(g.knots, func(i, j int) bool { return g.knots[i].at < g.knots[j].at })
	return g
}

func (g *Growth) add(at float64, f *props.Figure) {
	for _, k := range g.knots {
		if near(k.at, at, 6) {
			return
		}
	}
	lo, mid, hi := interval(f, units.PerK)
	g.knots = append(g.knots, knot{at, lo, mid, hi})
	if len(g.Figures) == 0 || g.Figures[len(g.Figures)-1] != f {
		g.Figures = append(g.Figures, f)
	}
}

// Range is the span of temperatures in °C over which the curve holds.
func (g *Growth) Range() (from, to float64) {
	return min(reference, g.knots[0].at), max(reference, g.knots[len(g.knots)-1].at)
}

// Strain is the growth per length between two temperatures in °C: the middle
// and the worst cases that the digits and ranges of the coefficients allow,
// each of them on its own. The error is an *OutOfRange.
func (g *Growth) Strain(fromC, toC float64) (lo, mid, hi float64, err error) {
	a, err := g.weights(fromC)
	if err != nil {
		return 0, 0, 0, err
	}
	b, err := g.weights(toC)
	if err != nil {
		return 0, 0, 0, err
	}
	for i, k := range g.knots {
		w := b[i] - a[i]
		lo += min(w*k.lo, w*k.hi)
		mid += w * k.mid
		hi += max(w*k.lo, w*k.hi)
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

// weights tell how much of each knot's coefficient is in the strain from the
// reference to t: the difference of temperature, shared between the published
// ends on either side of t. Between the reference and the nearest published end
// it is that end's own.
func (g *Growth) weights(t float64) ([]float64, error) {
	from, to := g.Range()
	const rounding = 0.6 // published limits are whole degrees
	if t < from-rounding || t > to+rounding || math.IsNaN(t) {
		return nil, &OutOfRange{g.Material, t, from, to}
	}
	below, above := -1, -1
	for i, k := range g.knots {
		if (k.at < reference) != (t < reference) {
			continue
		}
		if k.at <= t {
			below = i
		} else if above < 0 {
			above = i
		}
	}
	w, d := make([]float64, len(g.knots)), t-reference
	switch {
	case below < 0 && above < 0: // t is the reference
	case below < 0:
		w[above] = d
	case above < 0:
		w[below] = d
	default:
		share := (t - g.knots[below].at) / (g.knots[above].at - g.knots[below].at)
		w[below], w[above] = d*(1-share), d*share
	}
	return w, nil
}
