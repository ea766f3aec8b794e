package main

import (
	"math"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// Outcomes of a row.
const (
	asRead     = "read"
	asAgreed   = "agreed"
	heldSame   = "held out: same value"
	heldOther  = "held out: another value"
	heldNone   = "held out: nothing to compare"
	noMaterial = "no such material"
	absent     = "no such figure"
	otherValue = "another value"
	otherTest  = "other conditions"
	doubtful   = "reader found another value"
	noRule     = "page without a rule, or refused"
	shared     = "figure of a whole class"
	unreadable = "not readable"
)

// match finds the figures of the catalog that give the row's value for the
// same test. Without one, the reason says why not. Its branches are these reasons.
func match(c *catalog.Catalog, r *row) (found []*props.Figure, nearest *props.Figure, reason string) {
	if r.figure == nil {
		return nil, nil, unreadable
	}
	list, whole := materials(c, r)
	class := ofClass(c, r)
	if len(class) > 0 {
		list, whole = class, true
	}
	if len(list) == 0 {
		return nil, nil, noMaterial
	}
	reason = absent
	for _, m := range list {
		for _, f := range m.Figures(r.figure.Property) {
			if f.Basis != r.figure.Basis || (whole && !f.Inherited) || (len(class) > 0 && !f.Family) || slices.Contains(found, f) {
				continue
			}
			wider := f.Family && len(class) == 0 || f.Property.Info().Group == props.Mechanical && !whole && !holdsFor(f.Block, c.Variants(m.Alloy), list)
			why := refusal(r, f, wider)
			if why == "" {
				found = append(found, f)
			} else if n := closeness[why] - closeness[reason]; n > 0 || n == 0 && (why == shared || before(f, nearest)) {
				nearest, reason = f, why
			}
		}
	}
	if len(found) > 0 && r.Agree != "yes" {
		return nil, found[0], doubtful
	}
	return found, nearest, reason
}

// refusal is why a figure is not the row's, "" where it is; wider says that it is stated
// for more than the row speaks of.
func refusal(r *row, f *props.Figure, wider bool) string {
	switch {
	case !sameTest(r, f):
		return otherTest
	case !sameValue(r.figure, f):
		return otherValue
	case wider:
		return shared
	}
	return ""
}

// closeness is how near a figure comes that is refused for a reason.
var closeness = map[string]int{absent: 0, otherTest: 1, otherValue: 2, shared: 3}

// ofClass are the materials of a family or of a class in it that a row speaks
// of: "gray-iron", "cast-steel-carbon".
func ofClass(c *catalog.Catalog, r *row) (list []*props.Material) {
	for _, m := range c.Materials {
		if id := m.Alloy.Family.ID; r.Material == id || r.Material == id+"-"+m.Alloy.Class {
			list = append(list, m)
		}
	}
	return list
}

// before is an order of figures that does not change when they are marked.
func before(a, b *props.Figure) bool {
	return a.Source.ID+a.Value.String() < b.Source.ID+b.Value.String()
}

// materials are those that a row speaks of: one by its id, those of an alloy
// and temper or of an alloy and process, or those of an alloy, narrowed by a
// temper that the row's conditions name. Whole is true where the row holds for
// the alloy, whatever its temper.
func materials(c *catalog.Catalog, r *row) (list []*props.Material, whole bool) {
	id := strings.NewReplacer(" ", "-", "&", "", "investment", "inv").Replace(r.Material)
	if m := c.Material(id); m != nil {
		return []*props.Material{m}, false
	}
	for _, a := range c.Alloys {
		rest, ok := strings.CutPrefix(id, a.ID)
		if !ok {
			continue
		}
		variants := c.Variants(a)
		for _, m := range variants {
			temper := strings.ToLower(strings.NewReplacer(" ", "-", "&", "").Replace(m.Temper))
			if rest != "" && (rest == "-"+temper || rest == "-"+m.Process.ID()) || rest == "" && named(r, m.Temper) {
				list = append(list, m)
			}
		}
		if len(list) > 0 {
			return list, false
		}
		if rest == "" {
			return variants, len(variants) > 1
		}
	}
	return nil, false
}

// named reports whether a row's conditions name a temper.
func named(r *row, temper string) bool {
	return temper != "" && slices.ContainsFunc(strings.Split(r.Conditions, ";"), func(s string) bool {
		s, _, _ = strings.Cut(strings.TrimSpace(s), " at ") // annealed at 870 °C
		return strings.EqualFold(s, temper)
	})
}

// holdsFor reports whether the materials are all those of which a block speaks.
func holdsFor(b *props.Block, variants, list []*props.Material) bool {
	for _, m := range variants {
		admitted := (len(b.Tempers) == 0 || slices.Contains(b.Tempers, m.Temper)) && (len(b.Processes) == 0 || slices.Contains(b.Processes, m.Process))
		if b.Inherited && admitted && !slices.Contains(list, m) {
			return false
		}
	}
	return true
}

// sameValue: either figure, rounded to the digits of the other in its unit, is
// the other. A row with fewer digits than that would prove nothing is refused:
// Poisson's ratio 0.3 is no word on 0.33.
func sameValue(r, f *props.Figure) bool {
	a, b := r.Value, f.Value
	if f.Property == props.HardnessBrinell {
		a.Unit = b.Unit // the load is part of the test
	}
	if a.IsRange() != b.IsRange() {
		return false
	}
	most := 0.02 // half a unit of the last digit, as a fraction of the value
	if a.Unit != b.Unit {
		most = 0.04 // 13 ft·lbf is printed as 18 J
	}
	if math.Pow10(int(a.Place))/2 > most*math.Abs(a.Lo) {
		return a.Unit == b.Unit && a.Lo == b.Lo && a.Hi == b.Hi
	}
	return rounds(a, b) || rounds(b, a)
}

// rounds reports whether a, in the unit and to the digits of b, is b.
func rounds(a, b units.Quantity) bool {
	unit := math.Pow10(int(b.Place))
	same := func(x, y float64) bool {
		converted, err := units.Convert(x, a.Unit, b.Unit)
		return err == nil && math.Abs(converted-y) <= unit*(0.5+1e-9)
	}
	if a.Unit.Reciprocal() != b.Unit.Reciprocal() {
		return same(a.Hi, b.Lo) && same(a.Lo, b.Hi)
	}
	return same(a.Lo, b.Lo) && same(a.Hi, b.Hi)
}

// sameTest reports whether row and figure describe the same test. What one of
// them does not state does not keep them apart, except where figures of one
// material differ by it: class, exposure, temperature, range. A branch a condition.
func sameTest(r *row, f *props.Figure) bool {
	a, b := r.figure.Cond, f.Cond
	near := func(x, y float64) bool { return math.Abs(x-y) <= 4 }
	room := func(has bool, at float64) bool { return !has || (at >= 15 && at <= 35) }
	switch {
	case a.Class != b.Class || a.Hours != b.Hours:
		return false
	case room(a.HasAt, a.AtC) != room(b.HasAt, b.AtC), a.HasAt && b.HasAt && !room(a.HasAt, a.AtC) && !near(a.AtC, b.AtC):
		return false
	case a.Offset != 0 && b.Offset != 0 && (a.Offset != b.Offset || a.UnderLoad != b.UnderLoad):
		return false
	case a.Load != 0 && b.Load != 0 && a.Load/(a.Ball*a.Ball) != b.Load/(b.Ball*b.Ball):
		return false
	case a.Cycles != 0 && b.Cycles != 0 && a.Cycles != b.Cycles:
		return false
	case a.Section != "" && b.Section != "" && plain(a.Section) != plain(b.Section):
		return false
	case a.Bar != "" && b.Bar != "" && a.Bar != b.Bar && cut(a.Bar) != cut(b.Bar):
		return false
	case a.HasRange && b.HasRange:
		return near(a.FromC, b.FromC) && near(a.ToC, b.ToC)
	case a.HasRange != b.HasRange && f.Source.ID != r.Source:
		return false
	}
	return true
}

// cut tells bars taken out of castings from bars cast for the test.
func cut(bar string) bool { return strings.Contains(bar, "casting") || strings.Contains(bar, "area") }

func plain(s string) string {
	return strings.NewReplacer("–", "-", " ", "", "section", "").Replace(s)
}
