package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/settings"
	"alongside/tui/desk"
	"alongside/tui/ui"
	"alongside/units"
)

// settingsOf is what a file with this content sets.
func settingsOf(t *testing.T, content string) *settings.Settings {
	t.Helper()
	path := filepath.Join(t.TempDir(), "settings.toml")
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return settings.Load(path)
}

// settingsDesk is a desk with a settings file, which must have no mistake.
func settingsDesk(t *testing.T, content string, ids ...string) *user {
	t.Helper()
	s := settingsOf(t, content)
	d := newDesk(t, deskOptions{w: 120, h: 90, profile: termenv.Ascii, settings: s}, ids...)
	if len(s.Mistakes) > 0 {
		t.Fatal(s.Mistakes)
	}
	return d
}

// A key that was changed works where the old one did, the old one does not, and
// everything on the screen says so.
func TestChangedKeys(t *testing.T) {
	d := settingsDesk(t, `[keys]
u = "z"
x = ["Z", "ctrl+x"]
t = "T"
T = "t"
"alt+s" = "alt+u"
"?" = "H"
2 = "0"
6 = "8"
o = "O"
d = "D"
D = "d"
`, usual...)
	last := func() string {
		lines := strings.Split(d.m.View(), "\n")
		return lines[len(lines)-1]
	}
	if !strings.Contains(last(), "H keys") || strings.Contains(last(), "u undo") || !strings.Contains(last(), "D delta") {
		t.Errorf("keys line %q", last())
	}
	d.want("0 needs", "8 watch-outs")
	d.press("tab", "ctrl+x")
	d.want("z brings it back")
	d.press("u")
	d.want("u does nothing here; H lists the keys")
	if len(d.m.Pins()) != 3 {
		t.Fatal("u undoes")
	}
	d.press("z")
	if len(d.m.Pins()) != 4 {
		t.Error("z does not undo")
	}
	d.press("D")
	d.want("delta amount")
	d.press("d")
	d.want("The part")
	d.press("esc", "s", "alt+u")
	d.want("US units")
	d.press("H")
	d.want("  T t ", "  Z ctrl+x del take this pin off", "  enter O ", "  D  ", "CGS; alt+u back", "alt+d back", "  H f1 ", "  z  ", "  0  ")
	d.press("esc", "4", "0")
	d.want("[0 needs]", "f1 keys")
	d.press("esc")
	if d.m.OnTop() == nil || d.m.OnTop().Typing() {
		d.press("0", "esc")
	}
	d.press("f1")
	d.want("─ Keys")
	d.press("esc")
	d.m.CloseAll()
	d.m.refresh()
	d.send(click(3, 0), click(12, 0))
	d.want("[0 needs]")
}

// Of keys that cannot be as the file asks each is named with why, and has the key
// that the program gives it.
func TestRefusedKeys(t *testing.T) {
	for _, c := range []struct{ line, problem, remedy string }{
		{`u = "b"`, `keys, u: "b" is the key of: make this pin the baseline`, "give b another key too"},
		{`u = "T"`, `keys, u: "T" is the key of: another temper`, "give T another key too"},
		{`u = "shift+left"`, `"shift+left" is the key of: move this pin`, "give < another key too"},
		{`u = ["z", "ctrl+a"]`, `"ctrl+a" is needed by text fields and lists`, "choose a letter"},
		{`u = "enter"`, `"enter" is needed by`, ""}, {`u = "esc"`, `"esc" is needed by`, ""}, {`u = "left"`, `"left" is needed by`, ""},
		{`u = "alt+b"`, `"alt+b" is needed by`, ""}, {`u = "ctrl+u"`, `"ctrl+u" is needed by`, ""}, {`u = "ctrl+c"`, `"ctrl+c" is needed by`, ""},
		{`u = "f1"`, `"f1" is needed by`, ""}, {`u = "backspace"`, `"backspace" is needed by`, ""}, {`u = "space"`, `"space" is needed by`, ""},
		{`u = "ctrl+i"`, `"ctrl+i" is no key that a terminal sends`, "ctrl+i and ctrl+m are Tab and Enter"},
		{`u = "zz"`, `"zz" is no key`, ""}, {`u = " "`, `u: is empty`, ""}, {`u = "hyper+z"`, `"hyper+z" is no key`, ""}, {"u = \"\\u0301\"", "is no key", ""},
		{`uu = "z"`, "uu: is no key of the bench that can be another", "did you mean u?"},
		{`enter = "z"`, "enter: is no key of the bench that can be another", ""},
		{`tab = "z"`, "tab: is no key of the bench that can be another", ""},
		{"u = \"z\"\nK = \"z\"", `keys, K: "z" is the key of: undo`, "choose another"},
		{"\"/\" = \"z\"\ni = \"Z\"", "keys, i: does the same as /, which has a line of its own", "into one line"},
		{"b = \"enter\"\nu = \"b\"", `keys, u: "b" is the key of`, ""}, // b stays, since its line is refused
	} {
		s := settingsOf(t, "[keys]\nc = \"ctrl+g\"\n"+c.line)
		list := remapped(s)
		text := s.Mistakes.Error()
		if !strings.Contains(text, c.problem) || !strings.Contains(text, c.remedy) || !strings.Contains(text, "settings.toml:3: ") && !strings.Contains(text, "settings.toml:4: ") {
			t.Errorf("%s:\n%s\nwant %s … %s", c.line, text, c.problem, c.remedy)
		}
		if !slices.Contains(commandNamed(list, "c").Names, "ctrl+g") {
			t.Errorf("%s: the line before it is not used", c.line)
		}
		if have := commandNamed(list, "u").Names; !strings.HasPrefix(c.line, "u = \"z\"") && !slices.Contains(have, "u") {
			t.Errorf("%s: undo has %v", c.line, have)
		}
		owner := map[string]*command{}
		for _, c := range list {
			for _, n := range c.Names {
				if owner[n] != nil && owner[n] != c {
					t.Errorf("%s has two meanings", n)
				}
				owner[n] = c
			}
		}
		d := newDesk(t, deskOptions{w: 200, h: 40, profile: termenv.Ascii, settings: settingsOf(t, "[keys]\n"+c.line)}, usual...)
		d.want(" settings.toml:", "alongside settings says what to write")
	}
}

// The keys that the printed file lists are all that can be others, and giving
// each the keys it has changes nothing.
func TestKeyLines(t *testing.T) {
	s := settingsOf(t, settings.Text("", KeyLines()))
	list := remapped(s)
	if len(s.Mistakes) > 0 {
		t.Fatal(s.Mistakes)
	}
	for i, c := range commandList() {
		have, want := slices.Sorted(slices.Values(list[i].Names)), slices.Sorted(slices.Values(c.Names))
		if !slices.Equal(have, want) || strings.Join(strings.Fields(list[i].Shown), " ") != strings.Join(strings.Fields(c.Shown), " ") || list[i].Words != c.Words {
			t.Errorf("%v %q %q, was %v %q %q", have, list[i].Shown, list[i].Words, want, c.Shown, c.Words)
		}
	}
	groups := map[string]int{}
	last := ""
	for _, k := range KeyLines() {
		if k.Group != last {
			groups[k.Group]++
			last = k.Group
		}
	}
	for _, g := range helpGroups {
		if groups[g] != 1 {
			t.Errorf("group %q stands %d times", g, groups[g])
		}
	}
}

// A key of the bench that a panel has too means in it what the panel says, and
// the keys line does not tell otherwise.
func TestPanelKeysGoFirst(t *testing.T) {
	d := settingsDesk(t, "[keys]\ne = \"z\"\nu = \"e\"\n\"?\" = \"h\"\nh = \"H\"\n", usual...)
	d.press("2", "y", "i", "e", "l", "d", " ", ">", " ", "2", "0", " ", "k", "s", "i", "enter", "esc")
	d.press("2", "down")
	own, ends := d.m.panelKeys(d.m.OnTop())
	for _, k := range own {
		if k.Label == "e" && k.Line == "undo" {
			t.Error("e says undo in the panel where it edits")
		}
	}
	if ends[1].Label != "h" {
		t.Errorf("help is %q", ends[1].Label)
	}
	d.press("esc")
	d.m.CloseAll()
	d.press("c") // the copy panel has h for the form
	if _, ends := d.m.panelKeys(d.m.OnTop()); ends[1].Label != "f1" {
		t.Errorf("in the copy panel help is %q", ends[1].Label)
	}
	d.want("f1 keys")
}

// A new call, and what is copied, are as the settings say.
func TestSettingsOfTheBench(t *testing.T) {
	content := "units = [\"si\", \"density us\"]\nbasis = \"minimum\"\nlevel_within = \"4 %\"\nrows = [\"density\", \"tensile_strength\"]\ncopy = \"tsv\"\ndelta = \"ratio\"\n"
	d := settingsDesk(t, content)
	b := d.m.Bench()
	if b.System != units.SI || b.Basis != compare.MinimumOnly || b.Band != 0.04 || b.Delta != compare.Ratio || b.UnitOf(props.Density) != units.LbPerIn3 {
		t.Errorf("%+v", b)
	}
	d.m.PasteMaterials("w1-t6-pm, w2-f-die")
	d.m.CloseAll()
	d.m.refresh()
	if rows := d.m.Table.Lines; len(rows) != 2 || rows[0].Property != props.Density {
		t.Errorf("rows %v", rows)
	}
	d.want("chosen rows")
	d.press("f", "f")
	d.want("chosen rows; level rows hidden")
	d.press("f", "f")
	d.want("all rows (", "all rows")
	d.wantNot("chosen rows")
	d.press("f", "f", "f", "f")
	d.want("chosen rows (2 rows shown)")
	d.press("y")
	if len(d.copied) != 1 || !strings.HasSuffix(d.copied[0].File, ".tsv") {
		t.Errorf("copied %+v", d.copied)
	}
}

// Colors of high contrast are other colors; without color nothing changes.
func TestContrastTheme(t *testing.T) {
	view := func(content string, profile termenv.Profile) string {
		return newDesk(t, deskOptions{w: 80, h: 24, profile: profile, settings: settingsOf(t, content)}, usual...).m.View()
	}
	const contrast = "theme = \"high contrast\"\n"
	if view(contrast, termenv.ANSI256) == view("", termenv.ANSI256) {
		t.Error("high contrast changes nothing")
	}
	if view(contrast, termenv.Ascii) != view("", termenv.Ascii) || strings.Contains(view(contrast, termenv.Ascii), "\x1b") {
		t.Error("high contrast shows where there is no color")
	}
	t.Setenv("NO_COLOR", "1")
	s := settingsOf(t, contrast)
	m := New(Options{Options: desk.Options{Catalog: invented(t), Settings: s}, Width: 80, Height: 24})
	if !m.Theme.Plain || strings.Contains(m.View(), "\x1b") || *m.Theme != *ui.NewTheme(termenv.Ascii, false) {
		t.Error("NO_COLOR does not win")
	}
}
