// Package clip puts text, or HTML, where the user can paste it from: the
// system's clipboard by the system's own command, the clipboard of the
// terminal by an escape sequence (over SSH, or where no command is installed),
// and a file where neither works. The Report says which way it went and never
// claims more than is known.
package clip

import (
	"context"
	"errors"
	"strings"
	"unicode"
)

// Payload is what is copied. With HTML set, the copy is meant to paste as a
// table: it goes only where text/html can be offered. Text is always needed;
// systems that can offer both take both.
type Payload struct {
	Text string
	HTML string // a fragment for a document's body, already escaped; UTF-8
}

// ErrEmpty refuses to replace the user's clipboard by nothing.
var ErrEmpty = errors.New("there is nothing to copy")

// Error says that every way to copy failed.
type Error struct {
	Tried []Attempt // in order
}

func (e *Error) Error() string {
	return "could not copy: " + reasons(e.Tried)
}

// Unwrap returns the errors of all attempts.
func (e *Error) Unwrap() []error {
	var all []error
	for _, attempt := range e.Tried {
		all = append(all, attempt.Err)
	}
	return all
}

// Copy hands p on by the first way that works, in this order:
//
//  1. the commands of the desktop the user sits at (see commands);
//  2. inside tmux, tmux itself, which keeps the text and passes it on;
//  3. OSC 52 to the terminal, for plain text that is not too long;
//  4. a file in env.Dir, complete or not there at all.
//
// env.Use can leave out ways 1–3. Control characters other than line feed and
// tab are removed first, and line ends become line feeds. Copy returns as soon
// as ctx ends; otherwise each command has a limit of its own, so that one that
// hangs costs about a second. An error is ErrEmpty, ctx's, or an *Error.
func Copy(ctx context.Context, p Payload, env Env) (Report, error) {
	p = Payload{Text: Clean(p.Text), HTML: Clean(p.HTML)}
	if strings.TrimSpace(p.Text) == "" {
		return Report{}, ErrEmpty
	}
	var tried []Attempt
	for _, w := range ways(env) {
		if err := ctx.Err(); err != nil {
			return Report{}, err
		}
		report, err := w.copy(ctx, p, env)
		if err == nil {
			report.Tried = tried
			return report, nil
		}
		tried = append(tried, Attempt{Name: w.name, Err: err})
	}
	if err := ctx.Err(); err != nil {
		return Report{}, err
	}
	return Report{}, &Error{Tried: tried}
}

// way is one way to copy, as it appears in a report.
type way struct {
	name string
	copy func(context.Context, Payload, Env) (Report, error)
}

const (
	theTerminal = "the terminal's clipboard"
	aFile       = "a file"
)

func ways(env Env) []way {
	var all []way
	if env.Use == Auto || env.Use == System {
		for _, t := range commands(env) {
			all = append(all, way{t.name, t.copy})
		}
	}
	if env.Use == Auto || env.Use == Terminal {
		if env.Getenv("TMUX") != "" {
			all = append(all, way{tmux.name, tmux.copy})
		}
		all = append(all, way{theTerminal, copyToTerminal})
	}
	return append(all, way{aFile, copyToFile})
}

// Clean returns text without control characters (Unicode category Cc) other
// than line feed and tab, so that nothing that is pasted into a shell or an
// editor acts on it. CR LF and CR become LF; invalid UTF-8 becomes U+FFFD.
func Clean(text string) string {
	text = strings.ToValidUTF8(text, "\uFFFD")
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' && r != '\t' {
			return -1
		}
		return r
	}, text)
}
