package desk

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

// Change changes the bench. It reports whether anything changed.
func (d *Desk) Change(f func(*compare.Bench)) bool {
	return d.ChangeCall(func(c *call.Call) { f(&c.Bench) })
}

// ChangeCall changes anything that the call holds, so that undo brings it back.
func (d *Desk) ChangeCall(f func(*call.Call)) bool {
	return d.step(func() bool { return d.history.Change(f) })
}

// SetPart puts a text into a field of the part.
func (d *Desk) SetPart(f part.Field, text string) error {
	next := d.Now().Part.Clone()
	err := next.Set(d.Catalog, f, text)
	if err == nil {
		d.ChangeCall(func(c *call.Call) { c.Part = next })
	}
	return err
}

// step shows the call that do leads to, with the cursor on the same material and
// property where they are still there. It reports whether do changed anything.
func (d *Desk) step(do func() bool) bool {
	pin, property := d.CursorPin(), d.CursorProperty()
	if !do() {
		return false
	}
	d.keeping.changed = true
	d.rework()
	d.GoTo(pin, property)
	return true
}

// Given is the part read. The form has refused what cannot be read.
func (d *Desk) Given() part.Given {
	g, _ := d.Now().Part.Read(d.Catalog)
	return g
}

// rework compares the bench again, unless only how it is shown has changed.
// Everything drawn from it is made again.
func (d *Desk) rework() {
	now := d.Now().Bench
	if d.Comparison != nil {
		b := &d.Comparison.Bench
		b.Delta, b.HideLevel, b.HideEmpty = now.Delta, now.HideLevel, now.HideEmpty
	}
	if d.Comparison == nil || !(call.Call{Bench: d.Comparison.Bench}).Same(call.Call{Bench: now}) {
		d.Comparison = compare.Compare(now)
	}
	d.Table = report.NewTable(d.Comparison)
	if len(d.Pins()) > 0 {
		above := append(report.NeedLines(d.Pins(), d.Now().Needs), report.MeritLines(&d.Now().Bench, d.Now().Duties)...)
		d.Table.Lines = append(above, d.Table.Lines...)
	}
	d.derived = derived{}
}

// Undo takes the last change of the call back.
func (d *Desk) Undo() {
	if !d.step(d.history.Undo) {
		d.Warn("nothing to undo")
		return
	}
	d.Sayf("undone; %s brings it back (%d more to undo)", d.Label("ctrl+r"), d.Left())
}

// Redo makes the change again that was taken back last.
func (d *Desk) Redo() {
	if !d.step(d.history.Redo) {
		d.Warn("nothing to redo")
		return
	}
	d.Say("done again")
}

// Left is how many changes can be undone.
func (d *Desk) Left() int { return d.history.Left() }

// Pins are the materials on the bench.
func (d *Desk) Pins() []*props.Material { return d.Now().Bench.Pins }

// Baseline is the pin the others are measured against; nil on an empty bench.
func (d *Desk) Baseline() *props.Material { return d.PinAt(0) }

// PinAt is a pin as displayed; nil where there is none.
func (d *Desk) PinAt(at int) *props.Material {
	if order := d.order(); at < len(order) {
		return d.Pins()[order[at]]
	}
	return nil
}

// CursorPin is the material under the cursor, nil on an empty bench.
func (d *Desk) CursorPin() *props.Material { return d.PinAt(d.Col) }

// CursorIndex is the place of that material among the pins; -1 when there is
// none.
func (d *Desk) CursorIndex() int {
	if order := d.order(); d.Col < len(order) {
		return order[d.Col]
	}
	return -1
}

// order lists the pins as displayed: the baseline, then the others.
func (d *Desk) order() []int { return bench.Order(len(d.Pins()), d.Now().Bench.Baseline) }

// CursorLine is the row under the cursor; one without a property, a need or a
// duty where there is none.
func (d *Desk) CursorLine() *report.Line {
	if d.Rows.At < len(d.Table.Lines) {
		return &d.Table.Lines[d.Rows.At]
	}
	return &report.Line{}
}

// CursorProperty is the property under the cursor, NoProperty when no row is
// shown.
func (d *Desk) CursorProperty() props.PropertyID { return d.CursorLine().Property }

// CursorNeed is the limit whose row is under the cursor, nil on other rows.
func (d *Desk) CursorNeed() *needs.Need { return d.CursorLine().Need }

// CursorDuty is the duty whose merit row is under the cursor, nil on other rows.
func (d *Desk) CursorDuty() *needs.Duty { return d.CursorLine().Duty }

// CursorRow is the worked-out row under the cursor; nil when there is none.
func (d *Desk) CursorRow() *compare.Row {
	p := d.CursorProperty()
	for i := range d.Comparison.Rows {
		if d.Comparison.Rows[i].Property == p && p != props.NoProperty {
			return &d.Comparison.Rows[i]
		}
	}
	return nil
}

// GoTo puts the cursor on a material and a property where they are on the
// screen; else it stays as near as it can.
func (d *Desk) GoTo(pin *props.Material, property props.PropertyID) {
	for at := range d.Pins() {
		if d.PinAt(at) == pin {
			d.Col = at
		}
	}
	if d.CursorProperty() == property && property != props.NoProperty {
		return // a row of the same property: a need keeps the cursor
	}
	for i := range d.Table.Lines {
		if l := &d.Table.Lines[i]; l.OfProperty() && l.Property <= property {
			d.Rows.At = i
		}
	}
}

// MoveTo goes to another pin as displayed, of those from one on: on to the
// last, or round the end.
func (d *Desk) MoveTo(by, least int, round bool) {
	n, at := len(d.Pins())-least, max(d.Col, least)-least+by
	if n < 1 {
		return
	}
	if round {
		at = (at + n) % n
	}
	d.GoToPin(ui.Clamp(at, 0, n-1) + least)
}

// GoToPin goes to a pin as displayed. The baseline is always in sight; going
// to it brings its neighbors back too.
func (d *Desk) GoToPin(at int) {
	d.Col = at
	if at == 0 {
		d.First = 1
	}
}

// PinKeys go to another pin, for panels: beside the baseline in those that set
// one pin against it. They follow the bench's cursor, and the bench follows
// them.
func (d *Desk) PinKeys(beside bool) ui.Keys {
	least := 0
	if beside {
		least = 1
	}
	on := func(names, line, words string, by int, round bool) ui.Key {
		return ui.On(names, line, words, func() { d.MoveTo(by, least, round) })
	}
	return ui.Keys{
		on("left h", "pin", "another pin; also tab", -1, false).As("←→"),
		on("right l", "", "", 1, false),
		on("tab", "", "", 1, true),
		on("shift+tab", "", "", -1, true),
	}
}
