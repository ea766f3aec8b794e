package compare

import (
	"maps"
	"slices"

	"alongside/props"
	"alongside/units"
)

// DeltaMode is how a difference is shown.
type DeltaMode uint8

// The delta modes.
const (
	Percent DeltaMode = iota
	Amount
	Ratio
	NoDelta
	deltaModes
)

var deltaNames = [...]string{"percent", "amount", "ratio", "off"}

func (d DeltaMode) String() string { return deltaNames[d] }

// Next is the mode after d, going round.
func (d DeltaMode) Next() DeltaMode { return (d + 1) % deltaModes }

// ParseDelta reads the word that String prints.
func ParseDelta(s string) (DeltaMode, bool) {
	i := slices.Index(deltaNames[:], s)
	return DeltaMode(max(i, 0)), i >= 0
}

// Bench is what the user has set up: the pins, how they are compared and how
// that is shown. It is a value; Clone before changing a shared one.
type Bench struct {
	Pins     []*props.Material
	Baseline int // index in Pins
	Question
	// Only limits the rows; empty means every property that at least one pin
	// has a figure for.
	Only []props.PropertyID
	View
}

// View is how a comparison is shown; it changes no verdict.
type View struct {
	System    units.System
	RowUnits  map[props.PropertyID]units.Unit
	Delta     DeltaMode
	HideLevel bool // hide rows where every pin is level
	HideEmpty bool // hide rows where fewer than two pins have a figure
}

// NewBench is an empty bench with the default settings.
func NewBench() Bench { return Bench{Question: Question{Band: DefaultBand}} }

// Clone copies the bench so that changing the copy leaves b as it is.
func (b Bench) Clone() Bench {
	c := b
	c.Pins = slices.Clone(b.Pins)
	c.Only = slices.Clone(b.Only)
	c.RowUnits = copied(b.RowUnits)
	c.Senses = copied(b.Senses)
	return c
}

// copied is a copy of a map, an empty one for nil.
func copied[K comparable, V any](m map[K]V) map[K]V {
	c := make(map[K]V, len(m))
	maps.Copy(c, m)
	return c
}

// UnitOf is the unit a property's row is shown in.
func (v *View) UnitOf(p props.PropertyID) units.Unit {
	if u, ok := v.RowUnits[p]; ok {
		return u
	}
	return p.Info().Units[v.System]
}

// properties lists the rows: those asked for, or all that a pin has a figure
// for or that do not exist for a pin while another has them.
func (b *Bench) properties() []props.PropertyID {
	if len(b.Only) > 0 {
		return b.Only
	}
	var on [props.PropertyCount]bool
	for _, m := range b.Pins {
		for f := range m.All() {
			on[f.Property] = true
		}
	}
	var out []props.PropertyID
	for _, p := range props.Properties() {
		if on[p] {
			out = append(out, p)
		}
	}
	return out
}

// Pin adds a material at the end; one that is pinned already is not added
// again. It returns the index of the pin.
func (b *Bench) Pin(m *props.Material) int {
	if i := slices.Index(b.Pins, m); i >= 0 {
		return i
	}
	b.Pins = append(b.Pins, m)
	return len(b.Pins) - 1
}

// Remove takes pin i off the bench. When it was the baseline, the first pin
// becomes the baseline.
func (b *Bench) Remove(i int) {
	if i < 0 || i >= len(b.Pins) {
		return
	}
	b.Pins = slices.Delete(b.Pins, i, i+1)
	switch {
	case b.Baseline == i:
		b.Baseline = 0
	case b.Baseline > i:
		b.Baseline--
	}
}

// Move shifts pin i by some places, -1 or 1, and returns where it is then. The baseline
// stays the same material.
func (b *Bench) Move(i, by int) int {
	j := i + by
	if i < 0 || i >= len(b.Pins) || j < 0 || j >= len(b.Pins) {
		return i
	}
	b.Pins[i], b.Pins[j] = b.Pins[j], b.Pins[i]
	switch b.Baseline {
	case i:
		b.Baseline = j
	case j:
		b.Baseline = i
	}
	return j
}

// Replace puts another material in the place of pin i. It returns false when
// that material is on the bench already.
func (b *Bench) Replace(i int, m *props.Material) bool {
	if j := slices.Index(b.Pins, m); j >= 0 && j != i {
		return false
	}
	b.Pins[i] = m
	return true
}
