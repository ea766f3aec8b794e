package part

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/cost"
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
// the catalog; its words stand in Part, only known ones. A nil field was not given.
type Given struct {
	Part                                    Part
	Mass, Volume, Wall, Length, Stress, Fit *units.Quantity
	Pressure, Inside                        *units.Quantity // inside a round part, and its inside diameter
	Safety, Casting, Cycles, Mean           *units.Quantity // Mean is a stress, the others plain numbers
	Interference, Hub, Engaged, Friction    *units.Quantity // of a press fit
	Quality, Test                           *units.Quantity // factor and test pressure of the code
	Engagement, Bolt, Clamp, Head, Hole     *units.Quantity // of a thread and a bolt
	Thread                                  *Thread
	Dimension                               *units.Quantity // whose tolerance is looked up
	Medium                                  Medium
	With                                    Facts
	Coldest, Hottest                        *float64        // °C in service
	Hours                                   *units.Quantity // at the hottest
	Case                                    Case
	Keep                                    Keep     // never empty
	Strength                                Strength // never empty
	Mate                                    *props.Material
	Quantity                                *units.Quantity       // of pieces
	Rates                                   []*cost.Record        // of the shop
	Price                                   map[string]cost.Price // by material id
}

// Read turns the part into quantities, with the mate and the prices looked up
// in the catalog. The error joins an *Error for each field that is not
// understood; what is returned then lacks those fields only.
func (p Part) Read(c *catalog.Catalog) (Given, error) {
	g := Given{Part: p.Clone(), Keep: KeepAll, Strength: Auto, With: p.With}
	if c != nil {
		g.Rates = c.Rates
	}
	var errs []error
	for _, f := range Fields() {
		if t := p.text(f); t != nil && *t != "" {
			if err := g.read(c, f, *t); err != nil {
				errs = append(errs, err)
				if f.Info().Words != nil {
					*g.Part.text(f) = ""
				}
			}
		}
	}
	for _, id := range priceIDs(p.Price) {
		price, err := parsePrice(p.Price[id])
		if err != nil {
			errs = append(errs, err)
			continue
		}
		if g.Price == nil {
			g.Price = map[string]cost.Price{}
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
	typed = strings.Join(strings.Fields(strings.ToValidUTF8(typed, "\ufffd")), " ")
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
	case FieldThread:
		t, err := ReadThread(typed)
		if err == nil {
			g.Thread = &t
		}
		return err
	case FieldMedium:
		m, err := ReadMedium(typed)
		g.Medium = m
		return err
	}
	q, err := readSize(f, typed)
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

// readSize reads a quantity that must be above zero: one value or a range.
func readSize(f Field, typed string) (*units.Quantity, error) {
	info := f.Info()
	q, err := units.ParseAs(number(f, typed), info.dim, units.NoUnit)
	if err != nil {
		return nil, &Error{Field: f, Typed: typed, Err: err}
	}
	if q.Qual != units.Exact && q.Qual != units.Approx {
		return nil, mistake(f, typed, "a limit is not a size")
	}
	if (f == FieldDimension || f == FieldQuantity) && q.IsRange() {
		return nil, mistake(f, typed, "one size is needed")
	}
	if q.Lo <= 0 {
		return nil, mistake(f, typed, "must be above zero")
	}
	if lo, hi := q.Unit.ToSI(q.Lo), q.Unit.ToSI(q.Hi); lo < info.lo || hi > info.hi {
		return nil, mistake(f, typed, "no casting is of that size")
	}
	return &q, nil
}

// periods are what pieces may be counted by.
var periods = []string{" a year", " per year", "/year", " a month", " per month", "/month", " per order", " an order", " in all", " total"}

// number is the text of a field without the words that may stand behind a
// quantity of pieces.
func number(f Field, typed string) string {
	if f != FieldQuantity {
		return typed
	}
	for _, words := range [][]string{periods, {" pieces", " pcs", " parts", " castings"}} {
		for _, w := range words {
			if rest, ok := strings.CutSuffix(strings.ToLower(typed), w); ok {
				typed = rest
				break
			}
		}
	}
	return typed
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
