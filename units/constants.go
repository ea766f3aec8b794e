package units

// Exact constants that the unit table is built from. Go evaluates constant
// expressions exactly and rounds once, to float64, when the table is built.
const (
	inch    = 0.0254     // m, exact: SP 811 B.6
	foot    = 0.3048     // m, exact: SP 811 B.6
	pound   = 0.45359237 // kg, exact: SP 811 B.6, footnote on the pound
	gravity = 9.80665    // m/s², standard acceleration of free fall, exact: SP 811 B.8
	lbf     = pound * gravity
	kgf     = gravity // N, exact: SP 811 B.8
	calTh   = 4.184   // J, thermochemical calorie, exact: SP 811 B.8
	calIT   = 4.1868  // J, International Table calorie, exact: SP 811 B.8

	// The Btu is defined by 1 Btu/(lb·°F) = 1 cal/(g·°C), with the calorie of
	// the same kind. 1055.055 852 62 J and 1054.350 J (SP 811 B.8).
	btuIT = calIT * 1000 * pound * 5 / 9
	btuTh = calTh * 1000 * pound * 5 / 9

	hour = 3600.0 // s
	mil  = inch / 1000

	// cmil is the area of a circle one mil across, π/4 mil²: SP 811 B.8.
	cmil = 3.14159265358979323846264338327950288419716939937510582097494459 / 4 * mil * mil

	// iacs is the conductivity of one percent of the International Annealed
	// Copper Standard: 58 MS/m at 20 °C is 100 %IACS (IEC 60028).
	iacs = 580000 // S/m

	iceKelvin = 273.15 // K at 0 °C, exact: SP 811 B.8

	rootInch  = 0.1593737745050922736663116074624542111836 // √0.0254
	rootMilli = 0.0316227766016837933199889354443271853372 // √0.001
)
