package report

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/sheet"
)

// waiting is what the main figures of a material still lack.
type waiting struct {
	material *props.Material
	memory   []*props.Figure    // from memory alone
	absent   []props.PropertyID // properties that exist and have no figure
}

// waitingOf lists the materials that are asked for most whose main figures wait
// to be read, in the order of that list. One kind of conduction is enough.
func waitingOf(c *catalog.Catalog) []waiting {
	var out []waiting
	for _, id := range c.Everyday {
		w := waiting{material: c.Material(id)}
		conducts := w.material.Has(props.ThermalConductivity) || w.material.Has(props.ElectricalConductivity)
		for _, p := range mainFigures {
			figures := w.material.Figures(p)
			conduction := p == props.ThermalConductivity || p == props.ElectricalConductivity
			if len(figures) == 0 && w.material.Absent(p) == "" && !(conduction && conducts) {
				w.absent = append(w.absent, p)
			}
			for _, f := range figures {
				if f.Known() == props.Memory {
					w.memory = append(w.memory, f)
				}
			}
		}
		if len(w.memory)+len(w.absent) > 0 {
			out = append(out, w)
		}
	}
	return out
}

// names are the short names of the properties, each once.
func names(list []props.PropertyID) string {
	var out []string
	for _, p := range slices.Compact(list) {
		out = append(out, strings.ToLower(p.Info().Short))
	}
	return strings.Join(out, ", ")
}

// WaitingDoc is the materials that are asked for most with those of their main
// figures that are from memory alone, and those that are missing.
func WaitingDoc(c *catalog.Catalog) *Doc {
	list := waitingOf(c)
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("material", "from memory alone", "no figure")}
			for _, w := range list {
				var memory []props.PropertyID
				for _, f := range w.memory {
					memory = append(memory, f.Property)
				}
				t.Add(w.material.ID, names(memory), names(w.absent))
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}}
		},
		json: func() object {
			return object{{"waiting", each(list, func(w *waiting) object {
				absent := []string{}
				for _, p := range w.absent {
					absent = append(absent, p.String())
				}
				memory := each(w.memory, func(f **props.Figure) object {
					return object{{"property", (*f).Property.String()}, {"figure", printedJSON(*f)}}
				})
				return object{{"material", w.material.ID}, {"memory", memory}, {"absent", absent}}
			})}}
		},
	}
}
