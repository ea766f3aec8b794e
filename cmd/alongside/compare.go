package main

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
)

func (p *program) compareCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "compare ID...",
		Short: "Print materials side by side, each against a baseline",
		Long: `Print materials side by side, property by property, each against a baseline.

A difference is drawn only between figures of one basis under like test
conditions; elsewhere both figures are shown and the verdict is "unlike".
An ID may be typed in any usual form: a356-t6-pm, "A356.0-T6 permanent mold",
"AC-42100 T6", "class 30".`,
		Example: `  alongside compare gray-30 a356-t6-pm 319-f-sand
  alongside compare a380-f-die 319-f-sand 319-t6-sand --basis minimum --rows tensile_strength,yield_strength
  alongside compare a356-t6-pm c83600-sand --baseline gray-30 --units si --delta amount
  alongside compare a356-t6-pm a380-f-die --format html > comparison.html`,
		Args:              atLeast(1, "at least one ID, such as a356-t6-pm"),
		ValidArgsFunction: p.completeMaterials,
	}
	v := p.viewFlags(cmd)
	format := formatFlag(cmd)
	rows := cmd.Flags().StringSlice("rows", nil, "only these properties: `PROPERTY,...`")
	_ = cmd.RegisterFlagCompletionFunc("rows", completeProperties)
	var needed []string
	p.needFlag(cmd, &needed)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		b, err := v.bench(p, args)
		if err != nil {
			return err
		}
		list, _, refused := p.readNeeds(needed, b.System, b.Pins[b.Baseline])
		if refused != nil && len(list) == 0 {
			return refused
		}
		if cmd.Flags().Changed("rows") && len(*rows) == 0 {
			return errors.New("--rows is empty: name a property, or leave --rows out for all")
		}
		if len(*rows) > 0 {
			b.Only = nil
		}
		for _, word := range *rows {
			id, err := props.ResolveProperty(word)
			if err != nil {
				return err
			}
			if !slices.Contains(b.Only, id) {
				b.Only = append(b.Only, id)
			}
		}
		if err := p.printDoc(report.CompareDoc(compare.Compare(b), report.Scope{}, report.Limits{Needs: list}), format); err != nil {
			return err
		}
		if refused != nil {
			return &failure{exitFindings, refused}
		}
		return nil
	}
	return cmd
}

// completeMaterials offers the ids of all materials not yet on the line.
func (p *program) completeMaterials(cmd *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
	var out []cobra.Completion
	for _, m := range p.catalog().Materials {
		if strings.HasPrefix(m.ID, strings.ToLower(typed)) && !slices.Contains(args, m.ID) {
			out = append(out, cobra.CompletionWithDesc(m.ID, m.Name()))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}

// completeProperties offers property ids for the last of a list separated by
// commas.
func completeProperties(cmd *cobra.Command, args []string, typed string) ([]cobra.Completion, cobra.ShellCompDirective) {
	before := typed[:strings.LastIndex(typed, ",")+1]
	var out []cobra.Completion
	for _, id := range props.Properties() {
		out = append(out, cobra.CompletionWithDesc(before+id.String(), id.Info().Name))
	}
	return out, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
