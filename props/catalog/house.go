package catalog

import (
	"fmt"
	"slices"

	"alongside/props"
	"alongside/props/record"
	"alongside/props/spelling"
)

// house reads a [[house]] record: the shop's own figures for a material that
// is in the catalog already.
//
//	[[house]]
//	material = "a356-t6-pm"
//	[[house.figures]]
//	basis = "house"
//	source = "LAB-2026"      # a [[source]] of kind house in the same file
//	known = "read"
//	tensile_strength = "39.8–43.1 ksi"
func (l *loader) house(r *record.Record) {
	id := r.Text("material", true)
	r.Label = id
	m := l.own(id)
	if m == nil && id != "" {
		var ids []string
		for _, a := range l.cat.Alloys {
			for _, m := range a.Materials {
				ids = append(ids, m.ID)
			}
		}
		problem := fmt.Sprintf("%q is not a material of the catalog", id)
		if n := spelling.Nearest(id, ids); n != "" {
			r.Fail("material", problem, fmt.Sprintf("did you mean %s?", n))
		} else {
			r.Fail("material", problem, "use the id that `alongside find` prints, or add the metal with [[alloy]]")
		}
	}
	tables := r.Tables("figures")
	if len(tables) == 0 {
		r.Fail("figures", "the record holds no figures", "add [[house.figures]] with basis, source, known and the figures")
	}
	for _, t := range tables {
		t.Label = id
		_, figures := l.block(t)
		t.Finish()
		if m != nil {
			m.Stated = append(m.Stated, figures...)
		}
	}
	r.Finish()
}

// own returns the material with this id in an alloy that belongs to the
// catalog being built: one of the base is copied first, since the base is
// shared and not to be changed.
func (l *loader) own(id string) *props.Material {
	for i, a := range l.cat.Alloys {
		at := slices.IndexFunc(a.Materials, func(m *props.Material) bool { return m.ID == id })
		if at < 0 {
			continue
		}
		if l.copied == nil {
			l.copied = map[*props.Alloy]bool{}
		}
		if !l.copied[a] {
			a = cloned(a)
			l.copied[a] = true
			l.cat.Alloys[i] = a
		}
		return a.Materials[at]
	}
	return nil
}

// cloned copies an alloy with its materials.
func cloned(a *props.Alloy) *props.Alloy {
	c := *a
	c.Materials = make([]*props.Material, len(a.Materials))
	for i, m := range a.Materials {
		own := *m
		own.Alloy = &c
		own.Stated = slices.Clone(m.Stated)
		c.Materials[i] = &own
	}
	return &c
}
