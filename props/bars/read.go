package bars

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/record"
	"alongside/units"
)

// column is a column of values.
type column struct {
	property props.PropertyID
	unit     units.Unit
	head     string
}

// tested are the properties that a test bar gives and of which less is worse.
var tested = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.ReductionOfArea, props.HardnessBrinell}

// reader reads one file.
type reader struct {
	file    string
	catalog *catalog.Catalog
	columns map[int]column
	named   map[string]int // columns with words: material, heat, date, conditions
	found   map[string]*props.Material
	sets    []*Set
	errs    record.Errors
}

// Read reads bars from a CSV text, one bar a row:
//
//	material,heat,date,conditions,tensile strength ksi,elongation %
//	a356-t6-pm,H101,2026-03-02,separately cast bar,38.4,5.5
//
// Heat, date and conditions may be left out, and a cell may be empty. A semicolon or a
// tab may stand for the comma, as spreadsheets write them. All mistakes are returned,
// as record.Errors.
func Read(name, text string, c *catalog.Catalog) ([]*Set, error) {
	r := &reader{file: name, catalog: c, columns: map[int]column{}, named: map[string]int{}, found: map[string]*props.Material{}}
	text = strings.TrimPrefix(text, "\ufeff")
	in := csv.NewReader(strings.NewReader(text))
	in.Comma = separator(text)
	in.FieldsPerRecord, in.TrimLeadingSpace, in.Comment = -1, true, '#'
	for row := 0; ; row++ {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			r.fail(broken.Line, "", "the row is not CSV: "+broken.Err.Error(), "close every quote, and double a quote within a text")
			break
		}
		line, _ := in.FieldPos(0)
		if row == 0 {
			r.head(line, cells)
		} else {
			r.row(line, cells)
		}
	}
	if len(r.errs) == 0 && len(r.sets) == 0 {
		r.fail(1, "", "the file holds no bars", "write one bar a row below a head such as: material,heat,date,tensile strength ksi")
	}
	if len(r.errs) > 0 {
		return nil, r.errs
	}
	return r.sets, nil
}

// separator is what stands most often in the first line that is no comment.
func separator(text string) rune {
	best := ','
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		for _, c := range ";\t" {
			if strings.Count(line, string(c)) > strings.Count(line, string(best)) {
				best = c
			}
		}
		break
	}
	return best
}

func (r *reader) fail(line int, field, problem, remedy string) {
	r.errs = append(r.errs, &record.Error{File: r.file, Line: line, Field: field, Problem: problem, Remedy: remedy})
}

// words are the columns that hold no values.
var words = []string{"material", "heat", "date", "conditions"}

func (r *reader) head(line int, cells []string) {
	for i, cell := range cells {
		head := strings.Join(strings.Fields(strings.NewReplacer("(", " ", ")", " ", ",", " ").Replace(strings.ToLower(cell))), " ")
		if slices.Contains(words, head) {
			r.named[head] = i
			continue
		}
		c, problem, remedy := columnOf(head)
		if problem != "" {
			r.fail(line, cell, problem, remedy)
			continue
		}
		c.head = cell
		r.columns[i] = c
	}
	if _, ok := r.named["material"]; !ok {
		r.fail(line, "material", "no column says which material the bars are of", "add a column material with an id that `alongside find` prints")
	}
}

// columnOf reads the head of a column of values: a property and its unit.
func columnOf(head string) (c column, problem, remedy string) {
	var known []string
	var unit string
	for _, p := range tested {
		name := strings.ToLower(p.Info().Name)
		known = append(known, name)
		for _, word := range append(p.Words(), name) {
			rest, ok := strings.CutPrefix(head+" ", word+" ")
			if ok && (c.property == props.NoProperty || len(rest) < len(unit)) {
				c.property, unit = p, rest
			}
		}
	}
	if c.property == props.NoProperty {
		return c, "it names nothing that a test bar gives", "use " + strings.Join(words, ", ") + ", or with its unit: " + strings.Join(known, ", ")
	}
	info := c.property.Info()
	remedy = "write the unit in the head: " + strings.ToLower(info.Name) + " " + info.Units[0].Symbol()
	var err error
	if c.unit, err = units.ParseUnit(strings.TrimSpace(unit)); err != nil {
		return c, "the unit is not understood", remedy
	}
	if d := c.unit.Dimension(); d != info.Dimension && !(info.Dimension.Brinell() && d.Brinell()) {
		return c, c.unit.Symbol() + " is no unit of it", remedy
	}
	return c, "", ""
}

func (r *reader) row(line int, cells []string) {
	text := func(name string) string {
		if i, ok := r.named[name]; ok && i < len(cells) {
			return strings.TrimSpace(cells[i])
		}
		return ""
	}
	m := r.material(line, text("material"))
	if m == nil {
		return
	}
	date := text("date")
	if _, err := time.Parse(time.DateOnly, date); date != "" && err != nil {
		r.fail(line, "date", fmt.Sprintf("%q is not a date", date), "write year, month and day: 2026-03-02")
	}
	cond := r.conditions(line, text("conditions"))
	for i, cell := range cells {
		c, ok := r.columns[i]
		if !ok || strings.TrimSpace(cell) == "" {
			continue
		}
		if q, problem, remedy := c.read(cell); problem != "" {
			r.fail(line, c.head, problem, remedy)
		} else {
			s := r.set(m, c, cond)
			s.Place = min(s.Place, q.Place)
			s.Bars = append(s.Bars, Bar{Line: line, Heat: text("heat"), Date: date, Value: q.Lo})
		}
	}
}

// read reads a cell of the column; problem says why it is no bar.
func (c *column) read(cell string) (q units.Quantity, problem, remedy string) {
	q, err := units.ParseAs(cell, c.unit.Dimension(), c.unit)
	switch {
	case err != nil:
		return q, err.Error(), "write one number in the unit of the head"
	case q.Unit != c.unit || q.IsRange() || q.Qual != units.Exact:
		return q, fmt.Sprintf("%q is not one bar", cell), "write one number in the unit of the head"
	case q.Lo == 0 && c.unit.Dimension() != units.Percent, q.Lo != 0 && catalog.Implausible(c.property.Info(), q) != "":
		return q, fmt.Sprintf("a bar cannot have %q", cell), "leave the cell empty where the bar was not measured"
	}
	return q, "", ""
}

func (r *reader) conditions(line int, text string) (c props.Conditions) {
	for part := range strings.SplitSeq(text, ";") {
		if part = strings.TrimSpace(part); part != "" && !c.Add(part) {
			r.fail(line, "conditions", fmt.Sprintf("%q is no condition of a test", part), "write for example: separately cast bar; 0.2 % offset; or a note in parentheses")
		}
	}
	return c
}

// material is what a cell names without a doubt; nil where it names none.
func (r *reader) material(line int, typed string) *props.Material {
	m, seen := r.found[typed]
	if !seen {
		m, _ = r.catalog.Named(typed)
		r.found[typed] = m
	}
	if m == nil {
		r.fail(line, "material", fmt.Sprintf("%q names no material of the catalog", typed), "use an id that `alongside find` prints")
	}
	return m
}

// set is the set that a bar belongs to.
func (r *reader) set(m *props.Material, c column, conditions props.Conditions) *Set {
	for _, s := range r.sets {
		if s.Material == m && s.Property == c.property && s.Unit == c.unit && s.Conditions == conditions {
			return s
		}
	}
	s := &Set{Material: m, Property: c.property, Unit: c.unit, Conditions: conditions, Place: 100}
	r.sets = append(r.sets, s)
	return s
}
