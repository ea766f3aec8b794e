package tui

import (
	"context"
	"errors"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/clip"
	"alongside/tui/ui"
)

// copyState is the last choice of the copy panel; y and Y use its format.
type copyState struct{ scope, format int }

type copyFormat struct{ name, words, ending string }

// copyLines is about how long a copy of the screen may be, to fit a mail.
const copyLines = 45

var (
	copyScopes  = []string{"screen", "bench", "row", "cell", "pin"}
	copyFormats = []copyFormat{
		{"text", "text", ".txt"}, {"markdown", "Markdown", ".md"}, {"tsv", "tab-separated", ".tsv"}, {"html", "HTML table", ".html"},
	}
)

// copyLimit ends a copy that hangs.
const copyLimit = 5 * time.Second

// copied tells how a copy went.
type copied struct {
	what, how string
	err       error
}

// copyPanel chooses what to copy and how, and shows what will leave.
type copyPanel struct {
	panel
	h     int // lines of the panel
	top   int // scrolling of the preview
	sight []props.PropertyID
}

func newCopy(m *Model) screen { return &copyPanel{panel: panel{m: m}, sight: m.rowsInSight()} }

// doc is what the choice stands for.
func (p *copyPanel) doc() *report.Doc {
	if scope := p.m.copying.scope; copyScopes[scope] != "screen" {
		return p.m.scopeDoc(scope)
	}
	return p.m.screenDoc(p.sight)
}

func (p *copyPanel) Title() string { return "Copy" }
func (p *copyPanel) Wheel(by int)  { p.top += by }

func (p *copyPanel) Keys() ui.Keys {
	c := &p.m.copying
	next := func(at *int, by, n int) func() {
		return func() { *at, p.top = (*at+by+n)%n, 0 }
	}
	return ui.Keys{
		ui.Send("enter c y", "copy", "copy what is shown", func() tea.Cmd { p.m.close(); return p.m.copyDoc(p.doc(), copyScopes[c.scope]) }),
		ui.On("up k", "what", "what to copy: this pin in the rows in sight, the whole bench, a row, a cell, a pin", next(&c.scope, -1, len(copyScopes))).As("↑↓"),
		ui.On("down j", "", "", next(&c.scope, 1, len(copyScopes))),
		ui.On("left h", "as", "in which form", next(&c.format, -1, len(copyFormats))).As("←→"),
		ui.On("right l tab", "", "", next(&c.format, 1, len(copyFormats))),
		ui.On("pgup", "scroll", "scroll what will leave", func() { p.top -= p.h / 2 }).As("pgup pgdn"),
		ui.On("pgdown", "", "", func() { p.top += p.h / 2 }),
	}
}

func (p *copyPanel) View(w, h int) []string {
	m, t := p.m, p.m.theme
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
	for _, f := range copyFormats {
		formats = append(formats, f.words)
	}
	lines := []string{
		"", choice("what", copyScopes, m.copying.scope), "       " + t.Dim.Of(" "+ui.Cut(m.scopeWords(), w-9)),
		choice("as", formats, m.copying.format), "",
	}
	text, err := m.marked(p.doc()).Render(copyFormats[m.copying.format].name, report.MailWidth)
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

// scope is what the i-th choice of what to copy stands for at the cursor.
func (m *Model) scope(i int) report.Scope {
	var s report.Scope
	if ofRow(i) {
		s.Property = m.cursorProperty()
	}
	if name := copyScopes[i]; name == "pin" || name == "cell" {
		s.Material = m.cursorPin()
	}
	return s
}

// ofRow reports whether a choice of what to copy is of one row.
func ofRow(scope int) bool { return copyScopes[scope] == "row" || copyScopes[scope] == "cell" }

// scopeWords says what the chosen scope is at the cursor.
func (m *Model) scopeWords() string {
	s := m.scope(m.copying.scope)
	if copyScopes[m.copying.scope] == "screen" {
		return "this pin against the baseline, the rows in sight"
	}
	words := "every row"
	if ofRow(m.copying.scope) && len(m.table.Lines) > 0 {
		words = ui.Plain(m.cursorLine().Name)
	} else if s.Material == nil {
		words += ", every pin"
	}
	if s.Material == nil {
		return words
	}
	words += ", " + ui.Plain(s.Material.Name())
	if base := m.baseline(); base != s.Material {
		words += " against " + ui.Plain(base.Name())
	}
	return words
}

func (m *Model) copyScreen() tea.Cmd { return m.copyDoc(m.screenDoc(m.rowsInSight()), "screen") }
func (m *Model) copyRow() tea.Cmd {
	return m.copyDoc(m.scopeDoc(slices.Index(copyScopes, "row")), "row")
}

// rowsInSight are the properties whose rows are in sight; all of them where only
// limits and merits are.
func (m *Model) rowsInSight() []props.PropertyID {
	var rows []props.PropertyID
	from, end := m.rows.InSight()
	for _, l := range m.table.Lines[from:min(end, len(m.table.Lines))] {
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
func (m *Model) screenDoc(rows []props.PropertyID) *report.Doc {
	bench := m.now().Bench.Clone()
	bench.Pins, bench.Baseline = []*props.Material{m.baseline()}, 0
	if at := max(m.col, 1); at < len(m.pins()) {
		bench.Pins = append(bench.Pins, m.pinAt(at))
	}
	above := report.Limits{Needs: m.now().NeedsOn(), Duties: m.now().Duties}
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
func (m *Model) scopeDoc(scope int) *report.Doc {
	s, bench := m.scope(scope), m.now().Bench
	if s.Material != nil {
		bench = bench.Clone()
		bench.Pins = slices.DeleteFunc(bench.Pins, func(p *props.Material) bool { return p != s.Material && p != m.baseline() })
		bench.Baseline = slices.Index(bench.Pins, m.baseline())
	}
	if n := m.cursorNeed(); n != nil && ofRow(scope) {
		return report.NeedDoc(bench.Pins, n)
	}
	if d := m.cursorDuty(); d != nil && ofRow(scope) {
		return report.MeritDoc(&bench, d)
	}
	return report.CompareDoc(m.comparison, s, report.Limits{Needs: m.now().NeedsOn(), Duties: m.now().Duties})
}

// marked is a document as it leaves: that of a demo says so.
func (m *Model) marked(d *report.Doc) *report.Doc {
	if m.o.Invented != "" {
		return d.Marked(m.o.Invented)
	}
	return d
}

// copyDoc copies a document in the format last chosen.
func (m *Model) copyDoc(d *report.Doc, what string) tea.Cmd {
	f := copyFormats[m.copying.format]
	d = m.marked(d)
	text, err := d.Render(f.name, report.MailWidth)
	if err != nil {
		m.warn(err.Error())
		return nil
	}
	payload := clip.Payload{Text: text, File: what + f.ending}
	if f.name == "html" {
		payload.Text, _ = d.Render("text", report.MailWidth) // text is a format
		payload.HTML = text
	}
	return m.send(payload, what+" as "+f.words)
}

// send hands a payload to the clipboard, away from the screen, which stays
// usable meanwhile.
func (m *Model) send(payload clip.Payload, what string) tea.Cmd {
	if m.inBurst() {
		return nil
	}
	if m.o.Copy == nil {
		m.warn("there is no clipboard to copy to here")
		return nil
	}
	m.say("copying the " + what + " …")
	ctx, do := m.ctx, m.o.Copy
	m.sending.Add(1)
	return func() tea.Msg {
		defer m.sending.Done()
		ctx, cancel := context.WithTimeout(ctx, copyLimit)
		defer cancel()
		how, err := do(ctx, payload)
		return copied{what, how, err}
	}
}

// lastCopy is how long a copy that was asked for just before the end may take.
const lastCopy = time.Second

// finishCopies waits for copies under way and stops those that hang, with the
// clipboard commands they run.
func (m *Model) finishCopies(stop context.CancelFunc) {
	done := make(chan struct{})
	go func() { m.sending.Wait(); close(done) }()
	for range 2 {
		select {
		case <-done:
		case <-time.After(lastCopy):
		}
		stop()
	}
}

func (m *Model) takeCopied(c copied) {
	switch {
	case errors.Is(c.err, context.DeadlineExceeded):
		m.warnf("the %s was not copied: the clipboard did not answer in time", c.what)
	case c.err != nil:
		m.warnf("the %s was not copied: %v", c.what, c.err)
	default:
		m.sayf("%s: %s", c.what, c.how)
	}
}
