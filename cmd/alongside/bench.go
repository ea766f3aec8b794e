package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/spelling"
	"alongside/tui"
	"alongside/tui/background"
	"alongside/tui/clip"
	"alongside/tui/desk"
)

const benchHelp = `Set cast metals side by side, measure them against the one the part is made of
today, and copy the comparison into a mail.

Without a command the bench opens, with the materials named already on it.
Every figure has its source and basis; figures are for comparison, not for
design.

Exit codes: 0 done, 1 nothing found or findings open, 2 the command line cannot
be carried out, 130 interrupted.`

// benchCommand is the program without a command: the bench in the terminal.
func (p *program) benchCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "alongside [ID...]",
		Short: "Set cast metals side by side",
		Long:  benchHelp,
		Example: `  alongside
  alongside gray-30 a356-t6-pm 319-f-sand --baseline gray-30 --units si
  alongside compare gray-30 a356-t6-pm
  alongside find "permanent mold a356"`,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: p.completeMaterials,
	}
	v := p.viewFlags(cmd)
	shadeWord := choiceFlag(cmd, "background", "colors for a terminal that is", "auto", "light", "dark")
	noMouse := cmd.Flags().Bool("no-mouse", false, "leave the mouse to the terminal")
	kept := cmd.Flags().String("call", "", "open the kept call of this `NAME`; alongside call lists them")
	demo := cmd.Flags().Bool("demo", false, "open an invented call from an invented foundry; nothing is kept")
	cmd.MarkFlagsMutuallyExclusive("demo", "call")
	version := cmd.Flags().Bool("version", false, "print the version")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *version {
			return p.printDoc(versionDoc(), &choice{value: "text"})
		}
		if *demo {
			remove, err := p.openDemo(args)
			if err != nil {
				return err
			}
			defer remove()
			*kept = demoCall
		}
		b, err := v.bench(p, args)
		if err != nil {
			return mistypedCommand(cmd, args, err)
		}
		shade, err := background.Decide(shadeWord.value, p.env)
		if err != nil {
			return err
		}
		if !p.terminal() {
			ids := "ID..."
			if len(b.Pins) > 0 {
				ids = ""
				for _, m := range b.Pins {
					ids += m.ID + " "
				}
			}
			return &failure{exitUsage, errors.New("the bench needs a terminal; to print a comparison use: alongside compare " + strings.TrimSpace(ids))}
		}
		if !cmd.Flags().Changed("no-mouse") {
			*noMouse = p.settings().NoMouse
		}
		return p.startBench(b, shade, *noMouse, *kept)
	}
	return cmd
}

// mistypedCommand is the error of materials that were not found; where the first
// word is nearly a command, that one is offered.
func mistypedCommand(cmd *cobra.Command, args []string, err error) error {
	var unknown *catalog.NotFound
	if !errors.As(err, &unknown) || unknown.Several || unknown.Typed != args[0] {
		return err
	}
	var names []string
	for _, c := range cmd.Commands() {
		names = append(names, c.Name())
	}
	if near := spelling.Nearest(args[0], names); near != "" {
		return fmt.Errorf("no command %q; did you mean: alongside %s", args[0], near)
	}
	return err
}

// startBench opens the bench in the terminal and returns when the user quits.
func (p *program) startBench(b compare.Bench, shade background.Shade, noMouse bool, kept string) error {
	o := tui.Options{Background: shade, NoMouse: noMouse, Options: desk.Options{
		Catalog: p.catalog(), Bench: b, Settings: p.settings(), Version: buildVersion(), Invented: p.invented, Foundry: data.Foundry, Watch: data.Watch}}
	if path, err := p.checkedFile(); err == nil {
		o.Check = func(c catalog.Check) (*catalog.Catalog, error) { return p.keepAndLoad(path, c) }
	}
	if o.Sheets, o.Unkept = p.sheets(); kept != "" {
		if o.Unkept != nil {
			return o.Unkept
		}
		s, err := o.Sheets.Find(kept)
		if err != nil {
			return &failure{exitFindings, err}
		}
		o.Call = s.ID
	}
	env, err := clip.Here(os.Stdout, p.env)
	if err != nil { // ALONGSIDE_CLIPBOARD holds no word that it may
		return err
	}
	o.Copy = func(ctx context.Context, c clip.Payload) (string, error) {
		report, err := clip.Copy(ctx, c, env)
		return report.String(), err
	}
	err = tui.Run(p.ctx, o)
	if ended, ok := errors.AsType[*tui.Ended](err); ok {
		if number, ok := ended.Signal.(syscall.Signal); ok {
			return &failure{code: exitSignal + int(number)}
		}
	}
	switch {
	case errors.Is(err, tea.ErrInterrupted):
		return &failure{code: exitInterrupt}
	case err != nil:
		return &failure{exitFindings, err}
	}
	return nil
}
