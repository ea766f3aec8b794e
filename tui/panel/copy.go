package panel

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// copyLines is about how long a copy of the screen may be, to fit a mail.
const copyLines = 45

// scopes are what can be copied.
var scopes = []string{"screen", "bench", "row", "cell", "pin"}

// copyPanel chooses what to copy and how, and shows what will leave.
type copyPanel struct {
	panel
	h     int // lines of the panel
	top   int // scrolling of the preview
	sight []props.PropertyID
}

// NewCopy opens the choice of what to copy.
func NewCopy(d *desk.Desk) desk.Screen {
	return &copyPanel{panel: panel{desk: d, about: "Shows what will leave the program, and copies it for a mail or a spreadsheet."}, sight: rowsInSight(d)}
}

// doc is what the choice stands for.
func (p *copyPanel) doc() *report.Doc {
	if scope := p.desk.Scope; scopes[scope] != "screen" {
		return scopeDoc(p.desk, scope)
	}
	return screenDoc(p.desk, p.sight)
}

func (p *copyPanel) Title() string { return "Copy" }
func (p *copyPanel) Wheel(by int)  { p.top += by }

func (p *copyPanel) Keys() ui.Keys {
	d := p.desk
	next := func(at *int, by, n int) func() {
		return func() { *at, p.top = (*at+by+n)%n, 0 }
	}
	return ui.Keys{
		ui.Send("enter c y", "copy", "copy what is shown", func() tea.Cmd { d.Close(); return d.CopyDoc(p.doc(), scopes[d.Scope]) }),
		ui.On("up k", "what", "what to copy: this pin in the rows in sight, the whole bench, a row, a cell, a pin", next(&d.Scope, -1, len(scopes))).As("↑↓"),
		ui.On("down j", "", "", next(&d.Scope, 1, len(scopes))),
		ui.On("left h", "as", "in which form", next(&d.Format, -1, len(desk.Formats))).As("←→"),
		ui.On("right l tab", "", "", next(&d.Format, 1, len(desk.Formats))),
		ui.On("pgup", "scroll", "scroll what will leave", func() { p.top -= p.h / 2 }).As("pgup pgdn"),
		ui.On("pgdown", "", "", func() { p.top += p.h / 2 }),
	}
}

func (p *copyPanel) View(w, h int) []string {
	d, t := p.desk, p.desk.Theme
	p.h = h
	choice := func(label string, names []string, at int) string {
		s := t.Dim.Of(ui.Pad(" "+label, 7))
		for i, name := range names {
			if i == at {
				s += t.Chosen(" "+name+" ") + " "
			} else {
				s += " " + name + "  "
			}
		}
		return s
	}
	var formats []string
	for _, f := range desk.Formats {
		formats = append(formats, f.Words)
	}
	lines := []string{
		"", choice("what", scopes, d.Scope), "       " + t.Dim.Of(" "+ui.Cut(scopeWords(d), w-9)),
		choice("as", formats, d.Format), "",
	}
	text, err := d.Marked(p.doc()).Render(desk.Formats[d.Format].Name, report.MailWidth)
	if err != nil {
		text = err.Error()
	}
	preview := strings.Split(strings.TrimRight(text, "\n"), "\n")
	p.top = ui.Clamp(p.top, 0, len(preview)-1)
	for _, l := range preview[p.top:] {
		l = strings.ReplaceAll(l, "\t", "  │ ")
		lines = append(lines, "  "+t.Dim.Of(ui.Cut(ui.Plain(l), w-4)))
	}
	return lines
}

// scopeAt is what the i-th choice of what to copy stands for at the cursor.
func scopeAt(d *desk.Desk, i int) report.Scope {
	var s report.Scope
	if ofRow(i) {
		s.Property = d.CursorProperty()
	}
	if name := scopes[i]; name == "pin" || name == "cell" {
		s.Material = d.CursorPin()
	}
	return s
}

// ofRow reports whether a choice of what to copy is of one row.
func ofRow(scope int) bool { return scopes[scope] == "row" || scopes[scope] == "cell" }

// scopeWords says what the chosen scope is at the cursor.
func scopeWords(d *desk.Desk) string {
	s := scopeAt(d, d.Scope)
	if scopes[d.Scope] == "screen" {
		return "this pin against the baseline, the rows in sight"
	}
	words := "every row"
	if ofRow(d.Scope) && len(d.Table.Lines) > 0 {
		words = ui.Plain(d.CursorLine().Name)
	} else if s.Material == nil {
		words += ", every pin"
	}
	if s.Material == nil {
		return words
	}
	words += ", " + ui.Plain(s.Material.Name())
	if base := d.Baseline(); base != s.Material {
		words += " against " + ui.Plain(base.Name())
	}
	return words
}

// CopyScreen copies the pin under the cursor in the rows in sight.
func CopyScreen(d *desk.Desk) tea.Cmd { return d.CopyDoc(screenDoc(d, rowsInSight(d)), "screen") }

// CopyRow copies the row under the cursor.
func CopyRow(d *desk.Desk) tea.Cmd {
	return d.CopyDoc(scopeDoc(d, slices.Index(scopes, "row")), "row")
}

// rowsInSight are the properties whose rows are in sight; all of them where only
// limits and merits are.
func rowsInSight(d *desk.Desk) []props.PropertyID {
	var rows []props.PropertyID
	from, end := d.Rows.InSight()
	for _, l := range d.Table.Lines[from:min(end, len(d.Table.Lines))] {
		if l.OfProperty() {
			rows = append(rows, l.Property)
		}
	}
	if len(rows) == 0 {
		return props.Properties()
	}
	return rows
}

// screenDoc is the pin under the cursor against the baseline in these rows, fewer
// of them where the text would be longer than copyLines.
func screenDoc(d *desk.Desk, rows []props.PropertyID) *report.Doc {
	bench := d.Now().Bench.Clone()
	bench.Pins, bench.Baseline = []*props.Material{d.Baseline()}, 0
	if at := max(d.Col, 1); at < len(d.Pins()) {
		bench.Pins = append(bench.Pins, d.PinAt(at))
	}
	above := report.Limits{Needs: d.Now().NeedsOn(), Duties: d.Now().Duties}
	for n := len(rows); ; n-- {
		bench.Only = rows[:n]
		doc := report.CompareDoc(compare.Compare(bench), report.Scope{}, above)
		text, err := doc.Render("text", report.MailWidth)
		if err != nil || n <= 1 || strings.Count(text, "\n") <= copyLines {
			return doc
		}
	}
}

// scopeDoc is a part of the bench, the limits and merits included. Row and cell are
// those under the cursor.
func scopeDoc(d *desk.Desk, scope int) *report.Doc {
	s, bench := scopeAt(d, scope), d.Now().Bench
	if s.Material != nil {
		bench = bench.Clone()
		bench.Pins = slices.DeleteFunc(bench.Pins, func(p *props.Material) bool { return p != s.Material && p != d.Baseline() })
		bench.Baseline = slices.Index(bench.Pins, d.Baseline())
	}
	if n := d.CursorNeed(); n != nil && ofRow(scope) {
		return report.NeedDoc(bench.Pins, n)
	}
	if duty := d.CursorDuty(); duty != nil && ofRow(scope) {
		return report.MeritDoc(&bench, duty)
	}
	return report.CompareDoc(d.Comparison, s, report.Limits{Needs: d.Now().NeedsOn(), Duties: d.Now().Duties})
}
