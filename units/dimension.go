package units

// Dimension is the kind of a quantity. Two units convert into each other only
// when they have the same Dimension.
//
// A temperature and a temperature difference are different dimensions, and so
// is every hardness scale: no factor leads from one scale to another.
type Dimension uint8

// The dimensions. NoDimension is the zero value: "any", or "not known".
const (
	NoDimension            Dimension = iota
	Stress                           // strength, modulus, pressure; SI unit Pa
	Density                          // kg/m³
	ThermalConductivity              // W/m·K
	SpecificHeat                     // J/kg·K
	SpecificEnergy                   // latent heat of fusion; J/kg
	ElectricalConductivity           // S/m; resistivity units are its reciprocal members
	ThermalExpansion                 // mean coefficient of linear thermal expansion; 1/K
	Temperature                      // a point on a temperature scale; K
	TemperatureDifference            // an interval of temperature; K
	Mass                             // kg
	Length                           // m
	Area                             // m²
	Volume                           // m³
	Force                            // N
	Energy                           // J, also impact energy
	Percent                          // elongation and other percentages; in percent
	Ratio                            // plain number
	FractureToughness                // Pa·√m
	ThermalDiffusivity               // m²/s
	HeatTransfer                     // heat transfer coefficient; W/m²·K
	HeatFlux                         // W/m²
	Power                            // W
	Time                             // s
	Current                          // A
	Strain                           // pattern shrinkage and other length per length; m/m
	PricePerMass                     // any currency per mass; 1/kg
	Rating                           // foundry rating, 1 best to 5
	HBUnstated                       // Brinell, load and ball not stated
	HB500                            // Brinell, 500 kgf on a 10 mm ball
	HB1000                           // Brinell, 1000 kgf on a 10 mm ball
	HB1500                           // Brinell, 1500 kgf on a 10 mm ball
	HB3000                           // Brinell, 3000 kgf on a 10 mm ball
	HB125x5                          // Brinell, 125 kgf on a 5 mm ball
	HB250x5                          // Brinell, 250 kgf on a 5 mm ball
	HB750x5                          // Brinell, 750 kgf on a 5 mm ball
	HB62x2                           // Brinell, 62.5 kgf on a 2.5 mm ball
	HB187x2                          // Brinell, 187.5 kgf on a 2.5 mm ball
	HRA                              // Rockwell A
	HRB                              // Rockwell B
	HRC                              // Rockwell C
	HRE                              // Rockwell E
	HRF                              // Rockwell F
	HV                               // Vickers
	HK                               // Knoop
	dimensionCount
)

// dimensions gives each dimension its name and, where it has several units, the
// usual ones of the US, SI and CGS systems.
var dimensions = [dimensionCount]struct {
	name  string
	usual [3]Unit
}{
	NoDimension:            {name: "no dimension"},
	Stress:                 {"stress", [3]Unit{KSI, MPa, KgfPerMM2}},
	Density:                {"density", [3]Unit{LbPerIn3, GPerCM3, GPerCM3}},
	ThermalConductivity:    {"thermal conductivity", [3]Unit{BtuPerHFtF, WPerMK, CalPerCMSC}},
	SpecificHeat:           {"specific heat", [3]Unit{BtuPerLbF, JPerKgK, CalPerGC}},
	SpecificEnergy:         {"energy per mass", [3]Unit{BtuPerLb, KJPerKg, CalPerG}},
	ElectricalConductivity: {"electrical conductivity", [3]Unit{IACS, MSPerM, IACS}},
	ThermalExpansion:       {"thermal expansion", [3]Unit{MicroinInF, MicromMK, MicromMK}},
	Temperature:            {"temperature", [3]Unit{DegF, DegC, DegC}},
	TemperatureDifference:  {"temperature difference", [3]Unit{DeltaF, DeltaC, DeltaC}},
	Mass:                   {"mass", [3]Unit{Pound, Kg, Kg}},
	Length:                 {"length", [3]Unit{Inch, MM, MM}},
	Area:                   {"area", [3]Unit{In2, MM2, CM2}},
	Volume:                 {"volume", [3]Unit{In3, CM3, CM3}},
	Force:                  {"force", [3]Unit{PoundForce, Newton, KgForce}},
	Energy:                 {"energy", [3]Unit{FootPound, Joule, KgfMeter}},
	Percent:                {name: "percent"},
	Ratio:                  {name: "plain number"},
	FractureToughness:      {"fracture toughness", [3]Unit{KSIRootIn, MPaRootM, MPaRootM}},
	ThermalDiffusivity:     {"thermal diffusivity", [3]Unit{Ft2PerH, MM2PerS, CM2PerS}},
	HeatTransfer:           {"heat transfer coefficient", [3]Unit{BtuPerHFt2F, WPerM2K, WPerM2K}},
	HeatFlux:               {"heat flux", [3]Unit{BtuPerHFt2, WPerM2, WPerCM2}},
	Power:                  {"power", [3]Unit{BtuPerHour, Watt, Watt}},
	Time:                   {"time", [3]Unit{Second, Second, Second}},
	Current:                {"current", [3]Unit{Ampere, Ampere, Ampere}},
	Strain:                 {"length per length", [3]Unit{InPerFt, MMPerM, PctStrain}},
	PricePerMass:           {"price per mass", [3]Unit{PerLb, PerKg, PerKg}},
	Rating:                 {name: "rating"},
	HBUnstated:             {name: "Brinell hardness, load not stated"},
	HB500:                  {name: "Brinell hardness 500 kgf/10 mm"},
	HB1000:                 {name: "Brinell hardness 1000 kgf/10 mm"},
	HB1500:                 {name: "Brinell hardness 1500 kgf/10 mm"},
	HB3000:                 {name: "Brinell hardness 3000 kgf/10 mm"},
	HB125x5:                {name: "Brinell hardness 125 kgf/5 mm"},
	HB250x5:                {name: "Brinell hardness 250 kgf/5 mm"},
	HB750x5:                {name: "Brinell hardness 750 kgf/5 mm"},
	HB62x2:                 {name: "Brinell hardness 62.5 kgf/2.5 mm"},
	HB187x2:                {name: "Brinell hardness 187.5 kgf/2.5 mm"},
	HRA:                    {name: "Rockwell A hardness"},
	HRB:                    {name: "Rockwell B hardness"},
	HRC:                    {name: "Rockwell C hardness"},
	HRE:                    {name: "Rockwell E hardness"},
	HRF:                    {name: "Rockwell F hardness"},
	HV:                     {name: "Vickers hardness"},
	HK:                     {name: "Knoop hardness"},
}

// String returns the name of the dimension in words: "stress", "thermal
// expansion".
func (d Dimension) String() string {
	if d >= dimensionCount {
		d = NoDimension
	}
	return dimensions[d].name
}

// Hardness reports whether d is a hardness scale.
func (d Dimension) Hardness() bool { return d >= HBUnstated && d < dimensionCount }

// Brinell reports whether d is a Brinell scale, its load stated or not.
func (d Dimension) Brinell() bool { return d >= HBUnstated && d <= HB187x2 }

// plain reports whether values of d are written without a unit.
func (d Dimension) plain() bool { return d == Ratio || d == Rating }
