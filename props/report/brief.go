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

// OnePage is what the one page for a customer is made of: today's metal against
// one to three proposals. Bench has all of them, today's as baseline; Swaps and
// Watched are those of the proposals, in the order of the bench.
type OnePage struct {
	Bench   compare.Bench
	Needs   []needs.Need
	Swaps   []*swap.Result
	Watched []Watched
}

// NewOnePage works out what a brief tells: the bench's baseline against the
// proposals, pins of the bench; the watch-outs put aside are left out, and all
// where there are no rules.
func NewOnePage(bench compare.Bench, list []needs.Need, given part.Given, rules *watch.Rules, aside []string, proposals ...*props.Material) OnePage {
	b := OnePage{Bench: bench.Clone(), Needs: list}
	base := bench.Pins[bench.Baseline]
	b.Bench.Pins, b.Bench.Baseline = append([]*props.Material{base}, proposals...), 0
	for _, pin := range proposals {
		b.Swaps = append(b.Swaps, swap.Work(&b.Bench, given, base, pin))
		w := Watched{Base: base, Pin: pin}
		if rules != nil {
			w.Cautions = rules.Evaluate(b.Bench, base, pin, given, aside)
		}
		b.Watched = append(b.Watched, w)
	}
	return b
}

// The size of the page, and the most proposals that it tells of.
const (
	BriefProposals = 3
	BriefWidth     = 80

	briefLines = 45
	briefRows  = 12
	briefWatch = 3
	briefOpen  = 3 // watch-outs named that could not be checked
)

// BriefDoc is the answer to a call on one page: as text at most 45 lines of 80
// columns. Where it would be longer the rows that matter least are left out, and
// the page names them.
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

// page is the longest brief that fits. Rows are left out from the end: the
// properties before what the swap does to the part, and that before the needs.
func (b *OnePage) page() *briefPage {
	all := b.rows()
	for n := len(all); ; n-- {
		p := b.laidOut(all[:n], all[n:])
		if n <= 1 || p.fits(MailWidth) && p.fits(BriefWidth) {
			return p
		}
	}
}

// fits reports whether the page has few enough lines of a width.
func (p *briefPage) fits(width int) bool {
	n := 0
	for l := range strings.SplitSeq(p.doc.Text(width), "\n") {
		if n++; sheet.Width(l) > width {
			return false
		}
	}
	return n <= briefLines
}

func (b *OnePage) laidOut(rows, left []briefRow) *briefPage {
	p := &briefPage{table: &sheet.Table{Columns: sheet.Columns("", "today", "proposed")}}
	title := b.Swaps[0].Base.Name() + " today; proposed: " + b.Swaps[0].Pin.Name()
	if len(b.Swaps) > 1 {
		p.table.Columns[2].Name = "against today's"
		title = b.Swaps[0].Base.Name() + " today; proposed "
		for i, r := range b.Swaps {
			title += strconv.Itoa(i+1) + ": " + r.Pin.Name() + "; "
		}
		title = strings.TrimSuffix(title, "; ")
	}
	for _, r := range rows {
		cells, marks := r.cells(p)
		p.table.Add(r.name, cells[0], proposed(cells[1:])+numbers(marks))
	}
	if len(left) > 0 {
		var names []string
		for _, r := range left {
			names = append(names, r.name)
		}
		p.table.Notes = []string{"Left out for room: " + strings.Join(names, ", ") + "."}
	}
	p.cautions(b)
	p.questions(b)
	p.doc = &sheet.Doc{Blocks: []sheet.Block{sheet.Title(title), sheet.Lines{b.asked()}, p.table}, Caution: Caution}
	if len(p.watch) > 0 {
		p.doc.Blocks = append(p.doc.Blocks, sheet.Lines(p.watch))
	}
	if len(p.ask) > 0 {
		p.doc.Blocks = append(p.doc.Blocks, sheet.Lines(p.ask))
	}
	if len(p.notes) > 0 {
		text := "Notes and sources:"
		for i, n := range p.notes {
			text += " [" + strconv.Itoa(i+1) + "] " + n + "."
		}
		p.doc.Foot = []string{text}
	}
	return p
}

// asked is what the customer asks for, and what was said of the part.
func (b *OnePage) asked() string {
	var list []string
	for i := range b.Needs {
		list = append(list, b.Needs[i].String())
	}
	given := b.Swaps[0].Given
	said := given.Part
	said.Price = nil // the foundry's own
	summary := joined("; ", said.Summary(), said.With.String())
	if given.Mate != nil {
		summary = strings.Replace(summary, "mate "+said.Mate, "mated to "+given.Mate.Name(), 1)
	}
	var out []string
	if len(list) > 0 {
		out = append(out, "You asked for "+strings.Join(list, "; ")+".")
	}
	if summary == "" {
		return joined(" ", append(out, "Nothing was said of the part.")...)
	}
	return joined(" ", append(out, "The part: "+summary+".")...)
}

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
	{[]string{"load.set.minimum", "load.set.typical"}, "Load to stay bent"},
	{[]string{"load.fracture.minimum", "load.fracture.typical"}, "Load to break"},
	{[]string{"strength.load"}, ""},
	{[]string{"stiffness.deflection"}, "Bending, same load"},
	{[]string{"growth", "growth.hot"}, ""},
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
	for _, o := range briefOrder {
		if l := b.first(o.ids); l != nil {
			for _, u := range l.Figures {
				told[u.Figure.Property] = true
			}
			out = append(out, briefRow{cmp.Or(o.name, l.Name), func(p *briefPage) ([]string, []int) { return b.swapRow(p, l.ID) }})
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
			text = cell.Value.String() + inWords.Replace(Mark(cell.Figure.Basis))
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
			figure := j.Shown().String() + inWords.Replace(Mark(j.Figure.Basis))
			if cell = figure + ", " + StatusSign(j.Status); i == 0 {
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

// from is the number of a figure's source with how well it is known.
func (p *briefPage) from(f *props.Figure) int { return p.sourced(f.Source, f.Known(), correction(f)) }

// sourced numbers a source once for each degree of knowing and correction; the
// second time it is named by the number of the first.
func (p *briefPage) sourced(s *props.Source, k props.Known, more ...string) int {
	title, degree := shortTitle(s), joined(", ", append([]string{cited("", "", k)}, more...)...)
	note := joined(", ", title, degree)
	if i := slices.IndexFunc(p.notes, func(n string) bool { return n == title || strings.HasPrefix(n, title+", ") }); i >= 0 && p.notes[i] != note {
		note = "as " + strconv.Itoa(i+1) + ", " + cmp.Or(degree, "read")
	}
	return p.note(note)
}

// shortTitle is enough of a title to find the source by: the number of a standard,
// else what stands before a colon or parenthesis, with the article behind a semicolon.
func shortTitle(s *props.Source) string {
	number, _, _ := strings.Cut(strings.Replace(s.Title, " Standard Specification", ",", 1), ",")
	if s.Kind == "standard" && number != s.Title && strings.ContainsAny(number, "0123456789") {
		if len(strings.Fields(number)) == 1 {
			number = joined(" ", strings.Fields(s.Publisher + " ")[0], number)
		}
		return number
	}
	if len(s.Title) <= 60 {
		return s.Title
	}
	title, article, _ := strings.Cut(s.Title, ";")
	if i := strings.IndexAny(title, ":("); i > 0 {
		title = strings.TrimSpace(title[:i])
	}
	return joined(", ", title, strings.TrimSpace(article))
}

// cautions are the gravest watch-outs of all proposals, each with what to do.
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
		return cmp.Or(cmp.Compare(y.Severity, x.Severity), cmp.Compare(x.Gravity, y.Gravity))
	})
	for i, c := range open[:min(briefWatch, len(open))] {
		from := noSource
		if c.Source.Kind != "none" {
			from = strconv.Itoa(p.sourced(c.Source, c.Known))
		}
		p.watch = append(p.watch, strconv.Itoa(i+1)+". "+sentence(c.Title)+" "+toSettle(c.Ask())+" ["+from+"]")
	}
	if more := len(open) - briefWatch; more > 0 {
		p.watch = append(p.watch, strconv.Itoa(more)+" more watch-outs were raised.")
	}
}

// sentence closes a text with a full stop where it has no end.
func sentence(text string) string {
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// toSettle turns what to ask into what is to be settled, which the customer can
// read as well as the one who asks.
func toSettle(ask string) string {
	rest, ok := strings.CutPrefix(ask, "Ask ")
	if !ok {
		return ask
	}
	rest = strings.Replace(rest, "for the ", "the ", 1)
	if word, _, _ := strings.Cut(rest, " "); !slices.Contains([]string{"the", "what", "which", "whether", "how", "where", "who", "if"}, word) {
		return ask
	}
	return "To settle: " + rest
}

// customerWords is what a field of the part is called to the customer, where the
// swap has a term for it.
var customerWords = map[part.Field]string{
	part.FieldMass: "its weight", part.FieldWall: "the wall thickness", part.FieldLength: "the length over which it grows",
	part.FieldCase: "how it is loaded: pulled, or bent as a plate or a beam", part.FieldService: "the coldest and the hottest it gets",
	part.FieldMate: "what it is joined to", part.FieldStress: "the stress in it", part.FieldCycles: "how often it is loaded",
	part.FieldPressure: "the pressure inside", part.FieldBore: "the inside diameter",
	part.FieldFit: "the diameter of its bore or shaft",
}

// questions are what the customer must say more and what could not be checked.
func (p *briefPage) questions(b *OnePage) {
	var fields, unchecked []string
	for i, r := range b.Swaps {
		for j := range r.Lines {
			if f, ok := r.Lines[j].Lacks(); ok && f != part.FieldPrice {
				numbered(&fields, cmp.Or(customerWords[f], strings.TrimPrefix(r.Lines[j].Need, "needs ")))
			}
		}
		for _, c := range b.Watched[i].Cautions {
			if c.Unchecked != "" && !c.Dismissed {
				numbered(&unchecked, c.Unchecked)
			}
		}
	}
	if len(fields) > 0 {
		p.ask = append(p.ask, "Please tell us too: "+strings.Join(fields, "; ")+".")
	}
	if more := len(unchecked) - briefOpen; more > 0 {
		unchecked = append(unchecked[:briefOpen], "and "+strconv.Itoa(more)+" more")
	}
	if len(unchecked) > 0 {
		p.ask = append(p.ask, "Could not be checked for want of figures: "+strings.Join(unchecked, "; ")+".")
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
