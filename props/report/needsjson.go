package report

import (
	"alongside/props"
	"alongside/props/needs"
)

type jsonNeed struct {
	Need  string         `json:"need"`
	Cells []jsonJudgment `json:"cells"`
}

// jsonJudgment has its value and margin in the unit of the need. Of the margin,
// lo is the worse end of the figure, hi the better.
type jsonJudgment struct {
	Material string      `json:"material"`
	Status   string      `json:"status"`
	Figure   *jsonFigure `json:"figure"`
	Margin   *jsonDelta  `json:"margin"`
	// Rounding: the limit lies within the figure's rounding.
	Rounding bool   `json:"within_rounding"`
	Note     string `json:"note"`
}

func judgmentJSON(m *props.Material, j *needs.Judgement) jsonJudgment {
	out := jsonJudgment{Material: m.ID, Status: j.Status.String(), Rounding: j.Rounding, Note: clean(j.Note)}
	if f := j.Figure; f != nil {
		out.Figure = figureJSON(f, j.Shown())
		out.Margin = &jsonDelta{Lo: numberOf(j.Worst), Hi: numberOf(j.Best), Percent: numberOf(j.Percent), Unit: j.Need.Limit.Unit.Symbol()}
	}
	return out
}

func needsJSON(materials []*props.Material, list []needs.Need) []jsonNeed {
	var out []jsonNeed
	for i := range list {
		n := &list[i]
		if n.Off {
			continue
		}
		out = append(out, jsonNeed{n.String(), each(materials, func(m **props.Material) jsonJudgment {
			j := needs.Judge(*m, n)
			return judgmentJSON(*m, &j)
		})})
	}
	return out
}

// jsonFound counts the near misses of which Near lists the nearest, and those
// of them that only missing figures stop.
type jsonFound struct {
	Needs []string       `json:"needs"`
	Met   []jsonResult   `json:"met"`
	Near  []jsonResult   `json:"near"`
	Count jsonFoundCount `json:"count"`
	Duty  *jsonDuty      `json:"duty,omitempty"`

	Caution string `json:"caution"`
}

type jsonFoundCount struct {
	Met      int `json:"met"`
	Near     int `json:"near"`
	Unjudged int `json:"cannot_be_judged"`
}

type jsonDuty struct {
	ID       string     `json:"id"`
	Name     string     `json:"name"`
	Formula  string     `json:"formula"`
	Source   jsonSource `json:"source"`
	Baseline string     `json:"baseline"`
}

type jsonMerits struct {
	Duty    *jsonDuty   `json:"duty"`
	Merits  []jsonMerit `json:"merits"`
	Caution string      `json:"caution"`
}

type jsonResult struct {
	Material    string         `json:"material"`
	OnlyTypical bool           `json:"only_typical"`
	Judgments   []jsonJudgment `json:"judgments"`
	StoppedBy   []string       `json:"stopped_by"`
	Unjudged    bool           `json:"cannot_be_judged"`
	MetBy       []string       `json:"met_by"`
	Merit       *jsonMerit     `json:"merit,omitempty"`
}

type jsonMerit struct {
	Material string     `json:"material"`
	Value    *jsonValue `json:"value"`
	Why      string     `json:"why"`
	Note     string     `json:"note"`
}

func meritJSON(m *props.Material, r needs.Merit) *jsonMerit {
	out := &jsonMerit{Material: m.ID, Why: clean(r.Why), Note: clean(r.Note)}
	if r.Why == "" {
		out.Value = &jsonValue{Lo: numberOf(r.Lo), Mid: numberOf(r.Mid), Hi: numberOf(r.Hi), Printed: MeritText(r)}
	}
	return out
}

// dutyJSON names the source of a duty in its own words: it stands in no list of
// sources, and the words say what of it was read.
func dutyJSON(d *needs.Duty, base *props.Material) *jsonDuty {
	return &jsonDuty{d.ID, d.Name, d.Formula, jsonSource{Title: d.Source}, base.ID}
}

func (s *Search) json() any {
	d := jsonFound{Caution: Caution, Needs: cleaned(s.texts()), Met: each(s.Found.Met, s.resultJSON), Near: each(s.Found.Near, s.resultJSON),
		Count: jsonFoundCount{len(s.Found.Met), s.Found.NearTotal, s.Found.UnjudgedTotal}}
	if s.Duty != nil {
		d.Duty = dutyJSON(s.Duty, s.Baseline)
	}
	return d
}

func (s *Search) resultJSON(r *needs.Result) jsonResult {
	out := jsonResult{Material: r.Material.ID, OnlyTypical: r.OnlyTypical, Unjudged: r.Unjudged(), StoppedBy: []string{}, MetBy: ids(r.Lifts)}
	out.Judgments = each(r.Judgements, func(j *needs.Judgement) jsonJudgment { return judgmentJSON(r.Material, j) })
	for _, j := range r.Stops {
		out.StoppedBy = append(out.StoppedBy, clean(j.Need.String()))
	}
	if s.Duty != nil {
		out.Merit = meritJSON(r.Material, s.merit(r))
	}
	return out
}
