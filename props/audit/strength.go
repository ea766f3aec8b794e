package audit

import (
	"math"

	"alongside/props"
	"alongside/units"
)

// yieldBelowTensile: the figures of one block describe one bar.
func yieldBelowTensile(l *look) {
	for _, y := range l.figures[props.YieldStrength] {
		for _, t := range l.figures[props.TensileStrength] {
			ylo, _ := span(y, units.MPa)
			_, thi := span(t, units.MPa)
			if together(y, t) && ylo > thi {
				l.find("yield %s is above tensile %s", []any{y.Value, t.Value}, y, t)
			}
		}
	}
}

// minimumBelowTypical compares separately cast or unstated bars only: bars cut
// from a casting may lie lower, and a class or section is another casting. The
// average of one heat promises nothing of the grade.
func minimumBelowTypical(l *look) {
	for _, p := range []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation} {
		for _, m := range l.room(p) {
			if m.Basis != props.Minimum || special(m.Cond) {
				continue
			}
			for _, t := range l.room(p) {
				if t.Basis != props.Typical || t.Cond.State == props.OneHeat || special(t.Cond) || t.Cond.Offset != m.Cond.Offset && t.Cond.Offset != 0 && m.Cond.Offset != 0 {
					continue
				}
				mlo, _ := span(m, t.Value.Unit)
				_, thi := span(t, t.Value.Unit)
				if mlo > thi {
					l.find("typical %s (%s) is below the minimum %s (%s)", []any{t.Value, t.Source.ID, m.Value, m.Source.ID}, t, m)
				}
			}
		}
	}
}

// maximumAboveMinimum: one source's limits of a property leave room between
// them.
func maximumAboveMinimum(l *look) {
	for _, p := range props.Properties() {
		for _, low := range l.room(p) {
			for _, high := range l.room(p) {
				if low.Basis == props.Minimum && high.Basis == props.Maximum && low.Source == high.Source && sameTest(low.Cond, high.Cond) &&
					high.Value.Unit.ToSI(high.Value.Hi) < low.Value.Unit.ToSI(low.Value.Lo) {
					l.find("maximum %s is below minimum %s (%s)", []any{high.Value, low.Value, low.Source.ID}, high, low)
				}
			}
		}
	}
}

// classes: within one alloy strength is bought with elongation, where the
// drawing designates the area. The classes of other areas step down in both.
func classes(l *look) {
	for _, a := range l.room(props.TensileStrength) {
		for _, b := range l.room(props.TensileStrength) {
			if a.Basis != props.Minimum || b.Basis != props.Minimum || a.Source != b.Source || a.Cond.Class == "" || b.Cond.Class == "" ||
				a.Cond.Bar != props.Designated || b.Cond.Bar != props.Designated {
				continue
			}
			ea, eb := l.elongationOf(a), l.elongationOf(b)
			if ea == nil || eb == nil {
				continue
			}
			alo, _ := span(a, units.MPa)
			_, bhi := span(b, units.MPa)
			if alo > bhi && ea.Value.Lo > eb.Value.Hi {
				l.find("class %s has %s and %s, class %s only %s and %s", []any{a.Cond.Class, a.Value, ea.Value, b.Cond.Class, b.Value, eb.Value}, ea, eb)
			}
		}
	}
}

// elongationOf is the elongation of the class that a tensile strength is for.
func (l *look) elongationOf(t *props.Figure) *props.Figure {
	for _, e := range l.room(props.Elongation) {
		if e.Basis == t.Basis && e.Source == t.Source && e.Cond.Class == t.Cond.Class && e.Cond.Bar == t.Cond.Bar {
			return e
		}
	}
	return nil
}

func special(c *props.Conditions) bool {
	return c.Class != "" || c.Section != "" || c.InCasting() || c.Bar == props.CastOnBar
}

func hardnessAgainstTensile(l *look) {
	for _, b := range l.bandsOf(props.TensilePerBrinell) {
		for _, h := range l.room(props.HardnessBrinell) {
			if h.Basis == props.Typical && h.Cond.Load == b.Load {
				hardnessInBand(l, h, b.Value)
			}
		}
	}
}

// hardnessInBand compares with the tensile strength of the same test series.
func hardnessInBand(l *look, h *props.Figure, band units.Quantity) {
	for _, t := range l.room(props.TensileStrength) {
		if t.Basis != props.Typical || t.Block != h.Block || special(t.Cond) {
			continue
		}
		tlo, thi := span(t, band.Unit)
		hlo, hhi := h.Value.Interval()
		if thi/hlo < band.Lo || tlo/hhi > band.Hi {
			l.find("%s at %s HB makes %.0f %s per HB; the family lies at %.0f to %.0f",
				[]any{t.Value, h.Value.Number(), (tlo + thi) / (hlo + hhi), band.Unit.Symbol(), band.Lo, band.Hi}, h, t)
		}
	}
}

func fatigueBelowTensile(l *look) {
	for _, f := range l.room(props.FatigueStrength) {
		for _, t := range l.room(props.TensileStrength) {
			flo, _ := span(f, units.MPa)
			_, thi := span(t, units.MPa)
			if f.Basis == t.Basis && !special(t.Cond) && f.Block.Source == t.Block.Source && flo > 0.65*thi {
				l.find("fatigue strength %s is %.2f of the tensile strength %s", []any{f.Value, flo / thi, t.Value}, f, t)
				return
			}
		}
	}
}

func compressionAgainstTensile(l *look) {
	for _, b := range l.bandsOf(props.CompressivePerTensile) {
		for _, c := range l.room(props.CompressiveStrength) {
			for _, t := range l.room(props.TensileStrength) {
				if c.Basis != t.Basis || c.Block != t.Block || special(t.Cond) {
					continue
				}
				clo, chi := span(c, units.MPa)
				tlo, thi := span(t, units.MPa)
				if chi/tlo < b.Value.Lo || clo/thi > b.Value.Hi {
					l.find("compressive strength %s is %.1f times the tensile strength %s", []any{c.Value, (clo + chi) / (tlo + thi), t.Value}, c, t)
				}
			}
		}
	}
}

// repeated finds one source printing two values for the same test, and values
// printed in two systems of units that do not agree to their digits.
func repeated(l *look, otherUnit bool) {
	for _, p := range props.Properties() {
		list := l.figures[p]
		for i, a := range list {
			for _, b := range list[i+1:] {
				if a.Source != b.Source || a.Basis != b.Basis || !sameTest(a.Cond, b.Cond) || (a.Value.Unit != b.Value.Unit) != otherUnit ||
					a.Value.Unit.Dimension() != b.Value.Unit.Dimension() {
					continue
				}
				alo, ahi := span(a, b.Value.Unit)
				blo, bhi := span(b, b.Value.Unit)
				if a.Value.Lo != a.Value.Hi || b.Value.Lo != b.Value.Hi {
					// A range is printed to its last digit at either end.
					half := (bhi - blo) * 0.02
					alo, ahi = alo-half, ahi+half
				}
				if ahi < blo || bhi < alo {
					l.find("%s and %s from the same source (%s)", []any{a.Value, b.Value, a.Source.ID}, a, b)
				}
			}
		}
	}
}

// sameTest compares conditions but for how their temperatures are printed.
func sameTest(a, b *props.Conditions) bool {
	x, y := *a, *b
	if x.HasRange && y.HasRange && math.Abs(x.FromC-y.FromC) < 1 && math.Abs(x.ToC-y.ToC) < 1 {
		x, y = x.WithoutRange(), y.WithoutRange()
	}
	return x == y
}
