package catalog

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/spelling"
)

// NotFound is the error for a designation that names no material, or more
// than one.
type NotFound struct {
	Typed   string
	Nearest []*props.Material // best first, at most five
	Several bool              // the designation fits more than one material
}

func (e *NotFound) Error() string {
	ids := make([]string, len(e.Nearest))
	for i, m := range e.Nearest {
		ids[i] = m.ID
	}
	switch {
	case e.Several:
		return fmt.Sprintf("%q fits several materials; say which: %s", e.Typed, strings.Join(ids, ", "))
	case len(ids) > 0:
		return fmt.Sprintf("no material %q; nearest: %s", e.Typed, strings.Join(ids, ", "))
	}
	return fmt.Sprintf("no material %q and nothing like it in the catalog", e.Typed)
}

// Resolve finds the one material that a designation names: an id, or an
// alloy, temper and process in any usual spelling, or an alias. Where it names none
// but a search finds a single one, that is meant. The error is a *NotFound.
func (c *Catalog) Resolve(typed string) (*props.Material, error) {
	m, _, err := c.ResolveNear(typed)
	return m, err
}

// ResolveNear is Resolve that also says whether the words name the material; where
// they do not, it is what the search found.
func (c *Catalog) ResolveNear(typed string) (m *props.Material, named bool, err error) {
	if m := c.Material(strings.ToLower(strings.TrimSpace(typed))); m != nil {
		return m, true, nil
	}
	hits, exact, readAs := c.find(typed)
	m, named, fit := meant(typed, hits, exact, readAs != "")
	if m != nil {
		return m, named, nil
	}
	e := &NotFound{Typed: typed, Several: fit > 1}
	if e.Several {
		for _, h := range hits[:min(5, fit)] {
			e.Nearest = append(e.Nearest, h.Material)
		}
	} else {
		e.Nearest = c.nearestMaterials(typed, hits)
	}
	return nil, false, e
}

// Named is the material that the words name, nil where they name none; several is
// that they fit more than one. Nothing is taken as mistyped and nothing near is
// looked for, so it costs little where there is nothing.
func (c *Catalog) Named(typed string) (m *props.Material, several bool) {
	if m := c.Material(strings.ToLower(strings.TrimSpace(typed))); m != nil {
		return m, false
	}
	_, hits := c.asTyped(typed)
	m, named, fit := meant(typed, hits, countExact(hits), false)
	if !named {
		m = nil
	}
	return m, m == nil && fit > 1
}

// meant is the one of the hits that is meant, and whether the words name it; nil
// where none is, with how many fit. What a search finds is meant too, but not where
// it took words as mistyped and not by a variant: 810 is no B810.
func meant(typed string, hits []Hit, exact int, mistyped bool) (m *props.Material, named bool, fit int) {
	if exact > 1 {
		// Typed without a temper: as cast is meant where it is one of them.
		if m := asCast(hits[:exact]); m != nil {
			return m, true, 1
		}
	}
	fit = exact
	if exact == 0 && len(hits) > 0 && !mistyped && strings.TrimSpace(typed) != "" && hits[0].Score%scoreExact != scoreVariant {
		fit = len(hits)
	}
	if fit == 1 && !dieMeant(typed, hits[0].Material) {
		return hits[0].Material, exact == 1, 1
	}
	return nil, false, fit
}

// dieMeant reports whether a die casting was asked for where only a gravity die
// casting, which is a permanent mold casting, fits: a356-t6-die is not a356-t6-pm.
func dieMeant(typed string, m *props.Material) bool {
	typed = strings.ToLower(strings.TrimSpace(typed))
	return m.Process == props.PermanentMold && strings.HasSuffix(typed, "die") && !strings.Contains(typed, "gravity")
}

// asCast returns the only material without a temper among the hits, or nil.
func asCast(hits []Hit) *props.Material {
	var found *props.Material
	for _, h := range hits {
		if h.Material.Temper == "" {
			if found != nil {
				return nil
			}
			found = h.Material
		}
	}
	return found
}

// nearestMaterials lists up to five materials that a designation may have been
// meant for: those whose id differs by few letters, fewest first, then what
// the search finds.
func (c *Catalog) nearestMaterials(typed string, hits []Hit) []*props.Material {
	type candidate struct {
		m     *props.Material
		edits int
	}
	var near []candidate
	want := fold(typed)
	limit := 1 + len(want)/6
	x := c.indexed()
	for _, e := range x.entries {
		if edits := spelling.Edits(want, x.text(e.id), limit); edits <= limit {
			near = append(near, candidate{e.material, edits})
		}
	}
	slices.SortStableFunc(near, func(a, b candidate) int { return a.edits - b.edits })
	for _, h := range hits {
		near = append(near, candidate{m: h.Material})
	}
	var out []*props.Material
	for _, n := range near {
		if len(out) < 5 && !slices.Contains(out, n.m) {
			out = append(out, n.m)
		}
	}
	return out
}
