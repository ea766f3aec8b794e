package tui

import (
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/report"
)

// change changes the bench. It reports whether anything changed.
func (m *Model) change(f func(*compare.Bench)) bool {
	return m.changeCall(func(c *call.Call) { f(&c.Bench) })
}

// changeCall changes anything that the call holds, so that undo brings it back.
func (m *Model) changeCall(f func(*call.Call)) bool {
	return m.step(func() bool { return m.history.Change(f) })
}

// step shows the call that do leads to, with the cursor on the same material and
// property where they are still there. It reports whether do changed anything.
func (m *Model) step(do func() bool) bool {
	pin, property := m.cursorPin(), m.cursorProperty()
	if !do() {
		return false
	}
	m.rework()
	m.goTo(pin, property)
	return true
}

// given is the part read. The form has refused what cannot be read.
func (m *Model) given() part.Given {
	g, _ := m.now().Part.Read(m.o.Catalog)
	return g
}

// rework compares the bench again. Everything drawn from it is made again.
func (m *Model) rework() {
	m.comparison = compare.Compare(m.now().Bench)
	m.table = report.NewTable(m.comparison)
	if len(m.now().Bench.Pins) > 0 {
		above := append(report.NeedLines(m.now().Bench.Pins, m.now().Needs), report.MeritLines(&m.now().Bench, m.now().Duties)...)
		m.table.Lines = append(above, m.table.Lines...)
	}
	m.grid = nil
	m.finds.brief = nil
	m.swaps, m.processes, m.cautions = nil, nil, nil
}

func (m *Model) undo() {
	if !m.step(m.history.Undo) {
		m.warn("nothing to undo")
		return
	}
	m.sayf("undone; ctrl+r brings it back (%d more to undo)", m.history.Left())
}

func (m *Model) redo() {
	if !m.step(m.history.Redo) {
		m.warn("nothing to redo")
		return
	}
	m.say("done again")
}
