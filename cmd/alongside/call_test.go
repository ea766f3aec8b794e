package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props/call/sheets"
	"alongside/props/report"
	"alongside/tui/ptytest"
)

func init() { time.Local = time.UTC } // times are printed as the desk's clock shows them

// keptCalls is a folder with a call sheet, one with a pin that is gone, and a
// broken one; call runs a command line on it.
func keptCalls(t *testing.T) (dir string, call func(args ...string) result) {
	t.Helper()
	home := t.TempDir()
	dir = filepath.Join(home, "alongside", "calls")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	for i, f := range []struct{ id, text string }{
		{"2026-11-20-090000", "[[call\n"},
		{"2026-11-25-160000", "[[call]]\nname = \"Housing\"\npins = [\"t1-f-sand\", \"gone-t6-pm\"]\nonly = [\"density\"]\nmood = \"good\\u001b[2J\"\n"},
		{"2026-11-26-114653", `[[call]]
name = "Pump bracket"
begun = 2026-11-26T11:46:53Z
said = ["Can this be <b>aluminum</b>?", "=1+1 parts a year"]
pins = ["l30", "t1-t6-pm"]
only = ["density", "tensile_strength"]
merits = ["plate-stiffness"]
aside = ["stiffness"]
[[need]]
limit = "tensile strength ≥ 20 ksi"
[[part]]
mass = "4.2 lb"
with = ["threads"]
[[note]]
at = 2026-11-26T11:52:10Z
text = "sleeve in the press fit?"
`},
	} {
		path, at := filepath.Join(dir, f.id+".toml"), time.Date(2026, 11, 26, 12, i, 0, 0, time.UTC)
		if err := os.WriteFile(path, []byte(f.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(path, at, at); err != nil {
			t.Fatal(err)
		}
	}
	return dir, func(args ...string) result {
		var out, errs bytes.Buffer
		p := &program{ctx: context.Background(), in: strings.NewReader(""), out: &out, err: &errs, catalog: invented,
			env: func(name string) string { return map[string]string{"XDG_DATA_HOME": home}[name] }}
		code := p.run(append([]string{"call"}, args...))
		hide := strings.NewReplacer(dir+string(filepath.Separator), "CALLS/")
		return result{code, hide.Replace(out.String()), hide.Replace(errs.String())}
	}
}

func TestCall(t *testing.T) {
	_, call := keptCalls(t)
	for name, line := range map[string]struct {
		args []string
		code int
	}{
		"call-list":    {nil, exitOK},
		"call-text":    {[]string{"pump", "bracket"}, exitOK},
		"call-missing": {[]string{"housing"}, exitOK},
		"call-broken":  {[]string{"2026-11-20-090000"}, exitFindings},
		"call-none":    {[]string{"pump", "housing"}, exitFindings},
		"call-several": {[]string{"2026-11-2"}, exitOK},
	} {
		t.Run(name, func(t *testing.T) { keep(t, name, call(line.args...), line.code) })
	}
}

// Lists and sheets come in every format, with nothing in them that a terminal,
// a page or a spreadsheet would carry out.
func TestCallInEveryFormat(t *testing.T) {
	_, call := keptCalls(t)
	for _, args := range [][]string{{}, {"pump bracket"}, {"housing"}} {
		for _, format := range report.Formats() {
			r := call(append(slices.Clone(args), "--format", format)...)
			if r.code != exitOK || r.out == "" {
				t.Errorf("%v as %s: exit code %d, %s", args, format, r.code, r.errors)
			}
			if strings.ContainsRune(r.out+r.errors, '\x1b') || format == "html" && strings.Contains(r.out, "<b>aluminum") || format == "csv" && strings.Contains(r.out, ",=1+1") {
				t.Errorf("%v as %s:\n%s%s", args, format, r.out, r.errors)
			}
		}
	}
}

// A call is doubled, deleted and restored by its name.
func TestCallDeletedAndRestored(t *testing.T) {
	dir, call := keptCalls(t)
	said := func(want string, args ...string) {
		t.Helper()
		if r := call(args...); r.code != exitOK || !strings.Contains(r.out, want) {
			t.Errorf("call %v: exit code %d, %q, %q; want %q", args, r.code, r.out, r.errors, want)
		}
	}
	said(": copy of Pump bracket\n", "--duplicate", "pump")
	said("deleted copy of Pump bracket; alongside call --restore 2", "--delete", "copy", "of", "pump")
	said("copy of Pump bracket", "--deleted", "copy")
	if r := call("copy"); r.code != exitFindings {
		t.Errorf("after delete: %q", r.out)
	}
	said("restored copy of Pump bracket; ", "--restore", "copy")
	said("copy of Pump bracket", "copy")
	said("deleted 2026-11-20-090000; ", "--delete", "2026-11-20-090000") // the broken one
	for words, args := range map[string][]string{
		`"2026" fits 3 call sheets; say which: `: {"--delete", "2026"},
		`no call sheet "../`:                     {"--delete", "../calls/2026-11-25-160000"},
		"no call sheet":                          {"--restore", "pump"},
		"none of the others can be":              {"--restore", "--delete", "x"},
	} {
		if r := call(args...); r.code == exitOK || !strings.Contains(r.errors, words) {
			t.Errorf("call %v: exit code %d, %q", args, r.code, r.errors)
		}
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 4 {
		t.Errorf("the folder holds %v", entries)
	}
	if r := try(data.Catalog, "call"); r.code != exitFindings || !strings.Contains(r.errors, "set HOME, or XDG_DATA_HOME") {
		t.Errorf("without a home: exit code %d, %q", r.code, r.errors)
	}
}

// A program that is killed has lost nothing; the next start offers the call, and
// q keeps it.
func TestBenchIsKept(t *testing.T) {
	t.Parallel()
	home := t.TempDir()
	start := func(args ...string) *ptytest.Session {
		return ptytest.Start(t, ptytest.Options{Env: []string{"XDG_DATA_HOME=" + home}}, binary(t), args...)
	}
	f := &sheets.Folder{Path: filepath.Join(home, "alongside", "calls"), Catalog: data.Catalog}
	s := start("gray-30", "a356-t6-pm")
	s.WaitFor("? keys")
	s.Type("x")
	s.WaitFor("removed")
	for end := time.Now().Add(10 * time.Second); ; time.Sleep(5 * time.Millisecond) {
		last, err := f.Last()
		if err == nil && last != nil && len(last.Call.Bench.Pins) == 1 {
			break
		}
		if time.Now().After(end) {
			t.Fatalf("the change is not on the disk: %+v, %v", last, err)
		}
	}
	s.Signal(os.Kill)
	s.Exit()
	s = start()
	s.WaitFor("Enter continues call of")
	s.Type(ptytest.Enter)
	s.WaitFor("call of")
	s.Type("/", "319-f-sand", ptytest.Enter)
	s.WaitFor("pinned")
	s.Type("K", "Bracket", ptytest.Enter, "q") // q at once
	if code := s.Exit(); code != exitOK {
		t.Errorf("exit code %d", code)
	}
	if last, err := f.Find("bracket"); err != nil || len(last.Call.Bench.Pins) != 2 {
		t.Errorf("have %+v, %v", last, err)
	}
	s = start("--call", "bracket")
	s.WaitFor("319.0")
	s.Type("q")
	s.Exit()
	if entries, _ := os.ReadDir(f.Path); len(entries) != 1 {
		t.Errorf("the folder holds %v", entries)
	}
}
