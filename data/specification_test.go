package data

import (
	"slices"
	"testing"
)

// A specification number, as it stands on a drawing, finds the materials that it
// orders, and with an alloy and temper the one. AMS numbers of castings as
// MIL-HDBK-5J prints them; 4860 and 4862 are its manganese bronzes.
func TestSpecificationNumbers(t *testing.T) {
	for typed, want := range map[string]string{
		"B26 356 T6":               "356-t6-sand",
		"ASTM B26 319-T6":          "319-t6-sand",
		"ASTM B108 A356 T61":       "a356-t61-pm",
		"AMS 4217":                 "356-t6-sand",
		"AMS4218 sand":             "a356-t6-sand",
		"AMS 4284":                 "356-t6-pm",
		"AMS 4860 sand":            "c86500-sand",
		"AMS 4439":                 "ze41a-t5-sand",
		"A48 35B":                  "gray-35",
		"ASTM A48 class 35B":       "gray-35",
		"A536 65-45-12":            "ductile-65-45-12",
		"B85 A380":                 "a380-f-die",
		"B148 C95800":              "c95800-sand",
		"AMS-A-21180 A357 T6 sand": "a357-t6-sand",
		"MIL-A-21180 A357 T6 sand": "a357-t6-sand", // the number before it
		"A216 WCB":                 "steel-a216-wcb",
	} {
		if m, err := Catalog().Resolve(typed); err != nil || m.ID != want {
			t.Errorf("%s: have %v %v, want %s", typed, m, err, want)
		}
	}
	// A number alone finds those that it orders before all others, and the
	// processes are not mixed up.
	for typed, want := range map[string][]string{
		"B26":         {"356-t6-sand", "319-f-sand", "535-f-sand", "443-f-sand"},
		"B108":        {"356-t6-pm", "a356-t61-pm", "443-f-pm"},
		"A536":        {"ductile-60-40-18", "ductile-65-45-12"},
		"AMS-A-21180": {"a357-t6-sand", "a201-t7-sand"},
		"B85":         {"a380-f-die", "a360-f-die"},
		"A48":         {"gray-20", "gray-60"},
	} {
		var have []string
		for _, h := range Catalog().Search(typed) {
			if h.Score >= 2*100_000 { // by a designation of its own
				have = append(have, h.Material.ID)
			}
		}
		for _, id := range want {
			if !slices.Contains(have, id) {
				t.Errorf("%s: no %s in %q", typed, id, have)
			}
		}
		if wrong := map[string]string{"B26": "356-t6-pm", "B108": "356-t6-sand", "A536": "gray-30"}[typed]; wrong != "" && slices.Contains(have, wrong) {
			t.Errorf("%s finds %s", typed, wrong)
		}
	}
}
