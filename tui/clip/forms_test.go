package clip

import (
	"encoding/base64"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
)

func TestOSC52Sequence(t *testing.T) {
	const inner = "\x1b]52;c;MzcgwrUK\x07" // base64 of "37 µ\n"
	type vars = map[string]string
	tests := []struct {
		name    string
		vars    vars
		through string
		want    string
	}{
		{"bare", vars{"TERM": "xterm-256color"}, "", inner},
		{"tmux", vars{"TERM": "screen-256color", "TMUX": "/tmp/t,1,0"}, "tmux's pass-through", inner + "\x1bPtmux;\x1b" + inner + "\x1b\\"},
		{"tmux far away", vars{"TERM": "tmux-256color"}, "tmux's pass-through", inner + "\x1bPtmux;\x1b" + inner + "\x1b\\"},
		{"screen", vars{"TERM": "screen.xterm", "STY": "1.pts-0"}, "screen", inner + "\x1bP" + inner + "\x1b\\"},
	}
	for _, test := range tests {
		through, have := osc52Sequence("37 µ\n", func(name string) string { return test.vars[name] })
		if through != test.through || have != test.want {
			t.Errorf("%s:\nhave: %q through %q\nwant: %q through %q", test.name, have, through, test.want, test.through)
		}
	}
}

func TestLongestOSC52FitsTheCap(t *testing.T) {
	_, sequence := osc52Sequence(strings.Repeat("x", longestOSC52), func(string) string { return "" })
	if len(sequence) > 100_000 {
		t.Errorf("the longest sequence is %d bytes", len(sequence))
	}
}

// The four offsets must point at the bytes they name, whatever the fragment.
func TestCFHTML(t *testing.T) {
	for _, fragment := range []string{"<b>37 ksi</b>", "µin/in·°F", strings.Repeat("é", 5000)} {
		have := cfHTML(fragment)
		offset := func(name string) int {
			_, rest, ok := strings.Cut(have, name+":")
			if !ok {
				t.Fatalf("no %s in %.200q", name, have)
			}
			digits, _, _ := strings.Cut(rest, "\r\n")
			n, err := strconv.Atoi(digits)
			if err != nil {
				t.Fatal(err)
			}
			return n
		}
		if part := have[offset("StartFragment"):offset("EndFragment")]; part != fragment {
			t.Errorf("fragment\nhave: %q\nwant: %q", part, fragment)
		}
		if part := have[offset("StartHTML"):offset("EndHTML")]; !strings.HasPrefix(part, "<html>") || !strings.HasSuffix(part, "</html>") {
			t.Errorf("document: %q", part)
		}
	}
}

func TestPowershellInput(t *testing.T) {
	lines := strings.Split(powershellInput(Payload{Text: "37 µ\nb", HTML: "<i>µ</i>"}), "\n")
	for i, want := range []string{"37 µ\r\nb", cfHTML("<i>µ</i>")} {
		have, err := base64.StdEncoding.DecodeString(lines[i])
		if err != nil || string(have) != want {
			t.Errorf("line %d: %q, %v; want %q", i, have, err, want)
		}
	}
	if have := powershellInput(Payload{Text: "a"}); have != "YQ==\n\n" {
		t.Errorf("text alone: %q", have)
	}
}

func TestAppleScript(t *testing.T) {
	if have, want := appleScript(Payload{Text: `1 "in" \ µ` + "\nb"}), `set the clipboard to "1 \"in\" \\ µ`+"\nb\"\n"; have != want {
		t.Errorf("text\nhave: %q\nwant: %q", have, want)
	}
	have := appleScript(Payload{Text: "a", HTML: "µ"})
	if !strings.HasPrefix(have, `set the clipboard to {string:"a", «class HTML»:«data HTML3C6D657461`) || !strings.HasSuffix(have, "C2B5»}\n") {
		t.Errorf("HTML: %q", have)
	}
}

func TestUTF16LE(t *testing.T) {
	have := utf16LE("µ𝛼\r\n")
	var units []uint16
	for i := 0; i+1 < len(have); i += 2 {
		units = append(units, uint16(have[i])|uint16(have[i+1])<<8)
	}
	if text := string(utf16.Decode(units)); text != "\uFEFFµ𝛼\r\n" {
		t.Errorf("have %q", text)
	}
}

// moment is when the files of these tests are written.
func moment() time.Time { return time.Date(2026, 5, 4, 3, 2, 1, 0, time.UTC) }

// A file is called by time and subject, and takes the place of none before it.
func TestFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new", "alongside")
	env := Env{Dir: dir, Now: moment}
	for _, f := range []struct {
		p    Payload
		name string
	}{
		{Payload{Text: "first", File: "swap to A356.0-T6.txt"}, "2026-05-04-030201-swap-to-A356.0-T6.txt"},
		{Payload{Text: "second", File: "swap to A356.0-T6.txt"}, "2026-05-04-030201-swap-to-A356.0-T6-2.txt"},
		{Payload{Text: "third", File: "../../etc/passwd"}, "2026-05-04-030201-etc-passwd.txt"},
		{Payload{Text: "fourth"}, "2026-05-04-030201-copy.txt"},
		{Payload{Text: "fifth", File: strings.Repeat("long ", 100) + ".md"}, "2026-05-04-030201-" + strings.Repeat("long-", 100)[500-57:] + ".md"},
	} {
		report, err := copyToFile(t.Context(), f.p, env)
		if err != nil {
			t.Fatal(err)
		}
		have, err := os.ReadFile(report.Path)
		if err != nil || string(have) != f.p.Text || report.Path != filepath.Join(dir, f.name) {
			t.Errorf("%s holds %q, %v; want %q in %s", report.Path, have, err, f.p.Text, f.name)
		}
		if info, err := os.Stat(report.Path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("mode %v, %v; want 0600", info.Mode(), err)
		}
	}
	report, err := copyToFile(t.Context(), Payload{Text: "a", HTML: "<table></table>", File: "bench.html"}, env)
	if err != nil || filepath.Base(report.Path) != "2026-05-04-030201-bench.html" {
		t.Fatalf("%v, %v", report, err)
	}
	if have, _ := os.ReadFile(report.Path); !strings.Contains(string(have), "charset=utf-8") || !strings.HasSuffix(string(have), "<table></table>") {
		t.Errorf("HTML file: %q", have)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 6 {
		t.Errorf("%v, %v: want six files and nothing half written", entries, err)
	}
}

func TestNoFileNoHalfFile(t *testing.T) {
	dir := t.TempDir()
	inTheWay := filepath.Join(dir, "file")
	if err := os.WriteFile(inTheWay, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Copy(t.Context(), Payload{Text: "a"}, Env{Dir: inTheWay, Use: File, Getenv: os.Getenv})
	if err == nil || !strings.HasPrefix(err.Error(), "could not copy: a file: ") {
		t.Errorf("have %v", err)
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 1 {
		t.Errorf("left behind: %v", entries)
	}
}

func TestStateDir(t *testing.T) {
	vars := map[string]string{"HOME": "/home/me"}
	getenv := func(name string) string { return vars[name] }
	if have := stateDir("linux", getenv); have != filepath.FromSlash("/home/me/.local/state/alongside") {
		t.Errorf("have %s", have)
	}
	vars["XDG_STATE_HOME"] = "relative/is/ignored"
	if have := stateDir("linux", getenv); have != filepath.FromSlash("/home/me/.local/state/alongside") {
		t.Errorf("have %s", have)
	}
	vars["XDG_STATE_HOME"] = "/state"
	if have := stateDir("linux", getenv); have != filepath.FromSlash("/state/alongside") {
		t.Errorf("have %s", have)
	}
}

// Without a home a copy goes to a folder that was made for it, which nobody else
// can have made before.
func TestFileWithoutHome(t *testing.T) {
	tmp := t.TempDir()
	t.Setenv("TMPDIR", tmp)
	t.Setenv("TMP", tmp)
	nothing := func(string) string { return "" }
	env := Env{OS: "linux", Getenv: nothing, Dir: stateDir("linux", nothing), Use: File}
	var folders []string
	for range 2 {
		report, err := Copy(t.Context(), Payload{Text: "a"}, env)
		if err != nil {
			t.Fatal(err)
		}
		dir := filepath.Dir(report.Path)
		at, err := os.Stat(dir)
		if err != nil || filepath.Dir(dir) != tmp || runtime.GOOS != "windows" && at.Mode().Perm() != 0o700 {
			t.Errorf("%s: %v, %v", report.Path, at, err)
		}
		folders = append(folders, dir)
	}
	if folders[0] == folders[1] {
		t.Errorf("both copies are in %s", folders[0])
	}
	if offers := Offers(env); !strings.Contains(offers[len(offers)-1].Name, "set HOME") {
		t.Errorf("offered: %v", offers)
	}
}
