package catalog

import (
	"strings"
	"testing"

	"alongside/props"
	"alongside/props/compare"
)

const bars = `[[source]]
id = "LAB"
title = "Invented test bars"
kind = "house"
[[house]]
material = "x1-f-sand"
[[house.figures]]
basis = "house"
source = "LAB"
known = "read"
tensile_strength = "28.4–31.0 ksi"
`

func TestHouseFigures(t *testing.T) {
	base := shop(t)
	c, err := LoadFiles(base, []File{{"house.toml", []byte(bars)}})
	if err != nil {
		t.Fatal(err)
	}
	before, after := get(t, base, "x1-f-sand").Figures(props.TensileStrength), get(t, c, "x1-f-sand").Figures(props.TensileStrength)
	if len(after) != len(before)+1 {
		t.Errorf("%d figures, %d before", len(after), len(before))
	}
	if m := get(t, c, "x1-t6-sand"); m.Alloy != get(t, c, "x1-f-sand").Alloy || m.Alloy == get(t, base, "x1-f-sand").Alloy {
		t.Error("the alloy was not copied as a whole, or the base was changed")
	}
	// House figures are compared with house figures only.
	b := compare.Bench{Pins: []*props.Material{get(t, c, "x1-t6-sand"), get(t, c, "x1-f-sand")}, Only: []props.PropertyID{props.TensileStrength}}
	if cell := compare.Compare(b).Rows[0].Cells[1]; cell.Figure.Basis != props.Typical {
		t.Errorf("compared on %v", cell.Figure.Basis)
	}
}

func TestHouseErrors(t *testing.T) {
	for _, tt := range []struct{ from, to, want string }{
		{"x1-f-sand", "x1-f-snad", "house.toml:6: x1-f-snad, material: \"x1-f-snad\" is not a material of the catalog\n    remedy: did you mean x1-f-sand?"},
		{"28.4–31.0", "31.0–28.4", "house.toml:11: x1-f-sand, tensile_strength"},
		{"[[house.figures]]", "[[house.figure]]", "holds no figures"},
		{`id = "LAB"`, `id = "BOOK"`, "house.toml:2: BOOK, id: \"BOOK\" is already in the built-in catalog\n    remedy: give one of the two another id"},
	} {
		_, err := LoadFiles(shop(t), []File{{"house.toml", []byte(strings.Replace(bars, tt.from, tt.to, 1))}})
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("\nhave: %v\nwant: %s", err, tt.want)
		}
	}
}
