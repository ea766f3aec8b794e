//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"alongside/tui/background"
	"alongside/tui/ptytest"
)

// asking is a terminal that is asked for its background and answers nothing.
var asking = ptytest.Options{Env: []string{"ALONGSIDE_CLIPBOARD=file"}}

// wantRestored fails where the terminal is not as it was before the program.
func wantRestored(t *testing.T, s *ptytest.Session) {
	t.Helper()
	out := s.Output()
	for _, mode := range []string{"1049", "2004", "1002", "1006"} {
		if on, off := strings.LastIndex(out, "\x1b[?"+mode+"h"), strings.LastIndex(out, "\x1b[?"+mode+"l"); on < 0 || off < on {
			t.Errorf("mode %s is left on", mode)
		}
	}
	if hidden, shown := strings.LastIndex(out, "\x1b[?25l"), strings.LastIndex(out, "\x1b[?25h"); shown < hidden {
		t.Error("the cursor is left hidden")
	}
	if strings.Contains(out, "goroutine ") {
		t.Error("a stack trace is printed")
	}
}

// Neither the beginning of an answer nor of a paste without its end makes the
// program deaf; ctrl+c and keys come through.
func TestNothingMakesItDeaf(t *testing.T) {
	t.Parallel()
	const answer = "\x1b]11;rgb:0000/0000/0000"
	program := binary(t)
	for name, sent := range map[string]string{
		"answer begun":              "\x1b]11;",
		"answer cut short":          answer,
		"answer without end":        "\x1b]11;" + strings.Repeat("f", 500),
		"answers by the thousand":   strings.Repeat(answer+"\a", 1000),
		"answer begun in a paste":   "\x1b[200~319-f-sand \x1b]11; and more\x1b[201~",
		"paste begun":               "\x1b[200~",
		"paste without end":         "\x1b[200~gray-30\n",
		"paste with half an end":    "\x1b[200~gray-30\n\x1b[201",
		"long paste":                "\x1b[200~" + strings.Repeat("a", 1<<20) + "\x1b[201~",
		"long paste without end":    "\x1b[200~" + strings.Repeat("gray-30\n", 1<<17),
		"string without end":        "\x1bP" + strings.Repeat("z", 300),
		"control sequence, no end":  "\x1b[" + strings.Repeat("1;", 300),
		"mouse without end":         "\x1b[<0;3",
		"bytes that are no letters": strings.Repeat("\xff\xc3", 500),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := ptytest.Start(t, asking, program, "a356-t6-pm")
			s.WaitFor("A356.0")
			s.Type(sent)
			time.Sleep(1200 * time.Millisecond) // what may still come is waited for a second
			if strings.Contains(sent, "\x1b[200~") && !strings.Contains(sent, "\x1b[201~") {
				s.Type(ptytest.CtrlC)
				time.Sleep(100 * time.Millisecond)
			}
			for try := range 10 { // on a busy machine the two keys may be read as one, alt+L
				s.Type(ptytest.Escape)
				time.Sleep(time.Duration(1+try) * 100 * time.Millisecond)
				s.Type("L")
				if s.Within(time.Duration(1+try)*300*time.Millisecond, "Signs on the bench") {
					break
				}
			}
			s.WaitFor("Signs on the bench")
			s.Type(ptytest.CtrlC)
			if code := s.Exit(); code != exitInterrupt {
				t.Errorf("exit code %d", code)
			}
			wantRestored(t, s)
		})
	}
}

// ctrl+c ends a paste that does not end itself, at once; another ends the program.
func TestInterruptedPaste(t *testing.T) {
	t.Parallel()
	s := ptytest.Start(t, asking, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	s.Type("\x1b[200~" + strings.Repeat("gray-30\n", background.LongestPaste))
	time.Sleep(300 * time.Millisecond)
	s.Type(ptytest.CtrlC)
	s.WaitFor("the paste was too long")
	s.Type(ptytest.CtrlC)
	if code := s.Exit(); code != exitInterrupt {
		t.Errorf("exit code %d", code)
	}
}

// Ten megabytes are read in a time that grows with their number; a line says
// that they were cut.
func TestHugePaste(t *testing.T) {
	t.Parallel()
	s := ptytest.Start(t, ptytest.Options{Width: 100, Env: asking.Env, Limit: time.Minute}, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	s.Type("/")
	s.WaitFor("Find:")
	begun := time.Now()
	s.Type("\x1b[200~" + strings.Repeat("x", 10<<20) + "\x1b[201~")
	s.WaitFor("the paste was too long: its first 16 kB were taken")
	t.Logf("10 MB in %v", time.Since(begun).Round(time.Millisecond))
	s.Type(ptytest.CtrlC)
	s.Exit()
}

// However many reports of the mouse come at once, none is typed.
func TestMouseFloodIsNotTyped(t *testing.T) {
	t.Parallel()
	s := ptytest.Start(t, asking, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	s.Type("/")
	s.WaitFor("Find:")
	for i := range 40 {
		s.Type(strings.Repeat("\x1b[<35;123;45M\x1b[<64;9;9M", 60+i))
	}
	s.Type("w")
	s.WaitFor("Find: w")
	if line, _, _ := strings.Cut(s.Screen()[strings.Index(s.Screen(), "Find: w"):], "\n"); strings.ContainsAny(line, ";<M") {
		t.Errorf("typed: %q", line)
	}
	s.Signal(os.Interrupt)
	s.Exit()
}

// A clipboard command that hangs is stopped when the bench is left, and leaves
// nothing behind.
func TestQuitWhileACopyHangs(t *testing.T) {
	t.Parallel()
	bin, tmp := t.TempDir(), t.TempDir()
	pid := filepath.Join(bin, "pid")
	if err := os.WriteFile(filepath.Join(bin, "xclip"), []byte("#!/bin/sh\necho $$ > "+pid+"\nexec sleep 60\n"), 0o700); err != nil {
		t.Fatal(err)
	}
	s := ptytest.Start(t, ptytest.Options{Env: []string{"DISPLAY=:9", "TMPDIR=" + tmp, "PATH=" + bin + ":" + os.Getenv("PATH")}}, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	s.Type("y")
	s.WaitFor("copying the")
	var number int
	for number == 0 {
		time.Sleep(10 * time.Millisecond)
		text, _ := os.ReadFile(pid)
		number, _ = strconv.Atoi(strings.TrimSpace(string(text)))
	}
	s.Type("q")
	if code := s.Exit(); code != exitOK {
		t.Errorf("exit code %d", code)
	}
	if err := syscall.Kill(number, 0); err == nil {
		t.Error("the clipboard command runs on")
	}
	if left, _ := os.ReadDir(tmp); len(left) > 0 {
		t.Errorf("left in the folder for passing files: %v", left)
	}
}
