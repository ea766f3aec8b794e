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
)

// Command is a clipboard command to run.
type Command struct {
	Path  string
	Args  []string
	Stdin string
	Env   []string      // "NAME=value", added to the environment
	Limit time.Duration // after it, the command and its children are ended
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
	err = env.Run(ctx, Command{Path: path, Args: form.args, Stdin: form.stdin(p), Env: t.env, Limit: t.limit})
	return Report{Where: t.where, Name: t.name, HTML: p.HTML != "", Both: p.HTML != "" && t.both}, err
}

func plainText(p Payload) string { return p.Text }

// page is the HTML with its encoding stated, without which some programs drop
// or garble what is not ASCII.
func page(p Payload) string {
	return `<meta http-equiv="content-type" content="text/html; charset=utf-8">` + p.HTML
}

// The owner of an X11 selection made by xclip, and of a Wayland one made by
// wl-copy, offers what it was given under one type only: a copy is either
// text or HTML.
var (
	xclip = tool{
		name: "xclip", limit: promptly,
		text: form{[]string{"-selection", "clipboard", "-in"}, plainText},
		html: form{[]string{"-selection", "clipboard", "-in", "-target", "text/html"}, page},
	}
	xsel = tool{
		name: "xsel", limit: promptly,
		text: form{[]string{"--clipboard", "--input"}, plainText},
	}
	wlCopy = tool{
		name: "wl-copy", limit: promptly,
		text: form{[]string{"--type", "text/plain"}, plainText},
		html: form{[]string{"--type", "text/html"}, page},
	}
	pbcopy = tool{
		name: "pbcopy", limit: promptly,
		env:  []string{"LC_CTYPE=UTF-8"}, // else it takes its input for Mac Roman
		text: form{nil, plainText},
	}
	osascript = tool{
		name: "osascript", limit: slowly, both: true,
		text: form{[]string{"-"}, appleScript},
		html: form{[]string{"-"}, appleScript},
	}
	powershell = tool{
		name: "powershell.exe", limit: slowly, both: true,
		text: form{powershellArgs, powershellInput},
		html: form{powershellArgs, powershellInput},
	}
	clipExe = tool{
		name: "clip.exe", limit: promptly,
		text: form{nil, func(p Payload) string { return utf16LE(crlf(p.Text)) }},
	}
	// tmux keeps the text in a paste buffer and, by -w (since 3.2), passes it
	// to the terminals it is shown on. That works with its default settings,
	// which drop an OSC 52 from a program inside.
	tmux = tool{
		name: "tmux", limit: promptly, where: TerminalClipboard,
		text: form{[]string{"load-buffer", "-w", "-"}, plainText},
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
