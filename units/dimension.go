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

var dimensionNames = [dimensionCount]string{
	NoDimension:            "no dimension",
	Stress:                 "stress",
	Density:                "density",
	ThermalConductivity:    "thermal conductivity",
	SpecificHeat:           "specific heat",
	SpecificEnergy:         "energy per mass",
	ElectricalConductivity: "electrical conductivity",
	ThermalExpansion:       "thermal expansion",
	Temperature:            "temperature",
	TemperatureDifference:  "temperature difference",
	Mass:                   "mass",
	Length:                 "length",
	Area:                   "area",
	Volume:                 "volume",
	Force:                  "force",
	Energy:                 "energy",
	Percent:                "percent",
	Ratio:                  "plain number",
	FractureToughness:      "fracture toughness",
	ThermalDiffusivity:     "thermal diffusivity",
	HeatTransfer:           "heat transfer coefficient",
	HeatFlux:               "heat flux",
	Power:                  "power",
	Time:                   "time",
	Current:                "current",
	Strain:                 "length per length",
	PricePerMass:           "price per mass",
	Rating:                 "rating",
	HBUnstated:             "Brinell hardness, load not stated",
	HB500:                  "Brinell hardness 500 kgf/10 mm",
	HB1000:                 "Brinell hardness 1000 kgf/10 mm",
	HB1500:                 "Brinell hardness 1500 kgf/10 mm",
	HB3000:                 "Brinell hardness 3000 kgf/10 mm",
	HB125x5:                "Brinell hardness 125 kgf/5 mm",
	HB250x5:                "Brinell hardness 250 kgf/5 mm",
	HB750x5:                "Brinell hardness 750 kgf/5 mm",
	HB62x2:                 "Brinell hardness 62.5 kgf/2.5 mm",
	HB187x2:                "Brinell hardness 187.5 kgf/2.5 mm",
	HRA:                    "Rockwell A hardness",
	HRB:                    "Rockwell B hardness",
	HRC:                    "Rockwell C hardness",
	HRE:                    "Rockwell E hardness",
	HRF:                    "Rockwell F hardness",
	HV:                     "Vickers hardness",
	HK:                     "Knoop hardness",
}

// String returns the name of the dimension in words: "stress", "thermal
// expansion".
func (d Dimension) String() string {
	if d >= dimensionCount {
		d = NoDimension
	}
	return dimensionNames[d]
}

// Hardness reports whether d is a hardness scale.
func (d Dimension) Hardness() bool { return d >= HBUnstated && d < dimensionCount }

// Brinell reports whether d is a Brinell scale, its load stated or not.
func (d Dimension) Brinell() bool { return d >= HBUnstated && d <= HB187x2 }

// plain reports whether values of d are written without a unit.
func (d Dimension) plain() bool { return d == Ratio || d == Rating }
