package cost

import (
	"math"
	"testing"

	"alongside/props"
	"alongside/units"
)

// rated are rates typed as in a house file.
func rated(t testing.TB, typed map[Key]string) Rates {
	t.Helper()
	r := Rates{Sources: []*props.Source{{ID: "TEST"}}}
	for k, text := range typed {
		p, err := k.parse(text)
		if err != nil {
			t.Fatalf("%s %q: %v", k, text, err)
		}
		r.Set(k, p)
	}
	return r
}

// pieceOf is a casting of so many kg.
func pieceOf(t testing.TB, kg float64, typed map[Key]string) *Piece {
	t.Helper()
	r := rated(t, typed)
	p, err := r.Piece(Interval{kg, kg, kg})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func both(a, b *Piece) (begins bool, at []Crossing) {
	c := Cross(a, b)
	return c.Begins, c.At
}

// Standard cost finding practice for steel foundries (trade association of steel
// foundries, 1927), pages 20, 21 and 24: metal at 28.14 $ a net ton charged, 10 %
// melting loss, recovered scrap at 13 $ a net ton; cost of steel per net ton of good
// castings by their yield of the metal charged.
func TestPublishedCostOfMetal(t *testing.T) {
	const loss = 0.10
	ton, err := units.ParseUnit("short ton")
	if err != nil {
		t.Fatal(err)
	}
	for charged, want := range map[float64]float64{21: 91.30, 48.2: 47.11, 66: 37.90, 68: 37.20, 69: 36.80, 80: 33.60} {
		r := rated(t, map[Key]string{Metal: "28.14 $/short ton", Returns: "13.00 $/short ton", MeltLoss: "10 %", Conversion: "0 $/piece"})
		yield := charged / (1 - loss) // of the metal poured
		r.Set(Yield, Price{Amount: units.Quantity{Lo: yield, Hi: yield, Unit: units.Pct}})
		kg := ton.ToSI(1)
		p, err := r.Piece(Interval{kg, kg, kg})
		if err != nil {
			t.Fatal(err)
		}
		if have := p.Metal.Mid; math.Abs(have-want) > 0.06 { // the table is printed to 10 cents
			t.Errorf("yield %v %%: have %.2f, printed %.2f", charged, have, want)
		}
	}
}

// Published break-even problems: two tools with their cost, what each piece costs
// beside, and the quantity at which a piece costs the same.
func TestPublishedBreakEven(t *testing.T) {
	for _, tt := range []struct {
		source                 string
		first, each            string
		second, eachOfSecond   string
		want, tolerance, cross float64
	}{
		// unit cost with its share of the setup of a batch of 500: 3.40 + 100/500 and 0.80 + 60/500
		{"engineering design textbook, soft and hard tooling, problem 16.3", "600 $", "3.60 $/piece", "7,500 $", "0.92 $/piece", 2574.63, 0.005, 0},
		{"foundry's page on tooling cost against piece price", "5,000 $", "20 $/piece", "25,000 $", "16 $/piece", 5000, 1e-9, 21},
		{"operations management problem, two processes", "25,000 $", "18 $/piece", "50,000 $", "10 $/piece", 3125, 1e-9, 26},
	} {
		hard := map[Key]string{Metal: "1e-12 $/kg", ToolCost: tt.second, Conversion: tt.eachOfSecond}
		soft := map[Key]string{Metal: "1e-12 $/kg", ToolCost: tt.first, Conversion: tt.each}
		a, b := pieceOf(t, 1e-9, hard), pieceOf(t, 1e-9, soft)
		begins, all := both(a, b)
		if begins || len(all) != 1 || !all[0].Cheaper || math.Abs(all[0].Quantity.Mid-tt.want) > tt.tolerance {
			t.Errorf("%s: begins %v, crossings %+v, want %v", tt.source, begins, all, tt.want)
			continue
		}
		if have := a.At(tt.want).Mid; tt.cross > 0 && math.Abs(have-tt.cross) > 1e-9 {
			t.Errorf("%s: a piece costs %v there, want %v", tt.source, have, tt.cross)
		}
	}
}

// The table of the foundry's page on tooling cost against piece price.
func TestPublishedCostAgainstQuantity(t *testing.T) {
	a := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", ToolCost: "5,000 $", Conversion: "20 $/piece"})
	b := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", ToolCost: "25,000 $", Conversion: "16 $/piece"})
	for n, want := range map[float64][2]float64{500: {30, 66}, 1000: {25, 41}, 2500: {22, 26}, 5000: {21, 21}, 10000: {20.5, 18.5}} {
		if math.Abs(a.At(n).Mid-want[0]) > 1e-9 || math.Abs(b.At(n).Mid-want[1]) > 1e-9 {
			t.Errorf("%v pieces: have %v and %v, printed %v", n, a.At(n).Mid, b.At(n).Mid, want)
		}
	}
}

// A tool that wears out is bought again. Worked by hand: at 250 pieces three tools
// of 100 pieces each, 300 $ in all, and one of 1,000 $ for any quantity; pieces of
// 2 $ and 1 $.
func TestToolsWearOut(t *testing.T) {
	short := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", ToolCost: "100 $", ToolLife: "100 pieces", Conversion: "2 $/piece"})
	long := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", ToolCost: "1,000 $", Conversion: "1 $/piece"})
	if have := short.At(250).Mid; math.Abs(have-(2+300./250)) > 1e-9 {
		t.Errorf("250 pieces: have %v", have)
	}
	if have := short.Paid().At(250).Mid; math.Abs(have-(2+200./250)) > 1e-9 {
		t.Errorf("250 pieces, the first tool paid: have %v", have)
	}
	// 500 pieces: 5 · 100 + 1,000 = 1,500 and 1,000 + 500 = 1,500; at 501 a sixth tool.
	begins, all := both(long, short)
	if begins || len(all) != 1 || all[0].Quantity.Mid != 501 || !all[0].Cheaper {
		t.Errorf("begins %v, crossings %+v", begins, all)
	}
	// A dear tool of the first that is renewed turns the order there and back.
	renewed := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", ToolCost: "500 $", ToolLife: "1,000 pieces", Conversion: "1 $/piece"})
	steady := pieceOf(t, 1e-9, map[Key]string{Metal: "1e-12 $/kg", Conversion: "1.6 $/piece"})
	_, all = both(renewed, steady)
	var at []float64
	for _, c := range all {
		at = append(at, math.Round(c.Quantity.Mid))
	}
	// 500 k < 0.6 n: from 833; at 1,001 no longer; from 1,667; at 2,001 no longer;
	// from 2,500; at 3,001 no longer (1,800.6 < 2,000); from 3,333; 4,001; 4,167; 5,001 pays: 3,000.6 > 3,000.
	want := []float64{833, 1001, 1667, 2001, 2500, 3001, 3333, 4001, 4167}
	if len(at) != len(want) {
		t.Fatalf("have %v, want %v", at, want)
	}
	for i := range at {
		if at[i] != want[i] {
			t.Errorf("have %v, want %v", at, want)
			break
		}
	}
}
