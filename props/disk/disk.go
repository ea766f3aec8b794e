// Package disk reads and replaces whole files of modest size. What it reads is
// a plain file, never a pipe, a device or a link; what it replaces is at every
// moment the old content or the new, never a part of either.
package disk

import (
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Read returns the content of a plain file of at most most bytes. The error is
// an *Error.
func Read(path string, most int64) ([]byte, error) {
	if err := plain(path); err != nil {
		return nil, Explained(path, err)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, Explained(path, err)
	}
	defer file.Close()
	content, err := io.ReadAll(io.LimitReader(file, most+1))
	if err != nil {
		return nil, Explained(path, err)
	}
	if int64(len(content)) > most {
		return nil, &Error{Path: path, Problem: "is too large", Remedy: "it cannot be what it should be; move it away"}
	}
	return content, nil
}

// New writes a file that is not there yet. The error, an *Error or one of the file
// system explained, names the path.
func New(path string, content []byte) error {
	if _, err := os.Lstat(path); err == nil {
		return &Error{Path: path, Problem: "is there already", Remedy: "name another file"}
	} else if !os.IsNotExist(err) {
		return Explained(path, err)
	}
	return Replace(path, content)
}

// Replace puts a file with this content in the place of the one at path, which
// need not exist, in a folder that is made where there is none. Both are for
// the user alone. The content is on the disk when it returns nil; otherwise the
// old file stands as it was, and the error is an *Error.
func Replace(path string, content []byte) error {
	if err := replace(path, content); err != nil {
		return Explained(path, err)
	}
	return nil
}

func replace(path string, content []byte) (err error) {
	if err := plain(path); err != nil && !os.IsNotExist(err) {
		return err
	}
	dir, name := filepath.Dir(path), filepath.Base(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	file, err := os.CreateTemp(dir, unfinished(name)) // mode 0600
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(file.Name())
		}
	}()
	_, err = file.Write(content)
	if err == nil {
		err = file.Sync()
	}
	if closed := file.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(file.Name(), path)
	}
	if err == nil {
		syncFolder(dir)
	}
	return err
}

// unfinished is the pattern of the names under which a file is written first.
func unfinished(name string) string { return "." + name + ".new-*" }

// Sweep removes what writers of path left that were killed. Call it while no
// other can write there.
func Sweep(path string) {
	dir, name := filepath.Split(path)
	entries, _ := os.ReadDir(filepath.Clean(dir))
	for _, e := range entries {
		if ours, _ := filepath.Match(unfinished(name), e.Name()); ours {
			_ = os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// syncFolder makes a rename last through a loss of power, where the system lets
// a folder be opened for that. The file is whole without it.
func syncFolder(dir string) {
	if d, err := os.Open(filepath.Clean(dir)); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}

// plain fails where path is no plain file.
func plain(path string) error {
	info, err := os.Lstat(path)
	if err != nil {
		return err
	}
	if kind := info.Mode().Type(); kind != 0 {
		return &Error{Path: path, Problem: "is " + kindName(kind) + ", not a plain file", Remedy: "move it away"}
	}
	return nil
}

func kindName(kind fs.FileMode) string {
	switch {
	case kind&fs.ModeDir != 0:
		return "a folder"
	case kind&fs.ModeSymlink != 0:
		return "a symbolic link"
	case kind&(fs.ModeNamedPipe|fs.ModeSocket) != 0:
		return "a pipe"
	}
	return "a device"
}

// Writable fails with an *Error where no file could be put into a folder, or,
// where there is none yet, the folder itself not be made. It leaves nothing behind.
func Writable(dir string) error {
	for at := filepath.Clean(dir); ; at = filepath.Dir(at) {
		info, err := os.Stat(at)
		switch {
		case os.IsNotExist(err) && at != filepath.Dir(at):
			continue
		case err == nil && !info.IsDir():
			return &Error{Path: at, Problem: "is no folder", Remedy: "move it away"}
		}
		file, err := os.CreateTemp(at, unfinished("alongside"))
		if err != nil {
			return Explained(at, err)
		}
		_ = file.Close()
		return os.Remove(file.Name())
	}
}
