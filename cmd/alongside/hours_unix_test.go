//go:build unix

package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"alongside/tui/ptytest"
)

var (
	hours = flag.Duration("for", 3*time.Second, "how long TestHours presses keys")
	seed  = flag.Uint64("seed", 1, "what keys TestHours presses")
)

// mostMemory is what the program may ever take, in kB; a first frame has 20,000.
const mostMemory = 150_000

// anyBytes are what a hand, a mouse, a clipboard and a bad line can send, but not
// what ends or stops the program.
func anyBytes(r *rand.Rand) string {
	keys := []string{ptytest.Enter, ptytest.Escape, ptytest.Tab, ptytest.BackTab, ptytest.Backspace, ptytest.Delete, ptytest.Up, ptytest.Down,
		ptytest.Left, ptytest.Right, ptytest.Home, ptytest.End, ptytest.PageUp, ptytest.PageDown, ptytest.CtrlR, "\x1bOP", "\x1b[1;2A", "\x1b[1;5C", "\x1b[3;3~"}
	words := []string{"a356 t6 pm", "gray-30", "yield at least 20 ksi", "4.2 lb", "70 to 250 F", "1e400 MPa", "40 ksi", "\u5bbd\u5b57", "\u202e", "\x1b[2J"}
	switch r.IntN(12) {
	case 0:
		return keys[r.IntN(len(keys))] + keys[r.IntN(len(keys))]
	case 1, 2, 3:
		return keys[r.IntN(len(keys))]
	case 4:
		return "\x1b" + string(rune(' '+r.IntN(95))) // with alt
	case 5:
		return fmt.Sprintf("\x1b[<%d;%d;%d%c", r.IntN(128), r.IntN(200), r.IntN(60), "Mm"[r.IntN(2)])
	case 6:
		return "\x1b[200~" + strings.Repeat(words[r.IntN(len(words))]+"\n", r.IntN(30)) + []string{"\x1b[201~", ""}[r.IntN(2)]
	case 7:
		return words[r.IntN(len(words))]
	case 8:
		return []string{"\x1b]11;", "\x1b]11;rgb:00/00/00\a", "\x1b[", "\x1bP", "\xff\xc3", "\x00", "\x1b[200~"}[r.IntN(7)]
	}
	for {
		if c := rune(' ' + r.IntN(95)); c != 'q' {
			return string(c)
		}
	}
}

// TestHours presses keys on the real program, for -for, looks every second whether
// it still draws and how much memory it takes, and ends it by a key.
func TestHours(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(*seed, 0))
	home := t.TempDir()
	options := ptytest.Options{Limit: 20 * time.Second, Env: []string{"XDG_DATA_HOME=" + home, "XDG_STATE_HOME=" + home, "ALONGSIDE_CLIPBOARD=file"}}
	s := ptytest.Start(t, options, binary(t), "gray-30", "a356-t6-pm")
	s.WaitFor("A356.0")
	sent, peak, end, look := 0, 0, time.Now().Add(*hours), time.Now().Add(time.Second)
	for time.Now().Before(end) {
		s.Type(anyBytes(r))
		sent++
		time.Sleep(time.Duration(r.IntN(15)) * time.Millisecond)
		if r.IntN(200) == 0 {
			s.Resize(20+r.IntN(180), 5+r.IntN(55))
		}
		if time.Now().After(look) {
			look = time.Now().Add(time.Second)
			peak = max(peak, residentMemory(t, s))
			stillDraws(t, s)
		}
	}
	stillDraws(t, s)
	s.Type("\x1b[201~") // a paste may have no end
	time.Sleep(time.Second)
	s.Type(ptytest.CtrlC)
	if code := s.Exit(); code != exitInterrupt {
		t.Errorf("exit code %d", code)
	}
	wantRestored(t, s)
	t.Logf("%d inputs, at most %d kB", sent, peak)
	if peak > mostMemory {
		t.Errorf("%d kB of memory, want at most %d", peak, mostMemory)
	}
}

// stillDraws changes the size of the window until the program draws something.
func stillDraws(t *testing.T, s *ptytest.Session) {
	t.Helper()
	before := len(s.Output())
	for i := range 200 {
		s.Resize(80+i%2, 24+i%3)
		time.Sleep(100 * time.Millisecond)
		if len(s.Output()) > before {
			return
		}
	}
	t.Fatalf("the program draws nothing:\n%s", s.Screen())
}

// residentMemory is what the program takes, in kB; 0 where the system does not say.
func residentMemory(t *testing.T, s *ptytest.Session) int {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", s.Process()))
	if err != nil {
		return 0
	}
	_, rest, _ := strings.Cut(string(status), "VmRSS:")
	number, err := strconv.Atoi(strings.Fields(rest + " 0")[0])
	if err != nil {
		t.Fatal(err)
	}
	return number
}
