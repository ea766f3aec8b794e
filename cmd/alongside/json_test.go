package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"alongside/data"
)

// The JSON form as others read it; a key too many or too few fails.
type schema struct {
	Baseline  *string
	Materials []struct{ ID, Name, Family, Alloy, Temper, Process *string }
	Rows      []struct {
		Property, Name, Unit, Sense *string
		Cells                       []struct {
			Material *string
			Against  *json.RawMessage
			Figure   *struct {
				Value struct {
					Lo, Hi        *float64
					Unit, Printed *string
				}
				Basis, Conditions *string
				Source            *struct{ ID, Title, Table, Known *string }
			}
			Absent *string
			Delta  *struct {
				Lo, Mid, Hi, Percent *float64
				Unit                 *string
			}
			Bound        *struct{ Least, Most *float64 }
			Verdict, Why *string
		}
	}
	Caution string `json:"caution"`
	Totals  []struct {
		Material *string
		Count    struct {
			Beats, Misses, Level, Overlaps, Unlike, Neutral *int
			NoFigure                                        *int `json:"no_figure"`
		}
	}
}

func TestJSONForm(t *testing.T) {
	r := try(data.Catalog, "compare", "a380-f-die", "319-f-sand", "a356-t6-pm", "--format", "json", "--units", "si")
	d := json.NewDecoder(strings.NewReader(r.out))
	d.DisallowUnknownFields()
	var s schema
	if err := d.Decode(&s); err != nil {
		t.Fatal(err)
	}
	if s.Baseline == nil || *s.Baseline != "a380-f-die" || len(s.Materials) != 3 || len(s.Totals) != 2 {
		t.Fatalf("baseline, materials or totals are wrong:\n%.600s", r.out)
	}
	for _, m := range s.Materials {
		for _, v := range []*string{m.ID, m.Name, m.Family, m.Alloy, m.Temper, m.Process} {
			if v == nil {
				t.Fatal("a material lacks a key")
			}
		}
	}
	verdicts := []string{"beats", "misses", "level", "overlaps", "unlike", "no figure", "neutral", "baseline"}
	seen := 0
	for _, row := range s.Rows {
		if row.Property == nil || row.Name == nil || row.Unit == nil || row.Sense == nil || len(row.Cells) != 3 {
			t.Fatalf("a row lacks a key or a cell: %+v", row)
		}
		for _, c := range row.Cells {
			if c.Material == nil || c.Absent == nil || c.Why == nil || c.Verdict == nil || !slices.Contains(verdicts, *c.Verdict) {
				t.Fatalf("%s: a cell lacks a key or has a wrong verdict", *row.Property)
			}
			if (c.Figure == nil) == (*c.Absent == "") {
				t.Errorf("%s of %s: a cell has a figure, or a reason why not", *row.Property, *c.Material)
			}
			if c.Figure == nil {
				continue
			}
			seen++
			if v := c.Figure.Value; v.Lo == nil || v.Hi == nil || *v.Lo > *v.Hi || v.Unit == nil || v.Printed == nil || *v.Printed == "" {
				t.Errorf("%s of %s: lo and hi are missing or out of order", *row.Property, *c.Material)
			}
			if s := c.Figure.Source; s == nil || s.ID == nil || *s.ID == "" || s.Title == nil || *s.Title == "" || s.Table == nil || s.Known == nil || c.Figure.Conditions == nil || c.Figure.Basis == nil ||
				*s.Known != "read" && *s.Known != "agreed" && *s.Known != "memory" {
				t.Errorf("%s of %s: where the figure comes from is incomplete", *row.Property, *c.Material)
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d figures in the comparison", seen)
	}
	if strings.Contains(r.out, "NaN") || strings.Contains(r.out, "Inf") {
		t.Error("the output holds a number that is none")
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
