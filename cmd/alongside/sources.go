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

// tally counts figures by the degree to which they are known.
type tally struct {
	materials int
	known     [props.Read + 1]int
}

func (t *tally) figures() int {
	return t.known[props.Read] + t.known[props.Agreed] + t.known[props.Memory]
}

// counts are the columns read, agreed and memory.
func (t *tally) counts() []string {
	return []string{strconv.Itoa(t.figures()), strconv.Itoa(t.known[props.Read]), strconv.Itoa(t.known[props.Agreed]), strconv.Itoa(t.known[props.Memory])}
}

// line is a line of the table by family, with the share that is from memory
// alone.
func (t *tally) line(name string) []string {
	share := "–"
	if n := t.figures(); n > 0 {
		share = strconv.Itoa((100*t.known[props.Memory]+n/2)/n) + " %"
	}
	return append(append([]string{name, strconv.Itoa(t.materials)}, t.counts()...), share)
}

func sourcesText(c *catalog.Catalog) string {
	bySource, byFamily := map[*props.Source]*tally{}, map[*props.Family]*tally{}
	all := tally{materials: len(c.Materials)}
	for _, s := range c.Sources {
		bySource[s] = &tally{}
	}
	for _, f := range c.Families {
		byFamily[f] = &tally{}
	}
	for _, m := range c.Materials {
		byFamily[m.Alloy.Family].materials++
	}
	for family, f := range c.Stated() {
		for _, t := range []*tally{bySource[f.Source], byFamily[family], &all} {
			t.known[f.Known()]++
		}
	}
	records := [][]string{{"source", "kind", "figures", "read", "agreed", "memory"}}
	for _, s := range c.Sources {
		records = append(records, append([]string{s.ID, s.Kind}, bySource[s].counts()...))
	}
	var b strings.Builder
	b.WriteString(columns(records, 2))
	b.WriteByte('\n')
	b.WriteString(titles(c.Sources))
	b.WriteByte('\n')
	records = [][]string{{"family", "materials", "figures", "read", "agreed", "memory", "share"}}
	for _, f := range c.Families {
		records = append(records, byFamily[f].line(f.ID))
	}
	everyday, main := everydayTally(c)
	records = append(records, all.line("all"), everyday.line("everyday"), main.line("everyday, main"))
	b.WriteString(columns(records, 1))
	b.WriteString("\n" + degreesText)
	return cleanLines(b.String())
}

const degreesText = `read: on a page that reproduces the source; agreed: from memory, and the same digits were read in another
document; memory: from memory alone, share of the figures. Everyday: the materials asked for most; main: their
strength, elongation, density, modulus, expansion and conduction.
`

// mainFigures are the properties that nearly every call asks for.
var mainFigures = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.Density, props.ElasticModulus,
	props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity}

// everydayTally counts the figures of the materials that are asked for most,
// and their main ones; one that several of them share counts once.
func everydayTally(c *catalog.Catalog) (all, main tally) {
	seen := map[*props.Figure]bool{}
	all.materials, main.materials = len(c.Everyday), len(c.Everyday)
	for _, id := range c.Everyday {
		for f := range c.Material(id).All() {
			if seen[f] {
				continue
			}
			seen[f] = true
			all.known[f.Known()]++
			if slices.Contains(mainFigures, f.Property) {
				main.known[f.Known()]++
			}
		}
	}
	return all, main
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
			if c.Source.Kind == "none" {
				t.known[props.Read]++ // common practice, nothing to check
			} else {
				t.known[c.Known]++
			}
		}
	}
	records := [][]string{{"source", "kind", "statements", "memory"}}
	var named []*props.Source
	for _, s := range book.Sources {
		if t := count[s]; t != nil {
			named = append(named, s)
			records = append(records, []string{s.ID, s.Kind, strconv.Itoa(t.figures()), strconv.Itoa(t.known[props.Memory])})
		}
	}
	records = append(records, []string{"all", "", strconv.Itoa(all.figures()), strconv.Itoa(all.known[props.Memory])})
	return columns(records, 2) + "\n" + titles(named)
}
