//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"alongside/tui/ptytest"
)

// However the bench is ended, the exit code tells, the terminal is as it was, and the
// call is kept.
func TestInterruptedBench(t *testing.T) {
	t.Parallel()
	for _, end := range []struct {
		by   string
		do   func(s *ptytest.Session)
		code int
	}{
		{"q", func(s *ptytest.Session) { s.Type("q") }, exitOK},
		{"ctrl+c", func(s *ptytest.Session) { s.Type(ptytest.CtrlC) }, exitInterrupt},
		{"SIGINT", func(s *ptytest.Session) { s.Signal(os.Interrupt) }, exitInterrupt},
		{"SIGTERM", func(s *ptytest.Session) { s.Signal(syscall.SIGTERM) }, 143},
		{"SIGHUP", func(s *ptytest.Session) { s.Signal(syscall.SIGHUP) }, 129},
		{"SIGQUIT", func(s *ptytest.Session) { s.Signal(syscall.SIGQUIT) }, 131},
	} {
		t.Run(end.by, func(t *testing.T) {
			home := t.TempDir()
			s := ptytest.Start(t, ptytest.Options{Env: []string{"XDG_DATA_HOME=" + home}}, binary(t), "a356-t6-pm", "gray-30")
			s.WaitFor("A356.0")
			s.Type("N")
			s.WaitFor("Note")
			s.Type("kept in the end")
			s.WaitFor("> kept in the end")
			s.Type(ptytest.Enter)
			s.Wait("the note taken", func(screen string) bool { return !strings.Contains(screen, "> kept in the end") })
			end.do(s)
			if code := s.Exit(); code != end.code {
				t.Errorf("exit code %d, want %d", code, end.code)
			}
			for _, back := range []string{"\x1b[?1049l", "\x1b[?25h", "\x1b[?1002l", "\x1b[?2004l"} {
				if !strings.Contains(s.Output(), back) {
					t.Errorf("%q was not sent", back)
				}
			}
			files, _ := filepath.Glob(filepath.Join(home, "alongside", "calls", "*.toml"))
			if len(files) != 1 {
				t.Fatalf("%d calls were kept", len(files))
			}
			if text, _ := os.ReadFile(files[0]); !strings.Contains(string(text), "kept in the end") {
				t.Errorf("the note is lost:\n%s", text)
			}
		})
	}
}

// After suspend and resume the mouse works again, which Bubble Tea does not see to.
func TestMouseAfterSuspend(t *testing.T) {
	t.Parallel()
	s := ptytest.Start(t, ptytest.Options{}, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	on := strings.Count(s.Output(), "\x1b[?1002h")
	s.Type("\x1a") // ctrl+z
	for end := time.Now().Add(10 * time.Second); !strings.Contains(s.Output(), "\x1b[?1049l") && time.Now().Before(end); {
		time.Sleep(10 * time.Millisecond)
	}
	for end := time.Now().Add(10 * time.Second); strings.Count(s.Output(), "\x1b[?1002h") == on && time.Now().Before(end); {
		s.Signal(syscall.SIGCONT) // again, for the first may come before the program stops
		time.Sleep(20 * time.Millisecond)
	}
	if strings.Count(s.Output(), "\x1b[?1002h") == on {
		t.Error("the mouse stays off")
	}
	s.Type("q")
	s.Exit()
}
