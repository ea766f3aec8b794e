package sheet

import "strings"

// Sizes of a drawing, in points of 1/96 in.
const (
	drawWidth  = 660
	drawHead   = 26  // above the drawing
	drawRow    = 22  // a row, a line of the legend
	drawName   = 190 // names of rows
	drawWord   = 200 // words behind rows
	drawPlot   = 240 // height of a picture of lines
	drawLeft   = 56  // figures of the Y axis
	drawBottom = 44  // figures and name of the axis below
)

// pen draws on paper with the origin at the top left.
type pen interface {
	text(at place, from anchor, bold bool, s string)
	line(how stroke, through ...place)
	band(corners ...place) // a tint
	dot(at place, hollow bool)
}

type place struct{ x, y float64 }

// anchor is what of a text stands at its place.
type anchor int

const (
	start anchor = iota
	middle
	end
)

// stroke is how a line is drawn; without dashes it is whole.
type stroke struct {
	width float64
	faint bool
	dash  []float64
}

var (
	hair = stroke{width: 1, faint: true}
	thin = stroke{width: 1}
)

// dashes tell lines apart beside their letters.
var dashes = [...][]float64{nil, {7, 3}, {2, 3}, {9, 3, 2, 3}}

func (p *Picture) height() int {
	if p.X == "" {
		return drawHead + len(p.Series)*drawRow + drawBottom
	}
	return drawHead + drawPlot + drawBottom + (len(p.Series)+len(p.Marks))*drawRow
}

// height is that of pictures below each other.
func height(list []*Picture) int {
	sum := 0
	for _, p := range list {
		sum += p.height()
	}
	return sum
}

// draw draws the picture below its title.
func (p *Picture) draw(on pen) {
	switch {
	case !p.drawn():
		on.text(place{4, drawHead + 14}, start, false, "nothing to draw")
	case p.X == "":
		p.drawRows(on)
	default:
		p.drawLines(on)
	}
}

func (p *Picture) drawRows(on pen) {
	_, y := p.axes()
	const left, right = drawName, drawWidth - drawWord
	across := func(v float64) float64 { return left + y.at(v)*(right-left) }
	bottom := float64(drawHead + len(p.Series)*drawRow)
	for _, v := range y.ticks {
		on.line(hair, place{across(v), drawHead}, place{across(v), bottom + 4})
		on.text(place{across(v), bottom + 17}, middle, false, tickText(v))
	}
	on.text(place{(left + right) / 2, bottom + 34}, middle, false, p.Y)
	for i, s := range p.Series {
		q, at := s.Points[0], float64(drawHead+i*drawRow)+drawRow/2
		on.text(place{left - 8, at + 4}, end, false, cut(s.Name, 30))
		on.text(place{right + 8, at + 4}, start, false, cut(s.Word, 34))
		if s.Base {
			on.line(stroke{width: 1.5, dash: []float64{1, 2}}, place{across(q.Y), drawHead}, place{across(q.Y), bottom})
		}
		if lo, hi := across(q.Lo), across(q.Hi); hi-lo > 1 {
			bar := stroke{width: 3}
			if s.Faint {
				bar.dash = []float64{3, 3}
			}
			on.line(bar, place{lo, at}, place{hi, at})
			on.line(thin, place{lo, at - 6}, place{lo, at + 6})
			on.line(thin, place{hi, at - 6}, place{hi, at + 6})
		}
		on.dot(place{across(q.Y), at}, s.Faint)
	}
}

func (p *Picture) drawLines(on pen) {
	x, y := p.axes()
	const left, right, top, bottom = drawLeft, drawWidth - 30, drawHead + 18, drawHead + drawPlot
	at := func(px, py float64) place { return place{left + x.at(px)*(right-left), bottom - y.at(py)*(bottom-top)} }
	on.text(place{4, drawHead + 8}, start, false, p.Y)
	for _, v := range y.ticks {
		across := at(0, v).y
		on.line(hair, place{left, across}, place{right, across})
		on.text(place{left - 6, across + 4}, end, false, tickText(v))
	}
	for _, v := range x.ticks {
		down := at(v, 0).x
		on.line(hair, place{down, top}, place{down, bottom + 4})
		on.text(place{down, bottom + 17}, middle, false, tickText(v))
	}
	on.text(place{(left + right) / 2, bottom + 34}, middle, false, p.X)
	legend := float64(drawHead + drawPlot + drawBottom)
	for i, s := range p.Series {
		var mid, edge []place
		wide := false
		for _, q := range s.Points {
			mid, edge = append(mid, at(q.X, q.Y)), append(edge, at(q.X, q.Hi))
			wide = wide || q.Lo < q.Hi
		}
		if wide {
			for j := len(s.Points) - 1; j >= 0; j-- {
				edge = append(edge, at(s.Points[j].X, s.Points[j].Lo))
			}
			on.band(edge...)
		}
		how := stroke{width: 1.8, dash: dashes[i%len(dashes)]}
		on.line(how, mid...)
		first, last := mid[0], mid[len(mid)-1]
		on.text(place{last.x + 6, last.y + 4}, start, true, letter(i))
		on.text(place{first.x + 4, first.y - 5}, start, true, letter(i))
		down := legend + float64(i)*drawRow
		on.line(how, place{left, down + 8}, place{left + 36, down + 8})
		on.text(place{left + 44, down + 12}, start, false, letter(i)+"  "+cut(s.label(), 84))
	}
	for i, m := range p.Marks {
		down := at(m.X, 0).x
		on.line(stroke{width: 1, dash: []float64{1, 3}}, place{down, top}, place{down, bottom})
		on.text(place{left, legend + float64(len(p.Series)+i)*drawRow + 12}, start, false, "·  "+cut(m.Word, 90))
	}
}

// altText says what is to be read from pictures.
func altText(list []*Picture) string {
	var alt []string
	for _, p := range list {
		alt = append(alt, p.Title+". "+p.Alt)
	}
	return strings.Join(alt, " ")
}
