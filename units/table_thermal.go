package units

// Units of heat, temperature and thermal expansion. An unmarked cal is the
// thermochemical calorie and an unmarked Btu the International Table Btu.
const (
	WPerMK          Unit = iota + stressEnd // W/m·K
	CalPerCMSC                              // cal(th)/cm·s·°C, the handbooks' CGS unit
	BtuPerHFtF                              // Btu/h·ft·°F
	BtuInPerHFt2F                           // Btu·in/h·ft²·°F
	BtuInPerSFt2F                           // Btu·in/s·ft²·°F
	BtuPerHInF                              // Btu/h·in·°F
	KcalPerHMC                              // kcal(IT)/h·m·°C
	BtuThInPerHFt2F                         // Btu(th)·in/h·ft²·°F
	BtuThInPerSFt2F                         // Btu(th)·in/s·ft²·°F

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

	thermalEnd
)

// Factors: SP 811 B.8 and B.9, heat. The interval of 1 °F is 5/9 K.
var thermalTable = [thermalEnd - stressEnd]def{
	{dim: ThermalConductivity, num: 1, den: 1, symbol: "W/m·K", ascii: "W/m-K"},
	{dim: ThermalConductivity, num: calTh * 100, den: 1, symbol: "cal/cm·s·°C", ascii: "cal/cm-s-C", spell: "CGS|cal/cm2-cm-s-C|cal-cm/cm2-s-C"},
	{dim: ThermalConductivity, num: btuIT * 9, den: hour * foot * 5, symbol: "Btu/h·ft·°F", ascii: "BTU/ft-h-F", spell: "Btu/h-ft2-ft-F|Btu-ft/h-ft2-F"},
	{dim: ThermalConductivity, num: btuIT * inch * 9, den: hour * foot * foot * 5, symbol: "Btu·in/h·ft²·°F", ascii: "BTU-in/ft2-h-F", spell: "Btu/h-ft2-in-F"},
	{dim: ThermalConductivity, num: btuIT * inch * 9, den: foot * foot * 5, symbol: "Btu·in/s·ft²·°F", ascii: "BTU-in/ft2-s-F"},
	{dim: ThermalConductivity, num: btuIT * 9, den: hour * inch * 5, symbol: "Btu/h·in·°F", ascii: "BTU/in-h-F"},
	{dim: ThermalConductivity, num: calIT * 1000, den: hour, symbol: "kcal/h·m·°C", ascii: "kcal/h-m-C", spell: "kcal(IT)/h-m-C"},
	{dim: ThermalConductivity, num: btuTh * inch * 9, den: hour * foot * foot * 5, symbol: "Btu(th)·in/h·ft²·°F", ascii: "BTU(th)-in/ft2-h-F"},
	{dim: ThermalConductivity, num: btuTh * inch * 9, den: foot * foot * 5, symbol: "Btu(th)·in/s·ft²·°F", ascii: "BTU(th)-in/ft2-s-F"},

	{dim: SpecificHeat, num: 1, den: 1, symbol: "J/kg·K", ascii: "J/kg-K"},
	{dim: SpecificHeat, num: 1e3, den: 1, symbol: "kJ/kg·K", ascii: "kJ/kg-K"},
	{dim: SpecificHeat, num: 1e3, den: 1, symbol: "J/g·K", ascii: "J/g-K"},
	{dim: SpecificHeat, num: 4186.8, den: 1, symbol: "Btu/lb·°F", ascii: "BTU/lb-F"},
	{dim: SpecificHeat, num: 4184, den: 1, symbol: "cal/g·°C", ascii: "cal/g-C", spell: "kcal/kg-C|CGS"},
	{dim: SpecificHeat, num: 4186.8, den: 1, symbol: "cal(IT)/g·°C", ascii: "cal(IT)/g-C", spell: "kcal(IT)/kg-C"},

	{dim: SpecificEnergy, num: 1, den: 1, symbol: "J/kg"},
	{dim: SpecificEnergy, num: 1e3, den: 1, symbol: "kJ/kg"},
	{dim: SpecificEnergy, num: 1e3, den: 1, symbol: "J/g"},
	{dim: SpecificEnergy, num: 2326, den: 1, symbol: "Btu/lb", ascii: "BTU/lb"},
	{dim: SpecificEnergy, num: 4184, den: 1, symbol: "cal/g", spell: "kcal/kg|CGS"},

	{dim: ThermalExpansion, num: 9, den: 5e6, symbol: "µin/in·°F", ascii: "uin/in-F", spell: "um/m-F"},
	{dim: ThermalExpansion, num: 1, den: 1e6, symbol: "µm/m·K", ascii: "um/m-K", spell: "uin/in-C|CGS"},
	{dim: ThermalExpansion, num: 9, den: 5e6, symbol: "×10⁻⁶/°F", ascii: "1e-6/F", spell: "ppm/F|1e-6 in/in-F|1e-6 m/m-F"},
	{dim: ThermalExpansion, num: 1, den: 1e6, symbol: "×10⁻⁶/K", ascii: "1e-6/K", spell: "ppm/K|1e-6 m/m-K|1e-6 mm/mm-K|1e-6 cm/cm-K|1e-6 in/in-K"},
	{dim: ThermalExpansion, num: 9, den: 5, symbol: "/°F", ascii: "/F", spell: "in/in-F|m/m-F"},
	{dim: ThermalExpansion, num: 1, den: 1, symbol: "/K", spell: "m/m-K|mm/mm-K|cm/cm-K|in/in-K"},

	{dim: Temperature, num: 5, den: 9, zero: 32, symbol: "°F", ascii: "F"},
	{dim: Temperature, num: 1, den: 1, symbol: "°C", ascii: "C"},
	{dim: Temperature, num: 1, den: 1, zero: iceKelvin, symbol: "K"},
	{dim: Temperature, num: 5, den: 9, zero: 491.67, symbol: "°R", ascii: "R"},
	{dim: TemperatureDifference, num: 5, den: 9, symbol: "Δ°F", ascii: "delta F", spell: "F|R|dR"},
	{dim: TemperatureDifference, num: 1, den: 1, symbol: "Δ°C", ascii: "delta C", spell: "C"},
	{dim: TemperatureDifference, num: 1, den: 1, symbol: "ΔK", ascii: "delta K", spell: "K"},

	{dim: ThermalDiffusivity, num: 1, den: 1, symbol: "m²/s", ascii: "m2/s"},
	{dim: ThermalDiffusivity, num: 1, den: 1e6, symbol: "mm²/s", ascii: "mm2/s"},
	{dim: ThermalDiffusivity, num: 1, den: 1e4, symbol: "cm²/s", ascii: "cm2/s", spell: "CGS"},
	{dim: ThermalDiffusivity, num: foot * foot, den: hour, symbol: "ft²/h", ascii: "ft2/h"},
	{dim: ThermalDiffusivity, num: inch * inch, den: 1, symbol: "in²/s", ascii: "in2/s"},

	{dim: HeatTransfer, num: 1, den: 1, symbol: "W/m²·K", ascii: "W/m2-K"},
	{dim: HeatTransfer, num: btuIT * 9, den: hour * foot * foot * 5, symbol: "Btu/h·ft²·°F", ascii: "BTU/h-ft2-F"},
	{dim: HeatFlux, num: 1, den: 1, symbol: "W/m²", ascii: "W/m2"},
	{dim: HeatFlux, num: 1e3, den: 1, symbol: "kW/m²", ascii: "kW/m2"},
	{dim: HeatFlux, num: 1e4, den: 1, symbol: "W/cm²", ascii: "W/cm2"},
	{dim: HeatFlux, num: btuIT, den: hour * foot * foot, symbol: "Btu/h·ft²", ascii: "BTU/h-ft2"},
}
