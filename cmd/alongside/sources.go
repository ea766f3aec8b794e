package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"alongside/data"
	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/report"
	"alongside/props/watch"
)

func (p *program) sourcesCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "sources",
		Short: "List the sources, and how many figures rest on each",
		Long: `List the sources with the number of figures that rest on each and how many of
these are from memory and wait to be read again; then the same by family. A
figure that several materials share counts once. With --process the sources of
the process cards and watch-outs are listed instead.`,
		Example: "  alongside sources\n  alongside sources --process",
		Args:    cobra.NoArgs,
	}
	process := cmd.Flags().Bool("process", false, "the sources of process cards and watch-outs")
	cmd.RunE = func(*cobra.Command, []string) error {
		if *process {
			return p.print(processSourcesText(data.Foundry(), data.Watch()))
		}
		return p.print(sourcesText(p.catalog()))
	}
	return cmd
}

// tally counts figures, and those of them that are from memory.
type tally struct{ figures, memory int }

func (t *tally) add(known props.Known) {
	t.figures++
	if known == props.Memory {
		t.memory++
	}
}

func (t *tally) share() string {
	if t.figures == 0 {
		return "–"
	}
	return strconv.Itoa((100*t.memory+t.figures/2)/t.figures) + " %"
}

func sourcesText(c *catalog.Catalog) string {
	bySource, byFamily := map[*props.Source]*tally{}, map[*props.Family]*tally{}
	materials := map[*props.Family]int{}
	var all tally
	for _, s := range c.Sources {
		bySource[s] = &tally{}
	}
	for _, f := range c.Families {
		byFamily[f] = &tally{}
	}
	for _, m := range c.Materials {
		materials[m.Alloy.Family]++
	}
	for family, f := range c.Stated() {
		for _, t := range []*tally{bySource[f.Source], byFamily[family], &all} {
			t.add(f.Known)
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
	b.WriteString(titles(c.Sources))
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

// titles spells the ids of sources out.
func titles(list []*props.Source) string {
	var b strings.Builder
	for _, s := range list {
		fmt.Fprintf(&b, "%s: %s\n", s.ID, report.SourceText(s))
	}
	return b.String()
}

// processSourcesText counts the records of the process files and the rules by
// the source they rest on.
func processSourcesText(book *foundry.Book, rules *watch.Rules) string {
	count := map[*props.Source]*tally{}
	var all tally
	for _, c := range append(slices.Clone(book.Cites()), rules.Cites()...) {
		t := count[c.Source]
		if t == nil {
			t = &tally{}
			count[c.Source] = t
		}
		for _, t := range []*tally{t, &all} {
			t.figures++
			if c.Known == props.Memory && c.Source.Kind != "none" {
				t.memory++
			}
		}
	}
	records := [][]string{{"source", "kind", "statements", "memory"}}
	var named []*props.Source
	for _, s := range book.Sources {
		if t := count[s]; t != nil {
			named = append(named, s)
			records = append(records, []string{s.ID, s.Kind, strconv.Itoa(t.figures), strconv.Itoa(t.memory)})
		}
	}
	records = append(records, []string{"all", "", strconv.Itoa(all.figures), strconv.Itoa(all.memory)})
	return columns(records, 2) + "\n" + titles(named)
}
