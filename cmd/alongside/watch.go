package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/part"
	"alongside/props/record"
	"alongside/props/report"
)

func (p *program) watchCommand() *cobra.Command {
	var list strings.Builder
	for _, f := range part.AllFacts() {
		fmt.Fprintf(&list, "  %-15s %s\n", f.ID(), f)
	}
	cmd := &cobra.Command{
		Use:   "watch FROM TO...",
		Short: "Print the watch-outs for a change of metal",
		Long: `Print what to ask about when the part made of FROM is made of TO instead: each
caution with what raised it, the figures and their sources. The more is said of
the part, the more can be looked at. A caution put aside with --dismiss is
counted and listed, never dropped.

What may stand after --with:
` + strings.TrimRight(list.String(), "\n"),
		Example: `  alongside watch gray-30 a356-t6-pm
  alongside watch gray-30 a356-t6-pm a380-f-die --service "250 F" --mate 1045-cold-drawn-wrought --with press-fit,threads
  alongside watch c83600-sand zn-3-die --with potable-water --dismiss stiffness --format markdown`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	flags := cmd.Flags()
	typed := p.partFlags(cmd, part.FieldService, part.FieldMate, part.FieldMedium, part.FieldWith)
	dismiss := flags.StringSlice("dismiss", nil, "cautions to put aside: `ID,...`")
	_ = cmd.RegisterFlagCompletionFunc("dismiss", func(_ *cobra.Command, _ []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return completeList(data.Watch().IDs())(nil, nil, typed)
	})
	system := choiceFlag(cmd, "units", "units of the reasons; figures stand as printed", "us", "si", "cgs")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		given, err := typed.read(p.catalog())
		if err != nil {
			return err
		}
		for _, id := range *dismiss {
			if known := data.Watch().IDs(); !slices.Contains(known, id) {
				return fmt.Errorf("--dismiss: no watch-out %q; %s", id, record.DidYouMean(id, known))
			}
		}
		pins, err := p.resolve(args)
		if err != nil {
			return err
		}
		if len(pins) < 2 {
			return fmt.Errorf("%s and %s are one material; name what it becomes", args[0], strings.Join(args[1:], ", "))
		}
		bench := p.newBench(system)
		var raised []report.Watched
		for _, pin := range pins[1:] {
			raised = append(raised, report.Watched{Base: pins[0], Pin: pin, Cautions: data.Watch().Evaluate(bench, pins[0], pin, given, *dismiss)})
		}
		return p.printDoc(report.WatchDoc(raised...), format)
	}
	return cmd
}

// completeList offers words for the last of a list separated by commas.
func completeList(words []string) cobra.CompletionFunc {
	return func(_ *cobra.Command, _ []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
		before := typed[:strings.LastIndex(typed, ",")+1]
		var out []cobra.Completion
		for _, w := range words {
			out = append(out, before+w)
		}
		return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
	}
}
