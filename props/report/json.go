package report

import (
	"encoding/json"
	"math"
	"strconv"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/sheet"
	"alongside/units"
)

// The words of the vocabulary; the package comment explains them.
type (
	jsonValue struct {
		Lo      *number `json:"lo"`
		Mid     *number `json:"mid,omitempty"`
		Hi      *number `json:"hi"`
		Unit    string  `json:"unit"`
		Printed string  `json:"printed"`
	}
	// jsonBound stands instead of a delta where only bounds are certain, as factors
	// of the baseline.
	jsonBound struct {
		Least *number `json:"least"`
		Most  *number `json:"most"`
	}
	jsonDelta struct {
		Lo      *number `json:"lo"`
		Mid     *number `json:"mid"`
		Hi      *number `json:"hi"`
		Percent *number `json:"percent"`
		Unit    string  `json:"unit"`
	}
	jsonSource struct {
		ID    string `json:"id"`
		Title string `json:"title"`
		Table string `json:"table"`
		Known string `json:"known"`
	}
	jsonFigure struct {
		Value      jsonValue  `json:"value"`
		Basis      string     `json:"basis"`
		Conditions string     `json:"conditions"`
		Source     jsonSource `json:"source"`
	}
	jsonMaterial struct {
		ID      string `json:"id"`
		Name    string `json:"name"`
		Family  string `json:"family"`
		Alloy   string `json:"alloy"`
		Temper  string `json:"temper"`
		Process string `json:"process"`
	}
)

func valueJSON(q units.Quantity) jsonValue {
	return jsonValue{Lo: numberOf(q.Lo), Hi: numberOf(q.Hi), Unit: q.Unit.Symbol(), Printed: clean(q.String())}
}

func sourceJSON(s *props.Source, table string, k props.Known) jsonSource {
	return jsonSource{s.ID, clean(SourceText(s)), clean(table), k.String()}
}

func citeJSON(c foundry.Cite) *jsonSource {
	if c.Source == nil {
		return nil
	}
	out := sourceJSON(c.Source, c.Table, c.Known)
	return &out
}

// figureJSON is a figure with its value in the unit wanted; nil gives null.
func figureJSON(f *props.Figure, v units.Quantity) *jsonFigure {
	if f == nil {
		return nil
	}
	return &jsonFigure{valueJSON(v), f.Basis.String(), clean(f.Cond.String()), sourceJSON(f.Source, f.Table, f.Known())}
}

// printedJSON is a figure in the unit of its source; nil gives null.
func printedJSON(f *props.Figure) *jsonFigure {
	if f == nil {
		return nil
	}
	return figureJSON(f, f.Value)
}

func materialJSON(m *props.Material) jsonMaterial {
	return jsonMaterial{m.ID, clean(m.Name()), m.Alloy.Family.ID, clean(m.Alloy.Name), clean(m.Temper), m.Process.ID()}
}

func indented(v any) string {
	out, err := json.MarshalIndent(v, "", "  ")
	if err != nil { // texts and finite numbers only
		panic(err)
	}
	return string(out) + "\n"
}

func clean(s string) string { return sheet.Clean(s) }

// cleaned is never nil, so that JSON has an empty list and not null.
func cleaned(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = clean(l)
	}
	return out
}

// each applies a conversion to a list; the result is never nil.
func each[T, J any](list []T, to func(*T) J) []J {
	out := make([]J, len(list))
	for i := range list {
		out[i] = to(&list[i])
	}
	return out
}

// number is a float64 without the noise of binary conversion.
type number float64

// MarshalJSON writes the shortest decimal.
func (n number) MarshalJSON() ([]byte, error) { return []byte(Plain(float64(n))), nil }

// numberOf returns nil, which JSON writes as null, for what is not a finite
// number.
func numberOf(v float64) *number {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	n := number(v)
	return &n
}

// noiseDigits is how many significant digits of a converted value are kept;
// the last few of the 16 of a float64 are noise of the conversion.
const noiseDigits = 12

// Plain writes a number for machines: all digits that mean something, no
// exponent where it can be helped, never "-0".
func Plain(v float64) string {
	s := strconv.FormatFloat(v, 'g', noiseDigits, 64)
	v, _ = strconv.ParseFloat(s, 64)
	if v == 0 {
		return "0"
	}
	if a := math.Abs(v); a < 1e-6 || a >= 1e15 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
