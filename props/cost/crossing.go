package cost

import (
	"math"
	"strconv"
	"strings"
)

// line is the cost of n pieces: a tool for every life pieces begun, but for those
// that are paid, and each piece.
type line struct{ tool, life, each, paid float64 }

func (p *Piece) line(side int) line {
	return line{p.Tool.at(side), p.Life.at(-side), p.Each().at(side), p.paid}
}

// worn is how many tools n pieces wear out, the last one perhaps not wholly.
func (l line) worn(n float64) float64 {
	if math.IsInf(l.life, 1) {
		return 1
	}
	return math.Ceil(n / l.life)
}

func (l line) tools(n float64) float64 { return l.worn(n) - l.paid }

func (l line) total(n float64) float64 { return l.tool*l.tools(n) + l.each*n }

// last is the last whole quantity that takes no more tools than n pieces.
func (l line) last(n float64) float64 { return max(n, math.Floor(l.worn(n)*l.life)) }

// Crossing is a quantity at which of two metals the other one becomes cheaper.
type Crossing struct {
	Quantity Interval // Hi is infinite where in the worst case it never becomes cheaper
	Cheaper  bool     // from here on the first of the two is
}

// Crossings lists where the cost of a piece of a crosses that of b, from one piece
// up to ten million; begins reports whether a is the cheaper one of a single piece.
// Between the ends of a crossing either can be the cheaper one. A rate that both
// have from one record of the shop is the same for both, wherever in its range.
func Crossings(a, b *Piece) (begins bool, out []Crossing) {
	begins, out = crossings(a.line(0), b.line(0))
	if len(out) == 0 {
		return begins, nil
	}
	for _, pair := range alike(a, b) {
		_, best := crossings(pair[0].line(-1), pair[1].line(1))
		_, worst := crossings(pair[0].line(1), pair[1].line(-1))
		for i := range out {
			if out[i].Cheaper { // at the earliest in the best case, surely in the worst one
				out[i].widen(best, worst)
			} else {
				out[i].widen(worst, best)
			}
		}
	}
	return begins, out
}

// widen sets the ends of a crossing to those of its like, early and late.
func (c *Crossing) widen(early, late []Crossing) {
	n, lo, hi := c.Quantity.Mid, 1.0, math.Inf(1)
	for _, x := range early {
		if x.Cheaper == c.Cheaper && x.Quantity.Mid <= n {
			lo = x.Quantity.Mid
		}
	}
	for _, x := range late {
		if x.Cheaper == c.Cheaper && x.Quantity.Mid >= n {
			hi = min(hi, x.Quantity.Mid)
		}
	}
	c.Quantity.Lo, c.Quantity.Hi = min(c.Quantity.Lo, lo), max(c.Quantity.Hi, hi)
}

// mostShared is how many shared ranges are gone through, end by end; any more are
// taken as if each metal had its own.
const mostShared = 6

// alike are the two pieces at every choice of ends of the ranges that they share.
// The difference of the costs is extreme there: it is linear in money, in 1/yield,
// 1/(1 − loss) and 1/(1 − stock), one after the other.
func alike(a, b *Piece) [][2]*Piece {
	var shared []int
	for k, p := range a.rates.rates {
		if p != nil && p == b.rates.rates[k] && p.Amount.IsRange() && len(shared) < mostShared {
			shared = append(shared, k)
		}
	}
	var out [][2]*Piece
	for ends := range 1 << len(shared) {
		ra, rb := a.rates, b.rates
		for i, k := range shared {
			one := *ra.rates[k]
			if ends&(1<<i) == 0 {
				one.Amount.Hi = one.Amount.Lo
			} else {
				one.Amount.Lo = one.Amount.Hi
			}
			ra.rates[k], rb.rates[k] = &one, &one
		}
		x, y := ra.piece(a.Shipped), rb.piece(b.Shipped)
		x.paid, y.paid = a.paid, b.paid
		out = append(out, [2]*Piece{x, y})
	}
	return out
}

// mostSteps is how many renewals of a tool are looked through, and mostCrossings how
// many crossings are told.
const (
	mostSteps     = 100_000
	mostCrossings = 50
)

// crossings is Crossings for two costs without ranges. Between the renewals of tools
// both totals are straight lines.
func crossings(a, b line) (begins bool, out []Crossing) {
	cheaper := func(n float64) bool { return a.total(n) < b.total(n) }
	begins = cheaper(1)
	now := begins
	turn := func(n float64) {
		now = !now
		out = append(out, Crossing{Interval{n, n, n}, now})
	}
	for n, step := 1.0, 0; n <= mostPieces && step < mostSteps && len(out) < mostCrossings; step++ {
		if cheaper(n) != now { // with a new tool
			turn(n)
		}
		end := min(mostPieces, a.last(n), b.last(n))
		if cheaper(end) != now {
			equal := (b.tool*b.tools(n) - a.tool*a.tools(n)) / (a.each - b.each)
			turn(max(n, min(equal, end)))
		}
		if settled(a, b, end, now) {
			break
		}
		n = end + 1
	}
	return begins, out
}

// settled reports whether no renewal beyond n can turn the order again: each total
// stays within one tool of a straight line.
func settled(a, b line, n float64, cheaper bool) bool {
	slope := a.each + a.tool/a.life - b.each - b.tool/b.life
	if cheaper {
		return slope < 0 && slope*n+a.tool+b.tool < 0
	}
	return slope >= 0 && slope*n-a.tool-b.tool >= 0
}

// Words says at which quantities a is cheaper than b: "from 1,240 pieces on (1,010 to
// 1,600)", "never".
func Words(a, b *Piece) string {
	begins, all := Crossings(a, b)
	switch {
	case a.line(0) == b.line(0):
		return "never, both cost the same"
	case len(all) == 0 && begins:
		return "at every quantity"
	case len(all) == 0:
		return "never"
	case len(all) == 1:
		word, on := "from", " on"
		if begins {
			word, on = "below", ""
		}
		return word + " " + Count(all[0].Quantity.Mid) + " pieces" + on + all[0].Quantity.worst()
	}
	// Renewals of tools turn the order more than once; ranges would say little.
	const most = 6
	var told []string
	for _, c := range all[:min(most, len(all))] {
		word := "from "
		if !c.Cheaper {
			word = "no longer from "
		}
		told = append(told, word+Count(c.Quantity.Mid))
	}
	if begins {
		told = append([]string{"at first"}, told...)
	}
	if len(all) > most {
		told = append(told, "and so on")
	}
	return strings.Join(told, ", ") + " pieces; the tools are renewed there"
}

// worst tells the ends of a range of quantities: " (1,010 to 1,600)".
func (i Interval) worst() string {
	lo, mid, hi := Count(i.Lo), Count(i.Mid), Count(i.Hi)
	switch {
	case math.IsInf(i.Hi, 1):
		return " (" + lo + " at best, never at worst)"
	case lo == mid && hi == mid:
		return ""
	}
	return " (" + lo + " to " + hi + ")"
}

// Count is the interval as a quantity of pieces: "80,000", "60,000 to 80,000".
func (i Interval) Count() string {
	if lo, hi := Count(i.Lo), Count(i.Hi); lo != hi {
		return lo + " to " + hi
	}
	return Count(i.Mid)
}

// Count is a quantity of pieces as it is told, to three digits: "18,400".
func Count(n float64) string {
	if n >= 1000 {
		unit := math.Pow10(int(math.Floor(math.Log10(n))) - 2)
		n = math.Round(n/unit) * unit
	}
	s := strconv.FormatFloat(math.Round(n), 'f', 0, 64)
	for at := len(s) - 3; at > 0; at -= 3 {
		s = s[:at] + "," + s[at:]
	}
	return s
}
