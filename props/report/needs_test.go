package report

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/spoken"
	"alongside/units"
)

func shopNeed(t *testing.T, text string) (*catalog.Catalog, []needs.Need) {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../testdata"), "shop.toml")
	if err != nil {
		t.Fatal(err)
	}
	list, err := spoken.Read(text, c, units.US, nil).Limits()
	if err != nil {
		t.Fatal(err)
	}
	return c, list
}

func TestJudgementText(t *testing.T) {
	for _, tt := range []struct{ id, need, want string }{
		{"x1-f-sand", "density < 2.775 g/cm3", "2.77 g/cm³ typical: met, +0.01 g/cm³ (0 %) (the limit lies within the figure's rounding; printed 0.100 lb/in³)"},
		{"x1-f-sand", "density < 2.8 g/cm3", "2.77 g/cm³ typical: met, +0.03 g/cm³ (+1 %) (printed 0.100 lb/in³)"},
		{"x2-f-die", "density < 2.8 g/cm3", "2.71 g/cm³ typical: met, +0.09 g/cm³ (+3 %) (printed 0.098 lb/in³)"},
		{"x1-f-sand", "tensile >= 20 ksi", "23.0 ksi specified minimum: met, +3 ksi (+15 %)"},
		{"x1-f-sand", "tensile >= 200 MPa", "158.6 MPa specified minimum: not met, −41.4 MPa (−21 %) (printed 23.0 ksi)"},
		{"x1-f-sand", "tensile >= 22.5 ksi", "23.0 ksi specified minimum: met, +0.5 ksi (+2 %)"},
		{"x1-f-sand", "tensile >= 25 ksi", "23.0 ksi specified minimum: not met, −2 ksi (−8 %) (typical 27 ksi would meet it)"},
		{"x1-f-sand", "tensile >= 180 MPa", "158.6 MPa specified minimum: not met, −21.4 MPa (−12 %) (typical 186 MPa would meet it; printed 23.0 ksi)"},
		{"gray-30", "density < 2.8 g/cm3", "no figure on file"},
		{"gray-30", "yield >= 20 ksi", "no figure: gray iron has no yield point"},
	} {
		c, list := shopNeed(t, tt.need)
		j := needs.Judge(c.Material(tt.id), &list[0])
		if have := JudgementText(&j); have != tt.want {
			t.Errorf("%s, %s:\nhave %s\nwant %s", tt.id, tt.need, have, tt.want)
		}
	}
}

func TestFoundSaysWhatCannotBeJudged(t *testing.T) {
	c, list := shopNeed(t, "density < 2.77 g/cm3; tensile >= 24 ksi")
	s := Search{Needs: list, Bench: compare.NewBench(), Found: needs.Find(c.Materials, list, 9, true)}
	text, err := FoundDoc(s).Render("text", 200)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"NEAR MISSES: 1\n", "CANNOT BE JUDGED, A FIGURE IS MISSING: 1\n", "gray-30  density < 2.77 g/cm³: no figure on file", "2.768~", "~: the limit lies within"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	s.Found = needs.Find(c.Materials, list, 1, true)
	if text, _ = FoundDoc(s).Render("text", 200); !strings.Contains(text, "cannot be judged, a figure is missing: 1 more, not listed.") {
		t.Errorf("nothing says that one is not listed:\n%s", text)
	}
	var have struct {
		Near []struct {
			Unjudged bool `json:"cannot_be_judged"`
		}
		Count struct {
			Near     int
			Unjudged int `json:"cannot_be_judged"`
		}
	}
	s.Found = needs.Find(c.Materials, list, 9, true)
	text, err = FoundDoc(s).Render("json", 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(text), &have); err != nil {
		t.Fatal(err)
	}
	if len(have.Near) != 2 || have.Near[0].Unjudged || !have.Near[1].Unjudged || have.Count.Near != 2 || have.Count.Unjudged != 1 {
		t.Errorf("have %+v", have)
	}
}
