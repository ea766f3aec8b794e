package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"alongside/props"
	"alongside/props/report"
)

func (p *program) sourcesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "sources",
		Short: "List the sources, and how many figures rest on each",
		Long: `List the sources with the number of figures that rest on each and how many of
these are from memory and wait to be read again; then the same by family. A
figure that several materials share counts once.`,
		Example: "  alongside sources",
		Args:    cobra.NoArgs,
		RunE:    func(*cobra.Command, []string) error { return p.print(sourcesText(p.catalog())) },
	}
}

// tally counts figures, and those of them that are from memory.
type tally struct{ figures, memory int }

func (t *tally) add(b *props.Block) {
	t.figures += len(b.Figures)
	if b.Known == props.Memory {
		t.memory += len(b.Figures)
	}
}

func (t *tally) share() string {
	if t.figures == 0 {
		return "–"
	}
	return strconv.Itoa((100*t.memory+t.figures/2)/t.figures) + " %"
}

// blocksOf lists every block of an alloy, the shared ones and those of its
// materials.
func blocksOf(a *props.Alloy) []*props.Block {
	out := append([]*props.Block{}, a.Blocks...)
	for _, m := range a.Materials {
		out = append(out, m.Blocks...)
	}
	return out
}

func sourcesText(c *props.Catalog) string {
	bySource, byFamily := map[*props.Source]*tally{}, map[*props.Family]*tally{}
	materials := map[*props.Family]int{}
	var all tally
	for _, s := range c.Sources {
		bySource[s] = &tally{}
	}
	for _, f := range c.Families {
		byFamily[f] = &tally{}
	}
	for _, a := range c.Alloys {
		materials[a.Family] += len(a.Materials)
		for _, b := range blocksOf(a) {
			bySource[b.Source].add(b)
			byFamily[a.Family].add(b)
			all.add(b)
		}
	}
	records := [][]string{{"source", "kind", "figures", "memory"}}
	for _, s := range c.Sources {
		t := bySource[s]
		records = append(records, []string{s.ID, s.Kind, strconv.Itoa(t.figures), strconv.Itoa(t.memory)})
	}
	var b strings.Builder
	b.WriteString(columns(records, 2))
	b.WriteByte('\n')
	for _, s := range c.Sources {
		fmt.Fprintf(&b, "%s: %s\n", s.ID, report.SourceText(s))
	}
	b.WriteByte('\n')
	records = [][]string{{"family", "materials", "figures", "memory", "share"}}
	for _, f := range c.Families {
		t := byFamily[f]
		records = append(records, []string{f.ID, strconv.Itoa(materials[f]), strconv.Itoa(t.figures), strconv.Itoa(t.memory), t.share()})
	}
	records = append(records, []string{"all", strconv.Itoa(len(c.Materials)), strconv.Itoa(all.figures), strconv.Itoa(all.memory), all.share()})
	b.WriteString(columns(records, 1))
	return cleanLines(b.String())
}
