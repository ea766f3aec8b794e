package tui

import (
	"reflect"
	"slices"

	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/props/swap"
	"alongside/props/watch"
)

// undoDepth is how many changes can be taken back.
const undoDepth = 200

// job is what the user has set up, and what undo brings back: the bench, the
// customer's limits, the duties whose merit is shown, the part with what it has
// and goes through, and the watch-outs put aside. It is never changed in place.
type job struct {
	bench  compare.Bench
	needs  []needs.Need
	duties []*needs.Duty
	part   swap.Part
	facts  watch.Facts
	aside  []string // ids of watch-outs
}

func (m *Model) job() job { return job{m.bench, m.needs, m.duties, m.part, m.facts, m.aside} }

func (j job) clone() job {
	return job{j.bench.Clone(), slices.Clone(j.needs), slices.Clone(j.duties), j.part.Clone(), j.facts, slices.Clone(j.aside)}
}

func (j job) same(o job) bool {
	return same(j.bench, o.bench) && reflect.DeepEqual(j.needs, o.needs) && slices.Equal(j.duties, o.duties) &&
		reflect.DeepEqual(j.part.Clone(), o.part.Clone()) && j.facts == o.facts && slices.Equal(j.aside, o.aside)
}

// change applies f to a copy of the bench. When that differs from the bench,
// it becomes the bench, and the old one can be got back with undo. It reports
// whether anything changed.
func (m *Model) change(f func(*compare.Bench)) bool {
	return m.changeJob(func(j *job) { f(&j.bench) })
}

// changeJob is change for all that undo brings back. f gets copies.
func (m *Model) changeJob(f func(*job)) bool {
	next := m.job().clone()
	f(&next)
	if next.same(m.job()) {
		return false
	}
	m.past = append(m.past, m.job())
	if len(m.past) > undoDepth {
		m.past = append(m.past[:0], m.past[len(m.past)-undoDepth:]...)
	}
	m.future = nil
	m.put(next)
	return true
}

func same(a, b compare.Bench) bool { return reflect.DeepEqual(a.Clone(), b.Clone()) }

// put shows another job, with the cursor on the same material and property
// where they are still there.
func (m *Model) put(j job) {
	pin, property := m.cursorPin(), m.cursorProperty()
	m.bench, m.needs, m.duties = j.bench, j.needs, j.duties
	m.part, m.facts, m.aside = j.part, j.facts, j.aside
	m.rework()
	m.goTo(pin, property)
}

// rework compares the bench anew. Everything drawn from it is made again.
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
	if len(m.past) == 0 {
		m.warn("nothing to undo")
		return
	}
	last := m.past[len(m.past)-1]
	m.past, m.future = m.past[:len(m.past)-1], append(m.future, m.job())
	m.put(last)
	m.sayf("undone; ctrl+r brings it back (%d more to undo)", len(m.past))
}

func (m *Model) redo() {
	if len(m.future) == 0 {
		m.warn("nothing to redo")
		return
	}
	next := m.future[len(m.future)-1]
	m.future, m.past = m.future[:len(m.future)-1], append(m.past, m.job())
	m.put(next)
	m.say("done again")
}
