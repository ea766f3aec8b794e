package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"alongside/props/report"
	"alongside/tui/ptytest"
)

// The main job on the real program: pin three castings, put the baseline on the
// gray iron, flip a temper, change units, copy, quit.
func TestMainJob(t *testing.T) {
	t.Parallel()
	state := t.TempDir()
	for _, size := range []struct{ width, height int }{{80, 24}, {160, 50}} {
		s := ptytest.Start(t, ptytest.Options{Width: size.width, Height: size.height,
			Env: []string{"ALONGSIDE_CLIPBOARD=file", "XDG_STATE_HOME=" + state}}, binary(t))
		pin := func(words, name string) {
			s.WaitFor("Find:")
			s.Type(words)
			s.WaitFor("Find: " + words)
			s.Type(ptytest.Enter)
			s.WaitFor("pinned " + name)
		}
		pin("a356 t6 pm", "A356.0-T6 permanent mold")
		s.Type("/")
		pin("319 f sand", "319.0-F sand")
		s.Type("/")
		pin("class 30", "Class 30 sand")
		s.Type("b")
		s.WaitFor("baseline: Class 30 sand")
		s.Type(ptytest.End) // the last pin: 319.0-F
		s.WaitFor("319.0-F sand: ")
		s.Type("t")
		s.WaitFor("319.0-T5 sand, was 319.0-F sand")
		s.WaitFor("ksi")
		s.Type("s")
		s.WaitFor("SI units")
		s.WaitFor("MPa")
		s.Type("y")
		s.WaitFor("saved to")
		s.Type("q")
		if code := s.Exit(); code != exitOK {
			t.Errorf("exit code %d", code)
		}
		files, _ := filepath.Glob(filepath.Join(state, "alongside", "*-screen.txt"))
		if len(files) == 0 {
			t.Fatal("no copy was saved")
		}
		copied, err := os.ReadFile(files[len(files)-1]) // the newest
		if err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(string(copied), "\n"); n > 48 {
			t.Errorf("the copy of the screen has %d lines", n)
		}
		text := strings.Join(strings.Fields(string(copied)), " ")
		for _, want := range []string{
			"319.0-T5 sand against Class 30 sand",
			"baseline", "MPa", "yield", "S1 ", report.Caution,
		} {
			if !strings.Contains(text, want) {
				t.Errorf("the copy holds no %q:\n%s", want, copied)
			}
		}
	}
}

// A bench set up on the command line, and the same work printed, agree.
func TestBenchFromTheCommandLine(t *testing.T) {
	t.Parallel()
	s := ptytest.Start(t, ptytest.Options{Width: 120, Height: 40}, binary(t),
		"a356-t6-pm", "319-f-sand", "--baseline", "gray-30", "--units", "si", "--delta", "amount", "--basis", "minimum")
	s.WaitFor("minimums only · SI units")
	screen := s.Screen()
	for _, want := range []string{"Class 30", "A356.0", "319.0", "MPa", "minimum"} {
		if !strings.Contains(screen, want) {
			t.Errorf("no %q on the screen:\n%s", want, screen)
		}
	}
	s.Type(ptytest.CtrlC)
	s.Exit()
}

// A terminal that cannot place its cursor gets told which command to use, and
// one with NO_COLOR gets no colors.
func TestPlainTerminals(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Env: []string{"TERM=dumb"}}, binary(t), "a356-t6-pm")
	if code := s.Exit(); code != exitUsage {
		t.Errorf("TERM=dumb: exit code %d, want %d", code, exitUsage)
	}
	if !strings.Contains(s.Output(), "alongside compare a356-t6-pm") || strings.Contains(s.Output(), "\x1b") {
		t.Errorf("TERM=dumb: %q", s.Output())
	}
	s = ptytest.Start(t, ptytest.Options{Env: []string{"NO_COLOR=1"}}, binary(t), "a356-t6-pm")
	s.WaitFor("A356.0")
	for _, part := range strings.Split(s.Output(), "\x1b[")[1:] {
		if end := strings.IndexFunc(part, func(r rune) bool { return r >= '@' && r <= '~' }); end >= 0 && part[end] == 'm' {
			for _, code := range strings.Split(part[:end], ";") {
				if len(code) == 2 && (code[0] == '3' || code[0] == '4') {
					t.Fatalf("NO_COLOR: color sequence %q", part[:end+1])
				}
			}
		}
	}
	s.Type("q")
	s.Exit()
}

// Commands print plain text on a terminal too, as wide as it is.
func TestCommandOnTerminal(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Width: 200, Height: 60}, binary(t), "compare", "a356-t6-pm", "319-f-sand", "gray-30", "--rows", "tensile,density")
	if code := s.Exit(); code != exitOK {
		t.Errorf("exit code %d", code)
	}
	if strings.Contains(s.Output(), "\x1b") {
		t.Errorf("escape sequences in the output: %q", s.Output())
	}
	if !strings.Contains(s.Output(), report.Caution) {
		t.Errorf("the caution is broken into lines on a terminal of 200 columns:\n%s", s.Screen())
	}
}

// A whole call on the real program: six pins, what the customer says in one
// sentence, the brief, its copy. The keys besides the text are counted.
func TestCallInFewKeys(t *testing.T) {
	t.Parallel()
	state := t.TempDir()
	s := ptytest.Start(t, ptytest.Options{Width: 80, Height: 24, Env: []string{"ALONGSIDE_CLIPBOARD=file", "XDG_STATE_HOME=" + state, "XDG_DATA_HOME=" + state}}, binary(t))
	keys := 0
	press := func(key string) { keys++; s.Type(key) }
	s.WaitFor("Find:")
	for i, words := range []string{"class 30", "319 t6 sand", "380 die", "za-12 sand", "65-45-12", "a356 t6 pm"} {
		s.Type(words)
		s.WaitFor("Find: " + words)
		press([]string{ptytest.Tab, ptytest.Enter}[i/5])
		s.WaitFor("pinned ")
	}
	press("2")
	s.WaitFor("Add:")
	s.Type("yield at least 20 ksi, elongation 3 %, at least 35 %IACS, under 0.11 lb/in3, permanent mold, 4.2 lb, 3/8 wall, plate, 70 to 250 F, on 1045")
	s.WaitFor("on 1045")
	press(ptytest.Enter)
	s.WaitFor("5 needs")
	press(ptytest.Escape)
	s.WaitFor("rows 1")
	press(ptytest.End)
	press("7")
	s.WaitFor("Class 30 sand today; proposed: A356.0-T6 permanent mold")
	press("y")
	s.WaitFor("saved to")
	press("q")
	press("q")
	if code := s.Exit(); code != exitOK {
		t.Errorf("exit code %d", code)
	}
	files, _ := filepath.Glob(filepath.Join(state, "alongside", "*-brief.txt"))
	if len(files) != 1 {
		t.Fatalf("copies: %v", files)
	}
	text, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Yield ≥ 20 ksi", "26.0 ksi min, met", "Weight", "mated to 1045", report.Caution} {
		if !strings.Contains(strings.Join(strings.Fields(string(text)), " "), want) {
			t.Errorf("the brief holds no %q:\n%s", want, text)
		}
	}
	if keys > 20 {
		t.Errorf("%d keys besides the text", keys)
	}
	t.Logf("%d keys besides the text", keys)
}
