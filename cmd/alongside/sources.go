package main

import (
	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/report"
)

func (p *program) sourcesCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "sources",
		Short: "List the sources, and how many figures rest on each",
		Long: `List the sources with the number of figures that rest on each and how many of
these are from memory and wait to be read again; then the same by family. A
figure that several materials share counts once. With --process the sources of
the process cards and watch-outs are listed instead, with --waiting the main
figures of the materials asked for most that wait to be read, or are missing.`,
		Example: "  alongside sources\n  alongside sources --process\n  alongside sources --waiting",
		Args:    cobra.NoArgs,
	}
	process := cmd.Flags().Bool("process", false, "the sources of process cards and watch-outs")
	wait := cmd.Flags().Bool("waiting", false, "main figures of the materials asked for most that wait to be read")
	cmd.MarkFlagsMutuallyExclusive("process", "waiting")
	format := formatFlag(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		switch {
		case *process:
			return p.printDoc(report.ProcessSourcesDoc(data.Foundry(), data.Watch()), format)
		case *wait:
			return p.printDoc(report.WaitingDoc(p.catalog()), format)
		}
		return p.printDoc(report.SourcesDoc(p.catalog()), format)
	}
	return cmd
}
