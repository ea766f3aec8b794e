package report

import (
	"encoding/json"
	"math"
	"strconv"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/units"
)

// document is the JSON form of a comparison. It is an interface: names are
// not changed and nothing is taken away. Values are in the unit of the row
// and not rounded; a figure of another hardness scale stays on its own.
type document struct {
	Baseline  string         `json:"baseline"`
	Materials []jsonMaterial `json:"materials"`
	Rows      []jsonRow      `json:"rows"`
	Totals    []jsonTotal    `json:"totals"`
	Needs     []jsonNeed     `json:"needs,omitempty"`
	Caution   string         `json:"caution"`
}

type jsonMaterial struct {
	ID      string `json:"id"`
	Family  string `json:"family"`
	Alloy   string `json:"alloy"`
	Temper  string `json:"temper"`
	Process string `json:"process"`
}

type jsonRow struct {
	Property string     `json:"property"`
	Unit     string     `json:"unit"`
	Sense    string     `json:"sense"`
	Cells    []jsonCell `json:"cells"`
}

type jsonCell struct {
	Material string      `json:"material"`
	Figure   *jsonFigure `json:"figure"`
	Absent   string      `json:"absent"`
	// Against is the baseline's figure that the delta is drawn from, where that
	// is another than the one in the baseline's own cell.
	Against *jsonFigure `json:"against,omitempty"`
	Delta   *jsonDelta  `json:"delta"`
	Verdict string      `json:"verdict"`
	Why     string      `json:"why"`
}

type jsonFigure struct {
	Lo         *number `json:"lo"`
	Hi         *number `json:"hi"`
	Basis      string  `json:"basis"`
	Conditions string  `json:"conditions"`
	Source     string  `json:"source"`
	Known      string  `json:"known"`
	Agrees     string  `json:"agrees,omitempty"`
}

type jsonDelta struct {
	Lo      *number `json:"lo"`
	Mid     *number `json:"mid"`
	Hi      *number `json:"hi"`
	Percent *number `json:"percent"`
}

type jsonTotal struct {
	Material string `json:"material"`
	Beats    int    `json:"beats"`
	Misses   int    `json:"misses"`
	Level    int    `json:"level"`
	Overlaps int    `json:"overlaps"`
	Unlike   int    `json:"unlike"`
	NoFigure int    `json:"no_figure"`
	Neutral  int    `json:"neutral"`
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

// Quiet is a number rounded so that the noise of converting it is gone.
func Quiet(v float64) float64 {
	v, _ = strconv.ParseFloat(Plain(v), 64)
	return v
}

// JSON writes a comparison for programs. Every material is named by its id,
// every row by its property id. What is not known is null or empty.
func JSON(c *compare.Comparison, s Scope) string { return comparisonJSON(s.of(c), nil) }

func comparisonJSON(c *compare.Comparison, list []needs.Need) string {
	d := document{Caution: Caution, Materials: []jsonMaterial{}, Rows: []jsonRow{}, Totals: []jsonTotal{}}
	for i, m := range c.Bench.Pins {
		if i == c.Baseline {
			d.Baseline = m.ID
		}
		d.Materials = append(d.Materials, jsonMaterial{m.ID, m.Alloy.Family.ID, Clean(m.Alloy.Name), Clean(m.Temper), m.Process.ID()})
	}
	for i := range c.Rows {
		if !hidden(c, &c.Rows[i]) {
			d.Rows = append(d.Rows, rowJSON(&c.Rows[i]))
		}
	}
	for i, t := range c.Totals {
		if i != c.Baseline {
			d.Totals = append(d.Totals, jsonTotal{t.Material.ID, t.Beats, t.Misses, t.Level, t.Overlaps, t.Unlike, t.NoFigure, t.Neutral})
		}
	}
	d.Needs = needsJSON(c.Bench.Pins, list)
	return indented(d)
}

func indented(v any) string {
	out, err := json.MarshalIndent(v, "", "  ")
	if err != nil { // strings, counts and finite numbers only
		panic(err)
	}
	return string(out) + "\n"
}

func rowJSON(row *compare.Row) jsonRow {
	_, _, sense := rowNames(row)
	out := jsonRow{Property: row.Property.String(), Unit: row.Unit.Symbol(), Sense: sense.String(), Cells: []jsonCell{}}
	for i := range row.Cells {
		c := &row.Cells[i]
		cell := jsonCell{Material: c.Material.ID, Absent: Clean(c.Absent), Verdict: c.Verdict.String(), Why: Clean(c.Why())}
		if f := c.Figure; f != nil {
			cell.Figure = figureJSON(f, c.Value)
		}
		for _, r := range c.Reasons {
			if r.Kind == compare.OtherBaseFigure {
				if v, err := c.Against.Value.In(row.Unit); err == nil {
					cell.Against = figureJSON(c.Against, v)
				}
			}
		}
		if d := c.Delta; d != nil {
			cell.Delta = &jsonDelta{numberOf(d.Lo), numberOf(d.Mid), numberOf(d.Hi), numberOf(d.Percent)}
		}
		out.Cells = append(out.Cells, cell)
	}
	return out
}

func figureJSON(f *props.Figure, v units.Quantity) *jsonFigure {
	return &jsonFigure{numberOf(v.Lo), numberOf(v.Hi), f.Basis.String(), Clean(f.Cond.String()), Clean(located(f)), f.Known().String(), agrees(f)}
}

// agrees is the document that a figure from memory agrees with, "" for others.
func agrees(f *props.Figure) string {
	if f.Known() != props.Agreed {
		return ""
	}
	return SourceText(f.Agrees)
}

// located is the source of a figure with the table it stands in.
func located(f *props.Figure) string {
	if f.Table == "" {
		return SourceText(f.Source)
	}
	return SourceText(f.Source) + "; " + f.Table
}
