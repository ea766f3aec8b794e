package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/props/sheet"
	"alongside/props/spoken"
	"alongside/units"
)

// search is the flags of find that turn it from a search for words into one
// for needs.
type search struct {
	needs      []string
	near       int
	memory     bool
	sort       string
	baseline   string
	betterThan string
	rows       []string
	duty       string
	front      string
	system     *choice
	format     *choice
}

func (p *program) needFlag(cmd *cobra.Command, list *[]string) {
	cmd.Flags().StringArrayVar(list, "need", nil, "a `LIMIT` the customer states, such as \"yield >= 20 ksi\"; may be given again")
}

// readNeeds reads what --need was given of a part made of the baseline, nil for
// none, and tells what was made of it where something was left out. What is not
// understood is the error; the needs that are come with it, and the metal that the
// text says the part is made of today, else the baseline.
func (p *program) readNeeds(typed []string, system units.System, baseline *props.Material) ([]needs.Need, *props.Material, error) {
	if len(typed) == 0 {
		return nil, baseline, nil // the catalog need not be read
	}
	said := spoken.Read(strings.Join(typed, "\n"), p.catalog(), system, baseline)
	if today := said.Today(); today != nil {
		baseline = today
	}
	for _, line := range said.Echo() {
		fmt.Fprintf(p.err, "alongside: %s\n", sheet.CleanLines(line))
	}
	var errs []error
	for _, piece := range said.Refused() {
		errs = append(errs, piece.Err)
	}
	list := said.Needs()
	if len(list) == 0 && len(errs) == 0 {
		errs = append(errs, errors.New("--need says nothing of the metal; write for example \"yield >= 20 ksi\""))
	}
	return list, baseline, errors.Join(errs...)
}

func (p *program) searchFlags(cmd *cobra.Command) *search {
	s := &search{}
	p.needFlag(cmd, &s.needs)
	flags := cmd.Flags()
	flags.IntVar(&s.near, "near", 5, "how many near misses to show")
	flags.BoolVar(&s.memory, "memory", false, "with needs: offer also materials known from memory alone")
	flags.StringVar(&s.sort, "sort", "", "margin, likeness (to the baseline) or a `PROPERTY`")
	flags.StringVar(&s.baseline, "baseline", "", "the `ID` that likeness and merit count from")
	flags.StringVar(&s.betterThan, "better-than", "", "needs that beat or equal this `ID` on --rows")
	flags.StringSliceVar(&s.rows, "rows", nil, "the properties of --better-than: `PROPERTY,...`")
	flags.StringVar(&s.duty, "duty", "", "show the merit for this `DUTY`: "+strings.Join(dutyIDs(), ", "))
	flags.StringVar(&s.front, "front", "", "only what is not beaten on both of two properties: `PROPERTY,PROPERTY`")
	_ = cmd.RegisterFlagCompletionFunc("baseline", p.completeMaterials)
	_ = cmd.RegisterFlagCompletionFunc("better-than", p.completeMaterials)
	_ = cmd.RegisterFlagCompletionFunc("rows", completeProperties)
	_ = cmd.RegisterFlagCompletionFunc("duty", cobra.FixedCompletions(dutyIDs(), cobra.ShellCompDirectiveNoFileComp))
	return s
}

func dutyIDs() []string {
	var ids []string
	for _, d := range needs.Duties() {
		ids = append(ids, d.ID)
	}
	return ids
}

// asked reports whether the flags ask for needs rather than words.
func (s *search) asked() bool {
	return len(s.needs) > 0 || s.betterThan != "" || s.duty != "" || s.front != "" || s.sort != ""
}

// find carries out `find` with needs; words narrow the catalog first.
func (s *search) find(p *program, words []string) error {
	c := p.catalog()
	b := p.newBench(s.system)
	out := report.Search{Bench: b}
	var err error
	if s.baseline != "" {
		if out.Baseline, err = p.material(s.baseline); err != nil {
			return err
		}
	}
	list, today, refused := p.readNeeds(s.needs, b.System, out.Baseline)
	if refused != nil && len(list) == 0 {
		return refused
	}
	out.Baseline = today
	if s.betterThan != "" {
		more, err := s.better(p, &b, &out)
		if err != nil {
			return err
		}
		list = append(list, more...)
	}
	out.Needs = list
	near := s.near
	if len(words) > 0 && near > 0 {
		near = len(c.Materials) // the words narrow them below
	}
	out.Found = needs.Find(c.AskedFor(), list, near, s.memory)
	if len(words) > 0 {
		out.Found = amongFound(out.Found, c, words, s.near)
	}
	if err := s.order(&out); err != nil {
		return err
	}
	err = p.printDoc(report.FoundDoc(out), s.format)
	switch {
	case err == nil && refused != nil:
		return &failure{exitFindings, refused} // the rest was searched by
	case err == nil && len(out.Found.Met) == 0:
		return &failure{code: exitFindings}
	}
	return err
}

func (s *search) better(p *program, b *compare.Bench, out *report.Search) ([]needs.Need, error) {
	base, err := p.material(s.betterThan)
	if err != nil {
		return nil, err
	}
	if out.Baseline == nil {
		out.Baseline = base
	}
	rows := []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Density, props.ThermalConductivity}
	if len(s.rows) > 0 {
		rows = nil
	}
	for _, word := range s.rows {
		id, err := props.ResolveProperty(word)
		if err != nil {
			return nil, err
		}
		rows = append(rows, id)
	}
	list := needs.BetterThan(b, base, rows)
	if len(list) == 0 {
		return nil, fmt.Errorf("--better-than: %s has no figure to beat on these rows; name others with --rows", base.Name())
	}
	return list, nil
}

// order applies --duty, --front and --sort.
func (s *search) order(out *report.Search) error {
	if s.duty != "" {
		d, ok := needs.DutyNamed(s.duty)
		if !ok {
			return fmt.Errorf("no duty %q; use one of: %s", s.duty, strings.Join(dutyIDs(), ", "))
		}
		if out.Baseline == nil {
			return errors.New("--duty needs --baseline ID: a merit is relative to it")
		}
		out.Duty = d
	}
	if err := s.narrow(out); err != nil {
		return err
	}
	switch s.sort {
	case "":
	case "margin":
		needs.SortByMargin(out.Found.Met)
	case "likeness":
		if out.Baseline == nil {
			return errors.New("--sort likeness needs --baseline ID")
		}
		needs.SortByLikeness(out.Found.Met, &out.Bench, out.Baseline)
	default:
		p, err := props.ResolveProperty(s.sort)
		if err != nil {
			return fmt.Errorf("--sort: use margin, likeness or a property: %w", err)
		}
		needs.SortByProperty(out.Found.Met, &out.Bench, p)
		named := func(n needs.Need) bool { return n.Kind == needs.OfProperty && n.Property == p }
		if !slices.Contains(out.Show, p) && !slices.ContainsFunc(out.Needs, named) {
			out.Show = append(out.Show, p)
		}
	}
	return nil
}

// narrow applies --front.
func (s *search) narrow(out *report.Search) error {
	if s.front == "" {
		return nil
	}
	first, second, ok := strings.Cut(s.front, ",")
	if !ok {
		return errors.New("--front needs two properties, such as yield_strength,density")
	}
	p, err := props.ResolveProperty(first)
	if err != nil {
		return err
	}
	q, err := props.ResolveProperty(second)
	if err != nil {
		return err
	}
	out.Front, out.Show = true, []props.PropertyID{p, q}
	out.Found.Met = needs.Front(out.Found.Met, &out.Bench, p, q)
	return nil
}

// amongFound keeps what a search for words finds, and the nearest of its near
// misses.
func amongFound(f needs.Found, c *catalog.Catalog, words []string, near int) needs.Found {
	hit := map[*props.Material]bool{}
	for _, h := range c.Search(strings.Join(words, " ")) {
		hit[h.Material] = true
	}
	other := func(r needs.Result) bool { return !hit[r.Material] }
	f.Met, f.Near = slices.DeleteFunc(f.Met, other), slices.DeleteFunc(f.Near, other)
	f.Remembered = slices.DeleteFunc(f.Remembered, func(m *props.Material) bool { return !hit[m] })
	f.NearTotal, f.UnjudgedTotal = len(f.Near), 0
	for i := range f.Near {
		if f.Near[i].Unjudged() {
			f.UnjudgedTotal++
		}
	}
	f.Near = f.Near[:min(max(near, 0), len(f.Near))]
	return f
}
