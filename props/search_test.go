package props

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

func TestResolve(t *testing.T) {
	c := shop(t)
	for _, tt := range []struct{ typed, want string }{
		{"x1-f-sand", "x1-f-sand"},
		{"X1-F-SAND", "x1-f-sand"},
		{"x1fsand", "x1-f-sand"},
		{"X1.0-T6 permanent mold", "x1-t6-pm"},
		{"X1.0 T6 pm", "x1-t6-pm"},
		{"x1t6pm", "x1-t6-pm"},
		{"sand T6 x1", "x1-t6-sand"},
		{"x2", "x2-f-die"},
		{"x2 die", "x2-f-die"},
		{"class 30", "gray-30"},
		{"Class-30", "gray-30"},
		{"AC-49990 T6 pm", "x1-t6-pm"},
		{"A0X010 F", "x1-f-sand"},
		{"x1", "several: x1-f-sand x1-t6-sand x1-t6-pm"},
		{"x1 t6", "several: x1-t6-sand x1-t6-pm"},
		{"gray-3o", "nearest: gray-30"},
		{"x1 t6 dye", "nearest: x1-t6"},
		{"zzzzzz", "nearest:"},
		{"", "nearest: x1-f-sand"},
		{"\x00\xff", "nearest:"},
	} {
		m, err := c.Resolve(tt.typed)
		var have string
		var nf *NotFound
		switch {
		case err == nil:
			have = m.ID
		case errors.As(err, &nf):
			have = "nearest:"
			if nf.Several {
				have = "several:"
			}
			for _, m := range nf.Nearest {
				have += " " + m.ID
			}
		}
		if have != tt.want && !(strings.HasPrefix(tt.want, "nearest: ") && strings.HasPrefix(have, tt.want)) {
			t.Errorf("%q: have %s, want %s", tt.typed, have, tt.want)
		}
	}
}

// Every material must be found by its own id, its name, and its name without
// punctuation.
func TestEveryMaterialIsFound(t *testing.T) {
	c := shop(t)
	for _, m := range c.Materials {
		for _, typed := range []string{m.ID, strings.ToUpper(m.ID), strings.ReplaceAll(m.ID, "-", ""), strings.ReplaceAll(m.ID, "-", " "), m.Name()} {
			if have, err := c.Resolve(typed); have != m {
				t.Errorf("%q: have %v, %v, want %s", typed, have, err, m.ID)
			}
		}
	}
}

func FuzzSearch(f *testing.F) {
	c := shop(f)
	for _, s := range []string{"x1 t6", "AC-49990", "", "°", "x1.0.0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		for _, h := range c.Search(typed) {
			if h.Material == nil {
				t.Fatal("hit without a material")
			}
		}
		if _, err := c.Resolve(typed); err != nil && err.Error() == "" {
			t.Fatal("an error without words")
		}
	})
}

// generated is an invented catalog of n materials for measurements.
func generated(b testing.TB, n int) *Catalog {
	var s strings.Builder
	s.WriteString("[[source]]\nid = \"S\"\ntitle = \"Invented\"\nkind = \"none\"\n[[family]]\nid = \"aluminum\"\nname = \"aluminum casting alloy\"\nwords = [\"aluminum\", \"aluminium\"]\n")
	for i := range n / 10 {
		fmt.Fprintf(&s, "[[alloy]]\nid = \"x%d\"\nname = \"X%d.0\"\nfamily = \"aluminum\"\naliases = [\"EN 1706: EN AC-%d (near)\"]\n", i, i, 40000+i)
		for j := range 10 {
			fmt.Fprintf(&s, "[[alloy.material]]\ntemper = \"T%d\"\nprocess = \"%s\"\n", j/2, []string{"sand", "pm"}[j%2])
		}
	}
	c, err := Load(fstest.MapFS{"g.toml": {Data: []byte(s.String())}})
	if err != nil {
		b.Fatal(err)
	}
	return c
}

func BenchmarkSearch100k(b *testing.B) {
	c := generated(b, 100_000)
	c.Search("x")
	for _, q := range []string{"x", "x12", "x1234 t3 pm", "ac-4567", "zqx12 t6"} {
		b.Run(strings.ReplaceAll(q, " ", "_"), func(b *testing.B) {
			for b.Loop() {
				c.Search(q)
			}
		})
	}
}
