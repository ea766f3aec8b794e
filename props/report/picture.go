package report

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/bars"
	"alongside/props/compare"
	"alongside/props/cost"
	"alongside/props/sheet"
	"alongside/props/swap"
	"alongside/units"
)

// What can be drawn beside a property, by its id.
const (
	pictureHeat   = "heat"
	pictureGrowth = "growth"
)

// PictureDoc draws a property of the pins, with it the strength over temperature or
// the growth where it is of these, or one of the two alone; the figures drawn stand
// below with their sources. Where there is nothing to draw the error says so.
func PictureDoc(bench compare.Bench, what string) (*Doc, error) {
	bench = bench.Clone()
	property := map[string]props.PropertyID{pictureHeat: props.TensileStrength, pictureGrowth: props.ThermalExpansion}[what]
	alone := property != props.NoProperty
	if !alone {
		var err error
		if property, err = props.ResolveProperty(what); err != nil {
			return nil, fmt.Errorf("%w; or %s, %s", err, pictureHeat, pictureGrowth)
		}
	}
	bench.Only = []props.PropertyID{property}
	c := compare.Compare(bench)
	var list []*sheet.Picture
	if !alone {
		list = append(list, rowPicture(c, &c.Rows[0]))
	}
	switch property {
	case props.TensileStrength:
		list = append(list, heatPicture(&bench))
	case props.ThermalExpansion:
		list = append(list, growthPicture(&bench))
	}
	if list = drawable(list...); len(list) == 0 {
		return nil, fmt.Errorf("there are too few figures on file to draw %s of these", what)
	}
	return &Doc{pictures: list, text: func(n *numbering) *sheet.Doc {
		d := compareText(c, Limits{}, n) // the figures drawn, with their sources
		d.Blocks = append(blocks(list), d.Blocks...)
		return d
	}, json: func() object { return compareJSON(c, nil) }}, nil
}

// drawable are the pictures that there are.
func drawable(list ...*sheet.Picture) []*sheet.Picture {
	return slices.DeleteFunc(list, func(p *sheet.Picture) bool { return p == nil })
}

func blocks(list []*sheet.Picture) []sheet.Block {
	var out []sheet.Block
	for _, p := range list {
		out = append(out, p)
	}
	return out
}

// Picture is the pictures of the document as one drawing, "svg" or "png". A document
// without pictures is an error.
func (d *Doc) Picture(format string) ([]byte, error) {
	switch {
	case len(d.pictures) == 0:
		return nil, errors.New("this answer has no picture")
	case format == "png":
		return sheet.PNG(d.pictures...)
	}
	return []byte(sheet.SVG(d.pictures...)), nil
}

// rowPicture is a property of all pins with its interval, in the unit of its row: what
// must not be set against the baseline is hollow and says so. It is nil where fewer
// than two pins have a figure.
func rowPicture(c *compare.Comparison, row *compare.Row) *sheet.Picture {
	name := props.InSentence(row.Property.Info().Name)
	p := &sheet.Picture{Title: row.Property.Info().Name, Y: row.Unit.Symbol()}
	var against []string
	for i := range row.Cells {
		in := &row.Cells[i]
		if in.Figure == nil {
			continue
		}
		x := cell(c, in, &numbering{})
		lo, mid, hi := in.Figure.SI()
		point := fromSI(row.Unit, 0, lo, mid, hi)
		if have := in.Figure.Value.Unit.Dimension(); have != row.Unit.Dimension() {
			if !have.Brinell() || !row.Unit.Dimension().Brinell() {
				continue
			}
			point = fromSI(in.Figure.Value.Unit, 0, lo, mid, hi) // a number under its own load, as the table has it
			x.text = in.Value.String()
		}
		s := sheet.Series{Name: in.Material.Name(), Base: i == c.Baseline, Faint: in.Verdict == compare.Unlike,
			Word: joined(" ", x.text+x.word+memorySign(x.Memory), x.Delta, x.Word)}
		s.Points = []sheet.Point{point}
		p.Series = append(p.Series, s)
		if s.Base {
			s.Word = "baseline"
			p.Series[len(p.Series)-1].Word += " baseline"
		} else {
			against = append(against, in.Material.Name()+" "+joined(" ", x.text+x.word, x.Word))
		}
	}
	if len(p.Series) < 2 {
		return nil
	}
	p.Alt = "Each dot is the " + joined(" in ", name, row.Unit.Symbol()) + ", each bar its range: " + strings.Join(against, "; ") + "."
	if slices.ContainsFunc(p.Series, func(s sheet.Series) bool { return s.Faint }) {
		p.Alt += " A hollow dot is unlike the baseline in basis or conditions: the two are not compared."
	}
	return p
}

func memorySign(is bool) string {
	if is {
		return MemorySign
	}
	return ""
}

func fromSI(u units.Unit, x, lo, mid, hi float64) sheet.Point {
	a, b := u.FromSI(lo), u.FromSI(hi)
	m := min(max(u.FromSI(mid), min(a, b)), max(a, b))
	return sheet.Point{X: x, Lo: min(a, b), Y: m, Hi: max(a, b)}
}

// mostRows is how many properties a report draws.
const mostRows = 8

// rowPictures are those of the first rows in which two pins have a figure; ratings are
// left to the table.
func rowPictures(c *compare.Comparison) []*sheet.Picture {
	var out []*sheet.Picture
	for i := range c.Rows {
		if c.Rows[i].Unit.Dimension() == units.Rating || len(out) == mostRows {
			continue
		}
		if p := rowPicture(c, &c.Rows[i]); p != nil {
			out = append(out, p)
		}
	}
	return out
}

// degrees of a curve: where it begins and ends at most, and its steps, in °C.
const (
	coldestDrawn = -50.0
	hottestDrawn = 550.0
	stepDrawn    = 10.0
)

// heatPicture is the tensile strength of the pins over temperature, as far as there are
// figures or curves; nil where no pin has any.
func heatPicture(b *compare.Bench) *sheet.Picture {
	p := &sheet.Picture{Title: "Tensile strength over temperature", X: temperatureUnit(b).Symbol(), Y: b.UnitOf(props.TensileStrength).Symbol()}
	for _, m := range b.Pins {
		s := sheet.Series{Name: m.Name()}
		q := b.Question
		basis, hours := "", 0.0
		for t := 20.0; t <= hottestDrawn; t += stepDrawn {
			q.Service = &t
			f := q.Figure(m, props.TensileStrength)
			if ends := f == nil || basis != "" && (f.Basis.String() != basis || f.Cond.Hours != hours); ends && len(s.Points) > 2 {
				break // a line is of one basis and one time at heat
			} else if ends { // before the curve, or between room temperature and it
				s.Points, basis = nil, ""
			}
			if f == nil {
				continue
			}
			basis, hours = f.Basis.String(), f.Cond.Hours
			lo, mid, hi := f.SI()
			at := temperatureUnit(b).FromSI(units.DegC.ToSI(t))
			s.Points = append(s.Points, fromSI(b.UnitOf(props.TensileStrength), at, lo, mid, hi))
		}
		if len(s.Points) > 2 {
			s.Word = basis
			if hours > 0 {
				s.Word += fmt.Sprintf(", up to %g h", hours)
			}
			s.Word += ", on file to " + trimmed(s.Points[len(s.Points)-1].X) + " " + p.X
			p.Series = append(p.Series, s)
		}
	}
	return lined(p, "the strength left at a temperature, as far as it is on file for one time at heat")
}

// growthPicture is how the pins grow from 20 °C on, as far as that is known; nil where
// no pin has a curve.
func growthPicture(b *compare.Bench) *sheet.Picture {
	p := &sheet.Picture{Title: "Growth from 20 °C (68 °F)", X: temperatureUnit(b).Symbol(), Y: "thousandths of the length"}
	for _, m := range b.Pins {
		g := compare.GrowthOf(m)
		if g == nil {
			continue
		}
		s := sheet.Series{Name: m.Name()}
		for t := coldestDrawn; t <= hottestDrawn; t += stepDrawn {
			lo, mid, hi, err := g.Strain(20, t)
			if err != nil {
				continue
			}
			s.Points = append(s.Points, sheet.Point{X: temperatureUnit(b).FromSI(units.DegC.ToSI(t)), Lo: 1000 * min(lo, hi), Y: 1000 * mid, Hi: 1000 * max(lo, hi)})
		}
		if len(s.Points) > 2 {
			last := s.Points[len(s.Points)-1]
			s.Word = fmt.Sprintf("%.2g at %s %s", last.Y, trimmed(last.X), p.X)
			p.Series = append(p.Series, s)
		}
	}
	return lined(p, "how much longer a length is at a temperature than at 20 °C")
}

// lined gives a picture of lines its words; nil where it has none.
func lined(p *sheet.Picture, what string) *sheet.Picture {
	if len(p.Series) == 0 {
		return nil
	}
	var told []string
	for _, s := range p.Series {
		told = append(told, s.Name+" ("+s.Word+")")
	}
	p.Alt = "Each line is " + what + ": " + strings.Join(told, "; ") + "."
	return p
}

func temperatureUnit(b *compare.Bench) units.Unit {
	return units.Preferred(units.Temperature, b.System)
}

func trimmed(v float64) string { return fmt.Sprintf("%.4g", v) }

// barsPictures are those of sets of bars.
func barsPictures(sets []*bars.Set) []*sheet.Picture {
	var out []*sheet.Picture
	for _, s := range sets {
		sum := s.Summary()
		out = append(out, barsPicture(s, &sum))
	}
	return out
}

// barsPicture is the bars of a set against the published minimum.
func barsPicture(s *bars.Set, sum *bars.Summary) *sheet.Picture {
	p := &sheet.Picture{Title: s.Property.Info().Name + ", " + s.Material.Name(), Y: s.Unit.Symbol()}
	row := func(name, word string, base bool, lo, mid, hi float64) {
		p.Series = append(p.Series, sheet.Series{Name: name, Word: word, Base: base, Points: []sheet.Point{{Lo: lo, Y: mid, Hi: hi}}})
	}
	alt := fmt.Sprintf("%d bars from %s to %s, mean %s", sum.N, s.Quantity(sum.Least, 0).Number(), s.Quantity(sum.Most, 0).Number(), s.Quantity(sum.Mean, 1))
	if limit, ok := s.Minimum(); ok {
		row("specified minimum", limit.String(), true, limit.Lo, limit.Lo, limit.Lo)
		alt += "; the specified minimum is " + limit.String()
	}
	row(fmt.Sprintf("%d bars, least, mean, most", sum.N), s.Quantity(sum.Mean, 1).String(), false, sum.Least, sum.Mean, sum.Most)
	for _, b := range []*bars.Bound{&sum.B, &sum.A} {
		if b.Found() {
			row("bound "+b.Name(), s.Bound(b).String(), false, b.Value, b.Value, b.Value)
			alt += "; the bound " + b.Name() + " is " + s.Bound(b).String()
		}
	}
	p.Alt = alt + "."
	return p
}

// costPicture is the cost of a piece over quantity, with the crossings of the two
// metals of each swap.
func costPicture(results []*swap.Result) *sheet.Picture {
	p := &sheet.Picture{Title: "Cost of a piece over quantity", X: "pieces", Log: true}
	for _, c := range costs(results) {
		s := sheet.Series{Name: c.of.Name()}
		for _, x := range c.curve {
			s.Points = append(s.Points, sheet.Point{X: x.Quantity, Lo: x.Cost.Lo, Y: x.Cost.Mid, Hi: x.Cost.Hi})
		}
		if len(s.Points) == 0 {
			continue
		}
		p.Y = c.piece.Currency + " a piece"
		first, last := s.Points[0], s.Points[len(s.Points)-1]
		s.Word = swap.Money(c.piece, cost.Interval{Lo: first.Lo, Mid: first.Y, Hi: first.Hi}).String() + " at " + cost.Count(first.X) + ", " +
			swap.Money(c.piece, cost.Interval{Lo: last.Lo, Mid: last.Y, Hi: last.Hi}).String() + " at " + cost.Count(last.X)
		p.Series = append(p.Series, s)
	}
	for _, r := range results {
		if r.Today == nil || r.Swapped == nil || len(p.Series) == 0 {
			continue
		}
		crossed := cost.Cross(r.Swapped, r.Today)
		for _, x := range crossed.At {
			points := p.Series[0].Points
			if at := x.Quantity.Mid; at >= points[0].X && at <= points[len(points)-1].X && !math.IsInf(at, 0) && len(p.Marks) < 6 {
				p.Marks = append(p.Marks, sheet.Mark{X: at, Word: r.Pin.Name() + " against " + r.Base.Name() + ": cheaper " + crossed.String()})
			}
		}
	}
	return lined(p, "the cost of a piece where so many are made")
}
