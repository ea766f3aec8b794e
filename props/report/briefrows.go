package report

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/sheet"
	"alongside/props/swap"
	"alongside/props/watch"
	"alongside/units"
)

// briefRow is a row before it is known whether there is room for it: cells gives
// what holds for each metal, today's first, with the numbers of its notes.
type briefRow struct {
	name  string
	cells func(p *briefPage) (cells []string, marks []int)
}

// briefOrder is the lines of a swap in the order in which a customer asks. Of those
// that stand behind each other in a list the first that is there is taken; "" keeps
// the name that the swap gives the line.
var briefOrder = []struct {
	ids  []string
	name string
}{
	{[]string{"shape.mass"}, "Weight"},
	{[]string{"casting.set", "load.set.minimum", "load.set.typical"}, "Load to stay bent"},
	{[]string{"casting.fracture", "load.fracture.minimum", "load.fracture.typical"}, "Load to break"},
	{[]string{"strength.load"}, ""},
	{[]string{"reserve.set", "reserve.fracture"}, ""},
	{[]string{"hot.reserve.set", "hot.reserve.fracture", "hot.set", "hot.fracture"}, ""},
	{[]string{"creep.reserve"}, ""},
	{[]string{"fatigue.reserve"}, ""},
	{[]string{"pressure.wall", "pressure.margin.minimum", "pressure.margin.typical"}, ""},
	{[]string{"press.margin.minimum", "press.margin.typical"}, ""},
	{[]string{"thread.bolt", "thread.engagement"}, ""},
	{[]string{"bolt.margin.minimum", "bolt.margin.typical"}, ""},
	{[]string{"stiffness.deflection"}, "Bending, same load"},
	{[]string{"growth", "growth.hot"}, ""},
	{[]string{"growth.permanent"}, ""},
	{[]string{"cold.impact"}, ""},
}

// rows are at most briefRows: the needs, what the swap does to the part, then
// the properties that differ most.
func (b *OnePage) rows() []briefRow {
	var out []briefRow
	told := map[props.PropertyID]bool{props.ShearModulus: true} // goes with the modulus
	for i := range b.Needs {
		n := &b.Needs[i]
		told[n.Property] = true
		name := n.String()
		if n.Kind == needs.OfProperty { // the short name, with the same limit
			name = strings.Replace(name, props.InSentence(n.Property.Info().Name), n.Property.Info().Short, 1)
		}
		out = append(out, briefRow{name, func(p *briefPage) ([]string, []int) { return b.needRow(p, n) }})
	}
	given := &b.Swaps[0].Given
	if in := cmp.Or(given.Part.Medium, part.MediaOf(given.With).String()); in != "" {
		out = append(out, briefRow{"In " + shortened(in), b.mediumRow})
	}
	for _, o := range briefOrder {
		if l := b.first(o.ids); l != nil {
			for _, u := range l.Figures {
				told[u.Figure.Property] = true
			}
			name := cmp.Or(o.name, l.Name)
			if strings.HasPrefix(l.ID, "casting.") {
				name += ", in the wall"
			}
			out = append(out, briefRow{name, func(p *briefPage) ([]string, []int) { return b.swapRow(p, l.ID) }})
		}
	}
	out = append(out, b.differences(told)...)
	return out[:min(len(out), briefRows)]
}

// first is the first of these lines that a swap has a result for, nil where none has.
func (b *OnePage) first(ids []string) *swap.Line {
	for _, id := range ids {
		for _, r := range b.Swaps {
			if l := r.Line(id); l != nil && l.Done() {
				return l
			}
		}
	}
	return nil
}

// differences are the properties that are decided for a proposal and not told
// yet, the largest ratio first.
func (b *OnePage) differences(told map[props.PropertyID]bool) []briefRow {
	c := compare.Compare(b.Bench)
	type difference struct {
		row  *compare.Row
		size float64
	}
	var list []difference
	for i := range c.Rows {
		r, size := &c.Rows[i], 0.0
		if told[r.Property] || r.Property.Info().Dimension == units.Rating {
			continue
		}
		for j := range r.Cells {
			if v := r.Cells[j].Verdict; v == compare.Beats || v == compare.Misses {
				lo, hi := ratio(&r.Cells[j])
				size = max(size, math.Log(lo), -math.Log(hi)) // what is certain at least
			}
		}
		if size > 0 {
			list = append(list, difference{r, size})
		}
	}
	slices.SortStableFunc(list, func(x, y difference) int { return cmp.Compare(y.size, x.size) })
	var out []briefRow
	for _, d := range list {
		out = append(out, briefRow{d.row.Property.Info().Short, func(p *briefPage) ([]string, []int) { return b.differenceRow(p, c, d.row) }})
	}
	return out
}

// ratio is the least and the most that the pin's figure can be of today's; both
// are 1 where nothing is certain of it.
func ratio(c *compare.Cell) (lo, hi float64) {
	if c.Bound != nil {
		return c.Bound.Least, c.Bound.Most
	}
	if c.Figure == nil || c.Against == nil || c.Apart {
		return 1, 1
	}
	pinLo, pinHi := inSI(c.Figure)
	baseLo, baseHi := inSI(c.Against)
	if baseLo <= 0 || pinLo <= 0 {
		return 1, 1
	}
	return pinLo / baseHi, pinHi / baseLo
}

func inSI(f *props.Figure) (lo, hi float64) {
	lo, hi = f.Bounds()
	lo, hi = f.Value.Unit.ToSI(lo), f.Value.Unit.ToSI(hi)
	return min(lo, hi), max(lo, hi)
}

// differenceRow is the figures of a property, those of the proposals with the
// ratio as spoken.
func (b *OnePage) differenceRow(p *briefPage, c *compare.Comparison, r *compare.Row) (cells []string, marks []int) {
	cells = make([]string, 1, len(r.Cells))
	for i := range r.Cells {
		cell := &r.Cells[i]
		if cell.Figure == nil {
			cell.Value.Unit = r.Unit
		}
		text := "not on file"
		switch {
		case cell.Figure != nil:
			text = cell.Value.String() + markWord(cell.Figure.Basis)
			marks = append(marks, p.from(cell.Figure))
		case cell.Material.Absent(r.Property) != "":
			text = "has none"
		}
		if i == c.Baseline {
			cells[0] = text
			continue
		}
		if lo, hi := ratio(cell); lo != 1 || hi != 1 {
			text = b.result(text, max(lo, math.SmallestNonzeroFloat64), hi)
		} else if cell.Verdict == compare.Unlike {
			text += ", not comparable"
		}
		cells = append(cells, text)
	}
	return cells, marks
}

// proposed is what holds for the proposals, each with its number where there
// are several. They share the last column, which text can break into lines.
func proposed(cells []string) string {
	if len(cells) == 1 {
		return cells[0]
	}
	out := ""
	for i, c := range cells {
		switch {
		case i == 0:
			out = "1"
		case c == cells[i-1]:
			out += ", " + strconv.Itoa(i+1)
		default:
			out += ": " + cells[i-1] + "; " + strconv.Itoa(i+1)
		}
	}
	return out + ": " + cells[len(cells)-1]
}

// numbers are marks in rising order, each once, in brackets.
func numbers(marks []int) string {
	if len(marks) == 0 {
		return ""
	}
	slices.Sort(marks)
	var out []string
	for _, m := range slices.Compact(marks) {
		out = append(out, strconv.Itoa(m))
	}
	return " [" + strings.Join(out, ", ") + "]"
}

// metals are today's and the proposals.
func (b *OnePage) metals() []*props.Material {
	out := []*props.Material{b.Swaps[0].Base}
	for _, r := range b.Swaps {
		out = append(out, r.Pin)
	}
	return out
}

func (b *OnePage) needRow(p *briefPage, need *needs.Need) (cells []string, marked []int) {
	for i, m := range b.metals() {
		j := needs.Judge(m, need)
		cell := j.Status.String()
		switch {
		case j.Figure != nil:
			figure := j.Shown().String() + markWord(j.Figure.Basis)
			if cell = figure + ", " + statusSign(j.Status); i == 0 {
				cell = figure // of today's metal nothing is asked
			}
			marked = append(marked, p.from(j.Figure))
		case m.Absent(need.Property) != "":
			cell = "has none"
		}
		cells = append(cells, cell)
	}
	return cells, marked
}

// shortened is the first words of a text, as many as a narrow column holds.
func shortened(s string) string {
	const most = 20
	if sheet.Width(s) <= most {
		return s
	}
	out := ""
	for _, word := range strings.Fields(s) {
		if sheet.Width(out)+1+sheet.Width(word) >= most {
			break
		}
		out = joined(" ", out, word)
	}
	return strings.TrimRight(out, ",;") + "…"
}

// mediumRow is what the watch-outs answer for what the part stands in, the gravest
// answer of each metal.
func (b *OnePage) mediumRow(p *briefPage) (cells []string, marked []int) {
	lists := [][]watch.Caution{b.today}
	for i := range b.Watched {
		lists = append(lists, b.Watched[i].Cautions)
	}
	for _, list := range lists {
		var gravest *watch.Caution
		for i := range list {
			if c := &list[i]; c.Answer != "" && c.Unchecked == "" && !c.Dismissed && (gravest == nil || c.Severity > gravest.Severity) {
				gravest = c
			}
		}
		if gravest == nil {
			cells = append(cells, "no answer on file")
			continue
		}
		answer := gravest.Answer
		if len(cells) == 0 { // of today's metal the first words will do
			answer, _, _ = strings.Cut(answer, ":")
			answer = shortened(answer)
		}
		cells = append(cells, answer)
		if gravest.Source.Kind != "none" {
			marked = append(marked, p.sourced(gravest.Source, gravest.Known))
		}
	}
	return cells, marked
}

// swapRow is one line of every swap: the amount where there is one, and the
// ratio as spoken.
func (b *OnePage) swapRow(p *briefPage, id string) (cells []string, marks []int) {
	today := ""
	for _, r := range b.Swaps {
		l := r.Line(id)
		if l == nil || !l.Done() {
			cells = append(cells, "not known")
			if l != nil && l.Reason != "" {
				marks = append(marks, p.note(l.Reason))
			}
			continue
		}
		if l.Base != nil {
			today = l.Base.String()
		}
		text := l.Value.String()
		if l.Ratio != nil {
			text = b.result(text, l.Ratio.Lo, l.Ratio.Hi)
		}
		cells = append(cells, joined(", ", text, l.Words))
		for _, note := range l.Notes {
			note, _, _ = strings.Cut(note, "; ") // the reason in short
			marks = append(marks, p.note(note))
		}
		for _, u := range l.Figures {
			marks = append(marks, p.from(u.Figure))
		}
	}
	return append([]string{today}, cells...), marks
}

// result is an amount with its ratio to today's as spoken. Of several proposals
// the amount alone stands, where there is one.
func (b *OnePage) result(amount string, lo, hi float64) string {
	if len(b.Swaps) == 1 {
		return joined(", ", amount, swap.SpokenOf(lo, hi, "today's"))
	}
	return cmp.Or(amount, swap.Spoken(lo, hi))
}
