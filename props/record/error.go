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
	where := strings.Trim(e.Record+", "+e.Field, ", ")
	if where != "" {
		b.WriteString(where + ": ")
	}
	const most = 400 // bytes of a problem, which quotes what stands in the file
	if len(e.Problem) > most {
		b.WriteString(strings.ToValidUTF8(e.Problem[:most], "") + "…")
	} else {
		b.WriteString(e.Problem)
	}
	if e.Remedy != "" {
		b.WriteString("\n    remedy: " + e.Remedy)
	}
	return b.String()
}

// Errors is every mistake found in a set of data files, in file and line
// order.
type Errors []*Error

func (l Errors) Error() string {
	lines := make([]string, len(l))
	for i, e := range l {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Sorted puts the mistakes in file and line order.
func (l Errors) Sorted() Errors {
	slices.SortStableFunc(l, func(a, b *Error) int { return cmp.Or(strings.Compare(a.File, b.File), a.Line-b.Line) })
	return l
}
