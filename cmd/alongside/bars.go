package main

import (
	"path/filepath"

	"github.com/spf13/cobra"

	"alongside/props/bars"
	"alongside/props/disk"
	"alongside/props/report"
)

func (p *program) barsCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "bars FILE",
		Short: "Show what the shop's own test bars say, with tolerance bounds",
		Long: `Read test bars from a CSV file, one bar a row, and print for each material and
property the number of bars and heats, mean, standard deviation, least, the values
above which 90 and 99 % of such bars lie with 95 % confidence, and Ppk against the
specified minimum. The columns are material, heat, date, conditions and properties
with their unit in the head: tensile strength ksi, yield strength MPa, elongation %,
reduction of area %, Brinell hardness HB.

Bounds are mean less k times the deviation, k from the noncentral t distribution,
where at least 8 bars pass the Anderson–Darling check; else the least bars, from 29
for 90/95 and 299 for 99/95. What looks like an outlier is named and kept.

--house takes the same file: the bars then stand beside the published figures.`,
		Example: "  alongside bars mybars.csv\n  alongside bars mybars.csv --format csv > bounds.csv",
		Args:    cobra.ExactArgs(1),
	}
	out := drawFlag(cmd)
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		sets, err := p.readBars(args[0])
		if err != nil {
			return &failure{exitFindings, err}
		}
		return p.printOrDraw(report.BarsDoc(sets), *out, format)
	}
	return cmd
}

func (p *program) readBars(name string) ([]*bars.Set, error) {
	text, err := disk.Read(name, houseSize)
	if err != nil {
		return nil, err
	}
	return bars.Read(filepath.ToSlash(name), string(text), p.catalog())
}
