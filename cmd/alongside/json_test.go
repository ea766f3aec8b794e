package main

import (
	"encoding/json"
	"strings"
	"testing"

	"alongside/data"
)

// A comparison has every metal in every row, and totals for all but the baseline;
// TestSchema looks at the rest.
func TestJSONForm(t *testing.T) {
	r := try(data.Catalog, "compare", "a380-f-die", "319-f-sand", "a356-t6-pm", "--format", "json", "--units", "si")
	var have struct {
		Baseline          string
		Materials, Totals []any
		Rows              []struct {
			Property string
			Cells    []struct{ Figure any }
		}
	}
	if err := json.Unmarshal([]byte(r.out), &have); err != nil {
		t.Fatal(err)
	}
	if have.Baseline != "a380-f-die" || len(have.Materials) != 3 || len(have.Totals) != 2 {
		t.Fatalf("baseline, materials or totals are wrong:\n%.600s", r.out)
	}
	seen := 0
	for _, row := range have.Rows {
		if len(row.Cells) != 3 {
			t.Errorf("%s: %d cells", row.Property, len(row.Cells))
		}
		for _, c := range row.Cells {
			if c.Figure != nil {
				seen++
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d figures in the comparison", seen)
	}
}

// 37 ksi is 255.106 019… MPa (NIST SP 811, B.8: 1 psi = 6.894 757 E+03 Pa): programs get
// the value unrounded, people get 255.
func TestJSONIsNotRounded(t *testing.T) {
	r := try(data.Catalog, "compare", "a356-t6-pm", "--basis", "minimum", "--units", "si", "--rows", "tensile", "--format", "json")
	if !strings.Contains(r.out, `"lo": 255.106019847`) {
		t.Errorf("37.0 ksi is not 255.106019847 MPa in\n%s", r.out)
	}
	text := try(data.Catalog, "compare", "a356-t6-pm", "--basis", "minimum", "--units", "si", "--rows", "tensile")
	if !strings.Contains(text.out, "255") || strings.Contains(text.out, "255.106") {
		t.Errorf("text is not rounded:\n%s", text.out)
	}
}
