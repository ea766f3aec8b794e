package part

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/units"
)

// Error says what is wrong with what was typed for a field, and what to type
// instead.
type Error struct {
	Field   Field
	Typed   string
	Problem string // "must be above zero"
	Remedy  string // "type a thickness such as 3/8 in"
	Err     error  // of reading the quantity or the designation; may be nil
}

// Error is the message in one line: `wall "-3 mm": must be above zero; type
// something like 3/8 in`.
func (e *Error) Error() string {
	if e.Err != nil {
		return e.Field.String() + " " + e.Err.Error()
	}
	return fmt.Sprintf("%s %q: %s; %s", e.Field, e.Typed, e.Problem, e.Remedy)
}

func (e *Error) Unwrap() error { return e.Err }

func mistake(f Field, typed, problem string) *Error {
	return &Error{Field: f, Typed: typed, Problem: problem, Remedy: "type something like " + f.Info().Example}
}

// Given is a part read: quantities as typed, temperatures in °C, materials of
// the catalog. A nil field was not given.
type Given struct {
	Part                                    Part
	Mass, Volume, Wall, Length, Stress, Fit *units.Quantity
	Safety, Casting, Cycles, Mean           *units.Quantity // Mean is a stress, the others plain numbers
	Place                                   Place
	Surface                                 Surface
	Reliability                             Reliability
	Pressure, Bore                          *units.Quantity // inside a round part, and its inside diameter
	Dimension                               *units.Quantity // whose tolerance is looked up
	With                                    Facts
	Coldest, Hottest                        *float64 // °C in service
	Case                                    Case
	Keep                                    Keep     // never empty
	Strength                                Strength // never empty
	Mate                                    *props.Material
	Price                                   map[string]Price // by material id
}

// Read turns the part into quantities, with the mate and the prices looked up
// in the catalog. The error joins an *Error for each field that is not
// understood; what is returned then lacks those fields only.
func (p Part) Read(c *catalog.Catalog) (Given, error) {
	g := Given{Part: p.Clone(), Keep: KeepAll, Strength: Auto, With: p.With}
	var errs []error
	for _, f := range Fields() {
		if t := p.text(f); t != nil && *t != "" {
			if err := g.read(c, f, *t); err != nil {
				errs = append(errs, err)
			}
		}
	}
	for _, id := range priceIDs(p.Price) {
		price, err := ParsePrice(p.Price[id])
		if err != nil {
			errs = append(errs, err)
			continue
		}
		if g.Price == nil {
			g.Price = map[string]Price{}
		}
		g.Price[id] = price
	}
	return g, errors.Join(errs...)
}

// Set puts what the user typed into a field. An empty text clears it. A price
// is typed as ID=PRICE, ID= clears that one. The catalog is asked for
// materials. On an *Error the part stays as it was.
func (p *Part) Set(c *catalog.Catalog, f Field, typed string) error {
	if f >= fieldCount {
		return errors.New("no such field of a part")
	}
	typed = strings.Join(strings.Fields(typed), " ")
	switch f {
	case FieldPrice:
		return p.readPrice(c, typed)
	case FieldWith:
		facts, err := ParseFacts(typed)
		if err != nil {
			return &Error{Field: f, Typed: typed, Err: err}
		}
		p.With = facts
		return nil
	}
	if typed != "" {
		var g Given
		if info := f.Info(); info.Words != nil {
			typed = strings.ToLower(typed)
		}
		if err := g.read(c, f, typed); err != nil {
			return err
		}
		if f == FieldMate {
			typed = g.Mate.ID
		}
	}
	*p.text(f) = typed
	return nil
}

// Size is what was read for a field that holds one quantity; nil when nothing
// was typed, and for the other fields.
func (g *Given) Size(f Field) *units.Quantity {
	if at := g.size(f); at != nil {
		return *at
	}
	return nil
}

func (g *Given) size(f Field) **units.Quantity {
	switch f {
	case FieldMass:
		return &g.Mass
	case FieldVolume:
		return &g.Volume
	case FieldWall:
		return &g.Wall
	case FieldLength:
		return &g.Length
	case FieldStress:
		return &g.Stress
	case FieldSafety:
		return &g.Safety
	case FieldCasting:
		return &g.Casting
	case FieldCycles:
		return &g.Cycles
	case FieldMean:
		return &g.Mean
	case FieldPressure:
		return &g.Pressure
	case FieldBore:
		return &g.Bore
	case FieldFit:
		return &g.Fit
	case FieldDimension:
		return &g.Dimension
	}
	return nil
}

// read understands one field that holds a text.
func (g *Given) read(c *catalog.Catalog, f Field, typed string) error {
	if words := f.Info().Words; words != nil {
		if !slices.Contains(words, typed) {
			return &Error{Field: f, Typed: typed, Problem: "not understood", Remedy: "use one of: " + strings.Join(words, ", ")}
		}
		switch f {
		case FieldCase:
			g.Case = Case(typed)
		case FieldKeep:
			g.Keep = Keep(typed)
		case FieldStrength:
			g.Strength = Strength(typed)
		case FieldPlace:
			g.Place = Place(typed)
		case FieldSurface:
			g.Surface = Surface(typed)
		case FieldReliability:
			g.Reliability = Reliability(typed)
		}
		return nil
	}
	switch f {
	case FieldMate:
		m, err := mate(c, typed)
		g.Mate = m
		return err
	case FieldService:
		return g.service(typed)
	}
	q, err := size(f, typed)
	if err != nil {
		return err
	}
	if at := g.size(f); at != nil {
		*at = q
	}
	return nil
}

func material(c *catalog.Catalog, f Field, typed string) (*props.Material, error) {
	if c == nil {
		return nil, mistake(f, typed, "there is no catalog to look it up in")
	}
	m, err := c.Resolve(typed)
	if err != nil {
		return nil, &Error{Field: f, Typed: typed, Err: err}
	}
	return m, nil
}

// mate looks up a mating material. Where only the alloy is named and all that
// it fits grow alike, the first of them stands for all.
func mate(c *catalog.Catalog, typed string) (*props.Material, error) {
	m, err := material(c, FieldMate, typed)
	var several *catalog.NotFound
	if !errors.As(err, &several) || !several.Several {
		return m, err
	}
	first := several.Nearest[0]
	for _, o := range several.Nearest[1:] {
		if o.Alloy != first.Alloy || !slices.Equal(o.Figures(props.ThermalExpansion), first.Figures(props.ThermalExpansion)) {
			return nil, err
		}
	}
	return first, nil
}

// limits are the sizes, in SI, between which a part can be: they stop slips of
// the unit and keep every result a finite number.
var limits = [...]struct {
	dim    units.Dimension
	lo, hi float64
}{
	FieldMass:      {units.Mass, 1e-9, 1e9},
	FieldVolume:    {units.Volume, 1e-13, 1e6},
	FieldWall:      {units.Length, 1e-7, 1e4},
	FieldLength:    {units.Length, 1e-7, 1e6},
	FieldFit:       {units.Length, 1e-7, 1e4},
	FieldStress:    {units.Stress, 1, 1e12},
	FieldSafety:    {units.Ratio, 1, 100},
	FieldCasting:   {units.Ratio, 1, 10},
	FieldCycles:    {units.Ratio, 1, 1e12},
	FieldMean:      {units.Stress, 1, 1e12},
	FieldPressure:  {units.Stress, 1, 1e12},
	FieldBore:      {units.Length, 1e-7, 1e4},
	FieldDimension: {units.Length, 1e-7, 1e4},
}

// size reads a quantity that must be above zero: one value or a range.
func size(f Field, typed string) (*units.Quantity, error) {
	limit := limits[f]
	q, err := units.ParseAs(typed, limit.dim, units.NoUnit)
	if err != nil {
		return nil, &Error{Field: f, Typed: typed, Err: err}
	}
	if q.Qual != units.Exact && q.Qual != units.Approx {
		return nil, mistake(f, typed, "a limit is not a size")
	}
	if f == FieldDimension && q.IsRange() {
		return nil, mistake(f, typed, "one size is needed")
	}
	if q.Lo <= 0 {
		return nil, mistake(f, typed, "must be above zero")
	}
	if lo, hi := q.Unit.ToSI(q.Lo), q.Unit.ToSI(q.Hi); lo < limit.lo || hi > limit.hi {
		return nil, mistake(f, typed, "no casting is of that size")
	}
	return &q, nil
}

// service reads the temperatures in service. A single one below freezing is
// meant as the coldest, any other as the hottest.
func (g *Given) service(typed string) error {
	q, err := Temperatures(typed, units.NoUnit)
	if err != nil {
		return &Error{Field: FieldService, Typed: typed, Err: err}
	}
	lo, hi := q[0], q[1]
	switch {
	case lo < hi:
		g.Coldest, g.Hottest = &lo, &hi
	case lo < 0:
		g.Coldest = &lo
	default:
		g.Hottest = &hi
	}
	return nil
}

// Range is the service range in °C; nil where both ends are not known.
func (g *Given) Range() *[2]float64 {
	if g.Coldest == nil || g.Hottest == nil {
		return nil
	}
	return &[2]float64{*g.Coldest, *g.Hottest}
}
