package units

// Units of length, area, volume, mass, density, energy, time and the price of
// a mass.
const (
	Inch       Unit = iota + electricalEnd // in
	Foot                                   // ft
	Mil                                    // 0.001 in
	Microinch                              // µin
	MM                                     // mm
	CM                                     // cm
	Meter                                  // m
	Micrometer                             // µm

	In2  // in²
	Ft2  // ft²
	Cmil // circular mil
	MM2  // mm²
	CM2  // cm²
	M2   // m²

	In3    // in³
	Ft3    // ft³
	MM3    // mm³
	CM3    // cm³
	M3     // m³
	Liter  // L
	Gallon // US gallon

	Pound // lb
	Ounce // avoirdupois ounce
	Ton   // short ton, 2000 lb
	Kg    // kg
	Gram  // g
	Tonne // metric ton, t

	LbPerIn3 // lb/in³
	LbPerFt3 // lb/ft³
	GPerCM3  // g/cm³
	KgPerM3  // kg/m³

	Joule     // J
	KiloJoule // kJ
	FootPound // ft·lbf
	InchPound // in·lbf
	KgfMeter  // kgf·m
	Btu       // International Table Btu
	BtuTh     // thermochemical Btu
	Cal       // thermochemical calorie
	CalIT     // International Table calorie
	CalMean   // mean calorie
	Cal15     // 15 °C calorie
	Kcal      // thermochemical kilocalorie
	KWh       // kilowatt-hour

	Second // s
	Minute // min
	Hour   // h
	Day    // d

	PerLb // a price per pound; the currency is the caller's
	PerKg // a price per kilogram; the currency is the caller's

	sizeEnd
)

// Factors: SP 811 B.8 and B.9, length, area, volume, mass, mass density, energy.
var sizeTable = [sizeEnd - electricalEnd]def{
	{dim: Length, num: inch, den: 1, symbol: "in"},
	{dim: Length, num: foot, den: 1, symbol: "ft"},
	{dim: Length, num: mil, den: 1, symbol: "mil"},
	{dim: Length, num: inch, den: 1e6, symbol: "µin", ascii: "uin"},
	{dim: Length, num: 1, den: 1e3, symbol: "mm"},
	{dim: Length, num: 1, den: 100, symbol: "cm"},
	{dim: Length, num: 1, den: 1, symbol: "m"},
	{dim: Length, num: 1, den: 1e6, symbol: "µm", ascii: "um"},

	{dim: Area, num: inch * inch, den: 1, symbol: "in²", ascii: "in2"},
	{dim: Area, num: foot * foot, den: 1, symbol: "ft²", ascii: "ft2"},
	{dim: Area, num: cmil, den: 1, symbol: "cmil"},
	{dim: Area, num: 1, den: 1e6, symbol: "mm²", ascii: "mm2"},
	{dim: Area, num: 1, den: 1e4, symbol: "cm²", ascii: "cm2"},
	{dim: Area, num: 1, den: 1, symbol: "m²", ascii: "m2"},

	{dim: Volume, num: inch * inch * inch, den: 1, symbol: "in³", ascii: "in3"},
	{dim: Volume, num: foot * foot * foot, den: 1, symbol: "ft³", ascii: "ft3"},
	{dim: Volume, num: 1, den: 1e9, symbol: "mm³", ascii: "mm3"},
	{dim: Volume, num: 1, den: 1e6, symbol: "cm³", ascii: "cm3", spell: "cc|mL"},
	{dim: Volume, num: 1, den: 1, symbol: "m³", ascii: "m3"},
	{dim: Volume, num: 1, den: 1e3, symbol: "L", spell: "dm3"},
	{dim: Volume, num: 231 * inch * inch * inch, den: 1, symbol: "gal"},

	{dim: Mass, num: pound, den: 1, symbol: "lb"},
	{dim: Mass, num: pound, den: 16, symbol: "oz"},
	{dim: Mass, num: 2000 * pound, den: 1, symbol: "ton"},
	{dim: Mass, num: 1, den: 1, symbol: "kg"},
	{dim: Mass, num: 1, den: 1e3, symbol: "g"},
	{dim: Mass, num: 1e3, den: 1, symbol: "t", spell: "Mg"},

	{dim: Density, num: pound, den: inch * inch * inch, symbol: "lb/in³", ascii: "lb/in3"},
	{dim: Density, num: pound, den: foot * foot * foot, symbol: "lb/ft³", ascii: "lb/ft3"},
	{dim: Density, num: 1e3, den: 1, symbol: "g/cm³", ascii: "g/cm3", spell: "g/cc|g/mL|kg/L|kg/dm3|t/m3|Mg/m3|CGS"},
	{dim: Density, num: 1, den: 1, symbol: "kg/m³", ascii: "kg/m3", spell: "g/L"},

	{dim: Energy, num: 1, den: 1, symbol: "J", spell: "N-m"},
	{dim: Energy, num: 1e3, den: 1, symbol: "kJ"},
	{dim: Energy, num: foot * lbf, den: 1, symbol: "ft·lbf", ascii: "ft-lbf", spell: "ft-lb"},
	{dim: Energy, num: inch * lbf, den: 1, symbol: "in·lbf", ascii: "in-lbf", spell: "in-lb"},
	{dim: Energy, num: kgf, den: 1, symbol: "kgf·m", ascii: "kgf-m", spell: "kg-m"},
	{dim: Energy, num: btuIT, den: 1, symbol: "Btu", ascii: "BTU"},
	{dim: Energy, num: btuTh, den: 1, symbol: "Btu(th)", ascii: "BTU(th)"},
	{dim: Energy, num: calTh, den: 1, symbol: "cal"},
	{dim: Energy, num: calIT, den: 1, symbol: "cal(IT)"},
	{dim: Energy, num: 4.19002, den: 1, symbol: "cal(mean)"}, // SP 811 B.8, not exact
	{dim: Energy, num: 4.18580, den: 1, symbol: "cal(15C)"},  // SP 811 B.8, not exact
	{dim: Energy, num: calTh * 1000, den: 1, symbol: "kcal"},
	{dim: Energy, num: 3.6e6, den: 1, symbol: "kWh", spell: "kW-h"},

	{dim: Time, num: 1, den: 1, symbol: "s"},
	{dim: Time, num: 60, den: 1, symbol: "min"},
	{dim: Time, num: hour, den: 1, symbol: "h"},
	{dim: Time, num: 24 * hour, den: 1, symbol: "d"},

	{dim: PricePerMass, num: 1, den: pound, symbol: "/lb"},
	{dim: PricePerMass, num: 1, den: 1, symbol: "/kg"},
}
