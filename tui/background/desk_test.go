package background_test

import (
	"bufio"
	"bytes"
	"image/color"
	"os/exec"
	"strings"
	"testing"
	"time"

	"alongside/tui/ptytest"
)

// stall is the limit for a first frame in these tests. The budget is 100 ms
// and the log shows the time taken; a loaded machine may overrun that, but the
// five seconds this guards against can never stay below it.
const stall = time.Second

func TestFirstFrameAndAnswers(t *testing.T) {
	program := ptytest.Build(t, "./testdata/desk")
	tests := []struct {
		name    string
		answers ptytest.Answers
		env     []string
		shade   string
		asked   bool
	}{
		{name: "mute", shade: "unknown", asked: true},
		{name: "light", answers: ptytest.Answers{Background: color.White}, shade: "light", asked: true},
		{name: "dark", answers: ptytest.Answers{Background: color.Black}, shade: "dark", asked: true},
		{name: "late", answers: ptytest.Answers{Background: color.White, After: 700 * time.Millisecond}, shade: "light", asked: true},
		{name: "set by the user", env: []string{"ALONGSIDE_BACKGROUND=light"}, shade: "light"},
		{name: "stated by the terminal", env: []string{"COLORFGBG=0;15"}, shade: "light"},
		{name: "inside a multiplexer", env: []string{"TERM=tmux-256color"}, answers: ptytest.Answers{Background: color.White}, shade: "unknown"},
		{name: "dumb", env: []string{"TERM=dumb"}, shade: "unknown"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := ptytest.Start(t, ptytest.Options{Answers: test.answers, Env: test.env}, program)
			first := s.FirstFrame()
			t.Logf("first frame after %v", first.Round(time.Millisecond))
			if first > stall {
				t.Errorf("first frame after %v, limit %v", first, stall)
			}
			s.WaitFor("ready")
			s.Type("j")
			s.WaitFor("messages <j")
			s.WaitFor("shade " + test.shade)
			s.Type(ptytest.Escape)
			s.WaitFor("messages <j esc>") // and nothing else: no part of an answer
			if asked := strings.Contains(s.Output(), "\x1b]11;?"); asked != test.asked {
				t.Errorf("asked the terminal: %v, want %v", asked, test.asked)
			}
			s.Type("q")
			if code := s.Exit(); code != 0 {
				t.Errorf("exit code %d", code)
			}
		})
	}
}

func TestUnknownSettingIsRefused(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Env: []string{"ALONGSIDE_BACKGROUND=beige"}}, ptytest.Build(t, "./testdata/desk"))
	s.WaitFor(`ALONGSIDE_BACKGROUND is "beige": expected light, dark or auto`)
	if code := s.Exit(); code != 2 {
		t.Errorf("exit code %d, want 2", code)
	}
}

// A program that ends before the answer comes must not leave it to the shell.
func TestAnswerAfterTheEndIsNotTypedAtThePrompt(t *testing.T) {
	program := ptytest.Build(t, "./testdata/desk")
	answers := ptytest.Answers{Background: color.White, After: 250 * time.Millisecond}
	s := ptytest.Start(t, ptytest.Options{Answers: answers}, "sh", "-c",
		program+`; echo ended; read -r line; printf 'line <%s>\n' "$line"; stty -a | grep -o ' -\?echo '`)
	s.WaitFor("ready")
	s.Type("q")
	s.WaitFor("ended")
	time.Sleep(2 * answers.After)
	s.Type("next", ptytest.Enter)
	s.WaitFor("line <next>")
	s.WaitFor("\n echo") // the terminal echoes again
	if code := s.Exit(); code != 0 {
		t.Errorf("exit code %d", code)
	}
}

// The guard above must be able to fail: a program without this package does
// stall on a mute terminal. If this test fails, the library no longer asks,
// and the init of this package has become needless.
func TestBareProgramStalls(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{}, ptytest.Build(t, "./testdata/bare"))
	if s.Within(stall, "ready") {
		t.Error("a bare program no longer stalls on a mute terminal")
	}
}

// Go initialises this package before Bubble Tea only while both hold.
func TestInitialisedBeforeBubbleTea(t *testing.T) {
	const bubbletea = "github.com/charmbracelet/bubbletea"
	own := list(t, ".")
	if path := own[len(own)-1]; path >= bubbletea {
		t.Errorf("import path %q does not sort before %q", path, bubbletea)
	}
	theirs := make(map[string]bool)
	for _, path := range list(t, bubbletea) {
		theirs[path] = true
	}
	for _, path := range own[:len(own)-1] {
		if !theirs[path] {
			t.Errorf("%s is no import of Bubble Tea: waiting for it can make this package late", path)
		}
	}
}

// list returns a package's imports, direct and indirect, and the package last.
func list(t *testing.T, pkg string) []string {
	t.Helper()
	out, err := exec.Command("go", "list", "-deps", pkg).Output()
	if err != nil {
		t.Fatalf("go list %s: %v", pkg, err)
	}
	var paths []string
	for lines := bufio.NewScanner(bytes.NewReader(out)); lines.Scan(); {
		paths = append(paths, lines.Text())
	}
	return paths
}
