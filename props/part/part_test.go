package part

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"alongside/props/catalog"
)

// A call sheet saves the part and reads it back.
func TestPartIsSaved(t *testing.T) {
	c := catalogOf(t)
	var p Part
	for f, typed := range map[Field]string{FieldMass: "4.2 lb", FieldCase: "plate", FieldService: "-40..250 F", FieldMate: "s1",
		FieldPrice: "a1-sand=1.20 USD/lb", FieldWith: "threads, press-fit", FieldDimension: "4 in"} {
		if err := p.Set(c, f, typed); err != nil {
			t.Fatal(err)
		}
	}
	if p.Mate != "s1-hard-wrought" {
		t.Errorf("a mate whose tempers grow alike: have %q", p.Mate)
	}
	var text strings.Builder
	if err := toml.NewEncoder(&text).Encode(p); err != nil {
		t.Fatal(err)
	}
	var back, again Part
	if _, err := toml.Decode(text.String(), &back); err != nil || back.Summary() != p.Summary() {
		t.Errorf("TOML: have %q, %v, want %q", back.Summary(), err, p.Summary())
	}
	if back.With != PressFit|Threads || back.Dimension != "4 in" || p.Get(FieldWith) != "press-fit, threads" {
		t.Errorf("with %q, dimension %q", back.With, back.Dimension)
	}
	if strings.Contains(text.String(), "volume") {
		t.Errorf("empty fields are saved:\n%s", text.String())
	}
	j, _ := json.Marshal(p)
	if err := json.Unmarshal(j, &again); err != nil || again.Summary() != p.Summary() {
		t.Errorf("JSON: have %q, %v", again.Summary(), err)
	}
	// A file spoiled by hand loses the spoiled fields only, and says which.
	back.Mass, back.Case, back.Mate, back.Price["a1-sand"] = "heavy", "girder", "unobtainium", "free"
	g, err := back.Read(c)
	for _, word := range []string{"mass", "case", "mate", "price"} {
		if err == nil || !strings.Contains(err.Error(), word+" ") {
			t.Errorf("%s is spoiled and not told: %v", word, err)
		}
	}
	if g.Mass != nil || g.Case != NoCase || g.Mate != nil || g.Range() == nil {
		t.Errorf("have %+v", g)
	}
}

func catalogOf(t testing.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("../../testdata/swap"), "invented.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A single temperature is the hottest; one below freezing is the coldest.
func TestService(t *testing.T) {
	near := func(p *float64, want float64) bool { return p != nil && math.Abs(*p-want) < 0.01 }
	for typed, want := range map[string][2]float64{"250 F": {math.NaN(), 121.11}, "-40 F": {-40, math.NaN()}, "-40..250 F": {-40, 121.11}} {
		g, err := Part{Service: typed}.Read(nil)
		if err != nil {
			t.Fatal(err)
		}
		for i, have := range []*float64{g.Coldest, g.Hottest} {
			if math.IsNaN(want[i]) && have != nil || !math.IsNaN(want[i]) && !near(have, want[i]) {
				t.Errorf("%s: have %v, want %v", typed, have, want)
			}
		}
		if (g.Range() == nil) != (strings.Count(typed, "..") == 0) {
			t.Errorf("%s: range %v", typed, g.Range())
		}
	}
}

func TestNonsenseIsRefused(t *testing.T) {
	c := catalogOf(t)
	for _, tt := range []struct {
		f           Field
		typed, says string
	}{
		{FieldMass, "-3 lb", "must be above zero; type something like 4.2 lb"},
		{FieldMass, "0 lb", "must be above zero"},
		{FieldMass, "NaN lb", "understood no number"},
		{FieldMass, "4", "without a unit"},
		{FieldMass, "4 ksi", "stress"},
		{FieldMass, "1e30 lb", "no casting is of that size"},
		{FieldMass, "> 4 lb", "a limit is not a size"},
		{FieldWall, "-1 mm", "above zero"},
		{FieldService, ">= 250 F", "a limit is not a temperature"},
		{FieldService, "-600 F", "below absolute zero"},
		{FieldWith, "press-fit, thread", "did you mean threads?"},
		{FieldDimension, "2-4 in", "one size is needed"},
		{FieldService, "-500..20 F", "below absolute zero"},
		{FieldService, "20..9000 F", "molten"},
		{FieldCase, "girder", "use one of: tie, plate, beam, fixed-beam"},
		{FieldMate, "unobtainium", "no material"},
		{FieldPrice, "1.20/lb", "the material is missing"},
		{FieldPrice, "a1-sand=1.20", "the unit of mass is missing"},
		{FieldPrice, "a1-sand=1.20/ksi", "is not a unit of mass"},
		{FieldPrice, "a1-sand=-1/lb", "above zero"},
		{FieldPrice, "a1-sand=USD/lb", "the amount is missing"},
		{FieldPrice, "a1-sand=USD 1 EUR/lb", "one short currency word"},
	} {
		var p Part
		err := p.Set(c, tt.f, tt.typed)
		if err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%s %q: %v, want %q", tt.f, tt.typed, err, tt.says)
		}
		if p.Get(tt.f) != "" {
			t.Errorf("%s %q was refused and kept all the same", tt.f, tt.typed)
		}
	}
	p := Part{}
	if err := p.Set(nil, FieldMate, "i1"); err == nil {
		t.Error("a mate was found without a catalog")
	}
	if err := p.Set(c, fieldCount, "1"); err == nil {
		t.Error("a field that does not exist was set")
	}
}

// No phrase says two things of the part.
func TestPhrasesAreClear(t *testing.T) {
	seen := map[string]bool{}
	once := func(phrases string) {
		for phrase := range strings.SplitSeq(phrases, "|") {
			if phrase == "" || seen[phrase] || phrase != strings.ToLower(phrase) {
				t.Errorf("%q is said twice, or is no phrase", phrase)
			}
			seen[phrase] = true
		}
	}
	for phrases := range SizeWords {
		once(phrases)
	}
	for phrases := range SaidWords {
		once(phrases)
	}
}

func TestReadMedium(t *testing.T) {
	for typed, want := range map[string]string{
		"coolant 50 % glycol, 110 °C":  "glycol; 110..110",
		"water glycol":                 "glycol",
		"hot water with glycol, 230 F": "glycol; 110..110",
		"sea water":                    "sea-water",
		"sea-water and diesel":         "sea-water diesel",
		"water, pH 6 to 8":             "water; pH 6..8",
		"pH 3.5, wine":                 "food; pH 3.5..3.5",
		"E85":                          "ethanol",
		"DOT 4 brake fluid":            "brake-fluid",
		"ammonia, -33 °C":              "ammonia; -33..-33",
		"Salt spray":                   "deicing-salt",
		"oil and water":                "water oil",
		"drinking water 10–60 °C":      "drinking-water; 10..60",
	} {
		m, err := ReadMedium(typed)
		if err != nil {
			t.Errorf("%s: %v", typed, err)
			continue
		}
		have := strings.Join(m.Media.IDs(), " ")
		if m.PH != nil {
			have += fmt.Sprintf("; pH %g..%g", m.PH[0], m.PH[1])
		}
		if m.Celsius != nil {
			have += fmt.Sprintf("; %.0f..%.0f", m.Celsius[0], m.Celsius[1])
		}
		if have != want {
			t.Errorf("%s: have %s, want %s", typed, have, want)
		}
	}
	// What is not known is named, never passed over, and so is what is not there.
	for typed, says := range map[string]string{
		"bleach":                  `"bleach" is not known; the media known are water,`,
		"water and bleach":        `"bleach" is not known`,
		"water without ammonia":   `"without" is not known`,
		"hydraulic oil, no water": `"no" is not known`,
		"80 °C":                   "names no medium",
		"water, pH 15":            "a pH lies between 0 and 14",
		"water, pH 8 to 6":        "a pH lies between 0 and 14",
		"water, 9000 F":           "molten",
		"water 40":                `"40" is not known`,
	} {
		if _, err := ReadMedium(typed); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want %s", typed, err, says)
		}
	}
	for _, id := range MediaIDs() {
		want, _ := ParseMedia(id)
		if m, err := ReadMedium(id); err != nil || m.Media != want {
			t.Errorf("%s is not read as itself: %v, %v", id, m.Media.IDs(), err)
		}
	}
}

// A word that is not known is named in the error and is not in what was read.
func TestReadLeavesOutAnUnknownWord(t *testing.T) {
	p := Part{Role: "sideways", Place: Designated}
	g, err := p.Read(nil)
	if err == nil || g.Part.Role != "" || g.Part.Place != Designated || p.Role != "sideways" {
		t.Errorf("have %q and %q, %v", g.Part.Role, g.Part.Place, err)
	}
}
