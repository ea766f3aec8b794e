// Package audit questions a catalog's figures by physics: relations that hold
// between properties, and the bands in which a family of metals lies. A
// finding is a reason to look at the source again, never a reason to change a
// published figure; it is corrected in the data, or kept with a written reason.
package audit

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// Finding is one figure, or a pair, that a rule questions.
type Finding struct {
	Rule     string
	Material *props.Material
	Property props.PropertyID
	Message  string
	Why      string // the written reason, when there is one
	File     string
	Line     int // of the block that holds the figure
}

// Open reports whether the finding still waits for a correction or a reason.
func (f *Finding) Open() bool { return f.Why == "" }

func (f *Finding) String() string {
	s := fmt.Sprintf("%s:%d: %s, %s: %s [%s]", f.File, f.Line, f.Material.ID, f.Property, f.Message, f.Rule)
	if f.Why != "" {
		s += "\n    kept: " + f.Why
	}
	return s
}

// Rule is one question put to every material.
type Rule struct {
	ID     string
	Says   string // the relation with its tolerance
	Source string // where the relation is published
	check  func(*look)
}

// Rules lists the rules in the order in which they are put.
func Rules() []Rule { return rules }

// Check puts every rule to every material. Inherited figures are questioned
// once, at the first material that shows the finding.
func Check(c *catalog.Catalog) []*Finding {
	l := &look{seen: map[string]bool{}, used: map[*props.Explained]bool{}, usual: usualValues(c)}
	for _, m := range c.Materials {
		l.m = m
		l.figures = [props.PropertyCount][]*props.Figure{}
		for _, p := range props.Properties() {
			l.figures[p] = m.Figures(p)
		}
		for i := range rules {
			l.rule = &rules[i]
			rules[i].check(l)
		}
	}
	unused(c, l)
	slices.SortStableFunc(l.found, func(a, b *Finding) int { return cmp.Or(strings.Compare(a.File, b.File), a.Line-b.Line) })
	return l.found
}

// look is the material being questioned and what was found so far.
type look struct {
	m       *props.Material
	rule    *Rule
	figures [props.PropertyCount][]*props.Figure
	usual   map[usualKey]interval
	found   []*Finding
	seen    map[string]bool
	used    map[*props.Explained]bool
}

// find records a finding on figures; the first of them is where it stands.
func (l *look) find(format string, args []any, figs ...*props.Figure) {
	key := l.rule.ID
	for _, f := range figs {
		key += fmt.Sprintf("|%p", f)
	}
	if l.seen[key] {
		return
	}
	l.seen[key] = true
	f := figs[0]
	l.found = append(l.found, &Finding{Rule: l.rule.ID, Material: l.m, Property: f.Property,
		Message: fmt.Sprintf(format, args...), Why: l.reason(f.Property), File: f.Block.File, Line: f.Block.Line})
}

// reason looks for a written reason of the material, then of its alloy.
func (l *look) reason(p props.PropertyID) string {
	for _, list := range [][]props.Explained{l.m.Explained, l.m.Alloy.Explained} {
		for i := range list {
			e := &list[i]
			if e.Rule == l.rule.ID && (e.Property == props.NoProperty || e.Property == p) {
				l.used[e] = true
				return e.Why
			}
		}
	}
	return ""
}

// unused reports written reasons that no finding needs any more, so that a
// corrected figure does not leave its excuse behind.
func unused(c *catalog.Catalog, l *look) {
	l.rule = &Rule{ID: "reason"}
	for i, m := range c.Materials {
		l.m = m
		lists := [][]props.Explained{m.Explained}
		if i == 0 || m.Alloy != c.Materials[i-1].Alloy {
			lists = append(lists, m.Alloy.Explained)
		}
		for _, list := range lists {
			for i := range list {
				if !l.used[&list[i]] {
					l.found = append(l.found, &Finding{Rule: "reason", Material: m, Property: list[i].Property, File: m.Alloy.File, Line: m.Alloy.Line,
						Message: fmt.Sprintf("a reason is written for rule %q, but the rule finds nothing; delete it", list[i].Rule)})
				}
			}
		}
	}
}

// span is a figure's interval in a unit.
func span(f *props.Figure, u units.Unit) (lo, hi float64) {
	lo, hi = f.Value.Interval()
	lo, hi = u.FromSI(f.Value.Unit.ToSI(lo)), u.FromSI(f.Value.Unit.ToSI(hi))
	return min(lo, hi), max(lo, hi)
}

// room lists the figures of a property found at room temperature.
func (l *look) room(p props.PropertyID) []*props.Figure {
	var out []*props.Figure
	for _, f := range l.figures[p] {
		if !f.Cond.HasAt || (f.Cond.AtC >= 0 && f.Cond.AtC <= 40) {
			out = append(out, f)
		}
	}
	return out
}

// together reports whether two figures describe the same test series.
func together(a, b *props.Figure) bool {
	x, y := a.Cond, b.Cond
	return a.Block == b.Block && x.AtC == y.AtC && x.Hours == y.Hours && x.Section == y.Section && x.Class == y.Class && x.Bar == y.Bar
}
