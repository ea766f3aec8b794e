package report

import (
	"math"

	"alongside/props"
	"alongside/props/needs"
)

// needsJSON has, for each need that is switched on, how every material stands
// to it.
func needsJSON(materials []*props.Material, list []needs.Need) []object {
	var out []object
	for i := range list {
		if n := &list[i]; !n.Off {
			out = append(out, object{{"need", n.String()}, {"cells", each(materials, func(m **props.Material) object {
				j := needs.Judge(*m, n)
				return judgmentJSON(*m, &j)
			})}})
		}
	}
	return out
}

// judgmentJSON has its value and margin in the unit of the need. Of the margin,
// lo is the worse end of the figure, hi the better.
func judgmentJSON(m *props.Material, j *needs.Judgement) object {
	var figure, margin any
	if f := j.Figure; f != nil {
		figure = figureFields(f, j.Shown())
		margin = deltaJSON(j.Worst, math.NaN(), j.Best, j.Percent, j.Need.Limit.Unit.Symbol())
	}
	return object{{"material", m.ID}, {"status", j.Status.String()}, {"figure", figure}, {"margin", margin}, {"within_rounding", j.Rounding}, {"note", j.Note}}
}

func meritJSON(m *props.Material, r needs.Merit) object {
	var value any
	if r.Why == "" {
		value = resultJSON(r.Lo, r.Mid, r.Hi, "", meritText(r))
	}
	return object{{"material", m.ID}, {"value", value}, {"why", r.Why}, {"note", r.Note}}
}

// dutyJSON names the source of a duty in its own words: it stands in no list of
// sources, and the words say what of it was read.
func dutyJSON(d *needs.Duty, base *props.Material) object {
	source := object{{"id", ""}, {"title", d.Source}, {"table", ""}, {"known", ""}}
	return object{{"id", d.ID}, {"name", d.Name}, {"formula", d.Formula}, {"source", source}, {"baseline", base.ID}}
}

// json counts the near misses, of which near lists the nearest, and those of
// them that only missing figures stop. What is left out meets every need, but is
// known from memory alone.
func (s *Search) json() object {
	out := object{
		{"needs", s.texts()},
		{"met", each(s.Found.Met, s.resultJSON)},
		{"near", each(s.Found.Near, s.resultJSON)},
		{"count", object{{"met", len(s.Found.Met)}, {"near", s.Found.NearTotal}, {"cannot_be_judged", s.Found.UnjudgedTotal}}},
		{"left_out", ids(s.Found.Remembered)},
	}
	if s.Duty != nil {
		out = append(out, field{"duty", dutyJSON(s.Duty, s.Baseline)})
	}
	return append(out, field{"caution", Caution})
}

func (s *Search) resultJSON(r *needs.Result) object {
	var stops []string
	for _, j := range r.Stops {
		stops = append(stops, j.Need.String())
	}
	out := object{
		{"material", r.Material.ID},
		{"only_typical", r.OnlyTypical},
		{"from_memory", r.Recalled},
		{"judgments", each(r.Judgements, func(j *needs.Judgement) object { return judgmentJSON(r.Material, j) })},
		{"stopped_by", stops},
		{"cannot_be_judged", r.Unjudged()},
		{"met_by", ids(r.Lifts)},
	}
	if s.Duty != nil {
		out = append(out, field{"merit", meritJSON(r.Material, s.merit(r))})
	}
	return out
}
