package swap

import (
	"math"
	"testing"
	"unicode/utf8"

	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/part"
)

var typedTexts = []string{"", "-3 lb", "0 lb", "NaN lb", "1e60 lb", "1e-60 in", "4-5 lb", "about 4 lb", "> 4 lb", "250 F", "-40..250 F",
	"-500..20 F", "gray-30=", "gray-30=2.4-2.8 €/kg", "=1/lb", "gray-30=$-1/lb", "gray-30=1/ksi", "gray-30=1 per lb", "\x00", "\xff", "￼1/lb"}

// Every text of a field, and texts that suit none, in every field.
func TestSet(t *testing.T) {
	c := problems(t)
	for _, field := range part.Fields() {
		info := field.Info()
		for _, typed := range append(append([]string{info.Example}, info.Words...), typedTexts...) {
			checkSet(t, c, uint8(field), typed)
		}
	}
}

func FuzzSet(f *testing.F) {
	fields := part.Fields()
	for i, typed := range typedTexts {
		f.Add(uint8(fields[i%len(fields)]), typed)
	}
	for _, field := range fields {
		f.Add(uint8(field), field.Info().Example)
	}
	c := problems(f)
	f.Fuzz(func(t *testing.T, field uint8, typed string) { checkSet(t, c, field, typed) })
}

// checkSet checks that nothing that can be typed makes Set panic, and that what it
// takes can be read back and worked with.
func checkSet(t *testing.T, c *catalog.Catalog, field uint8, typed string) {
	base, pin := c.Material("als-356"), c.Material("mse-gray")
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
}
