package main

import (
	"fmt"
	"strings"

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
	full := cmd.Flags().Bool("full", false, "all digits, for further reckoning")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		q, targets, err := quantityAndTargets(args)
		if err != nil {
			return err
		}
		if q.Unit.Dimension() == units.NoDimension || q.Unit.Dimension() == units.Ratio {
			return fmt.Errorf("%q has no unit; write it behind the number, such as \"37 ksi\"", args[0])
		}
		if len(targets) > 0 {
			return p.convertTo(q, targets, *full)
		}
		return p.convertAll(q, *full)
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

func (p *program) convertTo(q units.Quantity, targets []string, full bool) error {
	var b strings.Builder
	for _, t := range targets {
		u, err := units.ParseUnit(t)
		if err != nil {
			return err
		}
		r, err := q.In(u)
		if err != nil {
			return err
		}
		b.WriteString(quantityText(r, full) + "\n")
	}
	return p.print(b.String())
}

// convertAll lists the quantity in every unit of its dimension, first in its
// own.
func (p *program) convertAll(q units.Quantity, full bool) error {
	lines := []string{quantityText(q, full)}
	for _, u := range units.UnitsOf(q.Unit.Dimension()) {
		if u == q.Unit {
			continue
		}
		if r, err := q.In(u); err == nil { // a zero has no reciprocal
			lines = append(lines, quantityText(r, full))
		}
	}
	return p.print(strings.Join(lines, "\n") + "\n")
}

// quantityText is a quantity as shown, or with all its digits.
func quantityText(q units.Quantity, full bool) string {
	if !full {
		return q.String()
	}
	s := q.Qual.String()
	if s != "" {
		s += " "
	}
	s += report.Plain(q.Lo)
	if q.IsRange() {
		s += "–" + report.Plain(q.Hi)
	}
	return strings.TrimSpace(s + " " + q.Unit.Symbol())
}
