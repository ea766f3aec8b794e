package report

import (
	"math"
	"testing"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// A conductivity shown in µΩ·cm is a resistivity, and less of it is better.
func TestResistivityRow(t *testing.T) {
	row := &compare.Row{Property: props.ElectricalConductivity, Unit: units.MicroOhmCM, Sense: props.More}
	if name, short, sense := rowNames(row); name != "Electrical resistivity" || short != "Resistivity" || sense != props.Less {
		t.Errorf("have %q, %q, %v", name, short, sense)
	}
	row.Unit = units.IACS
	if name, _, sense := rowNames(row); name != "Electrical conductivity" || sense != props.More {
		t.Errorf("have %q, %v", name, sense)
	}
}

func TestThreeDigits(t *testing.T) {
	for _, tt := range []struct{ v, want float64 }{{2049, 2050}, {-1388, -1390}, {999, 999}, {61.4, 61.4}, {123456, 123000}, {1000, 1000}} {
		if have := threeDigits(tt.v); math.Abs(have-tt.want) > 1e-9 {
			t.Errorf("%v: have %v, want %v", tt.v, have, tt.want)
		}
	}
}
