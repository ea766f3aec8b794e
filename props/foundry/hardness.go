package foundry

import "alongside/units"

// Conversion is a line of a published hardness conversion table. It is shown
// as a fact and never used to convert a figure of the catalog: the table is
// for wrought products, and no standard gives one for castings.
type Conversion struct {
	Scale  string           // "Brinell 500 kgf/10 mm"
	Values []units.Quantity // equal by the table, each in its own scale
	Cite
}

// HardnessFacts are what the standards say about comparing hardness numbers.
func (b *Book) HardnessFacts() []Statement { return b.hardness }

// HardnessTable is the published conversion table for wrought aluminum.
func (b *Book) HardnessTable() []Conversion { return b.conversions }
