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
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/props/settings"
	// Settles the background question before Bubble Tea can ask it; see there.
	"alongside/tui/background"
	"alongside/tui/bench"
	"alongside/tui/desk"
	"alongside/tui/panel"
	"alongside/tui/ui"
)

// Options is what the screen is started with. Keys of the settings that cannot be
// as they ask are added to their mistakes.
type Options struct {
	desk.Options
	Call string // id of the kept call to open; "" for a new one
	// Background is light or dark; Unknown asks the terminal, and dark is
	// drawn until it answers.
	Background background.Shade
	// Profile is how many colors the terminal shows; nil takes it from the
	// environment, NO_COLOR included.
	Profile *termenv.Profile
	NoMouse bool
	// Width and Height are the size to draw before the terminal tells its own.
	Width, Height int
}

// Model draws the desk and gives it the keys.
type Model struct {
	*desk.Desk
	shade   background.Shade
	profile *termenv.Profile
	noMouse bool
	ask     tea.Cmd // asks the terminal for its background

	commands []*command
	search   *search     // in a list, while it lasts
	help     desk.Screen // the list of keys opened last

	width, height int
	body, panel   int // lines of the bench and of the open screen
	grid          *bench.Grid
	gridOf        *report.Table
	frame         string
}

// New returns the screen, ready to be run or driven by tests.
func New(o Options) *Model {
	if o.Settings == nil {
		o.Settings = settings.Default()
	}
	m := &Model{shade: o.Background, profile: o.Profile, noMouse: o.NoMouse, width: o.Width, height: o.Height}
	m.commands = remapped(o.Settings)
	m.Desk = desk.New(o.Options, m)
	m.restyle()
	switch {
	case o.Call != "" && o.Sheets != nil:
		m.OpenCall(o.Call)
	case len(m.Pins()) == 0:
		m.Open(panel.NewFinder(m.Desk))
	}
	if n := len(o.Catalog.Dropped); n > 0 {
		m.Warn(o.Catalog.Dropped[n-1])
	}
	if wrong := o.Settings.Mistakes; len(wrong) > 0 {
		first := *wrong[0]
		first.File, first.Remedy = path.Base(first.File), ""
		m.Warnf("%v; alongside settings says what to write", &first)
	}
	m.refresh()
	return m
}

func (m *Model) restyle() {
	profile := termenv.EnvColorProfile
	if m.profile != nil {
		profile = func() termenv.Profile { return *m.profile }
	}
	theme := ui.NewTheme
	if m.Settings.Contrast {
		theme = ui.NewContrastTheme
	}
	m.Theme = theme(profile(), m.shade == background.Light)
	m.grid = nil
}

// Bench returns the bench as it is now.
func (m *Model) Bench() compare.Bench { return m.Now().Bench.Clone() }

// Init asks for the terminal's background where that is not known, and reads
// the watch-out rules.
func (m *Model) Init() tea.Cmd { return tea.Batch(m.ask, m.ReadRules(), m.LookForLast()) }

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
	defer m.CopyWithin(ctx)()
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
	if m.Held != nil {
		err = errors.Join(err, m.Held.Close())
	}
	return err
}
