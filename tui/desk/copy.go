package desk

import (
	"context"
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/report"
	"alongside/tui/clip"
)

// Format is a form in which a document is copied.
type Format struct{ Name, Words, ending string }

// Formats are the forms of a copy.
var Formats = []Format{
	{"text", "text", ".txt"}, {"markdown", "Markdown", ".md"}, {"tsv", "tab-separated", ".tsv"}, {"html", "HTML table", ".html"},
}

const (
	copyLimit = 5 * time.Second // ends a copy that hangs
	lastCopy  = time.Second     // how long one may take that was asked for just before the end
)

// copied tells how a copy went.
type copied struct {
	what, how string
	err       error
}

// Marked is a document as it leaves: that of a demo says so.
func (d *Desk) Marked(doc *report.Doc) *report.Doc {
	if d.Invented != "" {
		return doc.Marked(d.Invented)
	}
	return doc
}

// CopyDoc copies a document in the format last chosen.
func (d *Desk) CopyDoc(doc *report.Doc, what string) tea.Cmd {
	f := Formats[d.Format]
	doc = d.Marked(doc)
	text, err := doc.Render(f.Name, report.MailWidth)
	if err != nil {
		d.Warn(err.Error())
		return nil
	}
	payload := clip.Payload{Text: text, File: what + f.ending}
	if f.Name == "html" {
		payload.Text, _ = doc.Render("text", report.MailWidth) // text is a format
		payload.HTML = text
	}
	return d.send(payload, what+" as "+f.Words)
}

// send hands a payload to the clipboard, away from the screen, which stays
// usable meanwhile.
func (d *Desk) send(payload clip.Payload, what string) tea.Cmd {
	if d.InBurst() {
		return nil
	}
	if d.Copy == nil {
		d.Warn("there is no clipboard to copy to here")
		return nil
	}
	d.Say("copying the " + what + " …")
	ctx, do := d.ctx, d.Copy
	d.sending.Add(1)
	return func() tea.Msg {
		defer d.sending.Done()
		ctx, cancel := context.WithTimeout(ctx, copyLimit)
		defer cancel()
		how, err := do(ctx, payload)
		return copied{what, how, err}
	}
}

// CopyWithin lets copies run while ctx does. The function it returns waits for
// copies under way and stops those that hang, with the clipboard commands they run.
func (d *Desk) CopyWithin(ctx context.Context) (finish func()) {
	var stop context.CancelFunc
	d.ctx, stop = context.WithCancel(ctx)
	return func() {
		done := make(chan struct{})
		go func() { d.sending.Wait(); close(done) }()
		for range 2 {
			select {
			case <-done:
			case <-time.After(lastCopy):
			}
			stop()
		}
	}
}

func (d *Desk) takeCopied(c copied) {
	switch {
	case errors.Is(c.err, context.DeadlineExceeded):
		d.Warnf("the %s was not copied: the clipboard did not answer in time", c.what)
	case c.err != nil:
		d.Warnf("the %s was not copied: %v", c.what, c.err)
	default:
		d.Sayf("%s: %s", c.what, c.how)
	}
}
