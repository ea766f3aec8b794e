package units

import "strings"

// System is a set of units for display.
type System uint8

// The display systems: US customary, SI, and the CGS-flavored units of older
// handbooks.
const (
	US System = iota
	SI
	CGS
)

var systemNames = [...]string{US: "us", SI: "si", CGS: "cgs"}

// String returns "us", "si" or "cgs".
func (s System) String() string {
	if int(s) >= len(systemNames) {
		return systemNames[US]
	}
	return systemNames[s]
}

// ParseSystem reads us, si or cgs in any case. It fails with an *Error.
func ParseSystem(text string) (System, error) {
	for i, name := range systemNames {
		if strings.EqualFold(trimSpace(text), name) {
			return System(i), nil
		}
	}
	return US, &Error{Input: clip(text), Expected: "us, si or cgs"}
}

var preferred = [dimensionCount][3]Unit{
	Stress:                 {KSI, MPa, KgfPerMM2},
	Density:                {LbPerIn3, GPerCM3, GPerCM3},
	ThermalConductivity:    {BtuPerHFtF, WPerMK, CalPerCMSC},
	SpecificHeat:           {BtuPerLbF, JPerKgK, CalPerGC},
	SpecificEnergy:         {BtuPerLb, KJPerKg, CalPerG},
	ElectricalConductivity: {IACS, MSPerM, IACS},
	ThermalExpansion:       {MicroinInF, MicromMK, MicromMK},
	Temperature:            {DegF, DegC, DegC},
	TemperatureDifference:  {DeltaF, DeltaC, DeltaC},
	Mass:                   {Pound, Kg, Kg},
	Length:                 {Inch, MM, MM},
	Area:                   {In2, MM2, CM2},
	Volume:                 {In3, CM3, CM3},
	Force:                  {PoundForce, Newton, KgForce},
	Energy:                 {FootPound, Joule, KgfMeter},
	FractureToughness:      {KSIRootIn, MPaRootM, MPaRootM},
	ThermalDiffusivity:     {Ft2PerH, MM2PerS, CM2PerS},
	HeatTransfer:           {BtuPerHFt2F, WPerM2K, WPerM2K},
	HeatFlux:               {BtuPerHFt2, WPerM2, WPerCM2},
	Power:                  {BtuPerHour, Watt, Watt},
	Time:                   {Second, Second, Second},
	Current:                {Ampere, Ampere, Ampere},
	Strain:                 {InPerFt, MMPerM, PctStrain},
	PricePerMass:           {PerLb, PerKg, PerKg},
}

// Preferred returns the usual display unit of d in s: ksi, MPa and kgf/mm² for
// Stress. A dimension with one unit has that; NoDimension has NoUnit.
func Preferred(d Dimension, s System) Unit {
	if d >= dimensionCount || int(s) >= len(systemNames) {
		return NoUnit
	}
	if u := preferred[d][s]; u != NoUnit {
		return u
	}
	for u := NoUnit + 1; u < unitCount; u++ {
		if u.Dimension() == d && d != NoDimension {
			return u
		}
	}
	return NoUnit
}
