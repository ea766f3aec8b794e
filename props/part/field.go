package part

import "alongside/units"

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
	FieldMedium
	FieldHours
	FieldMate
	FieldStress
	FieldPressure
	FieldInside
	FieldQuality
	FieldTest
	FieldFit
	FieldRole
	FieldInterference
	FieldHub
	FieldEngaged
	FieldFriction
	FieldThread
	FieldEngagement
	FieldBolt
	FieldClamp
	FieldHead
	FieldHole
	FieldPlace
	FieldSafety
	FieldCasting
	FieldCycles
	FieldMean
	FieldSurface
	FieldReliability
	FieldQuantity
	FieldPrice
	FieldDimension
	FieldWith
	fieldCount
)

// FieldInfo describes a field once for files, forms, flags and sentences.
type FieldInfo struct {
	Name    string   // as in flags and files
	Label   string   // as on a form
	Example string   // something that Set takes
	Help    string   // what it is, in one line
	Asked   string   // what it is called to the customer; empty where the swap has no better word
	Topic   string   // heading on a form, over this field and those that follow; empty: goes on
	Words   []string // the words that Set takes; nil where it takes a quantity or an id

	said   string                                          // the phrases in a sentence that name it, its size said beside
	before string                                          // the word before it in the summary
	text   func(*Part) *string                             // of a field that holds no size
	size   func(*Part, *Given) (*string, **units.Quantity) // of one that does
	// dim is what it measures; lo and hi are the sizes, in SI, between which a part
	// can be: they stop slips of the unit and keep every result a finite number.
	dim    units.Dimension
	lo, hi float64
}

var fieldInfos = [fieldCount]FieldInfo{
	FieldMass: {Name: "mass", Label: "Mass", Example: "4.2 lb", Help: "mass of the part as it is today",
		Asked: "its weight", said: "mass|weight|weighs|weigh|weighing|part weight|part mass",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Mass, &g.Mass }, dim: units.Mass, lo: 1e-9, hi: 1e9},
	FieldVolume: {Name: "volume", Label: "Volume", Example: "16 in3", Help: "volume of metal in the part",
		said: "volume|metal volume",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Volume, &g.Volume }, dim: units.Volume, lo: 1e-13, hi: 1e6},
	FieldWall: {Name: "wall", Label: "Wall", Example: "3/8 in", Help: "wall thickness, or depth of a beam",
		Asked: "the wall thickness", said: "wall|walls|wall thickness|section thickness|thick|thickness|depth", before: "wall",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Wall, &g.Wall }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldLength: {Name: "length", Label: "Length", Example: "12 in", Help: "length over which the part grows",
		Asked: "the length over which it grows", said: "long|length|overall length|span", before: "length",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Length, &g.Length }, dim: units.Length, lo: 1e-7, hi: 1e6},
	FieldCase: {Name: "case", Label: "Load case", Example: "plate", Help: "how the part is loaded",
		Asked: "how it is loaded: pulled, or bent as a plate or a beam",
		Words: []string{string(Tie), string(Plate), string(Beam), string(FixedBeam)},
		text:  func(p *Part) *string { return (*string)(&p.Case) }},
	FieldKeep: {Name: "keep", Label: "Keep", Example: "all", Help: "what the new part has to keep",
		Words: []string{string(KeepAll), string(KeepShape), string(KeepStiffness), string(KeepStrength)},
		text:  func(p *Part) *string { return (*string)(&p.Keep) }},
	FieldStrength: {Name: "strength", Label: "Strength", Example: "auto", Help: "which strength decides",
		Words: []string{string(Auto), string(Yield), string(Tensile), string(Fatigue)},
		text:  func(p *Part) *string { return (*string)(&p.Strength) }},
	FieldService: {Name: "service", Label: "Service range", Example: "-40..250 F", Help: "temperature in service, or coldest and hottest",
		Asked: "the coldest and the hottest it gets", before: "service",
		said: "service|in service|service range|service temperature|temperature|operating temperature|working temperature|" +
			"runs at|runs between|runs from|operates at|operates between|sees",
		text: func(p *Part) *string { return &p.Service }, dim: units.Temperature},
	FieldMedium: {Name: "medium", Label: "Medium", Example: "coolant, 230 F", Help: "what fills or surrounds the part, with its pH and temperature",
		Asked: "what fluid or air it stands in, its pH and its temperature", before: "in",
		text: func(p *Part) *string { return &p.Medium }},
	FieldHours: {Name: "hours", Label: "Hours hot", Example: "1000 h", Help: "time at the hottest in the life of the part, or in one heat where it comes back cold",
		Asked: "how many hours it is at its hottest", before: "hot for",
		said: "hours hot|hours at heat|at heat|hours at temperature|at temperature|time at temperature|time at heat",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Hours, &g.Hours }, dim: units.Time, lo: 36, hi: 3.6e9},
	FieldMate: {Name: "mate", Label: "Mate", Example: "1045", Help: "material of the part it is joined to",
		Asked: "what it is joined to", before: "mate",
		text: func(p *Part) *string { return &p.Mate }},
	FieldStress: {Name: "stress", Label: "Stress", Example: "5 ksi", Help: "stress applied in the part as it is drawn",
		Asked: "the stress in it", said: "stress|applied stress|working stress|loaded to|loaded at|stressed to|stressed at", before: "stress",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Stress, &g.Stress }, dim: units.Stress, lo: 1, hi: 1e12},
	FieldPressure: {Topic: "Pressure", Name: "pressure", Label: "Pressure", Example: "150 psi", Help: "pressure inside the part, above that outside",
		Asked: "the pressure inside", said: "pressure|internal pressure|inside pressure", before: "pressure",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Pressure, &g.Pressure }, dim: units.Stress, lo: 1, hi: 1e12},
	FieldInside: {Name: "inside", Label: "Inside diameter", Example: "4 in", Help: "inside diameter of the round part that holds the pressure, or of a hollow shaft in a press fit",
		Asked: "the inside diameter", said: "inside diameter|inner diameter|pipe bore", before: "inside diameter",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Inside, &g.Inside }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldQuality: {Name: "quality", Label: "Quality factor", Example: "0.80", Help: "joint or casting quality factor that the code gives the part that holds the pressure",
		Asked: "the quality factor of the code", said: "quality factor|joint efficiency|casting quality factor", before: "quality factor",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Quality, &g.Quality }, dim: units.Ratio, lo: 0.05, hi: 1},
	FieldTest: {Name: "test", Label: "Test pressure", Example: "225 psi", Help: "pressure at which the part is tested",
		said: "test pressure|tested at|hydrostatic test|hydro test", before: "tested at",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Test, &g.Test }, dim: units.Stress, lo: 1, hi: 1e12},
	FieldFit: {Topic: "Fit and press fit", Name: "fit", Label: "Fit diameter", Example: "1.5 in", Help: "diameter of a bore and shaft between part and mate",
		Asked: "the diameter of its bore or shaft", said: "bore|fit|fit diameter|bore diameter|shaft|shaft diameter", before: "fit",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Fit, &g.Fit }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldRole: {Name: "role", Label: "Side of fit", Example: "bore", Help: "which side of the fit the part is: bore around the mate, or shaft in it",
		Words: []string{string(Bore), string(Shaft)},
		text:  func(p *Part) *string { return (*string)(&p.Role) }},
	FieldInterference: {Name: "interference", Label: "Interference", Example: "0.002 in", Help: "by how much the shaft of a press fit is larger than its bore, on the diameter",
		Asked: "the interference of the press fit", said: "interference|diametral interference", before: "interference",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Interference, &g.Interference }, dim: units.Length, lo: 1e-9, hi: 1},
	FieldHub: {Name: "hub", Label: "Hub diameter", Example: "3 in", Help: "outside diameter of the metal around a press fit",
		Asked: "the outside diameter around the press fit", said: "hub|hub diameter|boss|boss diameter", before: "hub",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Hub, &g.Hub }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldEngaged: {Name: "engaged", Label: "Length of fit", Example: "2 in", Help: "length over which a press fit grips",
		Asked: "the length of the press fit", said: "engaged|engaged length|length of fit|fit length", before: "length of fit",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Engaged, &g.Engaged }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldFriction: {Name: "friction", Label: "Friction", Example: "0.12", Help: "coefficient of friction between part and mate",
		Asked: "the friction in the press fit", said: "friction|coefficient of friction|friction coefficient", before: "friction",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Friction, &g.Friction }, dim: units.Ratio, lo: 1e-3, hi: 10},
	FieldThread: {Topic: "Threads and bolts", Name: "thread", Label: "Thread", Example: "1/2-13 UNC", Help: "thread tapped in the part: size and threads per inch, or M with diameter and pitch",
		Asked: "the thread tapped in it", before: "thread",
		text: func(p *Part) *string { return &p.Thread }},
	FieldEngagement: {Name: "engagement", Label: "Engagement", Example: "5/8 in", Help: "length of full thread that the bolt has in the part today",
		Asked: "how deep the bolt is screwed in", said: "engagement|thread engagement|length of engagement|thread depth|tapped depth", before: "engagement",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Engagement, &g.Engagement }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldBolt: {Name: "bolt", Label: "Bolt strength", Example: "120 ksi", Help: "tensile strength of the bolt",
		Asked: "the strength of the bolt", said: "bolt|bolt strength|screw strength|bolt tensile strength", before: "bolt",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Bolt, &g.Bolt }, dim: units.Stress, lo: 1, hi: 1e12},
	FieldClamp: {Name: "clamp", Label: "Clamp load", Example: "9000 lbf", Help: "load with which a bolt clamps the part",
		Asked: "the load of the bolt", said: "clamp load|clamping load|preload|bolt load", before: "clamp load",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Clamp, &g.Clamp }, dim: units.Force, lo: 1e-3, hi: 1e12},
	FieldHead: {Name: "head", Label: "Head diameter", Example: "3/4 in", Help: "outside diameter of the bolt head or washer that bears on the part",
		Asked: "the diameter of the bolt head or washer", said: "head diameter|bolt head|washer diameter|washer", before: "head",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Head, &g.Head }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldHole: {Name: "hole", Label: "Bolt hole", Example: "17/32 in", Help: "diameter of the hole under the bolt head",
		Asked: "the diameter of the bolt hole", said: "bolt hole|clearance hole|hole diameter", before: "bolt hole",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Hole, &g.Hole }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldPlace: {Topic: "Strength in the casting, safety", Name: "place", Label: "Place", Example: "designated", Help: "where in the casting the stress is, by the areas on the drawing",
		Words: []string{string(Anywhere), string(Designated), string(Undesignated)},
		text:  func(p *Part) *string { return (*string)(&p.Place) }},
	FieldSafety: {Name: "safety", Label: "Safety factor", Example: "1.5", Help: "factor by which the strength shall exceed the stress",
		said: "safety factor|safety|factor of safety|design factor", before: "safety factor",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Safety, &g.Safety }, dim: units.Ratio, lo: 1, hi: 100},
	FieldCasting: {Name: "casting", Label: "Casting factor", Example: "1.25", Help: "factor on the strength for what a casting can hide, as in 14 CFR 25.621",
		said: "casting factor", before: "casting factor",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Casting, &g.Casting }, dim: units.Ratio, lo: 1, hi: 10},
	FieldCycles: {Topic: "Life", Name: "cycles", Label: "Load cycles", Example: "1e7", Help: "cycles of load in the life of the part",
		Asked: "how often it is loaded", said: "cycles|cycles of load|life in cycles", before: "cycles",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Cycles, &g.Cycles }, dim: units.Ratio, lo: 1, hi: 1e12},
	FieldMean: {Name: "mean", Label: "Mean stress", Example: "2 ksi", Help: "stress about which the stress swings; not said, it swings about zero",
		said: "mean stress|steady stress|mean load stress", before: "mean stress",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Mean, &g.Mean }, dim: units.Stress, lo: 1, hi: 1e12},
	FieldSurface: {Name: "surface", Label: "Surface", Example: "machined", Help: "surface where it is stressed",
		Words: []string{string(Specimen), string(Ground), string(MachinedSurface), string(HotRolled), string(Forged)}, before: "surface",
		text: func(p *Part) *string { return (*string)(&p.Surface) }},
	FieldReliability: {Name: "reliability", Label: "Reliability %", Example: "99", Help: "share of parts that shall live so long",
		Words: []string{"50", "90", "95", "99", "99.9", "99.99"}, before: "reliability %",
		text: func(p *Part) *string { return (*string)(&p.Reliability) }},
	FieldQuantity: {Topic: "Order", Name: "quantity", Label: "Quantity", Example: "2000 a year", Help: "pieces over which a tool is paid for: of an order, a year, or in all",
		Asked: "how many, a year or in an order", said: "quantity|buy|buys|order of|annual quantity|order quantity|lot size|annual volume|pieces|pieces a year|pieces per year|parts a year|parts per year|castings a year|castings per year|a year|per year", before: "quantity",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Quantity, &g.Quantity }, dim: units.Ratio, lo: 1, hi: 1e7},
	FieldPrice: {Topic: "Metal prices", Name: "price", Label: "Metal price", Example: "a356-t6-pm=1.20/lb", Help: "price of a mass of metal, ID=PRICE/UNIT"},
	FieldDimension: {Name: "dimension", Label: "Dimension", Example: "4 in", Help: "size whose tolerance is looked up",
		size: func(p *Part, g *Given) (*string, **units.Quantity) { return &p.Dimension, &g.Dimension }, dim: units.Length, lo: 1e-7, hi: 1e4},
	FieldWith: {Name: "with", Label: "With", Example: "press-fit,threads", Help: "what the part has or needs"},
}

// Info describes the field.
func (f Field) Info() *FieldInfo { return &fieldInfos[f] }

func (f Field) String() string { return fieldInfos[f].Name }

// Dimension is what the field measures; NoDimension where it holds words or an id.
func (f Field) Dimension() units.Dimension { return fieldInfos[f].dim }

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
	switch info := f.Info(); {
	case info.size != nil:
		text, _ := info.size(p, &Given{})
		return text
	case info.text != nil:
		return info.text(p)
	}
	return nil
}

// size is the place of a field that holds one quantity; nil for the others.
func (g *Given) size(f Field) **units.Quantity {
	if at := f.Info().size; at != nil {
		_, q := at(&g.Part, g)
		return q
	}
	return nil
}
