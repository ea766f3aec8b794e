package catalog

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// block reads one [[….figures]] table: the keys that say where the figures
// come from, then a figure for each property.
func (l *loader) block(r *record.Record) (*props.Block, []props.Figure) {
	before := len(*l.errs)
	var figures []props.Figure
	b := &props.Block{Source: l.sourceNamed(r), Known: ReadKnown(r), Table: r.Text("table", false),
		Where: r.Text("where", false), First: r.Text("first", false), File: r.File(), Line: r.LineOf("")}
	word := r.Text("basis", true)
	basis, ok := props.ParseBasis(word)
	if !ok && word != "" {
		r.Fail("basis", fmt.Sprintf("%q is not a basis", word), "use one of: "+strings.Join(props.BasisNames(), ", "))
	}
	b.Basis = basis
	var shared props.Conditions
	for _, c := range splitConditions(r.Text("conditions", false)) {
		if !shared.Add(c) {
			r.Fail("conditions", fmt.Sprintf("%q is not a known condition", c), conditionRemedy)
		}
	}
	for _, key := range []string{"tempers", "processes"} {
		r.Value(key)
	}
	ids := props.PropertyIDs()
	for _, key := range r.Rest() {
		p, ok := props.PropertyNamed(key)
		if !ok {
			r.Fail(key, "is neither a property nor a key of a figures block",
				record.DidYouMean(key, append(ids, "basis", "source", "table", "known", "where", "first", "conditions", "tempers", "processes")))
			r.Value(key)
			continue
		}
		if p.Info().Dimension == units.Rating {
			r.AllowNumber(key)
		}
		for _, s := range r.Texts(key) {
			if f, ok := l.figure(r, key, p, s, shared); ok {
				f.Block = b
				figures = append(figures, f)
			}
		}
	}
	if len(figures) == 0 && len(*l.errs) == before {
		r.Fail("", "the block holds no figure", "add a property with its value, or delete the block")
	}
	slices.SortStableFunc(figures, func(a, b props.Figure) int { return int(a.Property) - int(b.Property) })
	return b, figures
}

const conditionRemedy = `use e.g. "0.2 % offset", "0.5 % EUL", "in 2 in", "500 kgf/10 mm", "5e8 cycles", "68–212 °F", "at 300 °F", "after 10000 h", "separately cast bar", or put free text in parentheses`

func splitConditions(s string) []string {
	var out []string
	depth, start := 0, 0
	for i, r := range s {
		switch r {
		case '(':
			depth++
		case ')':
			depth--
		case ';':
			if depth <= 0 {
				out = append(out, strings.TrimSpace(s[start:i]))
				start = i + 1
			}
		}
	}
	out = append(out, strings.TrimSpace(s[start:]))
	kept := out[:0]
	for _, p := range out {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return kept
}

// figure reads "VALUE UNIT; condition; condition".
func (l *loader) figure(r *record.Record, key string, p props.PropertyID, s string, shared props.Conditions) (props.Figure, bool) {
	info := p.Info()
	parts := splitConditions(s)
	if len(parts) == 0 {
		r.Fail(key, "has no value", "write the value with its unit, or delete the line")
		return props.Figure{}, false
	}
	var own props.Conditions
	var agrees *props.Source
	for _, c := range parts[1:] {
		if id, ok := strings.CutPrefix(c, "agrees "); ok {
			if agrees = l.agreeing(r, key, id); agrees == nil {
				return props.Figure{}, false
			}
			continue
		}
		if !own.Add(c) {
			r.Fail(key, fmt.Sprintf("%q is not a known condition", c), conditionRemedy)
			return props.Figure{}, false
		}
	}
	assume := units.NoUnit
	switch info.Dimension {
	case units.Rating, units.Ratio, units.Percent, units.HBUnstated, units.HRB, units.HRE:
		assume = info.Units[units.US]
	}
	q, ok := r.Quantity(key, parts[0], info.Dimension, assume, example(info))
	if !ok {
		return props.Figure{}, false
	}
	if q.Qual != units.Exact && q.Qual != units.Approx {
		r.Fail(key, fmt.Sprintf("%q is a limit", parts[0]), "write the bare value and let basis = \"minimum\" or \"maximum\" say what it is")
		return props.Figure{}, false
	}
	if problem := Implausible(info, q); problem != "" {
		r.Fail(key, fmt.Sprintf("%q: %s", parts[0], problem), "check the value and the unit against the source")
		return props.Figure{}, false
	}
	cond := shared.For(info).With(own)
	if p == props.HardnessBrinell {
		if u, ok := units.BrinellUnit(cond.Load, cond.Ball); ok {
			q.Unit = u
		}
	}
	return props.Figure{Property: p, Value: q, Cond: &cond, Agrees: agrees}, true
}

func example(p *props.Property) string {
	if p.Dimension == units.Rating {
		return "3"
	}
	return "12.5 " + p.Units[units.US].Symbol()
}

// Implausible refuses values that no metal can have: such a figure is a slip
// of the pen, never data.
func Implausible(p *props.Property, q units.Quantity) string {
	most := map[string]float64{"elongation": 100, "reduction_of_area": 100, "poisson_ratio": 0.5}
	if limit, ok := most[p.ID]; ok && q.Hi > limit {
		return fmt.Sprintf("cannot be above %g %s", limit, q.Unit.Symbol())
	}
	switch p.Dimension {
	case units.Rating:
		if q.Lo < 1 || q.Hi > 5 || q.Lo != float64(int(q.Lo)) {
			return "a rating is a whole number from 1 (best) to 5"
		}
	case units.Temperature, units.ThermalExpansion:
	default:
		if q.Lo < 0 {
			return "cannot be negative"
		}
		if q.Hi == 0 {
			return "zero is not a figure; leave it out"
		}
	}
	return ""
}
