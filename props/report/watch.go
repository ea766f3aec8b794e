package report

import (
	"fmt"
	"strings"

	"alongside/props"
	"alongside/props/watch"
)

// WatchNote says what watch-outs are.
const WatchNote = "Watch-outs are questions to settle before a quotation, not verdicts; that none is raised does not mean that nothing can go wrong."

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

// WatchDoc writes watch-outs for reading: a table for each caution, the open
// ones before those that could not be checked and those put aside.
func WatchDoc(list ...Watched) *Doc {
	d := &Doc{Title: "Watch-outs"}
	n := &numbering{}
	for i := range list {
		w := &list[i]
		count := DocTable{Heading: w.Title(), Rows: [][]string{{countText(watch.Counts(w.Cautions))}}}
		unchecked := DocTable{Heading: "Could not be checked", Head: []string{"watch-out", "what is missing"}}
		dismissed := DocTable{Heading: "Put aside", Head: []string{"watch-out", "title"}}
		d.Tables = append(d.Tables, count)
		for j := range w.Cautions {
			switch c := &w.Cautions[j]; {
			case c.Dismissed:
				dismissed.Rows = append(dismissed.Rows, []string{c.ID, c.Title})
			case c.Unchecked != "":
				unchecked.Rows = append(unchecked.Rows, []string{c.Title, c.Unchecked})
			default:
				d.Tables = append(d.Tables, n.caution(c))
			}
		}
		d.Tables = append(d.Tables, some([]DocTable{unchecked, dismissed})...)
	}
	d.Foot = append(sourceLines(n.sources), WatchNote)
	return d
}

func countText(c watch.Count) string {
	return fmt.Sprintf("stop and ask %d, check %d, could not be checked %d, put aside %d", c.Ask, c.Check, c.Unchecked, c.Dismissed)
}

func (n *numbering) caution(c *watch.Caution) DocTable {
	t := DocTable{Heading: c.Severity.String() + ": " + c.Title}
	row := func(label, text string) { t.Rows = append(t.Rows, []string{label, text}) }
	row("what", c.Text+" ["+n.cited(c.Cite)+"]")
	for i, why := range c.Why {
		row(first(i, "why"), why)
	}
	for i := range c.Figures {
		row(first(i, "figures"), n.shown(&c.Figures[i]))
	}
	for i, f := range c.Facts {
		row(first(i, "published"), f.Text+" ["+n.cited(f.Cite)+"]")
	}
	row("id", c.ID)
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
	f := s.Figure
	text += f.Value.String() + ", " + f.Basis.Phrase()
	if cond := f.Cond.String(); cond != "" {
		text += "; " + cond
	}
	text += fmt.Sprintf(" [S%d", n.source(f.Source))
	if f.Table != "" {
		text += ", " + f.Table
	}
	if aside := n.unread(f); aside != "" {
		text += ", " + strings.TrimSuffix(aside, ", not read")
	}
	return text + "]"
}

var watchColumns = []string{"from", "to", "severity", "state", "id", "title", "text", "why", "figures", "published", "missing", "source", "known"}

// WatchSheet is watch-outs for a spreadsheet: a record for each caution.
func WatchSheet(list ...Watched) *Doc {
	t := DocTable{Head: watchColumns}
	n := &numbering{}
	for i := range list {
		w := &list[i]
		from := ""
		if w.Base != nil {
			from = w.Base.ID
		}
		for j := range w.Cautions {
			c := &w.Cautions[j]
			var figures, facts []string
			for k := range c.Figures {
				figures = append(figures, n.shown(&c.Figures[k]))
			}
			for _, f := range c.Facts {
				facts = append(facts, f.Text+" ["+n.cited(f.Cite)+"]")
			}
			t.Rows = append(t.Rows, []string{from, w.Pin.ID, c.Severity.String(), state(c), c.ID, c.Title, c.Text,
				strings.Join(c.Why, "; "), strings.Join(figures, "; "), strings.Join(facts, "; "), c.Unchecked, n.cited(c.Cite), c.Known.String()})
		}
	}
	return &Doc{Tables: []DocTable{t}, Foot: append(sourceLines(n.sources), WatchNote)}
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

type jsonWatched struct {
	From     string        `json:"from"`
	To       string        `json:"to"`
	Cautions []jsonCaution `json:"cautions"`
}

type jsonCaution struct {
	ID        string          `json:"id"`
	Title     string          `json:"title"`
	Text      string          `json:"text"`
	Severity  string          `json:"severity"`
	State     string          `json:"state"`
	Why       []string        `json:"why"`
	Figures   []jsonShown     `json:"figures"`
	Published []jsonStatement `json:"published"`
	Missing   string          `json:"missing"`
	jsonCite
}

type jsonShown struct {
	Role     string      `json:"role"`
	Material string      `json:"material"`
	Property string      `json:"property"`
	Printed  string      `json:"printed"`
	Figure   *jsonFigure `json:"figure"`
	Absent   string      `json:"absent"`
}

// WatchJSON writes watch-outs for programs. Names are not changed and nothing
// is taken away.
func WatchJSON(list ...Watched) string {
	d := struct {
		Changes []jsonWatched `json:"changes"`
		Caution string        `json:"caution"`
	}{[]jsonWatched{}, WatchNote + " " + Caution}
	for i := range list {
		w := &list[i]
		j := jsonWatched{To: w.Pin.ID, Cautions: []jsonCaution{}}
		if w.Base != nil {
			j.From = w.Base.ID
		}
		for k := range w.Cautions {
			j.Cautions = append(j.Cautions, cautionJSON(&w.Cautions[k]))
		}
		d.Changes = append(d.Changes, j)
	}
	return encode(d)
}

func cautionJSON(c *watch.Caution) jsonCaution {
	j := jsonCaution{ID: c.ID, Title: c.Title, Text: c.Text, Severity: c.Severity.String(), State: state(c), Why: append([]string{}, cleaned(c.Why)...),
		Figures: []jsonShown{}, Published: statementsJSON(c.Facts), Missing: Clean(c.Unchecked), jsonCite: citeJSON(c.Cite)}
	for _, s := range c.Figures {
		f := jsonShown{Role: s.Role, Material: s.Material.ID, Property: s.Property.String(), Absent: s.Absent}
		if s.Figure != nil {
			f.Printed = s.Figure.Value.String()
			figure := printed(s.Figure)
			f.Figure = &figure
		}
		j.Figures = append(j.Figures, f)
	}
	return j
}
