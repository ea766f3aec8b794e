package units

// Plain numbers, percentages, length per length, ratings and hardness numbers.
const (
	One Unit = iota + sizeEnd // a plain number
	Pct                       // percent

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

	unitCount
)

var numberTable = [unitCount - sizeEnd]def{
	{dim: Ratio, num: 1, den: 1, symbol: "", spell: "1|ratio"},
	{dim: Percent, num: 1, den: 1, symbol: "%"},

	{dim: Strain, num: 1, den: 1, symbol: "in/in", spell: "mm/mm|m/m|cm/cm"},
	{dim: Strain, num: 1, den: 12, symbol: "in/ft"},
	{dim: Strain, num: 1, den: 1e3, symbol: "mm/m"},
	{dim: Strain, num: 1, den: 100, symbol: "%"},
	{dim: Strain, num: 1, den: 1e6, symbol: "µm/m", ascii: "um/m", spell: "uin/in|ppm"},
	{dim: Rating, num: 1, den: 1, symbol: "", spell: "rating"},

	{dim: HBUnstated, num: 1, den: 1, symbol: "HB"},
	{dim: HB500, num: 1, den: 1, symbol: "HB 500/10"},
	{dim: HB1000, num: 1, den: 1, symbol: "HB 1000/10"},
	{dim: HB1500, num: 1, den: 1, symbol: "HB 1500/10"},
	{dim: HB3000, num: 1, den: 1, symbol: "HB 3000/10"},
	{dim: HB125x5, num: 1, den: 1, symbol: "HB 125/5"},
	{dim: HB250x5, num: 1, den: 1, symbol: "HB 250/5"},
	{dim: HB750x5, num: 1, den: 1, symbol: "HB 750/5"},
	{dim: HB62x2, num: 1, den: 1, symbol: "HB 62.5/2.5"},
	{dim: HB187x2, num: 1, den: 1, symbol: "HB 187.5/2.5"},
	{dim: HRA, num: 1, den: 1, symbol: "HRA"},
	{dim: HRB, num: 1, den: 1, symbol: "HRB"},
	{dim: HRC, num: 1, den: 1, symbol: "HRC"},
	{dim: HRE, num: 1, den: 1, symbol: "HRE"},
	{dim: HRF, num: 1, den: 1, symbol: "HRF"},
	{dim: HV, num: 1, den: 1, symbol: "HV"},
	{dim: HK, num: 1, den: 1, symbol: "HK"},
}
