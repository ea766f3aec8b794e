package units

// Units of electrical conductivity, and of resistivity as its reciprocal, of
// current, and of power.
const (
	IACS         Unit = iota + thermalEnd // %IACS at 20 °C
	MSPerM                                // MS/m
	SPerM                                 // S/m
	MSPerCM                               // MS/cm
	MicroOhmCM                            // µΩ·cm
	NanoOhmM                              // nΩ·m
	MicroOhmM                             // µΩ·m
	OhmM                                  // Ω·m
	E7OhmM                                // 10⁻⁷ Ω·m
	E8OhmM                                // 10⁻⁸ Ω·m
	MicroOhmIn                            // µΩ·in
	OhmMM2PerM                            // Ω·mm²/m
	OhmCmilPerFt                          // Ω·cmil/ft

	Ampere      // A
	Milliampere // mA
	Kiloampere  // kA

	Watt       // W
	Kilowatt   // kW
	BtuPerHour // Btu/h
	Horsepower // 550 ft·lbf/s

	electricalEnd
)

// Factors: IEC 60028 for %IACS; SP 811 B.8 for the circular mil and power.
var electricalTable = [electricalEnd - thermalEnd]def{
	{dim: ElectricalConductivity, num: iacs, den: 1, symbol: "%IACS", spell: "% IACS"},
	{dim: ElectricalConductivity, num: 1e6, den: 1, symbol: "MS/m", spell: "m/ohm-mm2"},
	{dim: ElectricalConductivity, num: 1, den: 1, symbol: "S/m"},
	{dim: ElectricalConductivity, num: 1e8, den: 1, symbol: "MS/cm"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e8, symbol: "µΩ·cm", ascii: "uohm-cm"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e9, symbol: "nΩ·m", ascii: "nohm-m"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e6, symbol: "µΩ·m", ascii: "uohm-m"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1, symbol: "Ω·m", ascii: "ohm-m"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e7, symbol: "×10⁻⁷ Ω·m", ascii: "1e-7 ohm-m"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e8, symbol: "×10⁻⁸ Ω·m", ascii: "1e-8 ohm-m"},
	{dim: ElectricalConductivity, recip: true, num: inch, den: 1e6, symbol: "µΩ·in", ascii: "uohm-in"},
	{dim: ElectricalConductivity, recip: true, num: 1, den: 1e6, symbol: "Ω·mm²/m", ascii: "ohm-mm2/m"},
	{dim: ElectricalConductivity, recip: true, num: cmil, den: foot, symbol: "Ω·cmil/ft", ascii: "ohm-cmil/ft"},

	{dim: Current, num: 1, den: 1, symbol: "A"},
	{dim: Current, num: 1, den: 1e3, symbol: "mA"},
	{dim: Current, num: 1e3, den: 1, symbol: "kA"},

	{dim: Power, num: 1, den: 1, symbol: "W", spell: "J/s"},
	{dim: Power, num: 1e3, den: 1, symbol: "kW"},
	{dim: Power, num: btuIT, den: hour, symbol: "Btu/h", ascii: "BTU/h"},
	{dim: Power, num: 550 * foot * lbf, den: 1, symbol: "hp"},
}
