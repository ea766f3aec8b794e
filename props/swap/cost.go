package swap

import (
	"fmt"
	"math"
	"strings"

	"alongside/props"
	"alongside/props/cost"
	"alongside/props/part"
	"alongside/units"
)

var (
	priceFormula   = read("price of the mass × mass; metal only", srcDefined)
	castFormula    = read("cast = shipped/(1 − stock)", srcDefined)
	pouredFormula  = read("poured = cast/yield", srcCharge)
	pieceFormula   = read("metal + conversion + machining + finish + tool/n; metal = price·charged − returns·(poured − cast), charged = poured/(1 − melt loss)", srcCharge)
	toolFormula    = read("cost of a tool × tools worn out ÷ n", srcEven)
	crossFormula   = read("n where tool₁ + n·c₁ = tool₂ + n·c₂, c the cost of a piece without its tool; a tool for every life begun", srcEven)
	paybackFormula = read("n where n·c₁ = tool₂ + n·c₂, c the cost of a piece without its tool; of today's tools only those to be renewed count", srcEven)
)

// rates are what the shop charges for a metal; a price that the part gives goes
// before that of the shop.
func (w *work) rates(m *props.Material) cost.Rates {
	r := cost.Of(m, w.Rates)
	if p, ok := w.Price[m.ID]; ok {
		r.Set(cost.Metal, p)
	}
	return r
}

// weights are the mass of the part in both metals. One of mass and volume is given.
func (w *work) weights(density pair) (base, pin interval) {
	if w.Mass != nil {
		base = ofGiven(*w.Mass)
		return base, base.times(density.ratio())
	}
	v := ofGiven(*w.Volume)
	return v.times(ofFigure(density.base)), v.times(ofFigure(density.pin))
}

// price is what the metal of a part costs.
func (w *work) price() {
	l := Line{Group: Cost, ID: "price.metal", Name: "Metal for a part", Formula: priceFormula}
	baseRates, pinRates := w.rates(w.base), w.rates(w.pin)
	base, today := baseRates.Price(cost.Metal)
	pin, ok := pinRates.Price(cost.Metal)
	switch d := w.pair(props.Density); {
	case !ok:
		l.wait(want{part.FieldPrice, needPrice.text + " for " + w.pin.ID})
	case w.weighed(&l, d):
		baseMass, pinMass := w.weights(d)
		l.Value = money(perSI(pin).times(pinMass), pin.Currency)
		if !today {
			l.Notes = append(l.Notes, "no price given for "+w.base.ID)
			break
		}
		l.Base = money(perSI(base).times(baseMass), base.Currency)
		if base.Currency == pin.Currency {
			l.Ratio = perSI(pin).over(perSI(base)).times(d.ratio()).in(units.One)
		}
	}
	w.add(l)
}

// weighed reports whether the part has a weight in both metals; else the line says what
// it lacks.
func (w *work) weighed(l *Line, density pair) bool {
	if w.Volume == nil && l.missing(w.Mass, needMass) {
		return false
	}
	return w.rest(l, density)
}

// perSI is the price per kilogram.
func perSI(p cost.Price) interval { return ofGiven(p.Amount).times(exact(1 / p.Per.ToSI(1))) }

// cents is the finest place of a price of a part.
const cents = -2

func money(a interval, currency string) *Value {
	v := a.in(units.One)
	v.Symbol = currency
	v.Place = max(v.Place, cents)
	return v
}

// cost is what the casting weighs from pot to shipping and what a piece costs by
// the rates of the shop. Without rates for the pin there are no lines.
func (w *work) cost() (today, swapped *cost.Piece) {
	pinRates := w.rates(w.pin)
	if !pinRates.Any() {
		return nil, nil
	}
	l := Line{Group: Cost, ID: "cost.piece", Name: "Cost of a piece", Formula: pieceFormula}
	d := w.pair(props.Density)
	if !w.weighed(&l, d) {
		w.add(l)
		return nil, nil
	}
	baseMass, pinMass := w.weights(d)
	swapped, err := pieceOf(pinRates, pinMass)
	if err != nil {
		l.Reason = w.pin.Name() + ": " + err.Error()
		w.add(l)
		return nil, nil
	}
	today, err = pieceOf(w.rates(w.base), baseMass)
	switch {
	case err != nil:
		l.Notes = append(l.Notes, w.base.Name()+": "+err.Error())
	case today.Currency != swapped.Currency:
		l.Reason = fmt.Sprintf("two currencies, %q and %q: state all prices in one", today.Currency, swapped.Currency)
		w.add(l)
		return nil, nil
	}
	c := costing{w, today, swapped, w.rested()}
	l.Notes = append(l.Notes, c.notes...)
	c.weight("weight.cast", "Casting with stock", castFormula, cost.Stock, func(p *cost.Piece) cost.Interval { return p.Cast })
	c.weight("weight.poured", "Poured", pouredFormula, cost.Yield, func(p *cost.Piece) cost.Interval { return p.Poured })
	if l.missing(w.Quantity, needQuantity) {
		w.add(l)
	} else {
		c.piece(l)
	}
	if today != nil {
		c.crossing("cost.crossing", "Cheaper", crossFormula, today)
		if today.Tool.Hi > 0 {
			c.crossing("cost.payback", "Cheaper, today's tool paid", paybackFormula, today.Paid())
		}
	}
	return today, swapped
}

// pieceOf is a piece of a mass. The rounding of a density counts for nothing beside
// the rates of a shop.
func pieceOf(r cost.Rates, mass interval) (*cost.Piece, error) {
	shipped := cost.Interval{Lo: mass.mid, Mid: mass.mid, Hi: mass.mid}
	if mass.wide {
		shipped.Lo, shipped.Hi = mass.lo, mass.hi
	}
	return r.Piece(shipped)
}

// costing is a piece in both metals; today is nil where the shop does not state
// enough rates for it.
type costing struct {
	*work
	today, swapped *cost.Piece
	notes          []string // the rates it rests on
}

// sides puts an amount of the piece in both metals on a line.
func (c *costing) sides(l *Line, amount func(*cost.Piece) *Value) {
	l.Value = amount(c.swapped)
	if c.today != nil {
		l.Base = amount(c.today)
	}
}

// ranged is an amount of a piece, with the digits that a shop's rates are good for.
func ranged(p *cost.Piece, i cost.Interval) interval {
	out := interval{lo: i.Lo, mid: i.Mid, hi: i.Hi, wide: p.Ranged && i.Hi-i.Lo > tiny*i.Mid}
	if i.Mid > 0 {
		out.last = math.Pow10(int(math.Floor(math.Log10(i.Mid))) - statedDigits + 1)
	}
	return out
}

// Money is an amount of a piece in its currency.
func Money(p *cost.Piece, i cost.Interval) *Value { return money(ranged(p, i), p.Currency) }

// Weight is a weight of a piece, given in kg.
func Weight(p *cost.Piece, i cost.Interval, s units.System) *Value {
	return ranged(p, i).in(units.Preferred(units.Mass, s))
}

// weight is a weight of the casting, told where the shop states the rate it
// follows from.
func (c *costing) weight(id, name string, formula Formula, by cost.Key, of func(*cost.Piece) cost.Interval) {
	if !c.swapped.States(by) {
		return
	}
	l := Line{Group: Cost, ID: id, Name: name, Formula: formula, Notes: c.notes}
	c.sides(&l, func(p *cost.Piece) *Value { return Weight(p, of(p), c.bench.System) })
	c.add(l)
}

// piece is what a piece costs at the quantity, and the share of the tool in it.
func (c *costing) piece(l Line) {
	n := c.Quantity.Lo
	tool := Line{Group: Cost, ID: "cost.tool", Name: "Tool in a piece", Formula: toolFormula, Notes: c.notes}
	c.sides(&l, func(p *cost.Piece) *Value { return Money(p, p.At(n)) })
	c.sides(&tool, func(p *cost.Piece) *Value { return Money(p, p.ToolShare(n)) })
	if c.today != nil {
		ratio := cost.Ratio(c.swapped, c.today, n)
		l.Ratio = interval{ratio.Lo, ratio.Mid, ratio.Hi, ratio.Mid * math.Pow10(1-statedDigits), c.swapped.Ranged || c.today.Ranged}.in(units.One)
	}
	if c.swapped.Tool.Hi > 0 || c.today != nil && c.today.Tool.Hi > 0 {
		c.add(tool)
	}
	c.add(l)
}

// rested names the rates of both metals, and their sources.
func (w *work) rested() (out []string) {
	for _, m := range []*props.Material{w.base, w.pin} {
		r := w.rates(m)
		var titles []string
		for _, s := range r.Sources {
			titles = append(titles, s.Title)
		}
		if r.Any() {
			out = append(out, "rates of "+m.Name()+": "+r.String()+"; from "+strings.Join(titles, ", "))
		}
	}
	return out
}

// crossing is the quantity from which the pin is the cheaper of the two.
func (c *costing) crossing(id, name string, formula Formula, base *cost.Piece) {
	crossed := cost.Cross(c.swapped, base)
	l := Line{Group: Cost, ID: id, Name: name, Formula: formula, Notes: c.notes, Words: crossed.String()}
	if at := crossed.At; len(at) == 1 && at[0].Cheaper && !math.IsInf(at[0].Quantity.Hi, 1) {
		either := &cost.Piece{Ranged: c.swapped.Ranged || base.Ranged}
		l.Value = ranged(either, at[0].Quantity).in(units.One)
		l.Value.Symbol = "pieces"
		l.Value.Place = max(l.Value.Place, 0)
	}
	c.add(l)
}
