package tui

import (
	"alongside/tui/bench"

	tea "github.com/charmbracelet/bubbletea"
)

// wheelStep is how many rows one notch of the wheel scrolls.
const wheelStep = 3

func (m *Model) mouse(msg tea.MouseMsg) tea.Cmd {
	if m.tooSmall() || msg.Action == tea.MouseActionMotion || m.grid == nil {
		return nil
	}
	if s := m.onTop(); s != nil {
		msg.Y -= m.height - 2 - m.panel
		return s.Update(msg)
	}
	switch msg.Button {
	case tea.MouseButtonWheelUp, tea.MouseButtonWheelDown:
		by := wheelStep
		if msg.Button == tea.MouseButtonWheelUp {
			by = -by
		}
		if msg.Shift {
			m.moveCol(by / wheelStep)
		} else {
			m.moveRow(by)
		}
	case tea.MouseButtonWheelLeft:
		m.moveCol(-1)
	case tea.MouseButtonWheelRight:
		m.moveCol(1)
	case tea.MouseButtonLeft:
		if msg.Action == tea.MouseActionPress {
			return m.click(msg.X, msg.Y)
		}
	}
	return nil
}

// click goes to the cell, row or column at a place of the window; a click on
// the cell under the cursor opens its source card.
func (m *Model) click(x, y int) tea.Cmd {
	col, line := m.columnAt(x), m.lineAt(y)
	if col >= 0 && line >= 0 && col == m.col && line == m.row {
		m.open(newCard(m))
		return nil
	}
	if line >= 0 {
		m.row = line
	}
	if col >= 0 && (line >= 0 || y > 0 && y < headLines) {
		m.col = col
	}
	return nil
}

func (m *Model) columnAt(x int) int {
	at := -1
	edge := m.grid.Labels.Width
	m.eachColumn(func(i int, c *bench.Column) {
		if x >= edge && x < edge+c.Width {
			at = i
		}
		edge += c.Width
	})
	return at
}

func (m *Model) lineAt(y int) int {
	r := m.top + y - headLines
	if y < headLines || y >= headLines+m.body || r >= len(m.grid.Rows) {
		return -1
	}
	return m.grid.Rows[r].Line
}
