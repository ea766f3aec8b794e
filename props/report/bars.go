package report

import (
	"fmt"
	"math"
	"strings"

	"alongside/props/bars"
	"alongside/props/sheet"
)

// barsCaution says what bars do not tell.
const barsCaution = "Bars tell of the bars, not of the casting. A bound holds for bars poured, treated and tested as these were."

// BarsDoc is what a shop's own test bars show, a row a set, with what kept a
// bound from being given.
func BarsDoc(sets []*bars.Set) *Doc {
	return &Doc{
		pictures: barsPictures(sets),
		text:     func(*numbering) *sheet.Doc { return barsText(sets) },
		data:     func() *sheet.Doc { return dataDoc(barsTable(sets, nil), nil, barsCaution) },
		json: func() object {
			return object{{"bars", each(sets, func(s **bars.Set) object { return barsJSON(*s) })}, {"caution", barsCaution + " " + Caution}}
		},
	}
}

func barsText(sets []*bars.Set) *sheet.Doc {
	var n numbering
	t := barsTable(sets, &n)
	d := &sheet.Doc{Blocks: append([]sheet.Block{sheet.Title("Test bars of the shop"), t}, blocks(barsPictures(sets))...), Foot: []string{barsCaution}, Caution: Caution}
	d.Notes = marked("", n.notes)
	return d
}

var barColumns = []string{"material", "bars", "heats", "mean", "deviation", "least", "90/95", "99/95", "specified", "Ppk", "notes"}

// barsTable numbers its notes in n; with nil they stand in the cells.
func barsTable(sets []*bars.Set, n *numbering) *sheet.Table {
	t := &sheet.Table{Columns: sheet.Columns(barColumns...)}
	if n == nil {
		t.Columns = append(sheet.Columns("property", "unit", "conditions"), t.Columns...)
	}
	for i := range t.Columns {
		if i > 0 && i < len(t.Columns)-1 && n != nil {
			t.Columns[i].Align = sheet.Right
		}
	}
	var group string
	for _, s := range sets {
		sum := s.Summary()
		cells := []string{s.Material.ID, fmt.Sprint(sum.N), fmt.Sprint(s.Heats()), s.Quantity(sum.Mean, 1).Number(), deviation(s, &sum),
			s.Quantity(sum.Least, 0).Number(), boundCell(s, &sum.B), boundCell(s, &sum.A), "", ""}
		if limit, ok := s.Minimum(); ok {
			cells[8] = limit.Number()
			if c, ok := sum.Capability(limit.Lo); ok {
				cells[9] = fmt.Sprintf("%.2f", c)
			}
		}
		notes := barNotes(s, &sum)
		if n == nil {
			t.Add(append([]string{s.Property.Info().Name, s.Unit.Symbol(), s.Conditions.String()}, append(cells, strings.Join(notes, "; "))...)...)
			continue
		}
		var marks []string
		for _, note := range notes {
			marks = append(marks, fmt.Sprint(n.note(note)))
		}
		t.Add(append(cells, strings.Join(marks, " "))...)
		heading := strings.TrimSuffix(s.Property.Info().Name+", "+s.Unit.Symbol()+", "+s.Conditions.String(), ", ")
		if heading != group {
			group = heading
			t.Rows[len(t.Rows)-1].Group = heading
		}
	}
	return t
}

func deviation(s *bars.Set, sum *bars.Summary) string {
	if math.IsNaN(sum.SD) {
		return ""
	}
	return s.Quantity(sum.SD, 1).Number()
}

func boundCell(s *bars.Set, b *bars.Bound) string {
	if !b.Found() {
		return "none"
	}
	return s.Bound(b).Number()
}

// barNotes says how the bounds were found, what looks like an outlier, and how
// many bars fall short.
func barNotes(s *bars.Set, sum *bars.Summary) []string {
	var out []string
	switch {
	case math.IsNaN(sum.AD):
	case sum.Normal():
		out = append(out, "bounds from mean and deviation: the bars pass the Anderson–Darling check for a normal distribution at 5 %")
	default:
		out = append(out, "the bars fail the Anderson–Darling check for a normal distribution at 5 %: bounds from the least bars alone")
	}
	for _, b := range []*bars.Bound{&sum.B, &sum.A} {
		if !b.Found() {
			out = append(out, b.Refusal)
		}
	}
	if b := sum.Outlier; b != nil {
		where := fmt.Sprintf("line %d", b.Line)
		if b.Heat != "" {
			where += ", heat " + b.Heat
		}
		out = append(out, fmt.Sprintf("%s %s looks like an outlier (%s; Grubbs' test at 5 %%); it is kept", s.Quantity(b.Value, 0).Number(), s.Unit.Symbol(), where))
	}
	if h := s.Heats(); h == 1 {
		out = append(out, "all bars are of one heat: the bounds tell of that heat")
	}
	if limit, ok := s.Minimum(); ok {
		below := 0
		for _, b := range s.Bars {
			if b.Value < limit.Lo {
				below++
			}
		}
		if below > 0 {
			out = append(out, fmt.Sprintf("%d of %d bars lie below the specified minimum", below, sum.N))
		}
	}
	return out
}

func barsJSON(s *bars.Set) object {
	sum := s.Summary()
	value := func(v float64, more int8) any {
		if math.IsNaN(v) {
			return nil
		}
		return valueJSON(s.Quantity(v, more))
	}
	bound := func(b *bars.Bound) any {
		if !b.Found() {
			return object{{"value", nil}, {"refusal", b.Refusal}}
		}
		return object{{"value", valueJSON(s.Bound(b))}, {"refusal", ""}}
	}
	var outlier any
	if b := sum.Outlier; b != nil {
		outlier = object{{"line", b.Line}, {"heat", b.Heat}, {"date", b.Date}, {"value", value(b.Value, 0)}}
	}
	out := object{{"material", s.Material.ID}, {"property", s.Property.String()}, {"conditions", s.Conditions.String()},
		{"count", object{{"bars", sum.N}, {"heats", s.Heats()}}},
		{"mean", value(sum.Mean, 1)}, {"deviation", value(sum.SD, 1)}, {"least", value(sum.Least, 0)}, {"most", value(sum.Most, 0)},
		{"normal", !math.IsNaN(sum.AD) && sum.Normal()}, {"bound_90_95", bound(&sum.B)}, {"bound_99_95", bound(&sum.A)}}
	var limit any
	if q, ok := s.Minimum(); ok {
		limit = valueJSON(q)
	}
	return append(out, field{"specified", limit}, field{"outlier", outlier}, field{"notes", barNotes(s, &sum)})
}
