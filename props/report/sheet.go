package report

import (
	"encoding/csv"
	"strconv"
	"strings"
	"unicode/utf8"

	"alongside/props/compare"
)

// TSV writes a comparison for pasting into a spreadsheet: a record per
// property, the cells parted by tabs. Numbers are not rounded and carry a
// point for the decimal. Notes, sources and the caution follow below.
func TSV(c *compare.Comparison, s Scope) string {
	var b strings.Builder
	for _, record := range sheet(s.of(c)) {
		b.WriteString(strings.Join(record, "\t"))
		b.WriteByte('\n')
	}
	return b.String()
}

// CSV is TSV with commas and quotes as in RFC 4180.
func CSV(c *compare.Comparison, s Scope) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	if err := w.WriteAll(sheet(s.of(c))); err != nil { // a strings.Builder takes everything
		panic(err)
	}
	return b.String()
}

// sheetColumns are the columns of each material. "to" is the upper end of a
// range and empty for a single figure.
var sheetColumns = [...]string{"value", "to", "basis", "known", "delta", "delta %", "verdict", "why", "conditions", "source"}

// sheet is the comparison as records of equal length.
func sheet(c *compare.Comparison) [][]string {
	t := NewTable(c)
	head := []string{"property", "unit", "sense"}
	for i, m := range c.Bench.Pins {
		name := m.Name()
		if i == c.Baseline {
			name += " (baseline)"
		}
		for _, column := range sheetColumns {
			head = append(head, name+": "+column)
		}
	}
	records := [][]string{head}
	for i := range c.Rows {
		row := &c.Rows[i]
		if hidden(c, row) {
			continue
		}
		record := []string{row.Property.String(), row.Unit.Symbol(), row.Sense.String()}
		for j := range row.Cells {
			record = append(record, sheetCell(&row.Cells[j], t)...)
		}
		records = append(records, record)
	}
	below := func(lines ...string) {
		for _, l := range lines {
			records = append(records, []string{l})
		}
	}
	below("")
	below(t.totalLines(c)...)
	below(t.Setting)
	for i, source := range t.Sources {
		below("S" + strconv.Itoa(i+1) + " " + source)
	}
	below(Caution)
	for i, r := range records {
		for j := range r {
			r[j] = SheetText(r[j])
		}
		for len(r) < len(head) {
			r = append(r, "")
		}
		records[i] = r
	}
	return records
}

func sheetCell(c *compare.Cell, t *Table) []string {
	out := make([]string, len(sheetColumns))
	out[6], out[7] = c.Verdict.String(), c.Why()
	if c.Figure == nil {
		out[7] = c.Absent
		return out
	}
	out[0] = Plain(c.Value.Lo)
	if c.Value.IsRange() {
		out[1] = Plain(c.Value.Hi)
	}
	out[2], out[3] = c.Figure.Basis.String(), c.Figure.Known().String()
	if d := c.Delta; d != nil {
		if n := numberOf(d.Mid); n != nil {
			out[4] = Plain(d.Mid)
		}
		if n := numberOf(d.Percent); n != nil {
			out[5] = Plain(d.Percent)
		}
	}
	out[8] = c.Figure.Cond.String()
	out[9] = "S" + strconv.Itoa(t.source(c.Figure.Source))
	if c.Figure.Table != "" {
		out[9] += ", " + c.Figure.Table
	}
	return out
}

// SheetText makes a text fit for a cell of a spreadsheet: cleaned, and not a
// formula.
func SheetText(s string) string { return defuse(Clean(s)) }

// defuse keeps a spreadsheet from running a cell as a formula: a text that
// begins like one gets an apostrophe, which spreadsheets do not show. Numbers
// with a sign stay numbers.
func defuse(s string) string {
	if _, err := strconv.ParseFloat(s, 64); err == nil && strings.Trim(s, "+-.0123456789eE") == "" {
		return s
	}
	// A program that trims blanks when it reads finds the sign behind them.
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " "))
	if strings.ContainsRune("=+-@＝＋－＠", first) {
		return "'" + s
	}
	return s
}
