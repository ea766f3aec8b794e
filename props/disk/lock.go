package disk

import (
	"errors"
	"os"
	"path/filepath"
)

// ErrLocked is the error of Lock while another holds the lock.
var ErrLocked = errors.New("locked by another program")

// Lock is held by one program at a time. The system gives it back when the
// program ends, however it ends.
type Lock struct{ file *os.File }

// NewLock takes the lock that the file at path stands for, which is made where
// there is none. The error is ErrLocked or an *Error.
func NewLock(path string) (*Lock, error) {
	for range 100 {
		if err := plain(path); err != nil && !os.IsNotExist(err) {
			return nil, Explained(path, err)
		}
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return nil, Explained(path, err)
		}
		file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
		if err != nil {
			return nil, Explained(path, err)
		}
		if err := lock(file); err != nil {
			_ = file.Close()
			if errors.Is(err, ErrLocked) {
				return nil, ErrLocked
			}
			return nil, Explained(path, err)
		}
		// The one who held it before may have removed the file meanwhile.
		if mine, err := file.Stat(); err == nil {
			if there, err := os.Lstat(path); err == nil && os.SameFile(mine, there) {
				return &Lock{file}, nil
			}
		}
		_ = file.Close()
	}
	return nil, ErrLocked
}

// Release gives the lock back and takes its file away.
func (l *Lock) Release() {
	_ = os.Remove(l.file.Name()) // fails on Windows while it is open
	_ = l.file.Close()
	removeClosed(l.file.Name())
}
