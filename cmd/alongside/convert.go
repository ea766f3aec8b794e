package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"alongside/props/report"
	"alongside/units"
)

func (p *program) convertCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "convert QUANTITY [UNIT...]",
		Short: "Convert a quantity, with no more digits than it had",
		Long: `Convert a quantity into other units; without a unit, into all units of its
kind. The result shows no more precision than the quantity came with (NIST SP
811, B.7.1): 37 ksi is 255 MPa, not 255.106. Ranges and limits stay what they
are. A conductivity converts into a resistivity and back.`,
		Example: `  alongside convert "37 ksi" MPa
  alongside convert 0.097 lb/in3 g/cm3 kg/m3
  alongside convert "39 %IACS"
  alongside convert "70-95 ksi" MPa --full
  alongside convert "-40 °F" °C`,
		Args: atLeast(1, "a quantity, such as \"37 ksi\""),
	}
	full := cmd.Flags().Bool("full", false, "all digits, for further calculation")
	format := formatFlag(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		q, targets, err := quantityAndTargets(args)
		if err != nil {
			return err
		}
		if q.Unit.Dimension() == units.NoDimension || q.Unit.Dimension() == units.Ratio {
			return fmt.Errorf("%q has no unit; write it behind the number, such as \"37 ksi\"", args[0])
		}
		list, err := inUnits(q, targets)
		if err != nil {
			return err
		}
		return p.printDoc(report.ConvertDoc(list, *full), format)
	}
	return cmd
}

// quantityAndTargets reads a quantity, typed as one word or as two ("37" "ksi"),
// and the units to convert it into; a "to" between them is passed over.
func quantityAndTargets(args []string) (units.Quantity, []string, error) {
	q, err := units.Parse(args[0])
	rest := args[1:]
	if len(rest) > 0 && (err != nil || q.Unit.Symbol() == "") {
		if joined, again := units.Parse(args[0] + " " + rest[0]); again == nil {
			q, err, rest = joined, nil, rest[1:]
		}
	}
	if len(rest) > 1 && rest[0] == "to" {
		rest = rest[1:]
	}
	return q, rest, err
}

// inUnits is the quantity in the units named, or else in every unit of its
// dimension, first its own.
func inUnits(q units.Quantity, targets []string) ([]units.Quantity, error) {
	var out []units.Quantity
	for _, t := range targets {
		u, err := units.ParseUnit(t)
		if err != nil {
			return nil, err
		}
		r, err := q.In(u)
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	if len(targets) > 0 {
		return out, nil
	}
	out = append(out, q)
	for _, u := range units.UnitsOf(q.Unit.Dimension()) {
		if u == q.Unit {
			continue
		}
		if r, err := q.In(u); err == nil { // a zero has no reciprocal
			out = append(out, r)
		}
	}
	return out, nil
}
