package swap

import (
	"cmp"
	"slices"

	"alongside/props"
	"alongside/props/compare"
)

const (
	// roomTop is the temperature in °C up to which a strength found at room
	// temperature holds.
	roomTop = 35
	// sameHeat is how far, in °C, two temperatures may be apart that are meant as one.
	sameHeat = 2
)

// heatPoint is what a metal keeps of a strength at one temperature, in percent of
// the strength at room temperature.
type heatPoint struct {
	at      float64 // °C
	kept    interval
	figures []*props.Figure
	ends    bool // between room temperature and the first point: only the two ends are known
}

// heatCurve is the points of one source after one time at heat, the coldest first.
type heatCurve struct {
	hours  float64 // at heat before the test; 0 where the source does not say
	points []heatPoint
}

// heatCurves are what is on file of a strength above room temperature: curves in
// percent, else typical figures over the typical one at room temperature.
func (w *work) heatCurves(m *props.Material, p props.PropertyID) []heatCurve {
	type key struct {
		source *props.Source
		hours  float64
	}
	curves := map[key]*heatCurve{}
	add := func(f *props.Figure, kept interval, figures ...*props.Figure) {
		k := key{f.Source, f.Cond.Hours}
		if curves[k] == nil {
			curves[k] = &heatCurve{hours: f.Cond.Hours}
		}
		curves[k].points = append(curves[k].points, heatPoint{f.Cond.AtC, kept, figures, false})
	}
	for _, f := range m.Figures(compare.RetainedOf(p)) {
		if f.Cond.HasAt && f.Cond.AtC > roomTop {
			add(f, ofFigure(f), f)
		}
	}
	for _, f := range m.Figures(p) {
		if f.Basis != props.Typical || !f.Cond.HasAt || f.Cond.AtC <= roomTop || unfit(f) != "" {
			continue
		}
		if room := w.atRoom(m, p, f.Source); room != nil && unfit(room) == "" {
			add(f, ofFigure(f).over(ofFigure(room)).times(exact(100)), f, room)
		}
	}
	var out []heatCurve
	for _, c := range curves {
		slices.SortFunc(c.points, func(a, b heatPoint) int { return cmp.Compare(a.at, b.at) })
		out = append(out, *c)
	}
	slices.SortFunc(out, func(a, b heatCurve) int {
		return cmp.Or(cmp.Compare(a.hours, b.hours), cmp.Compare(a.points[0].figures[0].Source.ID, b.points[0].figures[0].Source.ID))
	})
	return out
}

// atRoom is the typical strength at room temperature by the same source, else the
// one that the bench would show.
func (w *work) atRoom(m *props.Material, p props.PropertyID, s *props.Source) *props.Figure {
	for _, f := range m.Figures(p) {
		if f.Source == s && f.Basis == props.Typical && f.Cond.RoomTemperature() {
			return f
		}
	}
	return w.atRoomOn(m, p, props.Typical)
}

// atRoomOn is onBasis at room temperature, whatever the bench is set to.
func (w *work) atRoomOn(m *props.Material, p props.PropertyID, basis props.Basis) *props.Figure {
	room := *w
	room.bench.Service = nil
	f := room.onBasis(m, p, basis)
	if f != nil && !f.Cond.RoomTemperature() {
		return nil
	}
	return f
}

// at is the curve at t °C, between two points linearly; ok is false past the last.
func (c heatCurve) at(t float64) (p heatPoint, ok bool) {
	for i, above := range c.points {
		switch {
		case above.at < t-sameHeat:
			continue
		case above.at <= t+sameHeat:
			return above, true
		case i == 0:
			k := above.kept
			return heatPoint{t, interval{min(k.lo, 100), (k.mid + 100) / 2, max(k.hi, 100), k.last, true}, above.figures, true}, true
		}
		below := c.points[i-1]
		share := exact((t - below.at) / (above.at - below.at))
		kept := below.kept.times(exact(1 - share.mid)).plus(above.kept.times(share))
		return heatPoint{t, kept, union(below.figures, above.figures), false}, true
	}
	return heatPoint{}, false
}

// union is both lists, what is in both once.
func union[T comparable](a, b []T) []T {
	out := slices.Clone(a)
	for _, x := range b {
		if !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	return out
}
