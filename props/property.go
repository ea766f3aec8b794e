package props

import (
	"strings"

	"alongside/units"
)

// PropertyID numbers the properties the catalog can hold. The order is the
// order of the rows on the bench.
type PropertyID uint8

// The properties. NoProperty is the zero value and stands for none.
const (
	NoProperty PropertyID = iota
	TensileStrength
	YieldStrength
	Elongation
	ReductionOfArea
	HardnessBrinell
	HardnessRockwellB
	HardnessRockwellE
	ShearStrength
	TorsionalStrength
	FatigueStrength
	FatigueStrengthNotched
	CompressiveStrength
	CompressiveYieldStrength
	BendingStrength
	TransverseLoad
	ImpactCharpyV
	ImpactCharpyKeyhole
	ImpactCharpyUnnotched
	ImpactIzod
	FractureToughness
	ElasticModulus
	ShearModulus
	PoissonRatio
	DampingCapacity
	Density
	Solidus
	Liquidus
	MeltingPoint
	ThermalExpansion
	ThermalConductivity
	SpecificHeat
	LatentHeat
	ElectricalConductivity
	PatternShrinkage
	MachinabilityIndex
	RatingFluidity
	RatingPressureTightness
	RatingHotCracking
	RatingSolidificationShrinkage
	RatingDieFilling
	RatingAntiSoldering
	RatingCastingEase
	RatingPartComplexity
	RatingMachinability
	RatingPolishing
	RatingElectroplating
	RatingAnodizing
	RatingChemicalCoating
	RatingElevatedTemperature
	RatingCorrosion
	RatingWeldability
	RatingGasWeldability
	RatingArcWeldability
	// Percent of the figure at room temperature that is left at temperature after
	// exposure. They serve the service temperature and are not rows of the bench.
	TensileRetained
	YieldRetained
	ModulusRetained
	propertyCount
)

// PropertyCount is one more than the highest PropertyID; use it to size tables.
const PropertyCount = int(propertyCount)

// Group gathers properties under one heading of the bench.
type Group uint8

// The groups in the order they are shown.
const (
	Mechanical Group = iota
	Elastic
	Physical
	Foundry
)

var groupNames = [...]string{"Mechanical", "Elastic", "Physical", "Foundry"}

func (g Group) String() string { return groupNames[g] }

// Sense says which way a difference in a property counts.
type Sense uint8

// The senses. Near needs a target: the figure nearest to it wins.
const (
	Neutral Sense = iota
	More
	Less
	Near
)

var senseNames = [...]string{"neutral", "more", "less", "near"}

func (s Sense) String() string { return senseNames[s] }

// Bearing lists the test conditions that bear on a property: two figures can
// only be set against each other where these agree.
type Bearing uint8

// The conditions that bear on a property.
const (
	BearsOffset Bearing = 1 << iota // how yield is defined
	BearsGauge                      // gauge length of elongation
	BearsLoad                       // hardness load and ball
	BearsCycles                     // fatigue life
	BearsRange                      // temperature range of mean expansion
	BearsBar                        // kind of test bar
	BearsScale                      // a reference scale named in the note
)

// Property describes one attribute: what it measures, which way is better,
// and the unit it is shown in for each unit system.
type Property struct {
	ID        string // as in data files, commands and JSON
	Name      string // as in the row heading
	Short     string // where room is scarce
	Group     Group
	Dimension units.Dimension
	Sense     Sense // default; the user can turn it
	// Units are the display units in the US, SI and CGS systems.
	Units [3]units.Unit
	// Specified is true where standards set minimums for the property, so
	// that the basis setting of the bench applies to it.
	Specified bool
	// Strength is true for stresses at which the metal gives way.
	Strength bool
	Bears    Bearing
	alias    []string // words a user may type for it
}

func same(u units.Unit) [3]units.Unit { return [3]units.Unit{u, u, u} }

var (
	stressUnits    = [3]units.Unit{units.KSI, units.MPa, units.KgfPerMM2}
	modulusUnits   = [3]units.Unit{units.Mpsi, units.GPa, units.KgfPerMM2}
	impactUnits    = [3]units.Unit{units.FootPound, units.Joule, units.Joule}
	expansionUnits = [3]units.Unit{units.MicroinInF, units.MicromMK, units.MicromMK}
)

func strength(id, name, short string, bears Bearing, specified bool, alias ...string) Property {
	return Property{ID: id, Name: name, Short: short, Group: Mechanical, Dimension: units.Stress, Sense: More,
		Units: stressUnits, Specified: specified, Strength: true, Bears: bears | BearsBar, alias: alias}
}

func impact(id, name, short string) Property {
	return Property{ID: id, Name: name, Short: short, Group: Mechanical, Dimension: units.Energy, Sense: More,
		Units: impactUnits, Specified: true, Bears: BearsBar}
}

func rating(id, name, short string, alias ...string) Property {
	return Property{ID: "rating_" + id, Name: name, Short: short, Group: Foundry, Dimension: units.Rating, Sense: Less,
		Units: same(units.RatingNumber), Bears: BearsScale, alias: alias}
}

func retained(id, name string, g Group) Property {
	return Property{ID: id + "_retained", Name: name + " retained", Short: name + " retained", Group: g,
		Dimension: units.Percent, Sense: More, Units: same(units.Pct)}
}

var properties = [PropertyCount]Property{
	TensileStrength:          strength("tensile_strength", "Tensile strength", "Tensile", 0, true, "uts", "tensile", "ultimate", "ultimate tensile strength", "rm"),
	YieldStrength:            strength("yield_strength", "Yield strength", "Yield", BearsOffset, true, "yield", "ys", "proof stress", "rp0.2"),
	Elongation:               {ID: "elongation", Name: "Elongation", Short: "Elong", Group: Mechanical, Dimension: units.Percent, Sense: More, Units: same(units.Pct), Specified: true, Bears: BearsGauge | BearsBar, alias: []string{"el", "elong", "a5"}},
	ReductionOfArea:          {ID: "reduction_of_area", Name: "Reduction of area", Short: "Red area", Group: Mechanical, Dimension: units.Percent, Sense: More, Units: same(units.Pct), Specified: true, Bears: BearsBar},
	HardnessBrinell:          {ID: "hardness_brinell", Name: "Brinell hardness", Short: "Brinell", Group: Mechanical, Dimension: units.HBUnstated, Sense: More, Units: same(units.HBNumber), Bears: BearsLoad, alias: []string{"hb", "brinell", "hardness", "bhn"}},
	HardnessRockwellB:        {ID: "hardness_rockwell_b", Name: "Rockwell B", Short: "HRB", Group: Mechanical, Dimension: units.HRB, Sense: More, Units: same(units.HRBNumber), alias: []string{"hrb"}},
	HardnessRockwellE:        {ID: "hardness_rockwell_e", Name: "Rockwell E", Short: "HRE", Group: Mechanical, Dimension: units.HRE, Sense: More, Units: same(units.HRENumber), alias: []string{"hre"}},
	ShearStrength:            strength("shear_strength", "Shear strength", "Shear", 0, false, "shear"),
	TorsionalStrength:        strength("torsional_strength", "Torsional strength", "Torsion", 0, false),
	FatigueStrength:          strength("fatigue_strength", "Fatigue strength", "Fatigue", BearsCycles, false, "fatigue", "endurance"),
	FatigueStrengthNotched:   strength("fatigue_strength_notched", "Fatigue strength, notched", "Notched fat.", BearsCycles, false),
	CompressiveStrength:      strength("compressive_strength", "Compressive strength", "Compr", 0, false, "compressive"),
	CompressiveYieldStrength: strength("compressive_yield_strength", "Compressive yield", "Compr yield", BearsOffset, false),
	BendingStrength:          strength("bending_strength", "Bending strength", "Bending", 0, false),
	TransverseLoad:           {ID: "transverse_load", Name: "Transverse load", Short: "Transverse", Group: Mechanical, Dimension: units.Force, Sense: More, Units: [3]units.Unit{units.PoundForce, units.Newton, units.Newton}, Bears: BearsBar},
	ImpactCharpyV:            impact("impact_charpy_v", "Charpy V-notch impact", "Charpy V"),
	ImpactCharpyKeyhole:      impact("impact_charpy_keyhole", "Charpy keyhole impact", "Charpy key"),
	ImpactCharpyUnnotched:    impact("impact_charpy_unnotched", "Charpy unnotched impact", "Charpy unn."),
	ImpactIzod:               impact("impact_izod", "Izod impact", "Izod"),
	FractureToughness:        {ID: "fracture_toughness", Name: "Fracture toughness", Short: "KIc", Group: Mechanical, Dimension: units.FractureToughness, Sense: More, Units: [3]units.Unit{units.KSIRootIn, units.MPaRootM, units.MPaRootM}, Bears: BearsBar, alias: []string{"kic"}},
	ElasticModulus:           {ID: "elastic_modulus", Name: "Elastic modulus", Short: "Modulus", Group: Elastic, Dimension: units.Stress, Sense: More, Units: modulusUnits, alias: []string{"modulus", "young", "young's modulus", "stiffness", "e"}},
	ShearModulus:             {ID: "shear_modulus", Name: "Shear modulus", Short: "Shear mod", Group: Elastic, Dimension: units.Stress, Sense: More, Units: modulusUnits},
	PoissonRatio:             {ID: "poisson_ratio", Name: "Poisson's ratio", Short: "Poisson", Group: Elastic, Dimension: units.Ratio, Sense: Neutral, Units: same(units.One), alias: []string{"poisson"}},
	DampingCapacity:          {ID: "damping_capacity", Name: "Damping capacity", Short: "Damping", Group: Elastic, Dimension: units.Percent, Sense: More, Units: same(units.Pct), Bears: BearsScale, alias: []string{"damping"}},
	Density:                  {ID: "density", Name: "Density", Short: "Density", Group: Physical, Dimension: units.Density, Sense: Less, Units: [3]units.Unit{units.LbPerIn3, units.GPerCM3, units.GPerCM3}, alias: []string{"weight", "rho"}},
	Solidus:                  {ID: "solidus", Name: "Solidus", Short: "Solidus", Group: Physical, Dimension: units.Temperature, Sense: Neutral, Units: [3]units.Unit{units.DegF, units.DegC, units.DegC}},
	Liquidus:                 {ID: "liquidus", Name: "Liquidus", Short: "Liquidus", Group: Physical, Dimension: units.Temperature, Sense: Neutral, Units: [3]units.Unit{units.DegF, units.DegC, units.DegC}},
	MeltingPoint:             {ID: "melting_point", Name: "Melting point", Short: "Melting", Group: Physical, Dimension: units.Temperature, Sense: Neutral, Units: [3]units.Unit{units.DegF, units.DegC, units.DegC}},
	ThermalExpansion:         {ID: "thermal_expansion", Name: "Thermal expansion", Short: "Expansion", Group: Physical, Dimension: units.ThermalExpansion, Sense: Less, Units: expansionUnits, Bears: BearsRange, alias: []string{"expansion", "cte"}},
	ThermalConductivity:      {ID: "thermal_conductivity", Name: "Thermal conductivity", Short: "Therm cond", Group: Physical, Dimension: units.ThermalConductivity, Sense: More, Units: [3]units.Unit{units.BtuPerHFtF, units.WPerMK, units.CalPerCMSC}, alias: []string{"heat conductivity", "k"}},
	SpecificHeat:             {ID: "specific_heat", Name: "Specific heat", Short: "Spec heat", Group: Physical, Dimension: units.SpecificHeat, Sense: Neutral, Units: [3]units.Unit{units.BtuPerLbF, units.JPerKgK, units.CalPerGC}, alias: []string{"cp", "heat capacity"}},
	LatentHeat:               {ID: "latent_heat", Name: "Latent heat of fusion", Short: "Latent heat", Group: Physical, Dimension: units.SpecificEnergy, Sense: Neutral, Units: [3]units.Unit{units.BtuPerLb, units.KJPerKg, units.CalPerG}},
	ElectricalConductivity:   {ID: "electrical_conductivity", Name: "Electrical conductivity", Short: "Elec cond", Group: Physical, Dimension: units.ElectricalConductivity, Sense: More, Units: [3]units.Unit{units.IACS, units.MSPerM, units.IACS}, alias: []string{"conductivity", "electrical resistivity", "resistivity", "iacs"}},
	PatternShrinkage:         {ID: "pattern_shrinkage", Name: "Pattern shrinkage", Short: "Shrinkage", Group: Foundry, Dimension: units.Strain, Sense: Neutral, Units: [3]units.Unit{units.InPerFt, units.MMPerM, units.MMPerM}, alias: []string{"shrinkage", "shrink"}},
	MachinabilityIndex:       {ID: "machinability_index", Name: "Machinability index", Short: "Mach index", Group: Foundry, Dimension: units.Percent, Sense: More, Units: same(units.Pct), Bears: BearsScale},

	RatingFluidity:                rating("fluidity", "Fluidity", "Fluidity", "fluidity"),
	RatingPressureTightness:       rating("pressure_tightness", "Pressure tightness", "Press tight", "pressure tightness"),
	RatingHotCracking:             rating("hot_cracking_resistance", "Resistance to hot cracking", "Hot crack", "hot cracking"),
	RatingSolidificationShrinkage: rating("solidification_shrinkage", "Solidification shrinkage tendency", "Solid shr"),
	RatingDieFilling:              rating("die_filling_capacity", "Die filling capacity", "Die filling", "die filling"),
	RatingAntiSoldering:           rating("anti_soldering", "Resistance to soldering to the die", "Anti-solder"),
	RatingCastingEase:             rating("casting_ease", "Ease of casting", "Ease"),
	RatingPartComplexity:          rating("part_complexity", "Part complexity", "Complexity"),
	RatingMachinability:           rating("machinability", "Machinability", "Machining", "machinability", "machining"),
	RatingPolishing:               rating("polishing", "Polishing", "Polishing", "polishing"),
	RatingElectroplating:          rating("electroplating", "Electroplating", "Plating", "plating", "electroplating"),
	RatingAnodizing:               rating("anodizing_appearance", "Anodizing, appearance", "Anodizing", "anodizing"),
	RatingChemicalCoating:         rating("chemical_coating", "Chemical conversion coating", "Chem coat"),
	RatingElevatedTemperature:     rating("elevated_temperature_strength", "Strength at elevated temperature", "Hot strength"),
	RatingCorrosion:               rating("corrosion_resistance", "Corrosion resistance", "Corrosion", "corrosion"),
	RatingWeldability:             rating("weldability", "Weldability", "Welding", "weldability", "welding"),
	RatingGasWeldability:          rating("gas_weldability", "Weldability, gas", "Gas weld"),
	RatingArcWeldability:          rating("arc_weldability", "Weldability, arc", "Arc weld"),

	TensileRetained: retained("tensile", "Tensile strength", Mechanical),
	YieldRetained:   retained("yield", "Yield strength", Mechanical),
	ModulusRetained: retained("modulus", "Elastic modulus", Elastic),
}

// Info returns the description of a property.
func (p PropertyID) Info() *Property { return &properties[p] }

func (p PropertyID) String() string { return properties[p].ID }

// OfCurve reports whether p is a point of a curve that serves the service
// temperature, and no row of the bench.
func (p PropertyID) OfCurve() bool { return p >= TensileRetained }

// Properties lists every property that can be a row of the bench, in its order.
func Properties() []PropertyID {
	all := make([]PropertyID, 0, PropertyCount-1)
	for p := TensileStrength; p < TensileRetained; p++ {
		all = append(all, p)
	}
	return all
}

// PropertyNamed finds a property by the id used in data files and JSON.
func PropertyNamed(id string) (PropertyID, bool) {
	for p := TensileStrength; p < propertyCount; p++ {
		if properties[p].ID == id {
			return p, true
		}
	}
	return NoProperty, false
}

// Words are what a person may type for the property, in lower case: its id,
// name, short name and other words in use.
func (p PropertyID) Words() []string {
	info := p.Info()
	words := []string{strings.ReplaceAll(info.ID, "_", " "), strings.ToLower(info.Name), strings.ToLower(info.Short)}
	return append(words, info.alias...)
}

// PropertyIDs lists the ids used in data files, in bench order.
func PropertyIDs() []string {
	var ids []string
	for _, p := range Properties() {
		ids = append(ids, p.String())
	}
	return ids
}
