package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/call"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/report"
	"alongside/units"
)

func (p *program) briefCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "brief FROM TO... | --call NAME [TO...]",
		Short: "Print one page for the customer",
		Long: `Print one page for the customer: what was asked, what the change from FROM to one
to three proposals does to the part, the three gravest watch-outs, what must
still be asked, and the sources. With --call it is that of a kept call, from its
baseline to its other pins, or to those named.

Numbers are rounded as one says them; what is said always holds the range that
was worked out.`,
		Example: `  alongside brief gray-30 a356-t6-pm --mass "4.2 lb" --wall "3/8 in" --case plate --need "yield >= 20 ksi"
  alongside brief zn-3-die a380-f-die az91d-die --mass "0.5 lb" --with crimp --format markdown`,
		Args:              cobra.MaximumNArgs(1 + report.BriefProposals),
		ValidArgsFunction: p.completeMaterials,
	}
	typed := p.partFlags(cmd, append(part.Fields()[:part.FieldDimension], part.FieldWith)...)
	var limits []string
	p.needFlag(cmd, &limits)
	kept := cmd.Flags().String("call", "", "the kept call of this `NAME`; alongside call lists them")
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
		b := call.Call{Bench: p.newBench(system)}
		if *kept != "" {
			if b, given, err = p.keptCall(*kept, given); err != nil {
				return err
			}
		}
		if system.given {
			b.Bench.System, _ = units.ParseSystem(system.value)
		}
		for _, pin := range pins {
			b.Bench.Pin(pin)
		}
		if len(b.Bench.Pins) < 2 {
			return fmt.Errorf("a brief needs two materials: what the part is made of, and what it becomes")
		}
		typedNeeds, _, err := p.readNeeds(limits, b.Bench.System, b.Bench.Pins[b.Bench.Baseline])
		if err != nil {
			return err
		}
		if *kept == "" {
			pins = nil // the first of them is the baseline
		}
		proposals, err := proposed(&b.Bench, pins)
		if err != nil {
			return err
		}
		page := report.NewOnePage(b.Bench, append(b.NeedsOn(), typedNeeds...), given, data.Watch(), b.Aside, proposals...)
		return p.printDoc(report.BriefDoc(page), format)
	}
	return cmd
}

// proposed are the pins of a bench that a brief tells of: those named, else all
// beside the baseline.
func proposed(b *compare.Bench, named []*props.Material) ([]*props.Material, error) {
	if len(named) == 0 {
		named = slices.DeleteFunc(slices.Clone(b.Pins), func(m *props.Material) bool { return m == b.Pins[b.Baseline] })
	}
	if len(named) > report.BriefProposals {
		return nil, fmt.Errorf("the call has %d pins beside its baseline; name at most %d for the brief, such as %s", len(named), report.BriefProposals, named[0].ID)
	}
	return named, nil
}

// keptCall is a kept call with its part, in which what is given here goes first.
func (p *program) keptCall(name string, given part.Given) (call.Call, part.Given, error) {
	f, err := p.sheets()
	if err != nil {
		return call.Call{}, given, err
	}
	s, err := f.Find(name)
	if err != nil {
		return call.Call{}, given, &failure{exitFindings, err}
	}
	p.mistakes(s)
	own, err := s.Call.Part.Over(given.Part).Read(p.catalog())
	if err != nil {
		return call.Call{}, given, &failure{exitFindings, err}
	}
	return s.Call, own, nil
}
