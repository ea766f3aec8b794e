package clip

import (
	"context"
	"strings"
	"time"
)

const (
	// promptly is the limit of commands that only take data.
	promptly = time.Second
	// slowly is the limit of those that start an interpreter first.
	slowly = 6 * time.Second
	// readBack is the limit of one look at the clipboard, which may hang when
	// its owner changes at that moment.
	readBack = 400 * time.Millisecond
)

// Command is a clipboard command to run.
type Command struct {
	Path  string
	Args  []string
	Stdin string
	Env   []string      // "NAME=value", added to the environment
	Limit time.Duration // after it, the command and its children are ended
	Read  bool          // what it prints is wanted; it leaves no child behind
}

// tool is a clipboard command: how it takes plain text and how HTML.
type tool struct {
	name  string
	limit time.Duration
	env   []string
	where Where
	text  form
	html  form // a zero form: it cannot
	both  bool // html offers the plain text as well
}

// form is one way to call a tool.
type form struct {
	args  []string
	stdin func(Payload) string
	back  []string // prints what the clipboard holds, where success proves nothing
}

func (t tool) copy(ctx context.Context, p Payload, env Env) (Report, error) {
	form := t.text
	if p.HTML != "" {
		form = t.html
	}
	if form.stdin == nil {
		return Report{}, errNoHTML
	}
	path, err := env.LookPath(t.name)
	if err != nil {
		return Report{}, err
	}
	report := Report{Where: t.where, Name: t.name, HTML: p.HTML != "", Both: p.HTML != "" && t.both}
	stdin := form.stdin(p)
	_, err = env.Run(ctx, Command{Path: path, Args: form.args, Stdin: stdin, Env: t.env, Limit: t.limit})
	if err == nil && form.back != nil {
		look := Command{Path: path, Args: form.back, Limit: readBack, Read: true}
		report.Unconfirmed, err = missing(ctx, env, look, stdin)
	}
	return report, err
}

// missing looks at the clipboard until it holds want, for a second, and
// reports whether it still does not. The only error is ctx's.
func missing(ctx context.Context, env Env, look Command, want string) (bool, error) {
	for end := time.Now().Add(promptly); time.Now().Before(end); {
		if held, err := env.Run(ctx, look); err == nil && held == want {
			return false, nil
		}
		select {
		case <-ctx.Done():
			return false, ctx.Err()
		case <-time.After(5 * time.Millisecond):
		}
	}
	return true, nil
}

func plainText(p Payload) string { return p.Text }

// page is the HTML with its encoding stated, without which some programs drop
// or garble what is not ASCII.
func page(p Payload) string {
	return `<meta http-equiv="content-type" content="text/html; charset=utf-8">` + p.HTML
}

// xclip and wl-copy offer one content, not text and HTML side by side, so a
// copy is either. (Where a program asks wl-copy's HTML for text, it gets the
// markup.)
//
// wl-copy ends after the compositor has confirmed the new selection. xclip and
// xsel end before the X server has heard of it: measured, 3 pastes of 200
// right after xclip still got the old content, and more on a busy machine. So
// with these two, what the clipboard holds is read back.
var (
	xclip = tool{
		name: "xclip", limit: promptly,
		text: form{
			[]string{"-selection", "clipboard", "-in"}, plainText,
			[]string{"-selection", "clipboard", "-out", "-target", "UTF8_STRING"},
		},
		html: form{
			[]string{"-selection", "clipboard", "-in", "-target", "text/html"}, page,
			[]string{"-selection", "clipboard", "-out", "-target", "text/html"},
		},
	}
	xsel = tool{
		name: "xsel", limit: promptly,
		text: form{[]string{"--clipboard", "--input"}, plainText, []string{"--clipboard", "--output"}},
	}
	wlCopy = tool{
		name: "wl-copy", limit: promptly,
		text: form{args: []string{"--type", "text/plain"}, stdin: plainText},
		html: form{args: []string{"--type", "text/html"}, stdin: page},
	}
	pbcopy = tool{
		name: "pbcopy", limit: promptly,
		env:  []string{"LC_CTYPE=UTF-8"}, // else it takes its input for Mac Roman
		text: form{stdin: plainText},
	}
	osascript = tool{
		name: "osascript", limit: slowly, both: true,
		text: form{args: []string{"-"}, stdin: appleScript},
		html: form{args: []string{"-"}, stdin: appleScript},
	}
	powershell = tool{
		name: "powershell.exe", limit: slowly, both: true,
		text: form{args: powershellArgs, stdin: powershellInput},
		html: form{args: powershellArgs, stdin: powershellInput},
	}
	clipExe = tool{
		name: "clip.exe", limit: promptly,
		text: form{stdin: func(p Payload) string { return utf16LE(crlf(p.Text)) }},
	}
	// tmux keeps the text in a paste buffer and, by -w (since 3.2), passes it
	// to the terminals it is shown on. That works with its default settings,
	// which drop an OSC 52 from a program inside.
	tmux = tool{
		name: "tmux", limit: promptly, where: TerminalClipboard,
		text: form{args: []string{"load-buffer", "-w", "-"}, stdin: plainText},
	}
)

// commands are the clipboard commands of the desktop that the user sits at, in
// the order to try them. Over SSH that is another machine's: only an X display
// that SSH forwards leads there, recognised by its host name.
func commands(env Env) []tool {
	display := env.Getenv("DISPLAY")
	if env.remote() {
		if host, _, _ := strings.Cut(display, ":"); host == "" {
			return nil
		}
		return []tool{xclip, xsel}
	}
	switch env.OS {
	case "windows":
		return []tool{powershell, clipExe}
	case "darwin":
		return []tool{pbcopy, osascript}
	}
	var all []tool
	if env.wsl() {
		all = append(all, powershell, clipExe)
	}
	if env.Getenv("WAYLAND_DISPLAY") != "" {
		all = append(all, wlCopy)
	}
	if display != "" {
		all = append(all, xclip, xsel)
	}
	return all
}
