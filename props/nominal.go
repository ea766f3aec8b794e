package props

import (
	"sort"
	"strconv"
	"strings"
)

// Nominal is the composition in a few words, the base metal first and the
// additions after it in order of amount: "Al–7.0 Si–0.32 Mg". An addition is an
// element with a lower limit; its amount is the middle of its limits, in two
// digits. It is "" where the limits name no base metal or no addition.
func (a *Alloy) Nominal() string {
	type part struct {
		element string
		amount  float64
	}
	base := ""
	var parts []part
	for _, l := range a.Composition.Limits {
		switch {
		case l.Text == "remainder":
			base = l.Element
		case l.Lo > 0 && l.Hi < 100:
			parts = append(parts, part{l.Element, (l.Lo + l.Hi) / 2})
		}
	}
	sort.SliceStable(parts, func(i, j int) bool { return parts[i].amount > parts[j].amount })
	if base == "" && len(parts) > 0 && parts[0].amount > 50 {
		base, parts = parts[0].element, parts[1:]
	}
	if base == "" || len(parts) == 0 {
		return ""
	}
	words := []string{base}
	for _, p := range parts {
		words = append(words, TwoDigits(p.amount)+" "+p.element)
	}
	return strings.Join(words, "–")
}

// TwoDigits writes a ratio or a percentage that need not be exact: 0.70, 1.9, 24.
func TwoDigits(v float64) string {
	decimals := 0
	switch {
	case v < 1:
		decimals = 2
	case v < 10:
		decimals = 1
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
