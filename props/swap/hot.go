package swap

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

var keptRule = memory("S at temperature after its hours/S at room temperature, as published or between two published temperatures; taken for minimums as for typical figures", srcShare)

// kept is what a metal keeps of a strength at the hottest in service, in percent.
// After hours between two published times it lies between the two; without hours
// the longest published time is taken. Nothing is taken from past a curve.
func (w *work) kept(m *props.Material, p props.PropertyID) expected {
	t := *w.Hottest
	name := props.InSentence(p.Info().Name)
	if why := m.Absent(p); why != "" {
		return expected{why: m.Name() + ": " + why}
	}
	curves := w.heatCurves(m, p)
	if len(curves) == 0 {
		return expected{why: "no " + name + " of " + m.Name() + " on file above room temperature"}
	}
	var at []heatPoint
	var hours []float64
	last := 0.0
	for _, c := range curves {
		last = max(last, c.points[len(c.points)-1].at)
		if h, ok := c.at(t); ok {
			at, hours = append(at, h), append(hours, c.hours)
		}
	}
	if len(at) == 0 {
		return expected{why: "the " + name + " of " + m.Name() + " is on file up to " + w.temperatureText(last) + " only"}
	}
	if longest := curves[len(curves)-1]; w.Hours == nil && hours[len(hours)-1] < longest.hours {
		return expected{need: needHours, why: "the " + name + " of " + m.Name() + " after " + hoursText(longest.hours) + " is on file up to " +
			w.temperatureText(longest.points[len(longest.points)-1].at) + " only; say the hours at heat, after fewer it reaches farther"}
	}
	short, long, why := w.exposures(hours)
	if why != "" {
		return expected{why: why + " for " + m.Name() + " at " + w.temperatureText(t)}
	}
	e := expected{value: at[long].kept, figures: at[long].figures, rule: keptRule}
	if short != long {
		a, b := at[short].kept, at[long].kept
		e.value = interval{min(a.lo, b.lo), (a.mid + b.mid) / 2, max(a.hi, b.hi), max(a.last, b.last), true}
		e.figures = union(at[short].figures, e.figures)
	}
	if w.Hours == nil && slices.Max(hours) > 0 && len(at) > 1 {
		e.need = needHours
	}
	e.notes = []string{w.exposureNote(m, hours[short], hours[long])}
	if h := at[long]; h.ends {
		e.notes = append(e.notes, "the coldest above room temperature on file for "+m.Name()+" is "+h.figures[0].Cond.At()+": it keeps between that and all")
	}
	return e
}

// exposures are the places, in rising hours, of the published times at heat next
// below and next above the hours of the part; they are one where one tells.
func (w *work) exposures(hours []float64) (short, long int, why string) {
	last := len(hours) - 1
	if w.Hours == nil || hours[last] == 0 {
		return last, last, ""
	}
	h := ofGiven(*w.Hours)
	long = slices.IndexFunc(hours, func(x float64) bool { return x != 0 && x*3600 >= h.hi*(1-1e-9) })
	if long < 0 {
		return 0, 0, "the longest time at heat on file is " + hoursText(hours[last])
	}
	short = long
	for i, x := range hours[:long] {
		if x != 0 && x*3600 <= h.lo {
			short = i
		}
	}
	if hours[long]*3600 <= h.lo*(1+1e-9) {
		short = long
	}
	return short, long, ""
}

func (w *work) exposureNote(m *props.Material, short, long float64) string {
	switch {
	case long == 0:
		return "hours at heat are not stated in the source for " + m.Name() + ": not for a long time at heat"
	case short != long:
		return m.Name() + " between " + hoursText(short) + " and " + hoursText(long) + " at heat"
	case w.Hours != nil && long*3600 > ofGiven(*w.Hours).hi*(1+1e-9):
		return m.Name() + " after " + hoursText(long) + " at heat; after fewer hours it has lost less"
	}
	return m.Name() + " after " + hoursText(long) + " at heat"
}

func hoursText(h float64) string {
	s := strconv.FormatFloat(h, 'f', -1, 64)
	if len(s) > 4 && h >= 1e4 {
		s = s[:len(s)-3] + " " + s[len(s)-3:]
	}
	return s + " h"
}

// hot is what both metals keep of their strength at the hottest in service, the
// strength that this leaves and, where a stress is given, the reserve.
func (w *work) hot() {
	if w.Hottest == nil {
		l := Line{Group: StrengthGroup, ID: "hot.set", Name: "Strength at heat", Formula: keptRule}
		l.wait(needRange)
		w.add(l)
		return
	}
	if *w.Hottest <= roomTop {
		return
	}
	var unknown []Line
	for _, g := range givings {
		today, swapped := w.kept(w.base, g.strength(w.base)), w.kept(w.pin, g.strength(w.pin))
		kept := Line{Group: StrengthGroup, ID: "hot.kept." + g.id, Name: fmt.Sprintf("Strength at %s, %s", w.temperatureText(*w.Hottest), g.name), Formula: both(today.rule, swapped.rule)}
		kept.sides(w, today, swapped, func(v interval) *Value { return v.in(units.Pct) })
		if swapped.why != "" && today.why != "" {
			unknown = append(unknown, kept)
			continue
		}
		if n := cmp.Or(swapped.need, today.need); n.text != "" && kept.Reason == "" {
			kept.wait(n)
		}
		w.add(kept)
		w.hotStrength(g, today, swapped)
		w.hotReserve(g, today, swapped)
	}
	if len(unknown) == len(givings) && *w.Hottest >= warm {
		unknown[1].Name = "Strength at " + w.temperatureText(*w.Hottest)
		w.add(unknown[1]) // one line tells it
	} else if len(unknown) < len(givings) {
		w.lines = append(w.lines, unknown...)
	}
}

// hotStrength is the strength that is left, on minimums where both metals have
// them, else on typical figures.
func (w *work) hotStrength(g giving, today, swapped expected) {
	if swapped.why != "" {
		return
	}
	for _, basis := range bases {
		a, b := w.left(today, w.base, g, basis), w.left(swapped, w.pin, g, basis)
		if b.why != "" || today.why == "" && a.why != "" {
			continue
		}
		l := Line{Group: StrengthGroup, ID: "hot." + g.id, Name: fmt.Sprintf("At %s %s, %s", w.temperatureText(*w.Hottest), g.name, basis), Formula: memory("S(T) = S·share kept", srcShare)}
		l.beside(w, a, b, func(v interval) *Value { return v.in(w.unit(units.Stress)) })
		w.add(l)
		return
	}
}

// left is a strength on one basis times the share kept.
func (w *work) left(kept expected, m *props.Material, g giving, basis props.Basis) expected {
	if kept.why != "" {
		return kept
	}
	p := g.strength(m)
	f := w.atRoomOn(m, p, basis)
	if f == nil || unfit(f) != "" || f.Cond.UnderLoad { // the shares are of the 0.2 % offset
		return expected{why: w.lacksBasis(m, p, basis)}
	}
	kept.value, kept.figures = kept.value.times(ofFigure(f)).times(exact(0.01)), union(kept.figures, []*props.Figure{f})
	return kept
}

// hotReserve is the reserve at heat, with the factors of the part.
func (w *work) hotReserve(g giving, today, swapped expected) {
	if w.Stress == nil || w.bench.Service != nil {
		return // a bench at heat has its strengths at heat
	}
	under := ofGiven(*w.Stress).times(w.factor())
	a, b := w.least(w.base, g), w.least(w.pin, g)
	for _, side := range []struct{ cold, kept *expected }{{&a, &today}, {&b, &swapped}} {
		if side.cold.why = cmp.Or(side.kept.why, side.cold.why); side.cold.why == "" {
			side.cold.value = side.cold.value.times(side.kept.value).times(exact(0.01))
			side.cold.figures, side.cold.notes = union(side.cold.figures, side.kept.figures), append(side.cold.notes, side.kept.notes...)
		}
	}
	l := Line{Group: StrengthGroup, ID: "hot.reserve." + g.id, Name: fmt.Sprintf("Reserve at %s, %s", w.temperatureText(*w.Hottest), g.name), Formula: memory("S·share kept/(σ·n·c)", srcFactor)}
	l.beside(w, a, b, func(v interval) *Value { return v.over(under).in(units.One) })
	if l.Reason == "" {
		w.add(l)
	}
}

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
