package report

import (
	"fmt"
	"math"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
)

var needGlyphs = [...]string{needs.NoFigure: "–", needs.Undecided: "≠", needs.NotMet: "✗", needs.Partly: "≈", needs.OnlyTypical: "✓", needs.Met: "✓"}

// needVerdicts lend a need's state the color of a verdict.
var needVerdicts = [...]compare.Verdict{needs.NoFigure: compare.NoFigure, needs.Undecided: compare.Unlike, needs.NotMet: compare.Misses, needs.Partly: compare.Overlaps, needs.OnlyTypical: compare.Unlike, needs.Met: compare.Beats}

// NeedLines are rows for the customer's limits, one a need that is switched
// on, to stand above a table's own: the figure a need was judged on, its
// margin and state. Why of each cell is the judgement in words.
func NeedLines(pins []*props.Material, list []needs.Need) []Line {
	var out []Line
	for i := range list {
		n := &list[i]
		if n.Off {
			continue
		}
		l := Line{Need: n, Property: n.Property, Name: n.String(), Short: shortNeed(n)}
		for _, m := range pins {
			j := needs.Judge(m, n)
			c := Cell{Glyph: needGlyphs[j.Status], Verdict: needVerdicts[j.Status], Word: statusSign(j.Status), Why: JudgementText(&j)}
			switch {
			case j.Figure != nil:
				c.Value = j.Shown().Number()
				c.Mark, c.Memory = Mark(j.Figure.Basis), recalled(j.Figure.Known())
				if j.Status == needs.OnlyTypical {
					c.Mark = "t"
				}
				if !math.IsNaN(j.Worst) {
					c.Delta = marginNumber(&j)
				}
			case n.Kind != needs.OfProperty:
				c.Value = map[bool]string{true: "yes", false: "no"}[j.Status == needs.Met]
			}
			l.Cells = append(l.Cells, c)
		}
		out = append(out, l)
	}
	return out
}

// shortNeed is a need in as few signs as a narrow screen has room for.
func shortNeed(n *needs.Need) string {
	if n.Kind != needs.OfProperty {
		return strings.ReplaceAll(n.String(), "permanent mold", "perm. mold")
	}
	s := n.String()
	name, short := nameIn(n.Property, n.Limit.Unit)
	if rest, ok := strings.CutPrefix(s, props.InSentence(name)); ok {
		s = props.InSentence(short) + rest
	}
	return strings.NewReplacer("≥ ", "≥", "≤ ", "≤", "> ", ">", "< ", "<").Replace(s)
}

// dutyShort is a duty's name without what is free in it.
func dutyShort(d *needs.Duty) string {
	s := d.Name
	for _, end := range []string{",", ":", " of a ", " under ", " through "} {
		s, _, _ = strings.Cut(s, end)
	}
	return s
}

// MeritLines are rows for the duties the user picked: the merit of each pin
// relative to the baseline. Why of each cell is the formula with its bounds
// and source, or the reason why there is none.
func MeritLines(b *compare.Bench, duties []*needs.Duty) []Line {
	var out []Line
	for _, d := range duties {
		l := Line{Duty: d, Name: "merit: " + dutyShort(d), Short: dutyShort(d) + " ×", Sense: senses[props.More]}
		for i, m := range b.Pins {
			r := d.Relative(b, m, b.Pins[b.Baseline])
			c := Cell{Why: meritText(r) + " times the baseline"}
			if r.Note != "" {
				c.Why += "; " + r.Note
			}
			c.Why += "; " + dutyText(d)
			if r.Why != "" {
				c.Why = r.Why
			} else {
				c.Value = fmt.Sprintf("%.2f", r.Mid)
				switch {
				case i == b.Baseline:
					c.Verdict = compare.IsBaseline
				case r.Lo > 1:
					c.Verdict, c.Glyph = compare.Beats, glyphs[compare.Beats]
				case r.Hi < 1:
					c.Verdict, c.Glyph = compare.Misses, glyphs[compare.Misses]
				default:
					c.Verdict, c.Glyph = compare.Overlaps, glyphs[compare.Overlaps]
				}
			}
			l.Cells = append(l.Cells, c)
		}
		out = append(out, l)
	}
	return out
}
