package audit

import (
	"fmt"
	"strings"

	"alongside/props"
)

// Bands tells a family's bands in one paragraph, each group of them with the
// tables it was drawn round: "density 2.50–3.00 g/cm³ (from …); …".
func Bands(f *props.Family) string {
	var b strings.Builder
	for i, band := range f.Bands {
		if i > 0 {
			b.WriteString("; ")
		}
		fmt.Fprintf(&b, "%s %s", band.Of, band.Value)
		switch {
		case band.Load != 0:
			fmt.Fprintf(&b, " at %g kgf", band.Load)
		case band.Of == props.TensilePerBrinell:
			b.WriteString(" where no load is stated")
		}
		if i+1 == len(f.Bands) || f.Bands[i+1].From != band.From {
			fmt.Fprintf(&b, " (from %s)", band.From)
		}
	}
	return b.String()
}

// Unbanded names the families that have no bands, or no base element that the
// rules know, so that fewer rules question their metals.
func Unbanded(families []*props.Family) []string {
	var out []string
	for _, f := range families {
		if _, known := elements()[f.Base]; len(f.Bands) == 0 || !known {
			out = append(out, f.ID)
		}
	}
	return out
}

// bandsOf lists the bands of the material's family for a property or ratio.
func (l *look) bandsOf(of string) []props.Band {
	var out []props.Band
	for _, b := range l.m.Alloy.Family.Bands {
		if b.Of == of {
			out = append(out, b)
		}
	}
	return out
}
