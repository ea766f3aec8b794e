package ui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
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

// The cursor stays on the items, and its line in sight.
func TestListKeys(t *testing.T) {
	var l List
	fit := func() { l.FitLines(20, 2, 5) }
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
	l.FitLines(3, 2, 5)
	if l.At != 2 || l.Top != 0 || l.End() != 3 {
		t.Errorf("shrunk: at %d, lines %d–%d", l.At, l.Top, l.End())
	}
	l.FitLines(0, 2, 5)
	press(t, l.Keys(), "down")
	if l.At != 0 || l.Item(2) != -1 {
		t.Errorf("empty: at %d", l.At)
	}
}

// Items of several lines come into sight whole, the first of a group with its
// heading.
func TestListLines(t *testing.T) {
	// line 0 heading, 1–2 first item, 3 heading, 4 second item, 5–8 third
	place := func(i int) (first, last int) { return []int{1, 4, 5}[i], []int{2, 4, 8}[i] }
	var l List
	fit := func() { l.Fit(3, 9, 1, 3, place) }
	for i, top := range []int{0, 2, 5} {
		l.At = i
		fit()
		if l.Top != top {
			t.Errorf("item %d: top %d, want %d", i, l.Top, top)
		}
	}
	l.At = 1
	fit()
	if i := l.Item(2); l.Top != 3 && i != 1 {
		t.Errorf("item %d on the second line below line %d", i, l.Top)
	}
	if l.Item(0) != -1 || l.Item(99) != -1 {
		t.Error("an item outside the list")
	}
}

// A click goes there; a click on the item under the cursor acts.
func TestListMouse(t *testing.T) {
	var l List
	l.FitLines(9, 1, 4)
	acts := 0
	click := func(y int) {
		l.Mouse(tea.MouseMsg{Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress}, func() tea.Cmd { acts++; return nil })
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
	l.Mouse(tea.MouseMsg{Button: tea.MouseButtonWheelDown}, nil)
	l.Mouse(tea.MouseMsg{Button: tea.MouseButtonWheelUp}, nil)
	l.Mouse(tea.MouseMsg{Button: tea.MouseButtonWheelUp}, nil)
	if l.At != 1 {
		t.Errorf("at %d after the wheel", l.At)
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
