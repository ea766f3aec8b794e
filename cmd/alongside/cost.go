package main

import (
	"errors"

	"github.com/spf13/cobra"

	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/props/swap"
)

const costHelp = `Print what a piece of the part costs in FROM and in each TO at quantities around
that of the part, where the costs cross, and what is shipped, cast and poured, by
the rates in the shop's own file. No price is built in. A rate may be a range; what
is not stated counts for nothing, and that is said. All money is in one currency, a
word of your own.

Rates in the file; families, alloys, tempers and processes, any of them, say for
which metals, and of two records that state the same rate the later one holds:

  [[source]]
  id = "RATES-2026"
  title = "Our rates"
  edition = "March 2026"
  kind = "house"
  [[rates]]
  source = "RATES-2026"
  families = ["aluminum"]
  price_of_metal = "N $/lb"      # of the metal charged
  returns = "N $/lb"             # gates and risers back in the pot; else that of metal
  melt_loss = "N %"              # of the metal charged
  [[rates]]
  source = "RATES-2026"
  processes = ["pm"]
  yield = "N-N %"                # good castings over metal poured
  stock = "N %"                  # of the casting, machined off
  conversion = "N $/lb"          # from metal to casting; of the casting, or N $/piece
  machining = "N $/piece"
  finish = "N $/piece"
  tool_cost = "N $"
  tool_life = "N pieces"         # else one tool serves any quantity`

func (p *program) costCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "cost FROM TO... --house FILE",
		Short: "Print what a piece costs against quantity, by the shop's own rates",
		Long:  costHelp,
		Example: `  alongside cost gray-30 a356-t6-pm a380-f-die --mass "11.5 lb" --quantity "2000 a year" --demo
  alongside cost a356-t6-sand a356-t6-pm --volume "16 in3" --demo --format csv`,
		Args:              cobra.MinimumNArgs(2),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, part.FieldMass, part.FieldVolume, part.FieldQuantity, part.FieldPrice)
	demo := cmd.Flags().Bool("demo", false, "take the rates of an invented foundry, to try things on")
	system := choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	out := drawFlag(cmd)
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if *demo {
			remove, err := p.openDemo(nil)
			if err != nil {
				return err
			}
			defer remove()
		}
		results, err := p.swaps(system, compare.TypicalFirst, typed, args)
		if err != nil {
			return err
		}
		if len(p.catalog().Rates) == 0 {
			return errors.New("no rates: name the file of the shop with --house; alongside cost --help shows one, --demo tries an invented one")
		}
		if results[0].Given.Mass == nil && results[0].Given.Volume == nil {
			return errors.New("say what the part weighs today: --mass or --volume")
		}
		d := report.CostDoc(results...)
		if *demo {
			d = d.Marked(p.invented)
		}
		return p.printOrDraw(d, *out, format)
	}
	return cmd
}

// swaps works the swaps out from the first material typed to each of the others.
func (p *program) swaps(system *choice, basis compare.BasisSetting, typed partFlags, args []string) ([]*swap.Result, error) {
	b := p.newBench(system)
	b.Basis = basis
	base, err := p.material(args[0])
	if err != nil {
		return nil, err
	}
	b.Pin(base)
	given, err := typed.read(p.catalog())
	if err != nil {
		return nil, err
	}
	var results []*swap.Result
	for _, id := range args[1:] {
		m, err := p.material(id)
		if err != nil {
			return nil, err
		}
		results = append(results, swap.Work(&b, given, base, m))
	}
	return results, nil
}
