package main

import (
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
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
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		typed := strings.Join(args, " ")
		m, err := p.catalog().Resolve(typed)
		if err != nil {
			return err
		}
		s, err := units.ParseSystem(system.value)
		return p.print(showText(m, s, err == nil, p.width()))
	}
	return cmd
}

// page is a material written out for reading, in lines of limited width.
type page struct {
	strings.Builder
	width int
	refs  []reference
}

// reference is where a figure stands: figures of one table share one.
type reference struct {
	source *props.Source
	table  string
	known  props.Known
	where  string
	agrees *props.Source
}

func showText(m *props.Material, s units.System, convert bool, width int) string {
	p := &page{width: width}
	a := m.Alloy
	p.line("", m.Name()+"  ("+m.ID+")")
	p.line("", a.Family.Name)
	if a.Note != "" {
		p.line("", a.Note)
	}
	p.designations(m)
	p.composition(a)
	group := props.Group(255)
	for _, id := range props.Properties() {
		list, absent := m.Figures(id), m.Absent(id)
		if len(list) == 0 && absent == "" {
			continue
		}
		if g := id.Info().Group; g != group {
			group = g
			p.line("", "")
			p.line("", strings.ToUpper(g.String()))
		}
		p.line("", id.Info().Name)
		if len(list) == 0 {
			p.line("  ", "none: "+absent)
		}
		for _, f := range list {
			p.figure(f, id.Info().Units[s], convert)
		}
	}
	p.line("", "")
	p.line("", "SOURCES")
	for i, r := range p.refs {
		text := "[" + strconv.Itoa(i+1) + "] " + report.SourceText(r.source)
		if r.table != "" {
			text += "; " + r.table
		}
		text += "; " + known(r)
		if r.source.Note != "" {
			text += "; " + strings.TrimSuffix(r.source.Note, ".")
		}
		p.line("", text)
	}
	p.line("", "")
	p.line("", report.Caution)
	return p.String()
}

// line writes a paragraph with every line after an indent, and those after the
// first two blanks deeper.
func (p *page) line(indent, text string) { report.Wrap(&p.Builder, p.width, indent, indent+"  ", text) }

func (p *page) designations(m *props.Material) {
	names := report.AliasTexts(m)
	if m.Alloy.UNS != "" {
		names = append([]string{"UNS " + m.Alloy.UNS}, names...)
	}
	if len(names) > 0 {
		p.line("", "Also: "+strings.Join(names, "; "))
	}
}

func (p *page) composition(a *props.Alloy) {
	if len(a.Composition.Limits) == 0 {
		return
	}
	var parts []string
	for _, l := range a.Composition.Limits {
		parts = append(parts, strings.ReplaceAll(l.Element, "_", " ")+" "+l.Text)
	}
	if n := a.Nominal(); n != "" {
		p.line("", "Nominal composition: "+n+" (middle of the limits)")
	}
	p.line("", "Composition, % by mass: "+strings.Join(parts, "; ")+" "+p.number(reference{a.Composition.Source, "", a.Composition.Known, a.Composition.Where, nil}))
}

func (p *page) figure(f *props.Figure, u units.Unit, convert bool) {
	s := f.Value.String()
	if q, err := f.Value.In(u); convert && err == nil && u != f.Value.Unit {
		s += " (" + q.String() + ")"
	}
	s += ", " + f.Basis.Phrase()
	if cond := f.Cond.String(); cond != "" {
		s += "; " + cond
	}
	if f.Inherited {
		s += "; for " + shared(f.Block)
	}
	s += " " + p.number(reference{f.Source, f.Table, f.Known(), f.Where, f.Agrees})
	if f.First != "" {
		s += " Shown first: " + f.First
	}
	p.line("  ", s)
}

// number is the place of a reference in the list below, with a word where the
// figure was not read there.
func (p *page) number(r reference) string {
	at := slices.Index(p.refs, r)
	if at < 0 {
		at = len(p.refs)
		p.refs = append(p.refs, r)
	}
	switch r.known {
	case props.Memory:
		return "[" + strconv.Itoa(at+1) + ", from memory]"
	case props.Agreed:
		return "[" + strconv.Itoa(at+1) + ", from memory, same digits elsewhere]"
	}
	return "[" + strconv.Itoa(at+1) + "]"
}

func known(r reference) string {
	if r.known == props.Memory {
		return "from memory, not read"
	}
	return report.KnownText(r.known, r.where, r.agrees)
}

// shared says which materials of the alloy a block holds for.
func shared(b *props.Block) string {
	if len(b.Tempers)+len(b.Processes) == 0 {
		return "the whole alloy"
	}
	parts := append([]string{}, b.Tempers...)
	for _, q := range b.Processes {
		parts = append(parts, q.String())
	}
	return strings.Join(parts, ", ")
}
