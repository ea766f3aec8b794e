package tui

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"alongside/props/call/sheets"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/foundry"
	"alongside/props/settings"
	"alongside/props/watch"
	"alongside/tui/background"
	"alongside/tui/clip"
	"alongside/tui/desk"
)

var update = flag.Bool("update", false, "write the golden files again")

// invented loads the catalog of these tests. Its figures are made up.
func invented(t rapid.TB) *catalog.Catalog {
	t.Helper()
	c, err := catalog.Load(os.DirFS("testdata"), "catalog.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// inventedBook loads the process data of these tests. They are made up too.
func inventedBook(t rapid.TB, c *catalog.Catalog) *foundry.Book {
	t.Helper()
	b, err := foundry.Load(c, os.DirFS("testdata"), "process.toml")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// user drives a Model as a person would, without a terminal.
type user struct {
	t      rapid.TB
	m      *Model
	copied []clip.Payload
	quit   bool
}

type deskOptions struct {
	w, h    int
	profile termenv.Profile
	shade   background.Shade
	catalog *catalog.Catalog
	book    func() *foundry.Book // nil: the invented one, with the invented catalog
	rules   func() *watch.Rules  // nil: none
	sheets  *sheets.Folder       // nil: calls are not kept
	unkept  error
	// settings are what the user likes; nil: the defaults
	settings *settings.Settings
}

func newDesk(t rapid.TB, o deskOptions, ids ...string) *user {
	t.Helper()
	if o.catalog == nil {
		o.catalog = invented(t)
		o.book = sync.OnceValue(func() *foundry.Book { return inventedBook(t, o.catalog) })
	}
	bench := compare.NewBench()
	if o.settings != nil {
		bench = o.settings.Bench.Clone()
	}
	for _, id := range ids {
		mat, err := o.catalog.Resolve(id)
		if err != nil {
			t.Fatal(err)
		}
		bench.Pin(mat)
	}
	d := &user{t: t}
	d.m = New(Options{Profile: &o.profile, Background: o.shade, Options: desk.Options{
		Catalog: o.catalog, Bench: bench, Version: "0.0", Foundry: o.book, Watch: o.rules, Sheets: o.sheets, Unkept: o.unkept, Settings: o.settings,
		Copy: func(_ context.Context, p clip.Payload) (string, error) {
			d.copied = append(d.copied, p)
			return "copied with a test", nil
		},
	}})
	d.run(d.m.Init())
	d.send(tea.WindowSizeMsg{Width: o.w, Height: o.h})
	return d
}

// plainDesk is a desk without color.
func plainDesk(t rapid.TB, w, h int, ids ...string) *user {
	t.Helper()
	return newDesk(t, deskOptions{w: w, h: h, profile: termenv.Ascii}, ids...)
}

// the usual bench of these tests: a black baseline and three white metals.
var usual = []string{"black-30", "w1-t6-pm", "w2-f-die", "w3-t6-sand"}

func (d *user) send(msgs ...tea.Msg) {
	for _, msg := range msgs {
		_, cmd := d.m.Update(msg)
		d.run(cmd)
	}
}

// downTo goes down until a text is on the screen.
func (d *user) downTo(text string) {
	d.t.Helper()
	for range 100 {
		if strings.Contains(d.m.View(), text) {
			return
		}
		d.press("down")
	}
	d.want(text)
}

func (d *user) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil, tea.SuspendMsg:
	case tea.QuitMsg, tea.InterruptMsg:
		d.quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			d.run(c)
		}
	default:
		d.send(msg)
	}
}

var keyTypes = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown,
	"backspace": tea.KeyBackspace, "delete": tea.KeyDelete, "f1": tea.KeyF1, "ctrl+home": tea.KeyCtrlHome, "ctrl+end": tea.KeyCtrlEnd, "ctrl+r": tea.KeyCtrlR, "ctrl+c": tea.KeyCtrlC, "ctrl+u": tea.KeyCtrlU, "ctrl+x": tea.KeyCtrlX,
	"ctrl+z": tea.KeyCtrlZ, "space": tea.KeySpace, "shift+left": tea.KeyShiftLeft, "shift+right": tea.KeyShiftRight,
}

func keyMsg(name string) tea.KeyMsg {
	if rest, ok := strings.CutPrefix(name, "alt+"); ok {
		msg := keyMsg(rest)
		msg.Alt = true
		return msg
	}
	if kind, ok := keyTypes[name]; ok {
		msg := tea.KeyMsg{Type: kind}
		if kind == tea.KeySpace {
			msg.Runes = []rune{' '}
		}
		return msg
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// press sends keys by name: "enter", "ctrl+r", or the letter itself.
func (d *user) press(names ...string) {
	for _, name := range names {
		d.send(keyMsg(name))
	}
}

// typeText sends a text letter by letter.
func (d *user) typeText(s string) {
	for _, r := range s {
		if r == ' ' {
			d.press("space")
		} else {
			d.press(string(r))
		}
	}
}

func (d *user) paste(s string) {
	d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true})
}

func (d *user) pins() string {
	var ids []string
	for i, m := range d.m.Now().Bench.Pins {
		id := m.ID
		if i == d.m.Now().Bench.Baseline {
			id = "*" + id
		}
		ids = append(ids, id)
	}
	return strings.Join(ids, " ")
}

func (d *user) wantPins(want string) {
	d.t.Helper()
	if have := d.pins(); have != want {
		d.t.Errorf("pins\nhave: %s\nwant: %s", have, want)
	}
}

// want checks that the frame says something; the message shows the frame.
func (d *user) want(texts ...string) {
	d.t.Helper()
	view := ansi.Strip(d.m.View())
	for _, text := range texts {
		if !strings.Contains(view, text) {
			d.t.Errorf("no %q in\n%s", text, view)
		}
	}
}

func (d *user) wantNot(text string) {
	d.t.Helper()
	if view := ansi.Strip(d.m.View()); strings.Contains(view, text) {
		d.t.Errorf("%q in\n%s", text, view)
	}
}

// fits checks that the frame is just as large as the window.
func (d *user) fits() {
	d.t.Helper()
	lines := strings.Split(d.m.View(), "\n")
	if len(lines) > d.m.height && d.m.height > 0 {
		d.t.Fatalf("%d lines in a window of %d\n%s", len(lines), d.m.height, d.m.View())
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > d.m.width && d.m.width > 0 {
			d.t.Fatalf("a line of %d cells in a window of %d: %q", w, d.m.width, l)
		}
	}
}

// golden compares text with testdata/NAME.golden, which -update writes.
func golden(t *testing.T, name, have string) {
	t.Helper()
	path := filepath.Join("testdata", name+".golden")
	var lines []string
	for _, l := range strings.Split(have, "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	have = strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.WriteFile(path, []byte(have), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; run the test with -update to write it", err)
	}
	if have != string(want) {
		t.Errorf("%s differs (run with -update when the new one is right)\n%s", path, differences(string(want), have))
	}
}

func differences(want, have string) string {
	w, h := strings.Split(want, "\n"), strings.Split(have, "\n")
	var b strings.Builder
	for i := 0; i < max(len(w), len(h)); i++ {
		line := func(l []string) string {
			if i < len(l) {
				return l[i]
			}
			return ""
		}
		if line(w) != line(h) {
			b.WriteString("-" + line(w) + "\n+" + line(h) + "\n")
		}
	}
	return b.String()
}
