package report

import (
	"alongside/props"
	"alongside/props/needs"
)

type jsonNeed struct {
	Need  string         `json:"need"`
	Cells []jsonJudgment `json:"cells"`
}

// jsonJudgment has its margins in the unit of the need; null where there is
// none. Lo is the worse end of the figure, Hi the better.
type jsonJudgment struct {
	Material string      `json:"material"`
	Status   string      `json:"status"`
	Figure   *jsonFigure `json:"figure"`
	Lo       *number     `json:"lo"`
	Hi       *number     `json:"hi"`
	Percent  *number     `json:"percent"`
	// Rounding: the limit lies within the figure's rounding.
	Rounding bool   `json:"within_rounding"`
	Note     string `json:"note"`
}

func judgmentJSON(m *props.Material, j *needs.Judgement) jsonJudgment {
	out := jsonJudgment{Material: m.ID, Status: j.Status.String(), Lo: numberOf(j.Worst), Hi: numberOf(j.Best), Percent: numberOf(j.Percent), Rounding: j.Rounding, Note: Clean(j.Note)}
	if f := j.Figure; f != nil {
		out.Figure = figureJSON(f, j.Shown())
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
		row := jsonNeed{Need: n.String()}
		for _, m := range materials {
			j := needs.Judge(m, n)
			row.Cells = append(row.Cells, judgmentJSON(m, &j))
		}
		out = append(out, row)
	}
	return out
}

type jsonFound struct {
	Needs []string     `json:"needs"`
	Met   []jsonResult `json:"met"`
	Near  []jsonResult `json:"near"`
	// NearTotal counts the near misses of which Near lists the nearest;
	// UnjudgedTotal those of them that only missing figures stop.
	NearTotal     int       `json:"near_total"`
	UnjudgedTotal int       `json:"unjudged_total"`
	Duty          *jsonDuty `json:"duty,omitempty"`
	Caution       string    `json:"caution"`
}

type jsonDuty struct {
	ID       string `json:"id"`
	Formula  string `json:"formula"`
	Source   string `json:"source"`
	Baseline string `json:"baseline"`
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
	Lo  *number `json:"lo"`
	Mid *number `json:"mid"`
	Hi  *number `json:"hi"`
	Why string  `json:"why"`
}

// FoundJSON writes what a search for needs found, for programs.
func FoundJSON(s Search) string {
	d := jsonFound{Caution: Caution, Needs: []string{}, Met: []jsonResult{}, Near: []jsonResult{}, NearTotal: s.Found.NearTotal, UnjudgedTotal: s.Found.UnjudgedTotal}
	for i := range s.Needs {
		if !s.Needs[i].Off {
			d.Needs = append(d.Needs, s.Needs[i].String())
		}
	}
	if s.Duty != nil {
		d.Duty = &jsonDuty{s.Duty.ID, s.Duty.Formula, s.Duty.Source, s.Baseline.ID}
	}
	result := func(r *needs.Result) jsonResult {
		out := jsonResult{Material: r.Material.ID, OnlyTypical: r.OnlyTypical, Unjudged: r.Unjudged(), Judgments: []jsonJudgment{}, StoppedBy: []string{}, MetBy: []string{}}
		for i := range r.Judgements {
			out.Judgments = append(out.Judgments, judgmentJSON(r.Material, &r.Judgements[i]))
		}
		for _, j := range r.Stops {
			out.StoppedBy = append(out.StoppedBy, j.Need.String())
		}
		for _, m := range r.Lifts {
			out.MetBy = append(out.MetBy, m.ID)
		}
		if s.Duty != nil {
			m := s.Duty.Relative(&s.Bench, r.Material, s.Baseline)
			out.Merit = &jsonMerit{Why: m.Why}
			if m.Why == "" {
				out.Merit.Lo, out.Merit.Mid, out.Merit.Hi = numberOf(m.Lo), numberOf(m.Mid), numberOf(m.Hi)
			}
		}
		return out
	}
	for i := range s.Found.Met {
		d.Met = append(d.Met, result(&s.Found.Met[i]))
	}
	for i := range s.Found.Near {
		d.Near = append(d.Near, result(&s.Found.Near[i]))
	}
	return indented(d)
}
