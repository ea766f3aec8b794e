package report

import (
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/needs"
	"alongside/props/sheet"
	"alongside/props/swap"
	"alongside/props/watch"
)

// OnePage is what the one page for a customer is made of: today's metal against
// one to three proposals. Swaps and Watched stand for the same proposals.
type OnePage struct {
	Bench   compare.Bench
	Needs   []needs.Need
	Swaps   []*swap.Result
	Watched []Watched
}

// The size of the page.
const (
	briefLines = 45
	briefWidth = 80
	briefRows  = 12
	briefWatch = 3
	briefOpen  = 3 // watch-outs named that could not be checked
)

// briefOrder is the lines of a swap in the order in which a customer asks; ""
// keeps the name that the swap gives the line, which says the strength behind it.
var briefOrder = []struct{ id, name string }{
	{"shape.mass", "Weight"}, {"load.set.minimum", "Load until it stays bent"}, {"load.fracture.minimum", "Load until it breaks"}, {"strength.load", ""},
	{"growth", "Growth"}, {"stiffness.deflection", "Bending, same load"}, {"stiffness.wall", "Wall, same stiffness"}, {"heat.flow", "Heat through the wall"},
}

// BriefDoc is the answer to a call on one page: as text at most 45 lines of 80
// columns. Where it would be longer the last rows of the table are left out,
// and the page says so.
func BriefDoc(b OnePage) *Doc {
	return &Doc{
		text: func() *sheet.Doc { return b.page().doc },
		data: func() *sheet.Doc { p := b.page(); return dataDoc(p.table, p.doc.Notes) },
		json: func() any { return b.page().json(b) },
	}
}

// briefPage is a brief laid out.
type briefPage struct {
	numbering
	doc        *sheet.Doc
	table      *sheet.Table
	watch, ask []string
}

// page is the longest brief that fits; rows are left out from the end.
func (b *OnePage) page() *briefPage {
	for rows := briefRows; ; rows-- {
		p := b.laidOut(rows)
		if rows <= 1 || strings.Count(p.doc.Text(briefWidth), "\n") <= briefLines {
			return p
		}
	}
}

func (b *OnePage) laidOut(rows int) *briefPage {
	p := &briefPage{table: &sheet.Table{Columns: sheet.Columns("", "today", "proposed")}}
	base := b.Swaps[0]
	names := []string{base.Base.Name() + " today"}
	for i, r := range b.Swaps {
		head := "proposed"
		if len(b.Swaps) > 1 {
			head += " " + strconv.Itoa(i+1)
		}
		names = append(names, head+": "+r.Pin.Name())
	}
	all := b.rows(p, rows)
	if all > rows {
		p.table.Notes = []string{"Left out for room: " + strconv.Itoa(all-rows) + " more rows."}
	}
	asked := sheet.Lines{"You asked for: " + b.asked() + "."}
	p.cautions(b)
	p.questions(b)
	p.doc = &sheet.Doc{Blocks: []sheet.Block{sheet.Title(strings.Join(names, "; ")), asked, p.table}, Caution: Caution}
	if len(p.watch) > 0 {
		p.doc.Blocks = append(p.doc.Blocks, sheet.Lines(p.watch))
	}
	if len(p.ask) > 0 {
		p.doc.Blocks = append(p.doc.Blocks, sheet.Lines(p.ask))
	}
	p.doc.Notes = p.below()
	return p
}

// asked is the needs and the part in one sentence.
func (b *OnePage) asked() string {
	var out []string
	for i := range b.Needs {
		out = append(out, b.Needs[i].String())
	}
	if out = append(out, b.Swaps[0].Given.Part.Summary()); joined("", out...) == "" {
		return "a comparison; nothing was said of the part"
	}
	return joined("; ", out...)
}

// rows fills the table with at most so many rows, and returns how many there
// would be.
func (b *OnePage) rows(p *briefPage, most int) int {
	n := 0
	add := func(name string, row func() ([]string, []int)) {
		if n++; n > most {
			return
		}
		cells, marks := row()
		p.table.Add(name, cells[0], proposed(cells[1:])+numbers(marks))
	}
	for i := range b.Needs {
		add(b.Needs[i].String(), func() ([]string, []int) { return b.needRow(p, &b.Needs[i]) })
	}
	for _, o := range briefOrder {
		if slices.ContainsFunc(b.Swaps, func(r *swap.Result) bool { l := r.Line(o.id); return l != nil && (l.Done() || l.Reason != "") }) {
			name := o.name
			if l := b.Swaps[0].Line(o.id); name == "" && l != nil {
				name = l.Name
			}
			add(name, func() ([]string, []int) { return b.swapRow(p, o.id) })
		}
	}
	if !slices.ContainsFunc(b.Needs, func(x needs.Need) bool { return x.Property == props.Elongation }) {
		add("Elongation", func() ([]string, []int) { return b.elongation(p) })
	}
	return n
}

// proposed is what holds for the proposals, each with its number where there
// are several. They share the last column, which text can break into lines.
func proposed(cells []string) string {
	if len(cells) == 1 {
		return cells[0]
	}
	var out []string
	for i, c := range cells {
		out = append(out, strconv.Itoa(i+1)+": "+c)
	}
	return strings.Join(out, "; ")
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

func (b *OnePage) needRow(p *briefPage, need *needs.Need) (cells []string, marks []int) {
	for i, m := range b.metals() {
		j := needs.Judge(m, need)
		cell := j.Status.String()
		if j.Figure != nil {
			figure := j.Figure.Value.String() + " " + j.Figure.Basis.Phrase()
			if cell = figure + ", " + cell; i == 0 {
				cell = figure // of today's metal nothing is asked
			}
			marks = append(marks, p.from(j.Figure))
		}
		cells = append(cells, cell)
	}
	return cells, marks
}

func (b *OnePage) elongation(p *briefPage) (cells []string, marks []int) {
	for _, m := range b.metals() {
		f := b.Bench.Figure(m, props.Elongation)
		if f == nil {
			cells = append(cells, "not on file")
			continue
		}
		cells, marks = append(cells, f.Value.String()+" "+f.Basis.Phrase()), append(marks, p.from(f))
	}
	return cells, marks
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
		cells = append(cells, result(l))
		for _, note := range l.Notes {
			marks = append(marks, p.note(note))
		}
		for _, u := range l.Figures {
			marks = append(marks, p.from(u.Figure))
		}
	}
	if today == "" {
		today = "–"
	}
	return append([]string{today}, cells...), marks
}

// result is the amount, with the ratio as spoken.
func result(l *swap.Line) string {
	spoken := ""
	if l.Ratio != nil {
		spoken = Spoken(l.Ratio.Lo, l.Ratio.Hi)
	}
	return joined(", ", l.Value.String(), spoken, l.Words)
}

// from is the number of a figure's source with how well it is known.
func (p *briefPage) from(f *props.Figure) int { return p.sourced(f.Source, f.Known(), correction(f)) }

func (p *briefPage) sourced(s *props.Source, k props.Known, more ...string) int {
	degree := cited("", "", k)
	if degree == "" {
		degree = "read"
	}
	return p.note(joined(", ", append([]string{s.Title, degree}, more...)...))
}

// cautions are the gravest watch-outs of all proposals, a sentence each.
func (p *briefPage) cautions(b *OnePage) {
	var open []watch.Caution
	for i := range b.Watched {
		for _, c := range b.Watched[i].Cautions {
			if !c.Dismissed && c.Unchecked == "" && !slices.ContainsFunc(open, func(o watch.Caution) bool { return o.ID == c.ID }) {
				open = append(open, c)
			}
		}
	}
	slices.SortStableFunc(open, func(x, y watch.Caution) int {
		if x.Severity != y.Severity {
			return int(y.Severity) - int(x.Severity)
		}
		return int(x.Gravity) - int(y.Gravity)
	})
	for i, c := range open[:min(briefWatch, len(open))] {
		from := noSource
		if c.Source.Kind != "none" {
			from = strconv.Itoa(p.sourced(c.Source, c.Known))
		}
		p.watch = append(p.watch, strconv.Itoa(i+1)+". "+c.Severity.String()+": "+c.Title+" ["+from+"].")
	}
	if more := len(open) - briefWatch; more > 0 {
		p.watch = append(p.watch, strconv.Itoa(more)+" more watch-outs were raised.")
	}
}

// questions are what the part must say more and what could not be checked.
func (p *briefPage) questions(b *OnePage) {
	var fields, unchecked []string
	for i, r := range b.Swaps {
		for _, n := range r.Needs() {
			numbered(&fields, strings.TrimPrefix(n, "needs "))
		}
		for _, c := range b.Watched[i].Cautions {
			if c.Unchecked != "" && !c.Dismissed {
				numbered(&unchecked, c.Title)
			}
		}
	}
	if len(fields) > 0 {
		p.ask = append(p.ask, "Please tell us: "+strings.Join(fields, ", ")+".")
	}
	if more := len(unchecked) - briefOpen; more > 0 {
		unchecked = append(unchecked[:briefOpen], "and "+strconv.Itoa(more)+" more")
	}
	if len(unchecked) > 0 {
		p.ask = append(p.ask, "Could not be checked: "+strings.Join(unchecked, "; ")+".")
	}
}

func (p *briefPage) json(b OnePage) object {
	var rows [][]string
	for _, r := range p.table.Rows {
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, c.Text)
		}
		rows = append(rows, cells)
	}
	metals := b.metals()
	return object{
		{"from", metals[0].ID},
		{"to", each(metals[1:], func(m **props.Material) string { return (*m).ID })},
		{"asked", b.asked()},
		{"rows", rows},
		{"left_out", p.table.Notes},
		{"watch_outs", p.watch},
		{"open", p.ask},
		{"notes", p.notes},
		{"swaps", swapJSON(b.Swaps)[0].value},
		{"caution", Caution},
	}
}
