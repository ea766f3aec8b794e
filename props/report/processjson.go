package report

import (
	"alongside/props/foundry"
)

func processJSON(pages []*foundry.Page) object {
	return object{
		{"cards", each(pages, func(p **foundry.Page) object { return pageJSON(*p) })},
		{"caution", processNote + " " + Caution},
	}
}

func pageJSON(p *foundry.Page) object {
	heat := p.Heat
	var anodic any
	if a := p.Anodic; a != nil { // in volts below gold
		value := object{{"lo", a.Volts}, {"hi", a.Volts}, {"unit", "V"}, {"printed", a.Text()}}
		anodic = object{{"value", value}, {"group", a.Group}, {"source", citeJSON(a.Cite)}}
	}
	return object{
		{"material", p.Material.ID},
		{"process", p.Material.Process.ID()},
		{"why", p.Why},
		{"items", each(p.Items, itemJSON)},
		{"tolerances", each(p.Tolerances, toleranceJSON)},
		{"heat_treatment", object{
			{"meaning", each(heat.Meaning, statementJSON)},
			{"normally", heat.Normally},
			{"reasons", each(heat.Reasons, statementJSON)},
			{"tempers_on_file", heat.Tempers},
			{"schedules", each(heat.Schedules, scheduleJSON)},
			{"other_schedules", each(heat.Others, scheduleJSON)},
			{"why", heat.Why},
		}},
		{"designation", each(p.Designation, func(e *foundry.Explanation) object {
			return append(object{{"part", e.Part}}, statementJSON(&e.Statement)...)
		})},
		{"anodic_index", anodic},
	}
}

func itemJSON(it *foundry.Item) object {
	var value any
	if it.HasValue {
		value = object{{"lo", it.Value.Lo}, {"hi", it.Value.Hi}, {"unit", it.Value.Unit.Symbol() + it.Unit}, {"printed", it.Printed + it.Unit}}
	}
	return object{{"line", it.Kind.ID()}, {"value", value}, {"text", it.Text}, {"method", it.Method}, {"condition", it.Condition}, {"source", citeJSON(it.Cite)}}
}

func toleranceJSON(r *foundry.ToleranceResult) object {
	var full, half any
	if r.Why == "" {
		full = valueJSON(r.Full)
		if r.Kind != foundry.MachiningStock {
			half = valueJSON(r.PlusMinus)
		}
	}
	return object{{"kind", r.Kind.String()}, {"name", r.Name}, {"method", r.Method}, {"condition", r.Condition}, {"full", full}, {"plus_minus", half},
		{"how", r.How}, {"why", r.Why}, {"source", citeJSON(r.Cite)}, {"by", citeJSON(r.By)}}
}

func statementJSON(s *foundry.Statement) object {
	return object{{"text", s.Text}, {"source", citeJSON(s.Cite)}}
}

func scheduleJSON(s *foundry.Schedule) object {
	return object{{"temper", s.Temper}, {"steps", each(s.Steps, func(st *foundry.Step) string { return st.String() })}, {"note", s.Note}, {"source", citeJSON(s.Cite)}}
}
