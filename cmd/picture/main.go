// Command picture draws the bench for the README: it starts the program on a
// pseudo-terminal and sets every cell of its screen in a PNG.
//
//	go build ./cmd/alongside && go run ./cmd/picture ./alongside cmd/picture/bench.png
package main

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"strings"
	"time"

	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/gomonobold"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// What is shown, and how large: cells of the terminal, pixels of a cell.
const (
	columns, rows         = 92, 28
	cellWidth, cellHeight = 10, 20
	margin                = 12
	fontSize              = 16
)

var shown = []string{"gray-30", "a356-t6-pm", "a380-f-die", "c95400-sand", "--background", "dark"}

var (
	paper = color.RGBA{0x16, 0x1a, 0x1f, 0xff}
	ink   = color.RGBA{0xd8, 0xdc, 0xe0, 0xff}
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "picture needs the program and the name of the PNG")
		os.Exit(2)
	}
	if err := run(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "picture:", err)
		os.Exit(1)
	}
}

func run(program, name string) error {
	screen, err := bench(program)
	if err != nil {
		return err
	}
	pen, err := newPen()
	if err != nil {
		return err
	}
	for y := range rows {
		for x := range columns {
			if cell := screen.CellAt(x, y); cell != nil {
				if err := pen.cell(x, y, cell); err != nil {
					return err
				}
			}
		}
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(f, pen.picture); err != nil {
		return err
	}
	return f.Close()
}

// bench starts the program, waits for its first screen to stand still, and
// ends it.
func bench(program string) (*vt.SafeEmulator, error) {
	screen := vt.NewSafeEmulator(columns, rows)
	cmd := exec.Command(program, shown...)
	cmd.Env = []string{"TERM=xterm-256color", "COLORTERM=truecolor", "LANG=C.UTF-8", "HOME=" + os.TempDir()}
	tty, err := pty.StartWithSize(cmd, &pty.Winsize{Cols: columns, Rows: rows})
	if err != nil {
		return nil, err
	}
	changed := make(chan struct{})
	go func() {
		defer close(changed)
		data := make([]byte, 32<<10)
		for {
			n, err := tty.Read(data)
			if err != nil { // how a pseudo-terminal tells the end
				return
			}
			_, _ = screen.Write(data[:n])
			changed <- struct{}{}
		}
	}()
	go func() { // the emulator blocks until its replies are read
		data := make([]byte, 1024)
		for {
			if _, err := screen.Read(data); err != nil {
				return
			}
		}
	}()
	for still := false; !still; {
		select {
		case _, running := <-changed:
			if !running {
				return nil, fmt.Errorf("%s ended: %w", program, cmd.Wait())
			}
		case <-time.After(time.Second):
			still = true
		}
	}
	if !strings.Contains(screen.String(), "baseline") {
		return nil, fmt.Errorf("no bench on the screen:\n%s", screen)
	}
	_ = cmd.Process.Kill()
	return screen, nil
}

// pen sets cells in the picture.
type pen struct {
	picture *image.RGBA
	glyphs  *sfnt.Font
	faces   [2]font.Face // plain and bold
}

func newPen() (*pen, error) {
	p := &pen{picture: image.NewRGBA(image.Rect(0, 0, columns*cellWidth+2*margin, rows*cellHeight+2*margin))}
	draw.Draw(p.picture, p.picture.Bounds(), image.NewUniform(paper), image.Point{}, draw.Src)
	for i, ttf := range [][]byte{gomono.TTF, gomonobold.TTF} {
		f, err := opentype.Parse(ttf)
		if err != nil {
			return nil, err
		}
		if p.faces[i], err = opentype.NewFace(f, &opentype.FaceOptions{Size: fontSize, DPI: 72, Hinting: font.HintingFull}); err != nil {
			return nil, err
		}
		p.glyphs = f
	}
	return p, nil
}

func (p *pen) cell(x, y int, c *uv.Cell) error {
	front, back := color.Color(ink), color.Color(paper)
	if c.Style.Fg != nil {
		front = c.Style.Fg
	}
	if c.Style.Bg != nil {
		back = c.Style.Bg
	}
	if c.Style.Attrs&uv.AttrReverse != 0 {
		front, back = back, front
	}
	if c.Style.Attrs&uv.AttrFaint != 0 {
		front = between(front, back)
	}
	box := image.Rect(0, 0, cellWidth, cellHeight).Add(image.Pt(margin+x*cellWidth, margin+y*cellHeight))
	draw.Draw(p.picture, box, image.NewUniform(back), image.Point{}, draw.Src)
	for _, r := range c.Content {
		if stroke := strokes[r]; stroke != nil {
			p.stroke(box, front, stroke)
			continue
		}
		if i, err := p.glyphs.GlyphIndex(nil, r); err != nil || i == 0 {
			return fmt.Errorf("the font has no %q (%U)", r, r)
		}
		face := p.faces[0]
		if c.Style.Attrs&uv.AttrBold != 0 {
			face = p.faces[1]
		}
		d := font.Drawer{Dst: p.picture, Src: image.NewUniform(front), Face: face, Dot: fixed.P(box.Min.X, box.Min.Y+fontSize-1)}
		d.DrawString(string(r))
	}
	return nil
}

// strokes draw the signs that the font has not: points on a line, in pixels of
// the cell; a negative one lifts the pen.
var strokes = map[rune][]image.Point{
	'✓': {{1, 11}, {4, 15}, {9, 5}},
	'✗': {{1, 6}, {8, 15}, {-1, -1}, {8, 6}, {1, 15}},
}

func (p *pen) stroke(box image.Rectangle, c color.Color, points []image.Point) {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if a.X < 0 || b.X < 0 {
			continue
		}
		const steps = 20
		for s := range steps + 1 {
			at := box.Min.Add(a.Mul(steps - s).Add(b.Mul(s)).Div(steps))
			draw.Draw(p.picture, image.Rectangle{at, at.Add(image.Pt(2, 2))}.Intersect(box), image.NewUniform(c), image.Point{}, draw.Src)
		}
	}
}

// between is the color halfway from one to another.
func between(a, b color.Color) color.Color {
	r, g, bl, _ := a.RGBA()
	r2, g2, b2, _ := b.RGBA()
	return color.RGBA64{uint16((r + r2) / 2), uint16((g + g2) / 2), uint16((bl + b2) / 2), 0xffff}
}
