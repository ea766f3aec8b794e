package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// Picture is figures drawn to scale, told apart by words, letters and strokes, never
// by color alone. With an X axis it is lines over it, without one a row for each
// series.
type Picture struct {
	Title  string
	Alt    string // the sentence that says what is to be read from it
	X, Y   string // what stands along the axes, with its unit
	Log    bool   // both axes run by tenfolds
	Series []Series
	Marks  []Mark // of X
}

// Series is one line, or one row.
type Series struct {
	Name   string
	Word   string // beside it: what the figure is, how it compares
	Faint  bool   // drawn hollow: not to be set against the rest
	Base   bool   // the one that others are measured against
	Points []Point
}

// Point is a value with its worst cases, Lo ≤ Y ≤ Hi.
type Point struct{ X, Lo, Y, Hi float64 }

// Mark is a place on the X axis with its words.
type Mark struct {
	X    float64
	Word string
}

func (*Picture) block() {}

// axis is a scale of one direction.
type axis struct {
	lo, hi float64
	log    bool
	ticks  []float64
}

// axisOf is a scale that holds all values, ending on round numbers.
func axisOf(values []float64, log bool) axis {
	lo, hi := slices.Min(values), slices.Max(values)
	if log {
		a := axis{math.Floor(math.Log10(lo)), math.Ceil(math.Log10(hi)), true, nil}
		if a.hi == a.lo {
			a.hi++
		}
		for e := a.lo; e <= a.hi; e++ {
			a.ticks = append(a.ticks, math.Pow(10, e))
		}
		return a
	}
	if hi == lo {
		lo, hi = lo-math.Max(math.Abs(lo)/10, 0.5), hi+math.Max(math.Abs(hi)/10, 0.5)
	}
	step := math.Pow(10, math.Floor(math.Log10((hi-lo)/4)))
	for _, by := range []float64{1, 2, 5, 10} {
		if (hi-lo)/(step*by) <= 5 {
			step *= by
			break
		}
	}
	a := axis{math.Floor(lo/step) * step, math.Ceil(hi/step) * step, false, nil}
	for n := 0.0; a.lo+n*step <= a.hi+step/2; n++ {
		a.ticks = append(a.ticks, a.lo+n*step)
	}
	return a
}

// at is where a value stands, from 0 to 1.
func (a *axis) at(v float64) float64 {
	if a.log {
		v = math.Log10(v)
	}
	return math.Max(0, math.Min(1, (v-a.lo)/(a.hi-a.lo)))
}

func tickText(v float64) string {
	if v == 0 {
		return "0"
	}
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if math.Abs(v) < 10_000 {
		return strconv.FormatFloat(v, 'g', 4, 64)
	}
	for at := len(s) - 3; at > 0; at -= 3 {
		s = s[:at] + "," + s[at:]
	}
	return s
}

func (p *Picture) axes() (x, y axis) {
	var xs, ys []float64
	for _, s := range p.Series {
		for _, q := range s.Points {
			xs, ys = append(xs, q.X), append(ys, q.Lo, q.Hi)
		}
	}
	if p.X != "" {
		x = axisOf(xs, p.Log)
	}
	return x, axisOf(ys, p.Log)
}

// drawn reports whether there is anything to draw.
func (p *Picture) drawn() bool {
	return len(p.Series) > 0 && !slices.ContainsFunc(p.Series, func(s Series) bool { return len(s.Points) == 0 })
}

// letter tells the i-th line apart.
func letter(i int) string { return string(rune('A' + i%26)) }

// text draws the picture in characters, at most width wide.
func (p *Picture) text(b *strings.Builder, width int) {
	Wrap(b, width, "", "  ", strings.ToUpper(p.Title))
	switch {
	case !p.drawn():
		b.WriteString("nothing to draw\n")
	case p.X == "":
		p.rows(b, width)
	default:
		p.lines(b, width)
	}
	Wrap(b, width, "", "  ", p.Alt)
}

// rows draws a row for each series: ├──●──┤ is a range, ○ stands apart, │ is the base.
func (p *Picture) rows(b *strings.Builder, width int) {
	_, y := p.axes()
	names, words := 0, 0
	for _, s := range p.Series {
		names, words = max(names, Width(Clean(s.Name))), max(words, Width(Clean(s.Word)))
	}
	names, words = min(names, width/3), min(words, width/3)
	n := max(width-names-words-4, 8)
	place := func(v float64) int { return int(math.Round(y.at(v) * float64(n-1))) }
	base := -1
	for _, s := range p.Series {
		if s.Base {
			base = place(s.Points[0].Y)
		}
	}
	for _, s := range p.Series {
		q := s.Points[0]
		cells := []rune(strings.Repeat(" ", n))
		if base >= 0 {
			cells[base] = '│'
		}
		stroke, dot := '─', '●'
		if s.Faint {
			stroke, dot = '╌', '○'
		}
		lo, hi := place(q.Lo), place(q.Hi)
		if hi-lo > 2 { // less is the rounding of a figure
			for i := lo; i <= hi; i++ {
				cells[i] = stroke
			}
			cells[lo], cells[hi] = '├', '┤'
		}
		cells[place(q.Y)] = dot
		writeLine(b, pad(cut(s.Name, names), names)+"  "+string(cells)+"  "+cut(s.Word, words))
	}
	left, right := tickText(y.lo), tickText(y.hi)+" "+p.Y
	writeLine(b, strings.Repeat(" ", names+2)+left+strings.Repeat(" ", max(1, n-Width(left)-Width(right)))+right)
}

// gridLines is the height of a picture of lines in characters.
const gridLines = 12

// lines draws the series as letters over the X axis; + is where two meet.
func (p *Picture) lines(b *strings.Builder, width int) {
	x, y := p.axes()
	labels := 0
	for _, v := range y.ticks {
		labels = max(labels, Width(tickText(v)))
	}
	n := max(width-labels-2, 16)
	writeLine(b, p.Y)
	for i, row := range p.grid(&x, &y, n) {
		label := ""
		for _, v := range y.ticks {
			if gridLine(&y, v) == i {
				label = tickText(v)
			}
		}
		writeLine(b, strings.Repeat(" ", labels-Width(label))+label+" │"+string(row))
	}
	left, right := tickText(x.ticks[0]), tickText(x.ticks[len(x.ticks)-1])+" "+p.X
	writeLine(b, strings.Repeat(" ", labels+2)+left+strings.Repeat(" ", max(1, n-Width(left)-Width(right)))+right)
	for i, s := range p.Series {
		Wrap(b, width, letter(i)+"  ", "   ", s.label())
	}
	for _, m := range p.Marks {
		Wrap(b, width, "·  ", "   ", m.Word)
	}
}

// gridLine is the line of a value.
func gridLine(y *axis, v float64) int { return gridLines - 1 - int(math.Round(y.at(v)*(gridLines-1))) }

// grid is the picture in n columns without its axes.
func (p *Picture) grid(x, y *axis, n int) [][]rune {
	grid := make([][]rune, gridLines)
	for i := range grid {
		grid[i] = []rune(strings.Repeat(" ", n))
	}
	for _, m := range p.Marks {
		for i := range grid {
			grid[i][int(x.at(m.X)*float64(n-1))] = '·'
		}
	}
	for i, s := range p.Series {
		sign := []rune(letter(i))[0]
		for col := range n {
			v, ok := s.over(x, float64(col)/float64(n-1))
			if !ok {
				continue
			}
			cell := &grid[gridLine(y, v)][col]
			if *cell != ' ' && *cell != '·' && *cell != sign {
				*cell = '+'
			} else {
				*cell = sign
			}
		}
	}
	return grid
}

func (s *Series) label() string { return joined(": ", s.Name, s.Word) }

// over is the value of a line at a place of the X axis from 0 to 1, straight between
// its points; false outside of them.
func (s *Series) over(x *axis, at float64) (float64, bool) {
	for i := 1; i < len(s.Points); i++ {
		a, b := s.Points[i-1], s.Points[i]
		from, to := x.at(a.X), x.at(b.X)
		if at >= from-1e-9 && at <= to+1e-9 && to > from {
			return a.Y + (b.Y-a.Y)*(at-from)/(to-from), true
		}
	}
	return 0, false
}

// cut is a text, cleaned, in at most so many cells.
func cut(s string, most int) string {
	s = Clean(s)
	if Width(s) <= most {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && Width(string(r))+1 > most {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// table is the picture as figures, for a spreadsheet.
func (p *Picture) table() *Table {
	t := &Table{Heading: p.Title, Columns: Columns("series", "x: "+p.X, "lowest", "middle: "+p.Y, "highest", "remark")}
	for _, s := range p.Series {
		for _, q := range s.Points {
			x := ""
			if p.X != "" {
				x = number(q.X)
			}
			t.Add(s.Name, x, number(q.Lo), number(q.Y), number(q.Hi), s.Word)
		}
	}
	return t
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
