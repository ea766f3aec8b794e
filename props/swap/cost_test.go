package swap

import (
	"math"
	"os"
	"strings"
	"testing"

	"alongside/props/catalog"
	"alongside/units"
)

// shopRates are invented rates for the invented metals.
const shopRates = `[[source]]
id = "RATES"
title = "Invented rates"
kind = "house"
[[rates]]
source = "RATES"
families = ["brittle"]
price_of_metal = "0.50 $/lb"
conversion = "1 $/lb"
tool_cost = "1,000 $"
[[rates]]
source = "RATES"
families = ["soft"]
price_of_metal = "2.00 $/lb"
melt_loss = "5 %"
yield = "50 %"
conversion = "0.50 $/lb"
machining = "0.25-0.35 $/piece"
tool_cost = "4,000 $"
`

func rated(t *testing.T, rates string) *catalog.Catalog {
	t.Helper()
	content, err := os.ReadFile("../../testdata/swap/invented.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := catalog.LoadFiles(nil, []catalog.File{{Name: "invented.toml", Content: content}, {Name: "rates.toml", Content: []byte(rates)}})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// By hand: 2.6 lb of I1 at 0.260 lb/in³ is 1 lb of A1 at 0.100. Today 2.6 · (0.50 + 1)
// = 3.90 $ and 1,000 $/2,000. Swapped: 2 lb poured, 2/0.95 lb charged, 1 lb back at
// the price of the metal, 2 · (2/0.95 − 1) + 0.50 + 0.30 = 3.0105 $ and 4,000 $/2,000.
// Equal at 3,000/(3.90 − 3.0105) = 3,373, at the ends of machining 3,000/0.9395 and
// 3,000/0.8395; with today's tool paid at 4,000/0.8895 = 4,497.
func TestCostOfAPiece(t *testing.T) {
	c := rated(t, shopRates)
	r := worked(t, c, partOf(t, c, "mass=2.6 lb|quantity=2000 a year"), "i1-sand", "a1-sand")
	for id, want := range map[string][2]float64{
		"weight.poured": {2.6, 2}, "cost.tool": {0.50, 2}, "cost.piece": {4.40, 5.0105}, "cost.crossing": {0, 3372.8}, "cost.payback": {0, 4497.0}, "price.metal": {1.30, 2},
	} {
		l := line(t, r, id)
		if have := l.Value.Mid; math.Abs(have-want[1]) > 1e-4*want[1] {
			t.Errorf("%s: have %v, want %v", id, have, want[1])
		}
		if l.Base != nil && math.Abs(l.Base.Mid-want[0]) > 1e-4*want[0] {
			t.Errorf("%s: today %v, want %v", id, l.Base.Mid, want[0])
		}
	}
	l := line(t, r, "cost.piece")
	if have := l.Value.String() + ", " + l.Base.String() + ", " + l.Change(); have != "4.96–5.06 $, 4.40 $, +13 to +15 %" {
		t.Errorf("have %s", have)
	}
	notes := strings.Join(l.Notes, "; ")
	for _, want := range []string{"rates of I1 sand: metal 0.50 $/lb, conversion 1 $/lb, tool 1000 $, nothing counted for melt loss, yield, machining stock, machining, finish; from Invented rates", "yield 50 %, conversion 0.50 $/lb, machining 0.25–0.35 $/piece, tool 4000 $, nothing counted for machining stock, finish"} {
		if !strings.Contains(notes, want) {
			t.Errorf("%q is not told: %s", want, notes)
		}
	}
	if worth := strings.Join(r.Worth(), " "); !strings.Contains(worth, "Cheaper with both tools to buy: from 3,370 pieces on (3,190 to 3,570).") {
		t.Errorf("sentences: %s", worth)
	}
	if r.Today == nil || r.Swapped == nil || r.Today.At(2000).Mid != r.Line("cost.piece").Base.Mid {
		t.Error("the pieces are not handed on")
	}
}

// Back from A1 to I1 the crossing is the same, and the order turned.
func TestCostThereAndBack(t *testing.T) {
	c := rated(t, strings.ReplaceAll(shopRates, "0.25-0.35", "0.30"))
	p := partOf(t, c, "quantity=2000")
	p.Mass = "1 lb"
	back := worked(t, c, p, "a1-sand", "i1-sand")
	if have := line(t, back, "cost.crossing").Words; have != "below 3,370 pieces" {
		t.Errorf("have %q", have)
	}
}

// Without rates no line is added; without a quantity or a mass the line waits; the
// price that the part gives goes before the shop's.
func TestCostWaits(t *testing.T) {
	bare := swapOf(t, "mass=2.6 lb|quantity=2000", "i1-sand", "a1-sand")
	for i := range bare.Lines {
		if id := bare.Lines[i].ID; strings.HasPrefix(id, "cost.") || strings.HasPrefix(id, "weight.") {
			t.Errorf("a line %s without rates", id)
		}
	}
	c := rated(t, shopRates)
	for said, want := range map[string]string{"mass=2.6 lb": "needs a quantity of pieces", "quantity=2000": "needs a mass or a volume"} {
		l := worked(t, c, partOf(t, c, said), "i1-sand", "a1-sand").Line("cost.piece")
		if l == nil || l.Done() || l.Need != want {
			t.Errorf("%s: %+v", said, l)
		}
	}
	dear := worked(t, c, partOf(t, c, "mass=2.6 lb|quantity=2000|price=a1-sand=3.00 $/lb"), "i1-sand", "a1-sand")
	if have := line(t, dear, "cost.piece").Value.Mid; math.Abs(have-(5.0105+2/0.95-1)) > 1e-3 {
		t.Errorf("metal at 3.00 $/lb: have %v", have)
	}
	for said, want := range map[string]string{
		"mass=2.6 lb|quantity=2000|price=a1-sand=3.00 €/lb": `A1 sand: two currencies, "€" and "$": state all prices in one`,
	} {
		if l := worked(t, c, partOf(t, c, said), "i1-sand", "a1-sand").Line("cost.piece"); l == nil || l.Reason != want {
			t.Errorf("%s: %+v", said, l)
		}
	}
	half := rated(t, strings.Replace(shopRates, `conversion = "0.50 $/lb"`, "", 1))
	if l := worked(t, half, partOf(t, half, "mass=2.6 lb|quantity=2000"), "i1-sand", "a1-sand").Line("cost.piece"); l.Reason != "A1 sand: no rate for conversion: add conversion to [[rates]] of the house file" {
		t.Errorf("have %q", l.Reason)
	}
}

// The unit of the part and of the rates changes nothing.
func TestCostInAnyUnit(t *testing.T) {
	c := rated(t, shopRates)
	const pound = 0.45359237 // kg, NIST SP 811 (2008), B.8
	metric := rated(t, strings.NewReplacer("0.50 $/lb", "1.1023113109 $/kg", "1 $/lb", "2.2046226218 $/kg", "2.00 $/lb", "4.4092452437 $/kg").Replace(shopRates))
	one := line(t, worked(t, c, partOf(t, c, "mass=2.6 lb|quantity=2000"), "i1-sand", "a1-sand"), "cost.piece")
	p := partOf(t, metric, "quantity=2000")
	p.Mass = units.Quantity{Lo: 2.6 * pound, Hi: 2.6 * pound, Place: -9, Unit: units.Kg}.String()
	other := line(t, worked(t, metric, p, "i1-sand", "a1-sand"), "cost.piece")
	if math.Abs(one.Value.Mid-other.Value.Mid) > 1e-7 || math.Abs(one.Value.Lo-other.Value.Lo) > 1e-7 {
		t.Errorf("by the pound %+v, by the kilogram %+v", one.Value, other.Value)
	}
}
