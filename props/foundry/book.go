// Package foundry holds what is published about casting processes rather than
// about single alloys: tolerances, walls, draft and finish by process, heat
// treatment schedules, what a designation says, and the galvanic index.
// Figures are for comparison, not for design.
package foundry

import (
	"regexp"
	"slices"

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

	items        []*item
	grades       []*grade     // ISO grades by process
	dctg         []*gradeRow  // tolerance by grade and nominal size
	allowances   []*grade     // machining allowance grades by process
	rma          []*gradeRow  // allowance by grade and largest dimension
	linear       []*linear    // the trade's first-inch form
	tempers      []*temper    //
	schedules    []*schedule  //
	treatable    []*treatable // whether a process is heat treated
	designations []*pattern   //
	anodic       []*anodicRow //
	cites        []Cite
}

// Cites lists where the figures and statements of the book come from, one for
// each record.
func (b *Book) Cites() []Cite { return b.cites }

// Scope says which materials a record is about; parts left empty admit all.
type Scope struct {
	Families  []string // ids and groups
	Processes []props.Process
	Alloys    *regexp.Regexp // over the alloy id
	Tempers   *regexp.Regexp // over the temper as printed
}

// Empty reports whether the scope admits every material.
func (s *Scope) Empty() bool {
	return len(s.Families)+len(s.Processes) == 0 && s.Alloys == nil && s.Tempers == nil
}

// Admits reports whether the record is about the material.
func (s *Scope) Admits(m *props.Material) bool {
	return (len(s.Families) == 0 || m.Alloy.Family.Among(s.Families)) && has(s.Processes, m.Process) &&
		(s.Alloys == nil || s.Alloys.MatchString(m.Alloy.ID)) &&
		(s.Tempers == nil || s.Tempers.MatchString(m.Temper))
}

// named reports whether the scope speaks of the material's family rather than
// of all of them.
func (s *Scope) named() bool { return len(s.Families) > 0 || s.Alloys != nil }

// about are the records of a list that are about the material.
func about[R interface{ Admits(*props.Material) bool }](list []R, m *props.Material) (out []R) {
	for _, r := range list {
		if r.Admits(m) {
			out = append(out, r)
		}
	}
	return out
}

func has[T comparable](list []T, v T) bool { return len(list) == 0 || slices.Contains(list, v) }
