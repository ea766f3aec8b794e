// Package part is what the customer says of the part: sizes, loads, temperatures,
// what it is joined to and stands in, facts and prices. Every field is a row of one
// table, which flags, forms, sentences, call sheets and JSON follow.
package part

import "strings"

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

// Role is the side of a fit that the part is.
type Role string

// The sides of a fit. A part that does not say is a bore.
const (
	Bore  Role = "bore"  // around the mate
	Shaft Role = "shaft" // in the mate
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
	Mass         string      `toml:"mass,omitempty" json:"mass,omitempty"`     // of the part as it is today
	Volume       string      `toml:"volume,omitempty" json:"volume,omitempty"` // of metal in the part
	Wall         string      `toml:"wall,omitempty" json:"wall,omitempty"`     // thickness, or depth of a beam
	Length       string      `toml:"length,omitempty" json:"length,omitempty"` // over which it grows
	Case         Case        `toml:"case,omitempty" json:"case,omitempty"`
	Keep         Keep        `toml:"keep,omitempty" json:"keep,omitempty"`
	Strength     Strength    `toml:"strength,omitempty" json:"strength,omitempty"`
	Service      string      `toml:"service,omitempty" json:"service,omitempty"` // one temperature, or the coldest and the hottest
	Hours        string      `toml:"hours,omitempty" json:"hours,omitempty"`     // at the hottest
	Mate         string      `toml:"mate,omitempty" json:"mate,omitempty"`       // id of the material it is joined to
	Stress       string      `toml:"stress,omitempty" json:"stress,omitempty"`   // applied, in the part as it is today
	Place        Place       `toml:"place,omitempty" json:"place,omitempty"`     // where in the casting the stress is
	Safety       string      `toml:"safety,omitempty" json:"safety,omitempty"`   // safety factor, a plain number
	Casting      string      `toml:"casting,omitempty" json:"casting,omitempty"` // casting factor, a plain number
	Cycles       string      `toml:"cycles,omitempty" json:"cycles,omitempty"`   // of load in the life of the part
	Mean         string      `toml:"mean,omitempty" json:"mean,omitempty"`       // stress about which the stress swings
	Surface      Surface     `toml:"surface,omitempty" json:"surface,omitempty"`
	Reliability  Reliability `toml:"reliability,omitempty" json:"reliability,omitempty"`
	Pressure     string      `toml:"pressure,omitempty" json:"pressure,omitempty"` // inside the part, above that outside
	Inside       string      `toml:"inside,omitempty" json:"inside,omitempty"`     // inside diameter of the round part
	Quality      string      `toml:"quality,omitempty" json:"quality,omitempty"`   // factor of the code, a plain number
	Test         string      `toml:"test,omitempty" json:"test,omitempty"`         // pressure of the test
	Fit          string      `toml:"fit,omitempty" json:"fit,omitempty"`           // diameter of bore and shaft
	Role         Role        `toml:"role,omitempty" json:"role,omitempty"`
	Interference string      `toml:"interference,omitempty" json:"interference,omitempty"` // of a press fit, on the diameter
	Hub          string      `toml:"hub,omitempty" json:"hub,omitempty"`                   // outside diameter around a press fit
	Engaged      string      `toml:"engaged,omitempty" json:"engaged,omitempty"`           // length of a press fit
	Friction     string      `toml:"friction,omitempty" json:"friction,omitempty"`         // between part and mate
	Thread       string      `toml:"thread,omitempty" json:"thread,omitempty"`             // designation of a tapped thread
	Engagement   string      `toml:"engagement,omitempty" json:"engagement,omitempty"`     // of the bolt in that thread
	Bolt         string      `toml:"bolt,omitempty" json:"bolt,omitempty"`                 // tensile strength of the bolt
	Clamp        string      `toml:"clamp,omitempty" json:"clamp,omitempty"`               // load of a bolt that clamps the part
	Head         string      `toml:"head,omitempty" json:"head,omitempty"`                 // diameter of the bolt head or washer
	Hole         string      `toml:"hole,omitempty" json:"hole,omitempty"`                 // diameter of the hole under it
	Medium       string      `toml:"medium,omitempty" json:"medium,omitempty"`             // what fills or surrounds the part
	Dimension    string      `toml:"dimension,omitempty" json:"dimension,omitempty"`       // whose tolerance is looked up
	With         Facts       `toml:"with,omitzero" json:"with,omitempty"`                  // what the part has and goes through
	Quantity     string      `toml:"quantity,omitempty" json:"quantity,omitempty"`         // of pieces: "2000 a year"
	// Price is the price of a mass of metal by material id: "1.20 USD/lb".
	Price map[string]string `toml:"price,omitempty" json:"price,omitempty"`
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
	for _, f := range Fields() {
		switch f {
		case FieldCase:
			add("", p.Case.String())
		case FieldStrength:
			if p.Strength != "" && p.Strength != Auto {
				add("by", string(p.Strength)+" strength")
			}
		case FieldPrice:
			for _, id := range priceIDs(p.Price) {
				add(id+" at", p.Price[id])
			}
		case FieldRole:
			if p.Role != "" {
				add("as the", string(p.Role))
			}
		case FieldPlace:
			add("", map[Place]string{Designated: "in a designated area", Undesignated: "in an undesignated area"}[p.Place])
		case FieldKeep, FieldDimension, FieldWith:
		default:
			add(f.Info().before, *p.text(f))
		}
	}
	return strings.Join(s, "; ")
}
