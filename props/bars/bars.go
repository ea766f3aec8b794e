// Package bars reads a shop's own test bars, one bar a row, and says what they
// show: mean, spread, least, whether they look normal, and the value that the
// next bars will be above, as one-sided tolerance bounds. Bars tell of the bars,
// not of the casting. Nothing is dropped; what looks like an outlier is named.
package bars

import (
	"fmt"
	"math"
	"path"
	"slices"
	"strings"

	"alongside/props"
	"alongside/units"
)

// Bar is one value of one test bar.
type Bar struct {
	Line       int // in the file
	Heat, Date string
	Value      float64 // in the unit of the set
}

// Set is the bars of one material for one property under the same conditions.
type Set struct {
	Material   *props.Material
	Property   props.PropertyID
	Conditions props.Conditions
	Unit       units.Unit
	Place      int8  // of the last digit of the value written most finely
	Bars       []Bar // in the order of the file
}

// values are the bars in rising order.
func (s *Set) values() []float64 {
	out := make([]float64, len(s.Bars))
	for i, b := range s.Bars {
		out[i] = b.Value
	}
	slices.Sort(out)
	return out
}

// Heats counts the heats named; bars without one count for none.
func (s *Set) Heats() int {
	seen := map[string]bool{}
	for _, b := range s.Bars {
		if b.Heat != "" {
			seen[b.Heat] = true
		}
	}
	return len(seen)
}

// Quantity is a value of the set with so many digits more than the bars have.
func (s *Set) Quantity(v float64, more int8) units.Quantity {
	return units.Quantity{Lo: v, Hi: v, Place: s.Place - more, Unit: s.Unit}
}

// Bound is a bound as a quantity, rounded down: it may promise no more than was
// worked out.
func (s *Set) Bound(b *Bound) units.Quantity {
	q := s.Quantity(b.Value, 0)
	q.Lo = math.Floor(q.Lo*math.Pow10(-int(q.Place))+1e-9) * math.Pow10(int(q.Place))
	q.Hi = q.Lo
	return q
}

// Minimum is the specified minimum of the material for such bars, in the set's
// unit; ok is false where none is on file.
func (s *Set) Minimum() (v units.Quantity, ok bool) {
	for _, f := range s.Material.Figures(s.Property) {
		if f.Basis == props.Minimum && !f.Value.IsRange() && (s.Conditions.Bar == "" || f.Cond.Bar == "" || f.Cond.Bar == s.Conditions.Bar) {
			if q, err := f.Value.In(s.Unit); err == nil {
				return q, true
			}
		}
	}
	return units.Quantity{}, false
}

// House is a data file with the figures of the sets, for catalog.LoadFiles: from
// the least to the most of the bars, basis house, the bounds beside them. Its
// title has the name of the file alone: it goes into mails, the folder does not.
func House(name string, sets []*Set) string {
	var out strings.Builder
	fmt.Fprintf(&out, "[[source]]\nid = %q\ntitle = %q\nedition = %q\nkind = \"house\"\n", name, "Test bars of the shop, "+path.Base(name), dates(sets))
	for _, s := range sets {
		sum := s.Summary()
		if sum.Most == 0 {
			continue // no figure: a catalog takes none that is nothing
		}
		fmt.Fprintf(&out, "\n[[house]]\nmaterial = %q\n[[house.figures]]\nbasis = \"house\"\nsource = %q\nknown = \"read\"\n", s.Material.ID, name)
		if c := s.Conditions.String(); c != "" {
			fmt.Fprintf(&out, "conditions = %q\n", c)
		}
		q := s.Quantity(sum.Least, 0)
		q.Hi = sum.Most
		note := fmt.Sprintf("%d bars, mean %s", sum.N, s.Quantity(sum.Mean, 1).Number())
		if sum.B.Found() {
			note += fmt.Sprintf(", 90/95 bound %s", s.Bound(&sum.B).Number())
		}
		fmt.Fprintf(&out, "%s = %q\n", s.Property, q.String()+"; ("+note+")")
	}
	return out.String()
}

// dates is the span of days of the bars, as an edition.
func dates(sets []*Set) string {
	var all []string
	for _, s := range sets {
		for _, b := range s.Bars {
			if b.Date != "" {
				all = append(all, b.Date)
			}
		}
	}
	if len(all) == 0 {
		return "not dated"
	}
	first, last := slices.Min(all), slices.Max(all)
	if first == last {
		return first
	}
	return first + " to " + last
}

// Capability is Ppk against a lower limit: how many times three standard
// deviations fit between the limit and the mean (ISO 22514-1). ok is false where
// the bars are not seen to be normal, on which the index rests.
func (s *Summary) Capability(limit float64) (ppk float64, ok bool) {
	return (s.Mean - limit) / (3 * s.SD), s.Normal()
}
