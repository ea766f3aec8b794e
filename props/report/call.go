package report

import (
	"strings"
	"time"

	"alongside/props/call"
	"alongside/props/call/sheets"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/sheet"
)

// CallDoc is one call sheet: what the customer said and the user wrote down,
// what is known of the part, then the comparison with the customer's limits.
func CallDoc(s *sheets.Sheet) *Doc {
	c := compare.Compare(s.Call.Bench)
	above := Limits{Needs: s.Call.Needs, Duties: s.Call.Duties}
	set := func(d *sheet.Doc) *sheet.Doc {
		d.Blocks = append([]sheet.Block{sheet.Title(s.Title()), callTable(s)}, d.Blocks...)
		d.Caution = Caution
		return d
	}
	if len(c.Bench.Pins) == 0 {
		return &Doc{text: func(*numbering) *sheet.Doc { return set(&sheet.Doc{}) }, json: func() object { return callJSON(s, nil) }}
	}
	return &Doc{
		text: func(n *numbering) *sheet.Doc { return set(compareText(c, above, n)) },
		data: func() *sheet.Doc { return set(compareData(c, above)) },
		json: func() object { return callJSON(s, compareJSON(c, above.Needs)) },
	}
}

// moment is a time as people write it, "" for none.
func moment(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Local().Format("2 Jan 2006 15:04")
}

// stamp is a time for programs, "" for none.
func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339)
}

// callTable is all of a call but its comparison.
func callTable(s *sheets.Sheet) *sheet.Table {
	t := &sheet.Table{}
	put := func(label string, texts ...string) {
		for i, text := range texts {
			if text != "" {
				t.Add(first(i, label), text)
			}
		}
	}
	c := &s.Call
	put("sheet", s.ID)
	put("begun", moment(s.Begun))
	put("changed", moment(s.Changed))
	put("customer", c.Said...)
	for i, n := range c.Notes {
		put(first(i, "notes"), joined(": ", moment(n.At), n.Text))
	}
	put("part", joined("; ", c.Part.Summary(), c.Part.With.String()))
	if len(c.Bench.Pins) == 0 {
		put("needs", needTexts(c)...)
	}
	put("put aside", strings.Join(c.Aside, ", "))
	put("missing", missing(s))
	return t
}

func needTexts(c *call.Call) []string {
	var out []string
	for i := range c.Needs {
		out = append(out, needText(&c.Needs[i]))
	}
	return out
}

// missing says which pins the catalog does not have.
func missing(s *sheets.Sheet) string {
	if ids := s.Missing(); len(ids) > 0 {
		return strings.Join(ids, ", ") + ": not in the catalog; kept in the sheet"
	}
	return ""
}

func callJSON(s *sheets.Sheet, comparison any) object {
	said := map[string]string{}
	for _, f := range part.Fields() {
		if text := s.Call.Part.Get(f); text != "" {
			said[f.String()] = clean(text)
		}
	}
	notes := each(s.Call.Notes, func(n *call.Note) object { return object{{"at", stamp(n.At)}, {"text", n.Text}} })
	return object{{"call", callHead(s)}, {"said", s.Call.Said}, {"notes", notes}, {"part", said}, {"needs", needTexts(&s.Call)},
		{"aside", s.Call.Aside}, {"missing", s.Missing()}, {"comparison", comparison}}
}

func callHead(s *sheets.Sheet) object {
	return object{{"id", s.ID}, {"name", s.Call.Name}, {"begun", stamp(s.Begun)}, {"changed", stamp(s.Changed)}, {"pins", ids(s.Call.Bench.Pins)}, {"broken", broken(s)}}
}

// broken is why a sheet cannot be read, "" where it can. The folder is left out.
func broken(s *sheets.Sheet) string {
	if s.Broken == nil {
		return ""
	}
	why, _, _ := strings.Cut(s.Broken.Error(), "\n")
	if i := strings.Index(why, s.ID); i >= 0 {
		why = why[i:]
	}
	return why
}

// CallsDoc lists call sheets.
func CallsDoc(list []*sheets.Sheet) *Doc {
	return &Doc{
		text: func(*numbering) *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("sheet", "changed", "name", "pins")}
			for _, s := range list {
				pins := strings.Join(ids(s.Call.Bench.Pins), ", ")
				if s.Broken != nil {
					pins = "cannot be read, see below"
					t.Notes = append(t.Notes, broken(s))
				}
				t.Add(s.ID, moment(s.Changed), s.Call.Name, pins)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}}
		},
		json: func() object {
			return object{{"calls", each(list, func(s **sheets.Sheet) object { return callHead(*s) })}}
		},
	}
}
