package units

import "strings"

// atom returns the canonical spelling of one unit word, or several parted by
// points where the word runs them together (mK, ftlb). It returns "" for a word
// that is none. Case counts only where it tells units apart.
func atom(word string) string {
	switch word { // words whose case matters
	case "Mm", "mPa", "mN", "mJ", "mW", "mS", "Ms", "ms", "pA":
		return "" // megameter, millipascal, …: not what a foundry means
	case "S":
		return "S"
	case "MS":
		return "MS"
	case "Mg":
		return "Mg"
	case "lbF":
		return "lb.F"
	case "mK", "mC":
		return "m." + word[1:]
	}
	if len(word) > 16 {
		return ""
	}
	return foldedAtom(strings.ToLower(word))
}

func foldedAtom(word string) string {
	switch word {
	case "psi":
		return "psi"
	case "ksi", "kpsi":
		return "ksi"
	case "mpsi", "msi":
		return "Mpsi"
	case "pa", "pascal", "pascals":
		return "Pa"
	case "kpa":
		return "kPa"
	case "mpa":
		return "MPa"
	case "gpa":
		return "GPa"
	case "bar":
		return "bar"
	case "tsi":
		return "tsi"
	case "tonf", "tonf(long)":
		return "tonf"
	case "lb", "lbs", "lbm", "pound", "pounds":
		return "lb"
	case "lbf":
		return "lbf"
	case "kip", "kips", "klbf":
		return "kip"
	case "n", "newton", "newtons":
		return "N"
	case "kn":
		return "kN"
	case "mn":
		return "MN"
	case "kgf", "kp":
		return "kgf"
	case "kg", "kgs", "kilogram", "kilograms":
		return "kg"
	case "g", "gm", "gram", "grams":
		return "g"
	case "t", "tonne", "tonnes":
		return "t"
	case "ton", "tons":
		return "ton"
	case "oz", "ounce", "ounces":
		return "oz"
	case "in", "inch", "inches", `"`:
		return "in"
	case "ft", "foot", "feet", "'":
		return "ft"
	case "mil", "mils", "thou":
		return "mil"
	case "uin", "microinch", "microinches", "microin":
		return "uin"
	case "mm", "millimeter", "millimeters", "millimetre", "millimetres":
		return "mm"
	case "cm", "centimeter", "centimeters", "centimetre", "centimetres":
		return "cm"
	case "dm":
		return "dm"
	case "m", "meter", "meters", "metre", "metres":
		return "m"
	case "um", "micron", "microns", "micrometer", "micrometers", "micrometre", "micrometres":
		return "um"
	case "cmil", "cmils":
		return "cmil"
	case "cc":
		return "cc"
	case "l", "liter", "liters", "litre", "litres":
		return "L"
	case "ml":
		return "mL"
	case "gal", "gallon", "gallons":
		return "gal"
	case "s", "sec", "secs", "second", "seconds":
		return "s"
	case "min", "mins", "minute", "minutes":
		return "min"
	case "h", "hr", "hrs", "hour", "hours":
		return "h"
	case "d", "day", "days":
		return "d"
	case "a", "amp", "amps", "ampere", "amperes":
		return "A"
	case "ma":
		return "mA"
	case "ka":
		return "kA"
	case "w", "watt", "watts":
		return "W"
	case "kw":
		return "kW"
	case "hp", "horsepower":
		return "hp"
	case "j", "joule", "joules":
		return "J"
	case "kj":
		return "kJ"
	case "kwh":
		return "kWh"
	case "btu", "btus", "btu(it)":
		return "Btu"
	case "btu(th)":
		return "Btu(th)"
	case "cal", "cal(th)", "calorie", "calories":
		return "cal"
	case "cal(it)":
		return "cal(IT)"
	case "cal(mean)":
		return "cal(mean)"
	case "cal(15c)":
		return "cal(15C)"
	case "kcal", "kcal(th)":
		return "kcal"
	case "kcal(it)":
		return "kcal(IT)"
	case "siemens", "mho", "mhos":
		return "S"
	case "megmho", "megmhos":
		return "MS"
	case "ohm", "ohms":
		return "ohm"
	case "uohm", "uohms", "microhm", "microhms", "microohm", "microohms":
		return "uohm"
	case "nohm", "nohms", "nanohm", "nanohms", "nanoohm", "nanoohms":
		return "nohm"
	case "iacs":
		return "IACS"
	case "f", "degf", "fahrenheit":
		return "F"
	case "c", "degc", "celsius", "centigrade":
		return "C"
	case "k", "degk", "kelvin", "kelvins":
		return "K"
	case "r", "degr", "rankine":
		return "R"
	case "%", "percent", "pct":
		return "%"
	case "ppm":
		return "ppm"
	case "ratio":
		return "ratio"
	case "rating":
		return "rating"
	case "cgs":
		return "CGS"
	case "mk":
		return "m.K"
	case "kgk":
		return "kg.K"
	case "gk":
		return "g.K"
	case "kgc":
		return "kg.C"
	case "nm":
		return "N.m"
	case "ftlb", "ftlbs":
		return "ft.lb"
	case "ftlbf":
		return "ft.lbf"
	case "inlb", "inlbs":
		return "in.lb"
	case "inlbf":
		return "in.lbf"
	}
	return ""
}
