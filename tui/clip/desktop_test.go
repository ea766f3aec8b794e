//go:build unix

package clip

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"

	"alongside/tui/ptytest"
)

// need skips the test where a command is not installed; .ci/run installs all.
func need(t *testing.T, commands ...string) {
	t.Helper()
	for _, name := range commands {
		if _, err := exec.LookPath(name); err != nil {
			t.Skipf("%s is not installed (Debian packages: xvfb xclip xsel sway wl-clipboard tmux)", name)
		}
	}
}

// display starts an X server without a screen to look at and returns its name.
func display(t *testing.T) string {
	t.Helper()
	need(t, "Xvfb")
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	server := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "640x480x8", "-nolisten", "tcp")
	server.ExtraFiles = []*os.File{write}
	if err := server.Start(); err != nil {
		t.Fatal(err)
	}
	write.Close()
	t.Cleanup(func() {
		_ = server.Process.Kill()
		_ = server.Wait()
	})
	if err := read.SetReadDeadline(time.Now().Add(20 * time.Second)); err != nil {
		t.Fatal(err)
	}
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb gave no display: %v", err)
	}
	return ":" + strings.TrimSpace(number)
}

// desktop is the Env of this process with no other desktop around than the
// variables state.
func desktop(t *testing.T, vars map[string]string) Env {
	t.Helper()
	for _, name := range []string{"DISPLAY", "WAYLAND_DISPLAY", "SSH_CONNECTION", "SSH_CLIENT", "SSH_TTY", "TMUX", "STY", Variable} {
		t.Setenv(name, vars[name])
	}
	env, err := Here(nil, os.Getenv)
	if err != nil {
		t.Fatal(err)
	}
	env.Kernel, env.Dir = "", t.TempDir()
	return env
}

func TestXClipboardForReal(t *testing.T) {
	need(t, "xclip", "xsel")
	env := desktop(t, map[string]string{"DISPLAY": display(t)})
	paste := func(target string) string {
		t.Helper()
		ctx, cancel := context.WithTimeout(t.Context(), 5*time.Second)
		defer cancel()
		out, err := exec.CommandContext(ctx, "xclip", "-selection", "clipboard", "-out", "-target", target).CombinedOutput()
		if err != nil {
			return fmt.Sprintf("%v: %s", err, out)
		}
		return string(out)
	}
	long := strings.Repeat("A356.0-T6, permanent mold\t11.9 µin/in·°F\n", 50_000) // 2 MB: beyond one X request
	for _, text := range []string{"37 ksi · 0.097 lb/in³ · 26.8 × 10⁻⁶\n\tsecond line\n", long} {
		start := time.Now()
		report, err := Copy(t.Context(), Payload{Text: text}, env)
		if err != nil || report.String() != "copied (xclip)" {
			t.Fatalf("%v, %v", report, err)
		}
		t.Logf("%d bytes copied in %v", len(text), time.Since(start).Round(time.Millisecond))
		if have := paste("UTF8_STRING"); have != text {
			t.Errorf("pasted %d bytes %.80q, want %d", len(have), have, len(text))
		}
	}

	const table = "<table><tr><td>0.097 lb/in³</td></tr></table>"
	report, err := Copy(t.Context(), Payload{Text: "0.097 lb/in³", HTML: table}, env)
	if err != nil || !report.HTML || report.Name != "xclip" {
		t.Fatalf("%v, %v", report, err)
	}
	if have := paste("text/html"); !strings.HasSuffix(have, table) || !strings.Contains(have, "charset=utf-8") {
		t.Errorf("pasted %q", have)
	}
	if have := paste("TARGETS"); !strings.Contains(have, "text/html") || strings.Contains(have, "STRING") {
		t.Errorf("offered %q, want HTML and no text, as the report says", have)
	}

	env.LookPath = func(name string) (string, error) {
		if name == "xclip" {
			return "", exec.ErrNotFound
		}
		return exec.LookPath(name)
	}
	report, err = Copy(t.Context(), Payload{Text: "by xsel"}, env)
	if err != nil || report.String() != "copied (xsel)" {
		t.Fatalf("%v, %v", report, err)
	}
	if have := paste("UTF8_STRING"); have != "by xsel" {
		t.Errorf("pasted %q", have)
	}
}

func TestNoSuchDisplay(t *testing.T) {
	need(t, "xclip", "xsel")
	env := desktop(t, map[string]string{"DISPLAY": ":4711"})
	report, err := Copy(t.Context(), Payload{Text: "37 ksi"}, env)
	if err != nil || report.Where != SavedFile {
		t.Fatalf("%v, %v", report, err)
	}
	if !strings.Contains(report.String(), "Can't open display") {
		t.Errorf("the reason is missing: %s", report)
	}
}

// script puts a shell script in a new directory, and that first on the PATH.
func script(t *testing.T, name, lines string) {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, name), []byte("#!/bin/sh\n"+lines), 0o700); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir+string(os.PathListSeparator)+os.Getenv("PATH"))
}

func TestHangingCommandIsEndedWithItsChildren(t *testing.T) {
	pids := filepath.Join(t.TempDir(), "pids")
	script(t, "wl-copy", fmt.Sprintf("sleep 60 &\necho $$ $! >%s\nwait\n", pids))
	env := desktop(t, map[string]string{"WAYLAND_DISPLAY": "wayland-9"})
	start := time.Now()
	report, err := Copy(t.Context(), Payload{Text: "37 ksi"}, env)
	if err != nil || report.Where != SavedFile || !strings.Contains(report.String(), "wl-copy: no answer within 1s") {
		t.Errorf("%v, %v", report, err)
	}
	if took := time.Since(start); took > 5*time.Second {
		t.Errorf("took %v", took)
	}
	var silent Silent
	if len(report.Tried) == 0 || !errors.As(report.Tried[0].Err, &silent) {
		t.Errorf("tried %v", report.Tried)
	}
	content, err := os.ReadFile(pids)
	if err != nil {
		t.Fatal(err)
	}
	for _, pid := range strings.Fields(string(content)) {
		if !ended(pid) {
			t.Errorf("process %s is still there", pid)
		}
	}
}

// ended waits shortly for a process to be gone, or dead and not yet reaped.
func ended(pid string) bool {
	for range 50 {
		out, err := exec.Command("ps", "-o", "stat=", "-p", pid).Output()
		if err != nil || strings.HasPrefix(strings.TrimSpace(string(out)), "Z") {
			return true
		}
		time.Sleep(20 * time.Millisecond)
	}
	return false
}

// A command may leave a child that holds its output open, as xclip does.
func TestServingChildIsNotWaitedFor(t *testing.T) {
	script(t, "wl-copy", "cat >/dev/null\nsleep 3 &\nexit 0\n")
	env := desktop(t, map[string]string{"WAYLAND_DISPLAY": "wayland-9"})
	start := time.Now()
	report, err := Copy(t.Context(), Payload{Text: "37 ksi"}, env)
	if err != nil || report.Where != Clipboard {
		t.Fatalf("%v, %v", report, err)
	}
	if took := time.Since(start); took > time.Second {
		t.Errorf("took %v", took)
	}
}

func TestFailingCommandSaysWhy(t *testing.T) {
	script(t, "wl-copy", "printf 'no \\033[31mcompositor\\033[m\\nusage: …\\n' >&2\nexit 1\n")
	env := desktop(t, map[string]string{"WAYLAND_DISPLAY": "wayland-9"})
	report, err := Copy(t.Context(), Payload{Text: "37 ksi"}, env)
	if err != nil || !strings.Contains(report.String(), "(wl-copy: no [31mcompositor[m;") {
		t.Errorf("%q, %v", report, err)
	}
}

// The whole way through a real tmux: its buffer gets the text, and the
// terminal it is shown on gets an OSC 52.
func TestTmuxForReal(t *testing.T) {
	need(t, "tmux")
	socket := filepath.Join(t.TempDir(), "tmux")
	client := ptytest.Start(t, ptytest.Options{}, "tmux", "-f", "/dev/null", "-S", socket, "new-session", "-s", "call", "sh -c 'echo attached; sleep 60'")
	t.Cleanup(func() { _ = exec.Command("tmux", "-S", socket, "kill-server").Run() })
	client.WaitFor("attached")
	env := desktop(t, map[string]string{"TMUX": socket + ",1,0"})
	const text = "37 ksi\n255 MPa"
	report, err := Copy(t.Context(), Payload{Text: text}, env)
	if err != nil || report.Where != TerminalClipboard || report.Name != "tmux" {
		t.Fatalf("%v, %v", report, err)
	}
	out, err := exec.Command("tmux", "-S", socket, "show-buffer").Output()
	if err != nil || string(out) != text {
		t.Errorf("tmux keeps %q, %v", out, err)
	}
	want := "Mzcga3NpCjI1NSBNUGE=" // base64 of text
	client.Wait("OSC 52", func(string) bool { return strings.Contains(client.Output(), want) })
}

func TestHereSeesWhetherThereIsATerminal(t *testing.T) {
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	defer write.Close()
	t.Setenv("TERM", "xterm-256color")
	t.Setenv(Variable, "fax")
	env, err := Here(write, os.Getenv)
	var wrong *UseError
	if env.Terminal != nil || !errors.As(err, &wrong) || wrong.Where != Variable {
		t.Errorf("terminal %v, %v", env.Terminal, err)
	}
	far, near, err := pty.Open()
	if err != nil {
		t.Skipf("no pseudo-terminal: %v", err)
	}
	defer far.Close()
	defer near.Close()
	for name, want := range map[string]bool{"xterm-256color": true, "dumb": false, "linux": false, "": false} {
		t.Setenv("TERM", name)
		if env, _ := Here(near, os.Getenv); (env.Terminal != nil) != want {
			t.Errorf("TERM=%q: has a clipboard %v, want %v", name, env.Terminal != nil, want)
		}
	}
	if env.Dir == "" || env.Run == nil || env.OS == "" {
		t.Errorf("not usable: %+v", env)
	}
}
