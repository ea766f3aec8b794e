package tui

import (
	"alongside/props"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/tui/ui"
)

// cursorPin is the material under the cursor, nil on an empty bench.
func (m *Model) cursorPin() *props.Material {
	if i := m.cursorIndex(); i >= 0 {
		return m.now().Bench.Pins[i]
	}
	return nil
}

// cursorIndex is the place of that material among the pins; -1 when there is
// none.
func (m *Model) cursorIndex() int {
	if order := m.order(); m.col < len(order) {
		return order[m.col]
	}
	return -1
}

// order lists the pins as displayed: the baseline, then the others.
func (m *Model) order() []int {
	if len(m.now().Bench.Pins) == 0 {
		return nil
	}
	order := []int{m.now().Bench.Baseline}
	for i := range m.now().Bench.Pins {
		if i != m.now().Bench.Baseline {
			order = append(order, i)
		}
	}
	return order
}

// cursorProperty is the property under the cursor, NoProperty when no row is
// shown.
func (m *Model) cursorProperty() props.PropertyID {
	if l := m.cursorLine(); l != nil {
		return l.Property
	}
	return props.NoProperty
}

// cursorLine is the row under the cursor; nil where there is none.
func (m *Model) cursorLine() *report.Line {
	if m.row < len(m.table.Lines) {
		return &m.table.Lines[m.row]
	}
	return nil
}

// cursorNeed is the limit whose row is under the cursor, nil on other rows.
func (m *Model) cursorNeed() *needs.Need {
	if l := m.cursorLine(); l != nil {
		return l.Need
	}
	return nil
}

// cursorDuty is the duty whose merit row is under the cursor, nil on other
// rows.
func (m *Model) cursorDuty() *needs.Duty {
	if l := m.cursorLine(); l != nil {
		return l.Duty
	}
	return nil
}

// goTo puts the cursor on a material and a property where they are on the
// screen; else it stays as near as it can.
func (m *Model) goTo(pin *props.Material, property props.PropertyID) {
	for at, i := range m.order() {
		if m.now().Bench.Pins[i] == pin {
			m.col = at
		}
	}
	if m.cursorProperty() == property && property != props.NoProperty {
		return // a row of the same property: a need keeps the cursor
	}
	for i := range m.table.Lines {
		if l := &m.table.Lines[i]; l.OfProperty() && l.Property <= property {
			m.row = i
		}
	}
}

// settle keeps the cursor on the table and the scrolling on the cursor.
func (m *Model) settle() {
	g := m.grid
	m.row = ui.Clamp(m.row, 0, len(m.table.Lines)-1)
	m.col = ui.Clamp(m.col, 0, len(g.Columns)-1)
	if n := m.body; n > 0 && m.row < len(g.RowOf) {
		r := g.RowOf[m.row]
		if r >= m.top+n {
			m.top = r - n + 1
		}
		if r > 0 && g.Rows[r-1].Line < 0 {
			r-- // with the heading of its group
		}
		m.top = ui.Clamp(min(m.top, r), 0, len(g.Rows)-n)
	}
	m.first = ui.Clamp(m.first, 1, len(g.Columns)-1)
	if m.col > 0 {
		m.first = min(m.first, m.col)
		for m.col >= m.first+g.Fit(m.first) {
			m.first++
		}
	}
	// No empty room at the right while pins are off the screen at the left.
	for m.first > 1 && m.first-1+g.Fit(m.first-1) >= len(g.Columns) {
		m.first--
	}
	m.first = max(m.first, 1)
}

func (m *Model) moveRow(by int) { m.row = ui.Clamp(m.row+by, 0, len(m.table.Lines)-1) }
func (m *Model) moveCol(by int) { m.goToPin(ui.Clamp(m.col+by, 0, len(m.now().Bench.Pins)-1)) }

// goToPin goes to a pin as displayed. The baseline is always in sight; going
// to it brings its neighbors back too.
func (m *Model) goToPin(at int) {
	m.col = at
	if at == 0 {
		m.first = 1
	}
}

// nextPin steps through the pins and goes round at the end.
func (m *Model) nextPin(by int) {
	if n := len(m.now().Bench.Pins); n > 0 {
		m.goToPin((m.col + by + n) % n)
	}
}
