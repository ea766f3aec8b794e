package swap

import "alongside/props"

var (
	coldRule = memory("impact strength found at the coldest or colder; it does not fall as the metal warms", srcCold)
	toughAll = memory("aluminum and copper alloys go through no range in which they turn from tough to brittle", srcCold)
)

// impacts are the impact tests, the most telling in the cold first. Figures of two
// tests are not set side by side.
var impacts = [...]props.PropertyID{props.ImpactCharpyV, props.ImpactCharpyKeyhole, props.ImpactCharpyUnnotched, props.ImpactIzod}

// cold is the impact strength of both metals at the coldest in service.
func (w *work) cold() {
	l := Line{Group: StrengthGroup, ID: "cold.impact", Name: "Impact in the cold", Formula: coldRule}
	if w.Coldest == nil {
		l.wait(needRange)
		w.add(l)
		return
	}
	if *w.Coldest > 0 {
		return
	}
	at := w.temperatureText(*w.Coldest)
	for _, p := range impacts {
		today, swapped := w.tough(w.base, p), w.tough(w.pin, p)
		if today.why != "" && swapped.why != "" {
			continue
		}
		l.Name = p.Info().Short + " at " + at
		joule := func(v interval) *Value { return v.in(p.Info().Units[w.bench.System]) }
		l.sides(w, today, swapped, joule) // of lower bounds there is no ratio
		if staysTough(w.pin) && swapped.why != "" {
			l.Base = joule(today.value)
		}
		break
	}
	switch {
	case l.Value != nil:
	case staysTough(w.pin) && !staysTough(w.base):
		l.Name, l.Words, l.Formula, l.Reason = "Impact at "+at, "does not turn brittle in the cold", toughAll, ""
	case l.Reason == "":
		return
	}
	w.add(l)
}

// staysTough reports whether the metal has no transition to brittle fracture.
func staysTough(m *props.Material) bool {
	return m.Alloy.Family.Base == "Al" || m.Alloy.Family.Base == "Cu"
}

// tough is the impact strength that a metal has at least at the coldest: of the
// figures found there or colder the warmest, and of those the lowest.
func (w *work) tough(m *props.Material, p props.PropertyID) expected {
	var best *props.Figure
	for _, f := range m.Figures(p) {
		c := f.Cond
		if !c.HasAt || c.AtC > *w.Coldest+sameHeat || unfit(f) != "" || f.Basis != props.Minimum && f.Basis != props.Typical {
			continue
		}
		if best == nil || c.AtC > best.Cond.AtC || c.AtC == best.Cond.AtC && ofFigure(f).lo < ofFigure(best).lo {
			best = f
		}
	}
	if best == nil {
		return expected{why: "no impact strength of " + m.Name() + " on file at " + w.temperatureText(*w.Coldest) + " or colder"}
	}
	note := m.Name() + ": " + best.Basis.Phrase()
	if best.Cond.AtC < *w.Coldest-sameHeat {
		note += " found at " + best.Cond.At() + ", colder than the part: it has at least this"
	}
	return expected{value: ofFigure(best), figures: []*props.Figure{best}, rule: coldRule, notes: []string{note}}
}
