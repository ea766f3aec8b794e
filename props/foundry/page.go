package foundry

import (
	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// Page is all that is on file about how a material is made.
type Page struct {
	*ProcessCard
	Heat        *HeatCard
	Tolerances  []ToleranceResult // of the dimension asked for
	Designation []Explanation
	Anodic      *AnodicIndex // nil where the table has no group for it
}

// Page opens the book at a material of the catalog. Without a dimension (nil) there
// are no tolerances.
func (b *Book) Page(c *catalog.Catalog, m *props.Material, dimension *units.Quantity) *Page {
	p := &Page{ProcessCard: b.Card(m), Heat: b.heatTreat(m, c.Variants(m.Alloy)), Designation: b.Designation(m)}
	if dimension != nil {
		p.Tolerances = b.Tolerance(m, *dimension)
	}
	if a, ok := b.Anodic(m); ok {
		p.Anodic = &a
	}
	return p
}

// Pages opens it at each of several materials.
func (b *Book) Pages(c *catalog.Catalog, list []*props.Material, dimension *units.Quantity) []*Page {
	var out []*Page
	for _, m := range list {
		out = append(out, b.Page(c, m, dimension))
	}
	return out
}
