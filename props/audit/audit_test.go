package audit

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"alongside/props"
)

// alloy is an invented record round the figures of one test.
func alloy(family, head, figures string) string {
	return fmt.Sprintf(`[[source]]
id = "S"
title = "Invented handbook"
kind = "handbook"
[[family]]
id = "%[1]s"
name = "%[1]s"
[[alloy]]
id = "x1"
name = "X1"
family = "%[1]s"
%[2]s
[[alloy.material]]
process = "sand"
[[alloy.material.figures]]
basis = "typical"
source = "S"
known = "memory"
%[3]s
`, family, head, figures)
}

const minimum = "\n[[alloy.material.figures]]\nbasis = \"minimum\"\nsource = \"S\"\nknown = \"memory\"\n"

const composition = "[alloy.composition]\nsource = \"S\"\nknown = \"memory\"\n"

// Each rule finds a planted slip and leaves a sound pair alone. The sound
// values are published ones, named beside each.
func TestRules(t *testing.T) {
	for _, tt := range []struct{ rule, family, head, bad, sound string }{
		{"yield-tensile", "aluminum", "", `tensile_strength = "33 ksi"` + "\n" + `yield_strength = "42 ksi"`,
			`tensile_strength = "33 ksi"` + "\n" + `yield_strength = "24 ksi"`}, // 356.0-T6 sand, civil engineering materials textbook, table 4.6
		{"minimum-typical", "aluminum", "", `tensile_strength = "30 ksi"` + minimum + `tensile_strength = "32.0 ksi"`, // the slip that a second reading of 713.0-T5 uncovered
			`tensile_strength = "33 ksi"` + minimum + `tensile_strength = "30.0 ksi"`},
		{"hardness", "aluminum", "", `tensile_strength = "33 ksi"` + "\n" + `hardness_brinell = "170; 500 kgf/10 mm"`,
			`tensile_strength = "33 ksi"` + "\n" + `hardness_brinell = "70; 500 kgf/10 mm"`}, // 356.0-T6 sand, same table
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
		{"shear-modulus", "aluminum", "", `elastic_modulus = "10.5 Mpsi"` + "\n" + `shear_modulus = "5.9 Mpsi"`,
			`elastic_modulus = "10.4 Mpsi"` + "\n" + `shear_modulus = "3.9 Mpsi"`}, // A356.0-T6, MIL-HDBK-5J (memory)
		{"melting", "aluminum", "", `solidus = "1135 °F"` + "\n" + `liquidus = "1035 °F"`, `solidus = "1035 °F"` + "\n" + `liquidus = "1135 °F"`},
		{"expansion-range", "aluminum", "", `thermal_expansion = ["12.9 uin/in-F; 68–212 °F", "11.9 uin/in-F; 68–572 °F"]`,
			`thermal_expansion = ["11.9 uin/in-F; 68–212 °F", "12.9 uin/in-F; 68–572 °F"]`},
		{"conduction", "aluminum", "", `thermal_conductivity = "226 W/m-K"` + "\n" + `electrical_conductivity = "39 %IACS"`,
			`thermal_conductivity = "0.36 cal/cm-s-C"` + "\n" + `electrical_conductivity = "39 %IACS"`}, // A356.0-T6, aluminum association typical properties
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

func rulesFound(t *testing.T, in string) string {
	t.Helper()
	s := ""
	for _, f := range Check(load(t, in)) {
		s += f.Rule + " "
	}
	return s
}

func load(t *testing.T, in string) *props.Catalog {
	t.Helper()
	c, err := props.Load(fstest.MapFS{"f.toml": {Data: []byte(in)}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestReasons(t *testing.T) {
	bad := `tensile_strength = "33 ksi"` + "\n" + `yield_strength = "42 ksi"`
	reason := "[[alloy.explained]]\nrule = \"%s\"\nproperty = \"yield_strength\"\nwhy = \"printed so\"\n"
	found := Check(load(t, alloy("aluminum", fmt.Sprintf(reason, "yield-tensile"), bad)))
	if len(found) != 1 || found[0].Open() || found[0].Why != "printed so" || found[0].Line != 19 {
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
	if len(found) != 1 || found[0].Material.ID != "y7" {
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
