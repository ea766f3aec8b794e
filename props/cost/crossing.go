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

// Crossings is the order of two costs of a piece, from one piece up to ten million.
type Crossings struct {
	Same   bool // they are equal at every quantity
	Begins bool // the first is cheaper where a single piece is made
	At     []Crossing
}

// Cross says where the cost of a piece of a crosses that of b. Between the ends of a
// crossing either can be the cheaper one. A rate that both have from one record of
// the shop is the same for both, wherever in its range.
func Cross(a, b *Piece) Crossings {
	begins, out := crossings(a.line(0), b.line(0))
	if len(out) == 0 {
		return Crossings{a.line(0) == b.line(0), begins, nil}
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
	return Crossings{Begins: begins, At: out}
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
const mostShared = 5

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

// crossings is Cross for two costs without ranges. Between the renewals of tools
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
	return begins, out[:min(len(out), mostCrossings)] // the last step may have found two
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

// String says at which quantities the first is cheaper: "from 1,240 pieces on (1,010
// to 1,600)", "never".
func (c Crossings) String() string {
	switch {
	case c.Same:
		return "never, both cost the same"
	case len(c.At) == 0 && c.Begins:
		return "at every quantity"
	case len(c.At) == 0:
		return "never"
	case len(c.At) == 1:
		word, on := "from", " on"
		if c.Begins {
			word, on = "below", ""
		}
		return word + " " + about(c.At[0].Quantity.Mid) + " pieces" + on + c.At[0].worst()
	}
	// Renewals of tools turn the order more than once; ranges would say little.
	const most = 6
	var told []string
	for _, x := range c.At[:min(most, len(c.At))] {
		word := "from "
		if !x.Cheaper {
			word = "no longer from "
		}
		told = append(told, word+about(x.Quantity.Mid))
	}
	if c.Begins {
		told = append([]string{"at first"}, told...)
	}
	if len(c.At) > most {
		told = append(told, "and so on")
	}
	return strings.Join(told, ", ") + " pieces; the tools are renewed there"
}

// worst tells the ends of the range of a crossing: " (1,010 to 1,600)".
func (c *Crossing) worst() string {
	lo, mid, hi := about(c.Quantity.Lo), about(c.Quantity.Mid), about(c.Quantity.Hi)
	switch {
	case math.IsInf(c.Quantity.Hi, 1) && c.Cheaper:
		return " (" + lo + " at best, never at worst)"
	case math.IsInf(c.Quantity.Hi, 1):
		return " (" + lo + " at worst, always at best)"
	case lo == mid && hi == mid:
		return ""
	}
	return " (" + lo + " to " + hi + ")"
}

// about is a worked quantity to three digits, as many as rates are good for.
func about(n float64) string {
	if n >= 1000 && !math.IsInf(n, 1) {
		unit := math.Pow10(int(math.Floor(math.Log10(n))) - 2)
		n = math.Round(n/unit) * unit
	}
	return Count(n)
}

// Count is the interval as a quantity of pieces: "80,000", "60,000 to 80,000".
func (i Interval) Count() string {
	if i.Lo < i.Hi {
		return Count(i.Lo) + " to " + Count(i.Hi)
	}
	return Count(i.Mid)
}

// Count is a whole quantity of pieces with commas: "18,400".
func Count(n float64) string {
	s := strconv.FormatFloat(math.Round(n), 'f', 0, 64)
	for at := len(s) - 3; at > 0; at -= 3 {
		s = s[:at] + "," + s[at:]
	}
	return s
}
