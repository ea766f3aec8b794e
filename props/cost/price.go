// Package cost works out what a piece of a casting costs from the rates of the
// shop: metal, conversion, machining, finish and a tool that wears out, at any
// quantity, and the quantities at which one metal or process gets cheaper than
// another. Nothing in it has a price of its own.
package cost

import (
	"errors"
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

const longCurrency = 12

// ParsePrice reads an amount, one value or a range, with a
// currency word of the user's own, if any, before or behind it, and what it is
// for: "1.20/lb", "1.20 USD/lb", "€2.6/kg", "2.4-2.8 per kg", "3 $/piece",
// "18,000 $". The error is a *units.Error where the number is not read.
func ParsePrice(typed string) (Price, error) {
	head, unit, per := strings.Cut(strings.Replace(strings.TrimSpace(typed), " per ", "/", 1), "/")
	p := Price{Per: units.NoUnit}
	if unit = strings.TrimSpace(unit); per {
		u, err := units.ParseUnit(unit)
		switch {
		case unit == "piece":
			p.Per = units.One
		case err != nil || u.Dimension() != units.Mass:
			return p, fmt.Errorf("%q is not a unit of mass", unit)
		default:
			p.Per = u
		}
	}
	word := func(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.Sc, r) || r == ' ' }
	number := strings.TrimFunc(head, word)
	if number == "" {
		return p, errors.New("the amount is missing")
	}
	before, after, _ := strings.Cut(head, number)
	before, after = strings.TrimSpace(before), strings.TrimSpace(after)
	p.Currency = before + after
	if before != "" && after != "" || len(p.Currency) > longCurrency || strings.Contains(p.Currency, " ") || p.Currency != strings.ToValidUTF8(p.Currency, "") {
		return p, errors.New("one short currency word is enough")
	}
	var err error
	p.Amount, err = amount(number, units.Ratio, "a price")
	return p, err
}

// amount reads one value or a range.
func amount(text string, d units.Dimension, of string) (units.Quantity, error) {
	q, err := units.ParseAs(text, d, units.NoUnit)
	switch {
	case err != nil:
		return q, err
	case q.Qual != units.Exact && q.Qual != units.Approx:
		return q, errors.New("a limit is not " + of)
	case q.Lo > q.Hi:
		return q, errors.New("runs from high to low")
	}
	return q, nil
}
