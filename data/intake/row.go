package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"hash/fnv"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/record"
)

// row is one figure read on a page.
type row struct {
	Material, Property, Basis, Value, Unit, Conditions string
	Source, Page                                       string // whose figure, and the kind of page it was read on
	Note                                               string // the reader's remark
	Agree                                              string // the reader's own comparison: yes, no, absent
	figure                                             *props.Figure
	problem                                            string // why it could not be read as a figure
}

// held reports whether the row is kept out of the data, to compare with the
// catalog at the end: a tenth of the rows, always the same.
func (r *row) held() bool {
	h := fnv.New32a()
	fmt.Fprint(h, "held out 2026|", strings.Join([]string{r.Material, r.Property, r.Basis, r.Value, r.Unit, r.Conditions, r.Source, r.Page}, "|"))
	return h.Sum32()%10 == 0
}

// readRows reads every CSV file of the folders that has the columns of a
// collection; others are passed over.
func readRows(folders []string) ([]*row, error) {
	var rows []*row
	for _, folder := range folders {
		names, err := filepath.Glob(filepath.Join(folder, "*.csv"))
		if err != nil || len(names) == 0 {
			return nil, fmt.Errorf("no CSV file in %s", folder)
		}
		for _, name := range names {
			more, err := readFile(name)
			if err != nil {
				return nil, err
			}
			rows = append(rows, more...)
		}
	}
	return rows, nil
}

// readFile reads one CSV file; one that holds no figures gives no rows.
func readFile(name string) ([]*row, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := readTable(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return rows, nil
}

func readTable(in io.Reader) ([]*row, error) {
	table, err := csv.NewReader(in).ReadAll()
	if err != nil || len(table) == 0 {
		return nil, err
	}
	column := map[string]int{}
	for i, head := range table[0] {
		column[head] = i
	}
	if _, ok := column["material_id"]; !ok {
		return nil, nil
	}
	for _, head := range []string{"property", "basis", "value", "value_hi", "unit", "conditions", "source", "where", "agree", "note"} {
		if _, ok := column[head]; !ok {
			return nil, fmt.Errorf("has no column %s; see data/intake/pages.csv for the columns", head)
		}
	}
	var rows []*row
	for _, cells := range table[1:] {
		get := func(head string) string { return strings.TrimSpace(cells[column[head]]) }
		r := &row{Material: get("material_id"), Property: get("property"), Basis: get("basis"),
			Value: get("value"), Unit: get("unit"), Conditions: get("conditions"), Source: get("source"), Page: get("where"), Agree: get("agree"), Note: get("note")}
		if hi := get("value_hi"); hi != "" && hi != r.Value {
			r.Value += "–" + hi
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// parse puts each row into the form of a data file and lets the catalog's own
// loader read it, so that value, unit and conditions mean what they mean there.
func parse(c *catalog.Catalog, rows []*row) {
	if len(rows) == 0 {
		return
	}
	var in strings.Builder
	in.WriteString("[[source]]\nid = \"page\"\ntitle = \"page\"\nkind = \"trade\"\n[[family]]\nid = \"pages\"\nname = \"pages\"\n[[alloy]]\nid = \"pages\"\nname = \"pages\"\nfamily = \"pages\"\n")
	start := map[int]int{} // line → row
	for i, r := range rows {
		start[strings.Count(in.String(), "\n")+1] = i
		fmt.Fprintf(&in, "[[alloy.material]]\nid = \"row-%d\"\n[[alloy.material.figures]]\nbasis = %q\nsource = \"page\"\nknown = \"read\"\n%s = %q\n",
			i, r.basis(), r.Property, r.text())
	}
	read, err := catalog.LoadFiles(c, []catalog.File{{Name: "rows", Content: []byte(in.String())}})
	var mistakes record.Errors
	if errors.As(err, &mistakes) {
		lines := make([]int, 0, len(start))
		for l := range start {
			lines = append(lines, l)
		}
		slices.Sort(lines)
		for _, m := range mistakes {
			at, ok := slices.BinarySearch(lines, m.Line)
			if !ok {
				at--
			}
			rows[start[lines[max(at, 0)]]].problem = m.Problem
		}
	}
	for i, r := range rows {
		if m := read.Material(fmt.Sprintf("row-%d", i)); m != nil && r.problem == "" && len(m.Stated) == 1 {
			r.figure = &m.Stated[0]
		} else if r.problem == "" {
			r.problem = "not a figure"
		}
	}
}

// basis is the row's basis in the words of the data files. The S basis of the
// handbook is a specification minimum; A and B are allowables.
func (r *row) basis() string {
	switch r.Basis {
	case "design-S":
		return "minimum"
	case "design-A", "design-B":
		return "design"
	}
	return r.Basis
}

func (r *row) text() string {
	unit := r.Unit
	switch unit {
	case "ft-lb":
		unit = "ft-lbf"
	case "BTU/ft-h-F", "BTU/h-ft-F":
		unit = "Btu/h-ft-F"
	case "BTU-in/h-ft2-F":
		unit = "Btu-in/h-ft2-F"
	case "BTU/lb-F":
		unit = "Btu/lb-F"
	case "um/m-C":
		unit = "um/m-K"
	case "Ohm-mm2/m": // the same size
		unit = "uOhm-m"
	case "HB":
		unit = ""
	}
	parts := []string{strings.TrimSpace(r.Value + " " + unit)}
	for _, c := range strings.Split(strings.NewReplacer("(", "[", ")", "]").Replace(r.Conditions), ";") {
		if c = condition(strings.TrimSpace(c)); c != "" {
			parts = append(parts, c)
		}
	}
	return strings.Join(parts, "; ")
}

// forms are the conditions that the loader knows, and how collections write
// them.
var forms = []struct {
	is *regexp.Regexp
	to string
}{
	{regexp.MustCompile(`^([\d.]+ % (?:EUL|offset))$`), "$1"},
	{regexp.MustCompile(`^in ([\d.]+ (?:in|mm)|\dD)$`), "in $1"},
	{regexp.MustCompile(`^(\dD)$`), "in $1"},
	{regexp.MustCompile(`^500 kgf(?:/10 mm)?$`), "500 kgf/10 mm"},
	{regexp.MustCompile(`^3000 kgf(?:/10 mm)?$`), "3000 kgf/10 mm"},
	{regexp.MustCompile(`^(?:fatigue )?(\d+e\d+ cycles)$`), "$1"},
	{regexp.MustCompile(`^(-?\d+)[-–](\d+ °[CF])$`), "$1–$2"},
	{regexp.MustCompile(`^(at -?[\d.]+ °[CF])$`), "$1"},
	{regexp.MustCompile(`^class (\d+)$`), "class $1"},
	{regexp.MustCompile(`^(separately cast bar|die-cast bar|cast-on bar|cut from casting|designated area|wrought bar|wrought sheet|wrought plate|wrought extrusion|wrought tube)$`), "$1"},
	{regexp.MustCompile(`^nondesignated area$`), "undesignated area"},
	{regexp.MustCompile(`^rotating beam$`), "rotating bending"},
	{regexp.MustCompile(`^(section \S.*)$`), "$1"},
}

// condition is one condition as the loader reads it; free text goes into
// parentheses.
func condition(s string) string {
	if s == "" {
		return ""
	}
	for _, f := range forms {
		if f.is.MatchString(s) {
			return f.is.ReplaceAllString(s, f.to)
		}
	}
	return "(" + s + ")"
}
