package report

import (
	"math"
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// A conductivity shown in µΩ·cm is a resistivity, and less of it is better.
func TestResistivityRow(t *testing.T) {
	row := &compare.Row{Property: props.ElectricalConductivity, Unit: units.MicroOhmCM, Sense: props.More}
	if w := wordsOf(row); w.name != "Electrical resistivity" || w.short != "Resistivity" || w.sense != props.Less {
		t.Errorf("have %+v", w)
	}
	row.Unit = units.IACS
	if w := wordsOf(row); w.name != "Electrical conductivity" || w.sense != props.More {
		t.Errorf("have %+v", w)
	}
}

func TestThreeDigits(t *testing.T) {
	for _, tt := range []struct{ v, want float64 }{{2049, 2050}, {-1388, -1390}, {999, 999}, {61.4, 61.4}, {123456, 123000}, {1000, 1000}} {
		if have := threeDigits(tt.v); math.Abs(have-tt.want) > 1e-9 {
			t.Errorf("%v: have %v, want %v", tt.v, have, tt.want)
		}
	}
}

// Every output of a row shown in µΩ·cm calls it a resistivity of which less is
// better, and all agree.
func TestResistivityInEveryFormat(t *testing.T) {
	c := invented(t, "t1-f-sand", "t2-die")
	c.Bench.RowUnits = map[props.PropertyID]units.Unit{props.ElectricalConductivity: units.MicroOhmCM}
	c = compare.Compare(c.Bench)
	scope := Scope{Property: props.ElectricalConductivity}
	for format, want := range map[string][]string{
		"text":     {"Electrical resistivity µΩ·cm ↓", "✗"},
		"markdown": {"| Electrical resistivity | µΩ·cm ↓ |", "✗"},
		"html":     {">Electrical resistivity</td>", ">µΩ·cm ↓</td>", "✗"},
		"tsv":      {"electrical_conductivity\tµΩ·cm\tless\t", "\tmisses\t"},
		"csv":      {"electrical_conductivity,µΩ·cm,less,", ",misses,"},
		"json":     {`"name": "Electrical resistivity"`, `"unit": "µΩ·cm"`, `"sense": "less"`, `"verdict": "misses"`},
	} {
		have := render(t, format, c, scope)
		for _, w := range want {
			if !strings.Contains(have, w) {
				t.Errorf("%s: no %q in\n%s", format, w, have)
			}
		}
		if strings.Contains(have, "Electrical conductivity") || strings.Contains(have, "↑") || strings.Contains(have, `"more"`) {
			t.Errorf("%s speaks of conductivity:\n%s", format, have)
		}
	}
	for i := range c.Rows {
		if row := &c.Rows[i]; row.Property == props.ElectricalConductivity {
			if d := NewDetail(c, row, 1); !strings.HasPrefix(d.What, "Electrical resistivity, ") {
				t.Errorf("the detail line: %s", d.What)
			}
		}
	}
	if card := NewCard(&c.Bench, c.Bench.Pins[1], props.ElectricalConductivity); !strings.HasPrefix(card.Title, "Electrical resistivity, ") {
		t.Errorf("the card: %s", card.Title)
	}
	n := NewTable(c)
	if line := n.Lines[len(n.Lines)-2]; line.Sense != "↓" || line.Short != "Resistivity" {
		t.Errorf("the screen: %+v", line)
	}
}
