// Command bare is the smallest Bubble Tea program, without the background
// package: the stall it suffers is what that package prevents.
package main

import (
	"os"

	tea "github.com/charmbracelet/bubbletea"
)

type model struct{}

func (m model) Init() tea.Cmd { return nil }

func (m model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if key, ok := msg.(tea.KeyMsg); ok && key.String() == "q" {
		return m, tea.Quit
	}
	return m, nil
}

func (m model) View() string { return "ready\n" }

func main() {
	if _, err := tea.NewProgram(model{}).Run(); err != nil {
		os.Exit(1)
	}
}
