package panel

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// briefPanel is the one page for the customer: today's metal and up to three
// proposals, the pin under the cursor and those behind it.
type briefPanel struct {
	pages
	count int                 // of proposals
	of    *compare.Comparison // that the text was laid out for
	first int                 // pin, as displayed
}

// NewBrief opens the one page for the customer.
func NewBrief(d *desk.Desk) desk.Screen {
	if len(d.Pins()) < 2 {
		d.Warn(twoPinsNeeded)
		return nil
	}
	p := &briefPanel{pages: *newPages(d, "", "Puts the answer to the call on one page for the customer, to read out and to copy.", nil), count: 1}
	if len(d.Pins()) <= 3 { // two fit the page with all that there is to say
		p.count = 2
	}
	p.digit = "7"
	return p
}

// proposals are the pins that the brief tells of; none where undo took them away.
func (p *briefPanel) proposals() []*props.Material {
	d, n := p.desk, len(p.desk.Pins())
	from := ui.Clamp(d.Col, 1, max(n-p.count, 1))
	var out []*props.Material
	for at := from; at < min(from+p.count, n); at++ {
		out = append(out, d.PinAt(at))
	}
	if p.of != d.Comparison || p.first != from {
		p.of, p.first = d.Comparison, from
		p.text = ui.Pages{Lay: p.lay}
	}
	return out
}

func (p *briefPanel) page() report.OnePage {
	d, now := p.desk, p.desk.Now()
	return report.NewOnePage(now.Bench, now.NeedsOn(), d.Given(), d.Rules, now.Aside, p.proposals()...)
}

func (p *briefPanel) doc() *report.Doc { return report.BriefDoc(p.page()) }

// report asks for a file and writes the whole report to it.
func (p *briefPanel) report() desk.Screen {
	d, now := p.desk, p.desk.Now()
	doc := d.Marked(report.WholeDoc(report.Whole{OnePage: p.page(), All: now.Bench, Catalog: d.Catalog, Book: d.Book(), Said: now.Said, Duties: now.Duties, At: time.Now(), Version: d.Version}))
	return newPrompt(d, "Report", "A new file for the brief and all that it rests on. Its ending says the form: .html is one page for a browser, a mail or a printer; .md, .txt and .json too.",
		"report.html", func(path string) error {
			err := report.WriteNew(path, doc, "")
			if err == nil {
				d.Say("the report is written to " + path)
			}
			return err
		})
}

func (p *briefPanel) lay(w int) []string {
	if len(p.desk.Pins()) < 2 {
		return p.desk.Theme.Dim.Wrap(twoPinsNeeded, w, 1)
	}
	return docLines(p.desk.Theme, p.doc(), w)
}

func (p *briefPanel) Title() string {
	p.title = "Brief for the customer"
	switch shown, beside := len(p.proposals()), len(p.desk.Pins())-1; {
	case shown == beside:
	case shown == 1:
		p.title += fmt.Sprintf(" · pin %d of %d", p.first, beside)
	default:
		p.title += fmt.Sprintf(" · pins %d–%d of %d", p.first, p.first+shown-1, beside)
	}
	return p.pages.Title()
}

func (p *briefPanel) Height(w, most int) int { p.proposals(); return p.pages.Height(w, most) }
func (p *briefPanel) View(w, h int) []string { p.proposals(); return p.pages.View(w, h) }

func (p *briefPanel) Keys() ui.Keys {
	keys := ui.Keys{ui.Send("y", "copy", "copy the brief", func() tea.Cmd { return p.desk.CopyDoc(p.doc(), "brief") })}
	if p.desk.Book() != nil {
		keys = append(keys, ui.On("r", "report", "write the whole report to a file", func() { p.desk.Open(p.report()) }))
	}
	if beside := len(p.desk.Pins()) - 1; beside > 1 {
		keys = append(keys, ui.On("+", "more", "one, two or three proposals on the page", func() {
			p.count, p.of = p.count%min(beside, report.BriefProposals)+1, nil
		}))
		keys = append(keys, p.desk.PinKeys(true)...)
	}
	return append(append(keys, p.desk.BenchKeys("s")...), p.text.Keys()...)
}
