package sheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"image/png"
	"io"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"pgregory.net/rapid"
)

var rowsDrawn = &Picture{Title: "Tensile strength", Y: "ksi", Alt: "Each dot is one metal.", Series: []Series{
	{Name: "Old", Word: "31 baseline", Base: true, Points: []Point{{0, 30.5, 31, 31.5}}},
	{Name: "New", Word: "35–47 beats", Points: []Point{{0, 35, 41, 47}}},
	{Name: "Other", Word: "23 min unlike", Faint: true, Points: []Point{{0, 23, 23, 23}}},
}}

var linesDrawn = &Picture{Title: "Cost", X: "pieces", Y: "$ a piece", Log: true, Alt: "Each line is one metal.", Series: []Series{
	{Name: "Old", Word: "cheap at first", Points: []Point{{100, 70, 75, 80}, {1000, 24, 25, 26}, {10000, 19, 20, 21}}},
	{Name: "New", Points: []Point{{100, 250, 260, 270}, {1000, 43, 44, 45}, {10000, 15, 16, 17}}},
}, Marks: []Mark{{3000, "the costs cross at 3,000 pieces"}}}

func TestPictureInCharacters(t *testing.T) {
	have := (&Doc{Blocks: []Block{rowsDrawn}}).Text(50)
	if want := `TENSILE STRENGTH
Old              ●                   31 baseline
New              │   ├────●────┤     35–47 beats
Other     ○      │                   23 min unlike
       20                    50 ksi
Each dot is one metal.
`; have != want {
		t.Errorf("have\n%s\nwant\n%s", have, want)
	}
	have = (&Doc{Blocks: []Block{linesDrawn}}).Text(50)
	for _, part := range []string{"1000 │", " 10 │", "+", "·", "100  ", "10,000 pieces", "A  Old: cheap at first", "B  New\n", "·  the costs cross at 3,000 pieces"} {
		if !strings.Contains(have, part) {
			t.Errorf("no %q in\n%s", part, have)
		}
	}
}

// A drawing is XML without anything that runs or is fetched; its title says what is to
// be read; every series has its word.
func TestPictureAsSVG(t *testing.T) {
	hostile := &Picture{Title: "<script>alert(1)</script>", Y: "a & b", Alt: "\x1b[31m\"x\"", Series: []Series{{Name: "</svg>", Word: "]]>", Points: []Point{{0, 1, 2, 3}}}, {Name: "b", Points: []Point{{0, 2, 2, 2}}}}}
	text := SVG(rowsDrawn, linesDrawn, hostile, &Picture{Title: "nothing"})
	for in := xml.NewDecoder(strings.NewReader(text)); ; {
		if _, err := in.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{`role="img"`, "<title>Tensile strength. Each dot is one metal.", ">Old</text>", "31 baseline", "23 min unlike", "the costs cross", "A  Old: cheap at first", "nothing to draw"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if strings.Contains(text, "<script") || strings.Contains(text, "\x1b") || strings.Contains(text, "href") {
		t.Error("what is drawn became markup")
	}
	if n := strings.Count(text, `fill="#fff"`); n != 1 {
		t.Errorf("%d hollow dots, want that of the unlike one", n)
	}
}

// places is a pen that keeps where something is drawn.
type places []place

func (p *places) text(at place, _ anchor, _ bool, _ string) { *p = append(*p, at) }
func (p *places) line(_ stroke, through ...place)           { *p = append(*p, through...) }
func (p *places) band(corners ...place)                     { *p = append(*p, corners...) }
func (p *places) dot(at place, _ bool)                      { *p = append(*p, at) }

// Whatever is drawn, every point stands inside the frame, and lines of text fit.
func TestPictureStaysInside(t *testing.T) {
	value := rapid.Float64Range(1e-3, 1e6)
	rapid.Check(t, func(t *rapid.T) {
		p := &Picture{Title: "x", Y: "u", Alt: "words", Log: rapid.Bool().Draw(t, "log")}
		if rapid.Bool().Draw(t, "lines") {
			p.X = "n"
		}
		for range rapid.IntRange(1, 5).Draw(t, "series") {
			s := Series{Name: rapid.String().Draw(t, "name"), Word: rapid.String().Draw(t, "word")}
			for i := range rapid.IntRange(1, 4).Draw(t, "points") {
				y := value.Draw(t, "y")
				s.Points = append(s.Points, Point{float64(i) + 1, y / 2, y, y * 2})
			}
			p.Series = append(p.Series, s)
		}
		width := rapid.IntRange(40, 160).Draw(t, "width")
		for _, l := range strings.Split((&Doc{Blocks: []Block{p}}).Text(width), "\n") {
			if Width(l) > width {
				t.Fatalf("a line of %d in %d: %q", Width(l), width, l)
			}
		}
		var drawn places
		p.draw(&drawn)
		for _, at := range drawn {
			if !(at.x >= 0 && at.x <= drawWidth && at.y >= 0 && at.y <= float64(p.height())) {
				t.Fatalf("at %v", at)
			}
		}
	})
}

// The same drawing in pixels: black where a dot stands, white where an unlike one does,
// and where nothing is drawn.
func TestPictureAsPNG(t *testing.T) {
	data, err := PNG(linesDrawn, rowsDrawn, &Picture{Title: "nothing"})
	if err != nil {
		t.Fatal(err)
	}
	drawn, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if want := image.Rect(0, 0, 1320, 2*(linesDrawn.height()+rowsDrawn.height()+drawHead+drawBottom)); drawn.Bounds() != want {
		t.Errorf("%v, want %v", drawn.Bounds(), want)
	}
	_, y := rowsDrawn.axes()
	for i, want := range []bool{true, true, false} {
		across := 2 * (drawName + y.at(rowsDrawn.Series[i].Points[0].Y)*(drawWidth-drawWord-drawName))
		down := 2 * (linesDrawn.height() + drawHead + i*drawRow + drawRow/2)
		if r, _, _, _ := drawn.At(int(across), down).RGBA(); (r < 0x8000) != want {
			t.Errorf("the dot of row %d is at %v, filled: %v", i+1, across, r < 0x8000)
		}
	}
	if r, _, _, _ := drawn.At(1310, 10).RGBA(); r != 0xffff {
		t.Error("the paper is not white")
	}
}

// The font has every sign that figures and names are written with.
func TestPictureFont(t *testing.T) {
	f, err := opentype.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range "–—−×·°µ²³₂≥≤<>±√½*%$()/'\"…" {
		if i, err := f.GlyphIndex(nil, r); i == 0 || err != nil {
			t.Errorf("no %c: %v", r, err)
		}
	}
}
