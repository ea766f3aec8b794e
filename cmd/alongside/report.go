package main

import (
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/report"
)

func (p *program) reportCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "report CALL | FROM TO...",
		Short: "Write all that a call came to, as one page for a browser, a mail or a printer",
		Long: `Write the report of a kept CALL, or of the change from FROM to one or more others:
the brief, the comparison, what the change does to the part, watch-outs, process
cards, drawing notes, and every source once with how well it is known. As HTML it
is one file without scripts that opens anywhere and prints on Letter and A4.

With --out the ending of the file says the format: .html, .md, .txt, .json.`,
		Example: `  alongside report gray-30 a356-t6-pm --mass "12 lb" --need "yield >= 20 ksi" --format markdown
  alongside report zn-3-die a380-f-die --format json`,
		Args:              cobra.MinimumNArgs(1),
		ValidArgsFunction: p.completeMaterials,
	}
	in := p.pageFlags(cmd)
	out := cmd.Flags().String("out", "", "write to this `FILE` in place of the terminal; one that is there is not overwritten")
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		kept := ""
		if len(args) == 1 {
			kept, args = args[0], nil
		}
		c, err := in.read(kept, args)
		if err != nil {
			return err
		}
		d := report.WholeDoc(report.Whole{OnePage: c.page(), All: c.Bench, Catalog: p.catalog(), Book: data.Foundry(), Said: c.Said, Duties: c.Duties, At: time.Now(), Version: buildVersion()})
		if p.invented != "" {
			d = d.Marked(p.invented)
		}
		if *out == "" {
			return p.printDoc(d, format)
		}
		name := ""
		if cmd.Flags().Changed("format") {
			name = format.value
		}
		if err := report.WriteNew(*out, d, name); err != nil {
			return &failure{exitFindings, err}
		}
		fmt.Fprintf(p.err, "alongside: written to %s\n", *out)
		return nil
	}
	return cmd
}
