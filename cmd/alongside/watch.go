package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/record"
	"alongside/props/report"
	"alongside/props/watch"
	"alongside/units"
)

func (p *program) watchCommand() *cobra.Command {
	var ids []string
	var list strings.Builder
	for _, f := range watch.AllFacts() {
		ids = append(ids, f.ID())
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
	service := flags.String("service", "", "service `TEMPERATURE`, or a range such as \"-40..250 F\"")
	mate := flags.String("mate", "", "`ID` of what the part touches, is pressed into or bolted to")
	with := flags.StringSlice("with", nil, "what the part has or needs: `FACT,...`")
	dismiss := flags.StringSlice("dismiss", nil, "cautions to put aside: `ID,...`")
	_ = cmd.RegisterFlagCompletionFunc("mate", p.completeMaterials)
	_ = cmd.RegisterFlagCompletionFunc("with", completeList(ids))
	_ = cmd.RegisterFlagCompletionFunc("dismiss", func(_ *cobra.Command, _ []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return completeList(data.Watch().IDs())(nil, nil, typed)
	})
	system := choiceFlag(cmd, "units", "units of the reasons; figures stand as printed", "us", "si", "cgs")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		part, err := p.conditions(*service, *mate, *with, *dismiss)
		if err != nil {
			return err
		}
		pins, err := p.resolve(args)
		if err != nil {
			return err
		}
		if len(pins) < 2 {
			return fmt.Errorf("%s and %s are one material; name what it becomes", args[0], strings.Join(args[1:], ", "))
		}
		bench := compare.NewBench()
		bench.System, _ = units.ParseSystem(system.value)
		var raised []report.Watched
		for _, pin := range pins[1:] {
			raised = append(raised, report.Watched{Base: pins[0], Pin: pin, Cautions: data.Watch().Evaluate(bench, pins[0], pin, part)})
		}
		return p.printDoc(report.WatchDoc(raised...), format)
	}
	return cmd
}

// conditions reads what was said of the part.
func (p *program) conditions(service, mate string, with, dismiss []string) (watch.Conditions, error) {
	part := watch.Conditions{Dismissed: dismiss}
	if service != "" {
		q, err := units.ParseAs(service, units.Temperature, units.NoUnit)
		if err != nil {
			return part, fmt.Errorf("--service %w", err)
		}
		lo, hi := celsius(q, q.Lo), celsius(q, q.Hi)
		part.HighestC = &hi
		if q.IsRange() {
			part.LowestC = &lo
		}
		if q.Lo == q.Hi && lo < 0 { // one temperature below freezing is meant as the lowest
			part.LowestC, part.HighestC = &lo, nil
		}
	}
	if mate != "" {
		m, err := p.catalog().Resolve(mate)
		if err != nil {
			return part, fmt.Errorf("--mate: %w", err)
		}
		part.Mate = m
	}
	for _, word := range with {
		f, err := watch.ParseFact(word)
		if err != nil {
			return part, fmt.Errorf("--with: %w", err)
		}
		part.With |= f
	}
	for _, id := range dismiss {
		if known := data.Watch().IDs(); !slices.Contains(known, id) {
			return part, fmt.Errorf("--dismiss: no watch-out %q; %s", id, record.DidYouMean(id, known))
		}
	}
	return part, nil
}

// completeList offers words for the last of a list parted by commas.
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
