package tui

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/report"
	"alongside/tui/bench"
	"alongside/tui/ui"
)

// processTable is the cards laid out for a width.
type processTable struct {
	of *processes
	w  int

	columns      []int // pins shown, as displayed
	label, width int   // of the labels, of a column
	rows         []processRow
}

type processRow struct {
	kind      foundry.Kind
	tolerance bool // at the dimension looked up
	label     []string
	cells     [][]string // lines, by column
}

// height is how many lines the row takes.
func (r *processRow) height() int {
	n := len(r.label)
	for _, c := range r.cells {
		n = max(n, len(c))
	}
	return n
}

// Widths of the panel.
const (
	processLabel  = 16
	processColumn = 28
	widestColumn  = 52
)

// laid is the table for the cards, the width and the columns as they are.
func (p *processPanel) laid() *processTable {
	w := p.w
	cards := p.m.processCards()
	if t := p.table; t != nil && t.of == cards && t.w == w && slices.Contains(t.columns, p.m.col) {
		return t
	}
	t := &processTable{of: cards, w: w, label: processLabel + 2}
	all := len(p.m.now().Bench.Pins)
	fit := func(label int) int { return ui.Clamp((w-label)/processColumn, 2, max(all, 2)) }
	n := fit(t.label)
	if wide := t.label + 8; w >= ui.Roomy && fit(wide) == n {
		t.label = wide
	}
	t.width = min((w-t.label)/n, widestColumn)
	if all > 0 {
		t.columns = append(t.columns, 0)
		scrolled := min(n, all) - 1 // beside the baseline
		p.first = ui.Clamp(p.first, max(p.m.col-scrolled, 0), max(p.m.col-1, 0))
		p.first = ui.Clamp(p.first, 0, all-1-scrolled)
		for i := 1; i <= scrolled; i++ {
			t.columns = append(t.columns, p.first+i)
		}
		t.fill(p.m)
	}
	p.table = t
	return t
}

// How much of what is on file a cell shows; the source card has the rest.
const (
	mostLines      = 4
	toleranceLines = 8
	itemLines      = 2
)

// fill lays out a row for each kind on which a pin has a statement.
func (t *processTable) fill(m *Model) {
	system := m.now().Bench.System
	if t.of.size != nil {
		t.add(processRow{tolerance: true}, "Tolerance at "+strings.ReplaceAll(t.of.size.String(), " ", "\u00a0"), toleranceLines, func(at int) []marked {
			var texts []marked
			for i := range t.of.tolerances[at] {
				r := &t.of.tolerances[at][i]
				texts = append(texts, marked{report.ToleranceText(r, system), standing(r.Cite)})
			}
			return texts
		})
	}
	for _, k := range foundry.Kinds() {
		if !slices.ContainsFunc(t.of.cards, func(c *foundry.ProcessCard) bool { return len(c.Of(k)) > 0 }) {
			continue
		}
		t.add(processRow{kind: k}, k.String(), mostLines, func(at int) []marked {
			card := t.of.cards[at]
			var texts []marked
			for _, it := range card.Of(k) {
				texts = append(texts, marked{report.ItemText(&it, system), standing(it.Cite)})
			}
			if card.Why != "" && len(t.rows) == 0 {
				return []marked{{card.Why, ""}}
			}
			return texts
		})
	}
}

// marked is a statement with the sign of what stands behind it.
type marked struct{ text, sign string }

func standing(c foundry.Cite) string {
	switch {
	case c.Source == nil:
		return ""
	case c.Practice():
		return practiceSign
	case c.Known == props.Memory:
		return bench.MemorySign
	}
	return ""
}

// practiceSign marks what no standard or handbook stands behind.
const practiceSign = "°"

// add lays a row out with cells of up to most lines.
func (t *processTable) add(r processRow, label string, most int, texts func(at int) []marked) {
	r.label = ui.Wrap(label, t.label-2)
	for _, at := range t.columns {
		r.cells = append(r.cells, t.wrap(texts(at), most))
	}
	t.rows = append(t.rows, r)
}

// wrap breaks statements into lines that hang by a blank, and says at the end
// how many statements it leaves out.
func (t *processTable) wrap(texts []marked, most int) []string {
	if len(texts) == 0 {
		return []string{"–"}
	}
	w := t.width - 2
	var lines []string
	for i, s := range texts {
		item := ui.Wrap(s.text+s.sign, w-1)
		if len(item) > itemLines {
			rest := strings.Join(item[itemLines-1:], " ")
			item = append(item[:itemLines-1], ui.Cut(rest, w-1-ui.Width(s.sign))+s.sign)
		}
		if len(lines)+len(item) > most {
			more, last := fmt.Sprintf("%s +%d", texts[i-1].sign, len(texts)-i), &lines[len(lines)-1]
			*last = ui.Cut(strings.TrimSuffix(*last, texts[i-1].sign), w-ui.Width(more)) + more
			break
		}
		for k, l := range item {
			if k > 0 {
				l = " " + l
			}
			lines = append(lines, l)
		}
	}
	return lines
}

// above is how many lines the first n rows take.
func (t *processTable) above(n int) int {
	lines := 0
	for i := range t.rows[:min(n, len(t.rows))] {
		lines += t.rows[i].height()
	}
	return lines
}
