package foundry

import (
	"slices"

	"alongside/props"
	"alongside/units"
)

// Kind is a line of the process card.
type Kind uint8

// The kinds, in the order in which the card shows them, and from TestBar on those
// of the drawing note.
const (
	Grade Kind = iota
	Linear
	PartingLine
	MinimumWall
	MaximumWall
	Draft
	DraftConstant
	SurfaceFinish
	CoredHole
	CoredDepth
	PartMass
	Shape
	Quantity
	Tooling
	ToolingLife
	Shrinkage
	Allowance
	Soundness
	Welding
	Anodizing
	Chromate
	Plating
	PowderCoat
	Polishing
	Impregnation
	TestBar
	Radiograph
	SurfaceTest
	QualityClass
	Marking
	kindCount
)

// kindInfo: id as in data files, name as on the card, dimension of the value
// (NoDimension: the line is words), word behind a plain number.
var kindInfo = [kindCount]struct {
	id, name  string
	dimension units.Dimension
	unit      string
	rating    props.PropertyID // the catalog's own figure that belongs on the line
}{
	Grade:         {id: "iso-grade", name: "ISO 8062-3 grade"},
	Linear:        {id: "linear", name: "Linear tolerance"},
	PartingLine:   {id: "parting-line", name: "Across the parting line, add", dimension: units.Length},
	MinimumWall:   {id: "minimum-wall", name: "Minimum wall", dimension: units.Length},
	MaximumWall:   {id: "maximum-wall", name: "Thickest section", dimension: units.Length},
	Draft:         {id: "draft", name: "Draft", dimension: units.Ratio, unit: "°"},
	DraftConstant: {id: "draft-constant", name: "Draft constant", dimension: units.Ratio},
	SurfaceFinish: {id: "surface-finish", name: "Surface finish", dimension: units.Length},
	CoredHole:     {id: "cored-hole", name: "Smallest cored hole", dimension: units.Length},
	CoredDepth:    {id: "cored-depth", name: "Deepest cored hole", dimension: units.Length},
	PartMass:      {id: "part-mass", name: "Part mass", dimension: units.Mass},
	Shape:         {id: "shape", name: "Shapes"},
	Quantity:      {id: "quantity", name: "Least quantity", dimension: units.Ratio, unit: " pieces"},
	Tooling:       {id: "tooling", name: "Tooling"},
	ToolingLife:   {id: "tooling-life", name: "Tooling life", dimension: units.Ratio, unit: " pours"},
	Shrinkage:     {id: "shrinkage", name: "Pattern shrinkage", dimension: units.Strain, rating: props.PatternShrinkage},
	Allowance:     {id: "allowance", name: "Machining allowance grade"},
	Soundness:     {id: "soundness", name: "Soundness", rating: props.RatingPressureTightness},
	Welding:       {id: "welding", name: "Welding", rating: props.RatingWeldability},
	Anodizing:     {id: "anodize", name: "Anodizing", rating: props.RatingAnodizing},
	Chromate:      {id: "chromate", name: "Chromate conversion", rating: props.RatingChemicalCoating},
	Plating:       {id: "plate", name: "Electroplating", rating: props.RatingElectroplating},
	PowderCoat:    {id: "powder-coat", name: "Powder coating"},
	Polishing:     {id: "polish", name: "Polishing", rating: props.RatingPolishing},
	Impregnation:  {id: "impregnate", name: "Impregnation"},
	TestBar:       {id: "test-bar", name: "Test bars"},
	Radiograph:    {id: "radiograph", name: "Radiographs"},
	SurfaceTest:   {id: "surface-test", name: "Cracks at the surface"},
	QualityClass:  {id: "quality-class", name: "Class and grade"},
	Marking:       {id: "marking", name: "Marking"},
}

// ID is the kind as it stands in data files and in JSON.
func (k Kind) ID() string { return kindInfo[k].id }

func (k Kind) String() string { return kindInfo[k].name }

// Kinds lists the kinds of the process card in its order.
func Kinds() []Kind {
	all := make([]Kind, TestBar)
	for k := range all {
		all[k] = Kind(k)
	}
	return all
}

// Item is one statement on a process card: a value with its unit, or words.
type Item struct {
	Kind  Kind
	Value units.Quantity // meaningful when HasValue
	// HasValue is false for statements in words only.
	HasValue bool
	Printed  string // the value as its source prints it, with its unit
	Unit     string // behind a value that is a plain number: "°", " pieces"
	// Particular is set for statements about the material's own family, not
	// about any metal by the process.
	Particular bool
	Text       string // words; beside a value they say more about it
	Method     string // molding method the statement is limited to: "shell"
	Condition  string
	Cite
}

// String is the statement without condition and source: "0.125 in".
func (i *Item) String() string {
	s := i.Text
	if i.HasValue {
		s = i.Printed + i.Unit
		if i.Text != "" {
			s += ", " + i.Text
		}
	}
	return s
}

// item is an Item with the materials it holds for. What tells more of it, such as a
// range of grades, holds it.
type item struct {
	Scope
	Item
}

// ProcessCard is what is published for a material's process and family.
type ProcessCard struct {
	Material *props.Material
	Items    []Item // in the order of Kinds, standards before common practice
	// Why is set when there is no card: a wrought product is not cast.
	Why string
}

// Of lists the card's items of one kind.
func (c *ProcessCard) Of(k Kind) []Item {
	var out []Item
	for _, i := range c.Items {
		if i.Kind == k {
			out = append(out, i)
		}
	}
	return out
}

// Card puts together what is published for the material's casting process
// and family. Statements that speak of the family stand before those that
// hold for any metal, and what no standard or handbook backs stands last.
func (b *Book) Card(m *props.Material) *ProcessCard {
	c := &ProcessCard{Material: m}
	if why := notCast(m); why != "" {
		c.Why = why
		return c
	}
	for _, k := range Kinds() {
		if k == Shrinkage {
			c.Items = append(c.Items, b.Shrinkage(m)...)
			continue
		}
		c.Items = append(c.Items, b.itemsOf(m, k)...)
		if p := kindInfo[k].rating; p != props.NoProperty {
			c.Items = append(c.Items, catalogItems(m, k, p)...)
		}
	}
	return c
}

// Order is what a drawing and an order of the material say beside its card.
func (b *Book) Order(m *props.Material) []Item {
	var out []Item
	for k := TestBar; k < kindCount; k++ {
		out = append(out, b.itemsOf(m, k)...)
	}
	return out
}

// Shrinkage lists the pattern shrinkages on file for the material: the
// catalog's own figures before those for the family in sand.
func (b *Book) Shrinkage(m *props.Material) []Item {
	return append(catalogItems(m, Shrinkage, props.PatternShrinkage), b.itemsOf(m, Shrinkage)...)
}

// itemsOf lists the items of a kind: about the family, about any metal, common practice.
func (b *Book) itemsOf(m *props.Material, k Kind) []Item {
	var out []Item
	for _, it := range b.items {
		if it.Kind == k && it.Admits(m) {
			out = append(out, it.Item)
		}
	}
	rank := func(it Item) int {
		switch {
		case it.Practice():
			return 2
		case it.Particular:
			return 0
		}
		return 1
	}
	slices.SortStableFunc(out, func(a, b Item) int { return rank(a) - rank(b) })
	return out
}

// catalogItems shows the material's own figure of a property on the card.
func catalogItems(m *props.Material, k Kind, p props.PropertyID) []Item {
	var out []Item
	for _, f := range m.Figures(p) {
		it := Item{Kind: k, Value: f.Value, HasValue: true, Printed: f.Value.String(), Particular: true, Condition: f.Cond.String(),
			Cite: Cite{Source: f.Source, Table: f.Table, Known: f.Known(), Where: f.Where}}
		if f.Value.Unit.Dimension() == units.Rating {
			it.Text = p.Info().Name + " rating, 1 best to 5"
			if !has(f.Processes, m.Process) {
				it.Condition = join("; ", it.Condition, "printed for "+f.Processes[0].String()+" castings of the alloy")
			}
		}
		out = append(out, it)
	}
	return out
}

// notCast says why a material has no process card; "" when it has one.
func notCast(m *props.Material) string {
	switch m.Process {
	case props.Wrought:
		return "a wrought product is not poured: casting tolerances, walls and draft do not apply to it"
	case props.NoProcess:
		return "the catalog names no casting process for " + m.Name()
	}
	return ""
}
