package report

import (
	"cmp"
	"math"
	"slices"

	"alongside/props"
	"alongside/props/cost"
	"alongside/props/sheet"
	"alongside/props/swap"
	"alongside/units"
)

// costCaution says how costs are to be read.
const costCaution = "Costs by the rates of the shop, for its own use; ranges are their worst cases. A tool is paid for by the quantity."

// CostDoc is what a piece costs against quantity, for the metal of today and each
// other of swaps of one part.
func CostDoc(results ...*swap.Result) *Doc {
	return &Doc{
		pictures: drawable(costPicture(results)),
		text:     func(n *numbering) *sheet.Doc { return costText(results, n) },
		data:     func() *sheet.Doc { return costData(results) },
		json:     func() object { return costJSON(results) },
	}
}

// costed is a metal with what a piece costs in it.
type costed struct {
	of    *props.Material
	piece *cost.Piece
	curve []cost.Point
}

// costs are the metals whose cost is known, today's first.
func costs(results []*swap.Result) []costed {
	var out []costed
	quantities := ladder(results[0])
	add := func(m *props.Material, p *cost.Piece) {
		known := func(c costed) bool { return c.of == m }
		if p != nil && !slices.ContainsFunc(out, known) {
			out = append(out, costed{m, p, p.Curve(quantities)})
		}
	}
	for _, r := range results {
		add(r.Base, r.Today)
	}
	for _, r := range results {
		add(r.Pin, r.Swapped)
	}
	return out
}

// ladder is 1, 2, 5, 10 … around the quantity given, which is among them.
func ladder(r *swap.Result) []float64 {
	given, first := 0.0, 100.0
	if r.Given.Quantity != nil {
		given = r.Given.Quantity.Lo
		first = math.Pow10(max(0, int(math.Log10(given))-1))
	}
	var out []float64
	for n := first; n <= first*1000; n *= 10 {
		out = append(out, n, 2*n, 5*n)
	}
	if given > 0 && !slices.Contains(out, given) {
		out = append(out, given)
	}
	slices.Sort(out)
	return out
}

// costRows are the weights and the shares of a piece, each with the rate without
// which it is not told.
var costRows = []struct {
	group, id, name string
	weight          bool
	by              cost.Key
	of              func(*cost.Piece) cost.Interval
}{
	{"Weight", "shipped", "Shipped", true, cost.Metal, func(p *cost.Piece) cost.Interval { return p.Shipped }},
	{"", "cast", "Casting with stock", true, cost.Stock, func(p *cost.Piece) cost.Interval { return p.Cast }},
	{"", "poured", "Poured", true, cost.Yield, func(p *cost.Piece) cost.Interval { return p.Poured }},
	{"A piece without its tool", "metal", "Metal", false, cost.Metal, func(p *cost.Piece) cost.Interval { return p.Metal }},
	{"", "conversion", "Conversion", false, cost.Conversion, func(p *cost.Piece) cost.Interval { return p.Conversion }},
	{"", "machining", "Machining", false, cost.Machining, func(p *cost.Piece) cost.Interval { return p.Machining }},
	{"", "finish", "Finish", false, cost.Finish, func(p *cost.Piece) cost.Interval { return p.Finish }},
	{"A tool", "tool", "Cost", false, cost.ToolCost, func(p *cost.Piece) cost.Interval { return p.Tool }},
}

// share is a row of costRows for a metal; nil where its rate is not stated.
func (c *costed) share(i int, s units.System) *swap.Value {
	x := &costRows[i]
	switch {
	case !c.piece.States(x.by):
		return nil
	case x.weight:
		return swap.Weight(c.piece, x.of(c.piece), s)
	}
	return swap.Money(c.piece, x.of(c.piece))
}

func costText(results []*swap.Result, n *numbering) *sheet.Doc {
	r := results[0]
	title := "What a piece costs against quantity"
	if s := r.Given.Part.Summary(); s != "" {
		title += ": " + s
	}
	list := costs(results)
	t := &sheet.Table{Columns: []sheet.Column{{Name: "", Keep: true}}}
	for _, c := range list {
		head := slices.DeleteFunc([]string{c.of.Alloy.Name, c.of.Temper, c.of.Process.String()}, func(s string) bool { return s == "" })
		t.Columns = append(t.Columns, sheet.Column{Name: c.of.Name(), Head: head, Align: sheet.Right})
	}
	row := func(group, name string, value func(*costed) string) {
		cells := []string{name}
		for i := range list {
			cells = append(cells, value(&list[i]))
		}
		t.Add(cells...)
		t.Rows[len(t.Rows)-1].Group = group
	}
	for i, x := range costRows {
		row(x.group, x.name, func(c *costed) string { return cmp.Or(c.share(i, r.System).String(), "–") })
	}
	row("", "Life in pieces", func(c *costed) string {
		if math.IsInf(c.piece.Life.Lo, 1) {
			return "–"
		}
		return c.piece.Life.Count()
	})
	for i, pieces := range ladder(r) {
		group := ""
		if i == 0 {
			group = "Cost of a piece where so many are made"
		}
		row(group, cost.Count(pieces), func(c *costed) string { return swap.Money(c.piece, c.curve[i].Cost).String() })
	}
	for _, r := range results {
		for _, id := range []string{"cost.crossing", "cost.payback", "cost.piece"} {
			l := r.Line(id)
			if l == nil {
				continue
			}
			for _, note := range l.Notes {
				n.note(note)
			}
			switch {
			case l.Words != "":
				t.Notes = append(t.Notes, r.Pin.Name()+" is cheaper than "+r.Base.Name()+" with "+map[string]string{"cost.crossing": "both tools to buy: ", "cost.payback": "today's tool paid for: "}[id]+l.Words+".")
			case l.Reason != "":
				t.Notes = append(t.Notes, r.Pin.Name()+": "+l.Reason+".")
			}
		}
	}
	return &sheet.Doc{Blocks: append([]sheet.Block{sheet.Title(title), t}, blocks(drawable(costPicture(results)))...), Foot: []string{costCaution}, Caution: Caution}
}

var costColumns = []string{"material", "quantity", "currency", "cost", "cost from", "cost to", "tool", "tool from", "tool to"}

// costData has a record for each metal and quantity.
func costData(results []*swap.Result) *sheet.Doc {
	t := &sheet.Table{Columns: sheet.Columns(costColumns...)}
	for _, c := range costs(results) {
		for _, p := range c.curve {
			out := record{"material": c.of.ID, "quantity": bare(p.Quantity), "currency": c.piece.Currency}
			for name, v := range map[string]cost.Interval{"cost": p.Cost, "tool": p.Tool} {
				out[name], out[name+" from"], out[name+" to"] = bare(v.Mid), bare(v.Lo), bare(v.Hi)
			}
			t.Add(out.cells(costColumns)...)
		}
	}
	return dataDoc(t, nil, costCaution)
}

func costJSON(results []*swap.Result) object {
	r := results[0]
	pieces := each(costs(results), func(c *costed) object {
		out := object{{"material", c.of.ID}}
		for i, x := range costRows {
			out = append(out, field{x.id, swapValueJSON(c.share(i, r.System))})
		}
		return append(out, field{"curve", each(c.curve, func(p *cost.Point) object {
			return object{{"quantity", countJSON(p.Quantity)}, {"cost", swapValueJSON(swap.Money(c.piece, p.Cost))}, {"tool", swapValueJSON(swap.Money(c.piece, p.Tool))}}
		})})
	})
	return object{
		{"part", r.Given.Part},
		{"pieces", pieces},
		{"swaps", each(results, func(r **swap.Result) object {
			var lines []swap.Line
			for _, l := range (*r).Lines {
				if l.Group == swap.Cost {
					lines = append(lines, l)
				}
			}
			out := object{{"from", (*r).Base.ID}, {"to", (*r).Pin.ID}, {"lines", each(lines, swapLineJSON)}}
			if today := (*r).Today; today != nil {
				out = append(out, field{"crossings", crossingsJSON(cost.Cross((*r).Swapped, today))}, field{"crossings_tool_paid", crossingsJSON(cost.Cross((*r).Swapped, today.Paid()))})
			}
			return out
		})},
		{"caution", costCaution + " " + Caution},
	}
}

// crossingsJSON says at which quantities the second metal becomes the cheaper one, or
// ceases to be; hi is null where in the worst case it never does.
func crossingsJSON(c cost.Crossings) object {
	return object{{"cheaper_at_first", c.Begins}, {"at", each(c.At, func(x *cost.Crossing) object {
		q := x.Quantity
		return object{{"cheaper", x.Cheaper}, {"quantity", resultJSON(q.Lo, q.Mid, q.Hi, "pieces", cost.Count(q.Mid))}}
	})}}
}

func countJSON(n float64) object {
	return object{{"lo", n}, {"hi", n}, {"unit", "pieces"}, {"printed", cost.Count(n)}}
}
