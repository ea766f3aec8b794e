package report

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/sheet"
)

// Search is the needs, what was found and how it is looked at.
type Search struct {
	Needs    []needs.Need
	Found    needs.Found
	Bench    compare.Bench      // units and senses
	Baseline *props.Material    // for merit; may be nil
	Duty     *needs.Duty        // may be nil
	Front    bool               // Found.Met was narrowed to a trade-off front
	Show     []props.PropertyID // properties to show besides those of the needs
}

// FoundDoc is the materials that meet the needs, and the near misses with what
// stops and what would lift them.
func FoundDoc(s Search) *Doc { return &Doc{text: s.text, data: s.data, json: s.json} }

func (s *Search) texts() []string {
	var out []string
	for i := range s.Needs {
		if !s.Needs[i].Off {
			out = append(out, s.Needs[i].String())
		}
	}
	return out
}

func (s *Search) title() string {
	if texts := s.texts(); len(texts) > 0 {
		return "Materials with " + strings.Join(texts, "; ")
	}
	return "All materials"
}

const judgedBy = "Strength and elongation are judged on specified minimums (min) where they are published, other properties on typical figures."

func (s *Search) text(*numbering) *sheet.Doc {
	d := &sheet.Doc{Blocks: []sheet.Block{sheet.Title(s.title()), s.met()}, Caution: Caution}
	misses, unjudged := &sheet.Table{Columns: sheet.Columns("id", "stopped by")}, &sheet.Table{Columns: sheet.Columns("id", "no figure for")}
	for i := range s.Found.Near {
		r := &s.Found.Near[i]
		if r.Unjudged() {
			unjudged.Add(r.Material.ID, Stops(r))
		} else {
			misses.Add(r.Material.ID, Stops(r))
		}
	}
	s.list(d, misses, "near misses", s.Found.NearTotal-s.Found.UnjudgedTotal)
	s.list(d, unjudged, "cannot be judged, a figure is missing", s.Found.UnjudgedTotal)
	if s.Duty != nil {
		d.Foot = append(d.Foot, s.dutyLine())
	}
	d.Foot = append(d.Foot, s.foot()...)
	return d
}

// foot tells how the needs were judged, and what was not offered.
func (s *Search) foot() []string {
	if n := len(s.Found.Remembered); n > 0 {
		return []string{judgedBy, LeftOut(n, "--memory") + "."}
	}
	return []string{judgedBy}
}

// LeftOut says how many materials meet the needs too but were not offered, and what
// offers them.
func LeftOut(n int, how string) string {
	return fmt.Sprintf("Left out, known from memory alone: %d; %s offers them", n, how)
}

func (s *Search) dutyLine() string {
	return fmt.Sprintf("merit: %s, %s, relative to %s; %s", s.Duty.Name, s.Duty.Formula, s.Baseline.Name(), s.Duty.Source)
}

// list puts a table of what does not meet the needs into the document, and says
// how many there are.
func (s *Search) list(d *sheet.Doc, t *sheet.Table, name string, total int) {
	switch n := len(t.Rows); {
	case n > 0 && n < total:
		t.Heading = fmt.Sprintf("%s: %d of %d, nearest first", name, n, total)
	case n > 0:
		t.Heading = fmt.Sprintf("%s: %d", name, n)
	case total > 0 && len(s.Found.Near) > 0:
		d.Foot = append(d.Foot, fmt.Sprintf("%s: %d more, not listed.", name, total))
		return
	default:
		return
	}
	d.Blocks = append(d.Blocks, t)
}

// met is the table of the materials that meet every need.
func (s *Search) met() *sheet.Table {
	heading := "meets every need"
	if s.Front {
		heading += ", not beaten on both properties"
	}
	t := &sheet.Table{Heading: fmt.Sprintf("%s: %d", heading, len(s.Found.Met)), Columns: sheet.Columns(append([]string{"id"}, s.columns()...)...)}
	for i := range t.Columns[1:] {
		t.Columns[1+i].Align = sheet.Right
	}
	typical, rounding, recall := false, false, 0
	for i := range s.Found.Met {
		r := &s.Found.Met[i]
		t.Add(append([]string{r.Material.ID}, s.cells(r)...)...)
		typical = typical || r.OnlyTypical
		if r.Recalled {
			recall++
		}
		rounding = rounding || slices.ContainsFunc(r.Judgements, func(j needs.Judgement) bool { return j.Rounding })
		if s.Duty == nil {
			continue
		}
		m := s.merit(r)
		for _, note := range []string{m.Note, m.Why} {
			if note != "" && !slices.Contains(t.Notes, "merit: "+note) {
				t.Notes = append(t.Notes, "merit: "+note)
			}
		}
	}
	if typical {
		t.Notes = append(t.Notes, "t: met on a typical figure only; no specified minimum is on file")
	}
	if rounding {
		t.Notes = append(t.Notes, "~: "+needs.WithinRounding)
	}
	if recall > 0 {
		t.Notes = append(t.Notes, fmt.Sprintf("%s; %d of the %d rest on such a figure", RecalledSign, recall, len(s.Found.Met)))
	}
	return t
}

func (s *Search) merit(r *needs.Result) needs.Merit {
	return s.Duty.Relative(&s.Bench, r.Material, s.Baseline)
}

// Stops says in words what stops a near miss and what would lift it.
func Stops(r *needs.Result) string {
	var parts []string
	for _, j := range r.Stops {
		parts = append(parts, j.Need.String()+": "+JudgementText(j))
	}
	s := strings.Join(parts, "; ")
	if len(r.Lifts) > 0 {
		s += "; met by " + strings.Join(ids(r.Lifts), ", ")
	}
	return s
}

// asked are the needs that name a property, each with a column of its own.
func (s *Search) asked() []*needs.Need {
	var out []*needs.Need
	for i := range s.Needs {
		if n := &s.Needs[i]; n.Kind == needs.OfProperty && !n.Off {
			out = append(out, n)
		}
	}
	return out
}

// columns head the properties asked for, each in the unit of its need.
func (s *Search) columns() []string {
	var out []string
	for _, n := range s.asked() {
		out = append(out, joined(" ", headIn(n.Property, n.Limit.Unit)...))
	}
	for _, p := range s.Show {
		out = append(out, joined(" ", headIn(p, s.Bench.UnitOf(p))...))
	}
	if s.Duty != nil {
		out = append(out, "merit")
	}
	return out
}

func (s *Search) cells(r *needs.Result) []string {
	var out []string
	for i := range r.Judgements {
		j := &r.Judgements[i]
		if j.Need.Kind != needs.OfProperty {
			continue
		}
		cell := judged(j, markWord, " typical")
		if j.Rounding {
			cell += "~"
		}
		out = append(out, cell+recalledBy(j))
	}
	for _, text := range Brief(&s.Bench, r.Material, s.Show, markWord) {
		if text == "" {
			text = "–"
		}
		out = append(out, text)
	}
	if s.Duty != nil {
		out = append(out, meritText(s.merit(r)))
	}
	return out
}

// data has a record a material, the near misses included.
func (s *Search) data() *sheet.Doc {
	head := []string{"id", "name", "result"}
	for _, n := range s.asked() {
		head = append(head, prefixed(joined(", ", n.String(), n.Limit.Unit.Symbol()), judgedColumns)...)
	}
	for _, p := range s.Show {
		head = append(head, prefixed(joined(" ", p.String(), s.Bench.UnitOf(p).Symbol()), keyColumns)...)
	}
	if s.Duty != nil {
		head = append(head, prefixed("merit", meritColumns)...)
	}
	t := &sheet.Table{Columns: sheet.Columns(append(head, "stopped by", "met by")...)}
	for i := range s.Found.Met {
		t.Add(s.record(&s.Found.Met[i], "met")...)
	}
	for i := range s.Found.Near {
		result := "near miss"
		if s.Found.Near[i].Unjudged() {
			result = "cannot be judged"
		}
		t.Add(s.record(&s.Found.Near[i], result)...)
	}
	foot := append([]string{s.title()}, s.foot()...)
	if s.Duty != nil {
		foot = append(foot, s.dutyLine())
	}
	return dataDoc(t, nil, foot...)
}

func (s *Search) record(r *needs.Result, result string) []string {
	cells := []string{r.Material.ID, r.Material.Name(), result}
	for i := range r.Judgements {
		if j := &r.Judgements[i]; j.Need.Kind == needs.OfProperty {
			cells = append(cells, judgedRecord(j).cells(judgedColumns)...)
		}
	}
	for _, p := range s.Show {
		cells = append(cells, keyRecord(s.Bench.Figure(r.Material, p), s.Bench.UnitOf(p)).cells(keyColumns)...)
	}
	if s.Duty != nil {
		cells = append(cells, meritRecord(s.merit(r)).cells(meritColumns)...)
	}
	stops := ""
	if len(r.Stops) > 0 {
		stops = Stops(r)
	}
	return append(cells, stops, strings.Join(ids(r.Lifts), ", "))
}

func ids(list []*props.Material) []string {
	out := make([]string, len(list))
	for i, m := range list {
		out[i] = m.ID
	}
	return out
}
