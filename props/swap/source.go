package swap

import (
	"alongside/props"
	"alongside/props/part"
)

// Formula is the relation a line is worked out by. 1 marks the baseline, 2 the
// pin, m the mate.
type Formula struct {
	Text   string
	Source *props.Source
	Known  props.Known // whether the relation was read in the source
}

// The published sources of the formulas.
var (
	srcIndices  = &props.Source{ID: "TXT-SEL", Title: "Course notes on material indices for light stiff and light strong parts", Publisher: "university course", Edition: "edition not stated where read", Kind: "textbook"}
	srcStrength = &props.Source{ID: "TXT-SOM", Title: "Strength of materials: thermal stress, bending of beams", Publisher: "university textbook", Edition: "edition not stated where read", Kind: "textbook"}
	srcLame     = &props.Source{ID: "TXT-LAME", Title: "Strength of materials: thick cylinders (Lamé)", Publisher: "university textbook", Edition: "edition not stated where read", Kind: "textbook"}
	srcShear    = &props.Source{ID: "TXT-TRESCA", Title: "Mechanics of materials: maximum shear stress where a metal yields, maximum normal stress where it breaks", Publisher: "university textbook", Edition: "edition not stated where read", Kind: "textbook"}
	srcWall     = &props.Source{ID: "EN-1561", Title: "Founding, gray cast irons (EN 1561), wall-thickness table; guidance, not a requirement", Publisher: "CEN", Edition: "1997", Kind: "standard"}
	srcDuctile  = &props.Source{ID: "EN-1563", Title: "Founding, spheroidal graphite cast irons (EN 1563), table of cast-on samples by relevant wall", Publisher: "CEN", Edition: "1997", Kind: "standard"}
	srcCut      = &props.Source{ID: "ASTM-B26", Title: "Aluminum-alloy sand castings (ASTM B26/B26M), 10.3; permanent mold castings (B108/B108M) alike", Publisher: "ASTM", Edition: "2012", Kind: "standard"}
	srcArea     = &props.Source{ID: "AMS-A-21180", Title: "High-strength aluminum castings: classes of designated and undesignated areas (AMS-A-21180, formerly MIL-A-21180)", Publisher: "SAE", Edition: "edition not stated where read", Kind: "standard"}
	srcFactor   = &props.Source{ID: "14-CFR-25.621", Title: "Airworthiness standards, transport category airplanes: casting factors", Publisher: "US Code of Federal Regulations, title 14", Edition: "2014 amendment", Kind: "regulation"}
	srcShare    = &props.Source{ID: "MIL-HDBK-5J", Title: "Metallic materials and elements for aerospace vehicle structures, effect of temperature and exposure in percent of the strength at room temperature", Publisher: "US Department of Defense", Edition: "2003", Kind: "handbook"}
	srcAsCast   = &props.Source{ID: "PAPER-AL-T5", Title: "Study on T5 treatment for improving dimensional stabilities of aluminum alloy castings, Journal of Japan Institute of Light Metals 21(5), abstract", Edition: "1971", Kind: "textbook"}
	srcAging    = &props.Source{ID: "SAE-J469", Title: "Zinc die casting alloys (SAE J469), published description", Publisher: "SAE", Edition: "1989", Kind: "standard"}
	srcCreep    = &props.Source{ID: "ZN-CREEP", Title: "Creep curves of zinc die casting alloy 3, from a zinc association's data", Edition: "not dated where read", Kind: "association"}
	srcCold     = &props.Source{ID: "ASM-V1", Title: "Metals Handbook, Vol. 1, 10th edition: toughness of cast steels and irons", Publisher: "ASM International", Edition: "1990", Kind: "handbook"}
	srcFatigue  = &props.Source{ID: "TXT-MD", Title: "Machine design course sheets and answered problems: modified Goodman line; tables of surface and reliability factors of the endurance limit", Publisher: "university course", Edition: "edition not stated where read", Kind: "textbook"}
	srcMeans    = &props.Source{ID: "ASME-IID", Title: "Boiler and Pressure Vessel Code, Section II Part D, table TE-1: growth from mean coefficients of expansion", Publisher: "ASME", Edition: "2001", Kind: "standard"}
	srcFit      = &props.Source{ID: "ENG-REF", Title: "Engineering reference on shrink fits; clearance as in ISO 286-1; reference temperature 20 °C as in ISO 1", Edition: "edition not stated where read", Kind: "textbook"}
	srcThread   = &props.Source{ID: "FED-STD-H28/2", Title: "Screw-thread standards for federal services, section 2 (FED-STD-H28/2B): shear and tensile areas of Unified threads", Publisher: "US General Services Administration", Edition: "1991", Kind: "standard"}
	srcVessel   = &props.Source{ID: "ASME-VIII-1", Title: "Boiler and Pressure Vessel Code, Section VIII Division 1, UG-27(c): thickness of cylindrical shells", Publisher: "ASME", Edition: "edition not stated where read", Kind: "standard"}
	srcHeat     = &props.Source{ID: "TXT-HEAT", Title: "Heat transfer: conduction through a plane wall", Publisher: "university textbook", Edition: "edition not stated where read", Kind: "textbook"}
	srcThermal  = &props.Source{ID: "TXT-MSE", Title: "Materials science and engineering: thermal properties", Publisher: "university textbook", Edition: "edition not stated where read", Kind: "textbook"}
	srcCurrent  = &props.Source{ID: "TXT-PHYS", Title: "Physics notes: resistance of a conductor; 100 %IACS = 58.0 MS/m as in IEC 60028", Publisher: "university course", Edition: "edition not stated where read", Kind: "textbook"}
	srcPattern  = &props.Source{ID: "PATTERN-TXT", Title: "Patternmaking and foundry textbooks, shrink-rule tables", Edition: "edition not stated where read", Kind: "textbook"}
	srcCharge   = &props.Source{ID: "COST-STEEL", Title: "Standard cost finding practice for steel foundries: cost of metal for different yields", Publisher: "trade association of steel foundries", Edition: "1927", Kind: "handbook"}
	srcEven     = &props.Source{ID: "TXT-ED", Title: "Engineering design textbook: break-even quantity of soft and hard tooling", Edition: "edition not stated where read", Kind: "textbook"}
	srcDefined  = &props.Source{ID: "DEFINITION", Title: "By definition of the quantities", Kind: "textbook"}
)

func read(text string, s *props.Source) Formula   { return Formula{text, s, props.Read} }
func memory(text string, s *props.Source) Formula { return Formula{text, s, props.Memory} }

// law is how one load case trades section for modulus or strength: the section
// measure goes with the ratio (baseline over pin) to a power, and the mass with
// it; the wall, or the depth, to a power of its own.
type law struct {
	name    string  // of the section measure
	section float64 // power of the measure
	wall    float64 // power of a thickness
	formula Formula
}

// stiffnessLaws and strengthLaws hold for the same length, load and kind of
// section, linear elastic, no buckling and no deflection by shear.
func stiffnessLaws() map[part.Case]law {
	return map[part.Case]law{
		part.Tie:       {"Area", 1, 1, read("A₂/A₁ = E₁/E₂; m₂/m₁ = ρ₂/ρ₁ · A₂/A₁", srcIndices)},
		part.Plate:     {"Thickness", 1. / 3, 1. / 3, read("t₂/t₁ = (E₁/E₂)^(1/3); m₂/m₁ = ρ₂/ρ₁ · t₂/t₁", srcStrength)},
		part.Beam:      {"Area", 1. / 2, 1. / 4, read("A₂/A₁ = (E₁/E₂)^(1/2), each dimension of the section by its root; m₂/m₁ = ρ₂/ρ₁ · A₂/A₁", srcIndices)},
		part.FixedBeam: {"Depth", 1. / 3, 1. / 3, memory("h₂/h₁ = (E₁/E₂)^(1/3), from I = b·h³/12; m₂/m₁ = ρ₂/ρ₁ · h₂/h₁", srcStrength)},
	}
}

func strengthLaws() map[part.Case]law {
	return map[part.Case]law{
		part.Tie:       {"Area", 1, 1, read("A₂/A₁ = S₁/S₂; m₂/m₁ = ρ₂/ρ₁ · A₂/A₁", srcIndices)},
		part.Plate:     {"Thickness", 1. / 2, 1. / 2, read("t₂/t₁ = (S₁/S₂)^(1/2); m₂/m₁ = ρ₂/ρ₁ · t₂/t₁", srcStrength)},
		part.Beam:      {"Area", 2. / 3, 1. / 3, read("A₂/A₁ = (S₁/S₂)^(2/3), each dimension of the section by its root; m₂/m₁ = ρ₂/ρ₁ · A₂/A₁", srcIndices)},
		part.FixedBeam: {"Depth", 1. / 2, 1. / 2, memory("h₂/h₁ = (S₁/S₂)^(1/2), from Z = b·h²/6; m₂/m₁ = ρ₂/ρ₁ · h₂/h₁", srcStrength)},
	}
}
