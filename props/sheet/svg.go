package sheet

import (
	"fmt"
	"strings"
)

// SVG is pictures below each other as a file of its own.
func SVG(list ...*Picture) string {
	return "<svg xmlns=\"http://www.w3.org/2000/svg\"" + svg(true, list...)
}

// svg is SVG without its first word, as it stands in a page; there the titles stand
// above it.
func svg(titled bool, list ...*Picture) string {
	var b strings.Builder
	fmt.Fprintf(&b, " width=\"%d\" height=\"%d\" viewBox=\"0 0 %[1]d %[2]d\" role=\"img\" font-family=\"Arial, Helvetica, sans-serif\" font-size=\"12\">\n", drawWidth, height(list))
	b.WriteString("<title>" + escaped(altText(list)) + "</title>\n")
	top := 0
	for _, p := range list {
		fmt.Fprintf(&b, "<g transform=\"translate(0 %d)\">\n", top)
		if titled {
			svgPen{&b}.text(place{4, 17}, start, true, p.Title)
		}
		p.draw(svgPen{&b})
		b.WriteString("</g>\n")
		top += p.height()
	}
	b.WriteString("</svg>\n")
	return b.String()
}

type svgPen struct{ *strings.Builder }

func (b svgPen) text(at place, from anchor, bold bool, s string) {
	weight := ""
	if bold {
		weight = " font-weight=\"bold\""
	}
	fmt.Fprintf(b, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\"%s>%s</text>\n", at.x, at.y, [...]string{"start", "middle", "end"}[from], weight, escaped(s))
}

func (b svgPen) line(how stroke, through ...place) {
	more := ""
	if how.faint {
		more += " stroke-opacity=\"0.25\""
	}
	if how.dash != nil {
		more += fmt.Sprintf(" stroke-dasharray=\"%s\"", strings.Trim(fmt.Sprint(how.dash), "[]"))
	}
	fmt.Fprintf(b, "<polyline points=\"%s\" fill=\"none\" stroke=\"#222\" stroke-width=\"%g\"%s/>\n", points(through), how.width, more)
}

func (b svgPen) band(corners ...place) {
	fmt.Fprintf(b, "<polygon points=\"%s\" fill=\"#222\" fill-opacity=\"0.10\"/>\n", points(corners))
}

func (b svgPen) dot(at place, hollow bool) {
	fill := "#222"
	if hollow {
		fill = "#fff"
	}
	fmt.Fprintf(b, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4.5\" fill=\"%s\" stroke=\"#222\"/>\n", at.x, at.y, fill)
}

func points(list []place) string {
	var out []string
	for _, p := range list {
		out = append(out, fmt.Sprintf("%.1f,%.1f", p.x, p.y))
	}
	return strings.Join(out, " ")
}
