// Package shelf is the list of figures that wait until the shop has looked them
// up in its own copy of the source: what is to look up, the list read back, and
// the file in which the shop keeps what it found.
package shelf

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/record"
)

// Item is a figure that waits.
type Item struct {
	catalog.Place
	Figure *props.Figure
	Name   string // of what it is stated for
}

// Waiting lists the figures that nobody has seen in their source: those from
// memory alone, with agreed those too that agree with another document. They
// stand in the order of the source list, its tables, the catalog and the
// properties. A figure that the catalog has twice comes once.
func Waiting(c *catalog.Catalog, agreed bool) []Item {
	var out []Item
	order := map[*props.Source]int{}
	for i, s := range c.Sources {
		order[s] = i
	}
	seen := map[catalog.Place]bool{}
	for o, f := range c.Stated() {
		if k := f.Known(); k != props.Memory && !(agreed && k == props.Agreed) || f.Source.Kind == "none" {
			continue
		}
		if p := catalog.PlaceOf(o, f); !seen[p] {
			seen[p] = true
			out = append(out, Item{p, f, nameOf(o, p.Of)})
		}
	}
	slices.SortStableFunc(out, func(a, b Item) int {
		return cmp.Or(cmp.Compare(order[a.Figure.Source], order[b.Figure.Source]), natural(a.Figure.Table, b.Figure.Table))
	})
	return out
}

// nameOf is what a figure is stated for as people call it.
func nameOf(o catalog.Owner, of string) string {
	_, limits, some := strings.Cut(of, ";")
	name := o.Family.Name
	switch {
	case o.Material != nil:
		return o.Material.Name()
	case o.Alloy != nil:
		name = o.Alloy.Name
	}
	if some {
		name += " (" + strings.TrimSpace(limits) + ")"
	}
	return name
}

// natural compares as people count: Table 2 stands before Table 10.
func natural(a, b string) int {
	for a != "" && b != "" {
		m, n := digits(a), digits(b)
		if m > 0 && n > 0 {
			x, y := strings.TrimLeft(a[:m], "0"), strings.TrimLeft(b[:n], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[m:], b[n:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

func digits(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }

// Key marks a figure in a list: eight letters that change when the figure does.
// Without vowels and numbers they are neither words nor what a spreadsheet would
// take for a number.
func Key(p catalog.Place) string {
	h := fnv.New64a()
	fmt.Fprint(h, strings.Join([]string{p.Of, p.Property, p.Basis, p.Source, p.Conditions, p.Catalog}, "\n"))
	sum, key := h.Sum64(), make([]byte, keyLength)
	for i := range key {
		key[i] = keyLetters[sum%uint64(len(keyLetters))]
		sum /= uint64(len(keyLetters))
	}
	return string(key)
}

const (
	keyLetters = "bcdfghjklmnpqrstvwxz"
	keyLength  = 8
)

// fileHead begins a file that was not there before.
const fileHead = "# Figures that the shop looked up in its own copies of the sources.\n"

// Merge is the text of the shop's file with checks added. One of a figure that
// is in it already takes the place of the old one; whatever else the file holds
// stays. The error is a record.Errors: mistakes of the old text.
func Merge(name string, old []byte, checks []catalog.Check) ([]byte, error) {
	var errs record.Errors
	var all []catalog.Check
	at := map[catalog.Place]int{}
	put := func(c catalog.Check) {
		i, there := at[c.Place]
		if !there {
			i, all = len(all), append(all, c)
			at[c.Place] = i
		}
		all[i] = c
	}
	for _, r := range record.ReadRecords(name, old, &errs) {
		if r.Kind() == "checked" {
			put(catalog.ReadCheck(r))
		}
	}
	if len(errs) > 0 {
		return nil, errs
	}
	for _, c := range checks {
		put(c)
	}
	var out strings.Builder
	if out.WriteString(others(string(old))); out.Len() == 0 {
		out.WriteString(fileHead)
	}
	for _, c := range all {
		out.WriteString("\n[[checked]]\n")
		for _, f := range []struct{ key, value string }{{"of", c.Of}, {"property", c.Property}, {"basis", c.Basis}, {"source", c.Source}, {"conditions", c.Conditions},
			{"catalog", c.Catalog}, {"reads", c.Reads}, {"edition", c.Edition}, {"table", c.Table}, {"by", c.By}, {"on", c.On}} {
			if f.value != "" {
				fmt.Fprintf(&out, "%s = %s\n", f.key, strconv.Quote(f.value))
			}
		}
	}
	return []byte(out.String()), nil
}

// others is a data file without its checks.
func others(text string) string {
	var kept []string
	inCheck, ended := false, false
	for l := range strings.Lines(strings.ReplaceAll(text, "\r\n", "\n")) {
		switch line := strings.TrimSpace(l); {
		case strings.HasPrefix(line, "["):
			inCheck, ended = strings.HasPrefix(strings.ReplaceAll(line, " ", ""), "[[checked]]"), false
		case line == "":
			ended = true
		case line[0] == '#' && ended:
			inCheck = false
		}
		if !inCheck {
			kept = append(kept, l)
		}
	}
	if text = strings.TrimRight(strings.Join(kept, ""), "\n"); text != "" {
		text += "\n"
	}
	return text
}
