package main

import (
	"github.com/spf13/cobra"

	"alongside/props/part"
	"alongside/props/report"
)

func (p *program) swapCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "swap FROM TO...",
		Short: "Print what a change of metal does to a part",
		Long: `Print what becomes of a part when its metal, FROM, gives way to another, TO:
mass, deflection, section and mass at equal stiffness and equal strength, margin,
growth and fit over the service range, heat, current, the pattern and the price
of the metal; what a piece costs where the file of the shop states its rates, as
alongside cost --help shows.

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
	typed := p.partFlags(cmd, part.Fields()[:part.FieldDimension]...)
	system := choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	basis := choiceFlag(cmd, "basis", "figures to compare: typical ones first, or specified minimums only", "typical", "minimum")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		results, err := p.swaps(system, basis.basis(), typed, args)
		if err != nil {
			return err
		}
		return p.printDoc(report.SwapDoc(results...), format)
	}
	return cmd
}
