package foundry

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/record"
	"alongside/units"
)

// recordKinds are the records of the process files and what reads each.
var recordKinds = map[string]func(*loader, *record.Record){
	"source":      func(*loader, *record.Record) {}, // read first, by Load
	"item":        (*loader).item,
	"grade":       func(l *loader, r *record.Record) { l.grade(r, &l.book.grades, Grade) },
	"allowance":   func(l *loader, r *record.Record) { l.grade(r, &l.book.allowances, Allowance) },
	"dctg":        func(l *loader, r *record.Record) { l.gradeRow(r, &l.book.dctg, Grade) },
	"rma":         func(l *loader, r *record.Record) { l.gradeRow(r, &l.book.rma, Allowance) },
	"linear":      (*loader).linear,
	"temper":      (*loader).temper,
	"schedule":    (*loader).schedule,
	"treatable":   (*loader).treatable,
	"designation": (*loader).designation,
	"anodic":      (*loader).anodic,
}

// Load reads the process files that match the patterns. Their records refer
// to the sources and families of the catalog and to sources of their own.
// When anything is wrong the error is a record.Errors with every mistake;
// the book then holds what could be read.
func Load(base *catalog.Catalog, fsys fs.FS, patterns ...string) (*Book, error) {
	var errs record.Errors
	book := &Book{Sources: slices.Clone(base.Sources)}
	l := &loader{Reader: *book.Reader(base), book: book}
	records, err := ReadRecords(fsys, patterns, &errs, slices.Sorted(maps.Keys(recordKinds))...)
	if err != nil {
		return nil, err
	}
	for _, r := range records {
		if r.Kind() == "source" {
			l.source(r)
		}
	}
	for _, r := range records {
		before, good := len(errs), *l.book
		recordKinds[r.Kind()](l, r)
		if len(errs) > before {
			*l.book = good // a record with a mistake is not kept
		}
	}
	l.checkTables()
	l.book.cites = l.cited
	if len(errs) > 0 {
		return l.book, errs.Sorted()
	}
	return l.book, nil
}

// ReadRecords reads the records of these kinds of the files that match the patterns.
func ReadRecords(fsys fs.FS, patterns []string, errs *record.Errors, kinds ...string) ([]*record.Record, error) {
	files, err := catalog.ReadFiles(fsys, patterns)
	if err != nil {
		return nil, err
	}
	var records []*record.Record
	for _, f := range files {
		records = append(records, record.ReadRecords(path.Clean(f.Name), f.Content, errs, kinds...)...)
	}
	return records, nil
}

type loader struct {
	Reader
	book *Book
}

// Reader reads the keys that records of several data files share: where a
// statement comes from and which materials it is about.
type Reader struct {
	sources  map[string]*props.Source
	families []string // ids and groups
	cited    []Cite
}

// Cited lists every citation read so far.
func (l *Reader) Cited() []Cite { return l.cited }

// Reader is a reader for records that refer to the sources of the book and
// the families of the catalog.
func (b *Book) Reader(base *catalog.Catalog) *Reader {
	r := &Reader{sources: map[string]*props.Source{}}
	for _, s := range b.Sources {
		r.sources[s.ID] = s
	}
	for _, f := range base.Families {
		r.families = append(r.families, f.ID)
		if f.Group != "" && !slices.Contains(r.families, f.Group) {
			r.families = append(r.families, f.Group)
		}
	}
	return r
}

func (l *loader) source(r *record.Record) {
	s := catalog.ReadSource(r)
	if l.sources[s.ID] != nil {
		r.Fail("id", fmt.Sprintf("%q is already in the source list", s.ID), "give it another id, or delete it and use the one there")
		return
	}
	l.sources[s.ID] = s
	l.book.Sources = append(l.book.Sources, s)
}

// Cite reads the keys that say where a record comes from: source, table, known
// and where.
func (l *Reader) Cite(r *record.Record) Cite {
	c := Cite{Table: r.Text("table", false), Where: r.Text("where", false)}
	id := r.Text("source", true)
	c.Source = l.sources[id]
	if c.Source == nil {
		if id != "" {
			r.Fail("source", fmt.Sprintf("%q is not in the source list", id), record.DidYouMean(id, slices.Collect(maps.Keys(l.sources))))
		}
		c.Source = &props.Source{ID: id, Title: id, Kind: "none"}
	}
	if c.Source.Kind != "none" || !r.Absent("known") {
		c.Known = catalog.ReadKnown(r)
	}
	l.cited = append(l.cited, c)
	return c
}

// end reads where a record comes from, the last of its keys.
func (l *loader) end(r *record.Record) Cite {
	c := l.Cite(r)
	r.Finish()
	return c
}

// Scope reads the keys that say which materials a record is about: the one
// for families, and with the prefix processes, alloys and tempers.
func (l *Reader) Scope(r *record.Record, families, prefix string) Scope {
	return Scope{Families: l.Families(r, families), Processes: l.Processes(r, prefix+"processes"),
		Alloys: Pattern(r, prefix+"alloys", false), Tempers: Pattern(r, prefix+"tempers", false)}
}

// Processes reads a list of processes.
func (l *Reader) Processes(r *record.Record, key string) []props.Process {
	var out []props.Process
	for _, word := range r.Texts(key) {
		p, ok := props.ParseProcess(word)
		if !ok {
			r.Fail(key, fmt.Sprintf("%q is not a process", word), "use sand, pm, die, inv, cont, cent or wrought")
		}
		out = append(out, p)
	}
	return out
}

// Families reads a list of family ids and groups of families.
func (l *Reader) Families(r *record.Record, key string) []string {
	words := r.Texts(key)
	for _, word := range words {
		if !slices.Contains(l.families, word) {
			r.Fail(key, fmt.Sprintf("%q is not a family", word), record.DidYouMean(word, slices.Clone(l.families)))
		}
	}
	return words
}

// Pattern reads a regular expression that has to match the whole of a word;
// nil when the key is absent or wrong.
func Pattern(r *record.Record, key string, required bool) *regexp.Regexp {
	text := r.Text(key, required)
	if text == "" {
		return nil
	}
	re, err := regexp.Compile("^(?:" + text + ")$")
	if err != nil {
		r.Fail(key, fmt.Sprintf("%q is not a pattern: %v", text, err), `write a regular expression in single quotes, such as '3\d\d|a356'`)
	}
	return re
}

func (l *loader) quantity(r *record.Record, key string, d units.Dimension, example string) units.Quantity {
	text := r.Text(key, true)
	if text == "" {
		return units.Quantity{}
	}
	q, _ := r.Quantity(key, text, d, units.NoUnit, example)
	return q
}

func oneOf(r *record.Record, key string, words ...string) string {
	word := r.Text(key, true)
	if word != "" && !slices.Contains(words, word) {
		r.Fail(key, fmt.Sprintf("%q is not one of the words for it", word), "use one of: "+strings.Join(words, ", "))
	}
	return word
}
