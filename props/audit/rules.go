package audit

import "alongside/props"

var rules = []Rule{
	{"yield-tensile", "yield is not above tensile strength in one test series, to the digits printed",
		"definition, ASTM E6", yieldBelowTensile},
	{"minimum-typical", "a typical figure is not below the specified minimum of the same material and kind of bar, to the digits printed",
		"definition of a specified minimum, ASTM B26/B26M and B108/B108M", minimumBelowTypical},
	{"limits", "a specified maximum is not below the specified minimum of the same test in the same source",
		"definition", maximumAboveMinimum},
	{"hardness", "tensile strength in psi per Brinell number of the same test series lies in the family's band: steel 500 ± 15 %; gray iron 120 to 240, ductile 330 to 500, " +
		"austempered 340 to 560, malleable 290 to 500; at 500 kgf aluminum castings 250 to 650, wrought aluminum 430 to 680, magnesium 380 to 750, zinc 400 to 650, copper 450 to 900 (3000 kgf: 400 to 750); " +
		"stainless 425 to 650, cast stainless 290 to 650",
		"steel: materials science textbook, 3.45 MPa per HB; the others drawn round published pairs: ductile iron 400 to 427 (ASM handbook volume 1, average properties), " +
			"austempered 400 to 510 (ISO 17804), malleable 320 to 450 (ASTM A602), zinc 480 to 590 (zinc alloy property table), magnesium 460 to 600 (ASM handbook volume 2), " +
			"copper 540 to 840 (copper alloy data sheets), wrought aluminum 470 to 600 (Aluminum standards and data), stainless 467 to 570 (AISI), cast stainless 310 to 590 (Steel Castings Handbook)", hardnessAgainstTensile},
	{"fatigue", "fatigue strength is at most 0.65 of the tensile strength from the same source",
		"common practice, no source: published ratios of cast metals lie at 0.2 to 0.5", fatigueBelowTensile},
	{"gray-compression", "compressive strength of gray iron is 2.3 to 4.3 times its tensile strength",
		"machine design textbook, table of gray irons: 3.0 to 3.8, widened for rounding", grayCompression},
	{"repeat", "one source does not print two values for the same test",
		"consistency", func(l *look) { repeated(l, false) }},
	{"two-systems", "a figure that one source prints in two systems of units agrees to its digits",
		"NIST SP 811, appendix B", func(l *look) { repeated(l, true) }},
	{"modulus", "elastic modulus lies in the family's band", "bands drawn round the handbook tables of each family", withinFamily(props.ElasticModulus)},
	{"density", "density lies in the family's band", "bands drawn round the handbook tables of each family", withinFamily(props.Density)},
	{"poisson", "Poisson's ratio lies in the family's band: aluminum 0.32 to 0.35, magnesium 0.33 to 0.36, zinc 0.24 to 0.33, gray iron 0.20 to 0.30, other irons 0.24 to 0.31, steel 0.25 to 0.33, copper 0.29 to 0.38",
		"bands drawn round the tables of MIL-HDBK-5J, EN 1561, EN 1563, ISO 17804 and mechanics of materials textbooks", withinFamily(props.PoissonRatio)},
	{"expansion", "mean expansion over ranges to 330 °C lies in the family's band; austenitic irons are left out, since nickel moves them from 19 to 5 µm/m·K",
		"bands drawn round the tables of the ASM handbook volumes 1 and 2, EN 1561, EN 10088-1 and the boiler code section II part D", withinFamily(props.ThermalExpansion)},
	{"specific-heat", "specific heat to 100 °C is that of the elements, weighted by mass, − 10 to + 15 %",
		"rule of Kopp and Neumann with handbook specific heats at 25 °C; of the base metal alone (Dulong and Petit) where no composition is on file", specificHeat},
	{"shear-modulus", "E = 2G(1+ν) makes ν 0.18 to 0.38 and within 0.03 of a printed ν",
		"mechanics of materials textbooks, isotropic elasticity", shearModulus},
	{"elastic-set", "the E, G and Poisson's ratio that a material shows first fit E = 2G(1+ν) to within 0.01 of ν and the digits printed",
		"mechanics of materials textbooks, isotropic elasticity", elasticSet},
	{"classes", "of one alloy's strength classes for designated areas the stronger does not elongate more",
		"MIL-HDBK-5J tables 3.8.1.0(b) to 3.9.9.0: so in every premium casting alloy but A357.0", classes},
	{"melting", "solidus lies below liquidus", "definition", solidusBelowLiquidus},
	{"expansion-range", "a mean expansion coefficient does not fall as its range grows, to the digits printed",
		"boiler code section II part D, table TE: means rise with temperature in every group", expansionRises},
	{"conduction", "thermal follows electrical conductivity, k = a·T·σ + b: aluminum and copper ± 15 %, magnesium ± 20 %, zinc ± 10 %",
		"Smith and Palmer 1935 (aluminum 2.10e-8 and 12.55, copper 2.39e-8 and 7.5; memory); zinc: Wiedemann-Franz with L = 2.44e-8; magnesium: 2.33e-8 and 8 (memory)", conduction},
	{"mixture", "density follows the composition by the rule of mixtures: aluminum and zinc ± 2.5 %, magnesium ± 3 %, copper without aluminum, silicon or beryllium − 2.5 to + 4.5 %",
		"rule of mixtures by mass with handbook element densities; impurity limits counted at a quarter", mixture},
	{"outlier", "a figure lies within six median deviations of its family, in logarithms, or a factor of 2 (strength: 3); conduction that another rule covers and the heat figures of austenitic irons are left out",
		"robust statistics; judgement", outlier},
}
