package units

// The units. The order is that of UnitsOf, the usual ones of a dimension first;
// a new unit goes at the end, so that no number in compiled data changes.
const (
	// Stress, force and fracture toughness.
	PSI        Unit = iota + 1 // pound-force per square inch
	KSI                        // 1000 psi
	Mpsi                       // 10⁶ psi, also written Msi
	Pa                         // pascal
	KPa                        // kilopascal
	MPa                        // megapascal
	GPa                        // gigapascal
	KgfPerMM2                  // kilogram-force per square millimeter
	NPerMM2                    // newton per square millimeter
	KgfPerCM2                  // kilogram-force per square centimeter
	KgfPerM2                   // kilogram-force per square meter
	Bar                        // 100 kPa
	TonfPerIn2                 // long ton-force per square inch, tsi

	PoundForce // lbf
	Kip        // 1000 lbf
	Newton     // N
	KiloNewton // kN
	KgForce    // kgf

	MPaRootM  // MPa·√m
	KSIRootIn // ksi·√in
	NPerMM15  // N/mm^1.5
	E7NPerM15 // 10⁷ N/m^1.5

	// Heat, temperature and thermal expansion. An unmarked cal is the thermochemical
	// calorie and an unmarked Btu the International Table Btu.
	WPerMK          // W/m·K
	CalPerCMSC      // cal(th)/cm·s·°C, the handbooks' CGS unit
	BtuPerHFtF      // Btu/h·ft·°F
	BtuInPerHFt2F   // Btu·in/h·ft²·°F
	BtuInPerSFt2F   // Btu·in/s·ft²·°F
	BtuPerHInF      // Btu/h·in·°F
	KcalPerHMC      // kcal(IT)/h·m·°C
	BtuThInPerHFt2F // Btu(th)·in/h·ft²·°F
	BtuThInPerSFt2F // Btu(th)·in/s·ft²·°F

	JPerKgK    // J/kg·K
	KJPerKgK   // kJ/kg·K
	JPerGK     // J/g·K
	BtuPerLbF  // Btu/lb·°F
	CalPerGC   // cal(th)/g·°C
	CalITPerGC // cal(IT)/g·°C

	JPerKg     // J/kg
	KJPerKg    // kJ/kg
	JPerG      // J/g
	BtuPerLb   // Btu/lb
	CalPerG    // cal(th)/g
	MicroinInF // µin/in·°F
	MicromMK   // µm/m·K, the same as µm/m·°C
	E6PerF     // 10⁻⁶/°F
	E6PerK     // 10⁻⁶/K
	PerF       // 1/°F
	PerK       // 1/K

	DegF    // °F, a point on the scale
	DegC    // °C, a point on the scale
	Kelvin  // K, a point on the scale
	Rankine // °R, a point on the scale
	DeltaF  // °F, a difference
	DeltaC  // °C, a difference
	DeltaK  // K, a difference

	M2PerS  // m²/s
	MM2PerS // mm²/s
	CM2PerS // cm²/s
	Ft2PerH // ft²/h
	In2PerS // in²/s

	WPerM2K     // W/m²·K
	BtuPerHFt2F // Btu/h·ft²·°F
	WPerM2      // W/m²
	KWPerM2     // kW/m²
	WPerCM2     // W/cm²
	BtuPerHFt2  // Btu/h·ft²

	// Electrical conductivity, resistivity as its reciprocal, current, and power.
	IACS         // %IACS at 20 °C
	MSPerM       // MS/m
	SPerM        // S/m
	MSPerCM      // MS/cm
	MicroOhmCM   // µΩ·cm
	NanoOhmM     // nΩ·m
	MicroOhmM    // µΩ·m
	OhmM         // Ω·m
	E7OhmM       // 10⁻⁷ Ω·m
	E8OhmM       // 10⁻⁸ Ω·m
	MicroOhmIn   // µΩ·in
	OhmMM2PerM   // Ω·mm²/m
	OhmCmilPerFt // Ω·cmil/ft

	Ampere      // A
	Milliampere // mA
	Kiloampere  // kA

	Watt       // W
	Kilowatt   // kW
	BtuPerHour // Btu/h
	Horsepower // 550 ft·lbf/s

	// Length, area, volume, mass, density, energy, time and the price of a mass.
	Inch       // in
	Foot       // ft
	Mil        // 0.001 in
	Microinch  // µin
	MM         // mm
	CM         // cm
	Meter      // m
	Micrometer // µm

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

	// Plain numbers, percentages, length per length, ratings and hardness numbers.
	One // a plain number
	Pct // percent

	InPerIn      // in/in, the same as mm/mm
	InPerFt      // in/ft, pattern shrinkage
	MMPerM       // mm/m
	PctStrain    // percent of a length
	MicroStrain  // 10⁻⁶ m/m
	RatingNumber // foundry rating, 1 best to 5

	HBNumber      // Brinell number, load and ball not stated
	HB500Number   // Brinell number, 500 kgf/10 mm
	HB1000Number  // Brinell number, 1000 kgf/10 mm
	HB1500Number  // Brinell number, 1500 kgf/10 mm
	HB3000Number  // Brinell number, 3000 kgf/10 mm
	HB125x5Number // Brinell number, 125 kgf/5 mm
	HB250x5Number // Brinell number, 250 kgf/5 mm
	HB750x5Number // Brinell number, 750 kgf/5 mm
	HB62x2Number  // Brinell number, 62.5 kgf/2.5 mm
	HB187x2Number // Brinell number, 187.5 kgf/2.5 mm
	HRANumber     // Rockwell A number
	HRBNumber     // Rockwell B number
	HRCNumber     // Rockwell C number
	HRENumber     // Rockwell E number
	HRFNumber     // Rockwell F number
	HVNumber      // Vickers number
	HKNumber      // Knoop number

	// Units that are read and converted into, but that UnitsOf does not list.
	Nanometer  // nm
	LongTon    // 2240 lb
	OzPerIn3   // avoirdupois ounce per cubic inch
	DaNPerMM2  // decanewton per square millimeter
	WPerCMK    // W/cm·K
	PerMille   // ‰, a tenth of a percent
	PerMilleOf // ‰ of a length

	unitCount
)
