package units_test

import (
	"strings"
	"testing"

	"alongside/units"
)

// Every spelling that the reference tables use, and what pasting makes of them.
func TestParseUnit(t *testing.T) {
	for want, spellings := range map[units.Unit]string{
		units.Nanometer:     "nm|nanometers",
		units.OzPerIn3:      "oz/in³|oz/in3|oz/cu in|ounces per cubic inch",
		units.DaNPerMM2:     "daN/mm²|daN/mm2",
		units.WPerCMK:       "W/cm·K|W/cm-K|W/(cm K)|W/cm·°C",
		units.PerMille:      "‰|permille",
		units.LbPerFt3:      "lb/ft³|lb/ft3|pcf|PCF|lb/cu ft",
		units.Ton:           "short ton|short tons",
		units.LongTon:       "long ton|long tons",
		units.Tonne:         "t|tonne|metric ton|Mg",
		units.PSI:           "psi|PSI|lbf/in²|lb/in2|lbs/sq in|lb per square inch",
		units.KSI:           "ksi|KSI|Ksi|kpsi|kip/in²",
		units.Mpsi:          "Mpsi|Msi|MSI|mpsi|10⁶ psi|1e6 psi|×10^6 psi",
		units.MPa:           "MPa|mpa|MPA|Mpa|MN/m²",
		units.GPa:           "GPa|gpa|kN/mm²|GN/m²|10³ MPa",
		units.NPerMM2:       "N/mm²|N/mm2|N/mm^2|N mm⁻²|n/mm2",
		units.KgfPerMM2:     "kgf/mm²|kgf/mm2|kg/mm²|kp/mm2",
		units.TonfPerIn2:    "tonf/in²|tsi|tonf(long)/in2",
		units.MPaRootM:      "MPa·√m|MPa√m|MPa-m^0.5|MPa m^1/2|MPa·m^(1/2)|MPa·m½|MPa m1/2|MPa·sqrt(m)|MPa sqrt m|MN/m^1.5",
		units.KSIRootIn:     "ksi·√in|ksi√in|ksi-in^0.5|ksi in^1/2|ksi·in½|ksi√(in)",
		units.NPerMM15:      "N/mm^1.5|N/mm^3/2|N/mm3/2|N·mm^-1.5",
		units.E7NPerM15:     "1e7 N/m^1.5|×10⁷ N/m^1.5",
		units.LbPerIn3:      "lb/in³|lb/in3|lb/in^3|lb/cu in|lb/cu. in.|pounds per cubic inch|lbs/in³",
		units.GPerCM3:       "g/cm³|g/cm3|g/cc|gm/cc|g/ml|Mg/m3|kg/dm³|g cm⁻³|g cm-3|g·cm^-3|t/m³",
		units.KgPerM3:       "kg/m³|kg/m3|kg m-3",
		units.WPerMK:        "W/m·K|W/m-K|W/mK|W/(m·K)|W/(m K)|W/m·°C|W m⁻¹ K⁻¹|W m^-1 K^-1|W m-1 K-1|W/m/K|w/m-k|W/m°C|watts per meter kelvin",
		units.CalPerCMSC:    "cal/cm·s·°C|cal/cm-s-C|cal/(cm·s·°C)|cal/cm/s/°C|cal/(sec·cm·°C)|CGS|cgs|cal/cm²/cm/°C/sec|CAL/CM-S-C|cal(th)/cm-s-C",
		units.BtuPerHFtF:    "Btu/h·ft·°F|BTU/ft-h-F|BTU/h-ft-F|Btu/(hr·ft·°F)|btu/hr-ft-f|BTU(IT)/h-ft-F|Btu/hr/sq ft/ft/°F",
		units.BtuInPerHFt2F: "Btu·in/h·ft²·°F|BTU-in/ft2-h-F|Btu in/(hr ft² °F)|Btu·in./hr·ft²·°F",
		units.JPerKgK:       "J/kg·K|J/kg-K|J/kgK|J/(kg·°C)|J kg⁻¹ K⁻¹",
		units.KJPerKgK:      "kJ/kg·K|kJ/kg-K|kJ/kgK",
		units.JPerGK:        "J/g·K|J/g-K|J/gK|J/g-°C",
		units.BtuPerLbF:     "Btu/lb·°F|BTU/lb-F|BTU/lbF|Btu/(lb °F)|BTU(IT)/lb-F|Btu/lb°F",
		units.CalPerGC:      "cal/g·°C|cal/g-C|kcal/kg-C|cal/(g·°C)",
		units.KJPerKg:       "kJ/kg",
		units.JPerG:         "J/g",
		units.BtuPerLb:      "Btu/lb|BTU/lb",
		units.IACS:          "%IACS|% IACS|%iacs|percent IACS|% of IACS|%\u00a0IACS",
		units.MSPerM:        "MS/m|m/Ω·mm²|m/(Ω·mm²)|megmho/m",
		units.MicroOhmCM:    "µΩ·cm|μΩ·cm|µΩ-cm|uOhm-cm|uohm-cm|microhm-cm|µohm cm|uΩcm|µΩ.cm",
		units.NanoOhmM:      "nΩ·m|nOhm-m|nohm-m|nΩm",
		units.OhmM:          "Ω·m|ohm-m|Ωm|ohm m",
		units.E7OhmM:        "1e-7 ohm-m|10⁻⁷ Ω·m|×10⁻⁷ Ω·m|10^-7 ohm m",
		units.MicroOhmIn:    "µΩ·in|uOhm-in|microhm-in",
		units.OhmMM2PerM:    "Ω·mm²/m|ohm-mm2/m|Ω mm²/m",
		units.OhmCmilPerFt:  "Ω·cmil/ft|ohm-cmil/ft|ohm cmil/ft|ohm·cmil per ft",
		units.MicroinInF:    "µin/in·°F|μin/in·°F|uin/in-F|µin./in.-°F|microin/in/°F|µin/(in·°F)|uin/in/F",
		units.MicromMK:      "µm/m·K|um/m-C|um/m-K|µm/m·°C|µm/(m·K)|µm/m/°C|µm m⁻¹ K⁻¹|µm/mK",
		units.E6PerF:        "10⁻⁶/°F|1e-6/F|ppm/°F|10^-6 in/in/°F|10-6/°F|×10⁻⁶/°F|×10⁻⁶ °F⁻¹",
		units.E6PerK:        "10⁻⁶/K|1e-6/C|ppm/K|ppm/°C|10-6 K-1|10⁻⁶ mm/mm/°C",
		units.PerF:          "/°F|1/F|1/°F|per °F|°F⁻¹|in/in-F|in/in/°F",
		units.DegF:          "°F|F|degF|deg F|deg. F|℉|º F|˚F|Fahrenheit",
		units.DegC:          "°C|C|degC|℃|Celsius|degrees C",
		units.Kelvin:        "K|kelvin|°K",
		units.DeltaF:        "Δ°F|ΔF|delta F|F diff|°F difference|F°|deg F interval",
		units.DeltaC:        "Δ°C|C°|°C diff",
		units.Inch:          "in|in.|inch|inches|IN|\"|″|''|′′",
		units.Foot:          "ft|foot|feet|'",
		units.MM:            "mm|MM|millimeters",
		units.In3:           "in³|in3|cu in|cu. in.|cubic inches",
		units.CM3:           "cm³|cc|mL|cm^3",
		units.Cmil:          "cmil",
		units.FootPound:     "ft·lbf|ft-lb|ft-lbf|ft·lb|ftlb|ft lbs|foot-pounds",
		units.Joule:         "J|joules|N·m|Nm|NM|N m",
		units.PoundForce:    "lbf",
		units.Pound:         "lb|lbs|lbm|pounds|#",
		units.InPerFt:       "in/ft|in./ft|inch per foot",
		units.InPerIn:       "in/in|mm/mm|m/m",
		units.MMPerM:        "mm/m",
		units.Pct:           "%|percent|pct",
		units.One:           "1|ratio",
		units.PerLb:         "/lb|per lb|1/lb",
		units.WPerM2K:       "W/m²·K|W/m2-K|W/(m² K)",
		units.MM2PerS:       "mm²/s|mm2/s",
		units.Ft2PerH:       "ft²/h|ft2/hr",
		units.Ampere:        "A|amp|amps",
		units.Hour:          "h|hr|hours",
		units.HBNumber:      "HB|BHN|HBW|Brinell",
		units.HB500Number:   "HB 500/10|HB500|HB 10/500|HBW 10/500|HB (500 kgf/10 mm)|500 kgf/10 mm|BHN 500 kg|HB 500 kgf/10 mm ball",
		units.HB3000Number:  "HB 3000/10|HB3000|HBW 10/3000|3000 kgf/10 mm",
		units.HB187x2Number: "HB 187.5/2.5|HBW 2.5/187.5",
		units.HRBNumber:     "HRB|hrb|HRBW|Rockwell B|Rb",
		units.HVNumber:      "HV|HV10|HV 30|Vickers|VHN",
	} {
		for s := range strings.SplitSeq(spellings, "|") {
			if u, err := units.ParseUnit(s); u != want {
				t.Errorf("%q: have %v (%v, %v), want %v", s, u, u.Dimension(), err, want)
			}
		}
	}
}

func TestParseUnitRefuses(t *testing.T) {
	for have, hint := range map[string]string{
		"":                "",
		" ":               "",
		"kis":             "did you mean ksi?",
		"mPa":             "mPa is millipascal; did you mean MPa?",
		"Mm":              "Mm is megameter; did you mean mm?",
		"mS/m":            "mS is millisiemens; did you mean MS?",
		"ski":             "did you mean ksi?",
		"ksii":            "did you mean ksi?",
		"inchs":           "did you mean in?",
		"W/m-Kelvn":       "did you mean W/m·K?",
		"ton":             "say which: short tons (2000 lb), long tons (2240 lb) or t (metric)",
		"lb/in":           "",
		"ksi2":            "",
		"furlong":         "",
		"ksi)":            "",
		"(ksi":            "",
		"ksi^":            "",
		"ksi^0":           "",
		"m^99":            "",
		"HB 999/10":       "",
		"HB 500 ksi":      "",
		"IACS":            "did you mean %IACS?",
		"lb/in4":          "did you mean lb/in³?",
		"°":               "",
		"Δ":               "",
		"\x00\x1b[31m":    "",
		"ksi\x00":         "",
		"((((((((m))))))": "",
	} {
		u, err := units.ParseUnit(have)
		e := wantError(t, err, have)
		if u != units.NoUnit {
			t.Errorf("%q: have %v beside an error", have, u)
		}
		if hint != "" && e.Hint != hint {
			t.Errorf("%q: have the hint %q, want %q", have, e.Hint, hint)
		}
		if strings.ContainsAny(err.Error(), "\x00\x1b") {
			t.Errorf("%q: control characters reach the message", have)
		}
	}
}

// A remedy stays near what was typed: it is no other magnitude and no word that
// merely has letters in common.
func TestNoFarOffRemedy(t *testing.T) {
	for _, have := range []string{
		"fpm", "hPa", "cPa", "µg", "um/mm-K", "g/mm3", "MW/m-K", "kg/ft3", "mN", "mJ", "uohm-mm", "Ra", "xyz", "X", "furlong", "ΜΩ·cm", "H01",
	} {
		_, err := units.ParseUnit(have)
		if e := wantError(t, err, have); e.Hint != "" {
			t.Errorf("%q: have the hint %q, want none", have, e.Hint)
		}
	}
	for have, d := range map[string]units.Dimension{"5 ksi": units.Temperature, "450 lb": units.Stress, "5 nm": units.Energy} {
		_, err := units.ParseAs(have, d, units.NoUnit)
		if e := wantError(t, err, have); e.Hint != "" {
			t.Errorf("%q as %v: have the hint %q, want none", have, d, e.Hint)
		}
	}
}
