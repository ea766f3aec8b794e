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
	if !m.history.Change(f) {
		return false
	}
	m.put()
	return true
}

// put shows the call as it is now, with the cursor on the same material and
// property where they are still there.
func (m *Model) put() {
	pin, property := m.cursorPin(), m.cursorProperty()
	c := m.history.Now()
	m.bench, m.needs, m.duties, m.part, m.aside = c.Bench, c.Needs, c.Duties, c.Part, c.Aside
	m.rework()
	m.goTo(pin, property)
}

// given is the part read. The form has refused what cannot be read.
func (m *Model) given() part.Given {
	g, _ := m.part.Read(m.o.Catalog)
	return g
}

// rework compares the bench again. Everything drawn from it is made again.
func (m *Model) rework() {
	m.comparison = compare.Compare(m.bench)
	m.table = report.NewTable(m.comparison)
	if len(m.bench.Pins) > 0 {
		above := append(report.NeedLines(m.bench.Pins, m.needs), report.MeritLines(&m.bench, m.duties)...)
		m.table.Lines = append(above, m.table.Lines...)
	}
	m.grid = nil
	m.finds.brief = nil
	m.swaps, m.processes, m.cautions = nil, nil, nil
}

func (m *Model) undo() {
	if !m.history.Undo() {
		m.warn("nothing to undo")
		return
	}
	m.put()
	m.sayf("undone; ctrl+r brings it back (%d more to undo)", m.history.Left())
}

func (m *Model) redo() {
	if !m.history.Redo() {
		m.warn("nothing to redo")
		return
	}
	m.put()
	m.say("done again")
}
