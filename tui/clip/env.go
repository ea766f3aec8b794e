package clip

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"
)

// Variable names the environment variable with the user's choice of way.
const Variable = "ALONGSIDE_CLIPBOARD"

// Use restricts the ways to copy. The file stays as the last resort in each.
type Use uint8

const (
	// Auto tries all ways.
	Auto Use = iota
	// System uses the system's clipboard commands only.
	System
	// Terminal uses the terminal's clipboard only.
	Terminal
	// File always saves to a file.
	File
)

// ParseUse reads the value of ALONGSIDE_CLIPBOARD or of a flag; where names
// it in the error. Empty means Auto.
func ParseUse(where, word string) (Use, error) {
	switch strings.ToLower(strings.TrimSpace(word)) {
	case "", "auto":
		return Auto, nil
	case "system":
		return System, nil
	case "terminal":
		return Terminal, nil
	case "file":
		return File, nil
	}
	return Auto, &UseError{Where: where, Input: word}
}

// UseError says that a clipboard setting is not one of the words accepted.
type UseError struct {
	Where string // what was set
	Input string // the word found there
}

func (e *UseError) Error() string {
	return fmt.Sprintf("%s is %q: expected auto, system, terminal or file", e.Where, e.Input)
}

// Env is all that Copy knows of the place it runs in.
type Env struct {
	OS       string                                         // as runtime.GOOS
	Kernel   string                                         // release of the kernel, by which WSL is known
	Getenv   func(string) string                            // the environment
	LookPath func(string) (string, error)                   // finds a command
	Run      func(context.Context, Command) (string, error) // runs one; its output for Command.Read
	Terminal io.Writer                                      // takes escape sequences; nil where there is no terminal
	Dir      string                                         // for the file; "": a new folder each time
	Use      Use
	Now      func() time.Time // for the name of the file; nil: time.Now
}

func (e Env) now() time.Time {
	if e.Now == nil {
		return time.Now()
	}
	return e.Now()
}

// Here is the Env of this process. out is where the program draws; pass the
// same *os.File that Bubble Tea writes to, so that an escape sequence, written
// in one piece, cannot land inside a frame. Where out is no terminal that
// could have a clipboard, Terminal is nil. A wrong ALONGSIDE_CLIPBOARD gives a
// *UseError beside a usable Env.
func Here(out *os.File, getenv func(string) string) (Env, error) {
	kernel, _ := os.ReadFile("/proc/sys/kernel/osrelease") // only Linux has it
	use, err := ParseUse(Variable, getenv(Variable))
	env := Env{
		OS: runtime.GOOS, Kernel: string(kernel), Getenv: getenv,
		LookPath: exec.LookPath, Run: Run, Dir: stateDir(runtime.GOOS, getenv), Use: use,
	}
	if out != nil && term.IsTerminal(out.Fd()) && hasEscapes(getenv) {
		env.Terminal = out
	}
	return env, err
}

// hasEscapes reports whether the kind of terminal understands OSC sequences.
func hasEscapes(getenv func(string) string) bool {
	name := getenv("TERM")
	return name != "" && name != "dumb" && !strings.HasPrefix(name, "linux")
}

// stateDir is where the file goes: the XDG state directory (XDG Base Directory
// Specification), or the system's own place for such files; "" where the user has
// no such place: a fixed one that all can write could be somebody else's.
func stateDir(goos string, getenv func(string) string) string {
	if dir := getenv("XDG_STATE_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "alongside")
	}
	if goos == "windows" || goos == "darwin" {
		if dir, err := os.UserCacheDir(); err == nil {
			return filepath.Join(dir, "alongside")
		}
	}
	if home := getenv("HOME"); filepath.IsAbs(home) {
		return filepath.Join(home, ".local", "state", "alongside")
	}
	return ""
}

// remote reports whether the user sits at another machine.
func (e Env) remote() bool {
	for _, name := range []string{"SSH_CONNECTION", "SSH_CLIENT", "SSH_TTY"} {
		if e.Getenv(name) != "" {
			return true
		}
	}
	return false
}

// wsl reports whether this is Linux under Windows.
func (e Env) wsl() bool {
	return e.OS == "linux" && strings.Contains(strings.ToLower(e.Kernel), "microsoft")
}
