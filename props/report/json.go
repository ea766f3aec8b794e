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

// object is a JSON object: its fields keep their order, texts are cleaned, and
// a number that is not finite is null. data/output.schema.json has the vocabulary.
type object []field

type field struct {
	name  string
	value any
}

// MarshalJSON writes the fields.
func (o object) MarshalJSON() ([]byte, error) {
	out := []byte{'{'}
	for i, f := range o {
		if i > 0 {
			out = append(out, ',')
		}
		switch v := f.value.(type) {
		case string:
			f.value = clean(v)
		case []string:
			f.value = cleaned(v)
		case float64:
			f.value = numberOf(v)
		}
		value, err := json.Marshal(f.value)
		if err != nil {
			return nil, err
		}
		out = append(strconv.AppendQuote(out, f.name), ':')
		out = append(out, value...)
	}
	return append(out, '}'), nil
}

func valueJSON(q units.Quantity) object {
	return object{{"lo", q.Lo}, {"hi", q.Hi}, {"unit", q.Unit.Symbol()}, {"printed", q.String()}}
}

// resultJSON is a value that was worked out.
func resultJSON(lo, mid, hi float64, unit, printed string) object {
	return object{{"lo", lo}, {"mid", mid}, {"hi", hi}, {"unit", unit}, {"printed", printed}}
}

func deltaJSON(lo, mid, hi, percent float64, unit string) object {
	return object{{"lo", lo}, {"mid", mid}, {"hi", hi}, {"percent", percent}, {"unit", unit}}
}

func sourceJSON(s *props.Source, table string, k props.Known) object {
	return object{{"id", s.ID}, {"title", sourceText(s)}, {"table", table}, {"known", k.String()}}
}

// citeJSON is where a statement comes from; null where nothing is named.
func citeJSON(c foundry.Cite) any {
	if c.Source == nil {
		return nil
	}
	return sourceJSON(c.Source, c.Table, c.Known)
}

// figureJSON is a figure with its value in the unit wanted; nil gives null.
func figureJSON(f *props.Figure, v units.Quantity) any {
	if f == nil {
		return nil
	}
	return figureFields(f, v)
}

func figureFields(f *props.Figure, v units.Quantity) object {
	return object{{"value", valueJSON(v)}, {"basis", f.Basis.String()}, {"conditions", f.Cond.String()}, {"source", sourceJSON(f.Source, f.Table, f.Known())}}
}

// printedJSON is a figure in the unit of its source; nil gives null.
func printedJSON(f *props.Figure) any {
	if f == nil {
		return nil
	}
	return figureFields(f, f.Value)
}

func materialJSON(m *props.Material) object {
	return object{{"id", m.ID}, {"name", m.Name()}, {"family", m.Alloy.Family.ID}, {"alloy", m.Alloy.Name}, {"temper", m.Temper}, {"process", m.Process.ID()}}
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
func (n number) MarshalJSON() ([]byte, error) { return []byte(bare(float64(n))), nil }

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

// bare writes a number for machines: all digits that mean something, no
// exponent where it can be helped, never "-0".
func bare(v float64) string {
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
