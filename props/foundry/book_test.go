package foundry_test

import (
	"math"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/foundry"
)

// heat is what the book of the program says of heat treating a material.
func heat(m *props.Material) *foundry.HeatCard {
	return data.Foundry().Page(data.Catalog(), m, nil).Heat
}

// Every casting has a card with tolerance grades, every temper of the catalog
// a meaning, and every metal a place in the anodic index.
func TestCoverage(t *testing.T) {
	b := data.Foundry()
	for _, m := range data.Catalog().Materials {
		card := b.Card(m)
		if (card.Why == "") != (m.Process != props.Wrought && m.Process != props.NoProcess) {
			t.Errorf("%s: card says %q", m.ID, card.Why)
		}
		if m.Process == props.Sand || m.Process == props.PermanentMold || m.Process == props.Die {
			for _, k := range []foundry.Kind{foundry.Grade, foundry.MinimumWall, foundry.SurfaceFinish, foundry.Tooling, foundry.Allowance} {
				if len(card.Of(k)) == 0 {
					t.Errorf("%s: no %s on the card", m.ID, k)
				}
			}
		}
		heat := heat(m)
		if m.Temper != "" && len(heat.Meaning) != 1 {
			t.Errorf("%s: %d meanings for temper %s", m.ID, len(heat.Meaning), m.Temper)
		}
		if m.Process != props.Wrought && m.Process != props.NoProcess && heat.Normally == "" {
			t.Errorf("%s: not said whether it is heat treated", m.ID)
		}
		austenitic := strings.Contains(m.ID, "a436") || strings.Contains(m.ID, "a439") // the table lists no such iron
		if _, ok := b.Anodic(m); ok == austenitic {
			t.Errorf("%s: no anodic index", m.ID)
		}
		if len(b.Designation(m)) == 0 {
			t.Errorf("%s: nothing explains its designation", m.ID)
		}
		for _, e := range b.Designation(m) {
			if strings.Contains(e.Text, "{") {
				t.Errorf("%s: %q", m.ID, e.Text)
			}
		}
	}
}

// The anodic index of MIL-DTL-14072, table VI: volts below gold.
func TestAnodicIndex(t *testing.T) {
	for id, want := range map[string]float64{
		"c95400-sand":             0.40, // brasses and bronzes
		"c85700-sand":             0.45, // high brasses
		"c96400-sand":             0.35, // high copper–nickel
		"c11000-h04-wrought":      0.35, // copper
		"304-annealed-wrought":    0.50, // 18 % chromium steels
		"410-annealed-wrought":    0.60, // 12 % chromium steels
		"2024-t3-wrought":         0.75, // wrought 2000 series
		"gray-30":                 0.85, // iron
		"steel-a216-wcb":          0.85, // plain carbon steel
		"6061-t6-wrought":         0.90, // other wrought aluminum
		"a356-t6-pm":              0.90, // cast, silicon type
		"a380-f-die":              0.90, // cast, silicon type
		"535-f-sand":              0.95, // cast, other than silicon type
		"zn-3-die":                1.25, // zinc-base die castings
		"az91d-die":               1.75, // magnesium
		"ca15":                    0.60, // 12 % chromium steels
		"cf8m":                    0.50, // 18 % chromium steels
		"c36000-h02-wrought":      0.45, // high brasses
		"c97600-sand":             0.35, // nickel silvers
		"c51000-h02-wrought":      0.40, // bronzes
		"1045-cold-drawn-wrought": 0.85, // plain carbon steel
	} {
		a, ok := data.Foundry().Anodic(material(t, id))
		if !ok || a.Volts != want {
			t.Errorf("%s: have %v V, want %v V", id, a.Volts, want)
		}
	}
}

// Heat treatments of ASTM B917 and B661 as remembered, and what a paper quotes
// of B917 for 356.0-T6.
func TestSchedules(t *testing.T) {
	for id, want := range map[string]string{
		"356-t6-sand":      "solution 1000 °F, 12 h; quench 150–212 °F, water; age 310 °F, 3–5 h",
		"356-t6-pm":        "solution 1000 °F, 4–12 h; quench 150–212 °F, water; age 310 °F, 2–5 h",
		"319-t5-sand":      "age 400 °F, 8 h",
		"295-t62-sand":     "solution 960 °F, 12 h; quench 150–212 °F, water; age 310 °F, 12–24 h",
		"520-t4-sand":      "solution 810 °F, 18 h; quench 150–212 °F, water",
		"a356-t6-pm":       "solution 1000 °F, 4–12 h; quench 150–212 °F, water; age 310 °F, 2–5 h",
		"a206-t7-pm":       "solution 950 °F, 2 h; solution 985 °F, 14–20 h; quench 150–212 °F, water; hold 12–24 h, at room temperature; age 390 °F, 4–5 h",
		"201-t7-pm":        "solution 950–960 °F, 2 h; solution 980–990 °F, 14–20 h; quench 150–212 °F, water; hold 12–24 h, at room temperature; age 370 °F, 5 h",
		"ze41a-t5-sand":    "age 330 °C, 2 h; age 170–180 °C, 10–16 h",
		"qe22a-t6-sand":    "solution 975–985 °F, 4–8 h; quench water; age 400 °F, 8–16 h",
		"cb7cu-1-h1025":    "solution 1875–1975 °F; age 1025 °F, 4 h",
		"az91e-t6-sand":    "solution 413–418 °C, 16–24 h; age 168 °C, 16 h",
		"c95400-tq50-sand": "solution 1600–1675 °F, about 1 h for each inch of section; quench water; temper 1150–1225 °F, about 1 h for each inch of section",
	} {
		c := heat(material(t, id))
		if len(c.Schedules) == 0 || c.Schedules[0].String() != want {
			t.Errorf("%s:\nhave %v %s\nwant %s", id, c.Schedules, c.Why, want)
		}
	}
	c := heat(material(t, "356-t6-sand"))
	found := false
	for i := range c.Schedules {
		found = found || c.Schedules[i].String() == "solution 540 °C, 6–12 h; age 155 °C, 3–5 h" && c.Schedules[i].Known == props.Read
	}
	if !found {
		t.Error("356.0-T6: the schedule that a paper quotes is missing")
	}
}

// A rating of the alloy holds for its permanent mold castings too, and the card
// says for what it was printed. A die casting takes none from sand.
func TestRatingOfTheAlloy(t *testing.T) {
	weld := data.Foundry().Card(material(t, "a356-t6-pm")).Of(foundry.Welding)
	if len(weld) != 1 || weld[0].Printed != "1" || weld[0].Condition != "printed for sand castings of the alloy" {
		t.Errorf("%+v", weld)
	}
	if sand := data.Foundry().Card(material(t, "a356-t6-sand")).Of(foundry.Welding); len(sand) != 1 || sand[0].Condition != "" {
		t.Errorf("%+v", sand)
	}
	if m := material(t, "390-t5-die"); m.Has(props.RatingWeldability) {
		t.Error("a die casting has a rating of sand castings")
	}
}

// Few heat-treated castings are left without a schedule: where the figures at
// hand are doubtful, and the classes of cast steel, whose order sets it.
func TestSchedulesOnFile(t *testing.T) {
	var without []string
	for _, m := range data.Catalog().Materials {
		if m.Process != props.Wrought && m.Alloy.Family.ID == "aluminum" && strings.HasPrefix(heat(m).Why, "no schedule") {
			without = append(without, m.ID)
		}
	}
	if len(without) > 15 {
		t.Errorf("%d aluminum castings: %s", len(without), strings.Join(without, " "))
	}
}

func TestHeatTreat(t *testing.T) {
	for _, c := range []struct{ id, normally, why string }{
		{"a380-f-die", "no", "F is as cast"},
		{"390-t5-die", "no", "no schedule on file"},
		{"a356-t61-pm", "yes", ""},
		{"535-f-sand", "no", "F is as cast"},
		{"713-t5-sand", "depends", ""},
		{"gray-30", "depends", "names no temper"},
		{"malleable-32510", "yes", "names no temper"},
		{"zn-3-die", "depends", "names no temper"},
		{"az91d-die", "no", "names no temper"},
		{"c95400-tq50-sand", "depends", ""},
		{"c81100-sand", "no", "names no temper"}, // pure copper
		{"c82000-sand", "yes", "names no temper"},
		{"hk", "no", "names no temper"},
		{"319-f-sand", "depends", "F is as cast"},
		{"850-t5-pm", "depends", ""},
		{"k1a-f-sand", "no", "F is as cast"},
		{"1045-hot-rolled-wrought", "", "hot rolled is no heat treatment"},
		{"c83600-sand", "no", "names no temper"},
		{"c95800-sand", "depends", "names no temper"}, // temper annealed for sea water
	} {
		h := heat(material(t, c.id))
		if h.Normally != c.normally || (c.why == "") != (h.Why == "") || !strings.Contains(h.Why, c.why) {
			t.Errorf("%s: have %q %q, want %q %q", c.id, h.Normally, h.Why, c.normally, c.why)
		}
	}
	for id, want := range map[string]int{"a380-f-die": 2, "443-f-sand": 1, "535-t5-sand": 1, "713-t5-sand": 1, "zn-3-die": 1, "az91d-die": 1} {
		if got := heat(material(t, id)).Reasons; len(got) != want {
			t.Errorf("%s: have %v, want %d that do not contradict each other", id, got, want)
		}
	}
	if got := heat(material(t, "356-f-sand")); len(got.Others) < 3 || strings.Join(got.Tempers, " ") != "T6 T7 T71" {
		t.Errorf("356.0 sand: tempers %v, %d other schedules", got.Tempers, len(got.Others))
	}
}

func TestDesignation(t *testing.T) {
	for id, want := range map[string][]string{
		"a356-t6-pm":               {"3xx.x: silicon with copper, magnesium or both", ".0: the limits are those of a casting", "A: a variant", "solution heat treated and artificially aged"},
		"520-t4-sand":              {"5xx.x: magnesium"},
		"gray-30":                  {"least tensile strength 30 ksi", "A, B, C or S"},
		"ductile-65-45-12":         {"least tensile strength 65 ksi, least yield strength 45 ksi, least elongation 12 %"},
		"en-gjs-500-7":             {"least tensile strength 500 N/mm², then least elongation 7 %"},
		"en-gjl-250":               {"least tensile strength 250 N/mm²"},
		"malleable-32510":          {"least yield strength 32.5 ksi, least elongation 10 %"},
		"malleable-50005":          {"least yield strength 50 ksi, least elongation 5 %"},
		"adi-130-90-09":            {"130 ksi", "90 ksi"},
		"az91d-die":                {"about 9 % and 1 %", "aluminum", "zinc", "D: the serial letter"},
		"am100a-t6-sand":           {"about 10 % and 0 %", "manganese"},
		"k1a-f-sand":               {"zirconium", "about 1 %"},
		"zn-3-die":                 {"No. 3 is the trade number", "Z: zinc"},
		"za-27-sand":               {"about 27 % aluminum"},
		"6061-t6-wrought":          {"6xxx: magnesium and silicon", "solution heat treated"},
		"4140-qt-400f-wrought":     {"41xx: chromium–molybdenum", "about 0.40 % carbon", "tempered at 400 °F"},
		"12l14-cold-drawn-wrought": {"lead", "12xx"},
		"c83600-sand":              {"red brasses", "C: copper"},
		"cf8m":                     {"corrosion in liquids", "most carbon, in hundredths of a percent: 8", "molybdenum"},
		"hk":                       {"resist heat", "K: place"},
		"17-4ph-h900-wrought":      {"about 17 % chromium and 4 % nickel", "hardened at 900 °F"},
		"c26000-os050-wrought":     {"average grain of 0.050 mm"},
	} {
		var all []string
		for _, e := range data.Foundry().Designation(material(t, id)) {
			all = append(all, e.Part+": "+e.Text)
		}
		have := strings.Join(all, "\n")
		for _, w := range want {
			if !strings.Contains(have, w) {
				t.Errorf("%s: no %q in\n%s", id, w, have)
			}
		}
	}
}

// Values of the card as their sources print them.
func TestCard(t *testing.T) {
	for _, c := range []struct {
		id   string
		kind foundry.Kind
		want string // beginning of a line; source behind it
	}{
		{"a380-f-die", foundry.PartingLine, "0.0055 in NADCA-PSS S-4A-2"},
		{"a380-f-die", foundry.DraftConstant, "30 NADCA-PSS S-4A-7"},
		{"zn-3-die", foundry.MinimumWall, "0.025 in SHOP-GUIDE die cast minimum section table"},
		{"a356-t6-pm", foundry.PartingLine, "0.015 in AA-CS-E E series"},
		{"steel-a216-wcb", foundry.MinimumWall, "0.15 in SFSA-TUT molding method table"},
		{"gray-30", foundry.MinimumWall, "0.125 in DFM-HB castings chapter"},
		{"gray-30", foundry.SurfaceFinish, "5–25 µm, Ra MFG-TEXT casting process comparison table"},
		{"c86500-sand", foundry.Shrinkage, "0.21875 in/ft PATTERN-TXT shrinkage allowance table"}, // manganese bronze
		{"c95800-sand", foundry.Shrinkage, "0.21875 in/ft PATTERN-TXT shrinkage allowance table"}, // aluminum bronze
		{"c90300-sand", foundry.Shrinkage, "0.1875 in/ft PATTERN-TXT shrinkage allowance table"},
		{"za-27-sand", foundry.Shrinkage, "0.15625 in/ft ZN-ASSOC foundry guidance"},
		{"cf8m", foundry.Shrinkage, "0.25–0.3125 in/ft ASM-V15 patterns chapter"},
		{"ductile-65-45-12", foundry.MinimumWall, "0.188 in PRACTICE "},
		{"cf8m", foundry.MinimumWall, "0.188–0.25 in PRACTICE "},
		{"zn-3-die", foundry.PartingLine, "0.006 in NADCA-PSS S-4A-2"},
		{"a356-t6-pm", foundry.Quantity, "≥ 500 pieces, a year of a large part SHOP-GUIDE "},
		{"az91e-t6-sand", foundry.Shrinkage, "0.171875 in/ft ASM-V15 patterns chapter"},
		{"356-t6-sand", foundry.Shrinkage, "0.15625 in/ft PATTERN-TXT shrinkage allowance table"},
	} {
		found := false
		var have []string
		for _, it := range data.Foundry().Card(material(t, c.id)).Of(c.kind) {
			line := it.String() + " " + it.Source.ID + " " + it.Table
			have = append(have, line)
			found = found || line == c.want
		}
		if !found {
			t.Errorf("%s, %s: no %q in %q", c.id, c.kind, c.want, have)
		}
	}
	// The draft of a die casting by the constant: 1 in deep inside an aluminum
	// die casting, D = √1/30 in (NADCA S-4A-7), is 1.9°.
	for _, it := range data.Foundry().Card(material(t, "a380-f-die")).Of(foundry.DraftConstant) {
		if d := math.Atan(1/it.Value.Lo) * 180 / math.Pi; math.Abs(d-1.91) > 0.01 {
			t.Errorf("draft %.2f°", d)
		}
	}
}

// Common practice stands behind what a standard or handbook says.
func TestCardOrder(t *testing.T) {
	for _, m := range data.Catalog().Materials {
		card := data.Foundry().Card(m)
		for _, k := range foundry.Kinds() {
			practice := false
			for _, it := range card.Of(k) {
				if k == foundry.Grade || k == foundry.Linear || k == foundry.Allowance {
					continue
				}
				if it.Practice() {
					practice = true
				} else if practice && !isRating(it) {
					t.Fatalf("%s, %s: %s stands behind common practice", m.ID, k, it.Source.ID)
				}
			}
		}
	}
}

func isRating(it foundry.Item) bool { return strings.Contains(it.Text, "rating") }
