package main

import (
	"errors"
	"io"
	"runtime"
	"syscall"
)

// The exit codes of every command.
const (
	exitOK        = 0
	exitFindings  = 1   // nothing found, findings open, or reading or writing failed
	exitUsage     = 2   // the command line cannot be carried out as it stands
	exitSignal    = 128 // and the number of the signal that ended the bench
	exitInterrupt = 130 // ended by Ctrl-C
	exitPipe      = 141 // the reader of the output went away
)

// failure is an error with the exit code it ends the program with. An error
// of another type is one of usage. A failure without an error is silent: all
// has been said on stdout.
type failure struct {
	code int
	err  error
}

func (f *failure) Error() string {
	if f.err == nil {
		return ""
	}
	return f.err.Error()
}

func (f *failure) Unwrap() error { return f.err }

// exitCode is the code that an error ends the program with.
func exitCode(err error) int {
	var f *failure
	switch {
	case err == nil:
		return exitOK
	case errors.As(err, &f):
		return f.code
	}
	return exitUsage
}

// writeFailure turns an error of writing to stdout into a failure: a silent one
// when the reader has closed the pipe, as `head` does.
func writeFailure(err error) error {
	if err == nil {
		return nil
	}
	if errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) || brokenPipe(err) {
		return &failure{code: exitPipe}
	}
	return &failure{exitFindings, err}
}

// brokenPipe knows the two errors that Windows has for a closed pipe:
// ERROR_BROKEN_PIPE and ERROR_NO_DATA.
func brokenPipe(err error) bool {
	var number syscall.Errno
	return runtime.GOOS == "windows" && errors.As(err, &number) && (number == 109 || number == 232)
}
