package cost

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// span draws a range within lo and hi.
func span(t *rapid.T, name string, lo, hi float64) (float64, float64) {
	milli := func(v float64) float64 { return math.Round(1000*v) / 1000 }
	a, b := milli(rapid.Float64Range(lo, hi).Draw(t, name)), milli(rapid.Float64Range(lo, hi).Draw(t, name+" to"))
	return math.Min(a, b), math.Max(a, b)
}

// drawn draws each rate as a range, of which returns lie below the metal.
func drawn(t *rapid.T, label string) map[Key][2]float64 {
	out := map[Key][2]float64{}
	for k, ends := range [keyCount][2]float64{
		Metal: {0.5, 3}, Returns: {0.1, 0.5}, MeltLoss: {0, 12}, Yield: {30, 100}, Stock: {0, 30}, Conversion: {0.1, 5},
		Machining: {0, 10}, Finish: {0, 3}, ToolCost: {0, 50_000}, ToolLife: {500, 200_000},
	} {
		k := Key(k)
		lo, hi := span(t, label+k.ID(), ends[0], ends[1])
		out[k] = [2]float64{lo, hi}
	}
	return out
}

// typed is how a range of a rate is typed, money for a mass in pounds or kilograms.
func typed(k Key, r [2]float64, kg bool) string {
	if kg && (k == Metal || k == Returns || k == Conversion) {
		const pound = 0.45359237 // NIST SP 811 (2008), B.8
		return fmt.Sprintf("%.12f-%.12f $/kg", r[0]/pound, r[1]/pound)
	}
	unit := map[Key]string{Metal: " $/lb", Returns: " $/lb", Conversion: " $/lb", Machining: " $/piece", Finish: " $/piece", ToolCost: " $", ToolLife: " pieces"}[k]
	if unit == "" {
		unit = " %"
	}
	return fmt.Sprintf("%.12f-%.12f%s", r[0], r[1], unit)
}

func pieceFrom(t *rapid.T, rates map[Key][2]float64, mass Interval, kg bool) *Piece {
	var r Rates
	for k, ends := range rates {
		p, err := k.parse(typed(k, ends, kg))
		if err != nil {
			t.Fatalf("%s %v: %v", k, ends, err)
		}
		r.Set(k, p)
	}
	p, err := r.Piece(mass)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The interval of a piece holds the cost at any point within the ranges, and does
// not care for the unit of mass.
func TestIntervalHoldsThePoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rates := drawn(t, "")
		lo, hi := span(t, "mass", 0.1, 20)
		whole := pieceFrom(t, rates, Interval{lo, lo/2 + hi/2, hi}, false)
		within := func(lo, hi float64, name string) float64 { return lo + (hi-lo)*rapid.Float64Range(0, 1).Draw(t, name) }
		point := map[Key][2]float64{}
		for k := range keyCount {
			ends := rates[k]
			v := within(ends[0], ends[1], "at "+k.ID())
			point[k] = [2]float64{v, v}
		}
		m := within(lo, hi, "at mass")
		one := pieceFrom(t, point, Interval{m, m, m}, true)
		n := math.Round(rapid.Float64Range(1, 1e5).Draw(t, "n"))
		for name, pair := range map[string][2]Interval{
			"cost": {whole.At(n), one.At(n)}, "tool": {whole.ToolShare(n), one.ToolShare(n)}, "metal": {whole.Metal, one.Metal},
			"poured": {whole.Poured, one.Poured}, "cast": {whole.Cast, one.Cast},
		} {
			w, x := pair[0], pair[1]
			if eps := 1e-9 * (1 + w.Hi); x.Mid < w.Lo-eps || x.Mid > w.Hi+eps || w.Lo > w.Mid || w.Mid > w.Hi {
				t.Fatalf("%s: %v is not in %v", name, x.Mid, w)
			}
		}
		if same := pieceFrom(t, rates, whole.Shipped, true).At(n); math.Abs(same.Mid-whole.At(n).Mid) > 1e-9*same.Mid {
			t.Fatalf("by the kilogram %v, by the pound %v", same, whole.At(n))
		}
	})
}

// More of a rate moves the cost of a piece one way, at any quantity.
func TestMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rates := drawn(t, "")
		for k, ends := range rates {
			rates[k] = [2]float64{ends[0], ends[0]}
		}
		k := Key(rapid.IntRange(0, int(keyCount)-1).Draw(t, "rate"))
		more := map[Key][2]float64{}
		for x, ends := range rates {
			more[x] = ends
		}
		v := rates[k][0] * rapid.Float64Range(1, 1.5).Draw(t, "more")
		if k == Yield {
			v = math.Min(v, 100)
		}
		if k == Returns {
			v = math.Min(v, 0.5)
		}
		more[k] = [2]float64{v, v}
		n := math.Round(rapid.Float64Range(1, 1e5).Draw(t, "n"))
		mass := Interval{2, 2, 2}
		before, after := pieceFrom(t, rates, mass, false).At(n).Mid, pieceFrom(t, more, mass, false).At(n).Mid
		if d := (after - before) * float64(k.dearer()); d < -1e-9*before {
			t.Fatalf("%s from %v to %v: %v became %v", k, rates[k][0], v, before, after)
		}
		heavier := pieceFrom(t, rates, Interval{3, 3, 3}, false).At(n).Mid
		if heavier < before {
			t.Fatalf("3 kg cost %v, 2 kg %v", heavier, before)
		}
	})
}

// At a crossing the costs are equal, or a tool is renewed there; on either side the
// order is as told; seen from the other metal the crossings are the same.
func TestCrossingsAreWhereCostsAreEqual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mass := Interval{2, 2, 2}
		a, b := pieceFrom(t, drawn(t, "a "), mass, false), pieceFrom(t, drawn(t, "b "), mass, false)
		begins, all := both(a, b)
		x, y := a.line(0), b.line(0)
		if begins != (x.total(1) < y.total(1)) {
			t.Fatalf("begins %v", begins)
		}
		cheaper := begins
		for i, c := range all {
			n := c.Quantity.Mid
			cheaper = !cheaper
			if c.Cheaper != cheaper || c.Quantity.Lo > n || c.Quantity.Hi < n || i > 0 && n < all[i-1].Quantity.Mid {
				t.Fatalf("crossings %+v", all)
			}
			renewed := n == math.Trunc(n) && (x.tools(n) > x.tools(n-1) || y.tools(n) > y.tools(n-1))
			if !renewed && math.Abs(x.total(n)-y.total(n)) > 1e-6*x.total(n) {
				t.Fatalf("at %v one costs %v, the other %v", n, x.total(n)/n, y.total(n)/n)
			}
			if after := math.Floor(n) + 1; i+1 < len(all) && after < all[i+1].Quantity.Mid || i+1 == len(all) {
				if (x.total(after) < y.total(after)) != cheaper && x.last(n) >= after && y.last(n) >= after {
					t.Fatalf("after %v: %v and %v, told cheaper %v", n, x.total(after), y.total(after), cheaper)
				}
			}
		}
		_, back := both(b, a)
		if len(back) != len(all) {
			t.Fatalf("there %v, back %v", all, back)
		}
		for i := range back {
			if back[i].Cheaper == all[i].Cheaper || math.Abs(back[i].Quantity.Mid-all[i].Quantity.Mid) > 1e-6*all[i].Quantity.Mid+1e-9 {
				t.Fatalf("there %v, back %v", all, back)
			}
		}
	})
}

// The ends of a crossing hold the crossing of any point within the ranges, also where
// both metals take a rate from one record.
func TestCrossingHoldsThePoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ra, rb := drawn(t, "a "), drawn(t, "b ")
		delete(ra, ToolLife)
		delete(rb, ToolLife)
		mass := Interval{2, 2, 2}
		rates := func(r map[Key][2]float64) (out Rates) {
			for k, ends := range r {
				p, err := k.parse(typed(k, ends, false))
				if err != nil {
					t.Fatal(err)
				}
				out.Set(k, p)
			}
			return out
		}
		x, y := rates(ra), rates(rb)
		shared := map[Key]bool{}
		for _, k := range []Key{Machining, Metal, Yield} {
			if rapid.Bool().Draw(t, "share "+k.ID()) {
				shared[k], rb[k] = true, ra[k]
				p, _ := x.Price(k)
				x.rates[k] = &p
				y.rates[k] = &p
			}
		}
		a, b := x.piece(mass), y.piece(mass)
		_, all := both(a, b)
		if len(all) != 1 {
			return
		}
		pa, pb := map[Key][2]float64{}, map[Key][2]float64{}
		for k := range ToolLife {
			u := rapid.Float64Range(0, 1).Draw(t, "a at "+k.ID())
			w := rapid.Float64Range(0, 1).Draw(t, "b at "+k.ID())
			if shared[k] {
				w = u
			}
			va, vb := ra[k][0]+u*(ra[k][1]-ra[k][0]), rb[k][0]+w*(rb[k][1]-rb[k][0])
			pa[k], pb[k] = [2]float64{va, va}, [2]float64{vb, vb}
		}
		begins, point := both(pieceFrom(t, pa, mass, false), pieceFrom(t, pb, mass, false))
		if q := all[0].Quantity; len(point) == 1 && point[0].Cheaper == all[0].Cheaper {
			if n := point[0].Quantity.Mid; n < q.Lo*(1-1e-9) || n > q.Hi*(1+1e-9) {
				t.Fatalf("%v is not in %v (begins %v)", n, q, begins)
			}
		}
	})
}

// Where tools wear out early, the order is the one found by trying each quantity.
func TestCrossingsByTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		some := func(name string, lo, hi int) float64 { return float64(rapid.IntRange(lo, hi).Draw(t, name)) }
		piece := func(label string) line {
			l := line{some(label+"tool", 0, 400), some(label+"life", 20, 900), some(label+"each", 0, 40) / 10, some(label+"paid", 0, 1)}
			if rapid.Bool().Draw(t, label+"for ever") {
				l.life = math.Inf(1)
			}
			return l
		}
		a, b := piece("a "), piece("b ")
		cheaper := func(n float64) bool { return a.total(n) < b.total(n) }
		now, at := crossings(a, b)
		if now != cheaper(1) {
			t.Fatalf("begins %v", now)
		}
		end := 3000.0
		if len(at) == mostCrossings { // no more are told
			end = at[len(at)-1].Quantity.Mid - 1
		}
		for n := 1.0; n <= end; n++ {
			for len(at) > 0 && at[0].Quantity.Mid <= n {
				now, at = at[0].Cheaper, at[1:]
			}
			if differ := math.Abs(a.total(n) - b.total(n)); now != cheaper(n) && differ > 1e-6 {
				t.Fatalf("%v pieces: told %v, but %v against %v", n, now, a.total(n), b.total(n))
			}
		}
	})
}
