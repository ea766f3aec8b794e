package bench

import (
	"strings"

	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/ui"
)

// VerdictInk is the color of a verdict; the glyph says the same without color.
func VerdictInk(t *ui.Theme, v compare.Verdict) ui.Ink {
	switch v {
	case compare.Beats:
		return t.Blue
	case compare.Misses:
		return t.Orange
	case compare.Overlaps:
		return t.Violet
	case compare.Level:
		return t.Text
	case compare.IsBaseline:
		return t.Strong
	}
	return t.Dim
}

// Counts colors counts like "✓4 ✗1" by their glyphs.
func Counts(t *ui.Theme, s string) string {
	parts := strings.Split(s, " ")
	for i, part := range parts {
		for v := range compare.IsBaseline + 1 {
			if sign := report.Glyph(v); sign != "" && strings.HasPrefix(part, sign) {
				parts[i] = VerdictInk(t, v).Of(part)
			}
		}
	}
	return strings.Join(parts, " ")
}
