package tui

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"

	"alongside/tui/background"
)

// Run shows the screen until the user quits, ctx ends or a signal asks the
// program to end; the terminal is as it was, and the call is kept. Output is the
// terminal at os.Stdout; the caller has made sure that it is one. Errors are
// those of Bubble Tea: tea.ErrInterrupted also for ctrl+c, tea.ErrProgramPanic;
// and Ended.
func Run(ctx context.Context, o Options) error {
	if o.Width == 0 || o.Height == 0 {
		o.Width, o.Height, _ = term.GetSize(os.Stdout.Fd())
	}
	m := New(o)
	var stop context.CancelFunc
	m.ctx, stop = context.WithCancel(ctx)
	defer m.finishCopies(stop)
	options := []tea.ProgramOption{tea.WithAltScreen(), tea.WithContext(ctx), tea.WithoutSignalHandler()}
	if in := background.NewInput(os.Stdin, os.Stdout); in != nil {
		defer in.Settle()
		options = append(options, tea.WithInput(in))
		if o.Background == background.Unknown && background.Askable(os.Getenv) {
			m.ask = func() tea.Msg { return in.Ask() }
		}
	}
	if !o.NoMouse {
		options = append(options, tea.WithMouseCellMotion())
	}
	p := tea.NewProgram(m, options...)
	ended := endOnSignal(p)
	_, err := p.Run()
	if m.held != nil {
		err = errors.Join(err, m.held.Close())
	}
	return errors.Join(err, ended(), m.interrupted)
}

// lastCopy is how long a copy that was asked for just before the end may take.
const lastCopy = time.Second

// finishCopies waits for copies under way and stops those that hang, with the
// clipboard commands they run.
func (m *Model) finishCopies(stop context.CancelFunc) {
	done := make(chan struct{})
	go func() { m.sending.Wait(); close(done) }()
	for range 2 {
		select {
		case <-done:
		case <-time.After(lastCopy):
		}
		stop()
	}
}

// Ended is the error of a program that a signal asked to end.
type Ended struct{ Signal syscall.Signal }

func (e Ended) Error() string { return "ended by signal: " + e.Signal.String() }

// endOnSignal has a program quit at the first signal that asks for it. A second
// one does what it does to any program. ended tells afterwards of the signal.
func endOnSignal(p *tea.Program) (ended func() error) {
	signals, done := make(chan os.Signal, 1), make(chan error, 1)
	signal.Notify(signals, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT)
	go func() {
		s, ok := <-signals
		if !ok {
			done <- nil
			return
		}
		signal.Stop(signals)
		done <- Ended{s.(syscall.Signal)}
		p.Quit()
	}()
	return func() error {
		signal.Stop(signals)
		close(signals)
		return <-done
	}
}
