// Package catalog holds all materials together: it reads the data files that
// people edit, finds a material by any designation in use, and steps from one
// temper, process or alloy to the next.
package catalog

import (
	"iter"
	"slices"

	"alongside/props"
	"alongside/props/cost"
)

// Catalog is a set of materials with the sources and families they refer to.
// It is not changed after loading and may be shared.
type Catalog struct {
	Sources  []*props.Source
	Families []*props.Family
	Alloys   []*props.Alloy
	// Materials lists every material in file order, those of an alloy together.
	Materials []*props.Material
	// Everyday lists the ids of the materials that are asked for most.
	Everyday []string
	// Dropped tells in words which checks of the shop the catalog no longer fits.
	Dropped []string
	// Rates are what the shop charges, in the order of its files. None is built in.
	Rates []*cost.Record
	// Words are those of the materials, where they were listed beforehand.
	Words Words

	index index
}

// Variants are the materials of an alloy: its tempers and processes.
func (c *Catalog) Variants(a *props.Alloy) []*props.Material {
	is := func(m *props.Material) bool { return m.Alloy == a }
	from := slices.IndexFunc(c.Materials, is)
	if from < 0 {
		return nil
	}
	to := from
	for to < len(c.Materials) && is(c.Materials[to]) {
		to++
	}
	return c.Materials[from:to]
}

// Material returns the material with exactly this id, or nil. It looks through
// the list: a map would cost every command more than the few it is asked for.
func (c *Catalog) Material(id string) *props.Material {
	for _, m := range c.Materials {
		if m.ID == id {
			return m
		}
	}
	return nil
}

// FigureCount counts stored figures; one that several materials inherit
// counts once.
func (c *Catalog) FigureCount() int {
	n := 0
	for _, f := range c.Stated() {
		if !f.Property.OfCurve() {
			n++
		}
	}
	return n
}

// Owner is what a figure is stored with: a family, an alloy of it and a material
// of that; the last two are nil where it is stated for more than one of them.
type Owner struct {
	Family   *props.Family
	Alloy    *props.Alloy
	Material *props.Material
}

// Stated walks over every stored figure with what it is stored with; one that
// several materials inherit comes once.
func (c *Catalog) Stated() iter.Seq2[Owner, *props.Figure] {
	return func(yield func(Owner, *props.Figure) bool) {
		each := func(o Owner, stated []props.Figure) bool {
			for i := range stated {
				if !yield(o, &stated[i]) {
					return false
				}
			}
			return true
		}
		for _, f := range c.Families {
			if !each(Owner{Family: f}, f.Stated) {
				return
			}
		}
		var of *props.Alloy
		for _, m := range c.Materials {
			a := m.Alloy
			if a != of && !each(Owner{a.Family, a, nil}, a.Stated) || !each(Owner{a.Family, a, m}, m.Stated) {
				return
			}
			of = a
		}
	}
}

// Direction is which way a flip goes round.
type Direction int

// Forward and Back step to the next and the previous variant.
const (
	Forward Direction = 1
	Back    Direction = -1
)

func step[T any](list []T, at int, d Direction) T {
	n := len(list)
	return list[((at+int(d))%n+n)%n]
}

// NextTemper returns the same alloy and process in its next temper, going
// round at the end; the material itself when there is no other.
func (c *Catalog) NextTemper(m *props.Material, d Direction) *props.Material {
	other := func(o *props.Material) bool { return o.Process != m.Process }
	order := slices.DeleteFunc(slices.Clone(c.Variants(m.Alloy)), other)
	if i := slices.Index(order, m); i >= 0 {
		return step(order, i, d)
	}
	return m // it is not of this catalog
}

// NextProcess returns the same alloy by its next process, in the same temper
// where that exists, else in the first temper of that process.
func (c *Catalog) NextProcess(m *props.Material, d Direction) *props.Material {
	var order []props.Process
	variants := c.Variants(m.Alloy)
	for p := props.NoProcess; p <= props.Wrought; p++ {
		if firstWith(variants, m.Temper, p) != nil {
			order = append(order, p)
		}
	}
	if i := slices.Index(order, m.Process); i >= 0 {
		return firstWith(variants, m.Temper, step(order, i, d))
	}
	return m
}

// NextAlloy returns the next alloy of the family that is made by the same
// process, in the same temper where that exists.
func (c *Catalog) NextAlloy(m *props.Material, d Direction) *props.Material {
	var order []*props.Alloy
	at := 0
	for _, a := range c.Alloys {
		if a == m.Alloy {
			at = len(order)
		} else if a.Family != m.Alloy.Family || firstWith(c.Variants(a), "", m.Process) == nil {
			continue
		}
		order = append(order, a)
	}
	if len(order) == 0 { // m is not of this catalog
		return m
	}
	return firstWith(c.Variants(step(order, at, d)), m.Temper, m.Process)
}

// firstWith picks the material of a process, preferring a temper.
func firstWith(list []*props.Material, temper string, p props.Process) *props.Material {
	var first *props.Material
	for _, m := range list {
		if m.Process != p {
			continue
		}
		if m.Temper == temper {
			return m
		}
		if first == nil {
			first = m
		}
	}
	return first
}
