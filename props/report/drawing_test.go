package report

import (
	"slices"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/part"
)

func drawing(id string, with part.Facts) Drawing {
	c := data.Catalog()
	return Drawing{Catalog: c, Book: data.Foundry(), Pin: c.Material(id), Given: part.Given{With: with}}
}

// What is poured gets a tolerance, a way to find cracks and a marking, all with a
// source or said to be common practice; what is not cast says why.
func TestDrawingOfEveryMaterial(t *testing.T) {
	for _, m := range data.Catalog().Materials {
		d := drawing(m.ID, 0)
		var labels []string
		for _, l := range append(d.lines(), d.equivalents()...) {
			labels = append(labels, l.label)
			if l.Text == "" || l.Source == nil {
				t.Errorf("%s: %s %q has no text or source", m.ID, l.label, l.Text)
			}
		}
		if data.Foundry().Card(m).Why != "" {
			if !slices.Contains(labels, "Not cast") {
				t.Errorf("%s is not cast and gets %q", m.ID, labels)
			}
			continue
		}
		for _, want := range []string{"Metal", "Specification", foundry.Grade.String(), foundry.SurfaceTest.String(), foundry.Marking.String()} {
			if !slices.Contains(labels, want) && !(want == foundry.Grade.String() && (m.Process == props.Continuous || m.Process == props.Centrifugal)) {
				t.Errorf("%s: no %s in %q", m.ID, want, labels)
			}
		}
	}
}

// The reference radiographs by the titles of the standards; the limits of B148 and
// A48 as their tables print them, see testdata/checks.
func TestDrawingSays(t *testing.T) {
	for id, want := range map[string][]string{
		"a356-t6-pm":       {"E155", "AC-42100", "T6: solution heat treated"},
		"a380-f-die":       {"E505", "none as a rule", "none on file sets a minimum"},
		"gray-30":          {"E802", "30000 psi", "B 1.20 in", "EN-GJL-200", "at least 200 MPa"},
		"ductile-65-45-12": {"E689", "Y-block", "65000 psi", "elongation 12 %"},
		"c95400-sand":      {"E272", "75 ksi", "yield strength 30 ksi"},
		"steel-a216-wcb":   {"E446", "E709"},
		"6061-t6-wrought":  {"not poured"},
	} {
		d := drawing(id, 0)
		text, err := DrawingDoc(d).Render("text", 200)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: no %q in\n%s", id, w, text)
			}
		}
		if d.Pin.Process != props.Die && strings.Contains(text, "E505") || d.Pin.Alloy.Family.ID != "aluminum" && strings.Contains(text, "E155") {
			t.Errorf("%s: radiographs of another metal in\n%s", id, text)
		}
	}
	// A finish is told of where the part has it.
	if has := func(with part.Facts) bool {
		d := drawing("a356-t6-pm", with)
		return slices.ContainsFunc(d.lines(), func(l drawingLine) bool { return l.label == foundry.Anodizing.String() })
	}; has(0) || !has(part.Anodize) {
		t.Error("anodizing is told of where it was not asked for, or not where it was")
	}
}
