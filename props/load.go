package props

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	"alongside/units"
)

// Load reads the data files that match the patterns (all of *.toml when none
// is given) and returns the catalog. When anything is wrong the error is a
// LoadErrors with every mistake; the catalog then holds what could be read.
func Load(fsys fs.FS, patterns ...string) (*Catalog, error) {
	if len(patterns) == 0 {
		patterns = []string{"*.toml"}
	}
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
	return LoadFiles(nil, files)
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
	var errs LoadErrors
	l := &loader{cat: &Catalog{}, sources: map[string]*Source{}, families: map[string]*Family{}, ids: map[string]string{}, errs: &errs}
	if base != nil {
		l.adopt(base)
	}
	var alloys []*record
	for _, f := range files {
		for _, r := range readFile(path.Clean(f.Name), f.Content, &errs) {
			kind, _, _ := strings.Cut(r.path, "[")
			switch kind {
			case "source":
				l.source(r)
			case "family":
				l.family(r)
			case "alloy":
				alloys = append(alloys, r)
			default:
				r.in.fail(r.line(""), "", kind, "is not a kind of record", didYouMean(kind, []string{"alloy", "source", "family"}))
			}
		}
	}
	for _, r := range alloys {
		l.alloy(r)
	}
	l.cat.Index()
	if len(errs) > 0 {
		return l.cat, errs.sorted()
	}
	return l.cat, nil
}

type loader struct {
	cat      *Catalog
	sources  map[string]*Source
	families map[string]*Family
	ids      map[string]string // material and alloy ids → file:line
	errs     *LoadErrors
}

func (l *loader) adopt(base *Catalog) {
	l.cat.Sources = append(l.cat.Sources, base.Sources...)
	l.cat.Families = append(l.cat.Families, base.Families...)
	l.cat.Alloys = append(l.cat.Alloys, base.Alloys...)
	for _, s := range base.Sources {
		l.sources[s.ID] = s
	}
	for _, f := range base.Families {
		l.families[f.ID] = f
	}
	for _, a := range base.Alloys {
		l.ids["alloy "+a.ID] = "the built-in catalog"
		for _, m := range a.Materials {
			l.ids[m.ID] = "the built-in catalog"
		}
	}
}

// claim reports an id that is taken already.
func (l *loader) claim(r *record, key, id string) {
	if at, taken := l.ids[key]; taken {
		r.fail("id", fmt.Sprintf("%q stands already in %s", id, at), "give one of the two another id, or delete it")
		return
	}
	l.ids[key] = fmt.Sprintf("%s:%d", r.in.file, r.line(""))
}

func (l *loader) source(r *record) {
	s := &Source{ID: r.text("id", true), File: r.in.file, Line: r.line("")}
	r.label = s.ID
	s.Title, s.Publisher, s.Edition = r.text("title", true), r.text("publisher", false), r.text("edition", false)
	s.Kind, s.Note = r.text("kind", true), r.text("note", false)
	if _, ok := oneOf(s.Kind, sourceKinds); !ok && s.Kind != "" {
		r.fail("kind", fmt.Sprintf("%q is not a kind of source", s.Kind), "use one of: "+strings.Join(sourceKinds, ", "))
	}
	r.finish()
	l.claim(r, "source "+s.ID, s.ID)
	if l.sources[s.ID] == nil {
		l.sources[s.ID] = s
		l.cat.Sources = append(l.cat.Sources, s)
	}
}

func (l *loader) family(r *record) {
	f := &Family{ID: r.text("id", true)}
	r.label = f.ID
	f.Name, f.Words = r.text("name", true), r.texts("words")
	f.None = l.none(r)
	r.finish()
	l.claim(r, "family "+f.ID, f.ID)
	if l.families[f.ID] == nil {
		l.families[f.ID] = f
		l.cat.Families = append(l.cat.Families, f)
	}
}

func (l *loader) alloy(r *record) {
	a := &Alloy{ID: r.text("id", true), File: r.in.file, Line: r.line("")}
	r.label = a.ID
	a.Name, a.UNS, a.Note = r.text("name", true), r.text("uns", false), r.text("note", false)
	a.Aliases = l.aliases(r)
	family := r.text("family", true)
	a.Family = l.families[family]
	if a.Family == nil {
		if family != "" {
			r.fail("family", fmt.Sprintf("%q is not a known family", family), didYouMean(family, keys(l.families)))
		}
		a.Family = &Family{ID: family, Name: family}
	}
	if t := r.table("composition"); t != nil {
		a.Composition = l.composition(t)
	}
	a.None = l.none(r)
	a.Explained = l.explained(r)
	for _, t := range r.tables("figures") {
		b := l.block(t)
		b.Inherited = true
		b.Tempers = t.texts("tempers")
		for _, p := range t.texts("processes") {
			b.Processes = append(b.Processes, l.process(t, "processes", p))
		}
		t.finish()
		a.Blocks = append(a.Blocks, b)
	}
	for _, t := range r.tables("material") {
		l.material(a, t)
	}
	r.finish()
	if a.ID != "" {
		l.claim(r, "alloy "+a.ID, a.ID)
	}
	if len(a.Materials) == 0 {
		r.fail("material", "the alloy has no material", "add [[alloy.material]] with its temper and process")
	}
	l.cat.Alloys = append(l.cat.Alloys, a)
}

func (l *loader) material(a *Alloy, r *record) {
	m := &Material{Alloy: a, Temper: r.text("temper", false), Line: r.line("")}
	if p := r.text("process", false); p != "" {
		m.Process = l.process(r, "process", p)
	}
	m.ID = r.text("id", false)
	if m.ID == "" {
		m.ID = m.derivedID()
	}
	r.label = m.ID
	m.Aliases = l.aliases(r)
	m.None = l.none(r)
	m.Explained = l.explained(r)
	for _, t := range r.tables("figures") {
		t.label = m.ID
		m.Blocks = append(m.Blocks, l.block(t))
		t.finish()
	}
	r.finish()
	l.claim(r, m.ID, m.ID)
	a.Materials = append(a.Materials, m)
}

func (l *loader) process(r *record, key, word string) Process {
	p, ok := ParseProcess(word)
	if !ok && word != "" {
		var ids []string
		for _, q := range processes[1:] {
			ids = append(ids, q.id)
		}
		r.fail(key, fmt.Sprintf("%q is not a process", word), "use one of: "+strings.Join(ids, ", "))
	}
	return p
}

func (l *loader) aliases(r *record) []Alias {
	var out []Alias
	for _, s := range r.texts("aliases") {
		system, name, ok := strings.Cut(s, ":")
		if !ok {
			r.fail("aliases", fmt.Sprintf("%q names no system", s), `write "UNS: A13560" or "EN 1706: AC-42100 (near)"`)
			continue
		}
		name, near := strings.CutSuffix(strings.TrimSpace(name), "(near)")
		out = append(out, Alias{strings.TrimSpace(system), strings.TrimSpace(name), near})
	}
	return out
}

func (l *loader) none(r *record) []Absence {
	t := r.table("none")
	if t == nil {
		return nil
	}
	var out []Absence
	for _, key := range t.rest() {
		p, ok := PropertyNamed(key)
		if !ok {
			t.fail(key, "is not a property", didYouMean(key, propertyIDs()))
			t.asked[key] = true
			continue
		}
		if why := t.text(key, true); why != "" {
			out = append(out, Absence{p, why})
		}
	}
	return out
}

func (l *loader) explained(r *record) []Explained {
	var out []Explained
	for _, t := range r.tables("explained") {
		e := Explained{Rule: t.text("rule", true), Why: t.text("why", true)}
		if id := t.text("property", false); id != "" {
			p, ok := PropertyNamed(id)
			if !ok {
				t.fail("property", fmt.Sprintf("%q is not a property", id), didYouMean(id, propertyIDs()))
			}
			e.Property = p
		}
		t.finish()
		out = append(out, e)
	}
	return out
}

func (l *loader) sourceNamed(r *record) *Source {
	id := r.text("source", true)
	s := l.sources[id]
	if s == nil {
		if id != "" {
			r.fail("source", fmt.Sprintf("%q is not in the source list", id), didYouMean(id, keys(l.sources)))
		}
		s = &Source{ID: id, Title: id, Kind: "none"}
	}
	return s
}

func (l *loader) known(r *record) Known {
	switch word := r.text("known", true); word {
	case "read":
		return Read
	case "memory", "":
	default:
		r.fail("known", fmt.Sprintf("%q is not how a figure is known", word), "write read or memory")
	}
	return Memory
}

func (l *loader) composition(r *record) Composition {
	c := Composition{Source: l.sourceNamed(r), Known: l.known(r), Where: r.text("where", false)}
	for _, element := range r.rest() {
		s := r.text(element, true)
		limit := Limit{Element: element, Text: s}
		if s != "remainder" && s != "" {
			q, err := units.ParseAs(s, units.Percent, units.Pct)
			if err != nil {
				r.fail(element, fmt.Sprintf("%q is not a limit in percent", s), `write "6.5–7.5", "0.20 max", "0.1 min" or "remainder"`)
				continue
			}
			limit.Lo, limit.Hi = q.Lo, q.Hi
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

func keys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	return out
}

func propertyIDs() []string {
	var ids []string
	for _, p := range Properties() {
		ids = append(ids, p.String())
	}
	return ids
}
