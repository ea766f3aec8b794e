package main

import (
	"fmt"
	"os"

	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"
	"github.com/spf13/cobra"

	"alongside/props/disk"
	"alongside/props/report"
	"alongside/tui/background"
	"alongside/tui/clip"
)

// leastWidth and leastHeight are the smallest terminal that the bench is laid
// out for.
const leastWidth, leastHeight = 80, 24

func (p *program) doctorCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "doctor",
		Short: "Say what terminal, colors, clipboard and folders there are, and what to do where one is missing",
		Long: `Say what the program finds where it runs: the terminal, its size, colors and
background, the ways to copy in the order in which they are tried, the folder of
the call sheets and the file of the settings. Where something is missing, a line says what to do. Nothing is
left behind. Exits with 1 where something is to be done.`,
		Example: "  alongside doctor",
		Args:    cobra.NoArgs,
	}
	format := formatFlag(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		list := append(p.terminalFindings(), p.clipboardFindings()...)
		list = append(list, p.folderFinding(), p.settingsFinding())
		if err := p.printDoc(report.FindingsDoc(list), format); err != nil {
			return err
		}
		for _, f := range list {
			if f.Remedy != "" {
				return &failure{code: exitFindings}
			}
		}
		return nil
	}
	return cmd
}

func (p *program) terminalFindings() []report.Found {
	if !p.terminal() {
		return []report.Found{{What: "terminal", Is: "none that can place its cursor", Remedy: "run alongside in a terminal window; commands that print need none"}}
	}
	out := p.out.(*os.File)
	w, h, err := term.GetSize(out.Fd())
	size := report.Found{What: "size", Is: fmt.Sprintf("%d columns, %d lines", w, h)}
	if err != nil || w < leastWidth || h < leastHeight {
		size.Remedy = fmt.Sprintf("make the window at least %d × %d; narrower, columns are left out", leastWidth, leastHeight)
	}
	colors := map[termenv.Profile]string{termenv.Ascii: "none; the signs tell without", termenv.ANSI: "16", termenv.ANSI256: "256", termenv.TrueColor: "16 million"}
	shade := report.Found{What: "background", Is: "asked for when the bench opens"}
	if background.NewInput(os.Stdin, out, p.env) == nil {
		shade.Is = "cannot be asked for: dark is taken; set " + background.Variable + "=light where it is light"
	}
	if s, err := background.Decide("", p.env); err != nil {
		shade.Is, shade.Remedy = err.Error(), "set "+background.Variable+" to light, dark or auto"
	} else if s != background.Unknown {
		shade.Is = s.String()
	}
	return []report.Found{
		{What: "terminal", Is: p.env("TERM")},
		size,
		{What: "colors", Is: colors[termenv.NewOutput(out).EnvColorProfile()]},
		shade,
	}
}

// clipboardFindings lists the ways to copy. One that is missing is worth a word
// only where none but the file is left.
func (p *program) clipboardFindings() []report.Found {
	var out []report.Found
	env, err := clip.Here(os.Stdout, p.env)
	if err != nil {
		out = append(out, report.Found{What: "clipboard", Is: err.Error(), Remedy: "set " + clip.Variable + " to one of these"})
	}
	offers := clip.Offers(env)
	ready := false
	for _, o := range offers[:len(offers)-1] {
		ready = ready || o.Ready
	}
	for i, o := range offers {
		f := report.Found{What: "copies go to", Is: o.Name}
		if i > 0 {
			f.What = "or else to"
		}
		if !o.Ready {
			f.Is += ", " + o.Remedy
			if !ready {
				f.Is, f.Remedy = o.Name, o.Remedy
			}
		}
		out = append(out, f)
	}
	return out
}

// folderFinding tells where the call sheets are and whether they can be written.
func (p *program) folderFinding() report.Found {
	f := report.Found{What: "call sheets"}
	s, err := p.sheets()
	if err != nil {
		f.Is, f.Remedy = "nowhere to keep them", err.Error()
		return f
	}
	f.Is = s.Path
	if err := disk.Writable(s.Path); err != nil {
		f.Remedy = err.Error()
	}
	return f
}
