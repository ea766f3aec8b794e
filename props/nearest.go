package props

import "sort"

// nearestMaterials lists up to five materials that a designation may have been
// meant for: those whose id differs by few letters, fewest first, then what
// the search finds.
func (c *Catalog) nearestMaterials(typed string, hits []Hit) []*Material {
	type candidate struct {
		m    *Material
		cost int
	}
	var near []candidate
	want := fold(typed)
	limit := 1 + len(want)/6
	for i := range c.keys {
		have := c.keys[i].joined
		if d := len(have) - len(want); d > limit || -d > limit {
			continue
		}
		if cost := edits(want, have); cost <= limit {
			near = append(near, candidate{c.Materials[i], cost})
		}
	}
	sort.SliceStable(near, func(i, j int) bool { return near[i].cost < near[j].cost })
	var out []*Material
	add := func(m *Material) {
		for _, have := range out {
			if have == m {
				return
			}
		}
		if len(out) < 5 {
			out = append(out, m)
		}
	}
	for _, n := range near {
		add(n.m)
	}
	for _, h := range hits {
		add(h.Material)
	}
	return out
}
