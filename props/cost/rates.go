package cost

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// Key is one rate of a shop.
type Key uint8

// The rates.
const (
	Metal      Key = iota // price of the metal charged
	Returns               // price at which gates, risers and scrap go back to the pot; not stated: that of the metal
	MeltLoss              // share of the metal charged that is lost in melting
	Yield                 // weight of good castings over the weight poured
	Stock                 // share of the casting's weight that machining takes off
	Conversion            // molding, cores, melting, cleaning: all from metal to casting but the metal
	Machining
	Finish   // heat treatment, coating, tests
	ToolCost // of one pattern, mold or die
	ToolLife // pieces that one makes; not stated: one serves any quantity
	keyCount
)

// kind is what a rate is given in.
type kind uint8

const (
	perMass  kind = iota // money for a mass of metal
	forPiece             // money for a piece, or for a mass of the casting
	money
	share // percent, below 100
	pieces
)

var keys = [keyCount]struct {
	name, words, example string
	kind                 kind
}{
	Metal:      {"price_of_metal", "metal", "1.35 $/lb", perMass},
	Returns:    {"returns", "returns", "0.90 $/lb", perMass},
	MeltLoss:   {"melt_loss", "melt loss", "4 %", share},
	Yield:      {"yield", "yield", "55-60 %", share},
	Stock:      {"stock", "machining stock", "6 %", share},
	Conversion: {"conversion", "conversion", "1.80 $/lb", forPiece},
	Machining:  {"machining", "machining", "3.50 $/piece", forPiece},
	Finish:     {"finish", "finish", "0.40 $/piece", forPiece},
	ToolCost:   {"tool_cost", "tool", "18,000 $", money},
	ToolLife:   {"tool_life", "tool life", "100,000 pieces", pieces},
}

// String is the rate in a sentence.
func (k Key) String() string { return keys[k].words }

// ID is the rate as a key of a house file.
func (k Key) ID() string { return keys[k].name }

// dearer is 1 where more of the rate makes a piece dearer, −1 where it makes it
// cheaper.
func (k Key) dearer() int {
	if k == Returns || k == Yield || k == ToolLife {
		return -1
	}
	return 1
}

// Record is rates for some metals: those that every list which is not empty
// names.
type Record struct {
	Families, Alloys, Tempers []string // ids; tempers as written
	Processes                 []props.Process
	Source                    *props.Source
	rates                     [keyCount]*Price
}

// Holds reports whether the record is for a metal.
func (r *Record) Holds(m *props.Material) bool {
	fits := func(list []string, id string) bool { return len(list) == 0 || slices.Contains(list, id) }
	return fits(r.Families, m.Alloy.Family.ID) && fits(r.Alloys, m.Alloy.ID) && fits(r.Tempers, m.Temper) &&
		(len(r.Processes) == 0 || slices.Contains(r.Processes, m.Process))
}

// Read reads the rates of a record of a house file, which must be in the currency
// of the records before; mistakes are told on it.
func (r *Record) Read(in *record.Record, before []*Record) {
	currency, found := currencyOf(before), false
	for k := range keyCount {
		text := in.Text(k.ID(), false)
		if text == "" {
			continue
		}
		found = true
		p, err := k.parse(text)
		switch {
		case err != nil:
			in.Fail(k.ID(), fmt.Sprintf("%q: %v", text, err), "write it like "+keys[k].example)
			continue
		case !k.money():
		case currency == "":
			currency = p.Currency
		case p.Currency != currency:
			in.Fail(k.ID(), fmt.Sprintf("%q: the other rates are in %s", text, currency), "state all rates in one currency")
		}
		r.rates[k] = &p
	}
	if !found {
		var names []string
		for _, k := range keys {
			names = append(names, k.name)
		}
		in.Fail("", "the record holds no rate", "add one of: "+strings.Join(names, ", "))
	}
}

func currencyOf(records []*Record) string {
	for _, r := range records {
		for _, p := range r.rates {
			if p != nil && p.Currency != "" {
				return p.Currency
			}
		}
	}
	return ""
}

// parse reads one rate and says what is impossible in it.
func (k Key) parse(text string) (Price, error) {
	if !k.money() {
		return k.number(text)
	}
	p, err := ParsePrice(text)
	if err != nil {
		return p, err
	}
	kind, mass := keys[k].kind, p.Per != units.NoUnit && p.Per != units.One
	switch {
	case p.Currency == "":
		return p, errors.New("the currency is missing")
	case kind == perMass && !mass:
		return p, errors.New("it is no price of a mass")
	case kind == forPiece && p.Per == units.NoUnit:
		return p, errors.New("is it for a piece or for a mass?")
	case kind == money && p.Per != units.NoUnit:
		return p, errors.New("it is the money for one tool")
	case p.Amount.Lo < 0 || k == Metal && p.Amount.Lo == 0:
		return p, errors.New("must be above zero")
	case p.Amount.Hi > 1e12:
		return p, errors.New("nothing has that price")
	}
	return p, nil
}

// mostPieces is more than a tool makes, and the quantity up to which crossings are
// looked for.
const mostPieces = 1e7

// money reports whether the rate is in money.
func (k Key) money() bool { return keys[k].kind != share && keys[k].kind != pieces }

// number reads a rate that is not in money.
func (k Key) number(text string) (p Price, err error) {
	if keys[k].kind == pieces {
		p.Amount, err = amount(strings.TrimSuffix(text, " pieces"), units.Ratio, "a life")
	} else {
		p.Amount, err = amount(text, units.Percent, "a rate")
	}
	lo, hi := p.Amount.Lo, p.Amount.Hi
	switch {
	case err != nil:
	case keys[k].kind == pieces && (lo < 1 || hi > mostPieces):
		err = fmt.Errorf("a tool makes from 1 to %.0f pieces", mostPieces)
	case k == Yield && (lo < 1 || hi > 100):
		err = errors.New("a yield is from 1 to 100 %")
	case keys[k].kind == share && k != Yield && (lo < 0 || hi > 90):
		err = errors.New("it is from 0 to 90 %")
	}
	return p, err
}

// Rates is what the shop charges for one metal.
type Rates struct {
	Sources []*props.Source
	rates   [keyCount]*Price
}

// Of gathers the rates for a metal; of two that state the same rate the later one
// holds.
func Of(m *props.Material, records []*Record) Rates {
	var out Rates
	for _, r := range records {
		if !r.Holds(m) {
			continue
		}
		for k, p := range r.rates {
			if p != nil {
				out.rates[k] = p
			}
		}
		if !slices.Contains(out.Sources, r.Source) {
			out.Sources = append(out.Sources, r.Source)
		}
	}
	return out
}

// Price is a rate in money; ok is false where it is not stated.
func (r *Rates) Price(k Key) (p Price, ok bool) {
	if r.rates[k] == nil {
		return Price{}, false
	}
	return *r.rates[k], true
}

// String lists the rates as stated, and those that are not: "metal 1.35 $/lb,
// yield 55–60 %, nothing counted for finish".
func (r *Rates) String() string {
	var stated, none []string
	for k, p := range r.rates {
		switch k := Key(k); {
		case p != nil && keys[k].kind == share:
			stated = append(stated, k.String()+" "+p.Amount.String())
		case p != nil:
			stated = append(stated, k.String()+" "+p.String())
		case k != Returns && k != ToolLife:
			none = append(none, k.String())
		}
	}
	if len(none) > 0 {
		stated = append(stated, "nothing counted for "+strings.Join(none, ", "))
	}
	return strings.Join(stated, ", ")
}

// Set states a rate in place of the shop's.
func (r *Rates) Set(k Key, p Price) { r.rates[k] = &p }

// Any reports whether the shop states a rate.
func (r *Rates) Any() bool { return len(r.Sources) > 0 }
