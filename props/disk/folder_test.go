package disk

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// Each system has its folders; nothing goes where others could write.
func TestFolder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("paths of other systems")
	}
	for _, c := range []struct {
		place      Place
		goos, want string
		set        map[string]string
	}{
		{Config, "linux", "/h/.config/alongside", map[string]string{"HOME": "/h"}},
		{Config, "linux", "/c/alongside", map[string]string{"HOME": "/h", "XDG_CONFIG_HOME": "/c"}},
		{Config, "linux", "/h/.config/alongside", map[string]string{"HOME": "/h", "XDG_CONFIG_HOME": "c"}},
		{Config, "darwin", "/h/Library/Application Support/alongside", map[string]string{"HOME": "/h"}},
		{Config, "windows", "/roams/alongside", map[string]string{"LocalAppData": "/l", "AppData": "/roams"}},
		{Data, "windows", "/l/alongside", map[string]string{"LocalAppData": "/l", "AppData": "/roams"}},
		{Data, "linux", "/h/.local/share/alongside", map[string]string{"HOME": "/h", "XDG_CONFIG_HOME": "/c"}},
		{Config, "linux", "", nil}, {Config, "darwin", "", nil}, {Config, "windows", "", nil}, {Data, "linux", "", map[string]string{"HOME": "h"}},
	} {
		if have := c.place.Folder(c.goos, func(name string) string { return c.set[name] }); have != c.want {
			t.Errorf("%s %s %v: %q, want %q", c.place.Variable, c.goos, c.set, have, c.want)
		}
	}
}

// A lock is refused where its file cannot be made or is no plain file, with the
// place and a way out.
func TestLockRefused(t *testing.T) {
	dir := t.TempDir()
	file, folder := filepath.Join(dir, "file"), filepath.Join(dir, "folder")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{folder: "is a folder, not a plain file; move it away", filepath.Join(file, "lock"): "stands where a folder should be; move it away"} {
		l, err := NewLock(path)
		if l != nil || err == nil || !strings.Contains(err.Error(), want) || !strings.HasPrefix(err.Error(), dir) {
			t.Errorf("%s: %v", path, err)
		}
	}
	deep := filepath.Join(dir, "a", "b", ".lock")
	l, err := NewLock(deep)
	if err != nil {
		t.Fatal(err)
	}
	l.Release()
	if _, err := os.Lstat(deep); !os.IsNotExist(err) {
		t.Errorf("the file of the lock is left: %v", err)
	}
}

// A pipe is neither read, which could wait for ever, nor replaced.
func TestPipeIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	if err := makePipe(path); err != nil {
		t.Skip(err)
	}
	if _, err := Read(path, 10); err == nil || !strings.Contains(err.Error(), "is a pipe, not a plain file") {
		t.Errorf("read: %v", err)
	}
	if err := Replace(path, []byte("x")); err == nil || !strings.Contains(err.Error(), "is a pipe") {
		t.Errorf("replace: %v", err)
	}
}
