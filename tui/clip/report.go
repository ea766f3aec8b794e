package clip

import (
	"errors"
	"fmt"
	"os/exec"
	"strings"
)

// Where says where a copy went.
type Where uint8

const (
	// Clipboard is the system's clipboard.
	Clipboard Where = iota
	// TerminalClipboard is the terminal's; nothing can confirm it.
	TerminalClipboard
	// SavedFile is a file, because no clipboard could take the copy.
	SavedFile
)

// Attempt is a way that was tried and failed.
type Attempt struct {
	Name string // "xclip", "the terminal's clipboard", "a file"
	Err  error
}

// Report says how a copy was made.
type Report struct {
	Where Where
	Name  string // the command or terminal it went through: "xclip", "tmux"
	// Unconfirmed is set when the clipboard does not show the copy although
	// its command reported success. Meant for Clipboard: no terminal confirms.
	Unconfirmed bool
	HTML        bool      // it went as text/html
	Both        bool      // and as plain text at the same time
	Path        string    // of the file, for SavedFile
	Tried       []Attempt // ways that failed before, in order
}

// String is one line for the status line or for standard error.
func (r Report) String() string {
	switch r.Where {
	case TerminalClipboard:
		if r.Name == tmux.name {
			return "sent to tmux's paste buffer, and through it to the terminal's clipboard (cannot confirm)"
		}
		if r.Name != "" {
			return "sent to the terminal's clipboard through " + r.Name + " (cannot confirm)"
		}
		return "sent to the terminal's clipboard (cannot confirm" + toInstall(r.Tried) + ")"
	case SavedFile:
		line := "saved to " + r.Path
		if r.HTML {
			line += "; open it in a browser to copy the table"
		}
		if why := reasons(r.Tried); why != "" {
			line += " (" + why + ")"
		}
		return line
	}
	switch {
	case r.Unconfirmed:
		return "handed to " + r.Name + ", but the clipboard does not show it (cannot confirm)"
	case r.Both:
		return "copied as table and text (" + r.Name + ")"
	case r.HTML:
		return "copied as HTML only, for a mail or document (" + r.Name + ")"
	}
	return "copied (" + r.Name + ")"
}

// toInstall is what would have made the copy sure; "" for nothing.
func toInstall(tried []Attempt) string {
	for _, a := range tried {
		if p := packageOf(a.Name); p != "" && errors.Is(a.Err, exec.ErrNotFound) {
			return "; to be sure install the package " + p
		}
	}
	return ""
}

// errNoHTML is the reason of ways that can carry plain text only.
var errNoHTML = errors.New("carries plain text only")

// reasons puts failed attempts in one phrase, those with equal reasons
// together: "wl-copy, xclip: not installed; tmux: no server".
func reasons(tried []Attempt) string {
	var order []string
	names := make(map[string][]string)
	for _, attempt := range tried {
		reason := attempt.Err.Error()
		if errors.Is(attempt.Err, exec.ErrNotFound) {
			reason = "not installed"
		}
		if names[reason] == nil {
			order = append(order, reason)
		}
		names[reason] = append(names[reason], attempt.Name)
	}
	for i, reason := range order {
		order[i] = fmt.Sprintf("%s: %s", strings.Join(names[reason], ", "), reason)
	}
	return strings.Join(order, "; ")
}
