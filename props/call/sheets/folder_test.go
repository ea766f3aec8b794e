package sheets

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"alongside/data"
	"alongside/props/call"
	"alongside/props/compare"
)

var kills = flag.Int("kills", 25, "how often TestKilled kills a writer")

func fresh() call.Call { return call.Call{Bench: compare.NewBench().Clone()} }

// newFolder is an empty folder whose clock goes on by a minute a look.
func newFolder(t *testing.T) *Folder {
	now := noon
	return &Folder{Path: filepath.Join(t.TempDir(), "data", "calls"), Catalog: data.Catalog, Now: func() time.Time { now = now.Add(time.Minute); return now }}
}

// save keeps a call and closes it.
func save(t *testing.T, f *Folder, c call.Call) string {
	t.Helper()
	h := f.New()
	h.Put(c)
	if err := h.Close(); err != nil {
		t.Fatal(err)
	}
	id := h.Sheet().ID
	// Two sheets of one test are written within the resolution of some disks.
	if err := os.Chtimes(f.file(id), f.now(), f.now()); err != nil {
		t.Fatal(err)
	}
	return id
}

func named(name string, pins ...string) call.Call {
	c := fresh()
	c.Name = name
	for _, id := range pins {
		c.Bench.Pin(data.Catalog().Material(id))
	}
	return c
}

func TestDir(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("paths of other systems")
	}
	env := func(set map[string]string) func(string) string { return func(name string) string { return set[name] } }
	for _, c := range []struct {
		goos string
		set  map[string]string
		want string
	}{
		{"linux", map[string]string{"HOME": "/h"}, "/h/.local/share/alongside/calls"},
		{"linux", map[string]string{"HOME": "/h", "XDG_DATA_HOME": "/d"}, "/d/alongside/calls"},
		{"linux", map[string]string{"HOME": "/h", "XDG_DATA_HOME": "d"}, "/h/.local/share/alongside/calls"},
		{"darwin", map[string]string{"HOME": "/h"}, "/h/Library/Application Support/alongside/calls"},
		{"windows", map[string]string{"LocalAppData": "/l", "AppData": "/roams"}, "/l/alongside/calls"},
		{"linux", nil, ""}, {"darwin", nil, ""}, {"windows", nil, ""}, {"linux", map[string]string{"HOME": "h"}, ""},
	} {
		have, err := Dir(c.goos, env(c.set))
		if have != c.want || (err == nil) != (c.want != "") {
			t.Errorf("%s %v: %q, %v; want %q", c.goos, c.set, have, err, c.want)
		}
	}
}

func TestListAndFind(t *testing.T) {
	f := newFolder(t)
	if list, err := f.List(""); len(list) != 0 || err != nil {
		t.Errorf("a folder that is not there: %v, %v", list, err)
	}
	if s, err := f.Last(); s != nil || err != nil {
		t.Errorf("a folder that is not there: %v, %v", s, err)
	}
	bracket := named("Pump bracket", "gray-30", "a356-t6-pm")
	bracket.Said, bracket.Notes = []string{"Runs on a shaft"}, []call.Note{call.NewNote(noon, "ask for the pH")}
	a, b, d := save(t, f, bracket), save(t, f, named("Pump housing", "319-f-sand")), save(t, f, named("", "za-12-sand"))
	if err := os.WriteFile(f.file("broken"), []byte("[[call"), 0o600); err != nil {
		t.Fatal(err)
	}
	for search, want := range map[string][]string{
		"pump": {b, a}, "PUMP gray-30": {a}, "ph shaft": {a}, "A356.0": {a}, "319": {b}, "za": {d}, "2026-11-26": {d, b, a}, "nothing": nil, d: {d}, "broken": {"broken"},
	} {
		list, err := f.List(search)
		var have []string
		for _, s := range list {
			have = append(have, s.ID)
		}
		if err != nil || strings.Join(have, " ") != strings.Join(want, " ") {
			t.Errorf("%s: %v, %v; want %v", search, have, err, want)
		}
	}
	for name, words := range map[string]string{
		"Pump bracket": "", " pump BRACKET": "", a: "", "shaft": "", "za-12": "",
		"pump": `"pump" fits 2 call sheets; say which: ` + b + " (Pump housing), ", "nothing": `no call sheet "nothing"`, "": "fits 4 call sheets",
		"../calls/" + a: "no call sheet", "../../etc/passwd": "no call sheet", f.file(a): "no call sheet", "broken": "broken.toml:1: ",
	} {
		s, err := f.Find(name)
		if words == "" && (err != nil || s == nil) || words != "" && (err == nil || !strings.Contains(err.Error(), words)) {
			t.Errorf("%q: %v, %v", name, s, err)
		}
	}
	if s, err := f.Last(); err != nil || s.ID != d || s.Title() != "call of "+s.Begun.Local().Format("2 Jan 2006 15:04") {
		t.Errorf("last: %+v, %v; want %s", s, err, d)
	}
}

func TestDeleteAndRestore(t *testing.T) {
	f := newFolder(t)
	a := save(t, f, named("A"))
	h, err := f.Open(a)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Delete(a); !errors.Is(err, ErrOpen) {
		t.Errorf("an open sheet was deleted: %v", err)
	}
	if err := h.Close(); err != nil {
		t.Fatal(err)
	}
	if err := f.Delete(a); err != nil {
		t.Fatal(err)
	}
	if list, _ := f.List(""); len(list) != 0 {
		t.Errorf("after delete: %v", list)
	}
	if s, err := f.FindDeleted("a"); err != nil || s.ID != a {
		t.Errorf("deleted: %v, %v", s, err)
	}
	if err := f.Restore(a); err != nil {
		t.Fatal(err)
	}
	if s, err := f.Find("A"); err != nil || s.Call.Name != "A" {
		t.Errorf("restored: %v, %v", s, err)
	}
	for _, err := range []error{f.Restore(a), f.Delete("none"), f.Delete("../calls/x")} {
		if err == nil {
			t.Error("what is not there was moved")
		}
	}
	if list, _ := f.List(""); len(list) != 1 {
		t.Errorf("after it all: %v", list)
	}
}

// Of two programs with one sheet the second is told, and works on a copy.
func TestTwoPrograms(t *testing.T) {
	f := newFolder(t)
	id := save(t, f, named("A", "gray-30"))
	first, err := f.Open(id)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Open(id); !errors.Is(err, ErrOpen) {
		t.Fatalf("opened twice: %v", err)
	}
	second, err := f.Copy(id)
	if err != nil {
		t.Fatal(err)
	}
	second.Put(named("B"))
	first.Put(named("A", "gray-30", "a356-t6-pm"))
	if err := errors.Join(first.Close(), second.Close()); err != nil {
		t.Fatal(err)
	}
	for name, pins := range map[string]int{"A": 2, "B": 0} {
		if s, err := f.Find(name); err != nil || len(s.Call.Bench.Pins) != pins {
			t.Errorf("%s: %+v, %v", name, s, err)
		}
	}
	again, err := f.Open(id)
	if err != nil {
		t.Fatalf("closed, and not to be opened: %v", err)
	}
	_ = again.Close()
}

// Two calls that begin at one moment have a file each, and none takes the name
// of a deleted one.
func TestSameMoment(t *testing.T) {
	f := newFolder(t)
	f.Now = func() time.Time { return noon }
	ids := map[string]bool{}
	for i := range 3 {
		h := f.New()
		h.Put(named(fmt.Sprint(i)))
		if err := h.Save(); err != nil {
			t.Fatal(err)
		}
		ids[h.Sheet().ID] = true
		if err := h.Close(); err != nil {
			t.Fatal(err)
		}
		if err := f.Delete(h.Sheet().ID); err != nil && i == 0 {
			t.Fatal(err)
		}
	}
	if len(ids) != 3 {
		t.Errorf("have %v", ids)
	}
}

// Changes made while a sheet is written are written too, and the newest is what
// stays.
func TestPutWhileSaving(t *testing.T) {
	f := newFolder(t)
	h := f.New()
	var all sync.WaitGroup
	for n := range 100 {
		h.Put(state(n%50 + 1))
		if n%7 == 0 {
			all.Go(func() {
				if err := h.Save(); err != nil {
					t.Error(err)
				}
				_ = h.Sheet().Title()
			})
		}
	}
	all.Wait()
	if err := h.Close(); err != nil {
		t.Fatal(err)
	}
	if s, err := f.Last(); err != nil || !s.Call.Same(state(50)) {
		t.Errorf("have %+v, %v", s, err)
	}
	if list, _ := f.List(""); len(list) != 1 {
		t.Errorf("%d sheets", len(list))
	}
}

// What a version does not understand stays in the file when the call changes,
// and in a copy.
func TestKeptOverChanges(t *testing.T) {
	f := newFolder(t)
	id := save(t, f, named("A"))
	if err := os.WriteFile(f.file(id), []byte("[[call]]\nmood = \"good\"\npins = [\"gone\"]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	h, err := f.Open(id)
	if err != nil {
		t.Fatal(err)
	}
	c := h.Sheet().Call.Clone()
	c.Name = "B"
	h.Put(c)
	other, err := f.Copy(id)
	if err := errors.Join(err, h.Close(), other.Close()); err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{id, other.Sheet().ID} {
		if text, err := os.ReadFile(f.file(id)); err != nil || !strings.Contains(string(text), `mood = "good"`) || !strings.Contains(string(text), `"gone"`) {
			t.Errorf("%v\n%s", err, text)
		}
	}
}

// Whatever stands in the way of a folder or file is told with what to do, and
// the call waits for better times.
func TestObstacles(t *testing.T) {
	f := newFolder(t)
	id := save(t, f, named("A"))
	link := f.file("link")
	if err := os.Symlink(f.file(id), link); err != nil {
		t.Skip(err)
	}
	h := f.New()
	h.Put(named("B"))
	away := f.Path + "-away"
	if err := errors.Join(os.Rename(f.Path, away), os.WriteFile(f.Path, nil, 0o600)); err != nil {
		t.Fatal(err)
	}
	_, list := f.List("")
	for what, err := range map[string]error{"save": h.Save(), "list": list} {
		if err == nil || !strings.Contains(err.Error(), "move it away (XDG_DATA_HOME names another folder)") {
			t.Errorf("%s with a file in the way of the folder: %v", what, err)
		}
	}
	if err := errors.Join(os.Remove(f.Path), os.Rename(away, f.Path)); err != nil {
		t.Fatal(err)
	}
	if err := h.Close(); err != nil {
		t.Errorf("the file is out of the way: %v", err)
	}
	for _, try := range []func() error{
		func() error { _, err := f.Find("link"); return err },
		func() error { _, err := f.Open("link"); return err },
		func() error { _, err := f.Copy("link"); return err },
	} {
		if err := try(); err == nil || !strings.Contains(err.Error(), "is a symbolic link, not a plain file; move it away") {
			t.Errorf("a link: %v", err)
		}
	}
	if err := os.WriteFile(f.file("large"), make([]byte, largest+1), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Find("large"); err == nil || !strings.Contains(err.Error(), "is too large") {
		t.Errorf("have %v", err)
	}
	if list, err := f.List(""); err != nil || len(list) != 4 {
		t.Errorf("%d sheets, %v: the others must still be listed", len(list), err)
	}
}
