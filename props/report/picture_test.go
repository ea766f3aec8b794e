package report

import (
	"math"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/sheet"
)

// Over the catalog against gray iron: a picture holds the figures of the table, each
// inside its range, hollow and "unlike" where the judge says so, and never else.
func TestPicturesOfTheCatalog(t *testing.T) {
	c := data.Catalog()
	iron, drawn := c.Material("gray-30"), 0
	for _, m := range c.Materials {
		b := compare.NewBench()
		b.Pin(iron)
		if b.Pin(m) == 0 {
			continue
		}
		worked := compare.Compare(b)
		for i := range worked.Rows {
			row := &worked.Rows[i]
			p := rowPicture(worked, row)
			if p == nil {
				continue
			}
			drawn++
			sound(t, m.ID, p)
			for _, s := range p.Series {
				for j := range row.Cells {
					if in := &row.Cells[j]; in.Material.Name() == s.Name && !s.Base {
						unlike := in.Verdict == compare.Unlike
						if s.Faint != unlike || strings.Contains(s.Word, "unlike") != unlike {
							t.Errorf("%s, %s: %s is drawn %v, %q", m.ID, row.Property, in.Verdict, s.Faint, s.Word)
						}
					}
				}
			}
		}
		for _, p := range drawable(heatPicture(&b), growthPicture(&b)) {
			drawn++
			sound(t, m.ID, p)
		}
	}
	if drawn < 5000 {
		t.Errorf("only %d pictures were drawn", drawn)
	}
}

// sound checks that a picture has words for all that it draws and finite points inside
// their ranges, from left to right.
func sound(t *testing.T, of string, p *sheet.Picture) {
	t.Helper()
	if p.Title == "" || p.Alt == "" || p.Y == "" && p.X != "" {
		t.Errorf("%s: %q lacks words", of, p.Title)
	}
	for _, s := range p.Series {
		if s.Name == "" || s.Word == "" {
			t.Errorf("%s, %s: a series without words: %+v", of, p.Title, s)
		}
		last := math.Inf(-1)
		for _, q := range s.Points {
			if !(q.Lo <= q.Y && q.Y <= q.Hi) || math.IsInf(q.Lo, 0) || math.IsInf(q.Hi, 0) || p.X != "" && q.X <= last {
				t.Errorf("%s, %s of %s: %+v", of, p.Title, s.Name, q)
			}
			last = q.X
		}
	}
}

func TestPictureDoc(t *testing.T) {
	c := data.Catalog()
	b := compare.NewBench()
	for _, id := range []string{"a380-f-die", "319-f-sand", "356-t6-sand"} {
		b.Pin(c.Material(id))
	}
	for what, want := range map[string][]string{
		"tensile":   {"TENSILE STRENGTH", "● ", "TENSILE STRENGTH OVER TEMPERATURE", "S1 ", "licensed engineer"},
		"expansion": {"THERMAL EXPANSION", "GROWTH FROM 20 °C (68 °F)", "356.0-T6 sand"},
		"growth":    {"GROWTH FROM 20 °C (68 °F)"},
	} {
		d, err := PictureDoc(b, what)
		if err != nil {
			t.Fatal(err)
		}
		text, _ := d.Render("text", 80)
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: no %q in\n%s", what, w, text)
			}
		}
		if svg, err := d.Picture("svg"); err != nil || !strings.HasPrefix(string(svg), "<svg ") {
			t.Errorf("%s: %v", what, err)
		}
		if page, _ := d.Render("html", 80); !strings.Contains(page, "<svg ") {
			t.Errorf("%s: no drawing in HTML", what)
		}
	}
	// Minimums only: the die casting has none to compare with.
	b.Basis = compare.MinimumOnly
	d, err := PictureDoc(b, "tensile")
	if err != nil {
		t.Fatal(err)
	}
	if text, _ := d.Render("text", 80); !strings.Contains(text, "○") || !strings.Contains(text, "unlike") {
		t.Errorf("what must not be compared looks alike:\n%s", text)
	}
	for what, want := range map[string]string{"xyzzy": "heat, growth", "torsional strength": "too few figures"} {
		if _, err := PictureDoc(b, what); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if _, err := ListDoc([]*props.Material{c.Material("gray-30")}, 0).Picture("png"); err == nil {
		t.Error("a list has a picture")
	}
}
