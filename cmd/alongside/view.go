package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props/compare"
	"alongside/props/part"
	"alongside/units"
)

// choice is a flag that takes one of a few words; the error for another lists
// them.
type choice struct {
	value   string
	options []string
	given   bool // on the command line
}

func (c *choice) String() string { return c.value }
func (c *choice) Type() string   { return "word" }
func (c *choice) Set(s string) error {
	s = strings.ToLower(strings.TrimSpace(s))
	if !slices.Contains(c.options, s) {
		return fmt.Errorf("use one of: %s", strings.Join(c.options, ", "))
	}
	c.value, c.given = s, true
	return nil
}

// basis is the choice as figures to compare.
func (c *choice) basis() compare.BasisSetting {
	if c.value == compare.MinimumOnly.String() {
		return compare.MinimumOnly
	}
	return compare.TypicalFirst
}

// choiceFlag adds a flag with a fixed set of words, the first being the
// default, and completes them.
func choiceFlag(cmd *cobra.Command, name, usage string, options ...string) *choice {
	c := &choice{value: options[0], options: options}
	cmd.Flags().Var(c, name, usage+": "+strings.Join(options, ", "))
	// The error is for a flag that does not exist; this one was just made.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(options, cobra.ShellCompDirectiveNoFileComp))
	return c
}

// view is how materials are looked at, as flags of the bench and of compare.
type view struct {
	baseline            string
	units, basis, delta *choice
	service, expansion  string
}

func (p *program) viewFlags(cmd *cobra.Command) *view {
	v := &view{
		units: choiceFlag(cmd, "units", "units of the rows", "us", "si", "cgs"),
		basis: choiceFlag(cmd, "basis", "figures to compare first, or specified minimums only", "typical", "minimum"),
		delta: choiceFlag(cmd, "delta", "how differences are shown", "percent", "amount", "ratio", "off"),
	}
	flags := cmd.Flags()
	flags.StringVar(&v.baseline, "baseline", "", "measure the others against this `ID` (else the first)")
	flags.StringVar(&v.service, "service", "", "compare strength at this `TEMPERATURE`, such as \"300 °F\"")
	flags.StringVar(&v.expansion, "expansion", "", "compare expansion over this `RANGE`, such as \"68-212 °F\"")
	_ = cmd.RegisterFlagCompletionFunc("baseline", p.completeMaterials)
	return v
}

// newBench is an empty bench as the user likes it, in the units of a flag.
func (p *program) newBench(system *choice) compare.Bench {
	b := p.settings().Bench.Clone()
	b.System, _ = units.ParseSystem(system.value)
	if system.given {
		clear(b.RowUnits)
	}
	return b
}

// bench sets up the materials named and the way to look at them.
func (v *view) bench(p *program, ids []string) (compare.Bench, error) {
	b := p.newBench(v.units)
	for _, id := range ids {
		m, err := p.material(id)
		if err != nil {
			return b, err
		}
		b.Pin(m)
	}
	if v.baseline != "" {
		m, err := p.material(v.baseline)
		if err != nil {
			return b, err
		}
		if i := slices.Index(b.Pins, m); i >= 0 {
			b.Baseline = i
		} else {
			b.Pins = slices.Insert(b.Pins, 0, m)
		}
	}
	b.Delta, _ = compare.ParseDelta(v.delta.value)
	b.Basis = v.basis.basis()
	if v.service != "" {
		at, err := part.Temperature(v.service, units.NoUnit)
		if err != nil {
			return b, fmt.Errorf("--service %w", err)
		}
		b.Service = &at
	}
	if v.expansion != "" {
		over, err := part.TemperatureRange(v.expansion, units.NoUnit)
		if err != nil {
			return b, fmt.Errorf("--expansion %w", err)
		}
		b.Range = &over
	}
	return b, nil
}

// atLeast is an argument check that says in words what is missing.
func atLeast(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) < n {
			return fmt.Errorf("%s needs %s", cmd.Name(), what)
		}
		return nil
	}
}
