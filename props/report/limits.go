package report

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/sheet"
)

// tables set needs and merits against the pins of a bench, for reading.
func (l Limits) tables(b *compare.Bench) []*sheet.Table {
	var out []*sheet.Table
	if len(l.Needs) > 0 {
		out = append(out, needsTable(b.Pins, l.Needs))
	}
	if len(l.Duties) > 0 {
		out = append(out, meritTable(b, l.Duties))
	}
	return out
}

// data are the tables for a spreadsheet: figures and margins as bare numbers.
func (l Limits) data(b *compare.Bench) []*sheet.Table {
	var out []*sheet.Table
	if len(l.Needs) > 0 {
		out = append(out, needsData(b.Pins, l.Needs))
	}
	if len(l.Duties) > 0 {
		out = append(out, meritData(b, l.Duties))
	}
	return out
}

// meritTable sets duties against the pins of a bench: the merit relative to
// the baseline with its bounds. Formula and source, and why there is none,
// stand below.
func meritTable(b *compare.Bench, duties []*needs.Duty) *sheet.Table {
	base := b.Pins[b.Baseline]
	t := againstPins("Merit relative to "+base.Name(), "duty", b.Pins)
	for _, d := range duties {
		row := []string{d.Name}
		t.Notes = append(t.Notes, d.Name+": "+dutyText(d))
		for _, m := range b.Pins {
			r := d.Relative(b, m, base)
			row = append(row, meritCell(b, m, r))
			if why := r.Why + r.Note; why != "" && m != base {
				t.Notes = append(t.Notes, d.Name+", "+m.ID+": "+why)
			}
		}
		t.Add(row...)
	}
	return t
}

// againstPins is a table with a column of words and one for each material.
func againstPins(heading, first string, pins []*props.Material) *sheet.Table {
	t := &sheet.Table{Heading: heading, Columns: sheet.Columns(first)}
	t.Columns[0].Keep = true
	for _, m := range pins {
		t.Columns = append(t.Columns, sheet.Column{Name: m.ID})
	}
	return t
}

var meritColumns = []string{"merit", "from", "to", "printed", "why"}

func meritData(b *compare.Bench, duties []*needs.Duty) *sheet.Table {
	base := b.Pins[b.Baseline]
	head := []string{"duty"}
	for _, m := range b.Pins {
		head = append(head, prefixed(m.ID, meritColumns)...)
	}
	t := &sheet.Table{Heading: "Merit relative to " + base.Name(), Columns: sheet.Columns(head...)}
	for _, d := range duties {
		cells := []string{d.Name}
		for _, m := range b.Pins {
			cells = append(cells, meritRecord(d.Relative(b, m, base)).cells(meritColumns)...)
		}
		t.Add(cells...)
	}
	return t
}

func meritRecord(m needs.Merit) record {
	r := record{"why": joined("; ", m.Why, m.Note)}
	if m.Why == "" {
		r["printed"] = meritText(m)
		r.put("merit", m.Mid)
		r.put("from", m.Lo)
		r.put("to", m.Hi)
	}
	return r
}

func meritCell(b *compare.Bench, m *props.Material, r needs.Merit) string {
	if m == b.Pins[b.Baseline] && r.Why == "" {
		return "1"
	}
	return meritText(r)
}

// NeedDoc is one limit: how each material stands to it, on what figure, and
// where that comes from.
func NeedDoc(materials []*props.Material, n *needs.Need) *Doc {
	list := []needs.Need{*n}
	list[0].Off = false
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("material", "judged on")}
			for _, m := range materials {
				j := needs.Judge(m, n)
				t.Add(m.Name(), JudgementText(&j))
				if j.Figure != nil {
					t.Notes = append(t.Notes, m.Name()+": "+citedFigure(j.Figure, j.Figure.Value.String()))
				}
			}
			return &sheet.Doc{Blocks: []sheet.Block{sheet.Title("Needed: " + n.String()), t}, Caution: Caution}
		},
		data: func() *sheet.Doc { return dataDoc(needsData(materials, list), nil) },
		json: func() object {
			return object{{"needs", needsJSON(materials, list)}, {"caution", Caution}}
		},
	}
}

// MeritDoc is one duty: the merit of each pin relative to the baseline, and the
// figures it rests on.
func MeritDoc(b *compare.Bench, d *needs.Duty) *Doc {
	base := b.Pins[b.Baseline]
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("material", "merit", "rests on")}
			for _, m := range b.Pins {
				r := d.Relative(b, m, base)
				why := r.Why
				if why == "" {
					why = joined("; ", append(figureTexts(b, r.Figures[:len(r.Figures)/2]), r.Note)...)
				}
				t.Add(m.Name(), meritCell(b, m, r), why)
			}
			title := sheet.Title(fmt.Sprintf("Merit for a %s, relative to %s", d.Name, base.Name()))
			return &sheet.Doc{Blocks: []sheet.Block{title, t}, Foot: []string{dutyText(d)}, Caution: Caution}
		},
		data: func() *sheet.Doc { return dataDoc(meritData(b, []*needs.Duty{d}), nil, dutyText(d)) },
		json: func() object {
			merits := each(b.Pins, func(m **props.Material) object { return meritJSON(*m, d.Relative(b, *m, base)) })
			return object{{"duty", dutyJSON(d, base)}, {"merits", merits}, {"caution", Caution}}
		},
	}
}

func figureTexts(b *compare.Bench, list []*props.Figure) []string {
	var out []string
	for _, f := range list {
		v := f.Value.InOrOwn(b.UnitOf(f.Property))
		out = append(out, props.InSentence(f.Property.Info().Name)+" "+v.String()+" "+f.Basis.Phrase())
	}
	return out
}

// symbols says what the letters of a duty's formula stand for.
var symbols = []struct{ letter, words string }{
	{"E", "modulus of elasticity"}, {"σ", "yield strength, tensile where a metal has none"}, {"ρ", "density"},
	{"k", "thermal conductivity"}, {"α", "thermal expansion"}, {"κ", "electrical conductivity"},
}

// dutyText is the formula of a duty, what its letters stand for, and its
// source.
func dutyText(d *needs.Duty) string {
	var parts []string
	for _, s := range symbols {
		if strings.Contains(d.Formula, s.letter) {
			parts = append(parts, s.letter+" "+s.words)
		}
	}
	return d.Formula + " (" + strings.Join(parts, ", ") + "); " + d.Source
}
