package report

import (
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/sheet"
	"alongside/units"
)

// OnFileDoc is everything on file for a material: designations, composition,
// and every figure as its source prints it. Where convert is true each value
// is given in the units of the system too.
func OnFileDoc(m *props.Material, s units.System, convert bool) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc { return (&onFile{m: m, system: s, convert: convert}).text() },
		data: func() *sheet.Doc { return onFileData(m, s, convert) },
		json: func() object { return onFileJSON(m) },
	}
}

// onFile writes a material out and numbers where its figures stand.
type onFile struct {
	m       *props.Material
	system  units.System
	convert bool
	places  []string
}

func (w *onFile) text() *sheet.Doc {
	m, a := w.m, w.m.Alloy
	head := sheet.Lines{m.Name() + "  (" + m.ID + ")", a.Family.Name}
	if a.Note != "" {
		head = append(head, a.Note)
	}
	if names := designations(m); len(names) > 0 {
		head = append(head, "Also: "+strings.Join(names, "; "))
	}
	if c := &a.Composition; len(c.Limits) > 0 {
		if n := a.Nominal(); n != "" {
			head = append(head, "Nominal composition: "+n+" (middle of the limits)")
		}
		head = append(head, "Composition, % by mass: "+strings.Join(limitTexts(a), "; ")+"; "+w.place(c.Source, "", c.Known, c.Where, nil))
	}
	d := &sheet.Doc{Blocks: []sheet.Block{head}, Caution: Caution}
	var list *sheet.List
	for _, id := range props.Properties() {
		figures, absent := m.Figures(id), m.Absent(id)
		if len(figures) == 0 && absent == "" {
			continue
		}
		if title := id.Info().Group.String(); list == nil || list.Title != title {
			list = &sheet.List{Title: title}
			d.Blocks = append(d.Blocks, list)
		}
		label := id.Info().Name
		if len(figures) == 0 {
			list.Items = append(list.Items, sheet.Item{Label: label, Text: "none: " + absent})
		}
		for _, f := range figures {
			list.Items = append(list.Items, sheet.Item{Label: label, Text: w.figure(f)})
			label = ""
		}
	}
	d.Notes = marked("S", w.places)
	return d
}

func (w *onFile) figure(f *props.Figure) string {
	value := f.Value.String()
	if q, ok := w.converted(f); ok {
		value += " (" + q.String() + ")"
	}
	stated := ""
	if f.Inherited {
		stated = "for " + statedFor(w.m, f.Block)
	}
	s := figureText(f, value, w.place(f.Source, f.Table, f.Known(), f.Where, f.Agrees), stated)
	if f.First != "" {
		s += ". Shown first: " + f.First
	}
	return s
}

func (w *onFile) converted(f *props.Figure) (units.Quantity, bool) {
	return convertedIn(f, w.system, w.convert)
}

// convertedIn is a figure in the unit of a system, where that is another one.
func convertedIn(f *props.Figure, s units.System, convert bool) (units.Quantity, bool) {
	u := f.Property.Info().Units[s]
	if !convert || u == f.Value.Unit {
		return units.Quantity{}, false
	}
	q, err := f.Value.In(u)
	return q, err == nil
}

// place numbers where a figure stands: figures of one table share a number.
func (w *onFile) place(s *props.Source, table string, k props.Known, where string, agrees *props.Source) string {
	text := joined("; ", sourceText(s), table, knownText(k, where, agrees), strings.TrimSuffix(s.Note, "."))
	return cited("S"+strconv.Itoa(numbered(&w.places, text)), "", k)
}

// designations are the UNS number and the other names of a material.
func designations(m *props.Material) []string {
	names := AliasTexts(m)
	if m.Alloy.UNS != "" {
		names = append([]string{"UNS " + m.Alloy.UNS}, names...)
	}
	return names
}

var onFileColumns = []string{"material", "property", "unit", "value", "to", "basis", "known", "conditions", "stated for", "source", "table", "where", "note"}

// onFileData has a record a figure, in the unit of its source or of the system.
func onFileData(m *props.Material, s units.System, convert bool) *sheet.Doc {
	t := &sheet.Table{Columns: sheet.Columns(onFileColumns...)}
	n := &numbering{}
	for _, id := range props.Properties() {
		figures := m.Figures(id)
		if absent := m.Absent(id); len(figures) == 0 && absent != "" {
			t.Add(record{"material": m.ID, "property": id.String(), "note": absent}.cells(onFileColumns)...)
		}
		for _, f := range figures {
			value := f.Value
			if q, ok := convertedIn(f, s, convert); ok {
				value = q
			}
			r := record{"material": m.ID, "property": id.String(), "unit": value.Unit.Symbol(), "stated for": statedFor(m, f.Block),
				"source": n.mark(f.Source), "table": f.Table, "where": joined("; ", f.Where, correction(f)), "note": f.First}
			r.putFigure(f, value)
			t.Add(r.cells(onFileColumns)...)
		}
	}
	return dataDoc(t, n.below())
}

func onFileJSON(m *props.Material) object {
	a := m.Alloy
	var composition any
	if c := &a.Composition; len(c.Limits) > 0 {
		limits := each(c.Limits, func(l *props.Limit) object { return object{{"element", l.Element}, {"printed", l.Text}} })
		composition = object{{"limits", limits}, {"nominal", a.Nominal()}, {"source", sourceJSON(c.Source, "", c.Known)}, {"where", c.Where}}
	}
	properties := []object{}
	for _, id := range props.Properties() {
		figures, absent := m.Figures(id), m.Absent(id)
		if len(figures) == 0 && absent == "" {
			continue
		}
		properties = append(properties, object{{"property", id.String()}, {"absent", absent}, {"figures", each(figures, func(f **props.Figure) object {
			return append(figureFields(*f, (*f).Value), object{{"stated_for", statedFor(m, (*f).Block)}, {"where", joined("; ", (*f).Where, correction(*f))}, {"shown_first", (*f).First}}...)
		})}})
	}
	return append(materialJSON(m), object{{"note", a.Note}, {"designations", designations(m)}, {"composition", composition}, {"properties", properties}, {"caution", Caution}}...)
}
