package swap

import (
	"math"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

var (
	shrinkFormula  = read("allowance on the pattern, length per length", srcPattern)
	patternFormula = read("ΔL = L·(s₁ − s₂)/(1 + s₂), the casting against the drawing", srcDefined)
)

// foundry is the shrink allowance of the pattern, and whether the pattern of
// today can serve.
func (w *work) foundry() {
	s := w.pair(props.PatternShrinkage)
	for _, u := range []struct {
		id   string
		unit units.Unit
	}{{"in-per-ft", units.InPerFt}, {"mm-per-m", units.MMPerM}} {
		l := Line{Group: Foundry, ID: "shrink." + u.id, Name: "Pattern shrink, " + u.unit.Symbol(), Formula: shrinkFormula}
		if w.rest(&l, s) {
			l.Base, l.Value = ofFigure(s.base).in(u.unit), ofFigure(s.pin).in(u.unit)
		}
		w.add(l)
	}
	l := Line{Group: Foundry, ID: "pattern", Name: "Today's pattern", Formula: patternFormula}
	if why := newTool(w.base, w.pin); why != "" {
		l.Words = why
	} else if w.rest(&l, s) {
		w.pattern(&l, s)
	}
	w.add(l)
}

// newTool says where the change of process leaves the pattern without use.
func newTool(base, pin *props.Material) string {
	switch {
	case base.Process == props.Wrought:
		return "there is none: " + base.Name() + " is not cast"
	case pin.Process == props.Wrought:
		return "not needed: " + pin.Name() + " is not cast"
	case base.Process == props.Die && pin.Process == props.Die && base.Alloy.Family != pin.Alloy.Family:
		return "cannot serve: steel and machine of a die are chosen for one family of metals, so it takes a new die"
	case base.Process == pin.Process, base.Process == props.NoProcess, pin.Process == props.NoProcess:
		return ""
	}
	return "cannot serve: from " + base.Process.String() + " to " + pin.Process.String() + " it takes a new tool"
}

// pattern says how far a casting from today's pattern misses the drawing.
func (w *work) pattern(l *Line, s pair) {
	l.Notes = append(l.Notes, "the process cards of the two say whether draft and machining stock fit too")
	var miss interval
	if s.pin != s.base {
		new := ofFigure(s.pin)
		miss = ofFigure(s.base).minus(new).over(new.plus(exact(1)))
	}
	if miss.lo <= 0 && miss.hi >= 0 && math.Abs(miss.mid) < tiny {
		l.Words = "can serve: the two metals shrink alike"
		return
	}
	u := w.unit(units.Strain)
	if w.Length != nil {
		miss = miss.times(ofGiven(*w.Length))
		u = w.unit(units.Length)
	} else {
		l.wait(want{part.FieldLength, needLength.text + " for the amount"})
	}
	l.Value = miss.in(u)
	size := "small"
	if miss.mid > 0 {
		size = "large"
	}
	l.Words = "castings come out " + miss.size().in(u).String() + " too " + size
	if w.Length != nil {
		l.Words += " over " + w.Part.Length
	}
	l.Words += ": it can serve only where the drawing's tolerance or the machining stock takes that up"
}
