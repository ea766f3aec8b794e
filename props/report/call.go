package report

import (
	"strings"
	"time"

	"alongside/props"
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
		return &Doc{text: func() *sheet.Doc { return set(&sheet.Doc{}) }, json: func() any { return callJSON(s, nil) }}
	}
	return &Doc{
		text: func() *sheet.Doc { return set(compareText(c, above)) },
		data: func() *sheet.Doc { return set(compareData(c, above)) },
		json: func() any { d := compareJSON(c, above.Needs); return callJSON(s, &d) },
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
		out = append(out, c.Needs[i].String())
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

type jsonCall struct {
	Call       jsonCallHead      `json:"call"`
	Said       []string          `json:"said"`
	Notes      []jsonNote        `json:"notes"`
	Part       map[string]string `json:"part"`
	Needs      []string          `json:"needs"`
	Aside      []string          `json:"aside"`
	Missing    []string          `json:"missing"`
	Comparison *jsonComparison   `json:"comparison"`
}

type jsonCallHead struct {
	ID      string   `json:"id"`
	Name    string   `json:"name"`
	Begun   string   `json:"begun"`
	Changed string   `json:"changed"`
	Pins    []string `json:"pins"`
	Broken  string   `json:"broken"`
}

type jsonNote struct {
	At   string `json:"at"`
	Text string `json:"text"`
}

func callJSON(s *sheets.Sheet, c *jsonComparison) jsonCall {
	out := jsonCall{Call: callHead(s), Said: cleaned(s.Call.Said), Part: map[string]string{}, Needs: cleaned(needTexts(&s.Call)),
		Aside: cleaned(s.Call.Aside), Missing: cleaned(s.Missing()), Comparison: c,
		Notes: each(s.Call.Notes, func(n *call.Note) jsonNote { return jsonNote{stamp(n.At), clean(n.Text)} })}
	for _, f := range part.Fields() {
		if text := s.Call.Part.Get(f); text != "" {
			out.Part[f.String()] = clean(text)
		}
	}
	return out
}

func callHead(s *sheets.Sheet) jsonCallHead {
	return jsonCallHead{ID: clean(s.ID), Name: clean(s.Call.Name), Begun: stamp(s.Begun), Changed: stamp(s.Changed), Pins: cleaned(pinIDs(s.Call.Bench.Pins)), Broken: clean(broken(s))}
}

func pinIDs(pins []*props.Material) []string {
	var ids []string
	for _, m := range pins {
		ids = append(ids, m.ID)
	}
	return ids
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
		text: func() *sheet.Doc {
			t := &sheet.Table{Columns: sheet.Columns("sheet", "changed", "name", "pins")}
			for _, s := range list {
				pins := strings.Join(pinIDs(s.Call.Bench.Pins), ", ")
				if s.Broken != nil {
					pins = "cannot be read, see below"
					t.Notes = append(t.Notes, broken(s))
				}
				t.Add(s.ID, moment(s.Changed), s.Call.Name, pins)
			}
			return &sheet.Doc{Blocks: []sheet.Block{t}}
		},
		json: func() any {
			return struct {
				Calls []jsonCallHead `json:"calls"`
			}{each(list, func(s **sheets.Sheet) jsonCallHead { return callHead(*s) })}
		},
	}
}
