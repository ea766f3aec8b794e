package report

import (
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/sheet"
)

// Limits are the rows that stand above those of a comparison: what the
// customer asks for, and the duties whose merit is shown.
type Limits struct {
	Needs  []needs.Need
	Duties []*needs.Duty
}

// CompareDoc is the part of a comparison that the scope names, below it the
// notes and sources. The customer's limits and the merits stand in tables of
// their own before the figures; a scope of one property is that property alone.
func CompareDoc(c *compare.Comparison, s Scope, above Limits) *Doc {
	c = s.of(c)
	asked := above
	if s.Property != props.NoProperty {
		above = Limits{}
	}
	return &Doc{
		text: func(n *numbering) *sheet.Doc { return compareText(c, above, n) },
		data: func() *sheet.Doc { return compareData(c, above) },
		json: func() object { return compareJSON(c, asked.Needs) },
	}
}

func compareText(c *compare.Comparison, above Limits, n *numbering) *sheet.Doc {
	t := numberedTable(c, n)
	d := &sheet.Doc{}
	for _, table := range above.tables(&c.Bench) {
		d.Blocks = append(d.Blocks, table)
	}
	d.Blocks = append(d.Blocks, sheet.Title(t.Title))
	if len(t.Heads) == 0 {
		return d
	}
	d.Blocks = append(d.Blocks, t.sheet(c))
	if len(c.Rows) == 1 {
		var details sheet.Lines
		for i := range c.Rows[0].Cells {
			details = append(details, t.detail(&c.Rows[0].Cells[i]))
		}
		d.Blocks = append(d.Blocks, details)
	}
	d.Foot = append(t.Signs(), t.Setting)
	d.Caution = Caution
	return d
}

// detail is one figure of a row in a sentence, with all that stands behind it.
func (t *Table) detail(c *compare.Cell) string {
	if c.Figure == nil {
		return c.Material.Name() + ": " + c.Absent
	}
	return c.Material.Name() + ": " + t.figure(c.Figure, c.Figure.Value.String())
}

// sheet is the table for laying out: the baseline stays in sight where it has
// to be broken into parts.
func (t *Table) sheet(c *compare.Comparison) *sheet.Table {
	none := []string{} // in text the first two columns explain themselves
	out := &sheet.Table{Total: "Count", Columns: []sheet.Column{{Name: "Property", Head: none, Keep: true}, {Name: "Unit", Head: none, Keep: true, Close: true}}}
	for i, h := range t.Heads {
		col := sheet.Column{Name: c.Bench.Pins[i].Name(), Head: []string{h.Alloy, h.Temper, h.Process}, Align: sheet.Figure}
		if i == t.Baseline {
			col.Keep = true
			col.Name += " (baseline)"
			col.Head = append(col.Head, "baseline")
		}
		if h.Total != "" {
			col.Total = strings.Split(h.Total, ", ")
		}
		out.Columns = append(out.Columns, col)
	}
	out.Rows = make([]sheet.Row, 0, len(t.Lines))
	for i, l := range t.Lines {
		row := sheet.Row{Cells: make([]sheet.Cell, 0, len(out.Columns))}
		row.Cells = append(row.Cells, sheet.Cell{Text: l.Name, Short: l.Short}, sheet.Cell{Text: joined(" ", l.Unit, l.Sense)})
		if i == 0 || t.Lines[i-1].Group != l.Group {
			row.Group = l.Group.String()
		}
		for j := range l.Cells {
			row.Cells = append(row.Cells, l.Cells[j].sheet())
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

func (c *Cell) sheet() sheet.Cell {
	out := sheet.Cell{Text: c.text, Mark: c.word, Change: c.Delta, Sign: c.Glyph, Notes: c.Notes}
	if c.Memory {
		out.Mark += MemorySign
	}
	if c.Verdict == compare.Unlike && c.Delta == "" {
		out.Change, out.Sign = c.Word, ""
	}
	if c.Source > 0 {
		out.Source = "S" + strconv.Itoa(c.Source)
	}
	return out
}

// compareColumns are the columns of each material in a sheet.
var compareColumns = []string{"value", "to", "basis", "known", "delta", "delta %", "verdict", "why", "conditions", "source"}

// compareData has a record a property.
func compareData(c *compare.Comparison, above Limits) *sheet.Doc {
	t := NewTable(c)
	head := []string{"property", "unit", "sense"}
	for i, m := range c.Bench.Pins {
		name := m.Name()
		if i == c.Baseline {
			name += " (baseline)"
		}
		head = append(head, prefixed(name, compareColumns)...)
	}
	table := &sheet.Table{Columns: sheet.Columns(head...)}
	for i := range c.Rows {
		row := &c.Rows[i]
		if hidden(c, row) {
			continue
		}
		w := wordsOf(row)
		cells := []string{row.Property.String(), w.symbol, w.sense.String()}
		for j := range row.Cells {
			cells = append(cells, t.record(&row.Cells[j]).cells(compareColumns)...)
		}
		table.Add(cells...)
	}
	var notes []sheet.Note
	for i, h := range t.Heads {
		if h.Total != "" {
			notes = append(notes, sheet.Note{Text: c.Bench.Pins[i].Name() + ": " + h.Total})
		}
	}
	d := dataDoc(table, append(append(notes, sheet.Note{Text: t.Setting}), marked("S", t.Sources)...))
	for i, more := range above.data(&c.Bench) {
		d.Blocks = append(d.Blocks[:i:i], more, table)
	}
	return d
}

func (t *Table) record(c *compare.Cell) record {
	r := record{"verdict": c.Verdict.String(), "why": c.Why()}
	if c.Figure == nil {
		r["why"] = c.Absent
		return r
	}
	r.putFigure(c.Figure, c.Value)
	r["source"] = joined(", ", t.mark(c.Figure.Source), c.Figure.Table)
	if c.Delta != nil {
		r.put("delta", c.Delta.Mid)
		r.put("delta %", c.Delta.Percent)
	}
	return r
}

func compareJSON(c *compare.Comparison, list []needs.Need) object {
	baseline, rows, totals := "", []object{}, []object{}
	if c.Baseline >= 0 {
		baseline = c.Bench.Pins[c.Baseline].ID
	}
	for i := range c.Rows {
		if !hidden(c, &c.Rows[i]) {
			rows = append(rows, rowJSON(&c.Rows[i]))
		}
	}
	for i, t := range c.Totals {
		if i != c.Baseline {
			totals = append(totals, object{{"material", t.Material.ID}, {"count", object{{"beats", t.Beats}, {"misses", t.Misses}, {"level", t.Level},
				{"overlaps", t.Overlaps}, {"unlike", t.Unlike}, {"no_figure", t.NoFigure}, {"neutral", t.Neutral}}}})
		}
	}
	out := object{
		{"baseline", baseline},
		{"materials", each(c.Bench.Pins, func(m **props.Material) object { return materialJSON(*m) })},
		{"rows", rows},
		{"totals", totals},
	}
	if judged := needsJSON(c.Bench.Pins, list); len(judged) > 0 {
		out = append(out, field{"needs", judged})
	}
	return append(out, field{"caution", Caution})
}

func rowJSON(row *compare.Row) object {
	w := wordsOf(row)
	return object{{"property", row.Property.String()}, {"name", w.name}, {"unit", w.symbol}, {"sense", w.sense.String()}, {"cells", each(row.Cells, func(c *compare.Cell) object {
		out := object{{"material", c.Material.ID}, {"figure", figureJSON(c.Figure, c.Value)}, {"absent", c.Absent}}
		for _, r := range c.Reasons {
			// The delta is drawn from another figure of the baseline than the one
			// in the baseline's own cell.
			if r.Kind == compare.OtherBaseFigure {
				if v, err := c.Against.Value.In(row.Unit); err == nil {
					out = append(out, field{"against", figureJSON(c.Against, v)})
				}
			}
		}
		switch d := c.Delta; {
		case d == nil:
			out = append(out, field{"delta", nil})
		case d.Bound != nil: // only bounds are certain
			out = append(out, object{{"delta", nil}, {"bound", object{{"least", d.Bound.Least}, {"most", d.Bound.Most}}}}...)
		default:
			out = append(out, field{"delta", deltaJSON(d.Lo, d.Mid, d.Hi, d.Percent, d.Unit.Symbol())})
		}
		return append(out, object{{"verdict", c.Verdict.String()}, {"why", c.Why()}}...)
	})}}
}
