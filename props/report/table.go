package report

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
)

// Table is a comparison as short texts. A screen or a format only lays it out.
type Table struct {
	Heads    []Head
	Lines    []Line
	Baseline int // index in Heads; -1 when empty
	Notes    []string
	Sources  []string // "ASTM B26/B26M …"; Cell.Source counts from 1
	Title    string   // "A356.0-T6 permanent mold against A380.0-F die"
	Setting  string   // which figures are compared and what counts as level

	*numbering
}

// Head names a column on separate lines.
type Head struct {
	ID, Alloy, Temper, Process string
	Total                      string // "beats 5, misses 2, 1 unlike"
	Short                      string // "✓5 ✗2 =1 ≈0 ≠1 –2"
}

// Line is a row: of a property, of one of the customer's limits, or of the merit
// for a duty. Need and Duty are nil on the row of a property; Group has no
// meaning on the others.
type Line struct {
	Need     *needs.Need
	Duty     *needs.Duty
	Property props.PropertyID
	Group    props.Group
	Name     string
	Short    string
	Unit     string
	Sense    string // ↑ more is better, ↓ less is better, ± near a target, "" neutral
	Cells    []Cell
}

// OfProperty reports whether the row is a property's own.
func (l *Line) OfProperty() bool { return l.Need == nil && l.Duty == nil }

// Heading is what the rows of its kind stand under.
func (l *Line) Heading() string {
	switch {
	case l.Need != nil:
		return "Needs"
	case l.Duty != nil:
		return "Merit for a duty"
	}
	return l.Group.String()
}

// Cell is one figure with its verdict.
type Cell struct {
	Value   string // "47", "70–100", "" when there is none
	Mark    string // basis mark: "" typical, "m" minimum, "x" maximum, "d" design, "h" house
	Delta   string // "+74 %", "+20", "1.7×", "" when off or none
	Glyph   string // verdict sign
	Verdict compare.Verdict
	Word    string // verdict as a word, "" for the baseline
	Why     string // reasons, or why there is no figure
	Notes   []int  // numbers in Table.Notes
	Source  int    // number in Table.Sources; 0 for none
	Memory  bool
	Never   bool // there is no figure because the metal has no such property
	Other   bool // set against another figure of the baseline than the one shown

	text, word string // Value and Mark as they leave the program
}

var glyphs = [...]string{compare.NoFigure: "–", compare.Beats: "✓", compare.Misses: "✗", compare.Level: "=", compare.Overlaps: "≈", compare.Unlike: "≠", compare.IsBaseline: ""}

// Glyph is the sign of a verdict.
func Glyph(v compare.Verdict) string { return glyphs[v] }

// marks are the signs of a basis on the screen, and its words in what leaves the
// program; a typical figure carries neither.
var marks = [...]struct{ sign, word string }{props.Typical: {}, props.Minimum: {"m", " min"}, props.Maximum: {"x", " max"}, props.Design: {"d", " design"},
	props.House: {"h", " house"}, props.Estimated: {"e", " est. min"}}

// Mark is the sign of a basis on the screen.
func Mark(b props.Basis) string { return marks[b].sign }

// markWord is the word of a basis behind a figure that leaves the program.
func markWord(b props.Basis) string { return marks[b].word }

// Legend explains every sign that a table can hold.
func Legend() []string {
	return []string{
		"✓ beats the baseline   ✗ misses it   = level   ≈ ranges overlap",
		"≠ unlike: basis or test conditions differ   – nothing to compare   no sign: neither better nor worse",
		"m specified minimum   x specified maximum   d design allowable   h the shop's own   e estimated minimum, not guaranteed; no mark: typical   t a need met on a typical figure only",
		"↑ more is better   ↓ less is better   ± nearest to a target   " + RecalledSign,
	}
}

// NewTable formats a comparison. Rows are left out as the bench says.
func NewTable(c *compare.Comparison) *Table { return numberedTable(c, &numbering{}) }

// numberedTable goes on with the numbers of a document that the table is part of.
func numberedTable(c *compare.Comparison, n *numbering) *Table {
	t := &Table{Baseline: c.Baseline, Title: title(c), Setting: setting(&c.Bench), numbering: n, Lines: make([]Line, 0, len(c.Rows))}
	for i, m := range c.Bench.Pins {
		h := Head{ID: m.ID, Alloy: m.Alloy.Name, Temper: m.Temper, Process: m.Process.String()}
		if i != c.Baseline && c.Totals != nil {
			h.Total, h.Short = totalWords(c.Totals[i]), totalGlyphs(c.Totals[i])
		}
		t.Heads = append(t.Heads, h)
	}
	for i := range c.Rows {
		if row := &c.Rows[i]; !hidden(c, row) {
			t.Lines = append(t.Lines, line(c, row, n))
		}
	}
	t.Notes, t.Sources = t.notes, t.sources
	return t
}

func title(c *compare.Comparison) string {
	var names []string
	for i, m := range c.Bench.Pins {
		if i != c.Baseline {
			names = append(names, m.Name())
		}
	}
	switch {
	case c.Baseline < 0:
		return "Nothing is pinned"
	case len(names) == 0:
		return c.Bench.Pins[c.Baseline].Name()
	}
	return strings.Join(names, ", ") + " against " + c.Bench.Pins[c.Baseline].Name()
}

func setting(b *compare.Bench) string {
	s := "Typical figures are compared where both sides have them, else the next basis they share"
	if b.Basis == compare.MinimumOnly {
		s = "Only specified minimums are compared where standards specify them"
	}
	if b.Service != nil {
		s += "; strength and elongation at " + ServiceText(b)
	}
	if b.Range != nil {
		s += "; expansion over " + RangeText(b)
	}
	if b.Band > 0 {
		s += "; within " + BandText(b.Band) + " counts as level"
	}
	return s + "."
}

// hidden leaves out rows with nothing to compare: where fewer than two pins
// have a figure. Pins are compared by eye where the baseline has none.
func hidden(c *compare.Comparison, row *compare.Row) bool {
	figures, allLevel := 0, true
	for i := range row.Cells {
		if row.Cells[i].Figure != nil {
			figures++
		}
		if i == c.Baseline {
			continue
		}
		allLevel = allLevel && row.Cells[i].Verdict == compare.Level
	}
	alone := len(row.Cells) == 1
	return !alone && (c.Bench.HideEmpty && figures < 2 || c.Bench.HideLevel && allLevel)
}

func line(c *compare.Comparison, row *compare.Row, n *numbering) Line {
	w := wordsOf(row)
	l := Line{Property: row.Property, Group: row.Property.Info().Group, Name: w.name, Short: w.short, Unit: w.unit, Sense: senses[w.sense], Cells: make([]Cell, 0, len(row.Cells))}
	for i := range row.Cells {
		out := cell(c, &row.Cells[i], n)
		out.Never = out.Value == "" && row.Cells[i].Material.Absent(row.Property) != ""
		l.Cells = append(l.Cells, out)
	}
	return l
}

func cell(c *compare.Comparison, in *compare.Cell, n *numbering) Cell {
	out := Cell{Verdict: in.Verdict, Glyph: glyphs[in.Verdict], Why: in.Why()}
	if in.Verdict != compare.IsBaseline {
		out.Word = in.Verdict.String()
	}
	if in.Figure == nil {
		out.Why = in.Absent
		if in.Absent != compare.NoFigureOnFile {
			out.Notes = append(out.Notes, n.note(in.Absent))
		}
		return out
	}
	out.Value, out.Mark = in.Value.Number(), Mark(in.Figure.Basis)
	out.text, out.word = out.Value, markWord(in.Figure.Basis)
	for _, f := range in.Also {
		n := " / " + f.Value.InOrOwn(in.Value.Unit).Number()
		out.Value, out.Mark = out.Value+out.Mark+n, Mark(f.Basis)
		out.text, out.word = out.text+out.word+n, markWord(f.Basis)
	}
	out.Memory = recalled(in.Figure.Known())
	out.Source = n.source(in.Figure.Source)
	if in.Figure.Known() == props.Checked {
		out.Notes = append(out.Notes, n.note(joined(": ", knownBy[props.Checked].words, correction(in.Figure))))
	}
	if in.Verdict != compare.IsBaseline && in.Delta != nil {
		out.Delta = deltaText(c.Bench.Delta, in)
	}
	certain := ""
	for _, g := range in.Grounds {
		certain += "; certain all the same: " + g.Says + " (" + g.Source + ")"
	}
	for i, r := range in.Reasons {
		out.Other = out.Other || r.Kind == compare.OtherBaseFigure
		text := r.String()
		if i == 0 {
			text, certain = text+certain, ""
		}
		if r.Kind != compare.NoSense {
			out.Notes = append(out.Notes, n.note(text))
		}
	}
	if certain != "" {
		out.Notes = append(out.Notes, n.note(strings.TrimPrefix(certain, "; ")))
	}
	return out
}

func totalWords(t compare.Total) string {
	rows := t.Beats + t.Misses + t.Level + t.Overlaps + t.Unlike + t.NoFigure + t.Neutral
	word := "rows"
	if rows == 1 {
		word = "row"
	}
	parts := []string{fmt.Sprintf("of %d %s beats %d", rows, word, t.Beats), fmt.Sprintf("misses %d", t.Misses)}
	for _, p := range []struct {
		n    int
		word string
	}{{t.Level, "level"}, {t.Overlaps, "overlaps"}, {t.Unlike, "unlike"}, {t.NoFigure, "no figure"}, {t.Neutral, "neither better nor worse"}} {
		if p.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.word))
		}
	}
	return strings.Join(parts, ", ")
}

func totalGlyphs(t compare.Total) string {
	return fmt.Sprintf("✓%d ✗%d =%d ≈%d ≠%d", t.Beats, t.Misses, t.Level, t.Overlaps, t.Unlike)
}
