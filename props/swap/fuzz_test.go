package swap

import (
	"math"
	"testing"
	"unicode/utf8"

	"alongside/props/compare"
	"alongside/props/part"
)

// Nothing that can be typed makes Set panic, and what it takes can be read
// back and worked with.
func FuzzSet(f *testing.F) {
	for _, field := range part.Fields() {
		info := field.Info()
		f.Add(uint8(field), info.Example)
		for _, w := range info.Words {
			f.Add(uint8(field), w)
		}
	}
	for _, s := range []string{"", "-3 lb", "0 lb", "NaN lb", "1e60 lb", "1e-60 in", "4-5 lb", "about 4 lb", "> 4 lb", "250 F", "-40..250 F",
		"-500..20 F", "gray-30=", "gray-30=2.4-2.8 €/kg", "=1/lb", "gray-30=$-1/lb", "gray-30=1/ksi", "gray-30=1 per lb", "\x00", "\xff", "￼1/lb"} {
		for _, field := range part.Fields() {
			f.Add(uint8(field), s)
		}
	}
	c := problems(f)
	base, pin := c.Material("als-356"), c.Material("mse-gray")
	f.Fuzz(func(t *testing.T, field uint8, typed string) {
		p := part.Part{Mass: "1 kg"}
		at := part.Field(field)
		before := p.Clone()
		err := p.Set(c, at, typed)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			if int(at) < len(part.Fields()) && p.Get(at) != before.Get(at) {
				t.Errorf("%q was refused and changed the part all the same", typed)
			}
			return
		}
		text := p.Get(at)
		if !utf8.ValidString(text) {
			t.Errorf("%q keeps a broken text %q", typed, text)
		}
		again := p.Clone()
		if at != part.FieldPrice {
			if err := again.Set(c, at, text); err != nil || again.Get(at) != text {
				t.Errorf("%q became %q, which reads as %q: %v", typed, text, again.Get(at), err)
			}
		}
		g, err := p.Read(c)
		if err != nil {
			t.Fatalf("Set took %q, Read does not: %v", typed, err)
		}
		b := compare.NewBench()
		r := Work(&b, g, base, pin)
		r.Worth()
		for i := range r.Lines {
			for word, v := range values(&r.Lines[i]) {
				if !(v.Lo <= v.Mid && v.Mid <= v.Hi) || math.IsInf(v.Lo, 0) || math.IsInf(v.Hi, 0) {
					t.Errorf("%q: %s %s is %v..%v..%v", typed, r.Lines[i].ID, word, v.Lo, v.Mid, v.Hi)
				}
				_ = v.String()
			}
		}
	})
}
