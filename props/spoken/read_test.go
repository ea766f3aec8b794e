package spoken_test

import (
	"os"
	"strings"
	"testing"

	"alongside/data"
	"alongside/props/catalog"
	"alongside/props/part"
	"alongside/props/spoken"
	"alongside/units"

	"pgregory.net/rapid"
)

// sentence is a text of testdata/spoken.txt with what it must become.
type sentence struct {
	text string
	want []string
	line int
}

func spokenTexts(t testing.TB) []sentence {
	t.Helper()
	content, err := os.ReadFile("testdata/spoken.txt")
	if err != nil {
		t.Fatal(err)
	}
	var list []sentence
	for i, line := range strings.Split(string(content), "\n") {
		switch {
		case line == "" || line[0] == '#':
		case strings.HasPrefix(line, "> "):
			if n := len(list); n > 0 && list[n-1].want == nil {
				list[n-1].text += "\n" + line[2:]
				continue
			}
			list = append(list, sentence{text: line[2:], line: i + 1})
		default:
			list[len(list)-1].want = append(list[len(list)-1].want, line)
		}
	}
	return list
}

// have writes what was read in the form of the list.
func have(s spoken.Said) []string {
	var out []string
	with := -1
	for _, p := range s.Pieces {
		switch {
		case p.Err != nil && p.Err.Choices != nil:
			out = append(out, "? "+p.Text+" | "+strings.Join(p.Err.Choices, " | "))
		case p.Err != nil:
			out = append(out, "- "+p.Text+" | "+p.Err.Reason())
		case p.Said != nil && p.Said.Field == part.FieldWith:
			if with >= 0 {
				out[with] += ", " + p.Said.Text
				continue
			}
			with = len(out)
			out = append(out, "@ with = "+p.Said.Text)
		case p.Said != nil:
			out = append(out, "@ "+p.Said.Field.String()+" = "+p.Said.Text)
		case p.Today != nil:
			out = append(out, "! "+p.Today.ID)
		case p.ReadAs != "":
			out = append(out, "~ "+p.Need.String())
		default:
			out = append(out, "= "+p.Need.String())
		}
	}
	return out
}

// as reports whether what was read is what the list says: word for word, but that
// a size is one quantity however it is spelled, a reason holds the words given, and
// the fields of the part may come in another order than the needs.
func as(have, want string) bool {
	switch want[0] {
	case '-':
		text, reason, _ := strings.Cut(want, " | ")
		got, why, _ := strings.Cut(have, " | ")
		return got == text && strings.Contains(why, reason)
	case '@':
		field, size, _ := strings.Cut(want, " = ")
		if got, ok := strings.CutPrefix(have, field+" = "); ok && size != got {
			a, err1 := units.Parse(size)
			b, err2 := units.Parse(got)
			return err1 == nil && err2 == nil && a.Unit.Dimension() == b.Unit.Dimension() && a.Unit.ToSI(a.Lo) == b.Unit.ToSI(b.Lo) && a.Unit.ToSI(a.Hi) == b.Unit.ToSI(b.Hi)
		}
	}
	return have == want
}

func same(have, want []string) bool {
	rest := append([]string{}, have...)
	for _, w := range want {
		found := false
		for i, h := range rest {
			if as(h, w) {
				rest, found = append(rest[:i], rest[i+1:]...), true
				break
			}
		}
		if !found {
			return false
		}
	}
	return len(rest) == 0
}

func TestSpoken(t *testing.T) {
	c := data.Catalog()
	for _, s := range spokenTexts(t) {
		if got := have(spoken.Read(s.text, c, units.US, nil)); !same(got, s.want) {
			t.Errorf("spoken.txt:%d: %q\nhave\t%s\nwant\t%s", s.line, s.text, strings.Join(got, "\n\t"), strings.Join(s.want, "\n\t"))
		}
	}
}

// What a need prints, and the text kept of it, read back as the same need.
func TestReadTwice(t *testing.T) {
	c := data.Catalog()
	for _, s := range spokenTexts(t) {
		said := spoken.Read(s.text, c, units.US, nil)
		for _, n := range said.Needs() {
			for _, system := range []units.System{units.US, units.SI} {
				back := spoken.Read(n.String(), c, system, nil)
				if list := back.Needs(); len(list) != 1 || list[0].String() != n.String() || len(back.Pieces) != 1 {
					t.Errorf("spoken.txt:%d: %q reads back as %q", s.line, n.String(), have(back))
				}
				again := spoken.Read(n.Text, c, system, nil)
				if list := again.Needs(); len(list) == 0 || list[0].String() != n.String() {
					t.Errorf("spoken.txt:%d: the text %q kept for editing reads back as %q", s.line, n.Text, have(again))
				}
			}
		}
		// Each reading that is offered is read in that one way.
		for _, p := range said.Refused() {
			for _, choice := range p.Err.Choices {
				back := spoken.Read(choice, c, units.SI, nil)
				if len(back.Refused()) > 0 || len(back.Pieces) > 2 {
					t.Errorf("spoken.txt:%d: the choice %q reads as %q", s.line, choice, have(back))
				}
			}
		}
	}
}

// checkRead fails where a text is passed over in silence, where a piece is not one
// thing, where a need does not read back, or where the part refuses what was taken.
func checkRead(t interface{ Fatalf(string, ...any) }, c *catalog.Catalog, text string) {
	said := spoken.Read(text, c, units.US, nil)
	if len(said.Pieces) == 0 && strings.TrimSpace(text) != "" {
		t.Fatalf("%q: nothing was read, and nothing was said of it", text)
	}
	for _, p := range said.Pieces {
		things := 0
		for _, is := range []bool{p.Need != nil, p.Said != nil, p.Today != nil, p.Err != nil} {
			if is {
				things++
			}
		}
		if things != 1 || p.Text == "" {
			t.Fatalf("%q: the piece %q is %d things", text, p.Text, things)
		}
		if p.Need == nil {
			continue
		}
		back := spoken.Read(p.Need.String(), c, units.US, nil)
		if list := back.Needs(); len(list) != 1 || list[0].String() != p.Need.String() {
			t.Fatalf("%q became %q, which reads back as %q", text, p.Need.String(), have(back))
		}
	}
	// What is measured against today's metal is so wherever that is known from.
	if m := said.Today(); m != nil {
		if again := spoken.Read(text, c, units.US, m); !same(have(again), have(said)) {
			t.Fatalf("%q became %q, and %q where the metal was known before", text, have(said), have(again))
		}
	}
	var p part.Part
	if err := said.Tell(&p, c); err != nil {
		t.Fatalf("%q: what was taken for the part is refused by it: %v", text, err)
	}
}

func FuzzRead(f *testing.F) {
	for i, s := range spokenTexts(f) {
		if i%25 == 0 { // all of them are read by other tests
			f.Add(s.text)
		}
	}
	c := data.Catalog()
	f.Fuzz(func(t *testing.T, text string) { checkRead(t, c, text) })
}

// Words of the list in any order.
func TestAnyWords(t *testing.T) {
	c := data.Catalog()
	var words []string
	for _, s := range spokenTexts(t) {
		words = append(words, strings.Fields(s.text)...)
	}
	rapid.Check(t, func(t *rapid.T) {
		checkRead(t, c, strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 1, 9).Draw(t, "words"), " "))
	})
}

func BenchmarkRead(b *testing.B) {
	c := data.Catalog()
	spoken.Read("12", c, units.US, nil)
	for b.Loop() {
		spoken.Read("yield at least 20 ksi, elongation 3 %, at least 35 %IACS, under 0.11 lb/in3, permanent mold, 4.2 lb, 3/8 wall, plate, -40 to 250 F", c, units.US, nil)
	}
}
