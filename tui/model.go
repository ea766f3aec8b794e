// Package tui is the screen of Alongside: one bench of pinned materials, and
// panels that open over it. It lays out what props and props/report have
// worked out and does no arithmetic on figures itself.
package tui

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"path"
	"slices"
	"sync"
	"syscall"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/props/catalog"
	"alongside/props/compare"
	// Settles the background question before Bubble Tea can ask it; see there.
	"alongside/tui/background"
	"alongside/tui/bench"
	"alongside/tui/ui"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"alongside/props/foundry"
	"alongside/props/report"
	"alongside/props/settings"
	"alongside/props/watch"
	"alongside/tui/clip"
)

// Options is what the screen is started with.
type Options struct {
	Catalog *catalog.Catalog
	// Bench is the bench to begin with; the zero value is an empty one with
	// the default settings.
	Bench compare.Bench
	// Settings is what the user likes; nil is the defaults. Keys that cannot be
	// as he asks are added to the mistakes.
	Settings *settings.Settings
	// Background is light or dark; Unknown asks the terminal, and dark is
	// drawn until it answers.
	Background background.Shade
	// Profile is how many colors the terminal shows; nil takes it from the
	// environment, NO_COLOR included.
	Profile *termenv.Profile
	NoMouse bool
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
	Call     string // id of the kept call to open; "" for a new one
	// Width and Height are the size to draw before the terminal tells its own.
	Width, Height int
}

// Model is the state of the screen.
type Model struct {
	o     Options
	ctx   context.Context
	ask   tea.Cmd // asks the terminal for its background
	theme *ui.Theme

	commands []*command

	history  call.History
	lookedUp string // who looks figures up
	keeping
	comparison *compare.Comparison
	table      *report.Table
	rules      *watch.Rules
	derived

	width, height int
	body, panel   int // lines of the bench and of the open screen
	grid          *bench.Grid
	rows          ui.List // of the table
	col           int     // cursor: column as displayed
	first         int     // scrolling: pins left of the ones shown
	frame         string

	sending sync.WaitGroup // copies under way
	burst   bool           // the key came with others, in one message
	status  string
	trouble bool // the status tells of something that did not work

	screens []screen
	search  *search // in a list, while it lasts
	query   string  // last typed into the finder
	copying copyState
	form    formState
}

// derived is what is worked out from the call when it is asked for, until the
// call changes.
type derived struct {
	cautions  map[int]*report.Watched      // see watched
	swaps     swaps                        // see swapped
	processes *processes                   // see processCards
	metWords  string                       // see screened
	briefs    map[*props.Material][]string // see brief
}

// New returns the screen, ready to be run or driven by tests.
func New(o Options) *Model {
	if o.Settings == nil {
		o.Settings = settings.Default()
	}
	m := &Model{o: o, form: formState{}, ctx: context.Background(), width: o.Width, height: o.Height}
	b := o.Bench.Clone()
	if b.Band == 0 && len(b.Pins) == 0 {
		b = o.Settings.Bench.Clone()
	}
	b.Baseline = ui.Clamp(b.Baseline, 0, len(b.Pins)-1)
	m.history = call.Start(call.Call{Bench: b})
	m.begin()
	m.commands = remapped(o.Settings)
	m.copying.format = max(slices.IndexFunc(copyFormats, func(f copyFormat) bool { return f.name == o.Settings.Copy }), 0)
	m.restyle()
	m.rework()
	switch {
	case o.Call != "" && o.Sheets != nil:
		m.openCall(o.Call)
	case len(m.pins()) == 0:
		m.open(newFinder(m))
	}
	if n := len(o.Catalog.Dropped); n > 0 {
		m.warn(o.Catalog.Dropped[n-1])
	}
	if wrong := o.Settings.Mistakes; len(wrong) > 0 {
		first := *wrong[0]
		first.File, first.Remedy = path.Base(first.File), ""
		m.warnf("%v; alongside settings says what to write", &first)
	}
	m.refresh()
	return m
}

func (m *Model) restyle() {
	profile := termenv.EnvColorProfile
	if m.o.Profile != nil {
		profile = func() termenv.Profile { return *m.o.Profile }
	}
	theme := ui.NewTheme
	if m.o.Settings.Contrast {
		theme = ui.NewContrastTheme
	}
	m.theme = theme(profile(), m.o.Background == background.Light)
	m.grid = nil
}

// now is the call as it is; change it only through change and changeCall.
func (m *Model) now() *call.Call { return m.history.Now() }

// Bench returns the bench as it is now.
func (m *Model) Bench() compare.Bench { return m.now().Bench.Clone() }

// Init asks for the terminal's background where that is not known, and reads
// the watch-out rules.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.ask, m.readRules(), m.lookForLast()) }

// Ended is the error of a screen that a signal ended.
type Ended struct{ Signal os.Signal }

func (e *Ended) Error() string { return "ended by the system: " + e.Signal.String() }

// endings are the signals that end the screen in good order: the terminal as it was,
// the call kept.
var endings = []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT}

// Run shows the screen until the user quits, ctx ends or a signal comes. Output is
// the terminal at os.Stdout; the caller has made sure that it is one. Errors are an
// *Ended and those of Bubble Tea: tea.ErrInterrupted, tea.ErrProgramPanic.
func Run(ctx context.Context, o Options) error {
	if o.Width == 0 || o.Height == 0 {
		o.Width, o.Height, _ = term.GetSize(os.Stdout.Fd())
	}
	var in *background.Input
	options := []tea.ProgramOption{tea.WithAltScreen(), tea.WithContext(ctx), tea.WithoutSignalHandler()}
	if in = background.NewInput(os.Stdin, os.Stdout, os.Getenv); in != nil {
		defer in.Settle()
		options = append(options, tea.WithInput(in))
	}
	if !o.NoMouse {
		options = append(options, tea.WithMouseCellMotion())
	}
	m := New(o)
	var stop context.CancelFunc
	m.ctx, stop = context.WithCancel(ctx)
	defer m.finishCopies(stop)
	if in != nil && o.Background == background.Unknown {
		m.ask = func() tea.Msg { return in.Ask() }
	}
	p := tea.NewProgram(m, options...)
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, endings...)
	var ended *Ended
	done := make(chan struct{})
	go func() {
		defer close(done)
		if s, ok := <-signals; ok {
			ended = &Ended{s}
			p.Quit()
		}
	}()
	_, err := p.Run()
	signal.Stop(signals)
	close(signals)
	if <-done; err == nil && ended != nil {
		err = ended
	}
	if m.held != nil {
		err = errors.Join(err, m.held.Close())
	}
	return err
}
