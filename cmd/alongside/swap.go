package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/catalog"
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
  alongside swap gray-30 a356-t6-sand --length "12 in" --range "70..250 F" --mate 1045 --fit "1.5 in"
  alongside swap gray-30 a356-t6-pm --mass "4.2 lb" --price "gray-30=0.60 USD/lb" --price "a356-t6-pm=1.20 USD/lb"
  alongside swap c83600-sand a356-t6-sand --volume "250 cm3" --length "300 mm" --units si --format html`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd)
	system := choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	basis := choiceFlag(cmd, "basis", "figures to compare: typical ones first, or specified minimums only", "typical", "minimum")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		v := view{units: system, basis: basis, delta: &choice{value: "percent"}}
		b, err := v.bench(p.catalog(), args[:1])
		if err != nil {
			return err
		}
		part, err := typed.part(p.catalog())
		if err != nil {
			return err
		}
		given, err := part.Read(p.catalog())
		if err != nil {
			return err
		}
		var results []*swap.Result
		for _, id := range args[1:] {
			m, err := p.catalog().Resolve(id)
			if err != nil {
				return err
			}
			results = append(results, swap.Work(&b, given, b.Pins[0], m))
		}
		return p.printDoc(report.SwapDoc(results...), format)
	}
	return cmd
}

// partFlags are the fields of a part as typed on the command line; only the
// price may stand more than once.
type partFlags map[swap.Field]*[]string

func (p *program) partFlags(cmd *cobra.Command) partFlags {
	typed := partFlags{}
	for _, f := range swap.Fields() {
		info := f.Info()
		usage := fmt.Sprintf("%s, such as `%q`", info.Help, info.Example)
		if info.Words != nil {
			usage = fmt.Sprintf("%s: `%s`", info.Help, strings.Join(info.Words, "|"))
			_ = cmd.RegisterFlagCompletionFunc(info.Name, cobra.FixedCompletions(info.Words, cobra.ShellCompDirectiveNoFileComp))
		}
		typed[f] = cmd.Flags().StringArray(info.Name, nil, usage)
	}
	_ = cmd.RegisterFlagCompletionFunc(swap.FieldMate.String(), p.completeMaterials)
	return typed
}

// part sets all fields that were typed.
func (typed partFlags) part(c *catalog.Catalog) (swap.Part, error) {
	var part swap.Part
	for _, f := range swap.Fields() {
		texts := *typed[f]
		if len(texts) > 1 && f != swap.FieldPrice {
			return part, fmt.Errorf("--%s is given twice: %q and %q", f, texts[0], texts[1])
		}
		for _, t := range texts {
			if err := part.Set(c, f, t); err != nil {
				return part, fmt.Errorf("--%w", err)
			}
		}
	}
	return part, nil
}
