package report

import (
	"strings"

	"alongside/props"
	"alongside/props/compare"
)

// Signs explains the signs that the table holds, and no others, in lines that
// may be wrapped.
func (t *Table) Signs() []string {
	has := t.signsUsed()
	var first, second []string
	add := func(list *[]string, ok bool, text string) {
		if ok {
			*list = append(*list, text)
		}
	}
	for v, words := range [...]string{
		compare.Beats: "beats the baseline", compare.Misses: "misses it", compare.Level: "level with it",
		compare.Overlaps: "the ranges overlap", compare.Unlike: ": basis or test conditions differ, no comparison",
		compare.NoFigure: "nothing to compare",
	} {
		sign := glyphs[v] + " "
		if compare.Verdict(v) == compare.Unlike {
			sign = compare.Unlike.String()
		}
		add(&first, words != "" && has.verdicts[v], sign+words)
	}
	for b, words := range [...]string{
		props.Minimum: "specified minimum", props.Maximum: "specified maximum",
		props.Design: "design allowable", props.House: "house value", props.Estimated: "estimated minimum, not guaranteed",
	} {
		add(&second, words != "" && has.marks[Mark(props.Basis(b))], strings.TrimSpace(markWord(props.Basis(b)))+": "+words)
	}
	if len(second) > 0 {
		add(&second, has.marks[""], "no word: typical")
	}
	add(&second, has.memory, RecalledSign)
	add(&second, has.bound, "> or < before a difference: at least so much, certain although basis or conditions differ")
	for s, words := range [...]string{props.More: "more is better", props.Less: "less is better", props.Near: "nearest to a target"} {
		add(&second, words != "" && has.senses[senses[s]], senses[s]+" "+words)
	}
	var out []string
	for _, list := range [][]string{first, second} {
		if len(list) > 0 {
			out = append(out, strings.Join(list, " · "))
		}
	}
	return out
}

// signsUsed are the signs that the cells and rows of a table hold.
type signsUsed struct {
	verdicts [compare.IsBaseline + 1]bool
	marks    map[string]bool
	senses   map[string]bool
	memory   bool
	bound    bool // a difference that is a bound
}

func (t *Table) signsUsed() signsUsed {
	has := signsUsed{marks: map[string]bool{}, senses: map[string]bool{}}
	for i := range t.Lines {
		l := &t.Lines[i]
		has.senses[l.Sense] = true
		for j := range l.Cells {
			c := &l.Cells[j]
			if c.Glyph != "" || c.Value == "" {
				has.verdicts[c.Verdict] = true
			}
			has.marks[c.Mark] = true
			has.memory = has.memory || c.Memory
			has.bound = has.bound || strings.HasPrefix(c.Delta, ">") || strings.HasPrefix(c.Delta, "<")
		}
	}
	return has
}
