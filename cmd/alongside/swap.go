package main

import (
	"github.com/spf13/cobra"

	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
)

func (p *program) swapCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "swap FROM TO...",
		Short: "Print what a change of metal does to a part",
		Long: `Print what becomes of a part when its metal, FROM, gives way to another, TO:
mass, deflection, section and mass at equal stiffness and equal strength, margin,
growth and fit over the service range, heat, current, the pattern and the price
of the metal.

Say of the part what you know, in any unit; the output tells what more it needs.
Results are ranges where the figures are. Where figures may not be compared or
are not on file there is the reason in place of a number.`,
		Example: `  alongside swap gray-30 a356-t6-pm --mass "4.2 lb" --wall "3/8 in" --case plate
  alongside swap gray-30 a356-t6-pm za-12-sand --mass "4.2 lb" --case beam --keep stiffness
  alongside swap gray-30 a356-t6-sand --length "12 in" --service "70..250 F" --mate 1045 --fit "1.5 in"
  alongside swap gray-30 a356-t6-pm --mass "4.2 lb" --price "gray-30=0.60 USD/lb" --price "a356-t6-pm=1.20 USD/lb"
  alongside swap c83600-sand a356-t6-sand --volume "250 cm3" --length "300 mm" --units si --format html`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, part.FieldMass, part.FieldVolume, part.FieldWall, part.FieldLength, part.FieldCase, part.FieldKeep, part.FieldStrength,
		part.FieldService, part.FieldMate, part.FieldStress, part.FieldPlace, part.FieldSafety, part.FieldCasting, part.FieldCycles, part.FieldMean, part.FieldSurface, part.FieldReliability,
		part.FieldPressure, part.FieldBore, part.FieldFit, part.FieldPrice)
	system := choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	basis := choiceFlag(cmd, "basis", "figures to compare: typical ones first, or specified minimums only", "typical", "minimum")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		v := view{units: system, basis: basis, delta: &choice{value: "percent"}}
		b, err := v.bench(p, args[:1])
		if err != nil {
			return err
		}
		given, err := typed.read(p.catalog())
		if err != nil {
			return err
		}
		var results []*swap.Result
		for _, id := range args[1:] {
			m, err := p.material(id)
			if err != nil {
				return err
			}
			results = append(results, swap.Work(&b, given, b.Pins[0], m))
		}
		return p.printDoc(report.SwapDoc(results...), format)
	}
	return cmd
}
