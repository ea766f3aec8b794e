package ptytest_test

import (
	"image/color"
	"strings"
	"testing"
	"time"

	"alongside/tui/ptytest"
)

// shell runs a line of shell on a pseudo-terminal.
func shell(t *testing.T, o ptytest.Options, line string) *ptytest.Session {
	t.Helper()
	return ptytest.Start(t, o, "sh", "-c", line)
}

func TestScreenShowsWhatATerminalWould(t *testing.T) {
	s := shell(t, ptytest.Options{Width: 20, Height: 4},
		`printf 'horizontal\r\n\033[1;1Hpin\033[31mred\033[m\r\nsecond'; read -r line`)
	s.WaitFor("second")
	if have, want := strings.TrimRight(s.Screen(), "\n"), "pinredntal\nsecond"; have != want {
		t.Errorf("\nhave: %q\nwant: %q", have, want)
	}
	if !strings.Contains(s.Styled(), "\x1b[31m") {
		t.Errorf("no red in %q", s.Styled())
	}
	if !strings.Contains(s.Output(), "\x1b[1;1H") {
		t.Errorf("the raw output lacks the cursor movement: %q", s.Output())
	}
	if s.FirstFrame() <= 0 {
		t.Error("no time of the first frame")
	}
}

func TestTypeResizeExit(t *testing.T) {
	s := shell(t, ptytest.Options{Width: 40, Height: 10, Env: []string{"COUNT=3"}},
		`echo ready; read -r word; echo "got $word $COUNT"; stty size; read -r word; stty size; exit 7`)
	s.WaitFor("ready")
	s.Type("zinc", ptytest.Enter)
	s.WaitFor("got zinc 3")
	s.WaitFor("10 40")
	s.Resize(60, 12)
	s.Type(ptytest.Enter)
	s.WaitFor("12 60")
	if code := s.Exit(); code != 7 {
		t.Errorf("exit code %d, want 7", code)
	}
}

func TestWithinTellsOfSilence(t *testing.T) {
	s := shell(t, ptytest.Options{}, `read -r line`)
	if s.Within(100*time.Millisecond, "anything") {
		t.Error("text that was never printed was seen")
	}
}

// The program asks for the background color and prints what it is told until
// the bell, or that nothing came within half a second.
const ask = `stty raw -echo min 0 time 5; printf '\033]11;?\007'; dd bs=64 count=1 2>/dev/null | od -c; stty sane; echo done`

func TestAnswers(t *testing.T) {
	tests := []struct {
		name    string
		answers ptytest.Answers
		told    bool
	}{
		{"mute", ptytest.Answers{}, false},
		{"prompt", ptytest.Answers{Background: color.White}, true},
		{"late", ptytest.Answers{Background: color.White, After: 200 * time.Millisecond}, true},
		{"too late", ptytest.Answers{Background: color.White, After: 900 * time.Millisecond}, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			s := shell(t, ptytest.Options{Answers: test.answers}, ask)
			took := s.WaitFor("done")
			if told := strings.Contains(s.Screen(), "r   g   b   :   f   f   f   f"); told != test.told {
				t.Errorf("answered %v, want %v\n%s", told, test.told, s.Screen())
			}
			if test.told && took < test.answers.After {
				t.Errorf("the answer came after %v, before its time", took)
			}
		})
	}
}
