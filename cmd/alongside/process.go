package main

import (
	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/units"
)

func (p *program) processCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "process ID...",
		Short: "Print process cards side by side: tolerance, wall, draft, finish, heat treatment",
		Long: `Print what is published for each material's casting process and family, side by
side: tolerances by ISO 8062-3 grade and in the first-inch form of the trade,
wall, draft, finish, quantities, machining allowance, finishing, the heat
treatment card, and what the designation says. With --dimension the tolerances
are looked up for that size.`,
		Example: `  alongside process a356-t6-pm a380-f-die
  alongside process gray-30 356-t6-sand --dimension "4 in"
  alongside process zn-3-die --dimension "100 mm" --format json
  alongside process zn-3-die --units si`,
		Args:              cobra.MinimumNArgs(1),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, part.FieldDimension)
	system := choiceFlag(cmd, "units", "units of the first table; below, figures stand as printed", "us", "si", "cgs")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		list, err := p.resolve(args)
		if err != nil {
			return err
		}
		given, err := typed.read(p.catalog())
		if err != nil {
			return err
		}
		in, _ := units.ParseSystem(system.value)
		return p.printDoc(report.ProcessDoc(data.Foundry().Pages(p.catalog(), list, given.Dimension), given.Dimension, in), format)
	}
	return cmd
}

// resolve finds the materials that designations name; one that is named twice counts once.
func (p *program) resolve(ids []string) ([]*props.Material, error) {
	var b compare.Bench
	for _, id := range ids {
		m, err := p.material(id)
		if err != nil {
			return nil, err
		}
		b.Pin(m)
	}
	return b.Pins, nil
}
