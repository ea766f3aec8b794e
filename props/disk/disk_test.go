package disk

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

func TestReplaceAndRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new", "folder", "a.toml")
	for _, content := range []string{"first", "", "second, longer"} {
		if err := Replace(path, []byte(content)); err != nil {
			t.Fatal(err)
		}
		if have, err := Read(path, 100); err != nil || string(have) != content {
			t.Errorf("have %q, %v", have, err)
		}
	}
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if entries, _ := os.ReadDir(filepath.Dir(path)); len(entries) != 1 {
		t.Errorf("left behind: %v", entries)
	}
	if _, err := Read(path, 13); err == nil || !strings.Contains(err.Error(), "is too large") {
		t.Errorf("14 bytes of at most 13: %v", err)
	}
}

// What is no plain file is neither read nor replaced.
// A name alone is a file of the folder the program was started in.
func TestReplaceBareName(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := Replace("bare.txt", []byte("x")); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile("bare.txt"); err != nil || string(b) != "x" {
		t.Errorf("%q, %v", b, err)
	}
}

func TestIrregularFiles(t *testing.T) {
	dir := t.TempDir()
	file, folder, link, dangling := filepath.Join(dir, "file"), filepath.Join(dir, "folder"), filepath.Join(dir, "link"), filepath.Join(dir, "dangling")
	if err := errors.Join(os.WriteFile(file, []byte("kept"), 0o600), os.Mkdir(folder, 0o700)); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Symlink(file, link), os.Symlink(filepath.Join(dir, "nothing"), dangling)); err != nil {
		t.Skip(err) // Windows asks for a right
	}
	for path, words := range map[string]string{folder: "is a folder, not a plain file; move it away", link: "is a symbolic link", dangling: "is a symbolic link", os.DevNull: "is a device"} {
		_, read := Read(path, 10)
		for _, err := range []error{read, Replace(path, []byte("x"))} {
			var e *Error
			if !errors.As(err, &e) || !strings.Contains(err.Error(), words) {
				t.Errorf("%s: %v", path, err)
			}
		}
		if _, err := NewLock(path); err == nil {
			t.Errorf("%s was locked", path)
		}
	}
	if have, err := Read(file, 10); string(have) != "kept" {
		t.Errorf("the file behind the link holds %q, %v", have, err)
	}
}

// A file where a folder should be, and a link that leads nowhere.
func TestFolderInTheWay(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Replace(filepath.Join(file, "a.toml"), nil); err == nil || !strings.Contains(err.Error(), "move it away") {
		t.Errorf("have %v", err)
	}
	if _, err := Read(filepath.Join(dir, "none"), 1); err == nil || !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "does not exist; check the name") {
		t.Errorf("have %v", err)
	}
}

// What the system says becomes what to do.
func TestExplained(t *testing.T) {
	for number, words := range map[error]string{
		syscall.EROFS: "can only be read; use a folder on another", fs.ErrPermission: "allow it for your user", syscall.EIO: "check the disk",
	} {
		err := Explained("/x/a.toml", &fs.PathError{Op: "open", Path: "/x/.a.toml.new-1", Err: number})
		if !strings.HasPrefix(err.Error(), "/x/a.toml: ") || !strings.Contains(err.Error(), words) || strings.Contains(err.Error(), ".new-") || !errors.Is(err, number) {
			t.Errorf("%v: %v", number, err)
		}
	}
}

func TestSweep(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{".a.toml.new-123", ".b.toml.new-123", "a.toml", ".a.toml.lock"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	Sweep(filepath.Join(dir, "a.toml"))
	entries, _ := os.ReadDir(dir)
	if len(entries) != 3 || entries[0].Name() != ".a.toml.lock" {
		t.Errorf("left: %v", entries)
	}
}

func TestLock(t *testing.T) {
	path := filepath.Join(t.TempDir(), "folder", ".a.lock")
	first, err := NewLock(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := NewLock(path); !errors.Is(err, ErrLocked) {
		t.Errorf("locked twice: %v", err)
	}
	first.Release()
	second, err := NewLock(path)
	if err != nil {
		t.Fatal(err)
	}
	second.Release()
	if _, err := os.Lstat(path); !os.IsNotExist(err) {
		t.Errorf("the file of the lock is left: %v", err)
	}
}

// A folder that is there, one to be made, one in whose place a file stands.
func TestWritable(t *testing.T) {
	dir := t.TempDir()
	if err := Writable(dir); err != nil {
		t.Error(err)
	}
	if err := Writable(filepath.Join(dir, "a", "b")); err != nil {
		t.Error(err)
	}
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{file, filepath.Join(file, "a")} {
		if err := Writable(path); err == nil || !strings.Contains(err.Error(), "folder") {
			t.Errorf("%s: %v", path, err)
		}
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("it left %d entries behind", len(left)-1)
	}
}

// A file cannot be kept, nor a lock taken, where something else stands in the way;
// the reason names it.
func TestInTheWay(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{filepath.Join(file, "x"), dir} {
		if _, err := NewLock(path); err == nil || !strings.Contains(err.Error(), dir) {
			t.Errorf("lock %s: %v", path, err)
		}
		if err := Replace(path, []byte("x")); err == nil || !strings.Contains(err.Error(), dir) {
			t.Errorf("replace %s: %v", path, err)
		}
		if _, err := Read(path, 10); err == nil || !strings.Contains(err.Error(), dir) {
			t.Errorf("read %s: %v", path, err)
		}
	}
	if b, err := os.ReadFile(file); err != nil || len(b) != 0 {
		t.Errorf("%q, %v", b, err)
	}
}
