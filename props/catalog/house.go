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
		for _, m := range l.cat.Materials {
			ids = append(ids, m.ID)
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
	if m := l.cat.Material(id); m != nil {
		l.ownAlloy(slices.Index(l.cat.Alloys, m.Alloy))
	}
	return l.cat.Material(id)
}

// ownAlloy is own for the i-th alloy as a whole.
func (l *loader) ownAlloy(i int) *props.Alloy {
	a := l.cat.Alloys[i]
	if l.copied[a] {
		return a
	}
	c := *a
	c.Stated = slices.Clone(a.Stated)
	l.cat.Alloys[i], l.copied[&c] = &c, true
	variants := l.cat.Variants(a)
	for j, m := range variants {
		own := *m
		own.Alloy, own.Stated = &c, slices.Clone(m.Stated)
		variants[j] = &own
	}
	return &c
}

// ownFamily is own for the i-th family, of which the alloys get to know.
func (l *loader) ownFamily(i int) *props.Family {
	old := l.cat.Families[i]
	if !l.owned[old] {
		f := *old
		f.Stated = slices.Clone(old.Stated)
		l.owned[&f], l.cat.Families[i] = true, &f
		for j, a := range l.cat.Alloys {
			if a.Family == old {
				l.ownAlloy(j).Family = &f
			}
		}
	}
	return l.cat.Families[i]
}
