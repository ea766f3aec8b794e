package audit

import "alongside/props"

var rules = []Rule{
	{"yield-tensile", "yield is not above tensile strength in one test series, to the digits printed",
		"definition, ASTM E6", yieldBelowTensile},
	{"minimum-typical", "a typical figure is not below the specified minimum of the same material and kind of bar, to the digits printed",
		"definition of a specified minimum, ASTM B26/B26M and B108/B108M", minimumBelowTypical},
	{"hardness", "tensile strength per Brinell number lies in the family's band: steel 500 psi ± 15 %, gray iron 120 to 240, aluminum castings at 500 kgf 250 to 650",
		"steel: materials science textbook, 3.45 MPa per HB; iron and aluminum: bands drawn round published pairs (judgement)", hardnessAgainstTensile},
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
	{"poisson", "Poisson's ratio lies at 0.20 to 0.36", "mechanics of materials textbooks, tables of isotropic metals", poisson},
	{"shear-modulus", "E = 2G(1+ν) makes ν 0.18 to 0.38 and within 0.03 of a printed ν",
		"mechanics of materials textbooks, isotropic elasticity", shearModulus},
	{"melting", "solidus lies below liquidus", "definition", solidusBelowLiquidus},
	{"expansion-range", "a mean expansion coefficient does not fall as its range grows, to the digits printed",
		"boiler code section II part D, table TE: means rise with temperature in every group", expansionRises},
	{"conduction", "thermal follows electrical conductivity, k = a·T·σ + b: aluminum and copper ± 15 %, magnesium ± 20 %, zinc ± 10 %",
		"Smith and Palmer 1935 (aluminum 2.10e-8 and 12.55, copper 2.39e-8 and 7.5; memory); zinc: Wiedemann-Franz with L = 2.44e-8; magnesium: 2.33e-8 and 8 (memory)", conduction},
	{"mixture", "density follows the composition by the rule of mixtures: aluminum and zinc ± 2.5 %, magnesium ± 3 %",
		"rule of mixtures by mass with handbook element densities; impurity limits counted at a quarter", mixture},
	{"outlier", "a figure lies within six median deviations of its family, in logarithms, or a factor of 2 (strength: 3)",
		"robust statistics; judgement", outlier},
}
