package report

import (
	"strings"

	"alongside/props/part"
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
			out[name], out[name+" from"], out[name+" to"] = Plain(v.Mid), Plain(v.Lo), Plain(v.Hi)
		}
	}
	if f := l.Formula; f.Source != nil {
		out["formula source"] = cited(SourceText(f.Source), "", f.Known)
	}
	var figures []string
	for _, u := range l.Figures {
		figures = append(figures, u.Symbol+" "+figureText(u.Figure, u.Figure.Value.String(), cited(u.Figure.Source.ID, u.Figure.Table, u.Figure.Known())))
	}
	out["figures"] = strings.Join(figures, " | ")
	return out
}

type jsonSwaps struct {
	Swaps   []jsonSwap `json:"swaps"`
	Caution string     `json:"caution"`
}

type jsonSwap struct {
	From  string         `json:"from"`
	To    string         `json:"to"`
	Part  part.Part      `json:"part"`
	Worth []string       `json:"worth"`
	Lines []jsonSwapLine `json:"lines"`
}

type jsonSwapLine struct {
	Group   string       `json:"group"`
	ID      string       `json:"id"`
	Name    string       `json:"name"`
	Today   *jsonValue   `json:"today"`
	Swapped *jsonValue   `json:"swapped"`
	Ratio   *jsonValue   `json:"ratio"`
	Words   string       `json:"words"`
	Needs   string       `json:"needs"`
	Reason  string       `json:"reason"`
	Notes   []string     `json:"notes"`
	Formula *jsonFormula `json:"formula"`
	Figures []jsonUsed   `json:"figures"`
}

type jsonFormula struct {
	Text   string     `json:"text"`
	Source jsonSource `json:"source"`
}

// jsonUsed is a figure that went into a formula.
type jsonUsed struct {
	Symbol   string `json:"symbol"`
	Material string `json:"material"`
	Property string `json:"property"`
	jsonFigure
}

func swapJSON(results []*swap.Result) jsonSwaps {
	return jsonSwaps{Caution: SwapCaution + " " + Caution, Swaps: each(results, func(r **swap.Result) jsonSwap {
		return jsonSwap{(*r).Base.ID, (*r).Pin.ID, (*r).Given.Part, cleaned((*r).Worth()), each((*r).Lines, swapLineJSON)}
	})}
}

func swapLineJSON(l *swap.Line) jsonSwapLine {
	out := jsonSwapLine{Group: l.Group.String(), ID: l.ID, Name: clean(l.Name), Today: resultJSON(l.Base), Swapped: resultJSON(l.Value),
		Ratio: resultJSON(l.Ratio), Words: clean(l.Words), Needs: l.Need, Reason: clean(l.Reason), Notes: cleaned(l.Notes),
		Figures: each(l.Figures, func(u *swap.Used) jsonUsed {
			return jsonUsed{u.Symbol, u.Of.ID, u.Figure.Property.String(), *printedJSON(u.Figure)}
		})}
	if f := l.Formula; f.Source != nil {
		out.Formula = &jsonFormula{f.Text, sourceJSON(f.Source, "", f.Known)}
	}
	return out
}

// resultJSON is a value that was worked out.
func resultJSON(v *swap.Value) *jsonValue {
	if v == nil {
		return nil
	}
	return &jsonValue{numberOf(v.Lo), numberOf(v.Mid), numberOf(v.Hi), clean(v.UnitText()), clean(v.String())}
}
