package ui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// press does what a table has for a key by its name.
func press(t *testing.T, keys Keys, name string) {
	t.Helper()
	for i := range keys {
		for _, n := range keys[i].Names {
			if n == name && keys[i].Do != nil {
				keys[i].Do()
				return
			}
		}
	}
	t.Fatalf("no key %q", name)
}

// draw shows items of one line each below a head, in some rows.
func draw(l *List, items, head, rows int) []string {
	return l.Draw(Listing{Head: make([]string, head), Items: items, Line: func(i int, _ bool) string { return fmt.Sprint("item ", i) }}, head+rows)
}

// The cursor stays on the items, and its line in sight.
func TestListKeys(t *testing.T) {
	var l List
	show := func(items, head, rows int) { draw(&l, items, head, rows) }
	fit := func() { show(20, 2, 5) }
	fit()
	for _, test := range []struct {
		key     string
		at, top int
	}{
		{"up", 0, 0}, {"j", 1, 0}, {"pgdown", 6, 2}, {"ctrl+f", 11, 7}, {"k", 10, 7}, {"end", 19, 15}, {"down", 19, 15},
		{"pgup", 14, 14}, {"g", 0, 0}, {"G", 19, 15}, {"home", 0, 0}, {"ctrl+end", 19, 15}, {"ctrl+b", 14, 14},
	} {
		press(t, l.Keys(), test.key)
		fit()
		if l.At != test.at || l.Top != test.top {
			t.Errorf("after %s: at %d, top %d, want %d, %d", test.key, l.At, l.Top, test.at, test.top)
		}
	}
	show(3, 2, 5)
	if l.At != 2 || l.Top != 0 || l.end() != 3 {
		t.Errorf("shrunk: at %d, lines %d–%d", l.At, l.Top, l.end())
	}
	show(0, 2, 5)
	press(t, l.Keys(), "down")
	if l.At != 0 || l.Item(2) != -1 {
		t.Errorf("empty: at %d", l.At)
	}
}

// Items of several lines come into sight whole, the first of a group with its
// heading.
func TestListLines(t *testing.T) {
	// line 0 heading, 1–2 first item, 3 heading, 4 second item, 5–8 third
	items := [][]string{{"HEAD", "a", "a"}, {"HEAD", "b"}, {"c", "c", "c", "c"}}
	var l List
	fit := func() []string {
		return l.Draw(Listing{Head: []string{"head"}, Items: 3, Lines: func(i int, _ bool) []string { return items[i] }}, 4)
	}
	for i, top := range []int{0, 2, 5} {
		l.At = i
		fit()
		if l.Top != top {
			t.Errorf("item %d: top %d, want %d", i, l.Top, top)
		}
	}
	l.At = 1
	if have := strings.Join(fit(), " "); have != "head HEAD b c" {
		t.Errorf("drawn %q", have)
	}
	if i := l.Item(2); l.Top != 3 || i != 1 {
		t.Errorf("item %d on the second line below line %d", i, l.Top)
	}
	if l.Item(0) != -1 || l.Item(99) != -1 {
		t.Error("an item outside the list")
	}
	if first, end := l.InSight(); first != 1 || end != 2 {
		t.Errorf("whole in sight %d–%d", first, end)
	}
}

// A click goes there; a click on the item under the cursor acts.
func TestListMouse(t *testing.T) {
	var l List
	draw(&l, 9, 1, 4)
	acts := 0
	click := func(y int) {
		if l.Click(y) {
			acts++
		}
	}
	click(3)
	if l.At != 2 || acts != 0 {
		t.Errorf("at %d, %d acts", l.At, acts)
	}
	click(3)
	click(0)
	click(7)
	if l.At != 2 || acts != 1 {
		t.Errorf("at %d, %d acts", l.At, acts)
	}
	l.Move(1)
	l.Move(-1)
	l.Move(-1)
	if l.At != 1 {
		t.Errorf("at %d after the wheel", l.At)
	}
}

// The wheel of a table moves what is in sight; the cursor stays where it can.
func TestListScroll(t *testing.T) {
	var l List
	draw(&l, 20, 1, 5)
	for _, test := range []struct{ by, at, top int }{{3, 3, 3}, {-2, 3, 1}, {-9, 3, 0}, {99, 15, 15}, {-1, 15, 14}} {
		l.Scroll(test.by)
		draw(&l, 20, 1, 5)
		if l.At != test.at || l.Top != test.top {
			t.Errorf("by %d: at %d, top %d, want %d, %d", test.by, l.At, l.Top, test.at, test.top)
		}
	}
}

// A search takes words in any order, ignores inks, goes round, and stays where
// nothing is found.
func TestListFind(t *testing.T) {
	lines := []string{"Tensile strength", "\x1b[1mYield\x1b[0m strength", "Density", "Yield at heat"}
	var l List
	l.Draw(Listing{Items: len(lines), Line: func(i int, _ bool) string { return lines[i] }}, 9)
	for _, test := range []struct {
		text     string
		from, by int
		at       int
		found    bool
	}{{"yield", 0, 1, 1, true}, {"strength yi", 0, 1, 1, true}, {"yield", 2, 1, 3, true}, {"yield", 4, 1, 1, true}, {"yield", 0, -1, 3, true}, {"zinc", 0, 1, 3, false}} {
		if found := l.Find(test.text, test.from, test.by); found != test.found || l.At != test.at {
			t.Errorf("%+v: %v at %d", test, found, l.At)
		}
	}
	var empty List
	if empty.Find("a", 0, 1) {
		t.Error("found in nothing")
	}
}

func TestColumns(t *testing.T) {
	c := Columns{{Head: "name", Width: 5}, {Head: "left out"}, {Head: "no", Width: 3, Right: true}}
	if have := c.Line("abcdefg", "x", "7"); have != " abcd…   7 " || c.Room(20) != 9 {
		t.Errorf("%q, room %d", have, c.Room(20))
	}
	if have := c.Heads(); have != " name   no " {
		t.Errorf("%q", have)
	}
}

// Letters stand for those of a query however the words are cut and signed.
func TestMarked(t *testing.T) {
	on := Ink{"<", ">"}
	for _, test := range []struct{ text, query, want string }{
		{"A356.0-T6 permanent mold", "a356t6 perm", "<A356>.0-<T6> <perm>anent mold"},
		{"A380.0-F die", "die", "A380.0-F <die>"},
		{"Class 30 sand", "x 30", "Class <30> sand"},
		{"Class 30", "", "Class 30"},
	} {
		if have := Marked(test.text, test.query, Ink{}, on); have != test.want {
			t.Errorf("%q in %q: %q, want %q", test.query, test.text, have, test.want)
		}
	}
}

// The fast way to measure a text agrees with the thorough one.
func TestWidth(t *testing.T) {
	for r := rune(0); r < 0x3000; r++ {
		for _, s := range []string{string(r), "a" + string(r) + "b", string(r) + "\u0301", string(r) + "\ufe0f"} {
			if have, want := Width(s), ansi.StringWidth(s); have != want {
				t.Fatalf("%q (%U): %d, want %d", s, r, have, want)
			}
		}
	}
}

func TestFew(t *testing.T) {
	lines := []string{"one two", "three", "four"}
	if have := strings.Join(Few(lines, 2, 9), "|"); have != "one two|three fo…" && have != "one two|three fou…" {
		t.Errorf("%q", have)
	}
	if len(Few(lines, 3, 9)) != 3 {
		t.Error("cut without need")
	}
}

// A keys line that is too short says so, and the keys of the end stay on it.
func TestKeysRow(t *testing.T) {
	do := func() {}
	keys := Keys{On("a", "first", "", do), On("b", "second", "", do), On("c", "", "not on the line", do), On("d", "third", "", do)}
	end := Keys{On("esc", "back", "", do), On("?", "keys", "", do)}
	for w, want := range map[int]string{
		80: "a first  b second  d third  esc back  ? keys",
		44: "a first  b second  d third  esc back  ? keys",
		43: "a first  b second …  esc back  ? keys",
		36: "a first …  esc back  ? keys",
	} {
		if have := keys.Row(NewTheme(3, false), end, w); have != want || Width(have) > w {
			t.Errorf("%d: %q, want %q", w, have, want)
		}
	}
}

func TestHelpBlock(t *testing.T) {
	keys := Keys{On("e i", "part", "the part", nil), On("x", "", "", nil), {Names: []string{"y"}, Shown: "y", Group: "other", Words: "elsewhere"}}
	if have := strings.Join(keys.Help(NewTheme(3, false), "Here", ""), "\n"); have != " Here\n  e           the part\n" {
		t.Errorf("%q", have)
	}
}
