package part

import (
	"errors"
	"sort"
	"strings"

	"alongside/props/catalog"
	"alongside/props/cost"
	"alongside/units"
)

// parsePrice reads the price of a mass of metal. The error is an *Error.
func parsePrice(typed string) (cost.Price, error) {
	price, err := cost.ParsePrice(typed)
	bad := func(problem string) error {
		return &Error{Field: FieldPrice, Typed: typed, Problem: problem, Remedy: "type something like 1.20 USD/lb"}
	}
	var number *units.Error
	switch {
	case errors.As(err, &number):
		return price, &Error{Field: FieldPrice, Typed: typed, Err: err}
	case err != nil:
		return price, bad(err.Error())
	case price.Per == units.NoUnit || price.Per == units.One:
		return price, bad("the unit of mass is missing")
	case price.Amount.Lo <= 0:
		return price, bad("must be above zero")
	case price.Amount.Hi > 1e12 || price.Amount.Lo < 1e-12:
		return price, bad("no metal has that price")
	}
	return price, nil
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
	price, err := parsePrice(text)
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
