package clip

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"
)

// Silent says that a clipboard command did not end in time.
type Silent struct{ Limit time.Duration }

func (e Silent) Error() string { return fmt.Sprintf("no answer within %v", e.Limit) }

// Failed says that a clipboard command ended with an error.
type Failed struct {
	Said string // the first line it printed, may be empty
	Err  error
}

func (e Failed) Error() string {
	if e.Said != "" {
		return e.Said
	}
	return e.Err.Error()
}

// Unwrap returns the error of running the command.
func (e Failed) Unwrap() error { return e.Err }

// Run runs a clipboard command and waits until it has taken its input, at most
// for its limit. A child it leaves behind to serve the clipboard, as xclip and
// wl-copy do, is neither waited for nor ended, and outlives this program and
// its terminal. It returns what the command printed where c.Read is set, and
// ctx's error, Silent or Failed.
func Run(ctx context.Context, c Command) (string, error) {
	limited, cancel := context.WithTimeout(ctx, c.Limit)
	defer cancel()
	cmd := exec.CommandContext(limited, c.Path, c.Args...)
	cmd.Stdin = strings.NewReader(c.Stdin)
	cmd.Env = append(os.Environ(), c.Env...)
	cmd.WaitDelay = 100 * time.Millisecond
	detach(cmd)
	// A child left behind keeps standard error open: a pipe would have to be
	// waited for, or closed under it. A file does not.
	said, err := os.CreateTemp("", "alongside-*")
	if err == nil {
		defer os.Remove(said.Name())
		defer said.Close()
		cmd.Stderr = said
	}
	var printed strings.Builder
	if c.Read {
		cmd.Stdout = &printed
	}
	err = cmd.Run()
	switch {
	case err == nil:
		return printed.String(), nil
	case ctx.Err() != nil:
		return "", ctx.Err()
	case errors.Is(limited.Err(), context.DeadlineExceeded):
		return "", Silent{c.Limit}
	}
	return "", Failed{Said: firstLine(said), Err: err}
}

// firstLine returns the first line of text in a file, cleaned, and cut to what
// a status line can hold.
func firstLine(file *os.File) string {
	if file == nil {
		return ""
	}
	data := make([]byte, 400)
	n, _ := file.ReadAt(data, 0) // a short read is the usual case
	line, _, _ := strings.Cut(strings.TrimSpace(Clean(string(data[:n]))), "\n")
	if runes := []rune(line); len(runes) > 100 {
		line = string(runes[:100]) + "…"
	}
	return line
}
