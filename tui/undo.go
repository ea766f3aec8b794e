package tui

import (
	"reflect"

	"alongside/props"
	"alongside/props/report"
)

// undoDepth is how many changes can be taken back.
const undoDepth = 200

// change applies f to a copy of the bench. When that differs from the bench,
// it becomes the bench, and the old one can be got back with undo. It reports
// whether anything changed.
func (m *Model) change(f func(*props.Bench)) bool {
	next := m.bench.Clone()
	f(&next)
	if same(m.bench, next) {
		return false
	}
	m.past = append(m.past, m.bench)
	if len(m.past) > undoDepth {
		m.past = append(m.past[:0], m.past[len(m.past)-undoDepth:]...)
	}
	m.future = nil
	m.put(next)
	return true
}

func same(a, b props.Bench) bool { return reflect.DeepEqual(a.Clone(), b.Clone()) }

// put shows another bench, with the cursor on the same material and property
// where they are still there.
func (m *Model) put(b props.Bench) {
	pin, property := m.cursorPin(), m.cursorProperty()
	m.bench = b
	m.rework()
	m.goTo(pin, property)
}

// rework compares the bench anew. Everything drawn from it is made again.
func (m *Model) rework() {
	m.comparison = props.Compare(m.bench)
	m.table = report.NewTable(m.comparison)
	m.grid = nil
	m.find.brief = nil
}

func (m *Model) undo() {
	if len(m.past) == 0 {
		m.warn("nothing to undo")
		return
	}
	last := m.past[len(m.past)-1]
	m.past, m.future = m.past[:len(m.past)-1], append(m.future, m.bench)
	m.put(last)
	m.sayf("undone; ctrl+r brings it back (%d more to undo)", len(m.past))
}

func (m *Model) redo() {
	if len(m.future) == 0 {
		m.warn("nothing to redo")
		return
	}
	next := m.future[len(m.future)-1]
	m.future, m.past = m.future[:len(m.future)-1], append(m.past, m.bench)
	m.put(next)
	m.say("done again")
}
