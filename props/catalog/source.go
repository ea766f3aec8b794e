package catalog

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/record"
)

// replaced is a source that names its successor by id.
type replaced struct {
	source *props.Source
	record *record.Record
	by     string
}

// ReadSource reads a record of a source list.
func ReadSource(r *record.Record) *props.Source {
	s := &props.Source{ID: r.Text("id", true), File: r.File(), Line: r.LineOf("")}
	r.Label = s.ID
	s.Title, s.Publisher, s.Edition = r.Text("title", true), r.Text("publisher", false), r.Text("edition", false)
	s.Kind, s.Note = r.Text("kind", true), r.Text("note", false)
	if s.Kind != "" && !slices.Contains(props.SourceKinds, s.Kind) {
		r.Fail("kind", fmt.Sprintf("%q is not a kind of source", s.Kind), "use one of: "+strings.Join(props.SourceKinds, ", "))
	}
	r.Finish()
	return s
}

func (l *loader) source(r *record.Record) {
	successor := r.Text("successor", false)
	s := ReadSource(r)
	if successor != "" {
		l.replaced = append(l.replaced, replaced{s, r, successor})
	}
	l.claim(r, "source "+s.ID, s.ID)
	if l.sources[s.ID] == nil {
		l.sources[s.ID] = s
		l.cat.Sources = append(l.cat.Sources, s)
	}
}

// succession resolves the successors once every source is read.
func (l *loader) succession() {
	for _, x := range l.replaced {
		x.source.Successor = l.sources[x.by]
		if x.source.Successor == nil || x.source.Successor == x.source {
			x.record.Fail("successor", fmt.Sprintf("%q is not another source of the list", x.by), record.DidYouMean(x.by, keys(l.sources)))
		}
	}
}

// everyday reads the list of materials that are asked for most.
func (l *loader) everyday(r *record.Record) {
	for _, id := range r.Texts("ids") {
		switch {
		case l.cat.Material(id) == nil:
			r.Fail("ids", fmt.Sprintf("%q is not a material", id), "write an id as `alongside find` prints it")
		case slices.Contains(l.cat.Everyday, id):
			r.Fail("ids", fmt.Sprintf("%q stands twice", id), "delete one of the two")
		default:
			l.cat.Everyday = append(l.cat.Everyday, id)
		}
	}
	r.Finish()
}

func (l *loader) sourceNamed(r *record.Record) *props.Source {
	id := r.Text("source", true)
	s := l.sources[id]
	if s == nil {
		if id != "" {
			r.Fail("source", fmt.Sprintf("%q is not in the source list", id), record.DidYouMean(id, keys(l.sources)))
		}
		s = &props.Source{ID: id, Title: id, Kind: "none"}
	}
	return s
}

// ReadKnown reads how a figure came into the data file: the key "known".
func ReadKnown(t *record.Record) props.Known {
	switch word := t.Text("known", true); word {
	case "read":
		return props.Read
	case "memory", "":
	default:
		t.Fail("known", fmt.Sprintf("%q is not how a figure is known", word), "write read or memory")
	}
	return props.Memory
}

// agreeing is the document that a figure from memory agrees with.
func (l *loader) agreeing(r *record.Record, key, id string) *props.Source {
	s := l.sources[id]
	switch {
	case s == nil:
		r.Fail(key, fmt.Sprintf("%q, with which the figure agrees, is not in the source list", id), record.DidYouMean(id, keys(l.sources)))
	case r.Absent("known") || r.Text("known", false) != "memory":
		r.Fail(key, "agrees with another document, but was read in its own source", "delete \"agrees "+id+"\", or write known = \"memory\"")
	case r.Text("source", false) == id:
		r.Fail(key, "agrees with its own source", "name another document, or delete \"agrees "+id+"\"")
	default:
		return s
	}
	return nil
}
