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
	m.sayf("baseline: %s", m.now().Bench.Pins[i].Name())
}

func (m *Model) removePin() {
	pin, i := m.cursorPin(), m.cursorIndex()
	if pin == nil {
		return
	}
	m.change(func(b *compare.Bench) { b.Remove(i) })
	m.sayf("removed %s; u brings it back", pin.Name())
}

// pin puts a material on the bench, or goes to it where it is there already.
func (m *Model) pin(mat *props.Material) {
	if slices.Contains(m.now().Bench.Pins, mat) {
		m.sayf("%s is on the bench already", mat.Name())
	} else {
		m.change(func(b *compare.Bench) { b.Pin(mat) })
		m.sayf("pinned %s", mat.Name())
	}
	m.goTo(mat, m.cursorProperty())
}

func (m *Model) flipTemper(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextTemper, "temper by this process")
}

func (m *Model) flipProcess(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextProcess, "process")
}

func (m *Model) flipAlloy(d catalog.Direction) {
	m.flip(d, m.o.Catalog.NextAlloy, "alloy of the family by this process")
}

// flip puts the next variant that is not on the bench yet in the place of the
// pin.
func (m *Model) flip(d catalog.Direction, next func(*props.Material, catalog.Direction) *props.Material, what string) {
	pin, i := m.cursorPin(), m.cursorIndex()
	if pin == nil {
		return
	}
	seen := map[*props.Material]bool{pin: true}
	for v := next(pin, d); !seen[v]; v = next(v, d) {
		seen[v] = true
		if slices.Contains(m.now().Bench.Pins, v) {
			continue
		}
		property := m.cursorProperty()
		m.change(func(b *compare.Bench) { b.Replace(i, v) })
		m.goTo(v, property)
		m.sayf("%s, was %s", v.Name(), pin.Name())
		return
	}
	if len(seen) > 1 {
		m.warnf("%s: every other %s is on the bench already", pin.Name(), what)
	} else {
		m.warnf("%s: no other %s in the catalog", pin.Name(), what)
	}
}

// movePin shifts the pin under the cursor by one place as displayed. The
// baseline always stands at the left.
func (m *Model) movePin(d catalog.Direction) {
	to := m.col + int(d)
	switch {
	case m.col == 0:
		m.warn("the baseline stays at the left; b on another pin makes that the baseline")
		return
	case to < 1 || to >= len(m.now().Bench.Pins):
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

func (m *Model) nextSystem() {
	m.change(func(b *compare.Bench) { b.System = (b.System + 1) % (units.CGS + 1) })
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
		m.warn("a need has the unit and direction it was typed with; n edits it")
		return true
	case m.cursorDuty() != nil:
		m.warn("a merit is a ratio to the baseline: no unit, and more is better")
		return true
	}
	return false
}

func (m *Model) nextRowUnit() {
	row := m.cursorRow()
	if m.ownRow() {
		return
	}
	if row == nil {
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

func (m *Model) nextDelta() {
	m.change(func(b *compare.Bench) { b.Delta = b.Delta.Next() })
	m.sayf("delta: %s", m.now().Bench.Delta)
}

func (m *Model) nextBasis() {
	m.change(func(b *compare.Bench) {
		if b.Basis == compare.MinimumOnly {
			b.Basis = compare.TypicalFirst
		} else {
			b.Basis = compare.MinimumOnly
		}
	})
	if m.now().Bench.Basis == compare.MinimumOnly {
		m.say("specified minimums only, for what standards specify")
	} else {
		m.say("typical figures first, else the next basis that both share")
	}
}

func (m *Model) nextFilter() {
	m.change(func(b *compare.Bench) {
		switch {
		case !b.HideLevel && !b.HideEmpty:
			b.HideLevel = true
		case b.HideLevel && !b.HideEmpty:
			b.HideLevel, b.HideEmpty = false, true
		case !b.HideLevel:
			b.HideLevel = true
		default:
			b.HideLevel, b.HideEmpty = false, false
		}
	})
	m.sayf("%s (%s shown)", filterWords(&m.now().Bench), ui.Plural(len(m.table.Lines), "row"))
}

func (m *Model) page(by int) {
	n := m.body - 1
	m.top = ui.Clamp(m.top+by*n, 0, max(len(m.grid.Rows)-m.body, 0))
	m.moveRow(by * n)
}

// cursorRow is the worked-out row under the cursor; nil when there is none.
func (m *Model) cursorRow() *compare.Row {
	p := m.cursorProperty()
	for i := range m.comparison.Rows {
		if m.comparison.Rows[i].Property == p && p != props.NoProperty {
			return &m.comparison.Rows[i]
		}
	}
	return nil
}

// pasteMaterials pins every material that a pasted text names, one a line or
// separated by commas or tabs.
func (m *Model) pasteMaterials(text string) {
	var found []*props.Material
	var unknown, near []string
	for _, name := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("\n\r\t,;", r) }) {
		name = strings.TrimSpace(name)
		if name == "" {
			continue
		}
		mat, named, err := m.o.Catalog.ResolveNear(name)
		switch {
		case err != nil:
			unknown = append(unknown, err.Error())
			continue
		case !named:
			near = append(near, fmt.Sprintf("; %s is taken as %s", name, mat.ID))
		}
		found = append(found, mat)
		if len(found)+len(unknown) >= 100 {
			break
		}
	}
	var last *props.Material
	m.change(func(b *compare.Bench) {
		for _, mat := range found {
			b.Pin(mat)
			last = mat
		}
	})
	if last != nil {
		m.goTo(last, m.cursorProperty())
	}
	switch {
	case len(unknown) > 0:
		m.warnf("pinned %d%s; %s", len(found), strings.Join(near, ""), strings.Join(unknown, "; "))
	case len(found) > 0:
		m.sayf("pinned %d from the paste%s", len(found), strings.Join(near, ""))
	}
}
