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

// Preferred returns the usual display unit of d in s: ksi, MPa and kgf/mm² for
// Stress. A dimension with one unit has that; NoDimension has NoUnit.
func Preferred(d Dimension, s System) Unit {
	if d >= dimensionCount || int(s) >= len(systemNames) {
		return NoUnit
	}
	if u := dimensions[d].usual[s]; u != NoUnit || d == NoDimension {
		return u
	}
	return UnitsOf(d)[0]
}
