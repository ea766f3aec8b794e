package sheets

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/sys/unix"

	"alongside/data"
)

// A disk that fills up, and one that can only be read: the file stands as it
// was, the message says what to do, and the call is saved when it can be.
func TestFullDisk(t *testing.T) {
	dir := t.TempDir()
	if err := unix.Mount("tmpfs", dir, "tmpfs", 0, "size=64k"); err != nil {
		t.Skipf("a small disk cannot be mounted here: %v", err)
	}
	t.Cleanup(func() { _ = unix.Unmount(dir, unix.MNT_DETACH) })
	f := &Folder{Path: filepath.Join(dir, "calls"), Catalog: data.Catalog}
	h := f.New()
	h.Put(named("before"))
	if err := h.Save(); err != nil {
		t.Fatal(err)
	}
	filler := filepath.Join(dir, "filler")
	if err := os.WriteFile(filler, make([]byte, 48<<10), 0o600); err != nil {
		t.Fatal(err)
	}
	h.Put(state(60))
	if err := h.Save(); err == nil || !strings.Contains(err.Error(), ".toml: the disk is full; make room on it") {
		t.Errorf("have %v", err)
	}
	if s, err := f.Last(); err != nil || s.Call.Name != "before" {
		t.Errorf("have %+v, %v", s, err)
	}
	if entries, _ := os.ReadDir(f.Path); len(entries) != 2 {
		t.Errorf("half a file is left: %v", entries)
	}
	if err := errors.Join(os.Remove(filler), h.Close()); err != nil {
		t.Error(err)
	}
	if s, err := f.Last(); err != nil || !s.Call.Same(state(60)) {
		t.Errorf("have %+v, %v", s, err)
	}
	if err := unix.Mount("", dir, "", unix.MS_REMOUNT|unix.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	h = f.New()
	h.Put(named("after"))
	if err := h.Save(); err == nil || !strings.Contains(err.Error(), "the disk can only be read; use a folder on another") {
		t.Errorf("have %v", err)
	}
	if _, err := f.Find("60"); err != nil {
		t.Errorf("a disk that can be read: %v", err)
	}
}

func TestFolderNotAllowed(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may write everywhere")
	}
	f := newFolder(t)
	save(t, f, named("A"))
	if err := os.Chmod(f.Path, 0o500); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(f.Path, 0o700) })
	h := f.New()
	h.Put(named("B"))
	if err := h.Save(); err == nil || !strings.Contains(err.Error(), "you may not read or write there; allow it for your user") {
		t.Errorf("have %v", err)
	}
}
