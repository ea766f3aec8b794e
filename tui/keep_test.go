package tui

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"alongside/props/call/sheets"
	"alongside/props/catalog"
)

// keptDesk is a desk whose calls are kept in a folder.
func keptDesk(t *testing.T, f *sheets.Folder, ids ...string) *user {
	t.Helper()
	return newDesk(t, deskOptions{w: 80, h: 24, profile: termenv.Ascii, sheets: f}, ids...)
}

func callFolder(t *testing.T) *sheets.Folder {
	c := invented(t)
	return &sheets.Folder{Path: filepath.Join(t.TempDir(), "calls"), Catalog: func() *catalog.Catalog { return c }}
}

// pinsOf are the pins of the only sheet in a folder.
func pinsOf(t *testing.T, f *sheets.Folder) string {
	t.Helper()
	list, err := f.List("")
	if err != nil || len(list) != 1 {
		t.Fatalf("%d sheets, %v", len(list), err)
	}
	var ids []string
	for _, m := range list[0].Call.Bench.Pins {
		ids = append(ids, m.ID)
	}
	return strings.Join(ids, " ")
}

// Every change is on the disk; what is only looked at leaves no sheet.
func TestChangesAreKept(t *testing.T) {
	f := callFolder(t)
	d := keptDesk(t, f, usual[:2]...)
	d.press("down", "?", "esc")
	if list, _ := f.List(""); len(list) != 0 {
		t.Errorf("looking at the bench made %d sheets", len(list))
	}
	d.press("right", "b")
	if have := pinsOf(t, f); have != "black-30 w1-t6-pm" {
		t.Errorf("have %s", have)
	}
	d.press("x", "K")
	d.typeText("Bracket")
	d.press("enter", "N")
	d.typeText("ask for the pH")
	d.press("enter", "W")
	d.typeText("Can it be lighter?")
	d.press("enter")
	s, err := f.Find("Bracket")
	if err != nil || len(s.Call.Bench.Pins) != 1 || len(s.Call.Notes) != 1 || len(s.Call.Said) != 1 || time.Since(s.Call.Notes[0].At) > time.Minute {
		t.Errorf("have %+v, %v", s, err)
	}
	d.press("u")
	if s, _ := f.Find("Bracket"); len(s.Call.Said) != 0 {
		t.Errorf("undo is not on the disk: %v", s.Call.Said)
	}
}

// The next start offers the last call; Enter continues it, letters begin a new
// one and leave it as it is.
func TestLastCallIsOffered(t *testing.T) {
	f := callFolder(t)
	first := keptDesk(t, f, usual[:2]...)
	first.press("s")
	second := keptDesk(t, f)
	second.want("Enter continues call of ", "black-30, w1-t6-pm")
	second.press("enter") // the first program has it open still
	second.want("open in another program; this is a copy")
	if err := errors.Join(first.m.Held.Close(), second.m.Held.Close()); err != nil {
		t.Fatal(err)
	}
	third := keptDesk(t, f)
	third.press("enter")
	third.want("copy of call of ")
	if len(third.m.Pins()) != 2 || third.m.Now().Bench.System != 1 {
		t.Errorf("have %+v", third.m.Now().Bench)
	}
	chosen := keptDesk(t, f)
	chosen.press("down", "enter") // a material was chosen
	if pins := chosen.m.Pins(); len(pins) != 1 {
		t.Errorf("have %v", pins)
	}
	fourth := keptDesk(t, f)
	fourth.typeText("w2")
	fourth.press("enter")
	if pins := fourth.m.Pins(); len(pins) != 1 || pins[0].ID != "w2-f-die" {
		t.Errorf("have %v", pins)
	}
	if list, _ := f.List(""); len(list) != 4 {
		t.Errorf("%d sheets, want 4", len(list))
	}
}

func TestCallsPanel(t *testing.T) {
	f := callFolder(t)
	d := keptDesk(t, f, usual[:2]...)
	d.press("K")
	d.typeText("One")
	d.press("enter", "C", "x")
	d.want("this call is on the bench")
	d.press("n")
	d.want("Pin a material")
	d.typeText("w2")
	d.press("enter", "C")
	d.want("Calls: 2 calls", "One")
	d.press("down", "d")
	d.want("Calls: 3 calls", "copy of One")
	d.press("home", "x")
	d.want("Calls: 2 calls", "u brings it back")
	d.press("u")
	d.want("Calls: 3 calls", "it is back")
	for i := range 3 { // whichever of the three One is
		d.press(slices.Repeat([]string{"down"}, i)...)
		if d.press("enter"); d.m.Now().Name == "One" {
			break
		}
		d.press("C")
	}
	if d.m.Now().Name != "One" || len(d.m.Pins()) != 2 {
		t.Errorf("have %+v", d.m.Now())
	}
	d.press("u")
	d.want("nothing to undo")
}

// Where a call cannot be saved the bench goes on, says so, and asks before it
// quits.
func TestNotSaved(t *testing.T) {
	f := callFolder(t)
	if err := os.WriteFile(f.Path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	d := keptDesk(t, f, usual[:2]...)
	d.press("s")
	d.want("not saved, the call goes on in memory")
	d.press("q")
	d.want("quit again to lose what is not saved")
	if d.quit {
		t.Error("the program ended at once")
	}
	if err := os.Remove(f.Path); err != nil {
		t.Fatal(err)
	}
	d.press("s", "q")
	if !d.quit || pinsOf(t, f) == "" {
		t.Error("saved, and still asked")
	}
	without := newDesk(t, deskOptions{w: 80, h: 24, profile: termenv.Ascii, unkept: errors.New("set HOME")}, usual[:2]...)
	without.press("q")
	if !without.quit {
		t.Error("asked although nothing was changed")
	}
	without.quit = false
	without.press("s", "q")
	without.want("quit again", "set HOME")
	without.press("C")
	without.want("calls are not kept: set HOME")
}

// A pin that is gone from the catalog stands in every panel without harm.
func TestMissingPinInEveryPanel(t *testing.T) {
	f := callFolder(t)
	if err := errors.Join(os.MkdirAll(f.Path, 0o700), os.WriteFile(filepath.Join(f.Path, "a.toml"), []byte("[[call]]\nname = \"A\"\npins = [\"gone\", \"w1-t6-pm\"]\n"), 0o600)); err != nil {
		t.Fatal(err)
	}
	d := keptDesk(t, f)
	d.press("enter")
	d.want("not in the catalog, kept without figures: gone")
	for _, pin := range []string{"home", "end"} {
		for _, key := range []string{"o", "t", "T", "p", "a", "A", "2", "3", "4", "5", "6", "B", "M", "D", "F", "y", "c", "/", "w", "b"} {
			d.press(pin, key)
			d.send(tea.KeyMsg{Type: tea.KeyEsc}, tea.KeyMsg{Type: tea.KeyEsc}, tea.KeyMsg{Type: tea.KeyEsc})
		}
	}
}

// A key takes the same time whether its change is kept or not: the file is
// written beside the screen.
func BenchmarkKeptKey(b *testing.B) {
	c := invented(b)
	for name, f := range map[string]*sheets.Folder{"kept": {Path: b.TempDir(), Catalog: func() *catalog.Catalog { return c }}, "not-kept": nil} {
		b.Run(name, func(b *testing.B) {
			d := newDesk(b, deskOptions{w: 200, h: 60, profile: termenv.Ascii, sheets: f}, usual...)
			key := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'s'}}
			for b.Loop() {
				d.m.Update(key)
				d.m.View()
			}
		})
	}
}
