package report

import (
	"encoding/json"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/units"
)

// processDocument is the JSON form of process cards. It is an interface: names
// are not changed and nothing is taken away. Values are not rounded; what is
// not known is null or empty.
type processDocument struct {
	Cards   []jsonCard `json:"cards"`
	Caution string     `json:"caution"`
}

type jsonCard struct {
	Material    string            `json:"material"`
	Process     string            `json:"process"`
	Why         string            `json:"why"`
	Items       []jsonItem        `json:"items"`
	Tolerances  []jsonTolerance   `json:"tolerances"`
	Heat        jsonHeat          `json:"heat_treatment"`
	Designation []jsonExplanation `json:"designation"`
	Anodic      *jsonAnodic       `json:"anodic_index"`
}

type jsonCite struct {
	Source string `json:"source"`
	Title  string `json:"title"`
	Table  string `json:"table"`
	Known  string `json:"known"`
}

// jsonSpan is a value or a range as its source prints it.
type jsonSpan struct {
	Lo   float64 `json:"lo"`
	Hi   float64 `json:"hi"`
	Unit string  `json:"unit"`
	Text string  `json:"text"`
}

type jsonItem struct {
	Line      string    `json:"line"`
	Value     *jsonSpan `json:"value"`
	Text      string    `json:"text"`
	Method    string    `json:"method"`
	Condition string    `json:"condition"`
	jsonCite
}

type jsonTolerance struct {
	Kind      string    `json:"kind"`
	Name      string    `json:"name"`
	Method    string    `json:"method"`
	Condition string    `json:"condition"`
	Full      *jsonSpan `json:"full"`
	PlusMinus *jsonSpan `json:"plus_minus"`
	How       string    `json:"how"`
	Why       string    `json:"why"`
	jsonCite
	By *jsonCite `json:"by"`
}

type jsonHeat struct {
	Meaning   []jsonStatement `json:"meaning"`
	Normally  string          `json:"normally"`
	Reasons   []jsonStatement `json:"reasons"`
	Tempers   []string        `json:"tempers_on_file"`
	Schedules []jsonSchedule  `json:"schedules"`
	Others    []jsonSchedule  `json:"other_schedules"`
	Why       string          `json:"why"`
}

type jsonStatement struct {
	Text string `json:"text"`
	jsonCite
}

type jsonSchedule struct {
	Temper string   `json:"temper"`
	Steps  []string `json:"steps"`
	Note   string   `json:"note"`
	jsonCite
}

type jsonExplanation struct {
	Part string `json:"part"`
	jsonStatement
}

type jsonAnodic struct {
	Volts float64 `json:"volts_below_gold"`
	Group string  `json:"group"`
	jsonCite
}

// ProcessJSON writes process cards for programs.
func ProcessJSON(book *foundry.Book, list []*props.Material, dimension *units.Quantity) string {
	d := processDocument{Cards: []jsonCard{}, Caution: ProcessNote + " " + Caution}
	for _, m := range list {
		d.Cards = append(d.Cards, cardJSON(book, m, dimension))
	}
	return encode(d)
}

func encode(v any) string {
	out, err := json.MarshalIndent(v, "", "  ")
	if err != nil { // texts and finite numbers only
		panic(err)
	}
	return string(out) + "\n"
}

func cardJSON(book *foundry.Book, m *props.Material, dimension *units.Quantity) jsonCard {
	c := book.Card(m)
	out := jsonCard{Material: m.ID, Process: m.Process.ID(), Why: c.Why, Items: []jsonItem{}, Tolerances: []jsonTolerance{},
		Heat: heatJSON(book.HeatTreat(m)), Designation: []jsonExplanation{}}
	for i := range c.Items {
		it := &c.Items[i]
		j := jsonItem{Line: it.Kind.ID(), Text: Clean(it.Text), Method: it.Method, Condition: Clean(it.Condition), jsonCite: citeJSON(it.Cite)}
		if it.HasValue {
			j.Value = spanJSON(it.Value, it.Unit)
			j.Value.Text = it.Printed + it.Unit
		}
		out.Items = append(out.Items, j)
	}
	if dimension != nil {
		for _, r := range book.Tolerance(m, *dimension) {
			out.Tolerances = append(out.Tolerances, toleranceJSON(&r))
		}
	}
	for _, e := range book.Designation(m) {
		out.Designation = append(out.Designation, jsonExplanation{e.Part, statementJSON(e.Statement)})
	}
	if a, ok := book.Anodic(m); ok {
		out.Anodic = &jsonAnodic{a.Volts, a.Group, citeJSON(a.Cite)}
	}
	return out
}

func toleranceJSON(r *foundry.ToleranceResult) jsonTolerance {
	j := jsonTolerance{Kind: r.Kind.String(), Name: r.Name, Method: r.Method, Condition: r.Condition, How: r.How, Why: r.Why}
	if r.Source != nil {
		j.jsonCite = citeJSON(r.Cite)
	}
	if r.By.Source != nil {
		by := citeJSON(r.By)
		j.By = &by
	}
	if r.Why == "" {
		j.Full, j.PlusMinus = spanJSON(r.Full, ""), spanJSON(r.PlusMinus, "")
		if r.Kind == foundry.MachiningStock {
			j.PlusMinus = nil
		}
	}
	return j
}

func spanJSON(q units.Quantity, unit string) *jsonSpan {
	return &jsonSpan{Quiet(q.Lo), Quiet(q.Hi), q.Unit.Symbol() + unit, q.String() + unit}
}

func citeJSON(c foundry.Cite) jsonCite {
	return jsonCite{c.Source.ID, SourceText(c.Source), c.Table, c.Known.String()}
}

func statementJSON(s foundry.Statement) jsonStatement {
	return jsonStatement{Clean(s.Text), citeJSON(s.Cite)}
}

func statementsJSON(list []foundry.Statement) []jsonStatement {
	out := []jsonStatement{}
	for _, s := range list {
		out = append(out, statementJSON(s))
	}
	return out
}

func heatJSON(c *foundry.HeatCard) jsonHeat {
	return jsonHeat{Meaning: statementsJSON(c.Meaning), Normally: c.Normally, Reasons: statementsJSON(c.Reasons),
		Tempers: append([]string{}, c.Tempers...), Schedules: schedulesJSON(c.Schedules), Others: schedulesJSON(c.Others), Why: c.Why}
}

func schedulesJSON(list []foundry.Schedule) []jsonSchedule {
	out := []jsonSchedule{}
	for i := range list {
		s := &list[i]
		j := jsonSchedule{Temper: s.Temper, Steps: []string{}, Note: s.Note, jsonCite: citeJSON(s.Cite)}
		for n := range s.Steps {
			j.Steps = append(j.Steps, s.Steps[n].String())
		}
		out = append(out, j)
	}
	return out
}
