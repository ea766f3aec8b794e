package clip

import (
	"bytes"
	"context"
	"errors"
	"os/exec"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// desk is a fake place to copy in: commands that are installed, what each
// does, and a record of what ran.
type desk struct {
	installed map[string]error // by name; the error that running it gives
	ran       []Command        // those that copy
	held      string           // what the clipboard holds
	deaf      bool             // the clipboard does not take what it is given
	terminal  bytes.Buffer
}

func (d *desk) env(t *testing.T, goos string, vars map[string]string) Env {
	return Env{
		Now: moment,
		OS:  goos, Getenv: func(name string) string { return vars[name] },
		LookPath: func(name string) (string, error) {
			if _, ok := d.installed[name]; !ok {
				return "", &exec.Error{Name: name, Err: exec.ErrNotFound}
			}
			return "/bin/" + name, nil
		},
		Run: func(_ context.Context, c Command) (string, error) {
			if c.Read {
				return d.held, nil
			}
			d.ran = append(d.ran, c)
			if !d.deaf {
				d.held = c.Stdin
			}
			return "", d.installed[strings.TrimPrefix(c.Path, "/bin/")]
		},
		Terminal: &d.terminal, Dir: t.TempDir(),
	}
}

func TestWay(t *testing.T) {
	type vars = map[string]string
	type tools = map[string]error
	text := Payload{Text: "37 ksi"}
	table := Payload{Text: "37 ksi", HTML: "<table></table>"}
	tests := []struct {
		name      string
		os        string
		kernel    string
		vars      vars
		installed tools
		use       Use
		payload   Payload
		ran       string // command lines, without paths
		report    string // DIR stands for the directory
	}{
		{"wayland", "linux", "", vars{"WAYLAND_DISPLAY": "wayland-0", "DISPLAY": ":0"}, tools{"wl-copy": nil, "xclip": nil}, Auto, text,
			"wl-copy --type text/plain", "copied (wl-copy)"},
		{"wayland html", "linux", "", vars{"WAYLAND_DISPLAY": "wayland-0"}, tools{"wl-copy": nil}, Auto, table,
			"wl-copy --type text/html", "copied as HTML only, for a mail or document (wl-copy)"},
		{"wayland by way of X", "linux", "", vars{"WAYLAND_DISPLAY": "wayland-0", "DISPLAY": ":0"}, tools{"xclip": nil}, Auto, text,
			"xclip -selection clipboard -in", "copied (xclip)"},
		{"x11", "linux", "", vars{"DISPLAY": ":0"}, tools{"xclip": nil, "xsel": nil}, Auto, text,
			"xclip -selection clipboard -in", "copied (xclip)"},
		{"x11 html", "linux", "", vars{"DISPLAY": ":0"}, tools{"xclip": nil}, Auto, table,
			"xclip -selection clipboard -in -target text/html", "copied as HTML only, for a mail or document (xclip)"},
		{"xsel", "freebsd", "", vars{"DISPLAY": ":0"}, tools{"xsel": nil}, Auto, text,
			"xsel --clipboard --input", "copied (xsel)"},
		{"xsel has no html", "linux", "", vars{"DISPLAY": ":0"}, tools{"xsel": nil}, Auto, table, "",
			"saved to DIR/2026-05-04-030201-copy.txt; open it in a browser to copy the table (xclip: not installed; xsel, the terminal's clipboard: carries plain text only)"},
		{"xclip hangs", "linux", "", vars{"DISPLAY": ":0"}, tools{"xclip": Silent{time.Second}, "xsel": nil}, Auto, text,
			"xclip -selection clipboard -in; xsel --clipboard --input", "copied (xsel)"},
		{"mac", "darwin", "", nil, tools{"pbcopy": nil, "osascript": nil}, Auto, text,
			"pbcopy", "copied (pbcopy)"},
		{"mac html", "darwin", "", nil, tools{"pbcopy": nil, "osascript": nil}, Auto, table,
			"osascript -", "copied as table and text (osascript)"},
		{"wsl", "linux", "5.15.90.1-Microsoft-standard-WSL2", vars{"DISPLAY": ":0"}, tools{"clip.exe": nil, "xclip": nil}, Auto, text,
			"clip.exe", "copied (clip.exe)"},
		{"container under wsl", "linux", "5.15.90.1-microsoft-standard-WSL2", nil, nil, Auto, text, "",
			"sent to the terminal's clipboard (cannot confirm)"},
		{"ssh", "linux", "", vars{"SSH_CONNECTION": "1 2 3 4", "DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, tools{"xclip": nil, "wl-copy": nil}, Auto, text, "",
			"sent to the terminal's clipboard (cannot confirm)"},
		{"ssh to a mac", "darwin", "", vars{"SSH_TTY": "/dev/ttys001"}, tools{"pbcopy": nil}, Auto, text, "",
			"sent to the terminal's clipboard (cannot confirm)"},
		{"ssh forwarding X", "linux", "", vars{"SSH_CONNECTION": "1 2 3 4", "DISPLAY": "localhost:10.0"}, tools{"xclip": nil}, Auto, text,
			"xclip -selection clipboard -in", "copied (xclip)"},
		{"tmux", "linux", "", vars{"TMUX": "/tmp/tmux,1,0"}, tools{"tmux": nil}, Auto, text,
			"tmux load-buffer -w -", "sent to tmux's paste buffer, and through it to the terminal's clipboard (cannot confirm)"},
		{"old tmux", "linux", "", vars{"TMUX": "/tmp/tmux,1,0"}, tools{"tmux": Failed{"tmux: unknown option -- w", nil}}, Auto, text,
			"tmux load-buffer -w -", "sent to the terminal's clipboard through tmux's pass-through (cannot confirm)"},
		{"screen", "linux", "", vars{"STY": "1.pts-0", "TERM": "screen"}, nil, Auto, text, "",
			"sent to the terminal's clipboard through screen (cannot confirm)"},
		{"local without commands", "linux", "", vars{"DISPLAY": ":0"}, nil, Auto, text, "",
			"sent to the terminal's clipboard (cannot confirm; to be sure install the package xclip)"},
		{"too long for a terminal", "linux", "", vars{"SSH_TTY": "/dev/pts/1"}, nil, Auto, Payload{Text: strings.Repeat("x", 80_000)}, "",
			"saved to DIR/2026-05-04-030201-copy.txt (the terminal's clipboard: 80000 bytes, and many take 74988 at most)"},
		{"system only", "linux", "", vars{"DISPLAY": ":0", "TMUX": "/tmp/tmux,1,0"}, tools{"tmux": nil}, System, text, "",
			"saved to DIR/2026-05-04-030201-copy.txt (xclip, xsel: not installed)"},
		{"terminal only", "linux", "", vars{"DISPLAY": ":0"}, tools{"xclip": nil}, Terminal, text, "",
			"sent to the terminal's clipboard (cannot confirm)"},
		{"file only", "linux", "", vars{"DISPLAY": ":0"}, tools{"xclip": nil}, File, text, "",
			"saved to DIR/2026-05-04-030201-copy.txt"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := desk{installed: test.installed}
			env := d.env(t, test.os, test.vars)
			env.Kernel, env.Use = test.kernel, test.use
			report, err := Copy(context.Background(), test.payload, env)
			if err != nil {
				t.Fatal(err)
			}
			if have, want := report.String(), strings.ReplaceAll(test.report, "DIR", env.Dir); have != want {
				t.Errorf("\nhave: %s\nwant: %s", have, want)
			}
			var lines []string
			for _, c := range d.ran {
				lines = append(lines, strings.Join(append([]string{strings.TrimPrefix(c.Path, "/bin/")}, c.Args...), " "))
				if c.Limit <= 0 || c.Limit > 10*time.Second {
					t.Errorf("%s may take %v", c.Path, c.Limit)
				}
			}
			if have := strings.Join(lines, "; "); have != test.ran {
				t.Errorf("ran\nhave: %s\nwant: %s", have, test.ran)
			}
			sent := d.terminal.Len() > 0
			if claims := strings.HasPrefix(report.String(), "sent to the terminal's"); sent != claims {
				t.Errorf("sent to the terminal: %v, reported: %v", sent, claims)
			}
		})
	}
}

func TestWindowsUsesOneCommandForTextAndTable(t *testing.T) {
	d := desk{installed: map[string]error{"powershell.exe": nil}}
	report, err := Copy(context.Background(), Payload{Text: "a", HTML: "<b>a</b>"}, d.env(t, "windows", nil))
	if err != nil || report.String() != "copied as table and text (powershell.exe)" {
		t.Errorf("%v, %v", report, err)
	}
	if len(d.ran) != 1 || strings.Contains(strings.Join(d.ran[0].Args, " "), "<b>") {
		t.Errorf("ran %v: the content must not be on the command line", d.ran)
	}
}

func TestClipboardThatDoesNotTakeIt(t *testing.T) {
	d := desk{installed: map[string]error{"xclip": nil}, held: "old", deaf: true}
	report, err := Copy(context.Background(), Payload{Text: "new"}, d.env(t, "linux", map[string]string{"DISPLAY": ":0"}))
	if err != nil || !report.Unconfirmed || report.String() != "handed to xclip, but the clipboard does not show it (cannot confirm)" {
		t.Errorf("%v, %v", report, err)
	}
}

func TestCopyRefusesNothing(t *testing.T) {
	d := desk{installed: map[string]error{"xclip": nil}}
	for _, text := range []string{"", " \n", "\x1b\x00"} {
		_, err := Copy(context.Background(), Payload{Text: text}, d.env(t, "linux", map[string]string{"DISPLAY": ":0"}))
		if !errors.Is(err, ErrEmpty) {
			t.Errorf("copying %q: %v, want %v", text, err, ErrEmpty)
		}
	}
	if len(d.ran) > 0 {
		t.Errorf("ran %v", d.ran)
	}
}

func TestCopyStopsWithItsContext(t *testing.T) {
	d := desk{}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Copy(ctx, Payload{Text: "a"}, d.env(t, "linux", nil)); !errors.Is(err, context.Canceled) {
		t.Errorf("have %v, want %v", err, context.Canceled)
	}
	if d.terminal.Len() > 0 {
		t.Error("sent to the terminal all the same")
	}
}

func TestCleanedBeforeItLeaves(t *testing.T) {
	d := desk{installed: map[string]error{"xclip": nil}}
	p := Payload{Text: "a\x1b[31m\r\n\tb\x00", HTML: "<p>\x1b]52;c;eA==\x07µ</p>"}
	if _, err := Copy(context.Background(), p, d.env(t, "linux", map[string]string{"DISPLAY": ":0"})); err != nil {
		t.Fatal(err)
	}
	if want := `<p>]52;c;eA==µ</p>`; !strings.HasSuffix(d.ran[0].Stdin, want) {
		t.Errorf("\nhave: %q\nwant: …%q", d.ran[0].Stdin, want)
	}
}

func TestClean(t *testing.T) {
	tests := []struct{ in, want string }{
		{"37 ksi\n\t255 MPa", "37 ksi\n\t255 MPa"},
		{"µin/in·°F ×10⁻⁶ –", "µin/in·°F ×10⁻⁶ –"},
		{"a\r\nb\rc", "a\nb\nc"},
		{"\x1b[31mred\x1b[m", "[31mred[m"},
		{"nul\x00bell\x07del\x7f", "nulbelldel"},
		{"c1\u009b31m\u0085", "c131m"},
		{"bad\xffbyte", "bad\uFFFDbyte"},
	}
	for _, test := range tests {
		if have := Clean(test.in); have != test.want {
			t.Errorf("Clean(%q)\nhave: %q\nwant: %q", test.in, have, test.want)
		}
	}
}

func TestCleanAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := string(rapid.SliceOf(rapid.Byte()).Draw(t, "in"))
		out := Clean(in)
		for _, r := range out {
			if r < ' ' && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 {
				t.Fatalf("%q keeps %U", out, r)
			}
		}
		if again := Clean(out); again != out {
			t.Fatalf("cleaning %q again gives %q", out, again)
		}
	})
}

func TestParseUse(t *testing.T) {
	for word, want := range map[string]Use{"": Auto, "auto": Auto, " System ": System, "terminal": Terminal, "FILE": File} {
		if have, err := ParseUse(Variable, word); have != want || err != nil {
			t.Errorf("ParseUse(%q) = %v, %v; want %v", word, have, err, want)
		}
	}
	var wrong *UseError
	if _, err := ParseUse("--clipboard", "fax"); !errors.As(err, &wrong) ||
		err.Error() != `--clipboard is "fax": expected auto, system, terminal or file` {
		t.Errorf("have %v", err)
	}
}
