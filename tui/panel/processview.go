package panel

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// processView is the process cards broken into lines, for a width and for the
// pins that there is room for.
type processView struct {
	of           []*foundry.Page
	w            int
	first        int   // of the pins that scroll
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

// Widths of the panel, and how much of what is on file a cell shows; the source
// card has the rest.
const (
	processLabel   = 18
	processColumn  = 28
	widestColumn   = 52
	mostLines      = 4
	toleranceLines = 8
	itemLines      = 2
)

// lay breaks the cards as they are into lines, the one under the cursor in
// sight.
func (v *processView) lay(d *desk.Desk, w int) {
	if pages := d.ProcessPages(); len(v.of) > 0 && v.of[0] == pages[0] && v.w == w && slices.Contains(v.columns, d.Col) {
		return
	}
	v.of, v.w, v.rows = d.ProcessPages(), w, nil
	all := len(d.Pins())
	fit := func(label int) int { return ui.Clamp((w-label)/processColumn, 2, max(all, 2)) }
	n := fit(processLabel)
	v.label = processLabel
	if wide := v.label + 8; w >= ui.Roomy && fit(wide) == n {
		v.label = wide
	}
	v.width = min((w-v.label)/n, widestColumn)
	v.columns = []int{0}
	scrolled := min(n, all) - 1 // beside the baseline
	v.first = ui.Clamp(v.first, max(d.Col-scrolled, 0), max(d.Col-1, 0))
	v.first = ui.Clamp(v.first, 0, all-1-scrolled)
	for i := 1; i <= scrolled; i++ {
		v.columns = append(v.columns, v.first+i)
	}
	v.fill(d)
}

// fill lays out a row for each kind on which a pin has a statement.
func (v *processView) fill(d *desk.Desk) {
	system := d.Now().Bench.System
	if size := d.Given().Dimension; size != nil {
		v.add(processRow{tolerance: true}, "Tolerance at "+strings.ReplaceAll(size.String(), " ", "\u00a0"), toleranceLines, func(at int) []statement {
			var texts []statement
			for i := range v.of[at].Tolerances {
				r := &v.of[at].Tolerances[i]
				texts = append(texts, statement{report.ToleranceText(r, system), standing(r.Cite)})
			}
			return texts
		})
	}
	for _, k := range foundry.Kinds() {
		if !slices.ContainsFunc(v.of, func(c *foundry.Page) bool { return len(c.Of(k)) > 0 }) {
			continue
		}
		v.add(processRow{kind: k}, k.String(), mostLines, func(at int) []statement {
			card := v.of[at]
			if card.Why != "" && len(v.rows) == 0 {
				return []statement{{card.Why, ""}}
			}
			var texts []statement
			for _, it := range card.Of(k) {
				texts = append(texts, statement{report.ItemText(&it, system), standing(it.Cite)})
			}
			return texts
		})
	}
}

// statement is a text with the sign of what stands behind it.
type statement struct{ text, sign string }

func standing(c foundry.Cite) string {
	switch {
	case c.Source == nil:
		return ""
	case c.Practice():
		return practiceSign
	case c.Known == props.Memory:
		return report.MemorySign
	}
	return ""
}

// practiceSign marks what no standard or handbook stands behind.
const practiceSign = "°"

// add lays a row out with cells of up to most lines.
func (v *processView) add(r processRow, label string, most int, texts func(at int) []statement) {
	r.label = ui.Wrap(label, v.label-2)
	for _, at := range v.columns {
		r.cells = append(r.cells, wrapped(texts(at), v.width-2, most))
	}
	v.rows = append(v.rows, r)
}

// wrapped breaks statements into lines that hang by a blank, and says at the end
// how many statements it leaves out.
func wrapped(texts []statement, w, most int) []string {
	if len(texts) == 0 {
		return []string{"–"}
	}
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
		lines = append(lines, item[0])
		for _, l := range item[1:] {
			lines = append(lines, " "+l)
		}
	}
	return lines
}
