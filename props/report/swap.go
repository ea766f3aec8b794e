package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/swap"
)

// SwapFormats lists the formats of RenderSwap.
func SwapFormats() []string { return []string{"text", "markdown", "tsv", "html", "json"} }

// RenderSwap writes swaps of one part as text (lines of up to width characters
// where the tables allow), markdown, tsv, html or json. Another format is an
// error that lists these.
func RenderSwap(format string, width int, results ...*swap.Result) (string, error) {
	switch format {
	case "tsv":
		return SwapTSV(results...), nil
	case "json":
		return SwapJSON(results...), nil
	case "text", "markdown", "html":
		return SwapDoc(results...).Render(format, width)
	}
	return "", fmt.Errorf("no format %q; use one of: %s", format, strings.Join(SwapFormats(), ", "))
}

// SwapCaution says how the results are to be read.
const SwapCaution = "Ranges are the worst cases of the figures behind them. Equal stiffness and strength hold for the same length, load and kind of section, without buckling."

// SwapDoc reports swaps of one part: a table each, with formulas, figures and
// sources below.
func SwapDoc(results ...*swap.Result) *Doc {
	d := &Doc{Title: "What the change of metal does to a part"}
	f := &swapFoot{seen: map[*props.Figure]bool{}}
	for _, r := range results {
		if s := r.Given.Part.Summary(); s != "" {
			d.Title = "What the change of metal does to the part: " + s
		}
		d.Tables = append(d.Tables, swapTable(r, f))
	}
	d.Foot = f.lines()
	return d
}

// swapTable has a row for each line with a result or a reason; a result in
// words, the sentences to read aloud and what the part must say more stand
// below.
func swapTable(r *swap.Result, f *swapFoot) DocTable {
	t := DocTable{Heading: r.Pin.Name() + " in place of " + r.Base.Name(), Right: 1,
		Head: []string{"", "today", "swapped", "change", "notes"}}
	group := swap.Group(255)
	t.Notes = append(t.Notes, r.Worth()...)
	for i := range r.Lines {
		l := &r.Lines[i]
		if !l.Done() && l.Reason == "" {
			continue
		}
		if l.Group != group {
			group = l.Group
			t.Rows = append(t.Rows, []string{strings.ToUpper(group.String())})
		}
		t.Rows = append(t.Rows, f.row(l))
	}
	for _, n := range swapNeeds(r) {
		t.Notes = append(t.Notes, "With "+n+".")
	}
	return t
}

// swapFoot numbers what stands under the tables.
type swapFoot struct {
	numbering
	formulas, figures []string
	seen              map[*props.Figure]bool
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
		marks = append(marks, strconv.Itoa(f.note(n)))
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
	text := x.Text + "; S" + strconv.Itoa(f.source(x.Source))
	if aside := unread(x.Known, ""); aside != "" {
		text += ", " + aside
	}
	for i, have := range f.formulas {
		if have == text {
			return i + 1
		}
	}
	f.formulas = append(f.formulas, text)
	return len(f.formulas)
}

// figure lists a figure once, however many lines rest on it.
func (f *swapFoot) figure(u swap.Used) {
	if f.seen[u.Figure] {
		return
	}
	f.seen[u.Figure] = true
	x := u.Figure
	text := u.Symbol + " of " + u.Of.Name() + ": " + x.Property.Info().Name + " " + x.Value.String() + ", " + x.Basis.Phrase()
	if cond := x.Cond.String(); cond != "" {
		text += "; " + cond
	}
	text += "; S" + strconv.Itoa(f.source(x.Source))
	if x.Table != "" {
		text += ", " + x.Table
	}
	if aside := f.unread(x); aside != "" {
		text += ", " + aside
	}
	f.figures = append(f.figures, text)
}

func (f *swapFoot) lines() []string {
	var out []string
	for i, n := range f.notes {
		out = append(out, strconv.Itoa(i+1)+" "+n)
	}
	for i, x := range f.formulas {
		out = append(out, "F"+strconv.Itoa(i+1)+" "+x)
	}
	if len(f.formulas) > 0 {
		out = append(out, "In formulas 1 is the part today, 2 the part swapped, m the mate.")
	}
	out = append(out, f.figures...)
	for i, s := range f.sources {
		out = append(out, "S"+strconv.Itoa(i+1)+" "+s)
	}
	return append(out, SwapCaution)
}

// swapNeeds says what the part must say more, and which lines wait for it.
func swapNeeds(r *swap.Result) []string {
	var out []string
	for _, need := range r.Needs() {
		var names []string
		for i := range r.Lines {
			l := &r.Lines[i]
			name, _, _ := strings.Cut(l.Name, ",")
			if name = strings.ToLower(name); l.Need == need && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		out = append(out, strings.TrimPrefix(need, "needs ")+" it says more of: "+strings.Join(names, ", "))
	}
	return out
}
