package main

import (
	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/part"
	"alongside/props/report"
)

func (p *program) drawingCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "drawing [FROM] TO",
		Short: "Print the note for the drawing and the order of a casting",
		Long: `Print a draft of what the drawing and the order must say when the part is cast of
TO: metal, specification with its limits, temper and heat treatment, tolerance
by ISO 8062-3, test bars, radiographs and surface tests, class, marking; what is
still open, more of it where FROM and the part are given; and near equivalents in
EN, ISO, JIS with what differs where their limits are on file.`,
		Example: `  alongside drawing a356-t6-pm
  alongside drawing gray-30 a356-t6-pm --with pressure-tight --medium "coolant, 230 F"`,
		Args:              cobra.RangeArgs(1, 2),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, part.FieldService, part.FieldMate, part.FieldMedium, part.FieldWith)
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		given, err := typed.read(p.catalog())
		if err != nil {
			return err
		}
		list, err := p.resolve(args)
		if err != nil {
			return err
		}
		var base *props.Material
		if len(list) > 1 {
			base = list[0]
		}
		pin := list[len(list)-1]
		return p.printDoc(report.DrawingDoc(report.Drawing{
			Catalog: p.catalog(), Book: data.Foundry(), Pin: pin, Given: given,
			Cautions: data.Watch().Evaluate(p.settings().Bench, base, pin, given, nil),
		}), format)
	}
	return cmd
}
