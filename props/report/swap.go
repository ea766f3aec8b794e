package report

import (
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/sheet"
	"alongside/props/swap"
)

// SwapCaution says how the results are to be read.
const SwapCaution = "Ranges are the worst cases of the figures behind them. Equal stiffness and strength hold for the same length, load and kind of section, without buckling."

// SwapDoc is swaps of one part: a table each, with formulas, figures and
// sources below.
func SwapDoc(results ...*swap.Result) *Doc {
	return &Doc{
		text: func(n *numbering) *sheet.Doc { return swapText(results, n) },
		data: func() *sheet.Doc { return swapData(results) },
		json: func() object { return swapJSON(results) },
	}
}

func swapText(results []*swap.Result, n *numbering) *sheet.Doc {
	title := "What the change of metal does to a part"
	f := &swapFoot{numbering: n, seen: map[*props.Figure]bool{}}
	d := &sheet.Doc{Blocks: []sheet.Block{sheet.Title(title)}, Foot: []string{SwapCaution}, Caution: Caution}
	for _, r := range results {
		if s := r.Given.Part.Summary(); s != "" {
			d.Blocks[0] = sheet.Title("What the change of metal does to the part: " + s)
		}
		d.Blocks = append(d.Blocks, swapTable(r, f))
		if r.Swapped != nil && !slices.Contains(d.Foot, costCaution) {
			d.Foot = append(d.Foot, costCaution)
		}
	}
	d.Notes = f.below()
	return d
}

// swapTable has a row for each line with a result or a reason; a result in
// words, the sentences to read aloud and what the part must say more stand
// below.
func swapTable(r *swap.Result, f *swapFoot) *sheet.Table {
	t := &sheet.Table{Heading: r.Pin.Name() + " in place of " + r.Base.Name(), Columns: sheet.Columns("", "today", "swapped", "change", "notes")}
	for i := range t.Columns[1:] {
		t.Columns[1+i].Align = sheet.Right
	}
	t.Notes = append(t.Notes, r.Worth()...)
	var last *swap.Line
	for i := range r.Lines {
		l := &r.Lines[i]
		if !l.Done() && l.Reason == "" {
			continue
		}
		t.Add(f.row(l)...)
		if last == nil || l.Group != last.Group {
			t.Rows[len(t.Rows)-1].Group = l.Group.String()
		}
		last = l
	}
	for _, n := range swapNeeds(r) {
		t.Notes = append(t.Notes, "With "+n+".")
	}
	return t
}

// swapFoot numbers what stands under the tables.
type swapFoot struct {
	*numbering               // of the sources
	notes, formulas, figures []string
	seen                     map[*props.Figure]bool
}

// row is a line as shown. Where there is no amount the ratio stands in its
// place.
func (f *swapFoot) row(l *swap.Line) []string {
	value, change := l.Value.String(), l.Change()
	switch {
	case value == "" && l.Ratio != nil:
		value = l.RatioText()
	case value == "" && l.Words != "":
		value = "see below"
	case value == "":
		value = "–"
	case change == "":
		change = l.RatioText()
	}
	notes := l.Notes
	if l.Reason != "" {
		notes = []string{l.Reason}
	}
	var marks []string
	for _, n := range notes {
		marks = append(marks, strconv.Itoa(numbered(&f.notes, n)))
	}
	if l.Reason == "" && l.Formula.Source != nil {
		marks = append(marks, "F"+strconv.Itoa(f.formula(l.Formula)))
		for _, u := range l.Figures {
			f.figure(u)
		}
	}
	return []string{l.Name, l.Base.String(), value, change, strings.Join(marks, " ")}
}

func (f *swapFoot) formula(x swap.Formula) int {
	return numbered(&f.formulas, x.Text+"; "+cited(f.mark(x.Source), "", x.Known))
}

// figure lists a figure once, however many lines rest on it.
func (f *swapFoot) figure(u swap.Used) {
	if f.seen[u.Figure] {
		return
	}
	f.seen[u.Figure] = true
	x := u.Figure
	f.figures = append(f.figures, u.Symbol+" of "+u.Of.Name()+": "+x.Property.Info().Name+" "+f.numbering.figure(x, x.Value.String()))
}

func (f *swapFoot) below() []sheet.Note {
	out := append(marked("", f.notes), marked("F", f.formulas)...)
	if len(f.formulas) > 0 {
		out = append(out, sheet.Note{Text: "In formulas 1 is the part today, 2 the part swapped, m the mate."})
	}
	for _, x := range f.figures {
		out = append(out, sheet.Note{Text: x})
	}
	return out
}

// swapNeeds says what the part must say more, and which lines wait for it.
func swapNeeds(r *swap.Result) []string {
	var out []string
	for _, need := range r.Needs() {
		var names []string
		for i := range r.Lines {
			l := &r.Lines[i]
			name, _, _ := strings.Cut(l.Name, ",")
			if name = props.InSentence(name); l.Need == need && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		out = append(out, strings.TrimPrefix(need, "needs ")+" it says more of: "+strings.Join(names, ", "))
	}
	return out
}
