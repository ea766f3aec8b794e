// Package foundry holds what is published about casting processes rather than
// about single alloys: tolerances, walls, draft and finish by process, heat
// treatment schedules, what a designation says, the galvanic index, and facts
// on hardness scales. Figures are for comparison, not for design.
package foundry

import (
	"regexp"

	"alongside/props"
)

// Cite says where a figure or a statement comes from.
type Cite struct {
	Source *props.Source
	Table  string // locator in the source
	Known  props.Known
	Where  string // kind of page on which it was read
}

// Practice reports whether no standard or handbook stands behind the
// statement: it is common practice of the trade, without a source.
func (c Cite) Practice() bool { return c.Source.Trade() }

// Statement is a sentence of ours with the source of what it says.
type Statement struct {
	Text string
	Cite
}

// Book is everything read from the process data files. It is not changed
// after loading and may be shared.
type Book struct {
	Sources []*props.Source // the catalog's and the process files' own

	items        []item
	grades       []grade      // ISO grades by process
	dctg         []gradeRow   // tolerance by grade and nominal size
	allowances   []grade      // machining allowance grades by process
	rma          []gradeRow   // allowance by grade and largest dimension
	linear       []linear     // the trade's first-inch form
	tempers      []temper     //
	schedules    []schedule   //
	treatable    []treatable  // whether a process is heat treated
	designations []pattern    //
	anodic       []anodicRow  //
	gaps         []AnodicGap  //
	hardness     []Statement  //
	conversions  []Conversion //
}

// Source returns the source with an id, or nil.
func (b *Book) Source(id string) *props.Source {
	for _, s := range b.Sources {
		if s.ID == id {
			return s
		}
	}
	return nil
}

// scope says which materials a record holds for; empty parts admit all.
type scope struct {
	processes []props.Process
	families  []string
	alloys    *regexp.Regexp // over the alloy id
	tempers   *regexp.Regexp // over the temper as printed
}

func (s *scope) admits(m *props.Material) bool {
	return has(s.processes, m.Process) && has(s.families, m.Alloy.Family.ID) &&
		(s.alloys == nil || s.alloys.MatchString(m.Alloy.ID)) &&
		(s.tempers == nil || s.tempers.MatchString(m.Temper))
}

// named reports whether the scope speaks of the material's family rather than
// of all of them.
func (s *scope) named() bool { return len(s.families) > 0 || s.alloys != nil }

func has[T comparable](list []T, v T) bool {
	for _, x := range list {
		if x == v {
			return true
		}
	}
	return len(list) == 0
}
