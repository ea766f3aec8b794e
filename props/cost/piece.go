package cost

import (
	"errors"
	"fmt"
	"math"

	"alongside/units"
)

// Interval is a worked amount: its middle, and the worst cases that the ranges
// behind it allow. Lo ≤ Mid ≤ Hi.
type Interval struct{ Lo, Mid, Hi float64 }

// of works an amount out at the cheap ends of all rates (−1), their middles (0)
// and the dear ends (1). An amount moves one way with each rate, so that its ends
// are there.
func of(at func(side int) float64) Interval {
	mid := at(0)
	return Interval{min(at(-1), mid), mid, max(at(1), mid)}
}

func (i Interval) at(side int) float64 { return [...]float64{i.Lo, i.Mid, i.Hi}[side+1] }

// Piece is what a casting of one metal weighs and costs. Weights are in kg; money,
// in the currency, is for a piece but for Tool, which is for one tool.
type Piece struct {
	Currency                             string
	Shipped, Cast, Poured                Interval
	Metal, Conversion, Machining, Finish Interval
	Tool                                 Interval
	Life                                 Interval // pieces a tool makes; infinite where one serves any quantity
	Ranged                               bool     // a range stands behind it
	rates                                Rates
	paid                                 float64 // tools that are there already
}

// Piece works a casting out from the weight shipped, in kg. The metal is charged,
// loses MeltLoss, is poured; of the weight poured, Yield is good castings, and
// the rest goes back at the price of returns:
//
//	cast = shipped / (1 − stock)    poured = cast / yield    charged = poured / (1 − loss)
//	metal = price · charged − returns · (poured − cast)
//
// What is for a mass is for that of the casting as cast. The error says which rate
// is missing or does not fit.
func (r *Rates) Piece(shipped Interval) (*Piece, error) {
	for _, k := range []Key{Metal, Conversion} {
		if r.rates[k] == nil {
			return nil, fmt.Errorf("no rate for %s: add %s to [[rates]] of the house file", k, k.ID())
		}
	}
	for k, rate := range r.rates {
		if rate != nil && Key(k).money() && rate.Currency != r.rates[Metal].Currency {
			return nil, fmt.Errorf("two currencies, %q and %q: state all prices in one", r.rates[Metal].Currency, rate.Currency)
		}
	}
	if r.rates[Returns] != nil && r.at(Returns, -1) > r.at(Metal, -1) {
		return nil, errors.New("returns are priced above the metal: check both rates")
	}
	return r.piece(shipped), nil
}

func (r *Rates) piece(shipped Interval) *Piece {
	p := &Piece{Shipped: shipped, Currency: r.rates[Metal].Currency, Ranged: shipped.Lo < shipped.Hi, rates: *r}
	for _, rate := range r.rates {
		p.Ranged = p.Ranged || rate != nil && rate.Amount.IsRange()
	}
	cast := func(side int) float64 { return shipped.at(side) / (1 - r.at(Stock, side)) }
	poured := func(side int) float64 { return cast(side) / r.at(Yield, side) }
	p.Cast, p.Poured = of(cast), of(poured)
	p.Metal = of(func(side int) float64 {
		price, charged := r.at(Metal, side), poured(side)/(1-r.at(MeltLoss, side))
		returns := price
		if r.rates[Returns] != nil {
			returns = r.at(Returns, side)
		}
		return price*charged - returns*(poured(side)-cast(side))
	})
	each := func(k Key) Interval {
		return of(func(side int) float64 {
			if rate := r.rates[k]; rate != nil && rate.Per != units.One {
				return r.at(k, side) * cast(side)
			}
			return r.at(k, side)
		})
	}
	p.Conversion, p.Machining, p.Finish = each(Conversion), each(Machining), each(Finish)
	p.Tool = of(func(side int) float64 { return r.at(ToolCost, side) })
	p.Life = Interval{math.Inf(1), math.Inf(1), math.Inf(1)}
	if r.rates[ToolLife] != nil {
		p.Life = Interval{r.at(ToolLife, 1), r.at(ToolLife, 0), r.at(ToolLife, -1)}
	}
	return p
}

// at is a rate in SI at its cheap end (−1), middle (0) or dear end (1); what is not
// stated counts for nothing.
func (r *Rates) at(k Key, side int) float64 {
	rate := r.rates[k]
	switch {
	case rate == nil && k == Yield:
		return 1
	case rate == nil:
		return 0
	}
	q := rate.Amount
	v := Interval{q.Lo, q.Lo/2 + q.Hi/2, q.Hi}.at(side * k.dearer())
	switch {
	case keys[k].kind == share:
		v /= 100
	case rate.Per != units.NoUnit && rate.Per != units.One:
		v /= rate.Per.ToSI(1)
	}
	return v
}

// States reports whether the shop states a rate for the piece; what it does not
// state counts for nothing.
func (p *Piece) States(k Key) bool { return p.rates.rates[k] != nil }

// Each is what a piece costs without its share of the tool.
func (p *Piece) Each() Interval {
	return of(func(side int) float64 {
		return p.Metal.at(side) + p.Conversion.at(side) + p.Machining.at(side) + p.Finish.at(side)
	})
}

// ToolShare is what a piece costs for its tools where n pieces are made.
func (p *Piece) ToolShare(n float64) Interval {
	return of(func(side int) float64 { l := p.line(side); return l.tool * l.tools(n) / n })
}

// At is what a piece costs where n pieces are made.
func (p *Piece) At(n float64) Interval {
	return of(func(side int) float64 { return p.line(side).total(n) / n })
}

// Point is the cost of a piece at a quantity, and the share of the tool in it.
type Point struct {
	Quantity   float64
	Cost, Tool Interval
}

// Curve is the cost of a piece at each quantity, for a table or a chart.
func (p *Piece) Curve(quantities []float64) []Point {
	out := make([]Point, len(quantities))
	for i, n := range quantities {
		out[i] = Point{n, p.At(n), p.ToolShare(n)}
	}
	return out
}

// Ratio is what a piece of a costs over one of b where n are made. A rate that both
// have from one record is the same for both.
func Ratio(a, b *Piece, n float64) Interval {
	mid := a.At(n).Mid / b.At(n).Mid
	out := Interval{mid, mid, mid}
	for _, pair := range alike(a, b) {
		x, y := pair[0].At(n), pair[1].At(n)
		out.Lo, out.Hi = min(out.Lo, x.Lo/y.Hi), max(out.Hi, x.Hi/y.Lo)
	}
	return out
}

// Paid is the piece with its first tool there already.
func (p *Piece) Paid() *Piece {
	paid := *p
	paid.paid = 1
	return &paid
}
