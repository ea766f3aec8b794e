package units

// Units of stress, force and fracture toughness.
const (
	PSI        Unit = iota + NoUnit + 1 // pound-force per square inch
	KSI                                 // 1000 psi
	Mpsi                                // 10⁶ psi, also written Msi
	Pa                                  // pascal
	KPa                                 // kilopascal
	MPa                                 // megapascal
	GPa                                 // gigapascal
	KgfPerMM2                           // kilogram-force per square millimeter
	NPerMM2                             // newton per square millimeter
	KgfPerCM2                           // kilogram-force per square centimeter
	KgfPerM2                            // kilogram-force per square meter
	Bar                                 // 100 kPa
	TonfPerIn2                          // long ton-force per square inch, tsi

	PoundForce // lbf
	Kip        // 1000 lbf
	Newton     // N
	KiloNewton // kN
	KgForce    // kgf

	MPaRootM  // MPa·√m
	KSIRootIn // ksi·√in
	NPerMM15  // N/mm^1.5
	E7NPerM15 // 10⁷ N/m^1.5

	stressEnd
)

// Factors: SP 811 B.8 and B.9, pressure or stress, and force.
var stressTable = [stressEnd - NoUnit - 1]def{
	{dim: Stress, num: lbf, den: inch * inch, symbol: "psi", spell: "lbf/in2|lb/in2"},
	{dim: Stress, num: 1000 * lbf, den: inch * inch, symbol: "ksi", spell: "kip/in2|kpsi"},
	{dim: Stress, num: 1e6 * lbf, den: inch * inch, symbol: "Mpsi", spell: "Msi|1e6 psi|1e3 ksi"},
	{dim: Stress, num: 1, den: 1, symbol: "Pa", spell: "N/m2"},
	{dim: Stress, num: 1e3, den: 1, symbol: "kPa", spell: "kN/m2"},
	{dim: Stress, num: 1e6, den: 1, symbol: "MPa", spell: "MN/m2"},
	{dim: Stress, num: 1e9, den: 1, symbol: "GPa", spell: "kN/mm2|1e3 MPa"},
	{dim: Stress, num: kgf * 1e6, den: 1, symbol: "kgf/mm²", ascii: "kgf/mm2", spell: "kg/mm2"},
	{dim: Stress, num: 1e6, den: 1, symbol: "N/mm²", ascii: "N/mm2"},
	{dim: Stress, num: kgf * 1e4, den: 1, symbol: "kgf/cm²", ascii: "kgf/cm2", spell: "kg/cm2"},
	{dim: Stress, num: kgf, den: 1, symbol: "kgf/m²", ascii: "kgf/m2"},
	{dim: Stress, num: 1e5, den: 1, symbol: "bar"},
	{dim: Stress, num: 2240 * lbf, den: inch * inch, symbol: "tonf/in²", ascii: "tonf/in2", spell: "tsi"}, // BS 350

	{dim: Force, num: lbf, den: 1, symbol: "lbf", spell: "lb"},
	{dim: Force, num: 1000 * lbf, den: 1, symbol: "kip", spell: "klbf"},
	{dim: Force, num: 1, den: 1, symbol: "N"},
	{dim: Force, num: 1e3, den: 1, symbol: "kN"},
	{dim: Force, num: kgf, den: 1, symbol: "kgf", spell: "kg"},

	{dim: FractureToughness, num: 1e6, den: 1, symbol: "MPa·√m", ascii: "MPa-m^0.5", spell: "MN/m1.5"},
	{dim: FractureToughness, num: 1000 * lbf * rootInch, den: inch * inch, symbol: "ksi·√in", ascii: "ksi-in^0.5"},
	{dim: FractureToughness, num: 1000, den: rootMilli, symbol: "N/mm^1.5", spell: "MPa-mm0.5|N/mm2-mm0.5"},
	{dim: FractureToughness, num: 1e7, den: 1, symbol: "×10⁷ N/m^1.5", ascii: "1e7 N/m^1.5"},
}
