package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/report"
	"alongside/units"
)

func (p *program) findCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "find [WORDS]",
		Short: "Find materials by designation, or by the customer's limits",
		Long: `Find materials by designation, temper, process or family, best match first. Words
may be typed in any order and spelling, in any system of designations; without
words every material is listed.

--need takes what a customer says, in any unit and order, several limits in a
line: "20 ksi yield, 3 % elongation, not zinc, 20 % lighter than bronze". What
was left out is taken as usual and told; what can be read in two ways is not
taken.

With --need it finds the materials that meet every limit, then the near misses
with what stops each and which temper or process of the same alloy would do.
Strength and elongation are judged on specified minimums where published. What
rests on a figure from memory (*) stands after the others; a material known from
memory alone is offered with --memory only.`,
		Example: `  alongside find a356 t6
  alongside find "class 30"
  alongside find AC-42100 --units si
  alongside find zinc die --format tsv
  alongside find --need "yield >= 20 ksi" --need "density < 2.8 g/cm3" --near 3
  alongside find --need "20 ksi yield, 3 % elongation, under 0.11 lb/in3, permanent mold, not zinc"
  alongside find aluminum --need "process = pm or sand; elongation >= 5 %" --sort yield
  alongside find --better-than gray-30 --rows tensile,density --sort likeness
  alongside find --need "family = aluminum" --duty plate-stiffness --baseline gray-30 --front yield,density`,
	}
	system := choiceFlag(cmd, "units", "units of the key figures", "us", "si", "cgs")
	format := formatFlag(cmd)
	needs := p.searchFlags(cmd)
	needs.system, needs.format = system, format
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if needs.asked() {
			return needs.find(p, args)
		}
		query := strings.Join(args, " ")
		var found []*props.Material
		hits, readAs := p.catalog().SearchNear(query)
		for _, h := range hits {
			found = append(found, h.Material)
		}
		s, _ := units.ParseSystem(system.value)
		if readAs != "" && len(hits) > 0 {
			fmt.Fprintf(p.err, "alongside: nothing is called %q; these are found for %s\n", query, readAs)
		}
		if err := p.printDoc(report.ListDoc(found, s), format); err != nil || len(found) > 0 {
			return err
		}
		return &failure{exitFindings, notFound(query)}
	}
	return cmd
}

type notFound string

func (q notFound) Error() string {
	return "nothing found for " + strconv.Quote(string(q)) + "; try a part of the designation, such as 356 or AC-42"
}
