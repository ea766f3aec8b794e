// Package cost works out what a piece of a casting costs from the rates of the
// shop: metal, conversion, machining, finish and a tool that wears out, at any
// quantity, and the quantities at which one metal or process gets cheaper than
// another. Nothing in it has a price of its own.
package cost

import (
	"fmt"
	"strings"
	"unicode"

	"alongside/units"
)

// Price is an amount of money: for a mass of metal, for a piece, or by itself.
type Price struct {
	Currency string     // as typed: "USD", "€"; may be empty
	Per      units.Unit // a unit of mass, One for a piece, NoUnit for an amount by itself
	Amount   units.Quantity
}

func (p Price) String() string {
	s := p.Amount.Number()
	if p.Currency != "" {
		s += " " + p.Currency
	}
	switch p.Per {
	case units.NoUnit:
		return s
	case units.One:
		return s + "/piece"
	}
	return s + "/" + p.Per.ASCII()
}

// Mistake says why a text is no price.
type Mistake struct {
	Problem string
	Err     error // of reading the number; may be nil
}

func (e *Mistake) Error() string {
	if e.Err != nil {
		return e.Err.Error()
	}
	return e.Problem
}

const longCurrency = 12

// ParsePrice reads an amount, one value or a range, with a
// currency word of the user's own, if any, before or behind it, and what it is
// for: "1.20/lb", "1.20 USD/lb", "€2.6/kg", "2.4-2.8 per kg", "3 $/piece",
// "18,000 $". The error is a *Mistake.
func ParsePrice(typed string) (Price, error) {
	bad := func(problem string) (Price, error) { return Price{}, &Mistake{Problem: problem} }
	head, unit, per := strings.Cut(strings.Replace(strings.TrimSpace(typed), " per ", "/", 1), "/")
	p := Price{Per: units.NoUnit}
	if unit = strings.TrimSpace(unit); per {
		u, err := units.ParseUnit(unit)
		switch {
		case unit == "piece":
			p.Per = units.One
		case err != nil || u.Dimension() != units.Mass:
			return bad(fmt.Sprintf("%q is not a unit of mass", unit))
		default:
			p.Per = u
		}
	}
	word := func(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.Sc, r) || r == ' ' }
	number := strings.TrimFunc(head, word)
	if number == "" {
		return bad("the amount is missing")
	}
	before, after, _ := strings.Cut(head, number)
	before, after = strings.TrimSpace(before), strings.TrimSpace(after)
	p.Currency = before + after
	if before != "" && after != "" || len(p.Currency) > longCurrency || strings.Contains(p.Currency, " ") || p.Currency != strings.ToValidUTF8(p.Currency, "") {
		return bad("one short currency word is enough")
	}
	q, err := units.ParseAs(number, units.Ratio, units.NoUnit)
	if err != nil {
		return Price{}, &Mistake{Err: err}
	}
	p.Amount = q
	switch {
	case q.Qual != units.Exact && q.Qual != units.Approx:
		return bad("a limit is not a price")
	case q.Lo > q.Hi:
		return bad("runs from high to low")
	}
	return p, nil
}
