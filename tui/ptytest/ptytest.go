// Package ptytest drives a built program the way a person does: it runs on a
// pseudo-terminal of a given size, gets keys, and its screen can be read. It
// is for tests only.
//
//	program := ptytest.Build(t, "alongside/cmd/alongside")
//	desk := ptytest.Start(t, ptytest.Options{Width: 80, Height: 24}, program)
//	desk.WaitFor("Pin a material")
//	desk.Type("a356", ptytest.Enter)
//	desk.WaitFor("A356.0")
//	desk.Type("q")
//	if code := desk.Exit(); code != 0 { … }
//
// Every wait has a limit, and a wait that fails shows the screen as it was.
package ptytest

import (
	"fmt"
	"image/color"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
)

// Keys as an xterm sends them, to be given to Type.
const (
	Enter     = "\r"
	Escape    = "\x1b"
	Tab       = "\t"
	BackTab   = "\x1b[Z"
	Backspace = "\x7f"
	Delete    = "\x1b[3~"
	Up        = "\x1b[A"
	Down      = "\x1b[B"
	Right     = "\x1b[C"
	Left      = "\x1b[D"
	Home      = "\x1b[H"
	End       = "\x1b[F"
	PageUp    = "\x1b[5~"
	PageDown  = "\x1b[6~"
	CtrlC     = "\x03"
	CtrlR     = "\x12"
	CtrlZ     = "\x1a"
)

// Answers says what a terminal does when a program asks it something: its
// colors, its cursor position, what it is.
type Answers struct {
	Background color.Color   // the background color it tells; nil: it answers nothing at all
	After      time.Duration // how long it takes to answer
}

// Options describes a terminal and the place it runs in. The zero value is a
// mute 80×24 xterm.
type Options struct {
	Width, Height int           // in cells; 0 means 80×24
	Env           []string      // "NAME=value", added to a small fixed environment
	Dir           string        // working directory; empty means the test's own
	Answers       Answers       // the zero value answers nothing
	Limit         time.Duration // for each wait; 0 means 10 s
}

// Session is one program running on one pseudo-terminal.
type Session struct {
	t       testing.TB
	cmd     *exec.Cmd
	tty     *os.File
	limit   time.Duration
	started time.Time
	exited  chan struct{} // closed once the program has ended and all output is read

	mu      sync.Mutex
	screen  *vt.Emulator
	output  []byte
	first   time.Duration // when the first character showed; 0 until then
	changed chan struct{} // closed and replaced at every change of the screen
}

// Build compiles a main package and returns the path of the program, which is
// removed at the end of the test. pkg is an import path, or a path that begins
// with "./".
func Build(t testing.TB, pkg string) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "program")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	if out, err := exec.Command("go", "build", "-o", program, pkg).CombinedOutput(); err != nil {
		t.Fatalf("go build %s: %v\n%s", pkg, err, out)
	}
	return program
}

// Start runs a program on a new pseudo-terminal. The program is ended with the
// test. Its environment is PATH, an empty HOME, TERM=xterm-256color,
// LANG=C.UTF-8 and what the options add or replace: nothing of the desk where
// the test happens to run. It skips the test on systems without
// pseudo-terminals.
func Start(t testing.TB, o Options, program string, args ...string) *Session {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("no pseudo-terminals on this system")
	}
	if o.Width == 0 || o.Height == 0 {
		o.Width, o.Height = 80, 24
	}
	if o.Limit == 0 {
		o.Limit = 10 * time.Second
	}
	cmd := exec.Command(program, args...)
	cmd.Dir = o.Dir
	cmd.Env = append([]string{
		"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir(), "TERM=xterm-256color", "LANG=C.UTF-8",
	}, o.Env...)
	s := &Session{
		t: t, cmd: cmd, limit: o.Limit,
		exited: make(chan struct{}), changed: make(chan struct{}),
		screen: vt.NewEmulator(o.Width, o.Height), started: time.Now(),
	}
	if o.Answers.Background != nil {
		s.screen.SetDefaultBackgroundColor(o.Answers.Background)
	}
	tty, err := pty.StartWithSize(cmd, size(o.Width, o.Height))
	if err != nil {
		t.Fatalf("start %s on a pseudo-terminal: %v", program, err)
	}
	s.tty = tty
	go s.answer(o.Answers)
	go s.watch()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		<-s.exited
		_ = tty.Close()
	})
	return s
}

func size(width, height int) *pty.Winsize {
	return &pty.Winsize{Cols: uint16(width), Rows: uint16(height)}
}

// watch copies the program's output to the screen until it ends.
func (s *Session) watch() {
	defer close(s.exited)
	data := make([]byte, 32<<10)
	for {
		n, err := s.tty.Read(data)
		s.mu.Lock()
		s.output = append(s.output, data[:n]...)
		_, _ = s.screen.Write(data[:n])
		if s.first == 0 && strings.TrimSpace(s.screen.String()) != "" {
			s.first = time.Since(s.started)
		}
		close(s.changed)
		s.changed = make(chan struct{})
		s.mu.Unlock()
		if err != nil { // a pseudo-terminal reports the end as an error
			break
		}
	}
	_ = s.cmd.Wait()
	// Ends answer. The emulator's own Close races with its Read.
	if pipe, ok := s.screen.InputPipe().(io.Closer); ok {
		_ = pipe.Close()
	}
}

// answer passes on what the emulator replies to queries, late or not at all.
// The emulator blocks until its replies are read, so they are read always.
func (s *Session) answer(a Answers) {
	data := make([]byte, 1024)
	for {
		n, err := s.screen.Read(data)
		if err != nil {
			return
		}
		if a.Background == nil {
			continue
		}
		reply := string(data[:n])
		time.AfterFunc(a.After, func() { _, _ = s.tty.WriteString(reply) })
	}
}

// Type sends keys, each argument in one piece: text as typed, or one of the
// key names of this package.
func (s *Session) Type(keys ...string) {
	s.t.Helper()
	for _, key := range keys {
		if _, err := s.tty.WriteString(key); err != nil {
			s.t.Fatalf("type %q: %v\n%s", key, err, s.describe())
		}
	}
}

// Process is the number of the program's process.
func (s *Session) Process() int { return s.cmd.Process.Pid }

// Signal sends a signal to the program.
func (s *Session) Signal(sig os.Signal) {
	s.t.Helper()
	if err := s.cmd.Process.Signal(sig); err != nil {
		s.t.Fatalf("signal: %v\n%s", err, s.describe())
	}
}

// Resize changes the size of the terminal, in cells.
func (s *Session) Resize(width, height int) {
	s.t.Helper()
	s.mu.Lock()
	s.screen.Resize(width, height)
	s.mu.Unlock()
	if err := pty.Setsize(s.tty, size(width, height)); err != nil {
		s.t.Fatalf("resize to %d×%d: %v", width, height, err)
	}
}

// Screen returns the text on the screen, a line per row, without trailing
// blanks and without colors.
func (s *Session) Screen() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.String()
}

// Styled returns the screen with its colors as escape sequences.
func (s *Session) Styled() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.Render()
}

// Output returns all bytes the program has written so far.
func (s *Session) Output() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return string(s.output)
}

// WaitFor waits until the screen contains text and returns the time since the
// start of the program. It fails the test at the limit.
func (s *Session) WaitFor(text string) time.Duration {
	s.t.Helper()
	return s.Wait(fmt.Sprintf("%q on the screen", text), func(screen string) bool {
		return strings.Contains(screen, text)
	})
}

// Wait waits until ready says so of the screen's text and returns the time
// since the start of the program. It fails the test at the limit, or when the
// program ends before; what names the thing waited for.
func (s *Session) Wait(what string, ready func(screen string) bool) time.Duration {
	s.t.Helper()
	if !s.wait(s.limit, ready) {
		s.t.Fatalf("no %s within %v\n%s", what, s.limit, s.describe())
	}
	return time.Since(s.started)
}

// Within reports whether text shows within limit, without failing the test.
func (s *Session) Within(limit time.Duration, text string) bool {
	return s.wait(limit, func(screen string) bool { return strings.Contains(screen, text) })
}

func (s *Session) wait(limit time.Duration, ready func(string) bool) bool {
	deadline := time.After(limit)
	for {
		s.mu.Lock()
		screen, changed := s.screen.String(), s.changed
		s.mu.Unlock()
		if ready(screen) {
			return true
		}
		select {
		case <-changed:
		case <-s.exited:
			return ready(s.Screen())
		case <-deadline:
			return false
		}
	}
}

// FirstFrame waits for anything to show on the screen and returns how long
// after the start of the program it did.
func (s *Session) FirstFrame() time.Duration {
	s.t.Helper()
	s.Wait("first frame", func(screen string) bool { return strings.TrimSpace(screen) != "" })
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.first
}

// Exit waits for the program to end and returns its exit code, -1 if a signal
// ended it. It fails the test at the limit.
func (s *Session) Exit() int {
	s.t.Helper()
	select {
	case <-s.exited:
	case <-time.After(s.limit):
		s.t.Fatalf("the program has not ended within %v\n%s", s.limit, s.describe())
	}
	return s.cmd.ProcessState.ExitCode()
}

func (s *Session) describe() string {
	state := "still running"
	select {
	case <-s.exited:
		state = s.cmd.ProcessState.String()
	default:
	}
	return fmt.Sprintf("program %s; its screen:\n%s", state, s.Screen())
}
