package report

import (
	"strings"

	"alongside/props/sheet"
	"alongside/props/swap"
)

var swapColumns = []string{"from", "to", "group", "line", "name", "unit",
	"today", "today from", "today to", "swapped", "swapped from", "swapped to",
	"ratio", "ratio from", "ratio to", "words", "needs", "reason", "notes", "formula", "formula source", "figures"}

// swapData has a record a line of a swap; from and to are the worst cases.
func swapData(results []*swap.Result) *sheet.Doc {
	t := &sheet.Table{Columns: sheet.Columns(swapColumns...)}
	for _, r := range results {
		for i := range r.Lines {
			t.Add(swapRecord(r, &r.Lines[i]).cells(swapColumns)...)
		}
	}
	return dataDoc(t, nil, SwapCaution)
}

func swapRecord(r *swap.Result, l *swap.Line) record {
	out := record{"from": r.Base.ID, "to": r.Pin.ID, "group": l.Group.String(), "line": l.ID, "name": l.Name, "words": l.Words,
		"needs": l.Need, "reason": l.Reason, "notes": strings.Join(l.Notes, "; "), "formula": l.Formula.Text}
	if l.Value != nil {
		out["unit"] = l.Value.UnitText()
	}
	for name, v := range map[string]*swap.Value{"today": l.Base, "swapped": l.Value, "ratio": l.Ratio} {
		if v != nil {
			out[name], out[name+" from"], out[name+" to"] = bare(v.Mid), bare(v.Lo), bare(v.Hi)
		}
	}
	if f := l.Formula; f.Source != nil {
		out["formula source"] = cited(sourceText(f.Source), "", f.Known)
	}
	var figures []string
	for _, u := range l.Figures {
		figures = append(figures, u.Symbol+" "+figureText(u.Figure, u.Figure.Value.String(), cited(u.Figure.Source.ID, u.Figure.Table, u.Figure.Known())))
	}
	out["figures"] = strings.Join(figures, " | ")
	return out
}

func swapJSON(results []*swap.Result) object {
	return object{
		{"swaps", each(results, func(r **swap.Result) object {
			return object{{"from", (*r).Base.ID}, {"to", (*r).Pin.ID}, {"part", (*r).Given.Part}, {"worth", (*r).Worth()}, {"lines", each((*r).Lines, swapLineJSON)}}
		})},
		{"caution", SwapCaution + " " + Caution},
	}
}

func swapValueJSON(v *swap.Value) any {
	if v == nil {
		return nil
	}
	return resultJSON(v.Lo, v.Mid, v.Hi, v.UnitText(), v.String())
}

func swapLineJSON(l *swap.Line) object {
	var formula any
	if f := l.Formula; f.Source != nil {
		formula = object{{"text", f.Text}, {"source", sourceJSON(f.Source, "", f.Known)}}
	}
	return object{
		{"group", l.Group.String()},
		{"id", l.ID},
		{"name", l.Name},
		{"today", swapValueJSON(l.Base)},
		{"swapped", swapValueJSON(l.Value)},
		{"ratio", swapValueJSON(l.Ratio)},
		{"words", l.Words},
		{"needs", l.Need},
		{"reason", l.Reason},
		{"notes", l.Notes},
		{"formula", formula},
		{"figures", each(l.Figures, func(u *swap.Used) object {
			return append(object{{"symbol", u.Symbol}, {"material", u.Of.ID}, {"property", u.Figure.Property.String()}}, figureFields(u.Figure, u.Figure.Value)...)
		})},
	}
}
