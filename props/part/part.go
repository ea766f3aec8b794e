// Package swap works out what a change of metal does to a part: its mass, the
// section it needs, how far it bends, how it grows and fits, what heat and
// current it carries, its pattern and its price of metal. It takes figures from
// the bench by the bench's own rule of like with like, and answers with
// intervals, or with the reason why there is no number.
package part

import (
	"strings"

	"alongside/units"
)

// Case is how the part is loaded, for equal stiffness and equal strength.
type Case string

// The load cases. All keep the length and the load.
const (
	NoCase    Case = ""
	Tie       Case = "tie"        // pulled or pushed along its length; the area is free
	Plate     Case = "plate"      // bent as a plate of given width; the thickness is free
	Beam      Case = "beam"       // bent as a beam whose section grows alike in all directions
	FixedBeam Case = "fixed-beam" // bent as a beam of given width; the depth is free
)

func (c Case) String() string {
	switch c {
	case Tie:
		return "tie"
	case Plate:
		return "plate in bending"
	case Beam:
		return "beam in bending, section scaled alike"
	case FixedBeam:
		return "beam in bending, width kept"
	}
	return ""
}

// Keep is what the new part has to keep of the old one.
type Keep string

// What to keep. The zero value stands for KeepAll.
const (
	KeepAll       Keep = "all"       // work out every case
	KeepShape     Keep = "shape"     // the part stays as it is drawn
	KeepStiffness Keep = "stiffness" // it bends no further under the same load
	KeepStrength  Keep = "strength"  // it carries the same load
)

// Strength says which strength decides.
type Strength string

// The strengths. The zero value stands for Auto: yield where both metals have
// one that may be compared, else tensile for both, and the line says so.
const (
	Auto    Strength = "auto"
	Yield   Strength = "yield"
	Tensile Strength = "tensile"
	Fatigue Strength = "fatigue"
)

// Place is where in a casting the strength is wanted.
type Place string

// The places. The zero value stands for Anywhere. The drawing designates areas
// whose test bars must meet more.
const (
	Anywhere     Place = "anywhere"
	Designated   Place = "designated"
	Undesignated Place = "undesignated"
)

// Surface is the surface where the part is stressed.
type Surface string

// The surfaces. The zero value stands for Specimen: as on the bar of the fatigue test.
const (
	Specimen        Surface = "specimen"
	Ground          Surface = "ground"
	MachinedSurface Surface = "machined"
	HotRolled       Surface = "hot-rolled"
	Forged          Surface = "forged"
)

// Reliability is the share of parts, in percent, that live as long as asked. The zero
// value stands for half of them, which is what a typical fatigue strength tells.
type Reliability string

// Part is what the customer says of the part, in the words and units it was
// said in. Every field may be empty. It is plain text so that it can be saved
// and edited by hand; Read turns it into quantities. Fill it with Set, which
// refuses what Read would not understand.
type Part struct {
	Mass        string      `toml:"mass,omitempty" json:"mass,omitempty"`     // of the part as it is today
	Volume      string      `toml:"volume,omitempty" json:"volume,omitempty"` // of metal in the part
	Wall        string      `toml:"wall,omitempty" json:"wall,omitempty"`     // thickness, or depth of a beam
	Length      string      `toml:"length,omitempty" json:"length,omitempty"` // over which it grows
	Case        Case        `toml:"case,omitempty" json:"case,omitempty"`
	Keep        Keep        `toml:"keep,omitempty" json:"keep,omitempty"`
	Strength    Strength    `toml:"strength,omitempty" json:"strength,omitempty"`
	Service     string      `toml:"service,omitempty" json:"service,omitempty"` // one temperature, or the coldest and the hottest
	Mate        string      `toml:"mate,omitempty" json:"mate,omitempty"`       // id of the material it is joined to
	Stress      string      `toml:"stress,omitempty" json:"stress,omitempty"`   // applied, in the part as it is today; the largest of a cycle
	Place       Place       `toml:"place,omitempty" json:"place,omitempty"`     // where in the casting the stress is
	Safety      string      `toml:"safety,omitempty" json:"safety,omitempty"`   // safety factor, a plain number
	Casting     string      `toml:"casting,omitempty" json:"casting,omitempty"` // casting factor, a plain number
	Cycles      string      `toml:"cycles,omitempty" json:"cycles,omitempty"`   // of load in the life of the part
	Mean        string      `toml:"mean,omitempty" json:"mean,omitempty"`       // stress about which the stress swings
	Surface     Surface     `toml:"surface,omitempty" json:"surface,omitempty"`
	Reliability Reliability `toml:"reliability,omitempty" json:"reliability,omitempty"`
	Pressure    string      `toml:"pressure,omitempty" json:"pressure,omitempty"`   // inside the part, above that outside
	Bore        string      `toml:"bore,omitempty" json:"bore,omitempty"`           // inside diameter of the vessel or pipe
	Fit         string      `toml:"fit,omitempty" json:"fit,omitempty"`             // diameter of bore and shaft
	Dimension   string      `toml:"dimension,omitempty" json:"dimension,omitempty"` // whose tolerance is looked up
	With        Facts       `toml:"with,omitzero" json:"with,omitempty"`            // what the part has and goes through
	// Price is the price of a mass of metal by material id: "1.20 USD/lb".
	Price map[string]string `toml:"price,omitempty" json:"price,omitempty"`
}

// Field names one thing that can be said of a part.
type Field uint8

// The fields, in the order in which a form asks for them.
const (
	FieldMass Field = iota
	FieldVolume
	FieldWall
	FieldLength
	FieldCase
	FieldKeep
	FieldStrength
	FieldService
	FieldMate
	FieldStress
	FieldPressure
	FieldBore
	FieldFit
	FieldPlace
	FieldSafety
	FieldCasting
	FieldCycles
	FieldMean
	FieldSurface
	FieldReliability
	FieldPrice
	FieldDimension
	FieldWith
	fieldCount
)

// FieldInfo describes a field for forms and flags.
type FieldInfo struct {
	Name    string   // as in flags and files
	Label   string   // as on a form
	Example string   // something that Set takes
	Help    string   // what it is, in one line
	Words   []string // the words that Set takes; nil where it takes a quantity or an id
}

var fieldInfos = [fieldCount]FieldInfo{
	FieldMass:        {"mass", "Mass", "4.2 lb", "mass of the part as it is today", nil},
	FieldVolume:      {"volume", "Volume", "16 in3", "volume of metal in the part", nil},
	FieldWall:        {"wall", "Wall", "3/8 in", "wall thickness, or depth of a beam", nil},
	FieldLength:      {"length", "Length", "12 in", "length over which the part grows", nil},
	FieldCase:        {"case", "Load case", "plate", "how the part is loaded", []string{string(Tie), string(Plate), string(Beam), string(FixedBeam)}},
	FieldKeep:        {"keep", "Keep", "all", "what the new part has to keep", []string{string(KeepAll), string(KeepShape), string(KeepStiffness), string(KeepStrength)}},
	FieldStrength:    {"strength", "Strength", "auto", "which strength decides", []string{string(Auto), string(Yield), string(Tensile), string(Fatigue)}},
	FieldService:     {"service", "Service range", "-40..250 F", "temperature in service, or coldest and hottest", nil},
	FieldMate:        {"mate", "Mate", "1045", "material of the part it is joined to", nil},
	FieldStress:      {"stress", "Stress", "5 ksi", "stress applied in the part as it is drawn", nil},
	FieldPlace:       {"place", "Place", "designated", "where in the casting the stress is, by the areas on the drawing", []string{string(Anywhere), string(Designated), string(Undesignated)}},
	FieldSafety:      {"safety", "Safety factor", "1.5", "factor by which the strength shall exceed the stress", nil},
	FieldCasting:     {"casting", "Casting factor", "1.25", "factor on the strength for what a casting can hide, as in 14 CFR 25.621", nil},
	FieldCycles:      {"cycles", "Load cycles", "1e7", "cycles of load in the life of the part", nil},
	FieldMean:        {"mean", "Mean stress", "2 ksi", "stress about which the stress swings; not said, it swings about zero", nil},
	FieldSurface:     {"surface", "Surface", "machined", "surface where it is stressed", []string{string(Specimen), string(Ground), string(MachinedSurface), string(HotRolled), string(Forged)}},
	FieldReliability: {"reliability", "Reliability %", "99", "share of parts that shall live so long", []string{"50", "90", "95", "99", "99.9", "99.99"}},
	FieldPressure:    {"pressure", "Pressure", "150 psi", "pressure inside the part, above that outside", nil},
	FieldBore:        {"bore", "Inside diameter", "4 in", "inside diameter of the round part that holds the pressure", nil},
	FieldFit:         {"fit", "Fit diameter", "1.5 in", "diameter of a bore and shaft between part and mate", nil},
	FieldDimension:   {"dimension", "Dimension", "4 in", "size whose tolerance is looked up", nil},
	FieldWith:        {"with", "With", "press-fit,threads", "what the part has or needs", nil},
	FieldPrice:       {"price", "Metal price", "a356-t6-pm=1.20/lb", "price of a mass of metal, ID=PRICE/UNIT", nil},
}

// Info describes the field.
func (f Field) Info() *FieldInfo { return &fieldInfos[f] }

func (f Field) String() string { return fieldInfos[f].Name }

// Dimension is what the field measures; NoDimension where it holds words or an id.
func (f Field) Dimension() units.Dimension {
	if f == FieldService {
		return units.Temperature
	}
	return limits[f].dim
}

// Fields lists all fields in form order.
func Fields() []Field {
	all := make([]Field, fieldCount)
	for i := range all {
		all[i] = Field(i)
	}
	return all
}

// text is the place of a field that holds one text; nil for the others.
func (p *Part) text(f Field) *string {
	switch f {
	case FieldMass:
		return &p.Mass
	case FieldVolume:
		return &p.Volume
	case FieldWall:
		return &p.Wall
	case FieldLength:
		return &p.Length
	case FieldCase:
		return (*string)(&p.Case)
	case FieldKeep:
		return (*string)(&p.Keep)
	case FieldStrength:
		return (*string)(&p.Strength)
	case FieldService:
		return &p.Service
	case FieldMate:
		return &p.Mate
	case FieldStress:
		return &p.Stress
	case FieldPlace:
		return (*string)(&p.Place)
	case FieldSafety:
		return &p.Safety
	case FieldCasting:
		return &p.Casting
	case FieldCycles:
		return &p.Cycles
	case FieldMean:
		return &p.Mean
	case FieldSurface:
		return (*string)(&p.Surface)
	case FieldReliability:
		return (*string)(&p.Reliability)
	case FieldPressure:
		return &p.Pressure
	case FieldBore:
		return &p.Bore
	case FieldFit:
		return &p.Fit
	case FieldDimension:
		return &p.Dimension
	}
	return nil
}

// Get is the text of a field as Set takes it; prices and facts are separated by commas.
func (p *Part) Get(f Field) string {
	if t := p.text(f); t != nil {
		return *t
	}
	if f == FieldWith {
		return strings.Join(p.With.IDs(), ", ")
	}
	var list []string
	for _, id := range priceIDs(p.Price) {
		list = append(list, id+"="+p.Price[id])
	}
	return strings.Join(list, ", ")
}

// Clone copies the part so that changing the copy leaves p as it is.
func (p Part) Clone() Part {
	prices := p.Price
	p.Price = nil
	for id, v := range prices {
		p.setPrice(id, v)
	}
	return p
}

// Over is the part with what o says in place of what p says; facts of both hold.
func (p Part) Over(o Part) Part {
	p = p.Clone()
	for _, f := range Fields() {
		if t := o.text(f); t != nil && *t != "" {
			*p.text(f) = *t
		}
	}
	p.With |= o.With
	for id, v := range o.Price {
		p.setPrice(id, v)
	}
	return p
}

func (p *Part) setPrice(id, text string) {
	if p.Price == nil {
		p.Price = map[string]string{}
	}
	p.Price[id] = text
}

// Summary is the part in one line: "4.2 lb; wall 3/8 in; plate in bending".
// It is empty where nothing is said.
func (p *Part) Summary() string {
	var s []string
	add := func(before, text string) {
		if text != "" {
			s = append(s, strings.TrimSpace(before+" "+text))
		}
	}
	add("", p.Mass)
	add("", p.Volume)
	add("wall", p.Wall)
	add("length", p.Length)
	add("", p.Case.String())
	if p.Strength != "" && p.Strength != Auto {
		add("by", string(p.Strength)+" strength")
	}
	add("service", p.Service)
	add("mate", p.Mate)
	add("stress", p.Stress)
	add("", map[Place]string{Designated: "in a designated area", Undesignated: "in an undesignated area"}[p.Place])
	add("safety factor", p.Safety)
	add("casting factor", p.Casting)
	add("cycles", p.Cycles)
	add("mean stress", p.Mean)
	add("surface", string(p.Surface))
	add("reliability %", string(p.Reliability))
	add("pressure", p.Pressure)
	add("inside diameter", p.Bore)
	add("fit", p.Fit)
	for _, id := range priceIDs(p.Price) {
		add(id+" at", p.Price[id])
	}
	return strings.Join(s, "; ")
}
