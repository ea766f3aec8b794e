package report

import (
	"cmp"
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
)

// OnePage is what the one page for a customer is made of: today's metal against
// one to three proposals. Bench has all of them, today's as baseline; Swaps and
// Watched are those of the proposals, in the order of the bench.
type OnePage struct {
	Bench   compare.Bench
	Needs   []needs.Need
	Swaps   []*swap.Result
	Watched []Watched
	today   []watch.Caution // what today's metal raises by itself
}

// NewOnePage works out what a brief tells: the bench's baseline against the
// proposals, pins of the bench; the watch-outs put aside are left out, and all
// where there are no rules.
func NewOnePage(bench compare.Bench, list []needs.Need, given part.Given, rules *watch.Rules, aside []string, proposals ...*props.Material) OnePage {
	given.Rates = nil // the shop's own
	b := OnePage{Bench: bench.Clone(), Needs: list}
	base := bench.Pins[bench.Baseline]
	b.Bench.Pins, b.Bench.Baseline = append([]*props.Material{base}, proposals...), 0
	if rules != nil {
		b.today = rules.Evaluate(b.Bench, nil, base, given, aside)
	}
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
		text: func(*numbering) *sheet.Doc { return b.page().doc },
		data: func() *sheet.Doc { p := b.page(); return dataDoc(p.table, p.doc.Notes) },
		json: func() object { return b.page().json(b) },
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
	switch more := len(open) - briefWatch; {
	case more == 1:
		p.watch = append(p.watch, "1 more watch-out was raised.")
	case more > 1:
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
	if of, ok := strings.CutPrefix(rest, "for the "); ok {
		rest = "the " + strings.ReplaceAll(of, ", or for the ", ", or the ")
	}
	if word, _, _ := strings.Cut(rest, " "); !slices.Contains([]string{"the", "what", "which", "whether", "how", "where", "who", "if"}, word) {
		return ask
	}
	return "To settle: " + rest
}

// questions are what the customer must say more and what could not be checked.
func (p *briefPage) questions(b *OnePage) {
	var fields, unchecked []string
	for i, r := range b.Swaps {
		for j := range r.Lines {
			if f, ok := r.Lines[j].Lacks(); ok && f != part.FieldPrice {
				numbered(&fields, cmp.Or(f.Info().Asked, strings.TrimPrefix(r.Lines[j].Need, "needs ")))
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
	rows := [][]string{}
	for _, r := range p.table.Rows {
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, c.Text)
		}
		rows = append(rows, cleaned(cells))
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
