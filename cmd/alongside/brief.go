package main

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/call"
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
	in := p.pageFlags(cmd)
	kept := cmd.Flags().String("call", "", "the kept call of this `NAME`; alongside call lists them")
	format := formatFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		c, err := in.read(*kept, args)
		if err != nil {
			return err
		}
		if len(c.proposals) > report.BriefProposals {
			return fmt.Errorf("the call has %d pins beside its baseline; name at most %d for the brief, such as %s", len(c.proposals), report.BriefProposals, c.proposals[0].ID)
		}
		return p.printDoc(report.BriefDoc(c.page()), format)
	}
	return cmd
}

// pageInput reads what a brief and a report tell of.
type pageInput struct {
	p      *program
	typed  partFlags
	limits []string
	system *choice
}

func (p *program) pageFlags(cmd *cobra.Command) *pageInput {
	in := &pageInput{p: p, typed: p.partFlags(cmd, append(part.Fields()[:part.FieldDimension], part.FieldWith)...)}
	p.needFlag(cmd, &in.limits)
	in.system = choiceFlag(cmd, "units", "units of the results", "us", "si", "cgs")
	return in
}

// paged is a call with what was typed laid over it.
type paged struct {
	call.Call
	given     part.Given
	proposals []*props.Material
}

// page is the brief of up to so many proposals as it can tell of.
func (c *paged) page() report.OnePage {
	few := c.proposals[:min(len(c.proposals), report.BriefProposals)]
	return report.NewOnePage(c.Bench, c.NeedsOn(), c.given, data.Watch(), c.Aside, few...)
}

// read takes FROM and TO from the arguments, with the name of a kept call TO alone.
func (in *pageInput) read(kept string, args []string) (*paged, error) {
	p := in.p
	given, err := in.typed.read(p.catalog())
	if err != nil {
		return nil, err
	}
	pins, err := p.resolve(args)
	if err != nil {
		return nil, err
	}
	c := &paged{Call: call.Call{Bench: p.newBench(in.system)}, given: given}
	if kept != "" {
		if c.Call, c.given, err = p.keptCall(kept, given); err != nil {
			return nil, err
		}
	}
	if in.system.given {
		c.Bench.System, _ = units.ParseSystem(in.system.value)
	}
	for _, pin := range pins {
		c.Bench.Pin(pin)
	}
	if len(c.Bench.Pins) < 2 {
		return nil, errors.New("two materials are needed: what the part is made of, and what it becomes")
	}
	base := c.Bench.Pins[c.Bench.Baseline]
	typedNeeds, _, err := p.readNeeds(in.limits, c.Bench.System, base)
	if err != nil {
		return nil, err
	}
	c.Needs = append(c.NeedsOn(), typedNeeds...)
	if c.proposals = pins; kept == "" || len(pins) == 0 {
		c.proposals = slices.DeleteFunc(slices.Clone(c.Bench.Pins), func(m *props.Material) bool { return m == base })
	}
	return c, nil
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
