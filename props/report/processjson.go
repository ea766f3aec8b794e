package report

import (
	"alongside/props"
	"alongside/props/foundry"
	"alongside/units"
)

type jsonProcess struct {
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

type jsonItem struct {
	Line      string      `json:"line"`
	Value     *jsonValue  `json:"value"`
	Text      string      `json:"text"`
	Method    string      `json:"method"`
	Condition string      `json:"condition"`
	Source    *jsonSource `json:"source"`
}

type jsonTolerance struct {
	Kind      string      `json:"kind"`
	Name      string      `json:"name"`
	Method    string      `json:"method"`
	Condition string      `json:"condition"`
	Full      *jsonValue  `json:"full"`
	PlusMinus *jsonValue  `json:"plus_minus"`
	How       string      `json:"how"`
	Why       string      `json:"why"`
	Source    *jsonSource `json:"source"`
	By        *jsonSource `json:"by"`
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
	Text   string      `json:"text"`
	Source *jsonSource `json:"source"`
}

type jsonSchedule struct {
	Temper string      `json:"temper"`
	Steps  []string    `json:"steps"`
	Note   string      `json:"note"`
	Source *jsonSource `json:"source"`
}

type jsonExplanation struct {
	Part string `json:"part"`
	jsonStatement
}

// jsonAnodic has the volts below gold.
type jsonAnodic struct {
	Value  jsonValue   `json:"value"`
	Group  string      `json:"group"`
	Source *jsonSource `json:"source"`
}

func processJSON(book *foundry.Book, list []*props.Material, dimension *units.Quantity) jsonProcess {
	return jsonProcess{Caution: ProcessNote + " " + Caution, Cards: each(list, func(m **props.Material) jsonCard {
		return cardJSON(book, *m, dimension)
	})}
}

func cardJSON(book *foundry.Book, m *props.Material, dimension *units.Quantity) jsonCard {
	c := book.Card(m)
	out := jsonCard{Material: m.ID, Process: m.Process.ID(), Why: c.Why, Items: each(c.Items, itemJSON), Tolerances: []jsonTolerance{},
		Heat: heatJSON(book.HeatTreat(m)), Designation: each(book.Designation(m), func(e *foundry.Explanation) jsonExplanation {
			return jsonExplanation{e.Part, statementJSON(&e.Statement)}
		})}
	if dimension != nil {
		out.Tolerances = each(book.Tolerance(m, *dimension), toleranceJSON)
	}
	if a, ok := book.Anodic(m); ok {
		v := numberOf(a.Volts)
		out.Anodic = &jsonAnodic{jsonValue{Lo: v, Hi: v, Unit: "V", Printed: a.Text()}, a.Group, citeJSON(a.Cite)}
	}
	return out
}

func itemJSON(it *foundry.Item) jsonItem {
	j := jsonItem{Line: it.Kind.ID(), Text: clean(it.Text), Method: it.Method, Condition: clean(it.Condition), Source: citeJSON(it.Cite)}
	if it.HasValue {
		v := valueJSON(it.Value)
		v.Unit += it.Unit
		v.Printed = it.Printed + it.Unit
		j.Value = &v
	}
	return j
}

func toleranceJSON(r *foundry.ToleranceResult) jsonTolerance {
	j := jsonTolerance{Kind: r.Kind.String(), Name: r.Name, Method: r.Method, Condition: r.Condition, How: r.How, Why: r.Why,
		Source: citeJSON(r.Cite), By: citeJSON(r.By)}
	if r.Why == "" {
		full, each := valueJSON(r.Full), valueJSON(r.PlusMinus)
		j.Full = &full
		if r.Kind != foundry.MachiningStock {
			j.PlusMinus = &each
		}
	}
	return j
}

func statementJSON(s *foundry.Statement) jsonStatement {
	return jsonStatement{clean(s.Text), citeJSON(s.Cite)}
}

func heatJSON(c *foundry.HeatCard) jsonHeat {
	return jsonHeat{Meaning: each(c.Meaning, statementJSON), Normally: c.Normally, Reasons: each(c.Reasons, statementJSON),
		Tempers: cleaned(c.Tempers), Schedules: each(c.Schedules, scheduleJSON), Others: each(c.Others, scheduleJSON), Why: c.Why}
}

func scheduleJSON(s *foundry.Schedule) jsonSchedule {
	return jsonSchedule{s.Temper, each(s.Steps, func(st *foundry.Step) string { return st.String() }), s.Note, citeJSON(s.Cite)}
}
