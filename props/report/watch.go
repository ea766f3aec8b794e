package report

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/sheet"
	"alongside/props/watch"
)

// watchNote says what watch-outs are.
const watchNote = "Watch-outs are questions to settle before a quotation, not verdicts; that none is raised does not mean that nothing can go wrong."

// Watched is what was raised for one pin.
type Watched struct {
	Base, Pin *props.Material // Base may be nil
	Cautions  []watch.Caution
}

// Title is the change in one line.
func (w *Watched) Title() string {
	if w.Base == nil {
		return w.Pin.Name()
	}
	return w.Pin.Name() + " in place of " + w.Base.Name()
}

// WatchDoc is watch-outs: for reading a table for each caution, the open ones
// before those that could not be checked and those put aside; for a
// spreadsheet a record each.
func WatchDoc(list ...Watched) *Doc {
	return &Doc{
		text: func(n *numbering) *sheet.Doc { return watchText(list, n) },
		data: func() *sheet.Doc { return watchData(list) },
		json: func() object { return watchJSON(list) },
	}
}

func watchText(list []Watched, n *numbering) *sheet.Doc {
	d := &sheet.Doc{Blocks: []sheet.Block{sheet.Title("Watch-outs")}, Foot: []string{watchNote}, Caution: Caution}
	for i := range list {
		w := &list[i]
		count := &sheet.Table{Heading: w.Title()}
		count.Add(countText(watch.Counts(w.Cautions)))
		unchecked := &sheet.Table{Heading: "Could not be checked", Columns: sheet.Columns("watch-out", "what is missing")}
		dismissed := &sheet.Table{Heading: "Put aside", Columns: sheet.Columns("watch-out", "title")}
		d.Blocks = append(d.Blocks, count)
		for j := range w.Cautions {
			switch c := &w.Cautions[j]; {
			case c.Dismissed:
				dismissed.Add(c.ID, c.Title)
			case c.Unchecked != "":
				unchecked.Add(c.Title, c.Unchecked)
			default:
				d.Blocks = append(d.Blocks, n.caution(c))
			}
		}
		d.Blocks = append(d.Blocks, filled(unchecked, dismissed)...)
	}
	return d
}

func countText(c watch.Count) string {
	return fmt.Sprintf("stop and ask %d, check %d, could not be checked %d, put aside %d", c.Ask, c.Check, c.Unchecked, c.Dismissed)
}

func (n *numbering) caution(c *watch.Caution) *sheet.Table {
	t := &sheet.Table{Heading: c.Severity.String() + ": " + c.Title}
	t.Add("what", n.statement(foundry.Statement{Text: c.Text, Cite: c.Cite}))
	for i, why := range c.Why {
		t.Add(first(i, "why"), why)
	}
	for i := range c.Figures {
		t.Add(first(i, "figures"), n.shown(&c.Figures[i]))
	}
	for i, f := range c.Facts {
		t.Add(first(i, "published"), n.statement(f))
	}
	t.Add("id", c.ID)
	return t
}

func first(i int, label string) string {
	if i == 0 {
		return label
	}
	return ""
}

// shown is a figure of the catalog in a sentence with its source.
func (n *numbering) shown(s *watch.Shown) string {
	text := s.Material.Name() + ": " + s.Property.Info().Name + " "
	if s.Figure == nil {
		return text + "– (" + s.Absent + ")"
	}
	return text + n.figure(s.Figure, s.Figure.Value.String())
}

var watchColumns = []string{"from", "to", "severity", "state", "id", "title", "text", "why", "figures", "published", "missing", "source", "known"}

func watchData(list []Watched) *sheet.Doc {
	t := &sheet.Table{Columns: sheet.Columns(watchColumns...)}
	n := &numbering{}
	for i := range list {
		w := &list[i]
		for j := range w.Cautions {
			c := &w.Cautions[j]
			var figures []string
			for k := range c.Figures {
				figures = append(figures, n.shown(&c.Figures[k]))
			}
			r := record{"from": w.from(), "to": w.Pin.ID, "severity": c.Severity.String(), "state": state(c), "id": c.ID, "title": c.Title, "text": c.Text,
				"why": strings.Join(c.Why, "; "), "figures": strings.Join(figures, " | "), "missing": c.Unchecked, "published": n.statements(c.Facts)}
			r["source"], r["known"] = joined(", ", n.mark(c.Source), c.Table), c.Known.String()
			t.Add(r.cells(watchColumns)...)
		}
	}
	return dataDoc(t, n.below(), watchNote)
}

// from is the id of what is replaced, "" for a look at one metal.
func (w *Watched) from() string {
	if w.Base == nil {
		return ""
	}
	return w.Base.ID
}

// state is whether a caution is open, could not be checked, or is put aside.
func state(c *watch.Caution) string {
	switch {
	case c.Dismissed:
		return "put aside"
	case c.Unchecked != "":
		return "could not be checked"
	}
	return "open"
}

func watchJSON(list []Watched) object {
	return object{
		{"changes", each(list, func(w *Watched) object {
			return object{{"from", w.from()}, {"to", w.Pin.ID}, {"cautions", each(w.Cautions, cautionJSON)}}
		})},
		{"caution", watchNote + " " + Caution},
	}
}

func cautionJSON(c *watch.Caution) object {
	return object{
		{"id", c.ID},
		{"title", c.Title},
		{"answer", c.Answer},
		{"text", c.Text},
		{"severity", c.Severity.String()},
		{"state", state(c)},
		{"why", c.Why},
		{"figures", each(c.Figures, func(s *watch.Shown) object {
			return object{{"role", s.Role}, {"material", s.Material.ID}, {"property", s.Property.String()}, {"figure", printedJSON(s.Figure)}, {"absent", s.Absent}}
		})},
		{"published", each(c.Facts, statementJSON)},
		{"missing", c.Unchecked},
		{"source", citeJSON(c.Cite)},
	}
}
