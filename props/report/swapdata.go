package report

import (
	"encoding/json"
	"strings"

	"alongside/props"
	"alongside/props/part"
	"alongside/props/swap"
)

var swapColumnNames = [...]string{"from", "to", "group", "line", "name", "unit",
	"today", "today from", "today to", "swapped", "swapped from", "swapped to",
	"ratio", "ratio from", "ratio to", "words", "needs", "reason", "notes", "formula", "formula source", "figures"}

// SwapTSV writes swaps for pasting into a spreadsheet: a record per line of a
// swap. Numbers are not rounded; from and to are the worst cases.
func SwapTSV(results ...*swap.Result) string {
	records := [][]string{swapColumnNames[:]}
	for _, r := range results {
		for i := range r.Lines {
			records = append(records, swapRecord(r, &r.Lines[i]))
		}
	}
	records = append(records, nil, []string{SwapCaution}, []string{Caution})
	var b strings.Builder
	for _, r := range records {
		cells := make([]string, len(swapColumnNames))
		for i := range r {
			cells[i] = defuse(Clean(r[i]))
		}
		b.WriteString(strings.Join(cells, "\t") + "\n")
	}
	return b.String()
}

func swapRecord(r *swap.Result, l *swap.Line) []string {
	unit := ""
	if l.Value != nil {
		unit = l.Value.UnitText()
	}
	out := []string{r.Base.ID, r.Pin.ID, l.Group.String(), l.ID, l.Name, unit}
	for _, v := range []*swap.Value{l.Base, l.Value, l.Ratio} {
		if v == nil {
			out = append(out, "", "", "")
		} else {
			out = append(out, Plain(v.Mid), Plain(v.Lo), Plain(v.Hi))
		}
	}
	var figures []string
	for _, u := range l.Figures {
		figures = append(figures, u.Symbol+" "+u.Figure.Value.String()+" "+u.Figure.Basis.Phrase()+" ["+u.Figure.Source.ID+"]")
	}
	source := ""
	if l.Formula.Source != nil {
		source = SourceText(l.Formula.Source)
	}
	return append(out, l.Words, l.Need, l.Reason, strings.Join(l.Notes, "; "), l.Formula.Text, source, strings.Join(figures, "; "))
}

// swapDocument is the JSON form of swaps. It is an interface: names are not
// changed and nothing is taken away. Values are not rounded; what is not known
// is null or empty.
type swapDocument struct {
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
	Formula jsonFormula  `json:"formula"`
	Figures []jsonSymbol `json:"figures"`
}

type jsonValue struct {
	Lo   *number `json:"lo"`
	Mid  *number `json:"mid"`
	Hi   *number `json:"hi"`
	Unit string  `json:"unit"`
	Text string  `json:"text"`
}

type jsonFormula struct {
	Text   string `json:"text"`
	Source string `json:"source"`
	Known  string `json:"known"`
}

// jsonSymbol is a figure used, as printed by its source.
type jsonSymbol struct {
	Symbol   string `json:"symbol"`
	Material string `json:"material"`
	Property string `json:"property"`
	Printed  string `json:"printed"`
	jsonFigure
}

// SwapJSON writes swaps for programs.
func SwapJSON(results ...*swap.Result) string {
	d := swapDocument{Swaps: []jsonSwap{}, Caution: SwapCaution + " " + Caution}
	for _, r := range results {
		s := jsonSwap{From: r.Base.ID, To: r.Pin.ID, Part: r.Given.Part, Worth: []string{}, Lines: []jsonSwapLine{}}
		s.Worth = append(s.Worth, cleaned(r.Worth())...)
		for i := range r.Lines {
			s.Lines = append(s.Lines, lineJSON(&r.Lines[i]))
		}
		d.Swaps = append(d.Swaps, s)
	}
	out, err := json.MarshalIndent(d, "", "  ")
	if err != nil { // strings and finite numbers only
		panic(err)
	}
	return string(out) + "\n"
}

func lineJSON(l *swap.Line) jsonSwapLine {
	out := jsonSwapLine{Group: l.Group.String(), ID: l.ID, Name: Clean(l.Name), Today: valueJSON(l.Base), Swapped: valueJSON(l.Value),
		Ratio: valueJSON(l.Ratio), Words: Clean(l.Words), Needs: l.Need, Reason: Clean(l.Reason),
		Notes: append([]string{}, cleaned(l.Notes)...), Figures: []jsonSymbol{}}
	if f := l.Formula; f.Source != nil {
		out.Formula = jsonFormula{f.Text, SourceText(f.Source), f.Known.String()}
	}
	for _, u := range l.Figures {
		out.Figures = append(out.Figures, symbolJSON(u))
	}
	return out
}

func symbolJSON(u swap.Used) jsonSymbol {
	f := u.Figure
	return jsonSymbol{u.Symbol, u.Of.ID, f.Property.String(), f.Value.String(), printed(f)}
}

// printed is a figure in the unit of its source.
func printed(f *props.Figure) jsonFigure {
	return jsonFigure{numberOf(f.Value.Lo), numberOf(f.Value.Hi), f.Basis.String(), Clean(f.Cond.String()), Clean(located(f)), f.Known.String()}
}

func valueJSON(v *swap.Value) *jsonValue {
	if v == nil {
		return nil
	}
	return &jsonValue{numberOf(v.Lo), numberOf(v.Mid), numberOf(v.Hi), Clean(v.UnitText()), Clean(v.String())}
}

func cleaned(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = Clean(l)
	}
	return out
}
