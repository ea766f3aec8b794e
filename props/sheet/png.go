package sheet

import (
	"bytes"
	"image/color"
	"image/png"

	"git.sr.ht/~sbinet/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
)

// pngScale is pixels for a point, enough for print.
const pngScale = 2

// PNG is pictures below each other on white paper.
func PNG(list ...*Picture) ([]byte, error) {
	c := gg.NewContext(drawWidth*pngScale, height(list)*pngScale)
	c.SetColor(color.White)
	c.Clear()
	on := pngPen{Context: c}
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			return nil, err
		}
		if on.faces[i], err = opentype.NewFace(parsed, &opentype.FaceOptions{Size: 11 * pngScale, DPI: 72}); err != nil {
			return nil, err
		}
	}
	for _, p := range list {
		on.text(place{4, 17}, start, true, p.Title)
		p.draw(on)
		on.top += float64(p.height())
	}
	var b bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, c.Image())
	return b.Bytes(), err
}

type pngPen struct {
	*gg.Context
	faces [2]font.Face // regular, bold
	top   float64      // of the picture on the paper, in points
}

// pixels is where a place is: the library scales texts as images, and no line widths.
func (c pngPen) pixels(at place) (x, y float64) { return pngScale * at.x, pngScale * (at.y + c.top) }

func (c pngPen) through(list []place) {
	for _, p := range list {
		c.LineTo(c.pixels(p))
	}
}

func (c pngPen) ink(opacity float64) { c.SetRGBA(0.13, 0.13, 0.13, opacity) }

func (c pngPen) text(at place, from anchor, bold bool, s string) {
	c.SetFontFace(c.faces[0])
	if bold {
		c.SetFontFace(c.faces[1])
	}
	c.ink(1)
	x, y := c.pixels(at)
	c.DrawStringAnchored(Clean(s), x, y, float64(from)/2, 0)
}

func (c pngPen) line(how stroke, through ...place) {
	c.ink(1)
	if how.faint {
		c.ink(0.25)
	}
	c.SetLineWidth(pngScale * how.width)
	var dash []float64
	for _, d := range how.dash {
		dash = append(dash, pngScale*d)
	}
	c.SetDash(dash...)
	c.through(through)
	c.Stroke()
}

func (c pngPen) band(corners ...place) {
	c.ink(0.10)
	c.through(corners)
	c.Fill()
}

func (c pngPen) dot(at place, hollow bool) {
	x, y := c.pixels(at)
	c.DrawCircle(x, y, pngScale*4.5)
	c.ink(1)
	if hollow {
		c.SetColor(color.White)
	}
	c.FillPreserve()
	c.ink(1)
	c.SetLineWidth(pngScale)
	c.SetDash()
	c.Stroke()
}
