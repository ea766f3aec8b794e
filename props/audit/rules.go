package audit

import "alongside/props"

// inBands is the source of the rules that hold figures to the families' bands.
const inBands = "published tables named with each band: see the families below"

var rules = []Rule{
	{"yield-tensile", "yield is not above tensile strength in one test series, to the digits printed",
		"definition, ASTM E6", yieldBelowTensile},
	{"minimum-typical", "a typical figure is not below the specified minimum of the same material and kind of bar, to the digits printed",
		"definition of a specified minimum, ASTM B26/B26M and B108/B108M", minimumBelowTypical},
	{"limits", "a specified maximum is not below the specified minimum of the same test in the same source",
		"definition", maximumAboveMinimum},
	{"hardness", "tensile strength per Brinell number of the same test series lies in the family's band for the load of the test", inBands, hardnessAgainstTensile},
	{"fatigue", "fatigue strength is at most 0.65 of the tensile strength from the same source",
		"common practice, no source: published ratios of cast metals lie at 0.2 to 0.5", fatigueBelowTensile},
	{"gray-compression", "compressive strength over tensile strength of the same test series lies in the family's band; gray iron has one", inBands, compressionAgainstTensile},
	{"repeat", "one source does not print two values for the same test",
		"consistency", func(l *look) { repeated(l, false) }},
	{"two-systems", "a figure that one source prints in two systems of units agrees to its digits",
		"NIST SP 811, appendix B", func(l *look) { repeated(l, true) }},
	{"modulus", "elastic modulus lies in the family's band", inBands, withinFamily(props.ElasticModulus)},
	{"density", "density lies in the family's band", inBands, withinFamily(props.Density)},
	{"poisson", "Poisson's ratio lies in the family's band", inBands, withinFamily(props.PoissonRatio)},
	{"expansion", "mean expansion over ranges to 330 °C lies in the family's band; austenitic irons are left out, since nickel moves them from 19 to 5 µm/m·K", inBands, withinFamily(props.ThermalExpansion)},
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
	{"mixture", "density over that of the composition by the rule of mixtures lies in the family's band; copper with more than 0.7 % aluminum, silicon and beryllium is left out",
		"rule of mixtures by mass with handbook element densities; impurity limits counted at a quarter", mixture},
	{"outlier", "a figure lies within six median deviations of its family, in logarithms, or a factor of 2 (strength: 3); conduction that another rule covers and the heat figures of austenitic irons are left out",
		"robust statistics; judgement", outlier},
}
