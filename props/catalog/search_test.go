package catalog

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"alongside/props/spelling"
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
		{"x1", "several: x1-f-sand x1-t6-pm x1-t6-sand"},
		{"x1 t6", "several: x1-t6-pm x1-t6-sand"},
		{"gray-3o", "nearest: gray-30"},
		{"x1 t6 dye", "nearest: x1-t6"},
		{"x1-t6-die", "nearest: x1-t6"},
		{"x1 t6 gravity die", "x1-t6-pm"},
		{"UNS A0X010 F sand", "x1-f-sand"},
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

// A designation is found with the standard that issues it before it; an alias
// of the nearest equivalent only comes after one that is the same metal.
func TestSearchByStandard(t *testing.T) {
	alloy := func(id, name, family, alias, rest string) string {
		return fmt.Sprintf("[[alloy]]\nid = %q\nname = %q\nfamily = %q\naliases = [%s]\n[[alloy.material]]\n%s\n", id, name, family, alias, rest)
	}
	c, err := Load(fstest.MapFS{"g.toml": {Data: []byte(`[[family]]
id = "iron"
name = "gray iron"
words = ["grey iron", "cast iron"]
[[family]]
id = "light"
name = "aluminum"
` +
		alloy("near", "N1", "light", `"EN 1706: EN AC-42100 (near)"`, `process = "sand"`) +
		alloy("701", "701.0", "light", `"former SAE: 700"`, `process = "die"`) +
		alloy("a700", "A700.0", "light", `"former SAE: 309"`, `process = "die"`) +
		alloy("b810", "B810.0", "light", `"former SAE: 312"`, `process = "die"`) +
		alloy("2700", "2700", "light", `"former SAE: 310"`, `process = "die"`) +
		alloy("700", "700.0", "light", `"former SAE: 311"`, `process = "die"`) +
		alloy("same", "N2", "light", `"EN 1706: EN AC-42100"`, `process = "sand"`) +
		alloy("n3", "N3", "light", `"JIS H5202: AC4CH (near)"`, "temper = \"T6\"\nprocess = \"sand\"") +
		alloy("class-30", "Class 30", "iron", `"ASTM A48: class 30", "ASTM A48: class 30B", "ASTM A48: No. 30 B"`, `id = "class-30"`) +
		alloy("65-45-12", "65-45-12", "iron", `"ASTM A536: 65-45-12", "SAE J434: D4512"`, `id = "nodular"`))}})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		typed, first string
		exact        int
	}{
		{"A536 65-45-12", "nodular", 1},
		{"ASTM A536 65-45-12", "nodular", 1},
		{"astm-a536 654512", "nodular", 1},
		{"SAE J434 D4512", "nodular", 1},
		{"A48 class 30", "class-30", 1},
		{"A48 class 30B", "class-30", 1},
		{"ASTM A48 no. 30b", "class-30", 1},
		{"gray iron class 30", "class-30", 1},
		{"grey iron A48", "class-30", 0},
		{"A48", "class-30", 0},
		{"EN AC-42100", "same-sand", 1},
		{"EN 1706 AC-42100", "same-sand", 1},
		{"42100 sand", "near-sand", 0},
		{"AC4CH T6", "n3-t6-sand", 1},
		{"ac4cht6", "n3-t6-sand", 0},
		{"65-45-13", "nodular", 0},
	} {
		hits, exact, _ := c.find(tt.typed)
		if len(hits) == 0 || hits[0].Material.ID != tt.first || exact != tt.exact {
			t.Errorf("%q: have %v, %d exact; want %s first, %d exact", tt.typed, hits, exact, tt.first, tt.exact)
		}
	}
	// A variant goes before another system's alias, and is never exact.
	for typed, want := range map[string]string{"700": "700-die a700-die 701-die 2700-die", "a700": "a700-die"} {
		var have []string
		for _, h := range c.Search(typed) {
			have = append(have, h.Material.ID)
		}
		if s := strings.Join(have, " "); s != want {
			t.Errorf("%q: have %s, want %s", typed, s, want)
		}
	}
	if m, err := c.Resolve("810"); err == nil {
		t.Errorf("810: have %s", m.ID)
	}
	if hits, _, _ := c.find("AC-42100"); len(hits) != 2 || hits[1].Material.ID != "near-sand" {
		t.Errorf("AC-42100: have %v, want the near equivalent last", hits)
	}
}

// A mistyped word is not passed off as found.
func TestSearchNear(t *testing.T) {
	c := shop(t)
	for typed, want := range map[string]string{"x1 t6": "", "clas 30": "", "klass 30": "class 30", "x1 t6 dye": "x1 t6 die", "": ""} {
		if _, have := c.SearchNear(typed); have != want {
			t.Errorf("%q: read as %q, want %q", typed, have, want)
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

// The edit distance is held against the plain form of its recurrence.
func TestEdits(t *testing.T) {
	plain := func(a, b string) int {
		d := make([][]int, len(a)+1)
		for i := range d {
			d[i] = make([]int, len(b)+1)
			for j := range d[i] {
				if d[i][j] = max(i, j); min(i, j) == 0 {
					continue
				}
				cost := 1
				if a[i-1] == b[j-1] {
					cost = 0
				}
				d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
				if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
					d[i][j] = min(d[i][j], d[i-2][j-2]+1)
				}
			}
		}
		return d[len(a)][len(b)]
	}
	words := rapid.StringMatching(`[abc]{0,30}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b, limit := words.Draw(t, "a"), words.Draw(t, "b"), rapid.IntRange(0, 8).Draw(t, "limit")
		want, have := plain(a, b), spelling.Edits(a, b, limit)
		if want <= limit && have != want || want > limit && have <= limit {
			t.Errorf("%q to %q within %d: have %d, want %d", a, b, limit, have, want)
		}
	})
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

// Nothing typed lists what is asked for most before the rest, each once.
func TestNothingTypedListsTheEverydayFirstTheRememberedLast(t *testing.T) {
	c, err := Load(os.DirFS("../../data"))
	if err != nil {
		t.Fatal(err)
	}
	hits := c.Search(" ")
	if len(hits) != len(c.Materials) || hits[0].Material.ID != c.Everyday[0] || hits[len(c.Everyday)-1].Material.ID != c.Everyday[len(c.Everyday)-1] {
		t.Errorf("%d hits of %d materials, the first is %s", len(hits), len(c.Materials), hits[0].Material.ID)
	}
	from := slices.IndexFunc(hits[len(c.Everyday):], func(h Hit) bool { return h.Material.Remembered() }) + len(c.Everyday)
	if from < len(c.Everyday) || slices.ContainsFunc(hits[from:], func(h Hit) bool { return !h.Material.Remembered() }) {
		t.Errorf("what is known from memory alone does not stand last: from %d of %d", from, len(hits))
	}
}
