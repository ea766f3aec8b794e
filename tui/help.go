package tui

import (
	"alongside/tui/panel"
	"alongside/tui/ui"
)

const aboutBench = "The bench sets metals side by side, each against the one the part is made of."

// openHelp lists every key by group, those of the panel on top first.
func (m *Model) openHelp() {
	var own ui.Keys
	purpose := aboutBench
	if s := m.OnTop(); s != nil {
		if s == m.help {
			return
		}
		keys, ends := m.panelKeys(s)
		own, purpose = append(keys, ends...), s.About()
	}
	m.help = panel.NewPages(m.Desk, "Keys", "", func(w int) []string {
		keys := helpLines(m.Theme, own, m.commands, m.Version, w)
		if purpose == "" {
			return keys
		}
		return append(append(m.Theme.Text.Wrap(purpose, min(w, ui.ReadWidth)-1, 1), ""), keys...)
	})
	m.Open(m.help)
}

func helpLines(t *ui.Theme, own ui.Keys, commands []*command, version string, w int) []string {
	var blocks [][]string
	if own != nil {
		blocks = append(blocks, own.Help(t, "In this panel", ""))
	}
	var bench ui.Keys
	for _, c := range commands {
		bench = append(bench, c.Key)
	}
	for _, group := range helpGroups {
		blocks = append(blocks, bench.Help(t, group, group))
	}
	columns := ui.Clamp(w/60, 1, 3)
	lines := ui.Beside(blocks, columns, w/columns)
	lines = append(lines,
		t.Dim.Of(ui.Cut("  Paste ids or designations, one a line, to pin them all. Click a cell to go to it, click it again", w)),
		t.Dim.Of(ui.Cut("  for its source; the wheel scrolls; hold shift to select text as usual.", w)))
	if version != "" {
		lines = append(lines, "", t.Dim.Of(ui.Cut("  Alongside "+version, w)))
	}
	return lines
}
