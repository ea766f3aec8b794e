package report

import (
	"slices"
	"strconv"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/foundry"
	"alongside/props/sheet"
	"alongside/props/watch"
)

// tally counts figures or statements by the degree to which they are known.
type tally struct{ Figures, Checked, Read, Agreed, Memory int }

func (t *tally) add(k props.Known) {
	t.Figures++
	switch k {
	case props.Checked:
		t.Checked++
	case props.Read:
		t.Read++
	case props.Agreed:
		t.Agreed++
	default:
		t.Memory++
	}
}

// knownColumns are the columns that cells fills; that of the checked stands where
// the shop has checked something.
func knownColumns(checked bool) []string {
	if checked {
		return []string{"checked", "read", "agreed", "memory"}
	}
	return []string{"read", "agreed", "memory"}
}

func (t *tally) cells(checked bool) []string {
	out := []string{strconv.Itoa(t.Figures)}
	if checked {
		out = append(out, strconv.Itoa(t.Checked))
	}
	return append(out, strconv.Itoa(t.Read), strconv.Itoa(t.Agreed), strconv.Itoa(t.Memory))
}

// degreesText explains the columns.
const degreesText = "read: on a page that reproduces the source; agreed: remembered, and the same digits were read in another document; " +
	"memory: remembered alone, with its share. Everyday: the materials asked for most; main: their strength, elongation, density, modulus, expansion and conduction."

func (t *tally) share() string {
	if t.Figures == 0 {
		return "–"
	}
	return strconv.Itoa((100*t.Memory+t.Figures/2)/t.Figures) + " %"
}

// sourceCount is how much rests on each source, and on all.
type sourceCount struct {
	what    string // figures or statements
	sources []*props.Source
	by      map[*props.Source]*tally
	all     tally
}

func (c *sourceCount) add(s *props.Source, k props.Known) {
	if c.by[s] == nil {
		c.by[s] = &tally{}
	}
	c.by[s].add(k)
	c.all.add(k)
}

// table lists the sources with their titles below; total adds them up.
func (c *sourceCount) table(total bool) (*sheet.Table, sheet.Lines) {
	t := &sheet.Table{Columns: counted(append([]string{"source", "kind", c.what}, knownColumns(c.all.Checked > 0)...)...)}
	var titles sheet.Lines
	for _, s := range c.sources {
		t.Add(append([]string{s.ID, s.Kind}, c.by[s].cells(c.all.Checked > 0)...)...)
		titles = append(titles, s.ID+": "+sourceText(s))
	}
	if total {
		t.Add(append([]string{"all", ""}, c.all.cells(c.all.Checked > 0)...)...)
	}
	return t, titles
}

// counted are columns of which all but the first two are numbers.
func counted(names ...string) []sheet.Column {
	out := sheet.Columns(names...)
	for i := range out[2:] {
		out[2+i].Align = sheet.Right
	}
	return out
}

func (t *tally) json() object {
	return object{{"figures", t.Figures}, {"checked", t.Checked}, {"read", t.Read}, {"agreed", t.Agreed}, {"memory", t.Memory}}
}

// json has each source with what rests on it; its table and known belong to
// that and are empty. What more there is to count stands before the sum.
func (c *sourceCount) json(more ...field) object {
	out := object{{"sources", each(c.sources, func(s **props.Source) object {
		source := object{{"id", (*s).ID}, {"title", sourceText(*s)}, {"table", ""}, {"known", ""}}
		return object{{"source", source}, {"kind", (*s).Kind}, {"count", c.by[*s].json()}}
	})}}
	return append(append(out, more...), field{"count", c.all.json()})
}

// SourcesDoc is the sources of a catalog with the number of figures that rest
// on each, then the same by family. A figure that several materials share
// counts once.
func SourcesDoc(c *catalog.Catalog) *Doc {
	count := &sourceCount{what: "figures", sources: c.Sources, by: map[*props.Source]*tally{}}
	for _, s := range c.Sources {
		count.by[s] = &tally{}
	}
	families, materials := map[*props.Family]*tally{}, map[*props.Family]int{}
	for _, f := range c.Families {
		families[f] = &tally{}
	}
	for _, m := range c.Materials {
		materials[m.Alloy.Family]++
	}
	for owner, f := range c.Stated() {
		if f.Property.OfCurve() {
			continue // hundreds of points read off a few curves would hide what is remembered
		}
		count.add(f.Source, f.Known())
		families[owner.Family].add(f.Known())
	}
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			table, titles := count.table(false)
			t := &sheet.Table{Columns: counted(append(append([]string{"family", "materials", "figures"}, knownColumns(count.all.Checked > 0)...), "share")...)}
			t.Columns[1].Align = sheet.Right
			row := func(name string, materials int, n *tally) {
				t.Add(append(append([]string{name, strconv.Itoa(materials)}, n.cells(count.all.Checked > 0)...), n.share())...)
			}
			for _, f := range c.Families {
				row(f.ID, materials[f], families[f])
			}
			row("all", len(c.Materials), &count.all)
			everyday, main := everydayTally(c)
			row("everyday", len(c.Everyday), &everyday)
			row("everyday, main", len(c.Everyday), &main)
			words := degreesText
			if count.all.Checked > 0 {
				words = "checked: by the shop in its own copy of the source; " + words
			}
			return &sheet.Doc{Blocks: []sheet.Block{table, titles, t, sheet.Lines{words}}}
		},
		json: func() object {
			return count.json(field{"families", each(c.Families, func(f **props.Family) object {
				return object{{"family", (*f).ID}, {"count", append(object{{"materials", materials[*f]}}, families[*f].json()...)}}
			})})
		},
	}
}

// mainFigures are the properties that nearly every call asks for.
var mainFigures = []props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.Density, props.ElasticModulus,
	props.ThermalExpansion, props.ThermalConductivity, props.ElectricalConductivity}

// everydayTally counts the figures of the materials that are asked for most,
// and their main ones; one that several of them share counts once.
func everydayTally(c *catalog.Catalog) (all, main tally) {
	seen := map[*props.Figure]bool{}
	for _, id := range c.Everyday {
		for f := range c.Material(id).All() {
			if seen[f] || f.Property.OfCurve() {
				continue
			}
			seen[f] = true
			all.add(f.Known())
			if slices.Contains(mainFigures, f.Property) {
				main.add(f.Known())
			}
		}
	}
	return all, main
}

// ProcessSourcesDoc is the sources of process cards and watch-outs with the
// number of statements that rest on each.
func ProcessSourcesDoc(book *foundry.Book, rules *watch.Rules) *Doc {
	count := &sourceCount{what: "statements", by: map[*props.Source]*tally{}}
	for _, c := range append(slices.Clone(book.Cites()), rules.Cites()...) {
		known := c.Known
		if c.Source.Kind == "none" { // nothing is named that could be read
			known = props.Read
		}
		count.add(c.Source, known)
	}
	for _, s := range book.Sources {
		if count.by[s] != nil {
			count.sources = append(count.sources, s)
		}
	}
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			table, titles := count.table(true)
			return &sheet.Doc{Blocks: []sheet.Block{table, titles}}
		},
		json: func() object { return count.json() },
	}
}
