package main

import (
	"image/png"
	"os"
	"testing"

	uv "github.com/charmbracelet/ultraviolet"
)

// The picture in the README is one that this program draws.
func TestPictureHasTheSizeOfTheScreen(t *testing.T) {
	f, err := os.Open("bench.png")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	p, err := newPen()
	if err != nil {
		t.Fatal(err)
	}
	if have, want := picture.Bounds(), p.picture.Bounds(); have != want {
		t.Errorf("bench.png is %v, drawn it would be %v", have, want)
	}
}

// A sign is drawn, or the program says that it cannot be.
func TestSigns(t *testing.T) {
	p, err := newPen()
	if err != nil {
		t.Fatal(err)
	}
	for _, sign := range "✓✗≠≈±↑↓–─│°µ·³'" {
		before := append([]byte(nil), p.picture.Pix...)
		if err := p.cell(1, 1, &uv.Cell{Content: string(sign)}); err != nil {
			t.Error(err)
		}
		if string(before) == string(p.picture.Pix) {
			t.Errorf("%q leaves no mark", sign)
		}
		if err := p.cell(1, 1, &uv.Cell{Content: " "}); err != nil {
			t.Error(err)
		}
	}
	if p.cell(1, 1, &uv.Cell{Content: "界"}) == nil {
		t.Error("a sign that the font has not is passed over")
	}
}
