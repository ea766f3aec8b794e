package audit

import (
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"

	"alongside/props/catalog"
)

// families are the real families with their bands, and no alloy.
var families = sync.OnceValues(func() (*catalog.Catalog, error) {
	return catalog.Load(os.DirFS("../../data"), "families.toml", "sources-*.toml")
})

// alloy is an invented record of a family round the figures of one test.
func alloy(family, head, figures string) string {
	return fmt.Sprintf(`[[source]]
id = "S"
title = "Invented handbook"
kind = "handbook"
[[alloy]]
id = "x1"
name = "X1"
family = "%s"
%s
[[alloy.material]]
process = "sand"
[[alloy.material.figures]]
basis = "typical"
source = "S"
known = "memory"
%s
`, family, head, figures)
}

const minimum = "\n[[alloy.material.figures]]\nbasis = \"minimum\"\nsource = \"S\"\nknown = \"memory\"\n"

const maximum = "\n[[alloy.material.figures]]\nbasis = \"maximum\"\nsource = \"S\"\nknown = \"memory\"\n"

// classed is the minimums of a strength class.
func classed(class, tensile, elongation int) string {
	return minimum + fmt.Sprintf("conditions = \"class %d; designated area\"\ntensile_strength = \"%d ksi\"\nelongation = \"%d %%\"", class, tensile, elongation)
}

const composition = "[alloy.composition]\nsource = \"S\"\nknown = \"memory\"\n"

// Each rule finds a planted slip and leaves a sound pair alone. The sound
// values are published ones, named beside each.
func TestRules(t *testing.T) {
	for _, tt := range []struct{ rule, family, head, bad, sound string }{
		{"yield-tensile", "aluminum", "", `tensile_strength = "33 ksi"` + "\n" + `yield_strength = "42 ksi"`,
			`tensile_strength = "33 ksi"` + "\n" + `yield_strength = "24 ksi"`}, // 356.0-T6 sand, civil engineering materials textbook, table 4.6
		{"minimum-typical", "aluminum", "", `tensile_strength = "30 ksi"` + minimum + `tensile_strength = "32.0 ksi"`, // the slip that a second reading of 713.0-T5 uncovered
			`tensile_strength = "33 ksi"` + minimum + `tensile_strength = "30.0 ksi"`},
		{"minimum-typical", "ductile-iron", "", `elongation = "15.0 %"` + minimum + `elongation = "18 %"`,
			`elongation = "15.0 %; average of one heat"` + minimum + `elongation = "18 %"`}, // 60-40-18, ASM handbook volume 1, average properties
		{"hardness", "aluminum", "", `tensile_strength = "33 ksi"` + "\n" + `hardness_brinell = "170; 500 kgf/10 mm"`,
			`tensile_strength = "33 ksi"` + "\n" + `hardness_brinell = "70; 500 kgf/10 mm"`}, // 356.0-T6 sand, same table
		{"hardness", "zinc", "", `tensile_strength = "41 ksi"` + "\n" + `hardness_brinell = "28"`,
			`tensile_strength = "41 ksi"` + "\n" + `hardness_brinell = "82"`}, // No. 3, zinc property sheet; load not stated
		{"hardness", "ductile-iron", "", `tensile_strength = "81.1 ksi"` + "\n" + `hardness_brinell = "92; 3000 kgf/10 mm"`,
			`tensile_strength = "81.1 ksi"` + "\n" + `hardness_brinell = "192; 3000 kgf/10 mm"`}, // 80-55-06, ASM handbook volume 1, average properties
		{"hardness", "copper", "", `tensile_strength = "35 ksi"` + "\n" + `hardness_brinell = "165; 500 kgf/10 mm"`,
			`tensile_strength = "35 ksi"` + "\n" + `hardness_brinell = "65; 500 kgf/10 mm"`}, // C93200, copper alloy data sheet
		{"limits", "gray-iron", "", `density = "7.2 g/cm3"` + minimum + `hardness_brinell = "187; 3000 kgf/10 mm"` + maximum + `hardness_brinell = "141; 3000 kgf/10 mm"`, // G3000 with two digits turned round
			`density = "7.2 g/cm3"` + minimum + `hardness_brinell = "187; 3000 kgf/10 mm"` + maximum + `hardness_brinell = "241; 3000 kgf/10 mm"`}, // SAE J431
		{"fatigue", "aluminum", "", `tensile_strength = "33 ksi"` + "\n" + `fatigue_strength = "28 ksi"`,
			`tensile_strength = "33 ksi"` + "\n" + `fatigue_strength = "8.5 ksi"`},
		{"gray-compression", "gray-iron", "", `tensile_strength = "22 ksi"` + "\n" + `compressive_strength = "22 ksi"`,
			`tensile_strength = "22 ksi"` + "\n" + `compressive_strength = "83 ksi"`}, // class 20, machine design textbook
		{"repeat", "aluminum", "", `tensile_strength = ["33 ksi", "36 ksi"]`, `tensile_strength = ["33 ksi", "20 ksi; at 400 °F"]`},
		{"two-systems", "copper", "", `thermal_expansion = ["9.0 uin/in-F; 68–572 °F", "15.5 um/m-C; 20–300 °C"]`, // C95200 on one page; 9.0 µin/in·°F is 16.2 µm/m·K
			`tensile_strength = ["48 ksi", "328 MPa"]`}, // zinc No. 5: 328 MPa is 48 ksi to its two digits
		{"modulus", "aluminum", "", `elastic_modulus = "30 Mpsi"`, `elastic_modulus = "10.5 Mpsi"`},
		{"density", "aluminum", "", `density = "0.97 lb/in3"`, `density = "0.097 lb/in3"`},
		{"poisson", "aluminum", "", `poisson_ratio = "0.50"`, `poisson_ratio = "0.33"`},
		{"poisson", "gray-iron", "", `poisson_ratio = "0.33"`, `poisson_ratio = "0.26"`},                                                                                           // EN 1561, annex
		{"expansion", "gray-iron", "", `thermal_expansion = "10.0 uin/in-F; 68–212 °F"`, `thermal_expansion = "11.7 um/m-K; 20–200 °C"`},                                           // EN 1561, annex; the slip is a wrong unit
		{"expansion", "zinc", "", `thermal_expansion = "15.2 um/m-K; 20–100 °C"`, `thermal_expansion = "15.2 uin/in-F; 68–212 °F"`},                                                // No. 3, zinc property sheet
		{"specific-heat", "copper", composition + "Cu = \"remainder\"\nSn = \"9.0–11.0\"\nZn = \"1.0–3.0\"", `specific_heat = "0.90 Btu/lb-F"`, `specific_heat = "0.09 Btu/lb-F"`}, // C90500, copper alloy data sheet
		{"specific-heat", "gray-iron", "", `specific_heat = "544 J/kg-K"`, `specific_heat = "460 J/kg-K"`},                                                                         // EN 1561, annex, 20–200 °C
		{"shear-modulus", "aluminum", "", `elastic_modulus = "10.5 Mpsi"` + "\n" + `shear_modulus = "5.9 Mpsi"`,
			`elastic_modulus = "10.4 Mpsi"` + "\n" + `shear_modulus = "3.9 Mpsi"`}, // A356.0-T6, MIL-HDBK-5J (memory)
		{"elastic-set", "cast-steel", "", `elastic_modulus = "29.0 Mpsi"` + "\n" + `shear_modulus = "11.0 Mpsi"` + "\n" + `poisson_ratio = "0.29"`, // 29.0 and 11.0 make 0.32
			`elastic_modulus = "29.0 Mpsi"` + "\n" + `shear_modulus = "11.0 Mpsi"` + "\n" + `poisson_ratio = "0.32"`}, // 4130, MIL-HDBK-5J, Table 2.3.1.0(c1)
		{"classes", "aluminum", "", `density = "0.101 lb/in3"` + classed(1, 60, 5) + classed(2, 62, 6),
			`density = "0.097 lb/in3"` + classed(1, 38, 5) + classed(2, 40, 3)}, // A356.0-T6, MIL-HDBK-5J
		{"melting", "aluminum", "", `solidus = "1135 °F"` + "\n" + `liquidus = "1035 °F"`, `solidus = "1035 °F"` + "\n" + `liquidus = "1135 °F"`},
		{"expansion-range", "aluminum", "", `thermal_expansion = ["12.9 uin/in-F; 68–212 °F", "11.9 uin/in-F; 68–572 °F"]`,
			`thermal_expansion = ["11.9 uin/in-F; 68–212 °F", "12.9 uin/in-F; 68–572 °F"]`},
		{"conduction", "aluminum", "", `thermal_conductivity = "226 W/m-K"` + "\n" + `electrical_conductivity = "39 %IACS"`,
			`thermal_conductivity = "0.36 cal/cm-s-C"` + "\n" + `electrical_conductivity = "39 %IACS"`}, // A356.0-T6, aluminum association typical properties
		{"mixture", "copper", composition + "Cu = \"84.0–86.0\"\nSn = \"4.0–6.0\"\nPb = \"4.0–6.0\"\nZn = \"4.0–6.0\"", `density = "0.381 lb/in3"`,
			`density = "0.318 lb/in3"`}, // C83600, copper alloy data sheet
		{"mixture", "wrought-copper", composition + "Cu = \"68.5–71.5\"\nZn = \"remainder\"", `density = "0.290 lb/in3"`,
			`density = "0.308 lb/in3"`}, // C26000, copper alloy data sheet
		{"mixture", "zinc", composition + "Al = \"10.5–11.5\"\nCu = \"0.5–1.2\"\nZn = \"remainder\"", `density = "0.25 lb/in3"`,
			`density = "6.03 g/cm3"`}, // ZA-12, zinc property sheet
	} {
		t.Run(tt.rule, func(t *testing.T) {
			if have := rulesFound(t, alloy(tt.family, tt.head, tt.bad)); !strings.Contains(have, tt.rule+" ") {
				t.Errorf("planted slip not found; have: %s", have)
			}
			if have := rulesFound(t, alloy(tt.family, tt.head, tt.sound)); have != "" {
				t.Errorf("sound figures questioned: %s", have)
			}
		})
	}
}

// The bands and relations do not hold everywhere; where they do not, they keep
// silent.
func TestRulesKnowTheirLimits(t *testing.T) {
	nickel := composition + "Ni = \"34.0–36.0\"\nFe = \"remainder\""
	bronze := composition + "Cu = \"83.0 min\"\nAl = \"10.0–11.5\"\nFe = \"3.0–5.0\""
	for _, tt := range []struct{ family, head, sound string }{
		{"gray-iron", nickel, `thermal_expansion = "5.0 um/m-K; 20–200 °C"`}, // A436 type 5, EN 13835 annex
		{"copper", bronze, `density = "0.269 lb/in3"`},                       // C95400: aluminum in copper takes less room than by itself
		{"ductile-iron", "", `specific_heat = "515 J/kg-K; 20–500 °C"`},      // EN 1563, annex D: a wide range
		{"cast-stainless", "", `thermal_expansion = "18.7 um/m-K; 70–1000 °F"`},
	} {
		if have := rulesFound(t, alloy(tt.family, tt.head, tt.sound)); have != "" {
			t.Errorf("%s, %s: questioned by %s", tt.family, tt.sound, have)
		}
	}
}

func rulesFound(t *testing.T, in string) string {
	t.Helper()
	s := ""
	for _, f := range Check(load(t, in)) {
		s += f.Rule + " "
	}
	return s
}

func load(t *testing.T, in string) *catalog.Catalog {
	t.Helper()
	base, err := families()
	if err != nil {
		t.Fatal(err)
	}
	c, err := catalog.LoadFiles(base, []catalog.File{{Name: "f.toml", Content: []byte(in)}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestReasons(t *testing.T) {
	bad := `tensile_strength = "33 ksi"` + "\n" + `yield_strength = "42 ksi"`
	reason := "[[alloy.explained]]\nrule = \"%s\"\nproperty = \"yield_strength\"\nwhy = \"printed so\"\n"
	found := Check(load(t, alloy("aluminum", fmt.Sprintf(reason, "yield-tensile"), bad)))
	if len(found) != 1 || found[0].Open() || found[0].Why != "printed so" || found[0].Line != 16 {
		t.Errorf("have %v", found)
	}
	// A reason that nothing needs is itself a finding.
	found = Check(load(t, alloy("aluminum", fmt.Sprintf(reason, "melting"), bad)))
	if len(found) != 2 || !found[0].Open() || found[0].Rule != "reason" {
		t.Errorf("have %v", found)
	}
}

func TestOutlier(t *testing.T) {
	var s strings.Builder
	s.WriteString(alloy("aluminum", "", `specific_heat = "0.230 Btu/lb-F"`))
	for i := range 12 {
		unit := "Btu/lb-F"
		if i == 7 {
			unit = "J/kg-K" // the slip: number of one unit, name of another
		}
		fmt.Fprintf(&s, "[[alloy.material]]\nid = \"y%d\"\n[[alloy.material.figures]]\nbasis = \"typical\"\nsource = \"S\"\nknown = \"memory\"\nspecific_heat = \"0.2%d %s\"\n", i, 20+i, unit)
	}
	found := Check(load(t, s.String()))
	if len(found) != 2 || found[0].Material.ID != "y7" || found[1].Rule != "outlier" {
		t.Errorf("have %v", found)
	}
}

func TestEveryRuleNamesItsSource(t *testing.T) {
	for _, r := range Rules() {
		if r.Source == "" || r.Says == "" {
			t.Errorf("%s: no source or no words", r.ID)
		}
	}
}

// A family that stands in a data file alone is questioned like the others.
func TestNewFamily(t *testing.T) {
	const family = `[[family]]
id = "white-iron"
name = "white iron"
base = "Fe"
group = "iron"
[[family.bands]]
from = "invented"
density = "7.6–7.8 g/cm3"
thermal_expansion = "8–10 um/m-K"
tensile_per_brinell = "100–200 psi; 3000 kgf/10 mm"
`
	nickel := composition + "Ni = \"13.0–36.0\"\nFe = \"remainder\""
	bronze := strings.Replace(strings.Replace(family, "Fe", "Cu", 1), `"iron"`, `"bronze"`, 1)
	for _, tt := range []struct{ family, head, figures, want string }{
		{family, "", `density = "7.7 g/cm3"`, ""},
		{family, "", `density = "7.2 g/cm3"`, "density "},
		{family, "", `specific_heat = "0.9 kJ/kg-K"`, "specific-heat "},                                                   // base Fe: 449 J/kg·K
		{bronze, "", `specific_heat = "450 J/kg-K"`, "specific-heat "},                                                    // base Cu: 385 J/kg·K
		{bronze, "", `thermal_conductivity = "300 W/m-K"` + "\n" + `electrical_conductivity = "20 %IACS"`, "conduction "}, // base Cu
		{family, "", `tensile_strength = "60 ksi"` + "\n" + `hardness_brinell = "400; 3000 kgf/10 mm"`, ""},
		{family, "", `tensile_strength = "60 ksi"` + "\n" + `hardness_brinell = "200; 3000 kgf/10 mm"`, "hardness "},
		{family, "", `thermal_expansion = "17.5 um/m-K; 20–200 °C"`, "expansion "},
		{family, nickel, `thermal_expansion = "17.5 um/m-K; 20–200 °C"`, ""}, // group iron: austenitic
		{bronze, nickel, `thermal_expansion = "17.5 um/m-K; 20–200 °C"`, "expansion "},
	} {
		if have := rulesFound(t, tt.family+alloy("white-iron", tt.head, tt.figures)); have != tt.want {
			t.Errorf("%s %s: questioned by %q, want %q", tt.head, tt.figures, have, tt.want)
		}
	}
}

func TestUnbanded(t *testing.T) {
	const bands = "[[family.bands]]\nfrom = \"invented\"\ndensity = \"7–8 g/cm3\"\n"
	c := load(t, "[[family]]\nid = \"tin\"\nname = \"tin\"\nbase = \"Sn\"\n"+ // no bands
		"[[family]]\nid = \"lead\"\nname = \"lead\"\n"+bands+ // no base
		"[[family]]\nid = \"gold\"\nname = \"gold\"\nbase = \"Au\"\n"+bands+ // not among the elements
		"[[family]]\nid = \"white\"\nname = \"white iron\"\nbase = \"Fe\"\n"+bands)
	if have := strings.Join(Unbanded(c.Families), " "); have != "tin lead gold" {
		t.Errorf("have %v", have)
	}
}
