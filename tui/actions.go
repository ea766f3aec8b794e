package tui

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
	"alongside/units"
)

func (m *Model) setBaseline() {
	i := m.cursorIndex()
	if i < 0 || i == m.now().Bench.Baseline {
		m.warn("this is the baseline already; go to another pin with ← →")
		return
	}
	m.change(func(b *compare.Bench) { b.Baseline = i })
	m.sayf("baseline: %s", m.pins()[i].Name())
}

func (m *Model) removePin() {
	pin, i := m.cursorPin(), m.cursorIndex()
	if pin == nil || m.inBurst() {
		return
	}
	m.change(func(b *compare.Bench) { b.Remove(i) })
	m.sayf("removed %s; %s brings it back", pin.Name(), m.label("u"))
}

// pin puts materials on the bench, and goes to the last of them.
func (m *Model) pin(list ...*props.Material) {
	before := len(m.pins())
	m.change(func(b *compare.Bench) {
		for _, mat := range list {
			b.Pin(mat)
		}
	})
	last := list[len(list)-1]
	switch n := len(m.pins()) - before; {
	case n == 0 && len(list) == 1:
		m.sayf("%s is on the bench already", last.Name())
	case len(list) == 1:
		m.sayf("pinned %s", last.Name())
	default:
		m.sayf("pinned %d, on the bench before %d", n, len(list)-n)
	}
	m.goTo(last, m.cursorProperty())
}

func (m *Model) flipTemper(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextTemper, "temper by this process", "temper")
}

func (m *Model) flipProcess(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextProcess, "process", "process")
}

func (m *Model) flipAlloy(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextAlloy, "alloy of the family by this process", "")
}

// flip puts the next variant that is not on the bench yet in the place of the
// pin. Where there are more than two of them a menu asks, if they have a name for it.
func (m *Model) flip(d catalog.Direction, next func(*props.Material, catalog.Direction) *props.Material, what, menu string) {
	pin := m.cursorPin()
	all := []*props.Material{pin}
	for v := next(pin, d); !slices.Contains(all, v); v = next(v, d) {
		all = append(all, v)
	}
	free := slices.DeleteFunc(slices.Clone(all), func(v *props.Material) bool { return slices.Contains(m.pins(), v) })
	switch {
	case menu != "" && len(free) > 2:
		m.open(newVariants(m, "Another "+menu+" for "+pin.Name(), all, d))
	case len(free) > 0:
		m.replace(free[0])
	case len(all) > 1:
		m.warnf("%s: every other %s is on the bench already", pin.Name(), what)
	default:
		m.warnf("%s: no other %s in the catalog", pin.Name(), what)
	}
}

// replace puts a material in the place of the pin under the cursor.
func (m *Model) replace(mat *props.Material) {
	pin, i, property := m.cursorPin(), m.cursorIndex(), m.cursorProperty()
	m.change(func(b *compare.Bench) { b.Replace(i, mat) })
	m.goTo(mat, property)
	m.sayf("%s, was %s", mat.Name(), pin.Name())
}

// movePin shifts the pin under the cursor by one place as displayed. The
// baseline always stands at the left.
func (m *Model) movePin(d catalog.Direction) {
	to := m.col + int(d)
	switch {
	case m.col == 0:
		m.warnf("the baseline stays at the left; %s on another pin makes that the baseline", m.label("b"))
		return
	case to < 1 || to >= len(m.pins()):
		m.warn("no place further that way")
		return
	}
	i := m.cursorIndex()
	m.change(func(b *compare.Bench) {
		for {
			crossed := i+int(d) == b.Baseline
			i = b.Move(i, int(d))
			if !crossed {
				return
			}
		}
	})
}

// nextSystem goes some systems of units on; two on is one back.
func (m *Model) nextSystem(by units.System) {
	m.change(func(b *compare.Bench) { b.System = (b.System + by) % (units.CGS + 1) })
	s := systemName(m.now().Bench.System) + " units"
	if n := len(m.now().Bench.RowUnits); n > 0 {
		s += "; " + ui.Plural(n, "row") + " with a unit of their own stay"
	}
	m.say(s)
}

// ownRow warns on the row of a need or a merit, which has neither a unit nor a
// sense to change.
func (m *Model) ownRow() bool {
	switch {
	case m.cursorNeed() != nil:
		m.warnf("a need has the unit and direction it was typed with; %s edits it", m.label("n"))
		return true
	case m.cursorDuty() != nil:
		m.warn("a merit is a ratio to the baseline: no unit, and more is better")
		return true
	}
	return false
}

func (m *Model) nextRowUnit() {
	row := m.cursorRow()
	if m.ownRow() || row == nil {
		return
	}
	list := report.RowUnits(row)
	if len(list) < 2 {
		m.warnf("%s has one unit only", row.Property.Info().Name)
		return
	}
	at := slices.Index(list, row.Unit)
	u := list[(at+1)%len(list)]
	m.change(func(b *compare.Bench) { setRowUnit(b, row.Property, u) })
	names := make([]string, len(list))
	for i, v := range list {
		names[i] = v.Symbol()
		if v == u {
			names[i] = "[" + names[i] + "]"
		}
	}
	m.say(strings.Join(names, "  "))
}

// setRowUnit gives a row its own unit, or takes it back where that is the one
// of the system.
func setRowUnit(b *compare.Bench, p props.PropertyID, u units.Unit) {
	delete(b.RowUnits, p)
	if b.UnitOf(p) != u {
		b.RowUnits[p] = u
	}
}

func (m *Model) resetRowUnit() {
	if m.ownRow() {
		return
	}
	p := m.cursorProperty()
	if !m.change(func(b *compare.Bench) { delete(b.RowUnits, p) }) {
		m.warnf("%s has the unit of the system already", p.Info().Name)
	}
}

// nextDelta goes some ways of telling a difference on; three on is one back.
func (m *Model) nextDelta(by int) {
	m.change(func(b *compare.Bench) {
		for range by {
			b.Delta = b.Delta.Next()
		}
	})
	m.sayf("delta: %s", m.now().Bench.Delta)
}

func (m *Model) nextBasis() {
	words := "typical figures first, else the next basis that both share"
	m.change(func(b *compare.Bench) {
		if b.Basis == compare.MinimumOnly {
			b.Basis = compare.TypicalFirst
		} else {
			b.Basis, words = compare.MinimumOnly, "specified minimums only, for what standards specify"
		}
	})
	m.say(words)
}

// nextFilter hides rows with nothing to compare, then level ones, then both, then
// none. Where the user has chosen rows, all of them follow, and then those again.
func (m *Model) nextFilter() {
	m.change(func(b *compare.Bench) {
		b.HideEmpty, b.HideLevel = !b.HideEmpty, b.HideEmpty != b.HideLevel
		if round := !b.HideEmpty && !b.HideLevel; round && len(b.Only) > 0 {
			b.Only = nil
		} else if round {
			b.Only = slices.Clone(m.o.Settings.Bench.Only)
		}
	})
	m.sayf("%s (%s shown)", filterWords(&m.now().Bench), ui.Plural(len(m.table.Lines), "row"))
}

// paste takes a text on the bench: materials are pinned; a sentence is read as the
// needs and the part.
func (m *Model) paste(text string) {
	names := splitNames(text)
	if !slices.ContainsFunc(names[:min(len(names), mostNames)], func(name string) bool { found, _ := m.o.Catalog.Named(name); return found != nil }) {
		if said := m.read(text); len(said.Pieces) > len(said.Refused()) {
			p := openNeeds(m, true, ui.NewField(""))
			m.open(p)
			p.take(said)
			return
		}
	}
	m.pasteMaterials(text)
}

// mostNames is how many materials a paste can pin.
const mostNames = 100

// splitNames are the names of a list, one a line or separated by commas or tabs.
func splitNames(text string) []string {
	var out []string
	for _, name := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("\n\r\t,;", r) }) {
		if name = strings.TrimSpace(name); name != "" {
			out = append(out, name)
		}
	}
	return out
}

// pasteMaterials pins every material that a pasted text names.
func (m *Model) pasteMaterials(text string) {
	var found []*props.Material
	var unknown, near []string
	names := splitNames(text)
	left := max(len(names)-mostNames, 0)
	for _, name := range names[:len(names)-left] {
		mat, named, err := m.o.Catalog.ResolveNear(name)
		switch {
		case err != nil:
			unknown = append(unknown, err.Error())
			continue
		case !named:
			near = append(near, fmt.Sprintf("; %s is taken as %s", name, mat.ID))
		}
		found = append(found, mat)
	}
	if len(found) > 0 {
		m.pin(found...)
	}
	switch {
	case left > 0:
		m.warnf("pinned %d of the first %d names of the paste; %d more were left out", len(found), mostNames, left)
	case len(unknown) > 0:
		m.warnf("pinned %d%s; %s", len(found), strings.Join(near, ""), strings.Join(unknown, "; "))
	case len(found) > 0:
		m.sayf("pinned %d from the paste%s", len(found), strings.Join(near, ""))
	}
}
