package report

import (
	"cmp"
	"slices"
	"strconv"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/sheet"
	"alongside/props/shelf"
)

// ShelfDoc is the list of figures of a source that wait until the shop has looked
// them up: a line each with a box, to be filled in and read back by shelf.Take.
func ShelfDoc(c *catalog.Catalog, s *props.Source, agreed bool) *Doc {
	items := slices.DeleteFunc(shelf.Waiting(c, agreed), func(i shelf.Item) bool { return i.Figure.Source != s })
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			d := &sheet.Doc{Blocks: []sheet.Block{sheet.Lines{s.ID + ": " + sourceText(s) + ". " + strconv.Itoa(len(items)) + " figures wait.",
				"Put an x in the box of each figure that your copy prints. Where it prints another value write that in the box: [38.5 ksi]. " +
					"Fill in the three lines below, put the table right where yours has another number, then: alongside shelf --take FILE"},
				sheet.Lines{shelf.EditionLabel, shelf.ByLabel, shelf.OnLabel}}}
			for i, x := range items {
				if i == 0 || x.Figure.Table != items[i-1].Figure.Table {
					d.Blocks = append(d.Blocks, sheet.Lines{joined(" ", shelf.TableLabel, x.Figure.Table)})
				}
				last := len(d.Blocks) - 1
				d.Blocks[last] = append(d.Blocks[last].(sheet.Lines), "[ ] "+shelf.Key(x.Place)+" "+
					joined(", ", x.Name, x.Figure.Property.Info().Name+" "+x.Catalog, x.Figure.Basis.Phrase(), x.Conditions))
			}
			d.Caution = Caution
			return d
		},
		data: func() *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns(shelf.Columns...)}
			for _, x := range items {
				t.Add(record{"table": x.Figure.Table, "key": shelf.Key(x.Place), "stated for": x.Name, "property": x.Figure.Property.Info().Name, "value": x.Catalog,
					"basis": x.Basis, "conditions": x.Conditions, "known": x.Figure.Known().String(), "source": x.Source}.cells(shelf.Columns)...)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}} // to be filled in and read back: no line more
		},
		json: func() object {
			return object{{"waiting", each(items, func(x *shelf.Item) object {
				return object{{"key", shelf.Key(x.Place)}, {"stated_for", x.Name}, {"property", x.Property}, {"figure", printedJSON(x.Figure)}}
			})}, {"caution", Caution}}
		},
	}
}

// ShelfSourcesDoc is the sources with figures that wait, those of the materials
// asked for most first.
func ShelfSourcesDoc(c *catalog.Catalog, agreed bool) *Doc {
	type count struct {
		source        *props.Source
		all, everyday int
	}
	everyday := map[*props.Figure]bool{}
	for _, id := range c.Everyday {
		for f := range c.Material(id).All() {
			everyday[f] = true
		}
	}
	var list []count
	for _, x := range shelf.Waiting(c, agreed) {
		if n := len(list); n == 0 || list[n-1].source != x.Figure.Source {
			list = append(list, count{source: x.Figure.Source})
		}
		n := &list[len(list)-1]
		n.all++
		if everyday[x.Figure] {
			n.everyday++
		}
	}
	slices.SortStableFunc(list, func(a, b count) int {
		return cmp.Or(cmp.Compare(b.everyday, a.everyday), cmp.Compare(b.all, a.all))
	})
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("source", "everyday", "waiting", "title")}
			t.Columns[1].Align, t.Columns[2].Align = sheet.Right, sheet.Right
			for _, n := range list {
				t.Add(n.source.ID, strconv.Itoa(n.everyday), strconv.Itoa(n.all), n.source.Title)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t, sheet.Lines{"Everyday: of the materials asked for most. alongside shelf SOURCE lists the figures."}}}
		},
		json: func() object {
			return object{{"sources", each(list, func(n *count) object {
				source := object{{"id", n.source.ID}, {"title", sourceText(n.source)}, {"table", ""}, {"known", ""}}
				return object{{"source", source}, {"count", object{{"everyday", n.everyday}, {"waiting", n.all}}}}
			})}}
		},
	}
}
