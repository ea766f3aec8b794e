package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/units"
)

// StatusSign is a need's state as a short word that stands in a cell.
func StatusSign(s needs.Status) string {
	return [...]string{needs.NoFigure: "no figure", needs.NotMet: "not met", needs.Partly: "not at worst", needs.OnlyTypical: "met, typical", needs.Met: "met"}[s]
}

// Margin writes how far inside (+) or outside (−) its limit a figure lies, at
// its worse end: "+3 ksi (+15 %)". It is "" for needs that have no margin.
func Margin(j *needs.Judgement) string {
	if math.IsNaN(j.Worst) || j.Figure == nil {
		return ""
	}
	limit := j.Need.Limit
	s := marginNumber(j)
	if limit.Unit.Dimension() == units.Temperature || limit.Unit.Symbol() != "" {
		s += " " + limit.Unit.Symbol()
	}
	if !math.IsNaN(j.Percent) {
		s += " (" + signed(j.Percent, 0) + " %)"
	}
	if j.Figure.Value.IsRange() {
		s += " at worst"
	}
	return s
}

// marginNumber is the worse margin in the unit of the need, with its sign and
// no more digits than the figure and the limit carry; one more than the limit
// where the figure has it and the margin would lose it (0.12 under 2.8).
func marginNumber(j *needs.Judgement) string {
	limit := j.Need.Limit
	place := limit.Place
	if v := j.Shown(); v.Unit == limit.Unit {
		place = max(place-1, v.Place)
	}
	decimals := int(max(0, -place))
	s := signed(j.Worst, decimals)
	if at := int(max(0, -limit.Place)); decimals > at {
		if trimmed, ok := strings.CutSuffix(s, "0"); ok {
			decimals, s = at, strings.TrimSuffix(trimmed, ".")
		}
	}
	for extra := 1; s == signed(0, decimals) && math.Abs(j.Worst) > 1e-9 && extra <= 2; extra++ {
		// A small miss must not read as none.
		decimals++
		s = signed(j.Worst, decimals)
	}
	return s
}

// JudgementText is a judgement in one line: "23.0 ksi specified minimum: met,
// +3 ksi (+15 %)". The figure stands in the unit of the need; as printed it
// follows in parentheses where that is another unit.
func JudgementText(j *needs.Judgement) string {
	if j.Status == needs.NoFigure {
		if j.Note == compare.NoFigureOnFile {
			return j.Note
		}
		return j.Status.String() + ": " + j.Note
	}
	s := j.Status.String()
	if m := Margin(j); m != "" {
		s += ", " + m
	}
	var more []string
	if j.Note != "" {
		more = append(more, j.Note)
	}
	if f := j.Figure; f != nil {
		q := j.Shown()
		s = q.String() + " " + f.Basis.Phrase() + ": " + s
		if q.Unit != f.Value.Unit {
			more = append(more, "printed "+f.Value.String())
		}
	}
	if len(more) > 0 {
		s += " (" + strings.Join(more, "; ") + ")"
	}
	return s
}

// NeedsTable sets needs against materials: a row for each need, a column for
// each material.
func NeedsTable(materials []*props.Material, list []needs.Need) DocTable {
	t := DocTable{Heading: "Needs", Head: []string{"need"}}
	for _, m := range materials {
		t.Head = append(t.Head, m.ID)
	}
	for i := range list {
		n := &list[i]
		row := []string{n.String()}
		if n.Off {
			row[0] += " (off)"
		}
		for _, m := range materials {
			if n.Off {
				row = append(row, "")
				continue
			}
			j := needs.Judge(m, n)
			row = append(row, strings.TrimSpace(StatusSign(j.Status)+" "+Margin(&j)))
		}
		t.Rows = append(t.Rows, row)
	}
	for _, m := range materials {
		r := needs.JudgeAll(m, list)
		for i := range r.Judgements {
			if j := &r.Judgements[i]; j.Status == needs.OnlyTypical || j.Note != "" {
				t.Notes = append(t.Notes, m.ID+", "+j.Need.String()+": "+JudgementText(j))
			}
		}
	}
	return t
}

// Search is what FoundDoc reports: the needs, what was found and how it is
// looked at.
type Search struct {
	Needs    []needs.Need
	Found    needs.Found
	Bench    compare.Bench      // units and senses
	Baseline *props.Material    // for merit; may be nil
	Duty     *needs.Duty        // may be nil
	Front    bool               // Found.Met was narrowed to a trade-off front
	Show     []props.PropertyID // properties to show besides those of the needs
}

// FoundDoc reports the materials that meet the needs, and the near misses with
// what stops and what would lift them.
func FoundDoc(s Search) *Doc {
	var texts []string
	for i := range s.Needs {
		if !s.Needs[i].Off {
			texts = append(texts, s.Needs[i].String())
		}
	}
	d := &Doc{Title: "Materials with " + strings.Join(texts, "; ")}
	if len(texts) == 0 {
		d.Title = "All materials"
	}
	heading := "meets every need"
	if s.Front {
		heading += ", not beaten on both properties"
	}
	met := DocTable{Heading: fmt.Sprintf("%s: %d", heading, len(s.Found.Met)), Head: append([]string{"id"}, s.columns()...), Right: 1}
	typical, rounding := false, false
	for _, r := range s.Found.Met {
		met.Rows = append(met.Rows, append([]string{r.Material.ID}, s.cells(&r)...))
		typical = typical || r.OnlyTypical
		rounding = rounding || slices.ContainsFunc(r.Judgements, func(j needs.Judgement) bool { return j.Rounding })
		if s.Duty != nil {
			m := s.Duty.Relative(&s.Bench, r.Material, s.Baseline)
			for _, note := range []string{m.Note, m.Why} {
				if note != "" && !slices.Contains(met.Notes, "merit: "+note) {
					met.Notes = append(met.Notes, "merit: "+note)
				}
			}
		}
	}
	if typical {
		met.Notes = append(met.Notes, "t: met on a typical figure only; no specified minimum is on file")
	}
	if rounding {
		met.Notes = append(met.Notes, "~: "+needs.WithinRounding)
	}
	d.Tables = append(d.Tables, met)
	misses, unjudged := DocTable{Head: []string{"id", "stopped by"}}, DocTable{Head: []string{"id", "no figure for"}}
	for _, r := range s.Found.Near {
		t := &misses
		if r.Unjudged() {
			t = &unjudged
		}
		t.Rows = append(t.Rows, []string{r.Material.ID, Stops(&r)})
	}
	for _, g := range []struct {
		table *DocTable
		name  string
		total int
	}{{&misses, "near misses", s.Found.NearTotal - s.Found.UnjudgedTotal}, {&unjudged, "cannot be judged, a figure is missing", s.Found.UnjudgedTotal}} {
		switch n := len(g.table.Rows); {
		case n == 0 && g.total > 0 && len(s.Found.Near) > 0:
			d.Foot = append(d.Foot, fmt.Sprintf("%s: %d more, not listed.", g.name, g.total))
		case n == 0:
		case n < g.total:
			g.table.Heading = fmt.Sprintf("%s: %d of %d, nearest first", g.name, n, g.total)
			d.Tables = append(d.Tables, *g.table)
		default:
			g.table.Heading = fmt.Sprintf("%s: %d", g.name, n)
			d.Tables = append(d.Tables, *g.table)
		}
	}
	if s.Duty != nil {
		d.Foot = append(d.Foot, fmt.Sprintf("merit: %s, %s, relative to %s; %s", s.Duty.Name, s.Duty.Formula, s.Baseline.Name(), s.Duty.Source))
	}
	d.Foot = append(d.Foot, "Strength and elongation are judged on specified minimums (m) where they are published, other properties on typical figures.")
	return d
}

// Stops says in words what stops a near miss and what would lift it.
func Stops(r *needs.Result) string {
	var parts []string
	for _, j := range r.Stops {
		parts = append(parts, j.Need.String()+": "+JudgementText(j))
	}
	s := strings.Join(parts, "; ")
	if len(r.Lifts) > 0 {
		var ids []string
		for _, m := range r.Lifts {
			ids = append(ids, m.ID)
		}
		s += "; met by " + strings.Join(ids, ", ")
	}
	return s
}

// columns are the properties asked for, each in the unit of its need.
func (s *Search) columns() []string {
	var out []string
	for i := range s.Needs {
		if n := &s.Needs[i]; n.Kind == needs.OfProperty && !n.Off {
			out = append(out, strings.TrimSpace(strings.ToLower(n.Property.Info().Short)+" "+n.Limit.Unit.Symbol()))
		}
	}
	for _, p := range s.Show {
		out = append(out, strings.TrimSpace(strings.ToLower(p.Info().Short)+" "+s.Bench.UnitOf(p).Symbol()))
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
		cell := judged(j)
		if j.Rounding {
			cell += "~"
		}
		out = append(out, cell)
	}
	for _, p := range s.Show {
		cell := "–"
		if f := s.Bench.Figure(r.Material, p); f != nil {
			cell = f.Value.String()
			if q, err := f.Value.In(s.Bench.UnitOf(p)); err == nil {
				cell = q.Number()
			}
			cell += marks[f.Basis]
		}
		out = append(out, cell)
	}
	if s.Duty != nil {
		out = append(out, MeritText(s.Duty.Relative(&s.Bench, r.Material, s.Baseline)))
	}
	return out
}

// MeritText writes a merit relative to the baseline with its bounds.
func MeritText(m needs.Merit) string {
	if m.Why != "" {
		return "–"
	}
	f := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
	return f(m.Mid) + " (" + f(m.Lo) + "–" + f(m.Hi) + ")"
}

// judged is the figure of a judgement in the unit of its need, with the sign
// of its basis; t marks a strength that is met on a typical figure only.
func judged(j *needs.Judgement) string {
	if j.Figure == nil {
		return "–"
	}
	s := j.Shown().Number() + marks[j.Figure.Basis]
	if j.Status == needs.OnlyTypical {
		s += "t"
	}
	return s
}

// NeedValue is the figure on which a need was judged, as in FoundDoc.
func NeedValue(r *needs.Result, n *needs.Need) string {
	for i := range r.Judgements {
		if j := &r.Judgements[i]; j.Need == n || j.Need.Text == n.Text {
			return judged(j)
		}
	}
	return ""
}
