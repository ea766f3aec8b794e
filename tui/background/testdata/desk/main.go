// Command desk shows the background it found and every message it got.
package main

import (
	"fmt"
	"os"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/tui/background"
)

type model struct {
	shade background.Shade
	ask   tea.Cmd
	log   []string
}

func (m model) Init() tea.Cmd { return m.ask }

func (m model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case background.Shade:
		m.shade = msg
	case tea.WindowSizeMsg:
	case tea.KeyMsg:
		m.log = append(m.log, msg.String())
		if msg.String() == "q" {
			return m, tea.Quit
		}
	default:
		m.log = append(m.log, fmt.Sprintf("%T", msg))
	}
	return m, nil
}

func (m model) View() string {
	return fmt.Sprintf("ready\nshade %s\nmessages <%s>\n", m.shade, strings.Join(m.log, " "))
}

func main() {
	shade, err := background.Decide("", os.Getenv)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	m := model{shade: shade}
	var options []tea.ProgramOption
	if shade == background.Unknown {
		if in := background.NewInput(os.Stdin, os.Stdout, os.Getenv); in != nil {
			defer in.Settle()
			options = append(options, tea.WithInput(in))
			m.ask = func() tea.Msg { return in.Ask() }
		}
	}
	if _, err := tea.NewProgram(m, options...).Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
