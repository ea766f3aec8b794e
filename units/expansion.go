package units

import "strings"

// Expansion is a mean coefficient of linear thermal expansion with the range of
// temperature that it holds for. From and To have the unit NoUnit where the
// range was not stated.
type Expansion struct {
	Coefficient Quantity
	From, To    Quantity
}

// ParseExpansion reads a coefficient with or without its range:
//
//	11.9 µin/in·°F from 68 to 212 °F
//	21.4 µm/m·K; 20–100 °C
//	13.0e-6 /°F (68-572 F)
//
// Ends typed without a unit are in the scale of the coefficient. It fails with
// an *Error.
func ParseExpansion(s string) (Expansion, error) {
	x, err := parseExpansion(s)
	if err != nil {
		return Expansion{}, err.locate(s, 0)
	}
	return x, nil
}

func parseExpansion(s string) (Expansion, *Error) {
	if len(s) > maxInput {
		return Expansion{}, &Error{Expected: "a coefficient and a temperature range", Hint: "the text is too long"}
	}
	head, tail, tailAt := splitExpansion(s)
	var x Expansion
	var err *Error
	if x.Coefficient, err = parseQuantity(head, ThermalExpansion, NoUnit); err != nil {
		return Expansion{}, err
	}
	if tailAt < 0 {
		return x, nil
	}
	scale := DegC
	if x.Coefficient.Unit.perFahrenheit() {
		scale = DegF
	}
	r, err := parseQuantity(tail, Temperature, scale)
	if err == nil && (r.Lo == r.Hi || r.Qual != Exact) {
		err = &Error{Understood: r.String(), Expected: "a range of temperature such as 68–212 °F"}
	}
	if err != nil {
		err.Offset += tailAt
		return Expansion{}, err
	}
	x.From, x.To = r, r
	x.From.Hi, x.To.Lo = r.Lo, r.Hi
	return x, nil
}

// splitExpansion parts the coefficient from the range. tailAt is -1 where there
// is no range.
func splitExpansion(s string) (head, tail string, tailAt int) {
	for _, mark := range [...]string{";", " from ", " between ", " at ", "@", " over ", ", ", " ("} {
		i := strings.Index(s, mark)
		if i < 0 {
			continue
		}
		head, tailAt = s[:i], i+len(mark)
		tail = s[tailAt:]
		if mark == " (" {
			tail = strings.TrimSuffix(strings.TrimRightFunc(tail, isSpace), ")")
		}
		for _, word := range [...]string{"from ", "between ", "at "} {
			trimmed := strings.TrimLeftFunc(tail, isSpace)
			if hasPrefixFold(trimmed, word) {
				tailAt += len(tail) - len(trimmed) + len(word)
				tail = trimmed[len(word):]
			}
		}
		return head, tail, tailAt
	}
	return s, "", -1
}

// String returns the coefficient with its range as ParseExpansion reads it:
// "11.9 µin/in·°F from 68 to 212 °F".
func (x Expansion) String() string {
	s := x.Coefficient.String()
	if x.From.Unit == NoUnit {
		return s
	}
	return s + " from " + x.From.Number() + " to " + x.To.Number() + " " + x.To.Unit.Symbol()
}

// perFahrenheit reports whether an expansion unit is per degree Fahrenheit.
func (u Unit) perFahrenheit() bool {
	return u == MicroinInF || u == E6PerF || u == PerF
}
