// Package call holds all that a call with a customer has set up, with undo: the
// bench, the customer's limits and words, the part, what was put aside, and
// notes. It knows nothing of the screen.
package call

import (
	"cmp"
	"reflect"
	"slices"
	"time"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
)

// Call is what the user has set up. It is a value that is never changed in
// place: Clone, change, and Put it.
type Call struct {
	Bench  compare.Bench
	Needs  []needs.Need
	Duties []*needs.Duty // whose merit is shown
	Part   part.Part
	Aside  []string // ids of the watch-outs put aside
	Name   string   // as the user calls it; "" for none
	Said   []string // the customer's words, a line each
	Notes  []Note
}

// Note is what the user wrote down during the call.
type Note struct {
	At   time.Time // UTC, to the second
	Text string
}

// NewNote is a note taken now.
func NewNote(now time.Time, text string) Note {
	return Note{now.UTC().Truncate(time.Second), text}
}

// Clone copies the call so that changing the copy leaves c as it is.
func (c Call) Clone() Call {
	c.Bench, c.Part = c.Bench.Clone(), c.Part.Clone()
	c.Needs, c.Duties, c.Aside = slices.Clone(c.Needs), slices.Clone(c.Duties), slices.Clone(c.Aside)
	c.Said, c.Notes = slices.Clone(c.Said), slices.Clone(c.Notes)
	return c
}

// NeedsOn are the needs that are not switched off.
func (c *Call) NeedsOn() []needs.Need {
	return slices.DeleteFunc(slices.Clone(c.Needs), func(n needs.Need) bool { return n.Off })
}

// Same reports whether two calls hold the same.
func (c Call) Same(o Call) bool { return reflect.DeepEqual(c.full(), o.full()) }

// full is a copy in which an empty list is nil and an empty map is made, so that
// the two kinds of empty are one.
func (c Call) full() Call {
	c = c.Clone()
	c.Needs, c.Duties, c.Aside = orNil(c.Needs), orNil(c.Duties), orNil(c.Aside)
	c.Said, c.Notes = orNil(c.Said), orNil(c.Notes)
	c.Bench.Pins, c.Bench.Only = orNil(c.Bench.Pins), orNil(c.Bench.Only)
	return c
}

// With is the call with every material replaced by that of the same id, where
// there is one: for a catalog that took the place of another.
func (c Call) With(material func(id string) *props.Material) Call {
	c = c.Clone()
	for i, m := range c.Bench.Pins {
		c.Bench.Pins[i] = cmp.Or(material(m.ID), m)
	}
	for i := range c.Needs {
		if than := c.Needs[i].Than; than != nil {
			now := *than
			now.Material = cmp.Or(material(than.Material.ID), than.Material)
			c.Needs[i].Than = &now
		}
	}
	return c
}

func orNil[T any](list []T) []T {
	if len(list) == 0 {
		return nil
	}
	return list
}

// Depth is how many changes can be taken back.
const Depth = 200

// History is a call with its past, and what was undone.
type History struct {
	now          Call
	past, future []Call
}

// Start is a history that begins with a call.
func Start(c Call) History { return History{now: c} }

// Now is the call as it is. It must not be changed in place.
func (h *History) Now() *Call { return &h.now }

// Change applies f to a copy of the call. Where that differs it becomes the
// call, and the old one can be got back. It reports whether anything changed.
func (h *History) Change(f func(*Call)) bool {
	next := h.now.Clone()
	f(&next)
	if next.Same(h.now) {
		return false
	}
	h.past = append(h.past, h.now)
	if len(h.past) > Depth {
		h.past = slices.Delete(h.past, 0, len(h.past)-Depth)
	}
	h.now, h.future = next, nil
	return true
}

// Undo takes the last change back. It reports false where there is none.
func (h *History) Undo() bool { return step(&h.past, &h.future, &h.now) }

// Redo does again what Undo took back. It reports false where there is nothing.
func (h *History) Redo() bool { return step(&h.future, &h.past, &h.now) }

// With is Call.With for the call and all its past.
func (h *History) With(material func(id string) *props.Material) {
	h.now = h.now.With(material)
	for _, list := range [][]Call{h.past, h.future} {
		for i := range list {
			list[i] = list[i].With(material)
		}
	}
}

// Left is how many changes Undo can take back.
func (h *History) Left() int { return len(h.past) }

// step moves now to one list and the last of the other to now.
func step(from, to *[]Call, now *Call) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	*to = append(*to, *now)
	*now, *from = (*from)[n-1], (*from)[:n-1]
	return true
}
