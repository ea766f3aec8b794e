package swap

import (
	"cmp"
	"fmt"
	"math"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

var (
	stripFormula   = read("F = S·A; S shear strength, A = π·L·D/p·[p/2 + (D − E)/√3], L engagement, p pitch, D least major diameter of the bolt, E largest pitch diameter of the tapped thread", srcThread)
	depthFormula   = read("L₂/L₁ = S₁/S₂, S shear strength", srcThread)
	breakFormula   = read("L = σ·At/(S·A/L), σ of the bolt, S shear strength, At = π/4·(d − 0.9743 p)², of metric threads 0.9382 p", srcThread)
	bearingFormula = read("p = 4F/(π·(D² − d²)), D head or washer, d hole", srcDefined)
)

// thread is a bolt screwed into the part: the engagement that holds as much as today,
// what strips the tapped thread, and the engagement that breaks the bolt first. Lines
// appear once something is said of the thread.
func (w *work) thread() {
	if w.Thread == nil && w.Engagement == nil && w.Bolt == nil {
		return
	}
	today, swapped := w.shear(w.base), w.shear(w.pin)
	deep, deeper := today.inverse(), swapped.inverse()
	l := Line{Group: Joints, ID: "thread.engagement", Name: "Thread engagement, same strength", Formula: depthFormula}
	if l.Reason = cmp.Or(swapped.why, today.why); l.Reason == "" {
		l.expect(w, &today, &swapped)
		w.of(&l, w.Engagement, deeper.against(deep), needEngage)
	}
	w.add(l)
	w.threadLine(Line{ID: "thread.strip", Name: "Load to strip the tapped thread", Formula: stripFormula}, today, swapped, w.Engagement, needEngage, func(s interval) *Value {
		return s.times(exact(shearArea(*w.Thread))).times(ofGiven(*w.Engagement)).in(w.unit(units.Force))
	})
	breaking := func(s interval) interval {
		return s.times(ofGiven(*w.Bolt)).times(exact(tensileArea(*w.Thread) / shearArea(*w.Thread)))
	}
	l = Line{ID: "thread.bolt", Name: "Engagement to break the bolt first", Formula: breakFormula}
	if w.Thread != nil && w.Bolt != nil && swapped.why == "" {
		l.Notes = w.diameters(breaking(deeper.value))
	}
	w.threadLine(l, deep, deeper, w.Bolt, needBolt, func(s interval) *Value { return breaking(s).in(w.unit(units.Length)) })
}

// threadLine is what follows for both metals from the shear area of the thread and
// one more size.
func (w *work) threadLine(l Line, today, swapped expected, size *units.Quantity, need want, in func(interval) *Value) {
	l.Group, l.Reason = Joints, swapped.why
	switch {
	case w.Thread == nil:
		l.wait(needThread)
	case !l.missing(size, need):
		l.Notes = append(l.Notes, "limits of size of the usual class of fit, 2A and 2B or 6g and 6H, from memory; typical strengths, minimums lie lower")
		l.Notes = append(l.Notes, w.notAtHeat()...)
		l.beside(w, today, swapped, in)
	}
	w.add(l)
}

// shear is the typical shear strength of a metal, else the one for design, else that
// in torsion; else half its tensile strength, as FED-STD-H28/2 counts it, which a
// metal that breaks without yielding does not follow.
func (w *work) shear(m *props.Material) expected {
	for _, on := range []struct {
		p     props.PropertyID
		basis props.Basis
		note  string
	}{
		{props.ShearStrength, props.Typical, ""},
		{props.ShearStrength, props.Design, "the shear strength for design is taken, which lies below the typical one"},
		{props.TorsionalStrength, props.Typical, "the strength in torsion is taken for that in shear"},
	} {
		if e := w.specified(m, on.p, on.basis); e.figures != nil {
			if on.note != "" {
				e.notes = []string{m.Name() + ": " + on.note}
			}
			return e
		}
	}
	if breaks(m) {
		return expected{why: w.lacksBasis(m, props.ShearStrength, props.Typical)}
	}
	e := w.specified(m, props.TensileStrength, props.Typical)
	e.value = e.value.times(exact(0.5))
	if e.figures != nil {
		e.notes = []string{"no shear strength on file for " + m.Name() + ": half its tensile strength, on the safe side"}
	}
	return e
}

// inverse is one over what is expected.
func (e expected) inverse() expected {
	if e.why == "" {
		e.value = exact(1).over(e.value)
	}
	return e
}

// diameters says an engagement as one does in the shop, and whether the one given is enough.
func (w *work) diameters(swapped interval) []string {
	notes := []string{fmt.Sprintf("%.2g diameters of the thread", swapped.mid/w.Thread.Major)}
	if w.Engagement != nil && ofGiven(*w.Engagement).lo < swapped.hi {
		notes = append(notes, "with the engagement given the tapped thread may strip before the bolt breaks: screw deeper or set an insert")
	}
	return notes
}

// shearArea is the shear area of a tapped thread in m² for each m of engagement,
// at the limits of size where it is least.
func shearArea(t part.Thread) float64 {
	major, pitch := limits(t)
	return stripped(t.Pitch, major, pitch)
}

func stripped(pitch, major, pitchDiameter float64) float64 {
	return math.Pi * major / pitch * (pitch/2 + (major-pitchDiameter)/math.Sqrt(3))
}

// limits are the least major diameter of the bolt and the largest pitch diameter of
// the tapped thread in m, by the formulas of ASME B1.1 for classes 2A and 2B with an
// engagement of one diameter, and of ISO 965-1 for 6g and 6H, not rounded as the
// tables of the standards are.
func limits(t part.Thread) (major, pitch float64) {
	basic := t.Major - 3*math.Sqrt(3)/8*t.Pitch
	if t.Metric {
		d, p := t.Major*1e3, t.Pitch*1e3 // mm; tolerances in µm
		least := 15 + 11*p + 180*math.Pow(p, 2./3) - 3.15/math.Sqrt(p)
		return t.Major - 1e-6*least, basic + 1.32e-6*90*math.Pow(p, 0.4)*math.Pow(d, 0.1)
	}
	d, p := units.Inch.FromSI(t.Major), units.Inch.FromSI(t.Pitch)
	tolerance := 0.0015*math.Cbrt(d) + 0.0015*math.Sqrt(d) + 0.015*math.Pow(p, 2./3)
	return t.Major - units.Inch.ToSI(0.3*tolerance+0.060*math.Pow(p, 2./3)), basic + units.Inch.ToSI(1.3*tolerance)
}

// tensileArea is the area in m² by which a bolt breaks.
func tensileArea(t part.Thread) float64 {
	off := 0.9743
	if t.Metric {
		off = 0.9382
	}
	d := t.Major - off*t.Pitch
	return math.Pi / 4 * d * d
}

// bearing is the pressure under a bolt head or washer that clamps the part, and how
// far it is from crushing the part. Lines appear once something is said of them.
func (w *work) bearing() {
	if w.Clamp == nil && w.Head == nil && w.Hole == nil {
		return
	}
	under := w.underHead()
	w.asDrawn(Line{Group: Joints, ID: "bolt.bearing", Name: "Pressure under the bolt head", Formula: bearingFormula}, under)
	if under.why != "" {
		return
	}
	for _, basis := range bases {
		w.margin(Line{Group: Joints, ID: "bolt.margin." + basis.String(), Name: "Margin under the bolt head, " + basis.String(), Formula: memory("n = S/p, S yield strength, of a metal that does not yield its compressive strength", srcStrength)},
			basis, crushes, func(*props.Material) expected { return under })
	}
}

// crushes is the strength that stands for the metal under a bolt head.
func crushes(m *props.Material) props.PropertyID {
	if breaks(m) {
		return props.CompressiveStrength
	}
	return props.YieldStrength
}

// underHead is the pressure under the head: it grows with load and hole and falls
// with the diameter of the head.
func (w *work) underHead() expected {
	switch {
	case w.Clamp == nil:
		return expected{need: needClamp}
	case w.Head == nil:
		return expected{need: needHead}
	case w.Hole == nil:
		return expected{need: needHole}
	}
	f, head, hole := ofGiven(*w.Clamp), ofGiven(*w.Head), ofGiven(*w.Hole)
	if hole.hi >= head.lo {
		return expected{why: "the head or washer must be wider than the hole"}
	}
	return expected{value: follows(func(side int) float64 {
		outer, inner := head.at(-side), hole.at(side)
		return f.at(side) / (math.Pi / 4 * (outer - inner) * (outer + inner))
	}, f, head, hole)}
}
