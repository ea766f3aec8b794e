package units

import (
	"strconv"
	"strings"
)

// Error is the one error type of this package. It says what was read, what was
// made of it, what was wanted, and what to type instead:
//
//	"37 kis": understood 37, but not "kis"; expected a unit of stress such as psi, ksi, MPa: did you mean ksi?
type Error struct {
	Input      string // the text as given, cut where it is very long
	Understood string // what was made of it, may be empty
	Expected   string // what was expected in its place
	Hint       string // what to do about it, may be empty
	Offset     int    // byte of Input where the trouble begins
}

// Error returns the message in one line, with control characters escaped.
func (e *Error) Error() string {
	var b strings.Builder
	if e.Input != "" {
		b.WriteString(strconv.Quote(e.Input))
		b.WriteString(": ")
	}
	if e.Understood != "" {
		b.WriteString("understood ")
		b.WriteString(e.Understood)
		b.WriteString("; ")
	}
	b.WriteString("expected ")
	b.WriteString(e.Expected)
	if e.Hint != "" {
		b.WriteString(": ")
		b.WriteString(e.Hint)
	}
	return b.String()
}

// mismatch reports a conversion between units of different dimensions.
func mismatch(from, to Unit) *Error {
	e := &Error{
		Understood: describe(from) + " to " + describe(to),
		Expected:   "two units of one dimension",
	}
	f, t := from.Dimension(), to.Dimension()
	switch {
	case f == NoDimension:
		e.Expected = "a unit of " + t.String()
	case t == NoDimension:
		e.Expected = "a unit of " + f.String()
	case f.Hardness() && t.Hardness():
		e.Hint = "no factor leads from one hardness scale to another"
	case f == Temperature && t == TemperatureDifference, f == TemperatureDifference && t == Temperature:
		e.Hint = "a temperature is not a difference; write Δ°F or Δ°C for a difference"
	default:
		e.Hint = examples(f)
	}
	return e
}

func zeroReciprocal(from, to Unit) *Error {
	return &Error{
		Understood: "0 " + describe(from) + " to " + describe(to),
		Expected:   "a value other than 0",
		Hint:       "resistivity is the reciprocal of conductivity",
	}
}

// describe names a unit with its dimension: "ksi (stress)".
func describe(u Unit) string {
	d := u.Dimension()
	switch {
	case u == NoUnit:
		return "no unit"
	case u.Symbol() == "":
		return "a " + d.String()
	}
	return u.Symbol() + " (" + d.String() + ")"
}

// examples lists a few units of d: "a unit of stress such as psi, ksi, MPa".
func examples(d Dimension) string {
	if d == NoDimension {
		return "a unit such as ksi, MPa, lb/in³, W/m·K, °F"
	}
	if d.plain() {
		return "a plain number"
	}
	us := UnitsOf(d)
	if len(us) == 1 {
		return us[0].Symbol() + " (" + d.String() + ")"
	}
	var names []string
	for _, u := range us {
		if len(names) == 4 {
			break
		}
		names = append(names, u.Symbol())
	}
	return "a unit of " + d.String() + " such as " + strings.Join(names, ", ")
}

// fail reports a mistake at the byte i of t.
func (t text) fail(i int, understood, expected string) *Error {
	input := clip(t.input)
	return &Error{Input: input, Understood: understood, Expected: expected, Offset: min(t.at[i], len(input))}
}

// clip shortens a text too long to be a quantity.
func clip(s string) string {
	if len(s) > maxInput {
		return strings.ToValidUTF8(s[:maxInput], "") + "…"
	}
	return s
}

func quote(s string) string {
	if len(s) > 40 {
		s = strings.ToValidUTF8(s[:40], "") + "…"
	}
	return strconv.Quote(s)
}
