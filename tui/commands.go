package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/catalog"
	"alongside/tui/panel"
)

// commandList is the one place that knows every key of the bench: what it
// does, and what the keys line and the help page say of it. A new screen is
// one line here; one that a digit opens stands on the first line of the window
// too.
func commandList() []*command { return append(workList(), wayList()...) }

func workList() []*command {
	return []*command{
		on(nothing, "/ + i", "pin", opens(panel.NewFinder)).page(pinKeys, "/  + i", "find a material and pin it"),
		on(twoPins, "b", "baseline", act((*Model).setBaseline)).page(pinKeys, "b", "make this pin the baseline"),
		on(aPin, "t", "temper", flips((*Model).flipTemper, catalog.Forward)).page(pinKeys, "t T", "another temper, in place; a menu where there are several"),
		on(aPin, "T", "", flips((*Model).flipTemper, catalog.Back)),
		on(aPin, "p", "process", flips((*Model).flipProcess, catalog.Forward)).page(pinKeys, "p P", "another process, in place"),
		on(aPin, "P", "", flips((*Model).flipProcess, catalog.Back)),
		on(aPin, "a", "alloy", flips((*Model).flipAlloy, catalog.Forward)).page(pinKeys, "a A", "next, previous alloy of the family"),
		on(aPin, "A", "", flips((*Model).flipAlloy, catalog.Back)),
		on(aPin, "x delete", "remove", act((*Model).removePin)).page(pinKeys, "x del", "take this pin off"),
		on(twoPins, "< shift+left", "", flips((*Model).movePin, catalog.Back)).page(pinKeys, "< >", "move this pin left, right"),
		on(twoPins, "> shift+right", "", flips((*Model).movePin, catalog.Forward)),

		on(aPin, "s", "units", act(func(m *Model) { m.nextSystem(1) })).page(viewKeys, "s", "units: US, SI, CGS; alt+s back"),
		on(aPin, "alt+s", "", act(func(m *Model) { m.nextSystem(2) })),
		on(aRow, "r", "", act((*Model).nextRowUnit)).page(viewKeys, "r R", "this row's unit: next, back to the system's"),
		on(aRow, "R", "", act((*Model).resetRowUnit)),
		on(aPin, "d", "delta", act(func(m *Model) { m.nextDelta(1) })).page(viewKeys, "d", "delta: percent, amount, ratio, off; alt+d back"),
		on(aPin, "alt+d", "", act(func(m *Model) { m.nextDelta(3) })),
		on(aPin, "m", "basis", act((*Model).nextBasis)).page(viewKeys, "m", "basis: typical first, minimums only"),
		on(aRow, "w", "", opens(panel.NewSense)).page(viewKeys, "w", "which way this row counts: more, less, target"),
		on(aPin, "e", "", opens(panel.NewBand)).page(viewKeys, "e", "how close counts as level"),
		on(aPin, "S", "", opens(panel.NewService)).page(viewKeys, "S", "service temperature for strength and elongation"),
		on(aPin, "E", "", opens(panel.NewRange)).page(viewKeys, "E", "temperature range for expansion"),
		on(aPin, "f", "", act((*Model).nextFilter)).page(viewKeys, "f", "filter: hide rows with nothing to compare, level ones, both"),

		on(aRow, "enter o", "source", opens(panel.NewCard)).page(openKeys, "enter o", "where this figure comes from"),
		on(aPin, "y", "copy", copies(panel.CopyScreen)).page(openKeys, "y", "copy this pin in the rows in sight, to fit a mail"),
		on(aRow, "Y", "", copies(panel.CopyRow)).page(openKeys, "Y", "copy this row"),
		on(aPin, "c", "", opens(panel.NewCopy)).page(openKeys, "c", "copy: choose what and in which form"),
		on(nothing, "L", "", opens(panel.NewLegend)).page(openKeys, "L", "what the signs mean"),

		on(nothing, "2", "needs", opens(panel.NewNeeds)).page(needKeys, "2", "the customer's limits: type, switch off, order"),
		on(aRow, "n", "need", opens(panel.NewRowNeed)).page(needKeys, "n", "a limit on this row"),
		on(nothing, "3", "candidates", opens(panel.NewCandidates)).page(needKeys, "3", "what meets the needs, and what nearly does"),
		on(aPin, "B", "", act((*Model).betterThanBaseline)).page(needKeys, "B", "needs: beat or equal the baseline on these rows"),
		on(nothing, "4", "swap", opens(panel.NewSwap)).page(partKeys, "4", "what the change of metal does to the part"),
		on(aPin, "5", "process", opens(panel.NewProcess)).page(partKeys, "5", "tolerances, walls, draft, finish, heat treatment"),
		on(nothing, "6", "watch-outs", opens(panel.NewWatch)).page(partKeys, "6", "what to ask about before the change"),
		on(nothing, "7", "brief", opens(panel.NewBrief)).page(openKeys, "7", "one page for the customer, to read out and to copy"),
		on(nothing, "D", "", opens(panel.NewPart)).page(partKeys, "D", "the part: mass, wall, load, service, price"),
		on(nothing, "F", "", opens(panel.NewFacts)).page(partKeys, "F", "its conditions: press fit, threads, pressure …"),
		on(nothing, "M", "", opens(panel.NewDuties)).page(needKeys, "M", "merit for a duty: tie, beam, plate, heat, current"),
	}
}

// wayList is the keys that move about, and those of the program.
func wayList() []*command {
	return []*command{
		on(aRow, "up k", "", act(func(m *Model) { m.Rows.Move(-1) })).page(moveKeys, "↑ ↓ k j", "row"),
		on(aRow, "down j", "", act(func(m *Model) { m.Rows.Move(1) })),
		on(aPin, "left h", "", act(func(m *Model) { m.MoveTo(-1, 0, false) })).page(moveKeys, "← → h l", "pin"),
		on(aPin, "right l", "", act(func(m *Model) { m.MoveTo(1, 0, false) })),
		on(aPin, "tab", "", act(func(m *Model) { m.MoveTo(1, 0, true) })).page(moveKeys, "tab", "next pin, going round; shift+tab back"),
		on(aPin, "shift+tab", "", act(func(m *Model) { m.MoveTo(-1, 0, true) })),
		on(aPin, "home", "", act(func(m *Model) { m.GoToPin(0) })).page(moveKeys, "home end", "first, last pin"),
		on(aPin, "end", "", act(func(m *Model) { m.GoToPin(len(m.Pins()) - 1) })),
		on(aRow, "pgup ctrl+b", "", act(func(m *Model) { m.Rows.Page(-1) })).page(moveKeys, "pgup pgdn", "a page of rows"),
		on(aRow, "pgdown ctrl+f", "", act(func(m *Model) { m.Rows.Page(1) })),
		on(aRow, ":", "find row", act(func(m *Model) { m.find(&m.Rows) })).page(moveKeys, ":", "find a row by words of its name"),
		on(aRow, "g ctrl+home", "", act(func(m *Model) { m.Rows.Move(-len(m.Table.Lines)) })).page(moveKeys, "g G", "first, last row"),
		on(aRow, "G ctrl+end", "", act(func(m *Model) { m.Rows.Move(len(m.Table.Lines)) })),

		on(nothing, "C", "", opens(panel.NewCalls)).page(callKeys, "C", "all calls: open, search, duplicate, delete, new"),
		on(aRow, "v", "", opens(panel.NewPicture)).page(openKeys, "v", "a picture of this row"),
		on(nothing, "K", "", opens(panel.NewName)).page(callKeys, "K", "name of the call"),
		on(nothing, "W", "", opens(panel.NewSaid)).page(callKeys, "W", "the customer's words"),
		on(nothing, "N", "", opens(panel.NewNote)).page(callKeys, "N", "a note, with the time"),

		on(nothing, "u", "undo", act((*Model).Undo)).page(progKeys, "u", "undo the last change of the bench"),
		on(nothing, "ctrl+r", "", act((*Model).Redo)).page(progKeys, "ctrl+r", "redo"),
		on(nothing, "? f1", "keys", act((*Model).openHelp)).page(progKeys, "? f1", "this page; in a panel its own keys first"),
		on(nothing, "1 esc", "", act(func(*Model) {})).page(progKeys, "esc 1", "back to the bench"),
		on(always, "ctrl+z", "", func(*Model) tea.Cmd { return tea.Suspend }).page(progKeys, "ctrl+z", "suspend"),
		on(always, "q", "quit", (*Model).quit).page(progKeys, "q ctrl+c", "quit"),
		on(always, "ctrl+c", "", (*Model).interrupt),
	}
}
