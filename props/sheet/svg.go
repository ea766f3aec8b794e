package sheet

import (
	"fmt"
	"strings"
)

// Sizes of a drawing in SVG, in its own units.
const (
	svgWidth  = 660
	svgHead   = 26  // above the drawing
	svgRow    = 22  // a row, a line of the legend
	svgName   = 190 // names of rows
	svgWord   = 200 // words behind rows
	svgPlot   = 240 // height of a picture of lines
	svgLeft   = 56  // figures of the Y axis
	svgBottom = 44  // figures and name of the axis below
)

// strokes tell lines apart beside their letters.
var strokes = [...]string{"", "7 3", "2 3", "9 3 2 3"}

func (p *Picture) height() int {
	if p.X == "" {
		return svgHead + len(p.Series)*svgRow + svgBottom
	}
	return svgHead + svgPlot + svgBottom + (len(p.Series)+len(p.Marks))*svgRow
}

func (p *Picture) svg(b *strings.Builder) {
	switch {
	case !p.drawn():
		svgText(b, 4, svgHead+14, "start", "", "nothing to draw")
	case p.X == "":
		p.svgRows(b)
	default:
		p.svgLines(b)
	}
}

// svgText is one text of a drawing; more are attributes.
func svgText(b *strings.Builder, x, y float64, anchor, more, s string) {
	fmt.Fprintf(b, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" %s>%s</text>\n", x, y, anchor, more, escaped(s))
}

func stroke(b *strings.Builder, x1, y1, x2, y2 float64, more string) {
	fmt.Fprintf(b, "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#222\" %s/>\n", x1, y1, x2, y2, more)
}

func (p *Picture) svgRows(b *strings.Builder) {
	_, y := p.axes()
	const left, right = svgName, svgWidth - svgWord
	place := func(v float64) float64 { return left + y.at(v)*(right-left) }
	bottom := float64(svgHead + len(p.Series)*svgRow)
	for _, v := range y.ticks {
		stroke(b, place(v), svgHead, place(v), bottom+4, "stroke-opacity=\"0.25\"")
		svgText(b, place(v), bottom+17, "middle", "", tickText(v))
	}
	svgText(b, (left+right)/2, bottom+34, "middle", "", p.Y)
	for i, s := range p.Series {
		q, at := s.Points[0], float64(svgHead+i*svgRow)+svgRow/2
		svgText(b, left-8, at+4, "end", "", cut(s.Name, 30))
		svgText(b, right+8, at+4, "start", "", cut(s.Word, 34))
		dash, fill := "", "#222"
		if s.Faint {
			dash, fill = "stroke-dasharray=\"3 3\"", "#fff"
		}
		if s.Base {
			stroke(b, place(q.Y), svgHead, place(q.Y), bottom, "stroke-width=\"1.5\" stroke-dasharray=\"1 2\"")
		}
		if lo, hi := place(q.Lo), place(q.Hi); hi-lo > 1 {
			stroke(b, lo, at, hi, at, "stroke-width=\"3\" "+dash)
			stroke(b, lo, at-6, lo, at+6, "")
			stroke(b, hi, at-6, hi, at+6, "")
		}
		fmt.Fprintf(b, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4.5\" fill=\"%s\" stroke=\"#222\"/>\n", place(q.Y), at, fill)
	}
}

func (p *Picture) svgLines(b *strings.Builder) {
	x, y := p.axes()
	const left, right, top, bottom = svgLeft, svgWidth - 30, svgHead + 18, svgHead + svgPlot
	px := func(v float64) float64 { return left + x.at(v)*(right-left) }
	py := func(v float64) float64 { return bottom - y.at(v)*(bottom-top) }
	svgText(b, 4, svgHead+8, "start", "", p.Y)
	for _, v := range y.ticks {
		stroke(b, left, py(v), right, py(v), "stroke-opacity=\"0.25\"")
		svgText(b, left-6, py(v)+4, "end", "", tickText(v))
	}
	for _, v := range x.ticks {
		stroke(b, px(v), top, px(v), bottom+4, "stroke-opacity=\"0.25\"")
		svgText(b, px(v), bottom+17, "middle", "", tickText(v))
	}
	svgText(b, (left+right)/2, bottom+34, "middle", "", p.X)
	legend := float64(svgHead + svgPlot + svgBottom)
	for i, s := range p.Series {
		var mid, low, high []string
		wide := false
		for _, q := range s.Points {
			mid = append(mid, fmt.Sprintf("%.1f,%.1f", px(q.X), py(q.Y)))
			high = append(high, fmt.Sprintf("%.1f,%.1f", px(q.X), py(q.Hi)))
			low = append([]string{fmt.Sprintf("%.1f,%.1f", px(q.X), py(q.Lo))}, low...)
			wide = wide || q.Lo < q.Hi
		}
		if wide {
			fmt.Fprintf(b, "<polygon points=\"%s %s\" fill=\"#222\" fill-opacity=\"0.10\"/>\n", strings.Join(high, " "), strings.Join(low, " "))
		}
		dash := "stroke-dasharray=\"" + strokes[i%len(strokes)] + "\" stroke-width=\"1.8\""
		fmt.Fprintf(b, "<polyline points=\"%s\" fill=\"none\" stroke=\"#222\" %s/>\n", strings.Join(mid, " "), dash)
		end := s.Points[len(s.Points)-1]
		svgText(b, px(end.X)+6, py(end.Y)+4, "start", "font-weight=\"bold\"", letter(i))
		svgText(b, px(s.Points[0].X)+4, py(s.Points[0].Y)-5, "start", "font-weight=\"bold\"", letter(i))
		at := legend + float64(i)*svgRow
		stroke(b, left, at+8, left+36, at+8, dash)
		svgText(b, left+44, at+12, "start", "", letter(i)+"  "+cut(s.label(), 84))
	}
	for i, m := range p.Marks {
		stroke(b, px(m.X), top, px(m.X), bottom, "stroke-dasharray=\"1 3\"")
		svgText(b, left, legend+float64(len(p.Series)+i)*svgRow+12, "start", "", "⋮  "+cut(m.Word, 90))
	}
}
