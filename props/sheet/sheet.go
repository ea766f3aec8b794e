// Package sheet is a document that knows nothing of metals: titles, lines,
// tables and lists of labeled texts, with notes and remarks below. It is laid
// out as text for a width, as Markdown, as HTML that pastes into a mail, and
// as records for a spreadsheet. What must not reach a terminal, a mail or a
// spreadsheet is taken out where the document is written, so that callers hand
// over their texts as they are.
package sheet

import (
	"fmt"
	"strings"
)

// MailWidth is a line length that mail programs leave unbroken: RFC 5322,
// section 2.1.1, asks for no more than 78, some break plain text at 76.
const MailWidth = 76

// Doc is a document: blocks in their order, then what stands below them.
type Doc struct {
	Blocks  []Block
	Notes   []Note
	Foot    []string // remarks, each a paragraph
	Caution string   // the last paragraph; "" for none
	// Page makes of the HTML a whole page that prints, with headings: the first
	// Title is that of the page, each of the others heads a part.
	Page bool
}

// Block is a Title, Lines, a *Table, a *List or a *Picture.
type Block interface{ block() }

// Title names the document or a part of it.
type Title string

// Lines are paragraphs that follow each other.
type Lines []string

// List is labeled texts under a heading.
type List struct {
	Title string
	Items []Item
}

// Item is a text with its label. Without one it belongs to the label before.
type Item struct{ Label, Text string }

// Table is one table under its heading.
type Table struct {
	Heading string
	Columns []Column
	Rows    []Row
	Total   string   // what the totals of the columns are called
	Notes   []string // lines right below the table
}

// Column is how a column is headed and set.
type Column struct {
	Name string   // in one line
	Head []string // on lines of its own, in text and HTML; nil: Name
	Align
	// Keep sets the column first in text, and first in each part of a table
	// that is too wide and has to be broken.
	Keep  bool
	Close bool     // in text one blank stands before the column, not two
	Total []string // below the column in HTML, else in a line with its name
}

// Align is how the cells of a column stand below each other.
type Align uint8

// Left is for words; in text the last of them may be broken into lines. Right
// is for short texts that end alike. Figure sets text, mark, change and sign of
// a cell each below its like.
const (
	Left Align = iota
	Right
	Figure
)

// Row is a line of a table.
type Row struct {
	Group string // heading above the row; "" for none
	Cells []Cell // those missing at the end are empty
}

// Cell is a text, with what may stand beside it in a column of figures.
type Cell struct {
	Text   string
	Short  string // in place of Text where room is scarce; "" for none
	Mark   string // close behind the text
	Change string
	Sign   string
	Notes  []int // the Number of notes
	Source string
}

// Note stands below the tables, behind its mark.
type Note struct {
	Number int    // ¹ in text, [1] elsewhere; 0: Mark
	Mark   string // such as S1; "" for none
	Text   string
}

func (Title) block()  {}
func (Lines) block()  {}
func (*List) block()  {}
func (*Table) block() {}

// Columns are columns of words with these names.
func Columns(names ...string) []Column {
	out := make([]Column, len(names))
	for i, name := range names {
		out[i].Name = name
	}
	return out
}

// Add adds a row of plain texts.
func (t *Table) Add(texts ...string) {
	cells := make([]Cell, len(texts))
	for i, text := range texts {
		cells[i].Text = text
	}
	t.Rows = append(t.Rows, Row{Cells: cells})
}

// renderings are the formats by the names used on the command line.
var renderings = [...]struct {
	name  string
	write func(d *Doc, width int) string
}{
	{"text", (*Doc).Text},
	{"markdown", func(d *Doc, _ int) string { return d.Markdown() }},
	{"html", func(d *Doc, _ int) string { return d.HTML() }},
	{"csv", func(d *Doc, _ int) string { return d.CSV() }},
	{"tsv", func(d *Doc, _ int) string { return d.TSV() }},
}

// Formats lists the names that Render accepts.
func Formats() []string {
	names := make([]string, len(renderings))
	for i, r := range renderings {
		names[i] = r.name
	}
	return names
}

// Render writes the document in a format; width is the line length of text.
// Another format is an error that lists those there are.
func (d *Doc) Render(format string, width int) (string, error) {
	for _, r := range renderings {
		if r.name == format {
			return r.write(d, width), nil
		}
	}
	return "", fmt.Errorf("no format %q; use one of: %s", format, strings.Join(Formats(), ", "))
}

// width is the number of columns, those of the longest row included.
func (t *Table) width() int {
	n := len(t.Columns)
	for i := range t.Rows {
		n = max(n, len(t.Rows[i].Cells))
	}
	return n
}

// column is the i-th column, one of words where the table names fewer.
func (t *Table) column(i int) *Column {
	if i < len(t.Columns) {
		return &t.Columns[i]
	}
	return &Column{}
}

// headed reports whether any column has a name.
func (t *Table) headed() bool {
	for i := range t.Columns {
		if t.Columns[i].Name != "" {
			return true
		}
	}
	return false
}

// cell is the i-th cell of a row, an empty one where the row is shorter.
func (r *Row) cell(i int) *Cell {
	if i < len(r.Cells) {
		return &r.Cells[i]
	}
	return &Cell{}
}

// line is a cell in one line: "37m +23 % ✓ [1] S2".
func (c *Cell) line() string {
	parts := []string{c.Text + c.Mark, c.Change, c.Sign}
	for _, n := range c.Notes {
		parts = append(parts, fmt.Sprintf("[%d]", n))
	}
	return joined(" ", append(parts, c.Source)...)
}

// Line is a note in one line.
func (n *Note) Line() string {
	if n.Number > 0 {
		return fmt.Sprintf("[%d] %s", n.Number, n.Text)
	}
	return joined(" ", n.Mark, n.Text)
}

// totals are the totals of the columns, a line each.
func (t *Table) totals() []string {
	var out []string
	for i := range t.Columns {
		if c := &t.Columns[i]; len(c.Total) > 0 {
			out = append(out, c.Name+": "+strings.Join(c.Total, ", "))
		}
	}
	return out
}

// below are all lines that stand below the blocks.
func (d *Doc) below() []string {
	var out []string
	for i := range d.Notes {
		out = append(out, d.Notes[i].Line())
	}
	out = append(out, d.Foot...)
	if d.Caution != "" {
		out = append(out, d.Caution)
	}
	return out
}

func joined(by string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, by)
}
