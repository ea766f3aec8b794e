package tui

import (
	"alongside/props"
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// change changes the bench. It reports whether anything changed.
func (m *Model) change(f func(*compare.Bench)) bool {
	return m.changeCall(func(c *call.Call) { f(&c.Bench) })
}

// changeCall changes anything that the call holds, so that undo brings it back.
func (m *Model) changeCall(f func(*call.Call)) bool {
	return m.step(func() bool { return m.history.Change(f) })
}

// setPart puts a text into a field of the part.
func (m *Model) setPart(f part.Field, text string) error {
	next := m.now().Part.Clone()
	err := next.Set(m.o.Catalog, f, text)
	if err == nil {
		m.changeCall(func(c *call.Call) { c.Part = next })
	}
	return err
}

// step shows the call that do leads to, with the cursor on the same material and
// property where they are still there. It reports whether do changed anything.
func (m *Model) step(do func() bool) bool {
	pin, property := m.cursorPin(), m.cursorProperty()
	if !do() {
		return false
	}
	m.keeping.changed = true
	m.rework()
	m.goTo(pin, property)
	return true
}

// given is the part read. The form has refused what cannot be read.
func (m *Model) given() part.Given {
	g, _ := m.now().Part.Read(m.o.Catalog)
	return g
}

// rework compares the bench again, unless only how it is shown has changed.
// Everything drawn from it is made again.
func (m *Model) rework() {
	now := m.now().Bench
	if m.comparison != nil {
		b := &m.comparison.Bench
		b.Delta, b.HideLevel, b.HideEmpty = now.Delta, now.HideLevel, now.HideEmpty
	}
	if m.comparison == nil || !(call.Call{Bench: m.comparison.Bench}).Same(call.Call{Bench: now}) {
		m.comparison = compare.Compare(now)
	}
	m.table = report.NewTable(m.comparison)
	if len(m.pins()) > 0 {
		above := append(report.NeedLines(m.pins(), m.now().Needs), report.MeritLines(&m.now().Bench, m.now().Duties)...)
		m.table.Lines = append(above, m.table.Lines...)
	}
	m.grid, m.derived = nil, derived{}
}

func (m *Model) undo() {
	if !m.step(m.history.Undo) {
		m.warn("nothing to undo")
		return
	}
	m.sayf("undone; %s brings it back (%d more to undo)", m.label("ctrl+r"), m.history.Left())
}

func (m *Model) redo() {
	if !m.step(m.history.Redo) {
		m.warn("nothing to redo")
		return
	}
	m.say("done again")
}

func (m *Model) pins() []*props.Material { return m.now().Bench.Pins }

// baseline is the pin the others are measured against; nil on an empty bench.
func (m *Model) baseline() *props.Material { return m.pinAt(0) }

// pinAt is a pin as displayed; nil where there is none.
func (m *Model) pinAt(at int) *props.Material {
	if order := m.order(); at < len(order) {
		return m.pins()[order[at]]
	}
	return nil
}

// cursorPin is the material under the cursor, nil on an empty bench.
func (m *Model) cursorPin() *props.Material { return m.pinAt(m.col) }

// cursorIndex is the place of that material among the pins; -1 when there is
// none.
func (m *Model) cursorIndex() int {
	if order := m.order(); m.col < len(order) {
		return order[m.col]
	}
	return -1
}

// order lists the pins as displayed: the baseline, then the others.
func (m *Model) order() []int { return bench.Order(len(m.pins()), m.now().Bench.Baseline) }

// cursorLine is the row under the cursor; one without a property, a need or a
// duty where there is none.
func (m *Model) cursorLine() *report.Line {
	if m.rows.At < len(m.table.Lines) {
		return &m.table.Lines[m.rows.At]
	}
	return &report.Line{}
}

// cursorProperty is the property under the cursor, NoProperty when no row is
// shown.
func (m *Model) cursorProperty() props.PropertyID { return m.cursorLine().Property }

// cursorNeed is the limit whose row is under the cursor, nil on other rows.
func (m *Model) cursorNeed() *needs.Need { return m.cursorLine().Need }

// cursorDuty is the duty whose merit row is under the cursor, nil on other rows.
func (m *Model) cursorDuty() *needs.Duty { return m.cursorLine().Duty }

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

// goTo puts the cursor on a material and a property where they are on the
// screen; else it stays as near as it can.
func (m *Model) goTo(pin *props.Material, property props.PropertyID) {
	for at := range m.pins() {
		if m.pinAt(at) == pin {
			m.col = at
		}
	}
	if m.cursorProperty() == property && property != props.NoProperty {
		return // a row of the same property: a need keeps the cursor
	}
	for i := range m.table.Lines {
		if l := &m.table.Lines[i]; l.OfProperty() && l.Property <= property {
			m.rows.At = i
		}
	}
}

// moveTo goes to another pin as displayed, of those from one on: on to the
// last, or round the end.
func (m *Model) moveTo(by, least int, round bool) {
	n, at := len(m.pins())-least, max(m.col, least)-least+by
	if n < 1 {
		return
	}
	if round {
		at = (at + n) % n
	}
	m.goToPin(ui.Clamp(at, 0, n-1) + least)
}

// goToPin goes to a pin as displayed. The baseline is always in sight; going
// to it brings its neighbors back too.
func (m *Model) goToPin(at int) {
	m.col = at
	if at == 0 {
		m.first = 1
	}
}

// pinKeys go to another pin, for panels: beside the baseline in those that set
// one pin against it. They follow the bench's cursor, and the bench follows
// them.
func (m *Model) pinKeys(beside bool) ui.Keys {
	least := 0
	if beside {
		least = 1
	}
	on := func(names, line, words string, by int, round bool) ui.Key {
		return ui.On(names, line, words, func() { m.moveTo(by, least, round) })
	}
	return ui.Keys{
		on("left h", "pin", "another pin; also tab", -1, false).As("←→"),
		on("right l", "", "", 1, false),
		on("tab", "", "", 1, true),
		on("shift+tab", "", "", -1, true),
	}
}
