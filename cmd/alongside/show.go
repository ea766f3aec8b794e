package main

import (
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/report"
	"alongside/units"
)

func (p *program) showCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "show ID",
		Short: "Print everything on file for a material, with sources",
		Long: `Print everything on file for a material: its designations and composition, and
every figure as its source prints it, with basis, test conditions, source and
table, and whether it was read or is from memory. The figure shown first is the
one the bench prefers.`,
		Example: `  alongside show a356-t6-pm
  alongside show "class 30" --units si`,
		Args:              atLeast(1, "an ID, such as a356-t6-pm"),
		ValidArgsFunction: p.completeMaterials,
	}
	system := choiceFlag(cmd, "units", "give each figure in these units too", "source", "us", "si", "cgs")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		typed := strings.Join(args, " ")
		m, err := p.material(typed)
		if err != nil {
			return err
		}
		s, err := units.ParseSystem(system.value)
		return p.printDoc(report.OnFileDoc(m, s, err == nil), format)
	}
	return cmd
}
