// Floor prints one line. It links the libraries that alongside links, and
// calls none of them: what is left is the start of the libraries themselves,
// below which no command of alongside can come.
package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"image/png"
	"os"
	"os/exec"
	"regexp"

	"git.sr.ht/~sbinet/gg"
	"github.com/BurntSushi/toml"
	"github.com/aymanbagabas/go-osc52/v2"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"
	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

type screen struct{ field textinput.Model }

func (s screen) Init() tea.Cmd { return nil }
func (s screen) Update(m tea.Msg) (tea.Model, tea.Cmd) {
	field, cmd := s.field.Update(m)
	return screen{field}, cmd
}
func (s screen) View() string { return lipgloss.NewStyle().Render(s.field.View()) }

// all calls each library once, so that the linker keeps it.
func all() error {
	cmd := &cobra.Command{Use: "floor"}
	if err := cmd.Execute(); err != nil {
		return err
	}
	if _, err := tea.NewProgram(screen{textinput.New()}).Run(); err != nil {
		return err
	}
	var doc map[string]any
	if err := toml.Unmarshal([]byte(os.Args[1]), &doc); err != nil {
		return err
	}
	text, err := json.MarshalIndent(doc, "", "  ")
	if err != nil {
		return err
	}
	fmt.Println(uniseg.StringWidth(string(text)), regexp.MustCompile(os.Args[2]).FindString(string(text)),
		ansi.Strip(string(text)), osc52.New(string(text)), term.IsTerminal(0), termenv.EnvColorProfile())
	fmt.Println(stat.Mean([]float64{1}, nil), distuv.UnitNormal.CDF(1), quad.Fixed(distuv.UnitNormal.Prob, 0, 1, 5, nil, 0))
	drawing := gg.NewContext(1, 1)
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		parsed, err := opentype.Parse(ttf)
		if err != nil {
			return err
		}
		face, err := opentype.NewFace(parsed, nil)
		if err != nil {
			return err
		}
		drawing.SetFontFace(face)
	}
	if err := png.Encode(os.Stdout, drawing.Image()); err != nil {
		return err
	}
	if err := exec.Command(os.Args[3]).Run(); err != nil {
		return err
	}
	return csv.NewWriter(os.Stdout).Write(os.Args)
}

func main() {
	if len(os.Args) > 3 {
		fmt.Println(all())
		return
	}
	fmt.Println("floor")
}
