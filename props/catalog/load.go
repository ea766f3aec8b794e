package catalog

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"unicode"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// Load reads the data files that match the patterns (all of *.toml when none
// is given) and returns the catalog. When anything is wrong the error is a
// record.Errors with every mistake; the catalog then holds what could be read.
func Load(fsys fs.FS, patterns ...string) (*Catalog, error) {
	if len(patterns) == 0 {
		patterns = []string{"*.toml"}
	}
	files, err := ReadFiles(fsys, patterns)
	if err != nil {
		return nil, err
	}
	return LoadFiles(nil, files)
}

// ReadFiles reads every file that one of the patterns matches. A pattern that
// matches none is an error.
func ReadFiles(fsys fs.FS, patterns []string) ([]File, error) {
	var files []File
	for _, p := range patterns {
		names, err := fs.Glob(fsys, p)
		if err != nil || len(names) == 0 {
			return nil, fmt.Errorf("no data file matches %q", p)
		}
		for _, name := range names {
			content, err := fs.ReadFile(fsys, name)
			if err != nil {
				return nil, fmt.Errorf("reading %s: %w", name, err)
			}
			files = append(files, File{name, content})
		}
	}
	return files, nil
}

// File is a data file's name and content.
type File struct {
	Name    string
	Content []byte
}

// LoadFiles reads data files on top of a catalog (nil: an empty one), whose
// sources and families the files may refer to. The base is not changed; the
// new catalog holds its materials too. Errors are as for Load.
func LoadFiles(base *Catalog, files []File) (*Catalog, error) {
	var errs record.Errors
	l := &loader{cat: &Catalog{}, sources: map[string]*props.Source{}, families: map[string]*props.Family{}, ids: map[string]string{},
		copied: map[*props.Alloy]bool{}, owned: map[*props.Family]bool{}, errs: &errs}
	if base != nil {
		l.adopt(base)
	}
	records := map[string][]*record.Record{}
	for _, f := range files {
		before := len(errs)
		found := record.ReadRecords(path.Clean(f.Name), f.Content, &errs, "alloy", "source", "family", "house", "rates", "checked", "everyday")
		if base != nil && len(found) == 0 && len(errs) == before {
			errs = append(errs, &record.Error{File: path.Clean(f.Name), Line: 1, Problem: "the file holds no record", Remedy: "begin one with [[house]] for a metal of the catalog, as alongside check --help shows, or [[alloy]] for another"})
		}
		for _, r := range found {
			records[r.Kind()] = append(records[r.Kind()], r)
		}
	}
	read := func(kind string, one func(*record.Record)) {
		for _, r := range records[kind] {
			one(r)
		}
	}
	read("source", l.source)
	l.succession()
	read("family", l.family)
	read("alloy", l.alloy)
	read("house", l.house)
	read("rates", l.rates)
	read("checked", l.checked)
	if base != nil && len(records["alloy"]) == 0 {
		l.cat.Words = base.Words
	}
	read("everyday", l.everyday)
	if len(errs) > 0 {
		return l.cat, errs.Sorted()
	}
	return l.cat, nil
}

type loader struct {
	cat      *Catalog
	sources  map[string]*props.Source
	families map[string]*props.Family
	ids      map[string]string // material and alloy ids → file:line
	errs     *record.Errors
	copied   map[*props.Alloy]bool  // alloys of the base copied to take what the shop adds
	owned    map[*props.Family]bool // families copied so
	replaced []replaced
}

func (l *loader) adopt(base *Catalog) {
	l.cat.Sources = append(l.cat.Sources, base.Sources...)
	l.cat.Families = append(l.cat.Families, base.Families...)
	l.cat.Alloys = append(l.cat.Alloys, base.Alloys...)
	l.cat.Materials = append(l.cat.Materials, base.Materials...)
	l.cat.Everyday = append(l.cat.Everyday, base.Everyday...)
	l.cat.Dropped = append(l.cat.Dropped, base.Dropped...)
	l.cat.Rates = append(l.cat.Rates, base.Rates...)
	for _, s := range base.Sources {
		l.sources[s.ID] = s
		l.ids["source "+s.ID] = "the built-in catalog"
	}
	for _, f := range base.Families {
		l.families[f.ID] = f
	}
	for _, a := range base.Alloys {
		l.ids["alloy "+a.ID] = "the built-in catalog"
	}
	for _, m := range base.Materials {
		l.ids[m.ID] = "the built-in catalog"
	}
}

// claim reports an id that is taken already.
func (l *loader) claim(r *record.Record, key, id string) {
	if !strings.HasPrefix(key, "source ") && strings.Trim(strings.ToLower(id), "abcdefghijklmnopqrstuvwxyz0123456789.-") != "" {
		r.Fail("id", fmt.Sprintf("%q holds more than letters, digits, points and hyphens", id), "write it like a356-t6-pm")
	}
	if at, taken := l.ids[key]; taken {
		r.Fail("id", fmt.Sprintf("%q is already in %s", id, at), "give one of the two another id, or delete it")
		return
	}
	l.ids[key] = fmt.Sprintf("%s:%d", r.File(), r.LineOf(""))
}

func (l *loader) alloy(r *record.Record) {
	a := &props.Alloy{ID: r.Text("id", true), File: r.File(), Line: r.LineOf("")}
	r.Label = a.ID
	a.Name, a.Kind, a.UNS, a.Note = r.Text("name", true), r.Text("kind", false), r.Text("uns", false), r.Text("note", false)
	a.Aliases = l.aliases(r)
	family := r.Text("family", true)
	a.Family = l.families[family]
	if a.Family == nil {
		if family != "" {
			r.Fail("family", fmt.Sprintf("%q is not a known family", family), record.DidYouMean(family, keys(l.families)))
		}
		a.Family = &props.Family{ID: family, Name: family}
	}
	if a.Class = r.Text("class", false); a.Class != "" {
		if classes := classesOf(a.Family); !slices.Contains(classes, a.Class) {
			r.Fail("class", fmt.Sprintf("%q is not a class that figures of the family name", a.Class), record.DidYouMean(a.Class, classes))
		}
	}
	if t := r.Table("composition"); t != nil {
		a.Composition = l.composition(t)
	}
	a.None = l.none(r)
	a.Explained = l.explained(r)
	for _, t := range r.Tables("figures") {
		a.Stated = append(a.Stated, l.inherited(t, nil)...)
	}
	materials := r.Tables("material")
	for _, t := range materials {
		l.material(a, t)
	}
	r.Finish()
	if a.ID != "" {
		l.claim(r, "alloy "+a.ID, a.ID)
	}
	if len(materials) == 0 {
		r.Fail("material", "the alloy has no material", "add [[alloy.material]] with its temper and process")
	}
	l.cat.Alloys = append(l.cat.Alloys, a)
}

// inherited reads figures that are stated once for several materials, those
// that classes, tempers and processes admit.
func (l *loader) inherited(t *record.Record, classes []string) []props.Figure {
	b, figures := l.block(t)
	b.Inherited, b.Classes, b.Tempers = true, classes, t.Texts("tempers")
	for _, p := range t.Texts("processes") {
		b.Processes = append(b.Processes, l.process(t, "processes", p))
	}
	t.Finish()
	return figures
}

func (l *loader) material(a *props.Alloy, r *record.Record) {
	m := &props.Material{Alloy: a, Temper: r.Text("temper", false), Line: r.LineOf("")}
	if p := r.Text("process", false); p != "" {
		m.Process = l.process(r, "process", p)
	}
	m.ID = r.Text("id", false)
	if m.ID == "" {
		m.ID = derivedID(m)
	}
	r.Label = m.ID
	m.Aliases = l.aliases(r)
	m.None = l.none(r)
	m.Explained = l.explained(r)
	for _, t := range r.Tables("figures") {
		t.Label = m.ID
		_, figures := l.block(t)
		m.Stated = append(m.Stated, figures...)
		t.Finish()
	}
	for _, none := range m.None {
		for _, f := range m.Stated {
			if f.Property == none.Property {
				r.Fail(none.Property.String(), "has a figure, and a reason why there is none", "delete one of the two")
			}
		}
	}
	r.Finish()
	l.claim(r, m.ID, m.ID)
	l.cat.Materials = append(l.cat.Materials, m)
}

func (l *loader) process(r *record.Record, key, word string) props.Process {
	p, ok := props.ParseProcess(word)
	if !ok && word != "" {
		r.Fail(key, fmt.Sprintf("%q is not a process", word), "use one of: "+strings.Join(props.ProcessIDs(), ", "))
	}
	return p
}

func (l *loader) aliases(r *record.Record) []props.Alias {
	var out []props.Alias
	for _, s := range r.Texts("aliases") {
		system, name, ok := strings.Cut(s, ":")
		if !ok {
			r.Fail("aliases", fmt.Sprintf("%q names no system", s), `write "UNS: A13560" or "EN 1706: AC-42100 (near)"`)
			continue
		}
		name, near := strings.CutSuffix(strings.TrimSpace(name), "(near)")
		out = append(out, props.Alias{System: strings.TrimSpace(system), Name: strings.TrimSpace(name), Near: near})
	}
	return out
}

func (l *loader) none(r *record.Record) []props.Absence {
	t := r.Table("none")
	if t == nil {
		return nil
	}
	var out []props.Absence
	for _, key := range t.Rest() {
		p, ok := props.PropertyNamed(key)
		if !ok {
			t.Fail(key, "is not a property", record.DidYouMean(key, props.PropertyIDs()))
			t.Value(key)
			continue
		}
		if why := t.Text(key, true); why != "" {
			out = append(out, props.Absence{Property: p, Reason: why})
		}
	}
	return out
}

func (l *loader) explained(r *record.Record) []props.Explained {
	var out []props.Explained
	for _, t := range r.Tables("explained") {
		e := props.Explained{Rule: t.Text("rule", true), Why: t.Text("why", true)}
		if id := t.Text("property", false); id != "" {
			p, ok := props.PropertyNamed(id)
			if !ok {
				t.Fail("property", fmt.Sprintf("%q is not a property", id), record.DidYouMean(id, props.PropertyIDs()))
			}
			e.Property = p
		}
		t.Finish()
		out = append(out, e)
	}
	return out
}

func (l *loader) composition(r *record.Record) props.Composition {
	c := props.Composition{Source: l.sourceNamed(r), Known: ReadKnown(r), Where: r.Text("where", false)}
	for _, element := range r.Rest() {
		s := r.Text(element, true)
		if unicode.IsUpper(rune(element[0])) && element != "RE" && !isElement(element) {
			r.Fail(element, "is not the symbol of an element", "write it like Al or Fe, RE for rare earths, or others_each, others_total")
		}
		limit := props.Limit{Element: element, Text: s}
		if s != "remainder" && s != "" {
			q, err := units.ParseAs(s, units.Percent, units.Pct)
			if err != nil {
				r.Fail(element, fmt.Sprintf("%q is not a limit in percent", s), `write "6.5–7.5", "0.20 max", "0.1 min" or "remainder"`)
				continue
			}
			limit.Lo, limit.Hi = q.Lo, q.Hi
			if q.Lo < 0 || q.Hi > 100 {
				r.Fail(element, fmt.Sprintf("%q is not from 0 to 100 %%", s), "check the value against the source")
				continue
			}
			switch q.Qual {
			case units.AtMost, units.LessThan:
				limit.Lo = 0
			case units.AtLeast, units.MoreThan:
				limit.Hi = 100
			}
		}
		c.Limits = append(c.Limits, limit)
	}
	return c
}

func keys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// derivedID joins alloy id, temper and process.
func derivedID(m *props.Material) string {
	id := m.Alloy.ID
	if m.Temper != "" {
		id += "-" + strings.ToLower(strings.NewReplacer(" ", "-", "&", "").Replace(m.Temper))
	}
	if m.Process != props.NoProcess {
		id += "-" + m.Process.ID()
	}
	return id
}
