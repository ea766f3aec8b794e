package report

import (
	"math"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/sheet"
	"alongside/units"
)

// statusSign is a need's state as a short word that stands in a cell.
func statusSign(s needs.Status) string {
	return [...]string{needs.NoFigure: "no figure", needs.Undecided: "undecided", needs.NotMet: "not met", needs.Partly: "not at worst", needs.OnlyTypical: "met, typical", needs.Met: "met"}[s]
}

// marginText writes how far inside (+) or outside (−) its limit a figure lies, at
// its worse end: "+3 ksi (+15 %)". It is "" for needs that have no margin.
func marginText(j *needs.Judgement) string {
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
	if m := marginText(j); m != "" {
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

// needsTable sets needs against materials: a row for each need, a column for
// each material.
func needsTable(materials []*props.Material, list []needs.Need) *sheet.Table {
	t := againstPins("Needs", "need", materials)
	for i := range list {
		n := &list[i]
		row := []string{needText(n)}
		for _, m := range materials {
			if n.Off {
				row = append(row, "")
				continue
			}
			j := needs.Judge(m, n)
			row = append(row, joined(" ", statusSign(j.Status), marginText(&j)))
		}
		t.Add(row...)
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

// judgedColumns are the columns of a judged need in a sheet, in the unit of the
// need.
var judgedColumns = []string{"value", "to", "basis", "known", "conditions", "state", "margin", "margin %", "note"}

// needsData is needsTable as bare numbers; needs switched off are left out.
func needsData(materials []*props.Material, list []needs.Need) *sheet.Table {
	head := []string{"need", "unit"}
	for _, m := range materials {
		head = append(head, prefixed(m.ID, judgedColumns)...)
	}
	t := &sheet.Table{Heading: "Needs", Columns: sheet.Columns(head...)}
	for i := range list {
		n := &list[i]
		if n.Off {
			continue
		}
		cells := []string{n.String(), n.Limit.Unit.Symbol()}
		for _, m := range materials {
			j := needs.Judge(m, n)
			cells = append(cells, judgedRecord(&j).cells(judgedColumns)...)
		}
		t.Add(cells...)
	}
	return t
}

func judgedRecord(j *needs.Judgement) record {
	r := record{"state": statusSign(j.Status), "note": j.Note}
	if j.Figure != nil {
		r.putFigure(j.Figure, j.Shown())
	}
	r.put("margin", j.Worst)
	r.put("margin %", j.Percent)
	return r
}

// meritText writes a merit relative to the baseline with its bounds.
func meritText(m needs.Merit) string {
	if m.Why != "" {
		return "–"
	}
	f := func(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }
	return f(m.Mid) + " (" + f(m.Lo) + "–" + f(m.Hi) + ")"
}

// judged is the figure of a judgement in the unit of its need, with the mark of
// its basis and that of a strength that is met on a typical figure only.
func judged(j *needs.Judgement, mark func(props.Basis) string, typical string) string {
	if j.Figure == nil {
		return "–"
	}
	s := j.Shown().Number() + mark(j.Figure.Basis)
	if j.Status == needs.OnlyTypical {
		s += typical
	}
	return s
}

// recalledBy is the sign at a judgement by a figure from memory.
func recalledBy(j *needs.Judgement) string {
	if j.Figure == nil {
		return ""
	}
	return knownBy[j.Figure.Known()].sign
}

// NeedValue is the figure on which a need was judged, as in FoundDoc.
func NeedValue(r *needs.Result, n *needs.Need) string {
	for i := range r.Judgements {
		if j := &r.Judgements[i]; j.Need == n || j.Need.Text == n.Text {
			return judged(j, Mark, "t") + recalledBy(j)
		}
	}
	return ""
}

// needText is a need, one that is switched off said to be so.
func needText(n *needs.Need) string {
	if n.Off {
		return n.String() + " (off)"
	}
	return n.String()
}
