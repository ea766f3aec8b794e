package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
)

// benchCommand is the program without a command: the bench in the terminal.
func (p *program) benchCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "alongside [ID...]",
		Short: "Set cast metals side by side",
		Long: `Set cast metals side by side, measure them against the one the part is made of
today, and copy the comparison into a mail.

Without a command the bench opens, with the materials named already on it.
Every figure has its source and basis; figures are for comparison, not for
design.

Exit codes: 0 done, 1 nothing found or findings open, 2 the command line cannot
be carried out, 130 interrupted.`,
		Example: `  alongside
  alongside gray-30 a356-t6-pm 319-f-sand --baseline gray-30 --units si
  alongside compare gray-30 a356-t6-pm
  alongside find "permanent mold a356"`,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: p.completeMaterials,
	}
	v := p.viewFlags(cmd)
	version := cmd.Flags().Bool("version", false, "print the version")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *version {
			return p.print(p.version())
		}
		b, err := v.bench(p.catalog(), args)
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
		return p.startBench(b)
	}
	return cmd
}

// startBench opens the bench in the terminal.
func (p *program) startBench(b props.Bench) error {
	return &failure{exitUsage, errors.New("the bench is not part of this build")}
}
