package sheets

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/catalog"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/record"
	"alongside/props/spoken"
	"alongside/units"
)

// The words of "hide".
const (
	hideLevel = "level"
	hideEmpty = "empty"
)

// remains stands behind the remedy of whatever is not understood.
const remains = "; it is kept in the sheet"

// decode reads a sheet. What it does not understand is kept and told in
// Mistakes; a file that is no TOML, or no call sheet, is an error, a
// record.Errors.
func decode(file string, content []byte, c *catalog.Catalog) (*Sheet, error) {
	var errs record.Errors
	records := record.ReadRecords(file, content, &errs)
	if len(errs) > 0 {
		return nil, errs.Sorted()
	}
	s := &Sheet{Call: call.Call{Bench: compare.NewBench().Clone()}}
	r := &reader{sheet: s, catalog: c, errs: &errs, in: map[string]bool{}}
	for _, t := range records {
		r.record(t)
	}
	if !r.in["call"] {
		return nil, record.Errors{{File: file, Line: 1, Problem: "is no call sheet: it has no [[call]]", Remedy: "move the file to another folder"}}
	}
	s.Mistakes = errs.Sorted()
	s.words = words(s)
	return s, nil
}

// words is all that a search looks in.
func words(s *Sheet) string {
	all := append([]string{s.ID, s.Title(), s.Begun.Local().Format("2 Jan 2006 January 2006-01-02")}, s.Call.Said...)
	for _, n := range s.Call.Notes {
		all = append(all, n.Text)
	}
	for _, m := range s.Call.Bench.Pins {
		all = append(all, m.ID, m.Name())
	}
	return strings.ToLower(strings.Join(all, "\n"))
}

type reader struct {
	sheet   *Sheet
	catalog *catalog.Catalog
	errs    *record.Errors
	in      map[string]bool // kinds that were read and may stand once
}

// once reports whether a kind of record stands once in a sheet.
func once(kind string) bool { return kind == "call" || kind == "part" }

// record reads one record. One that cannot be read is kept whole; of the others
// the keys that have a mistake or that are not known. A branch a kind.
func (r *reader) record(t *record.Record) {
	before, kind := len(*r.errs), t.Kind()
	t.Label = kind
	name, read := "", false
	switch {
	case once(kind) && r.in[kind]:
		t.Fail("", "stands in the sheet twice", "delete one of the two"+remains)
	case kind == "call":
		name, read = r.call(t), true
	case kind == "row":
		name, read = r.row(t)
	case kind == "need":
		name, read = r.need(t)
	case kind == "part":
		name, read = r.part(t), true
	case kind == "note":
		name, read = r.note(t)
	default:
		t.Fail("", "is not a kind of record that this version knows", "open the sheet with the version that wrote it"+remains)
	}
	r.in[kind] = r.in[kind] || once(kind)
	if !read {
		all := map[string]any{}
		for _, key := range t.Keys() {
			all[key], _ = t.Value(key)
		}
		r.sheet.kept.whole = append(r.sheet.kept.whole, wholeRecord{kind, all})
		return
	}
	name = kind + " " + name
	for _, e := range (*r.errs)[before:] {
		if _, partly := r.sheet.kept.keys[name][e.Field]; partly {
			continue
		}
		if v, ok := t.Value(e.Field); ok {
			r.sheet.kept.put(name, e.Field, v)
		}
	}
	for _, key := range t.Rest() {
		v, _ := t.Value(key)
		r.sheet.kept.put(name, key, v)
		t.Fail(key, "is not a key that this version knows", "open the sheet with the version that wrote it"+remains)
	}
}

// list reads a list of words with take, and keeps those that take refuses.
func (r *reader) list(t *record.Record, key string, take func(word string) bool) {
	var refused []any
	for _, word := range t.Texts(key) {
		if !take(word) {
			refused = append(refused, word)
			t.Fail(key, fmt.Sprintf("%q is not known", word), "check how it is written"+remains)
		}
	}
	if len(refused) > 0 {
		r.sheet.kept.put(t.Kind()+" ", key, refused)
	}
}

// word reads a key that holds one of a few words.
func word[T any](t *record.Record, key string, parse func(string) (T, bool), to *T) {
	text := t.Text(key, false)
	if text == "" {
		return
	}
	if v, ok := parse(text); ok {
		*to = v
	} else {
		t.Fail(key, fmt.Sprintf("%q is not known", text), "check how it is written"+remains)
	}
}

// among reads the word of one of the choices.
func among[T fmt.Stringer](choices ...T) func(string) (T, bool) {
	return func(word string) (T, bool) {
		i := slices.IndexFunc(choices, func(c T) bool { return c.String() == word })
		return choices[max(i, 0)], i >= 0
	}
}

func (r *reader) call(t *record.Record) string {
	s, c, b := r.sheet, &r.sheet.Call, &r.sheet.Call.Bench
	if v, ok := t.Value("version"); ok && v != int64(version) {
		t.Fail("version", fmt.Sprintf("is %v; this version reads %d", v, version), "what it does not understand is kept in the sheet")
	}
	c.Name = t.Text("name", false)
	s.Begun = moment(t, "begun")
	c.Said = t.Texts("said")
	r.list(t, "pins", func(id string) bool { b.Pin(r.material(t, id)); return true })
	if id := t.Text("baseline", false); id != "" {
		r.baseline(t, id)
	}
	word(t, "basis", among(compare.TypicalFirst, compare.MinimumOnly), &b.Basis)
	if v, ok := t.Value("level_within"); ok {
		if band, isNumber := v.(float64); isNumber && band >= 0 && band < 1 {
			b.Band = band
		} else {
			t.Fail("level_within", fmt.Sprintf("is %v", v), "write a fraction such as 0.02"+remains)
		}
	}
	word(t, "service", func(s string) (*float64, bool) {
		v, err := part.Temperature(s, units.NoUnit)
		return &v, err == nil
	}, &b.Service)
	word(t, "expansion", func(s string) (*[2]float64, bool) {
		v, err := part.TemperatureRange(s, units.NoUnit)
		return &v, err == nil
	}, &b.Range)
	r.list(t, "only", func(id string) bool {
		p, err := props.ResolveProperty(id)
		if err == nil {
			b.Only = append(b.Only, p)
		}
		return err == nil
	})
	word(t, "units", func(s string) (units.System, bool) { v, err := units.ParseSystem(s); return v, err == nil }, &b.System)
	word(t, "delta", compare.ParseDelta, &b.Delta)
	r.list(t, "hide", func(what string) bool {
		b.HideLevel = b.HideLevel || what == hideLevel
		b.HideEmpty = b.HideEmpty || what == hideEmpty
		return what == hideLevel || what == hideEmpty
	})
	r.list(t, "merits", func(id string) bool {
		d, ok := needs.DutyNamed(id)
		if ok {
			c.Duties = append(c.Duties, d)
		}
		return ok
	})
	c.Aside = t.Texts("aside")
	return ""
}

// material is the one with this id, or a stand-in.
func (r *reader) material(t *record.Record, id string) *props.Material {
	if m := r.catalog.Material(id); m != nil {
		return m
	}
	remedy := "add it with --house, or take it off the bench"
	if m, err := r.catalog.Resolve(id); err == nil {
		remedy = "did you mean " + m.ID + "?"
	}
	t.Fail("pins", fmt.Sprintf("%q is not in the catalog", id), remedy+remains)
	r.sheet.kept.put("call ", "pins", nil) // the stand-in keeps it
	return standIn(id)
}

func (r *reader) baseline(t *record.Record, id string) {
	for i, m := range r.sheet.Call.Bench.Pins {
		if m.ID == id {
			r.sheet.Call.Bench.Baseline = i
			return
		}
	}
	t.Fail("baseline", fmt.Sprintf("%q is not among the pins", id), "name one of the pins"+remains)
}

func moment(t *record.Record, key string) time.Time {
	v, ok := t.Value(key)
	at, isTime := v.(time.Time)
	if ok && !isTime {
		t.Fail(key, fmt.Sprintf("is %v, not a time", v), "write it like 2026-11-26T11:46:53Z"+remains)
	}
	return at.UTC().Truncate(time.Second)
}

func (r *reader) row(t *record.Record) (name string, ok bool) {
	b := &r.sheet.Call.Bench
	id := t.Text("property", true)
	p, err := props.ResolveProperty(id)
	if err != nil {
		t.Fail("property", fmt.Sprintf("%q is not known", id), "check how it is written"+remains)
		return "", false
	}
	if text := t.Text("unit", false); text != "" {
		if one, err := units.ParseAs("1 "+text, p.Info().Dimension, units.NoUnit); err == nil {
			b.RowUnits[p] = one.Unit
		} else {
			t.Fail("unit", fmt.Sprintf("%q is no unit of this property", text), "write it as in a figure"+remains)
		}
	}
	if text := t.Text("sense", false); text != "" {
		sense, ok := among(props.Neutral, props.More, props.Less, props.Near)(text)
		set := compare.SenseSetting{Sense: sense}
		if ok && sense == props.Near {
			typed := t.Text("target", true)
			if set.Target, err = target(p, typed); err != nil {
				t.Fail("target", err.Error(), "write it as a figure"+remains)
				ok = false
			}
		}
		if ok {
			b.Senses[p] = set
		} else {
			t.Fail("sense", fmt.Sprintf("%q cannot be used", text), "write more, less, neutral, or near with a target"+remains)
		}
	}
	return p.String(), true
}

func (r *reader) need(t *record.Record) (name string, ok bool) {
	text, typed := t.Text("limit", true), t.Text("typed", false)
	n, err := spoken.One(text, r.catalog, units.US)
	if err != nil {
		t.Fail("limit", strings.TrimPrefix(err.Error(), "need "), "write it like \"yield >= 20 ksi\""+remains)
		return "", false
	}
	if typed != "" {
		n.Text = typed
	}
	if v, ok := t.Value("off"); ok {
		n.Off, ok = v.(bool)
		if !ok {
			t.Fail("off", fmt.Sprintf("is %v", v), "write true or false"+remains)
		}
	}
	r.sheet.Call.Needs = append(r.sheet.Call.Needs, n)
	return n.String(), true
}

func (r *reader) part(t *record.Record) string {
	p := &r.sheet.Call.Part
	for _, f := range part.Fields() {
		switch f {
		case part.FieldWith:
			r.list(t, f.String(), func(id string) bool {
				fact, err := part.ParseFact(id)
				p.With |= fact
				return err == nil
			})
		case part.FieldPrice:
			r.prices(t, f)
		default:
			if text := t.Text(f.String(), false); text != "" {
				if err := p.Set(r.catalog, f, text); err != nil {
					t.Fail(f.String(), strings.TrimPrefix(err.Error(), f.String()+" "), "type it again in the part"+remains)
				}
			}
		}
	}
	return ""
}

func (r *reader) prices(t *record.Record, f part.Field) {
	prices := t.Table(f.String())
	if prices == nil {
		return
	}
	refused := map[string]any{}
	for _, id := range prices.Rest() {
		v, _ := prices.Value(id)
		text, _ := v.(string)
		if err := r.sheet.Call.Part.Set(r.catalog, f, id+"="+text); err != nil || text == "" {
			refused[id] = v
			t.Fail(f.String(), fmt.Sprintf("%s = %v is not understood", id, v), "write the id of a material and a price such as \"1.20 USD/lb\""+remains)
		}
	}
	if len(refused) > 0 {
		r.sheet.kept.put("part ", f.String(), refused)
	}
}

func (r *reader) note(t *record.Record) (name string, ok bool) {
	n := call.Note{At: moment(t, "at"), Text: t.Text("text", true)}
	if n.Text == "" {
		return "", false
	}
	r.sheet.Call.Notes = append(r.sheet.Call.Notes, n)
	return noteName(n), true
}
