package tui

import (
	"os"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"alongside/props/foundry"
	"alongside/props/watch"
)

// watchDesk is a desk with the usual pins and the invented rules.
func watchDesk(t *testing.T, w, h int) *user {
	t.Helper()
	c := invented(t)
	book := inventedBook(t, c)
	rules, err := watch.Load(c, book, os.DirFS("testdata"), "watch.toml")
	if err != nil {
		t.Fatal(err)
	}
	return newDesk(t, deskOptions{w: w, h: h, profile: termenv.Ascii, catalog: c,
		book: func() *foundry.Book { return book }, rules: func() *watch.Rules { return rules }}, usual...)
}

func TestWatchFrames(t *testing.T) {
	for name, keys := range map[string][]string{
		"bench": {"esc", "right"}, "panel": nil, "aside": {"d"}, "facts": {"f", "b"}, "card": {"enter"}, "unchecked": {"right", "right", "G"},
	} {
		t.Run(name, func(t *testing.T) {
			d := watchDesk(t, 80, 24)
			d.press("6", "f", "a", "esc")
			d.press(keys...)
			d.fits()
			golden(t, "watch-"+name, d.m.View())
		})
	}
	t.Run("160x50", func(t *testing.T) {
		d := watchDesk(t, 160, 50)
		d.press("6", "f", "a", "esc", "down", "d")
		d.fits()
		golden(t, "watch-160x50", d.m.View())
	})
}

// What is put aside is counted and listed, and comes back.
func TestWatchOutsArePutAside(t *testing.T) {
	d := watchDesk(t, 100, 30)
	d.press("6")
	d.want("check 2, could not be checked 0, put aside 0")
	d.want(" 2 watch-outs (key 6)")
	d.press("d")
	d.want("check 1, could not be checked 0, put aside 1")
	d.want("aside  The invented part bends more")
	d.press("right")
	d.want("put aside 1") // for every pin
	d.press("left", "G", "d")
	d.want("check 2, could not be checked 0, put aside 0")
	d.press("u", "u")
	if len(d.m.Now().Aside) != 0 || d.m.Left() != 0 {
		t.Errorf("after undo: %v, %d more to undo", d.m.Now().Aside, d.m.Left())
	}
}

func TestConditionsRaiseWatchOuts(t *testing.T) {
	d := watchDesk(t, 100, 30)
	d.press("right")
	d.want(" 2 watch-outs (key 6)")
	d.press("F", "a")
	d.want("3 watch-outs, 1 STOP")
	d.press("esc", "6")
	d.want("STOP   Invented press fits let go")
	d.want("a press fit made for the black metal")
	d.press("e")
	for range 7 {
		d.press("down")
	}
	d.typeText("70..400 F")
	d.press("esc")
	d.want("Too hot for the white metal")
	d.press("down", "enter")
	d.want("soft from 300 °F on")
	d.press("esc", "u", "u")
	d.wantNot("STOP")
}

func TestWatchOutsAreCopied(t *testing.T) {
	d := watchDesk(t, 100, 30)
	d.press("6", "d", "y", "right", "Y")
	if len(d.copied) != 2 {
		t.Fatalf("copied %d", len(d.copied))
	}
	for _, want := range []string{"Ask whether anyone minds", "PUT ASIDE", "WHITE 3", "not for design"} {
		if !strings.Contains(d.copied[0].Text, want) {
			t.Errorf("no %q in\n%s", want, d.copied[0].Text)
		}
	}
	if strings.Contains(d.copied[1].Text, "WHITE 3") {
		t.Errorf("one pin copied as\n%s", d.copied[1].Text)
	}
}

func TestWatchWithoutPins(t *testing.T) {
	d := watchDesk(t, 80, 24)
	d.press("x", "x", "x", "6")
	d.want("needs two pins")
	d.press("u", "6", "ctrl+r")
	d.want("needs two pins")
	d.press("down", "d", "enter", "y", "f", "e", "G")
	d.fits()
}
