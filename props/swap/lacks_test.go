package swap_test

import (
	"testing"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/swap"
)

// Every line that waits for something of the part names its field, and waits
// for something else, or for nothing, once that field is filled.
func TestLacks(t *testing.T) {
	c := data.Catalog()
	b := compare.NewBench()
	for _, id := range []string{"gray-30", "a356-t6-pm"} {
		m, err := c.Resolve(id)
		if err != nil {
			t.Fatal(err)
		}
		b.Pin(m)
	}
	var p part.Part
	needs := 0
	for round := 0; round < 40; round++ {
		given, err := p.Read(c)
		if err != nil {
			t.Fatal(err)
		}
		r := swap.Work(&b, given, b.Pins[0], b.Pins[1])
		var lacks *swap.Line
		for i := range r.Lines {
			if l := &r.Lines[i]; l.Need != "" {
				if _, ok := l.Lacks(); !ok {
					t.Fatalf("%s %s: no field", l.ID, l.Need)
				}
				lacks = l
			}
		}
		if lacks == nil {
			if needs < 8 {
				t.Errorf("only %d things were asked for", needs)
			}
			return
		}
		needs++
		f, _ := lacks.Lacks()
		typed := f.Info().Example
		if f == part.FieldPrice {
			typed = b.Pins[1].ID + "=1.20/lb"
		}
		if err := p.Set(c, f, typed); err != nil {
			t.Fatal(err)
		}
		if again, _ := p.Read(c); true {
			l := swap.Work(&b, again, b.Pins[0], b.Pins[1]).Line(lacks.ID)
			if l != nil {
				if next, ok := l.Lacks(); ok && next == f {
					t.Fatalf("%s still waits for %s, now %q", l.ID, f, typed)
				}
			}
		}
	}
	t.Error("the part is never complete")
}
