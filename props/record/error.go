package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Error is one mistake in a data file: where it stands, what is wrong and
// what to write instead. It prints as
//
//	al-3xx.toml:41: a356-t6-pm, yield_strength: "26 kis": unknown unit "kis"
//	    remedy: did you mean ksi?
type Error struct {
	File    string
	Line    int
	Record  string // id of the record, if known
	Field   string
	Problem string
	Remedy  string
}

func (e *Error) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d: ", e.File, e.Line)
	where := strings.Trim(short(e.Record, 100)+", "+short(e.Field, 100), ", ")
	if where != "" {
		b.WriteString(where + ": ")
	}
	b.WriteString(short(e.Problem, 400))
	if e.Remedy != "" {
		b.WriteString("\n    remedy: " + short(e.Remedy, 4000))
	}
	return b.String()
}

// short cuts a text that quotes what stands in a file to most bytes.
func short(s string, most int) string {
	if len(s) <= most {
		return s
	}
	return strings.ToValidUTF8(s[:most], "") + "…"
}

// Errors is every mistake found in a set of data files, in file and line
// order.
type Errors []*Error

// Error lists the first hundred: nobody corrects more at a time.
func (l Errors) Error() string {
	const most = 100
	var lines []string
	for _, e := range l[:min(most, len(l))] {
		lines = append(lines, e.Error())
	}
	if n := len(l) - most; n > 0 {
		lines = append(lines, fmt.Sprintf("and %d more mistakes", n))
	}
	return strings.Join(lines, "\n")
}

// Sorted puts the mistakes in file and line order.
func (l Errors) Sorted() Errors {
	slices.SortStableFunc(l, func(a, b *Error) int { return cmp.Or(strings.Compare(a.File, b.File), a.Line-b.Line) })
	return l
}
