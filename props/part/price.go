package part

import (
	"fmt"
	"sort"
	"strings"
	"unicode"

	"alongside/props/catalog"
	"alongside/units"
)

// Price is what a mass of metal costs.
type Price struct {
	Currency string // as typed: "USD", "€"; may be empty
	Per      units.Unit
	Amount   units.Quantity // plain number, one value or a range, per Per
}

func (p Price) String() string {
	s := p.Amount.Number()
	if p.Currency != "" {
		s += " " + p.Currency
	}
	return s + "/" + p.Per.ASCII()
}

const longCurrency = 12

// ParsePrice reads an amount with a currency word of the user's own, if any,
// before or behind it, for a unit of mass: "1.20/lb", "1.20 USD/lb",
// "€2.6/kg", "2.4-2.8 per kg". The error is an *Error.
func ParsePrice(typed string) (Price, error) {
	bad := func(problem string) (Price, error) {
		return Price{}, &Error{Field: FieldPrice, Typed: typed, Problem: problem, Remedy: "type something like 1.20 USD/lb"}
	}
	s := strings.Replace(strings.TrimSpace(typed), " per ", "/", 1)
	head, unit, ok := strings.Cut(s, "/")
	if !ok {
		return bad("the unit of mass is missing")
	}
	u, err := units.ParseUnit(strings.TrimSpace(unit))
	if err != nil || u.Dimension() != units.Mass {
		return bad(fmt.Sprintf("%q is not a unit of mass", strings.TrimSpace(unit)))
	}
	word := func(r rune) bool { return unicode.IsLetter(r) || unicode.Is(unicode.Sc, r) || r == ' ' }
	number := strings.TrimFunc(head, word)
	before, after, _ := strings.Cut(head, number)
	before, after = strings.TrimSpace(before), strings.TrimSpace(after)
	if number == "" {
		return bad("the amount is missing")
	}
	currency := before + after
	if before != "" && after != "" || len(currency) > longCurrency || !strings.EqualFold(currency, strings.ToValidUTF8(currency, "")) {
		return bad("one short currency word is enough")
	}
	q, err := units.ParseAs(number, units.Ratio, units.NoUnit)
	if err != nil {
		return Price{}, &Error{Field: FieldPrice, Typed: typed, Err: err}
	}
	switch {
	case q.Qual != units.Exact && q.Qual != units.Approx:
		return bad("a limit is not a price")
	case q.Lo <= 0:
		return bad("must be above zero")
	case q.Hi > 1e12 || q.Lo < 1e-12:
		return bad("no metal has that price")
	}
	return Price{Currency: currency, Per: u, Amount: q}, nil
}

// readPrice sets or clears the price of one material: ID=PRICE.
func (p *Part) readPrice(c *catalog.Catalog, typed string) error {
	if typed == "" {
		p.Price = nil
		return nil
	}
	id, text, ok := strings.Cut(typed, "=")
	if !ok {
		return mistake(FieldPrice, typed, "the material is missing")
	}
	m, err := material(c, FieldPrice, strings.TrimSpace(id))
	if err != nil {
		return err
	}
	if text = strings.TrimSpace(text); text == "" {
		delete(p.Price, m.ID)
		return nil
	}
	price, err := ParsePrice(text)
	if err != nil {
		return err
	}
	p.setPrice(m.ID, price.String())
	return nil
}

func priceIDs(prices map[string]string) []string {
	ids := make([]string, 0, len(prices))
	for id := range prices {
		ids = append(ids, id)
	}
	sort.Strings(ids)
	return ids
}
