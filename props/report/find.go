package report

import (
	"slices"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/sheet"
	"alongside/units"
)

// keyFigures are the properties shown beside each material found.
var keyFigures = [...]props.PropertyID{props.TensileStrength, props.YieldStrength, props.Elongation, props.Density}

// ListDoc is a list of materials with the first figures on file for the
// properties asked for most, in the units of a system.
func ListDoc(list []*props.Material, s units.System) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc { return listText(list, s) },
		data: func() *sheet.Doc { return listData(list, s) },
		json: func() object {
			return object{{"materials", each(list, func(m **props.Material) object { return listedJSON(*m, s) })}, {"caution", Caution}}
		},
	}
}

// keyFiguresOf are a metal's key figures, nil where there is none.
func keyFiguresOf(m *props.Material) []*props.Figure {
	q := compare.NewBench().Question
	return q.Along(m, keyFigures[:])
}

func listText(list []*props.Material, s units.System) *sheet.Doc {
	if len(list) == 0 {
		return &sheet.Doc{}
	}
	t := &sheet.Table{Columns: sheet.Columns("id", "name")}
	for _, id := range keyFigures {
		head := headIn(id, id.Info().Units[s])
		t.Columns = append(t.Columns, sheet.Column{Name: joined(" ", head...), Head: head, Align: sheet.Right})
	}
	legend, recall := "min: specified minimum, max: maximum, no word: typical", false
	for _, m := range list {
		row := []string{m.ID, m.Name()}
		for i, f := range keyFiguresOf(m) {
			if f == nil {
				row = append(row, "–")
				continue
			}
			recall = recall || recalled(f.Known())
			row = append(row, f.Value.InOrOwn(keyFigures[i].Info().Units[s]).Number()+markWord(f.Basis)+knownBy[f.Known()].sign)
		}
		t.Add(row...)
	}
	if recall {
		legend += "; " + RecalledSign
	}
	return &sheet.Doc{Blocks: []sheet.Block{t}, Foot: []string{legend}}
}

// keyColumns are the columns of each key figure in a sheet; its name and unit
// stand before them.
var keyColumns = []string{"value", "to", "basis", "known", "conditions"}

func keyRecord(f *props.Figure, u units.Unit) record {
	r := record{}
	if f == nil {
		return r
	}
	value, err := f.Value.In(u)
	if err != nil { // in another scale than the column
		return r
	}
	r.putFigure(f, value)
	return r
}

func listData(list []*props.Material, s units.System) *sheet.Doc {
	head := []string{"id", "name", "family", "alloy", "temper", "process"}
	for _, id := range keyFigures {
		head = append(head, prefixed(id.String()+" "+id.Info().Units[s].Symbol(), keyColumns)...)
	}
	t := &sheet.Table{Columns: sheet.Columns(head...)}
	for _, m := range list {
		cells := []string{m.ID, m.Name(), m.Alloy.Family.ID, m.Alloy.Name, m.Temper, m.Process.ID()}
		for i, f := range keyFiguresOf(m) {
			cells = slices.Concat(cells, keyRecord(f, keyFigures[i].Info().Units[s]).cells(keyColumns))
		}
		t.Add(cells...)
	}
	return dataDoc(t, nil)
}

func listedJSON(m *props.Material, s units.System) object {
	figures := []object{}
	for i, f := range keyFiguresOf(m) {
		if id := keyFigures[i]; f != nil {
			figures = append(figures, append(object{{"property", id.String()}}, figureFields(f, f.Value.InOrOwn(id.Info().Units[s]))...))
		}
	}
	return append(materialJSON(m), field{"figures", figures})
}
