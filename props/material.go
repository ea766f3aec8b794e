// Package props is the model of what is known about a metal: materials, figures
// with basis, test conditions and source, and the properties they measure. It
// knows nothing of terminals.
package props

import (
	"iter"
	"slices"
	"strings"

	"alongside/units"
)

// Basis says what kind of statement a figure is.
type Basis uint8

// The bases. Minimum and Maximum are limits that a standard specifies,
// Design is a statistically based allowable, House comes from the shop's own
// test bars. Estimated is a minimum that a standard expects but does not
// guarantee, as SAE J1397 gives for steel bars.
const (
	Typical Basis = iota
	Minimum
	Maximum
	Design
	House
	Estimated
)

var basisNames = [...]string{"typical", "minimum", "maximum", "design", "house", "estimated"}

func (b Basis) String() string { return basisNames[b] }

// Phrase is the basis as it stands in a sentence.
func (b Basis) Phrase() string {
	switch b {
	case Minimum, Maximum:
		return "specified " + b.String()
	case Design:
		return "design allowable"
	case House:
		return "house value"
	case Estimated:
		return "estimated minimum"
	}
	return b.String()
}

// BasisNames lists the words for a basis in data files.
func BasisNames() []string { return basisNames[:] }

// ParseBasis reads a basis word as it stands in data files.
func ParseBasis(s string) (Basis, bool) {
	for i, n := range basisNames {
		if n == s {
			return Basis(i), true
		}
	}
	return 0, false
}

// Known says how a figure came into the catalog.
type Known uint8

// The degrees of knowing, least first. Memory means that a figure was
// remembered and still waits to be checked, Agreed that it was remembered and
// the same digits were read in another document than its source, Read that it
// was read on a page that reproduces the source, Checked that the shop has
// looked it up in its own copy of the source.
const (
	Memory Known = iota
	Agreed
	Read
	Checked
)

func (k Known) String() string { return [...]string{"memory", "agreed", "read", "checked"}[k] }

// Source is a published standard, handbook or page that figures rest on.
type Source struct {
	ID, Title, Publisher, Edition, Kind, Note string
	Successor                                 *Source // what took its place; nil while it is in force
	// File and Line tell where the record stands; empty in the compiled catalog.
	File string
	Line int
}

// SourceKinds are the kinds of source, best first.
var SourceKinds = []string{"standard", "association", "government", "handbook", "textbook", "house", "trade", "none"}

// Trade reports whether no standard or handbook stands behind the source, so
// that its figures are common practice only and are shown last.
func (s *Source) Trade() bool { return s.Kind == "trade" || s.Kind == "none" }

// Family is a group of alloys that share a base metal and a kind.
type Family struct {
	ID, Name string
	Words    []string  // what a user may type for it
	Base     string    // symbol of the element that its metals mostly consist of
	Group    string    // one word for several families: iron, steel; "" for none
	Bands    []Band    // where the figures of its metals lie
	None     []Absence // properties that do not exist for the whole family
	Stated   []Figure  // published for the family as a whole
}

// Among reports whether a list of family ids and groups names the family.
func (f *Family) Among(words []string) bool {
	return slices.Contains(words, f.ID) || f.Group != "" && slices.Contains(words, f.Group)
}

// The ratios that a band may bound besides a property.
const (
	TensilePerBrinell     = "tensile_per_brinell"     // of one test series
	CompressivePerTensile = "compressive_per_tensile" // of one test series
	DensityPerMixture     = "density_per_mixture"     // over the density that the elements make by themselves
)

// Band is where the figures of a family's metals lie. A figure outside is
// questioned, not refused.
type Band struct {
	Of    string         // a property's id, or one of the ratios
	Value units.Quantity // lower to upper end
	Load  float64        // of TensilePerBrinell: kgf of the test; 0 for tests that state none
	From  string         // the published tables that it was drawn round
}

// Absence says why a property does not exist for a metal.
type Absence struct {
	Property PropertyID
	Reason   string
}

// Explained is a written reason for keeping a figure that an audit rule
// questions.
type Explained struct {
	Rule     string
	Property PropertyID // NoProperty: any
	Why      string
}

// Alias is another designation of an alloy or material.
type Alias struct {
	System string // UNS, SAE, former, EN 1706, JIS …
	Name   string
	Near   bool // nearest equivalent, not identical limits
}

// Limit is the composition limit of one element in percent by mass.
type Limit struct {
	Element string
	Text    string // as printed: "6.5–7.5", "0.20 max", "remainder"
	Lo, Hi  float64
}

// Figure is one published value of a property, in the unit and digits of its
// source.
type Figure struct {
	Property PropertyID
	Value    units.Quantity
	Cond     *Conditions // never nil
	Agrees   *Source     // of a figure from memory: a document, read, with the same digits; nil for none
	*Block
}

// Known is the degree to which the figure is known.
func (f *Figure) Known() Known {
	switch {
	case f.Was != nil:
		return Checked
	case f.Block.Known == Memory && f.Agrees != nil:
		return Agreed
	}
	return f.Block.Known
}

// Block is what the figures of one source's statement share: basis, source,
// table, how they became known, and for which materials they hold.
type Block struct {
	Basis  Basis
	Known  Known
	Source *Source
	Table  string // locator in the source
	Where  string // kind of page on which the figures were read
	First  string // why the block is shown before others of the same basis
	// Was is the figure as the catalog has it, where this one is what the shop
	// found in its own copy of the source; nil otherwise.
	Was *Figure
	// Inherited is true where the alloy states the figures once for all the
	// materials that Classes, Tempers and Processes admit (empty: all).
	Inherited bool
	Family    bool // stated for the family; Inherited too
	Classes   []string
	Tempers   []string
	Processes []Process
	File      string // of the data file; empty in the compiled catalog
	Line      int
}

// admits reports whether the figures hold for the material.
func (b *Block) admits(m *Material) bool {
	return (len(b.Classes) == 0 || slices.Contains(b.Classes, m.Alloy.Class)) &&
		(len(b.Tempers) == 0 || slices.Contains(b.Tempers, m.Temper)) &&
		(len(b.Processes) == 0 || slices.Contains(b.Processes, m.Process))
}

// Composition is the chemistry of an alloy with its source.
type Composition struct {
	Source *Source
	Known  Known
	Where  string // kind of page on which the limits were read
	Limits []Limit
}

// Alloy is a designation with what holds for all its tempers and processes.
type Alloy struct {
	ID, Name, UNS, Note string
	Kind                string // what the trade calls it within its family: "aluminum bronze"; "" for none
	Family              *Family
	Class               string // the part of the family whose shared figures hold for it; "" for none
	Aliases             []Alias
	Composition         Composition
	None                []Absence
	Explained           []Explained
	Stated              []Figure
	File                string
	Line                int
}

// Is reports whether the alloy is of a family, by its id, or of a kind: an
// aluminum bronze is a bronze.
func (a *Alloy) Is(word string) bool {
	return a.Family.ID == word || a.Kind == word || strings.HasSuffix(a.Kind, " "+word)
}

// Material is one alloy–temper–process combination.
type Material struct {
	ID        string
	Alloy     *Alloy
	Temper    string
	Process   Process
	Aliases   []Alias
	None      []Absence
	Explained []Explained
	Stated    []Figure
	Line      int
}

// Name is the material in one line: "A356.0-T6 permanent mold".
func (m *Material) Name() string {
	name := m.Alloy.Name
	if m.Temper != "" {
		// A temper is joined to the number, a condition in words is not.
		if m.Temper == strings.ToUpper(m.Temper) {
			name += "-" + m.Temper
		} else {
			name += " " + m.Temper
		}
	}
	if m.Process != NoProcess {
		name += " " + m.Process.String()
	}
	return name
}

// Figures lists every figure of a property for the material, its own and the
// inherited ones, best first: at room temperature, then standards and handbooks
// before common practice, then those that the data put first with a reason,
// figures that the shop checked before figures read, these before figures that
// agree with another document and these before figures from memory alone, the
// material's own before inherited ones, then the order of the data file.
func (m *Material) Figures(p PropertyID) []*Figure {
	found := slices.Collect(m.Of(p))
	if found == nil && p.Info().Dimension == units.Rating {
		found = m.ratings(p)
	}
	slices.SortStableFunc(found, func(a, b *Figure) int { return a.Rank() - b.Rank() })
	return found
}

// ratings are those printed for the alloy in another temper or mold: casting
// characteristics go with the alloy, and hold for the sand, permanent mold and
// investment castings of it unless something else is printed.
func (m *Material) ratings(p PropertyID) []*Figure {
	poured := []Process{Sand, PermanentMold, Investment}
	if !slices.Contains(poured, m.Process) {
		return nil
	}
	var found []*Figure
	for i := range m.Alloy.Stated {
		f := &m.Alloy.Stated[i]
		if f.Property == p && slices.ContainsFunc(f.Processes, func(of Process) bool { return slices.Contains(poured, of) }) {
			found = append(found, f)
		}
	}
	return found
}

// All walks over every figure of the material, its own and then those it
// inherits, in the order of the data file.
func (m *Material) All() iter.Seq[*Figure] {
	return func(yield func(*Figure) bool) {
		for _, stated := range m.stated() {
			for i := range stated {
				if stated[i].admits(m) && !yield(&stated[i]) {
					return
				}
			}
		}
	}
}

// Of walks over every figure of a property in the order of All.
func (m *Material) Of(p PropertyID) iter.Seq[*Figure] {
	return func(yield func(*Figure) bool) {
		for _, stated := range m.stated() {
			for i := range stated {
				// The property first: most figures are of another one.
				if stated[i].Property == p && stated[i].admits(m) && !yield(&stated[i]) {
					return
				}
			}
		}
	}
}

// Remembered reports whether all figures on file for the material are from memory
// alone. The shop's own figures never are.
func (m *Material) Remembered() bool {
	for f := range m.All() {
		if f.Known() != Memory || f.Basis == House {
			return false
		}
	}
	return true
}

// stated are the lists of figures that may hold for the material.
func (m *Material) stated() [3][]Figure {
	return [3][]Figure{m.Stated, m.Alloy.Stated, m.Alloy.Family.Stated}
}

// Has reports whether any figure of the property is on file.
func (m *Material) Has(p PropertyID) bool { return len(m.Figures(p)) > 0 }

// Rank orders figures of one property and basis; the lower is shown first.
func (f *Figure) Rank() int {
	r := 0
	if f.First == "" {
		r += 8
	}
	if f.Source.Trade() {
		r += 16
	}
	r += int(Checked - f.Known())
	if !f.Cond.RoomTemperature() {
		r += 32
	}
	return r
}

// Absent returns why the property does not exist for the material, or "" when
// it merely has no figure on file.
func (m *Material) Absent(p PropertyID) string {
	for _, list := range [][]Absence{m.None, m.Alloy.None, m.Alloy.Family.None} {
		for _, a := range list {
			if a.Property == p {
				return a.Reason
			}
		}
	}
	return ""
}

// Bounds is the interval of the figure in its own unit: a range as published, a
// single typical figure to half of its last printed digit. A limit that a
// standard specifies is no rounded reading: it is the value itself.
func (f *Figure) Bounds() (lo, hi float64) {
	if f.Basis == Minimum || f.Basis == Maximum {
		return f.Value.Lo, f.Value.Hi
	}
	return f.Value.Interval()
}

// SI is the figure in the SI unit of its dimension: its interval (a range as
// published, a single typical figure to half of its last printed digit, a
// specified limit as it stands) and the middle.
func (f *Figure) SI() (lo, mid, hi float64) {
	lo, hi = f.Bounds()
	u := f.Value.Unit
	lo, hi = u.ToSI(lo), u.ToSI(hi)
	return min(lo, hi), (u.ToSI(f.Value.Lo) + u.ToSI(f.Value.Hi)) / 2, max(lo, hi)
}
