package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"alongside/data"
	"alongside/props"
	"alongside/props/disk"
	"alongside/tui/ptytest"
)

// A demo that was killed leaves its folder to the next one, which leaves those
// that run.
func TestKilledDemoIsSweptUp(t *testing.T) {
	tmp := t.TempDir()
	t.Setenv("TMPDIR", tmp)
	t.Setenv("TMP", tmp)
	killed, running, fresh, other := filepath.Join(tmp, demoFolders+"1"), filepath.Join(tmp, demoFolders+"2"), filepath.Join(tmp, demoFolders+"3"), filepath.Join(tmp, "other")
	for _, dir := range []string{killed, running, fresh, other} {
		if err := os.MkdirAll(filepath.Join(dir, "alongside"), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	lock, err := disk.NewLock(filepath.Join(running, "lock"))
	if err != nil {
		t.Fatal(err)
	}
	defer lock.Release()
	for _, dir := range []string{killed, running, other} {
		if err := os.Chtimes(dir, time.Time{}, time.Now().Add(-time.Hour)); err != nil {
			t.Fatal(err)
		}
	}
	sweepDemos()
	for dir, want := range map[string]bool{killed: false, running: true, fresh: true, other: true} {
		if _, err := os.Stat(filepath.Join(dir, "alongside")); (err == nil) != want {
			t.Errorf("%s: %v, want it there: %v", filepath.Base(dir), err, want)
		}
	}
}

// The demo works on files of its own, all of which say that they are invented and
// can be read without a mistake, and leaves nothing behind.
func TestDemoFiles(t *testing.T) {
	home := t.TempDir()
	p := &program{ctx: context.Background(), out: io.Discard, err: io.Discard, catalog: data.Catalog, env: func(string) string { return home }}
	if err := p.addHouse(nil); err != nil {
		t.Fatal(err)
	}
	remove, err := p.openDemo(nil)
	if err != nil {
		t.Fatal(err)
	}
	f, err := p.sheets()
	if err != nil || strings.HasPrefix(f.Path, home) {
		t.Fatalf("the calls of the demo are in %s, %v", f.Path, err)
	}
	list, err := f.List("")
	if err != nil || len(list) < 2 {
		t.Fatalf("%d calls, %v", len(list), err)
	}
	for _, s := range list {
		if s.Broken != nil || len(s.Mistakes) > 0 || len(s.Missing()) > 0 || !strings.HasPrefix(s.Title(), "Invented: ") || len(s.Call.Bench.Pins) < 3 || len(s.Call.Needs) == 0 || s.Call.Part.Mass == "" {
			t.Errorf("%s: %q %v %v %v", s.ID, s.Title(), s.Broken, s.Mistakes, s.Missing())
		}
	}
	for id, where := range map[string]string{"a356-t6-pm": "32 bars", "gray-30": "5 bars", "319-t6-sand": ""} {
		house := 0
		for _, f := range p.catalog().Material(id).Figures(props.TensileStrength) {
			if f.Basis != props.House {
				continue
			}
			house++
			if title := f.Source.Title; !strings.Contains(strings.ToLower(title), "invented") || strings.Contains(title, "/") {
				t.Errorf("%q does not say that it is invented, or names a folder", title)
			}
			if !strings.Contains(f.Cond.Note, where) {
				t.Errorf("%s is not of %s: %s", id, where, f.Cond.Note)
			}
		}
		if house != 1 {
			t.Errorf("%d figures of the shop for %s", house, id)
		}
	}
	remove()
	if _, err := os.Stat(filepath.Dir(f.Path)); !os.IsNotExist(err) {
		t.Errorf("the files of the demo are left: %v", err)
	}
	if entries, _ := os.ReadDir(home); len(entries) > 0 {
		t.Errorf("the user's folder holds %v", entries)
	}
}

// The program opens the demo, says so at once, and keeps nothing.
func TestDemo(t *testing.T) {
	home, temp := t.TempDir(), t.TempDir()
	s := ptytest.Start(t, ptytest.Options{Env: []string{"XDG_DATA_HOME=" + home, "TMPDIR=" + temp}}, binary(t), "--demo")
	s.WaitFor("Invented: pump bracket")
	for _, want := range []string{"DEMO, invented", "Class 30", "A356.0", "3 needs"} {
		if !strings.Contains(s.Screen(), want) {
			t.Errorf("no %q on\n%s", want, s.Screen())
		}
	}
	s.Type("x")
	s.WaitFor("removed")
	s.Type("q")
	if code := s.Exit(); code != exitOK {
		t.Errorf("exit code %d", code)
	}
	for _, dir := range []string{home, temp} {
		if entries, _ := os.ReadDir(dir); len(entries) > 0 {
			t.Errorf("%s holds %v", dir, entries)
		}
	}
	if r := try(data.Catalog, "--demo", "gray-30"); r.code != exitUsage || !strings.Contains(r.errors, "leave gray-30 out") {
		t.Errorf("%d %s", r.code, r.errors)
	}
}
