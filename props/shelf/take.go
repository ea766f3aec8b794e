package shelf

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"alongside/props/catalog"
	"alongside/props/record"
	"alongside/props/spelling"
)

// Columns are those of the list for a spreadsheet; Take reads the first five
// and the source's key by their names.
var Columns = []string{"box", "edition", "table", "by", "on", "key", "stated for", "property", "value", "basis", "conditions", "known", "source"}

// Labels of the text form: what stands behind one holds for the lines below it.
const (
	EditionLabel = "Edition:"
	TableLabel   = "Table:"
	ByLabel      = "By:"
	OnLabel      = "On:"
)

// ticked is a line of a list whose box is not empty.
type ticked struct {
	line     int
	key, box string
	catalog.Check
}

// taker reads one list.
type taker struct {
	file string
	rows []ticked
	errs record.Errors
}

func (t *taker) fail(line int, field, problem, remedy string) {
	t.errs = append(t.errs, &record.Error{File: t.file, Line: line, Field: field, Problem: problem, Remedy: remedy})
}

// Take reads a list that was filled in, as text, CSV or TSV: the figures whose
// box holds an x, or another value that the copy prints. The error is a
// record.Errors with every line that is half filled or not understood; nothing
// is to be kept then.
func Take(name, text string, c *catalog.Catalog) ([]catalog.Check, error) {
	t := &taker{file: name}
	text = strings.TrimPrefix(text, "\ufeff")
	first, _, _ := strings.Cut(strings.TrimLeft(text, "\r\n\t "), "\n")
	head := strings.ToLower(strings.NewReplacer(`"`, "", " ", "").Replace(first))
	switch {
	case !utf8.ValidString(text):
		t.fail(1, "", "the file is not UTF-8 text", "save it as UTF-8")
	case strings.HasPrefix(head, "box") && len(head) > 3:
		t.table(text, rune(head[3]))
	default:
		t.lines(text)
	}
	var out []catalog.Check
	if len(t.rows) > 0 {
		out = t.checks(c)
	}
	if len(t.errs) == 0 && len(out) == 0 {
		t.fail(1, "box", "no box is ticked", "put an x in the box of each figure that your copy prints, or the value that it prints instead")
	}
	if len(t.errs) > 0 {
		return nil, t.errs
	}
	return out, nil
}

// checks are the rows that are whole.
func (t *taker) checks(c *catalog.Catalog) []catalog.Check {
	items, lines := map[string]Item{}, map[string]int{}
	for o, f := range c.Stated() {
		p := catalog.PlaceOf(o, f)
		if f.Was != nil {
			f = f.Was
		}
		items[Key(p)] = Item{Place: p, Figure: f}
	}
	var out []catalog.Check
	for _, row := range t.rows {
		item, known := items[row.key]
		switch {
		case !known:
			t.fail(row.line, row.key, "is no figure of the catalog", "print the list again; a figure that has changed has another key")
		case lines[row.key] > 0:
			t.fail(row.line, row.key, fmt.Sprintf("is ticked in line %d already", lines[row.key]), "leave one of the two boxes empty")
		default:
			row.Place, lines[row.key] = item.Place, row.line
			if t.whole(&row, item) {
				out = append(out, row.Check)
			}
		}
	}
	return out
}

// whole fills in what the copy reads, and tells of what a line lacks.
func (t *taker) whole(row *ticked, item Item) bool {
	if field, problem, remedy := row.Problem(); problem != "" {
		t.fail(row.line, field, problem, remedy)
		return false
	}
	if strings.EqualFold(row.box, "x") {
		return true
	}
	q, err := catalog.ReadValue(item.Figure, row.box)
	if err != nil {
		t.fail(row.line, "box", fmt.Sprintf("%q: %v", row.box, err), "write x, or the value that your copy prints: "+item.Catalog)
		return false
	}
	if reads := q.String(); reads != item.Catalog {
		row.Reads = reads
	}
	return true
}

// table reads a list from a spreadsheet.
func (t *taker) table(text string, comma rune) {
	in := csv.NewReader(strings.NewReader(text))
	in.FieldsPerRecord, in.LazyQuotes = -1, true
	if slices.Contains([]rune{',', ';', '\t'}, comma) {
		in.Comma = comma
	}
	var at [6]int
	for n := 0; ; n++ {
		cells, err := in.Read()
		var broken *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return
		case errors.As(err, &broken):
			t.fail(broken.Line, "", "the row is not CSV: "+broken.Err.Error(), "save the list as CSV again")
			return
		}
		line, _ := in.FieldPos(0)
		if n == 0 {
			for i, name := range Columns[:len(at)] {
				if at[i] = slices.IndexFunc(cells, func(s string) bool { return strings.EqualFold(strings.TrimSpace(s), name) }); at[i] < 0 {
					t.fail(line, name, "is no column of the list", "keep the columns as alongside shelf --format csv prints them")
					return
				}
			}
			continue
		}
		cell := func(i int) string {
			if at[i] < len(cells) {
				return strings.TrimSpace(cells[at[i]])
			}
			return ""
		}
		if cell(0) != "" {
			t.rows = append(t.rows, ticked{line, cell(5), cell(0), catalog.Check{Edition: cell(1), Table: cell(2), By: cell(3), On: cell(4)}})
		}
	}
}

// boxLine is a line of the text form: the box and the key.
var boxLine = spelling.Pattern{Expr: `^\[([^\]]*)\]\s*([a-z]*)`}

// lines reads the text form. A text that is broken goes on in lines that are
// indented.
func (t *taker) lines(text string) {
	var c catalog.Check
	var open *string // what the line before has filled and the next may go on with
	n := 0
	for l := range strings.Lines(text) {
		n++
		line := strings.TrimSpace(l)
		if m := boxLine.Regexp().FindStringSubmatch(line); m != nil {
			open = nil
			if box := strings.TrimSpace(m[1]); box != "" {
				t.rows = append(t.rows, ticked{n, m[2], box, c})
			}
			continue
		}
		if strings.HasPrefix(line, "[") {
			t.fail(n, "box", "is not closed", "write [x], or [VALUE] with the value that your copy prints")
			continue
		}
		if open != nil && line != "" && strings.HasPrefix(l, " ") {
			*open += " " + line
			continue
		}
		open = nil
		for _, label := range []struct {
			text string
			to   *string
		}{{EditionLabel, &c.Edition}, {TableLabel, &c.Table}, {ByLabel, &c.By}, {OnLabel, &c.On}} {
			if len(line) >= len(label.text) && strings.EqualFold(line[:len(label.text)], label.text) {
				*label.to, open = strings.TrimSpace(line[len(label.text):]), label.to
			}
		}
	}
}
