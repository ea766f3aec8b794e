package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
	"alongside/units"
)

func (p *program) briefCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "brief FROM TO...",
		Short: "Print one page for the customer",
		Long: `Print one page for the customer: what was asked, what the change from FROM to one
to three proposals does to the part, the three gravest watch-outs, what must
still be asked, and the sources.

Numbers are rounded as one says them; what is said always holds the range that
was worked out.`,
		Example: `  alongside brief gray-30 a356-t6-pm --mass "4.2 lb" --wall "3/8 in" --case plate --need "yield >= 20 ksi"
  alongside brief zn-3-die a380-f-die az91d-die --mass "0.5 lb" --with crimp --format markdown`,
		Args:              cobra.RangeArgs(2, 4),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, part.FieldMass, part.FieldVolume, part.FieldWall, part.FieldLength, part.FieldCase, part.FieldKeep, part.FieldStrength,
		part.FieldService, part.FieldMate, part.FieldStress, part.FieldFit, part.FieldPrice, part.FieldWith)
	var limits []string
	p.needFlag(cmd, &limits)
	system := choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		given, err := typed.read(p.catalog())
		if err != nil {
			return err
		}
		pins, err := p.resolve(args)
		if err != nil {
			return err
		}
		if len(pins) < 2 {
			return fmt.Errorf("%s is one material; name what it becomes", args[0])
		}
		b := report.OnePage{Bench: compare.NewBench()}
		b.Bench.System, _ = units.ParseSystem(system.value)
		if b.Needs, err = p.readNeeds(limits, b.Bench.System); err != nil {
			return err
		}
		b.Bench.Pin(pins[0])
		for _, pin := range pins[1:] {
			b.Swaps = append(b.Swaps, swap.Work(&b.Bench, given, pins[0], pin))
			b.Watched = append(b.Watched, report.Watched{Base: pins[0], Pin: pin, Cautions: data.Watch().Evaluate(b.Bench, pins[0], pin, given, nil)})
		}
		return p.printDoc(report.BriefDoc(b), format)
	}
	return cmd
}
