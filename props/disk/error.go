package disk

import (
	"errors"
	"io/fs"
	"syscall"
)

// Error says what is wrong with a file and what to do about it. It prints as
//
//	/home/a/calls/x.toml: the disk is full; make room
type Error struct {
	Path, Problem, Remedy string
	Err                   error // of the system; nil where there is none
}

func (e *Error) Error() string { return e.Path + ": " + e.Problem + "; " + e.Remedy }

func (e *Error) Unwrap() error { return e.Err }

// Explained puts what the system says of a file into the user's words.
func Explained(path string, err error) error {
	var known *Error
	if errors.As(err, &known) {
		return known
	}
	e := &Error{Path: path, Err: err}
	var at *fs.PathError
	if errors.As(err, &at) && errors.Is(err, syscall.ENOTDIR) {
		e.Path = at.Path
	}
	switch {
	case full(err):
		e.Problem, e.Remedy = "the disk is full", "make room on it"
	case errors.Is(err, syscall.EROFS):
		e.Problem, e.Remedy = "the disk can only be read", "use a folder on another"
	case errors.Is(err, fs.ErrPermission):
		e.Problem, e.Remedy = "you may not read or write there", "allow it for your user, or use another folder"
	case errors.Is(err, syscall.ENOTDIR), errors.Is(err, fs.ErrExist):
		e.Problem, e.Remedy = "something that is no folder stands where a folder should be", "move it away"
	case errors.Is(err, fs.ErrNotExist):
		e.Problem, e.Remedy = "does not exist", "check the name"
	default:
		e.Problem, e.Remedy = systemWords(err), "check the disk and the folder"
	}
	return e
}

// systemWords is what the system says, without the path, which stands before.
func systemWords(err error) string {
	var number syscall.Errno
	if errors.As(err, &number) {
		return number.Error()
	}
	return err.Error()
}
