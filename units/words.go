package units

import (
	"strings"
	"sync"
)

// words gives each atom, the canonical name of a unit in an expression, with the
// words that mean it. Case counts only for a word marked with =. An atom with
// points is a product that the word runs together. A word without an atom is
// refused: it is a unit, but not what a foundry means.
var words = [...]struct{ atom, spellings string }{
	{"", "=Mm =mPa =mN =mJ =mW =mS =Ms =ms =pA"},

	{"psi", "psi"}, {"ksi", "ksi kpsi"}, {"Mpsi", "mpsi msi"}, {"tsi", "tsi"},
	{"Pa", "pa pascal pascals"}, {"kPa", "kpa"}, {"MPa", "mpa"}, {"GPa", "gpa"}, {"bar", "bar"},
	{"N", "n newton newtons"}, {"daN", "dan"}, {"kN", "kn"}, {"MN", "mn"}, {"GN", "gn"},
	{"lbf", "lbf"}, {"kip", "kip kips klbf"}, {"tonf", "tonf tonf(long)"}, {"kgf", "kgf kp"},

	{"lb", "lb lbs lbm pound pounds #"}, {"oz", "oz ounce ounces"}, {"ton", "ton tons"},
	{"short", "short"}, {"long", "long"}, {"metric", "metric"},
	{"kg", "kg kgs kilogram kilograms"}, {"g", "g gm gram grams"}, {"t", "t tonne tonnes"}, {"Mg", "=Mg"},
	{"pcf", "pcf"}, {"pci", "pci"},

	{"in", `in inch inches "`}, {"ft", "ft foot feet '"}, {"mil", "mil mils thou"},
	{"uin", "uin microinch microinches microin"},
	{"mm", "mm millimeter millimeters millimetre millimetres"},
	{"cm", "cm centimeter centimeters centimetre centimetres"}, {"dm", "dm"},
	{"m", "m meter meters metre metres"},
	{"um", "um micron microns micrometer micrometers micrometre micrometres"},
	{"nm", "=nm nanometer nanometers nanometre nanometres"},
	{"cmil", "cmil cmils"}, {"cc", "cc"}, {"L", "l liter liters litre litres"}, {"mL", "ml"}, {"gal", "gal gallon gallons"},

	{"s", "s sec secs second seconds"}, {"min", "min mins minute minutes"}, {"h", "h hr hrs hour hours"}, {"d", "d day days"},
	{"A", "a amp amps ampere amperes"}, {"mA", "ma"}, {"kA", "ka"},
	{"W", "w watt watts"}, {"kW", "kw"}, {"hp", "hp horsepower"},
	{"J", "j joule joules"}, {"kJ", "kj"}, {"kWh", "kwh"},
	{"Btu", "btu btus btu(it)"}, {"Btu(th)", "btu(th)"},
	{"cal", "cal cal(th) calorie calories"}, {"cal(IT)", "cal(it)"}, {"cal(mean)", "cal(mean)"}, {"cal(15C)", "cal(15c)"},
	{"kcal", "kcal kcal(th)"}, {"kcal(IT)", "kcal(it)"},

	{"S", "=S siemens mho mhos"}, {"MS", "=MS megmho megmhos"}, {"IACS", "iacs"}, {"ohm", "ohm ohms"},
	{"uohm", "uohm uohms microhm microhms microohm microohms"},
	{"nohm", "nohm nohms nanohm nanohms nanoohm nanoohms"},

	{"F", "f degf fahrenheit"}, {"C", "c degc celsius centigrade"}, {"K", "k degk kelvin kelvins"}, {"R", "r degr rankine"},
	{"%", "% percent pct"}, {"permille", "permille"}, {"ppm", "ppm"}, {"ratio", "ratio"}, {"rating", "rating"}, {"CGS", "cgs"},

	{"m.K", "mk"}, {"m.C", "=mC"}, {"kg.K", "kgk"}, {"kg.C", "kgc"}, {"g.K", "gk"}, {"lb.F", "=lbF"},
	{"N.m", "=Nm =NM"}, {"ft.lb", "ftlb ftlbs"}, {"ft.lbf", "ftlbf"}, {"in.lb", "inlb inlbs"}, {"in.lbf", "inlbf"},
}

// meaning is the atom of a word, and whether its case counts.
type meaning struct {
	atom  string
	exact bool
}

// dictionary maps each word to its meaning. It is built on first use: a run that
// parses nothing does not pay.
func dictionary() map[string]meaning {
	dictionaryOnce.Do(func() {
		dictionaryMap = make(map[string]meaning, 3*len(words))
		for _, w := range &words {
			for word := range strings.FieldsSeq(w.spellings) {
				word, exact := strings.CutPrefix(word, "=")
				dictionaryMap[word] = meaning{w.atom, exact}
			}
		}
	})
	return dictionaryMap
}

var (
	dictionaryOnce sync.Once
	dictionaryMap  map[string]meaning
)

// atom returns the atom of a word, "" for a word that is none.
func atom(word string) string {
	if m, ok := dictionary()[word]; ok {
		return m.atom
	}
	if m := dictionary()[strings.ToLower(word)]; !m.exact {
		return m.atom
	}
	return ""
}

// misreading is a word that a slip of the shift key makes of a usual unit.
type misreading struct{ typed, name, meant string }

var misread = [...]misreading{
	{"mPa", "millipascal", "MPa"}, {"Mm", "megameter", "mm"}, {"mS", "millisiemens", "MS"},
}

// Unitlike reports whether a word can be a unit or a part of one: ksi, lb/in³,
// µin/in-F, HBW. It says so without looking for what a slip may have meant.
func Unitlike(word string) bool {
	if len(word) > maxInput {
		return false
	}
	t := fold(word)
	if _, _, _, ok := parseExpression(t.s); ok {
		return true
	}
	_, ok := hardness(t.s)
	return ok
}
