package tui

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
)

// command is what a key does on the bench. The list of commands is the one
// place that knows all keys: the keys line and the help page are made from it.
type command struct {
	key.Binding
	group string
	needs need
	short bool // on the keys line
	do    func(*Model) tea.Cmd
}

// need is what must be there for a command to make sense; its key is off, and
// left out of the keys line, where it is not.
type need uint8

const (
	nothing need = iota
	aPin
	twoPins
	aRow
)

// Groups of the help page.
const (
	pinKeys  = "Pins"
	viewKeys = "What is compared and shown"
	openKeys = "Read and send"
	moveKeys = "Move about"
	progKeys = "Program"
)

func commandList() []*command {
	act := func(f func(*Model)) func(*Model) tea.Cmd {
		return func(m *Model) tea.Cmd { f(m); return nil }
	}
	opens := func(f func(*Model) screen) func(*Model) tea.Cmd {
		return func(m *Model) tea.Cmd {
			if s := f(m); s != nil {
				m.open(s)
			}
			return nil
		}
	}
	step := func(f func(*Model, props.Direction), d props.Direction) func(*Model) tea.Cmd {
		return func(m *Model) tea.Cmd { f(m, d); return nil }
	}
	on := func(keys []string, shown, help string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, help))
	}
	k := func(keys ...string) []string { return keys }
	return []*command{
		{on(k("?"), "?", "all keys"), progKeys, nothing, true, opens(newHelp)},

		{on(k("/", "+", "i"), "/", "pin"), pinKeys, nothing, true, opens(newFinder)},
		{on(k("b"), "b", "baseline"), pinKeys, twoPins, true, act((*Model).setBaseline)},
		{on(k("t"), "t/T", "temper"), pinKeys, aPin, true, step((*Model).flipTemper, props.Forward)},
		{on(k("T"), "", ""), pinKeys, aPin, false, step((*Model).flipTemper, props.Back)},
		{on(k("p"), "p/P", "process"), pinKeys, aPin, true, step((*Model).flipProcess, props.Forward)},
		{on(k("P"), "", ""), pinKeys, aPin, false, step((*Model).flipProcess, props.Back)},
		{on(k("a"), "a/A", "alloy of the family"), pinKeys, aPin, false, step((*Model).flipAlloy, props.Forward)},
		{on(k("A"), "", ""), pinKeys, aPin, false, step((*Model).flipAlloy, props.Back)},
		{on(k("x", "delete"), "x", "remove"), pinKeys, aPin, false, act((*Model).removePin)},
		{on(k("<", "shift+left"), "< >", "move the pin left, right"), pinKeys, twoPins, false, step((*Model).movePin, props.Back)},
		{on(k(">", "shift+right"), "", ""), pinKeys, twoPins, false, step((*Model).movePin, props.Forward)},

		{on(k("s"), "s", "units"), viewKeys, aPin, true, act((*Model).nextSystem)},
		{on(k("r"), "r/R", "unit of this row; R takes it back"), viewKeys, aRow, false, act((*Model).nextRowUnit)},
		{on(k("R"), "", ""), viewKeys, aRow, false, act((*Model).resetRowUnit)},
		{on(k("d"), "d", "delta"), viewKeys, aPin, true, act((*Model).nextDelta)},
		{on(k("m"), "m", "minimums only, or typical first"), viewKeys, aPin, false, act((*Model).nextBasis)},
		{on(k("w"), "w", "which way this row counts: more, less, near a target"), viewKeys, aRow, false, opens(newSense)},
		{on(k("f"), "f", "filter: hide level rows, empty rows, both"), viewKeys, aPin, false, act((*Model).nextFilter)},
		{on(k("e"), "e", "how close counts as level"), viewKeys, aPin, false, opens(newBand)},

		{on(k("enter", "o"), "enter", "source"), openKeys, aRow, true, opens(newCard)},
		{on(k("y"), "y", "copy"), openKeys, aPin, true, (*Model).copyBench},
		{on(k("Y"), "Y", "copy this row at once"), openKeys, aRow, false, (*Model).copyRow},
		{on(k("c"), "c", "copy: choose what and how"), openKeys, aPin, false, opens(newCopy)},
		{on(k("L"), "L", "legend of the signs"), openKeys, nothing, false, opens(newLegend)},

		{on(k("up", "k"), "↑↓ k j", "row"), moveKeys, aRow, false, act(func(m *Model) { m.moveRow(-1) })},
		{on(k("down", "j"), "", ""), moveKeys, aRow, false, act(func(m *Model) { m.moveRow(1) })},
		{on(k("left", "h"), "←→ h l", "pin"), moveKeys, aPin, false, act(func(m *Model) { m.moveCol(-1) })},
		{on(k("right", "l"), "", ""), moveKeys, aPin, false, act(func(m *Model) { m.moveCol(1) })},
		{on(k("tab"), "tab", "next pin, going round; shift+tab back"), moveKeys, aPin, false, act(func(m *Model) { m.nextPin(1) })},
		{on(k("shift+tab"), "", ""), moveKeys, aPin, false, act(func(m *Model) { m.nextPin(-1) })},
		{on(k("home", "0"), "home end", "first, last pin"), moveKeys, aPin, false, act(func(m *Model) { m.col = 0 })},
		{on(k("end", "$"), "", ""), moveKeys, aPin, false, act(func(m *Model) { m.col = len(m.bench.Pins) - 1 })},
		{on(k("pgup", "ctrl+b"), "pgup pgdn", "a page of rows"), moveKeys, aRow, false, act(func(m *Model) { m.page(-1) })},
		{on(k("pgdown", "ctrl+f", " "), "", ""), moveKeys, aRow, false, act(func(m *Model) { m.page(1) })},
		{on(k("g", "ctrl+home"), "g G", "first, last row"), moveKeys, aRow, false, act(func(m *Model) { m.row, m.top = 0, 0 })},
		{on(k("G", "ctrl+end"), "", ""), moveKeys, aRow, false, act(func(m *Model) { m.row = len(m.table.Lines) - 1 })},

		{on(k("u"), "u", "undo"), progKeys, nothing, true, act((*Model).undo)},
		{on(k("ctrl+r"), "ctrl+r", "redo"), progKeys, nothing, false, act((*Model).redo)},
		{on(k("1", "esc"), "1", "the bench"), progKeys, nothing, false, act(func(*Model) {})},
		{on(k("ctrl+z"), "ctrl+z", "suspend"), progKeys, nothing, false, func(*Model) tea.Cmd { return tea.Suspend }},
		{on(k("q", "ctrl+c"), "q", "quit"), progKeys, nothing, true, func(*Model) tea.Cmd { return tea.Quit }},
	}
}

// enable turns the keys on that make sense now. A key that is off is left out
// of the keys line and does nothing.
func (m *Model) enable() {
	for _, c := range m.commands {
		on := true
		switch c.needs {
		case aPin:
			on = len(m.bench.Pins) > 0
		case twoPins:
			on = len(m.bench.Pins) > 1
		case aRow:
			on = len(m.bench.Pins) > 0 && len(m.table.Lines) > 0
		}
		c.SetEnabled(on)
	}
}
