// Package desk is what the bench and the panels over it work on: the call with
// its comparison, the place of the cursor, the panels that are open, and the
// message for the user. It draws nothing.
package desk

import (
	"context"
	"fmt"
	"slices"
	"sync"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/foundry"
	"alongside/props/report"
	"alongside/props/settings"
	"alongside/props/watch"
	"alongside/tui/clip"
	"alongside/tui/ui"
)

// Options is what a desk is started with.
type Options struct {
	Catalog *catalog.Catalog
	// Bench is the bench to begin with; the zero value is an empty one with
	// the default settings.
	Bench compare.Bench
	// Settings is what the user likes; nil is the defaults.
	Settings *settings.Settings
	// Copy puts a payload on the clipboard and says in one line how; nil means
	// that there is no clipboard.
	Copy func(context.Context, clip.Payload) (string, error)
	// Check keeps that the shop looked a figure up and returns the catalog that
	// knows it; nil means that there is nowhere to keep it.
	Check   func(catalog.Check) (*catalog.Catalog, error)
	Version string
	// Foundry is what is published about casting processes, read when it is
	// first asked for; nil means that there is nothing.
	Foundry func() *foundry.Book
	// Watch is the watch-out rules, read beside the first frames; nil means
	// that there are none.
	Watch func() *watch.Rules
	// Sheets is where calls are kept; nil means nowhere, for the reason Unkept.
	Sheets *sheets.Folder
	Unkept error
	// Invented says that the call and what is shown of the shop are made up; it
	// stands in the title line and in all that is copied. "" where they are not.
	Invented string
}

// Keys is what the panels ask of the bench below them.
type Keys interface {
	// Label is the key that a command of the bench has now, by the one it has
	// without settings.
	Label(shipped string) string
	// BenchKeys are the keys of some commands, for a panel in which they mean the same.
	BenchKeys(shipped ...string) ui.Keys
	// PanelKey is the key typed where it opens another panel than the one whose own
	// key is given; nil where it does not.
	PanelKey(typed, own string) *ui.Key
}

// Desk is the state that the bench and its panels share.
type Desk struct {
	Options
	Keys
	Theme *ui.Theme

	history call.History
	keeping
	Comparison *compare.Comparison
	Table      *report.Table
	Rules      *watch.Rules
	derived

	Rows  ui.List // of the table, with the cursor
	Col   int     // of the cursor, as displayed
	First int     // scrolling: pins left of the ones shown

	// Status is the message for the user until the next key; Trouble says that it
	// tells of something that did not work.
	Status  string
	Trouble bool
	// Burst is true while the key came with others, in one message.
	Burst bool

	Screens []Screen
	Query   string           // last typed into the finder
	Form    map[string]Draft // what was typed into the form of the part and could not be used
	Scope   int              // last chosen to be copied
	Format  int              // in which form
	// LookedUp is who looks figures up.
	LookedUp string

	ctx     context.Context
	sending sync.WaitGroup // copies under way
}

// Draft is a text that could not be used, with the reason.
type Draft struct{ Text, Problem string }

// New is a desk with the call that the options begin with.
func New(o Options, keys Keys) *Desk {
	d := &Desk{Options: o, Keys: keys, Form: map[string]Draft{}, ctx: context.Background()}
	b := o.Bench.Clone()
	if b.Band == 0 && len(b.Pins) == 0 {
		b = o.Settings.Bench.Clone()
	}
	b.Baseline = ui.Clamp(b.Baseline, 0, len(b.Pins)-1)
	d.history = call.Start(call.Call{Bench: b})
	if d.Sheets != nil {
		d.Held = d.Sheets.New() // from the first change on
	}
	d.Format = max(slices.IndexFunc(Formats, func(f Format) bool { return f.Name == o.Settings.Copy }), 0)
	d.rework()
	return d
}

// Now is the call as it is; change it only through Change, SetPart and ChangeCall.
func (d *Desk) Now() *call.Call { return d.history.Now() }

// Say puts a message on the status line, until the next key.
func (d *Desk) Say(s string) { d.Status, d.Trouble = ui.Plain(s), false }

// Sayf is Say with a format.
func (d *Desk) Sayf(format string, args ...any) { d.Say(fmt.Sprintf(format, args...)) }

// Warn says that something did not work.
func (d *Desk) Warn(s string) { d.Status, d.Trouble = ui.Plain(s), true }

// Warnf is Warn with a format.
func (d *Desk) Warnf(format string, args ...any) { d.Warn(fmt.Sprintf(format, args...)) }

// Silence takes the message away.
func (d *Desk) Silence() { d.Status, d.Trouble = "", false }

// TypeInto gives a key or a paste to a field and says where the field cannot hold
// all of it. It reports whether the text changed.
func (d *Desk) TypeInto(f *ui.Field, msg tea.KeyMsg) bool {
	changed := f.Update(msg)
	if msg.Paste && len(msg.Runes) > ui.FieldLimit {
		d.Warnf("only the first %d characters of the paste are taken", ui.FieldLimit)
	}
	return changed
}

// InBurst reports, and says, that a key has come among others and is not to be
// trusted. A key that is held down repeats itself and is.
func (d *Desk) InBurst() bool {
	if d.Burst {
		d.Warn("letters that come all at once copy nothing and take nothing off; press the key alone")
	}
	return d.Burst
}
