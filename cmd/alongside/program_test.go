package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"

	"alongside/data"
)

// closedPipe is a reader gone away.
type closedPipe struct{}

func (closedPipe) Write([]byte) (int, error) {
	return 0, &os.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"compare", "--help"}, {"completion", "bash"}, {"compare", "a356-t6-pm"}, {"sources"}, {"find"}, {"show", "a356-t6-pm"}, {"convert", "1 ksi"}, {"check"}, {"version"}} {
		for _, place := range []struct {
			io.Writer
			code  int
			words string
		}{{closedPipe{}, exitPipe, ""}, {fullDisk{}, exitFindings, "alongside: no space left on device\n"}} {
			var errs bytes.Buffer
			code := run(context.Background(), args, strings.NewReader(""), place, &errs, os.Getenv)
			if code != place.code || errs.String() != place.words {
				t.Errorf("%v to %T: exit code %d, want %d; stderr %q, want %q", args, place.Writer, code, place.code, errs.String(), place.words)
			}
		}
	}
}

// folder holds the program compiled for the tests that need a process.
var folder string

func TestMain(m *testing.M) {
	flag.Parse()
	// Most of the tests side by side wait for the program.
	if err := flag.Set("test.parallel", strconv.Itoa(4*runtime.GOMAXPROCS(0))); err != nil {
		panic(err)
	}
	var err error
	if folder, err = os.MkdirTemp("", "alongside"); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(folder)
	os.Exit(code)
}

var build = sync.OnceValue(func() error {
	if out, err := exec.Command("go", "build", "-o", folder, ".").CombinedOutput(); err != nil {
		return errors.New(string(out))
	}
	return nil
})

// binary compiles the program once.
func binary(t *testing.T) string {
	t.Helper()
	if err := build(); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(folder, "alongside")
}

// A real process whose reader closes the pipe ends without a word.
func TestClosedPipeProcess(t *testing.T) {
	program := binary(t)
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	var errs bytes.Buffer
	cmd := exec.Command(program, "find")
	cmd.Stdout, cmd.Stderr = w, &errs
	if err := cmd.Run(); err == nil {
		t.Error("the program ended as if all was well")
	}
	w.Close()
	if errs.Len() > 0 {
		t.Errorf("stderr: %s", errs.String())
	}
}

// What cannot be carried out is refused in a text of readable length that says why.
func TestRefused(t *testing.T) {
	many, empty := filepath.Join(t.TempDir(), "many.toml"), filepath.Join(t.TempDir(), "empty.toml")
	if err := errors.Join(os.WriteFile(many, []byte(strings.Repeat("[[alloy]]\n", 10_000)), 0o600), os.WriteFile(empty, nil, 0o600)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args  []string
		words string
	}{
		{[]string{"find", "--near=-x"}, `--near is "-x": expected a whole number`},
		{[]string{"compare", "gray-30", "--rows", ""}, "--rows is empty"},
		{[]string{"compare", "gray-30", "--house", empty}, "the file holds no record"},
		{[]string{"compare", "gray-30", "--house", many}, "more mistakes"},
		{[]string{"check", empty}, "the file holds no record"},
		{[]string{"check", many}, "and 39900 more"},
		{[]string{"show", strings.Repeat("x", 100_000)}, "xxx…"},
		{[]string{"compare", "gray-30", "--service", "-900 F"}, "below absolute zero"},
		{[]string{"compare", "gray-30", "--need", "tensile >= -5 ksi"}, "asks for nothing"},
	} {
		r := try(data.Catalog, c.args...)
		if text := r.out + r.errors; r.code == exitOK || !strings.Contains(text, c.words) || len(text) > 60_000 {
			t.Errorf("%.60q: exit code %d, %d bytes, no %q:\n%.300s", c.args, r.code, len(text), c.words, text)
		}
	}
}

func TestDumbTerminal(t *testing.T) {
	cmd := exec.Command(binary(t), "a356-t6-pm")
	cmd.Env = append(os.Environ(), "TERM=dumb")
	out, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != exitUsage || !strings.Contains(string(out), "alongside compare a356-t6-pm") {
		t.Errorf("%v, output:\n%s", err, out)
	}
}

func TestVersion(t *testing.T) {
	form := regexp.MustCompile(`^alongside \S.* go1\.\d+.* \w+/\w+\ncatalog: \d+ materials, \d+ figures, \d+ sources\n$`)
	for _, args := range [][]string{{"version"}, {"--version"}} {
		if r := try(data.Catalog, args...); r.code != exitOK || !form.MatchString(r.out) {
			t.Errorf("%v: exit code %d, output %q", args, r.code, r.out)
		}
	}
}

func TestCompletion(t *testing.T) {
	for _, line := range []struct {
		args []string
		want []string
	}{
		{[]string{"compare", "a356-t6-"}, []string{"a356-t6-pm\tA356.0-T6 permanent mold", "a356-t6-sand\t"}},
		{[]string{"a356-t6-"}, []string{"a356-t6-pm\t"}},
		{[]string{"show", "A380"}, []string{"a380-f-die\t"}},
		{[]string{"compare", "--baseline", "gray-3"}, []string{"gray-30\t"}},
		{[]string{"compare", "x", "--format", ""}, []string{"text\n", "json\n"}},
		{[]string{"compare", "x", "--units", ""}, []string{"us\n", "cgs\n"}},
		{[]string{"compare", "x", "--rows", "density,tens"}, []string{"density,tensile_strength\t"}},
		{[]string{"com"}, []string{"compare\t", "completion\t"}},
	} {
		r := try(data.Catalog, append([]string{"__complete"}, line.args...)...)
		for _, w := range line.want {
			if !strings.Contains(r.out, w) {
				t.Errorf("%q does not offer %q:\n%.400s", line.args, w, r.out)
			}
		}
	}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		if r := try(data.Catalog, "completion", shell); r.code != exitOK || !strings.Contains(r.out, "alongside") {
			t.Errorf("completion %s: exit code %d", shell, r.code)
		}
	}
}

// The usual ways to type one material all name it.
func TestUsualSpellings(t *testing.T) {
	want := try(data.Catalog, "show", "a356-t6-pm").out
	for _, typed := range []string{"A356-T6-PM", "a356t6pm", "A356.0-T6 permanent mold", "a356 t6 pm"} {
		if r := try(data.Catalog, "show", typed); r.out != want {
			t.Errorf("%q: exit code %d %s", typed, r.code, r.errors)
		}
	}
}

func TestConvert(t *testing.T) {
	// Factors: NIST SP 811 (2008), B.8; IEC 60028 for %IACS.
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"37 ksi", "MPa"}, "255 MPa\n"},
		{[]string{"37", "ksi", "MPa"}, "255 MPa\n"},
		{[]string{"37", "ksi", "to", "MPa"}, "255 MPa\n"},
		{[]string{"--full", "37ksi", "MPa"}, "255.106019847 MPa\n"},
		{[]string{"0.097 lb/in3", "g/cm3", "kg/m3"}, "2.68 g/cm³\n2680 kg/m³\n"},
		{[]string{"100 %IACS", "uohm-cm", "--full"}, "1.72413793103 µΩ·cm\n"},
		{[]string{"70-95 ksi", "MPa"}, "483–655 MPa\n"},
		{[]string{"-40 °F", "°C"}, "-40 °C\n"},
		{[]string{"-40", "F", "C"}, "-40 °C\n"},
		{[]string{">= 30 ksi", "MPa"}, "≥ 207 MPa\n"},
	} {
		if r := try(data.Catalog, append([]string{"convert"}, c.args...)...); r.out != c.want {
			t.Errorf("convert %q: %q %s, want %q", c.args, r.out, r.errors, c.want)
		}
	}
}

func TestWidthFollowsColumns(t *testing.T) {
	longest := func(columns string) int {
		var out bytes.Buffer
		env := func(name string) string {
			if name == "COLUMNS" {
				return columns
			}
			return ""
		}
		run(context.Background(), []string{"compare", "a356-t6-pm", "319-f-sand", "a380-f-die", "gray-30"}, strings.NewReader(""), &out, io.Discard, env)
		n := 0
		for l := range strings.Lines(out.String()) {
			n = max(n, len([]rune(strings.TrimRight(l, "\n"))))
		}
		return n
	}
	if n := longest(""); n > pipeWidth {
		t.Errorf("a line has %d characters, more than %d", n, pipeWidth)
	}
	if n := longest("200"); n <= pipeWidth || n > 200 {
		t.Errorf("on 200 columns the longest line has %d characters", n)
	}
}

// Reading only the materials named gives the same output as reading all.
func TestSmallCatalogSaysTheSame(t *testing.T) {
	for _, args := range [][]string{
		{"compare", "a356-t6-pm", "319-f-sand", "A380-F-die", "--baseline", "gray-30"},
		{"show", "c83600-sand"},
		{"compare", "a356-t6-pm", "319-f-snd"},
	} {
		var out, errs bytes.Buffer
		code := run(context.Background(), args, strings.NewReader(""), &out, &errs, func(string) string { return "" })
		r := try(data.Catalog, args...)
		if code != r.code || out.String() != r.out || errs.String() != r.errors {
			t.Errorf("%v: the outputs differ:\n%s%s\nfrom the whole catalog:\n%s%s", args, out.String(), errs.String(), r.out, r.errors)
		}
	}
}

// Every command explains itself, and its examples can be carried out.
func TestHelpExamples(t *testing.T) {
	p := &program{catalog: data.Catalog}
	for _, cmd := range p.root(nil).Commands() {
		if cmd.Short == "" || cmd.Example == "" {
			t.Errorf("%s: no short description or no example", cmd.Name())
		}
		for _, line := range strings.Split(cmd.Example, "\n") {
			line, _, _ = strings.Cut(strings.TrimSpace(line), " > ")
			args := words(strings.TrimPrefix(line, "alongside "))
			if args[0] != cmd.Name() {
				t.Errorf("%s: the example %q is of another command", cmd.Name(), line)
			}
			if r := try(data.Catalog, args...); r.code == exitUsage {
				t.Errorf("%s: %s", line, r.errors)
			}
		}
		if r := try(data.Catalog, cmd.Name(), "--help"); r.code != exitOK || !strings.Contains(r.out, cmd.Example) {
			t.Errorf("%s --help: exit code %d", cmd.Name(), r.code)
		}
	}
}

// A mistyped command offers the command, not what a search makes of it.
func TestMistypedCommand(t *testing.T) {
	for typed, want := range map[string]string{"sawp": "alongside swap", "breif": "alongside brief", "compair": "alongside compare", "gray-3": "gray-30"} {
		if r := try(data.Catalog, typed, "a356-t6-pm"); r.code != exitUsage || !strings.Contains(r.errors, want) {
			t.Errorf("%s: %d, %s", typed, r.code, r.errors)
		}
	}
}
