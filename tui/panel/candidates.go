package panel

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// nearMisses is how many near misses the panel shows.
const nearMisses = 40

// candidates lists the materials that meet the needs, then the near misses
// with what stops each. Any of them is pinned with one key.
type candidates struct {
	panel
	found  needs.Found
	all    []needs.Result // as met the needs, before a trade-off front
	sort   int
	memory bool               // offer what is known from memory alone too
	front  []props.PropertyID // two, or none
	marked
}

// NewCandidates opens the list of what meets the needs, the needs where there are none.
func NewCandidates(d *desk.Desk) desk.Screen {
	if len(d.Now().NeedsOn()) == 0 {
		d.Warn("no needs yet: type the customer's limits")
		return NewNeeds(d)
	}
	c := &candidates{panel: panel{desk: d, digit: "3", about: "Lists the metals that meet the needs, and those that one limit stops."}}
	c.find()
	return c
}

func (c *candidates) find() {
	c.found = needs.Find(c.desk.Catalog.AskedFor(), c.desk.Now().Needs, nearMisses, c.memory)
	c.all = c.found.Met
	c.order()
}

func (c *candidates) Title() string {
	by := c.sortings()[c.sort].name
	if c.front != nil {
		return fmt.Sprintf("Trade-off front, %s and %s: %d of the %d that meet every need, by %s", c.front[0].Info().Short, c.front[1].Info().Short, len(c.found.Met), len(c.all), by)
	}
	near := ""
	if n := len(c.found.Near); n < c.found.NearTotal {
		near = fmt.Sprintf("; %d nearest of %d others", n, c.found.NearTotal)
	}
	return fmt.Sprintf("Candidates: %d meet every need, by %s%s", len(c.found.Met), by, near)
}

func (c *candidates) Height(_, most int) int { return min(most, c.count()+4) }

func (c *candidates) Keys() ui.Keys {
	return append(ui.Keys{
		ui.On("enter tab +", "pin", "pin this material, or all that are marked", c.pin).As("enter"),
		ui.On("space", "mark", "mark several, Enter pins them all", c.mark),
		ui.On("o", "sort", "next order: margin, likeness, a property", c.nextOrder),
		ui.On("f", "trade-off front", "next pair of needs to trade off, none", c.nextFront),
		ui.Send("y", "copy", "copy the candidates", c.copy),
		ui.On("m", "memory", "offer what is known from memory alone too, or not", func() { c.memory = !c.memory; c.find() }),
	}, c.list.Keys()...)
}

func (c *candidates) pin() {
	if c.list.At < c.count() {
		c.desk.Pin(c.marked.or(c.result(c.list.At).Material)...)
		c.marked = nil
	}
}

func (c *candidates) mark() {
	if c.list.At < c.count() {
		c.toggle(c.result(c.list.At).Material)
		c.list.Move(1)
	}
}

func (c *candidates) nextOrder() {
	c.sort = (c.sort + 1) % len(c.sortings())
	c.order()
}

func (c *candidates) copy() tea.Cmd {
	text := report.FoundDoc(report.Search{Needs: c.desk.Now().Needs, Found: c.found, Bench: c.desk.Now().Bench, Front: c.front != nil})
	return c.desk.CopyDoc(text, "the candidates")
}

// bounded are the needs that bound a property: the columns of the list.
func (c *candidates) bounded() []*needs.Need {
	var out []*needs.Need
	for i := range c.desk.Now().Needs {
		if n := &c.desk.Now().Needs[i]; !n.Off && n.Kind == needs.OfProperty {
			out = append(out, n)
		}
	}
	return out
}

// properties are those that the needs bound, each once.
func (c *candidates) properties() []props.PropertyID {
	var out []props.PropertyID
	for _, n := range c.bounded() {
		if !slices.Contains(out, n.Property) {
			out = append(out, n.Property)
		}
	}
	return out
}

// sorting is one order of the candidates.
type sorting struct {
	name  string
	apply func([]needs.Result)
}

// sortings are the orders the o key steps through: those of the needs, and
// the property that the bench's cursor is on, so that any property will do.
func (c *candidates) sortings() []sorting {
	b := &c.desk.Now().Bench
	list := []sorting{
		{"how well known", func([]needs.Result) {}},
		{"margin", needs.SortByMargin},
	}
	if len(b.Pins) > 0 {
		list = append(list, sorting{"likeness to the baseline", func(r []needs.Result) { needs.SortByLikeness(r, b, b.Pins[b.Baseline]) }})
	}
	properties := c.properties()
	if p := c.desk.CursorProperty(); p != props.NoProperty && !slices.Contains(properties, p) {
		properties = append(properties, p)
	}
	for _, p := range properties {
		list = append(list, sorting{strings.ToLower(p.Info().Name), func(r []needs.Result) { needs.SortByProperty(r, b, p) }})
	}
	return list
}

func (c *candidates) order() {
	met := slices.Clone(c.all)
	if c.front != nil {
		met = needs.Front(met, &c.desk.Now().Bench, c.front[0], c.front[1])
	}
	c.sortings()[c.sort].apply(met)
	c.found.Met = met
	c.list = ui.List{}
}

func (c *candidates) result(i int) *needs.Result {
	if i < len(c.found.Met) {
		return &c.found.Met[i]
	}
	return &c.found.Near[i-len(c.found.Met)]
}

func (c *candidates) count() int { return len(c.found.Met) + len(c.found.Near) }

// nextFront steps through the pairs of bounded properties, then none.
func (c *candidates) nextFront() {
	list := c.properties()
	if len(list) < 2 {
		c.desk.Warn("a trade-off front needs two bounded properties")
		return
	}
	var pairs [][]props.PropertyID
	next := 0
	for i := range list {
		for _, other := range list[i+1:] {
			pairs = append(pairs, []props.PropertyID{list[i], other})
			if slices.Equal(pairs[len(pairs)-1], c.front) {
				next = len(pairs)
			}
		}
	}
	c.front = nil
	if next < len(pairs) {
		c.front = pairs[next]
	}
	c.order()
}

const (
	candidateName = 30
	longCandidate = 40
)

// columns are as wide as their heads and figures; the names get what is left,
// within bounds.
func (c *candidates) columns(w int, bounded []*needs.Need) ui.Columns {
	cols := ui.Columns{{Width: 2}, {Head: "material", Width: candidateName}}
	for _, n := range bounded {
		head := strings.TrimSpace(n.Property.Info().Short + " " + n.Limit.Unit.Symbol())
		cols = append(cols, ui.Column{Head: head, Width: max(ui.Width(ui.Plain(head)), 8), Right: true})
	}
	name := &cols[1].Width
	*name = ui.Clamp(*name+cols.Room(w), candidateName*2/3, longCandidate)
	return cols
}

func (c *candidates) View(w, h int) []string {
	bounded := c.bounded()
	cols := c.columns(w, bounded)
	var left []string
	if n := len(c.found.Remembered); n > 0 {
		left = []string{c.desk.Theme.Dim.Of(ui.Cut(" "+report.LeftOut(n, "m"), w))}
	}
	return c.list.Draw(ui.Listing{
		Head: []string{c.desk.Theme.Dim.Of(cols.Heads())}, Items: c.count(),
		Line: func(i int, here bool) string { return c.line(cols, bounded, i, here) },
		Foot: func() []string { return ui.Fill(append(ui.Few(c.words(w), 3-len(left), w), left...), 3) },
	}, h)
}

func (c *candidates) line(cols ui.Columns, bounded []*needs.Need, i int, here bool) string {
	t, r := c.desk.Theme, c.result(i)
	sign, pinned, ink := "✓", " ", t.Text
	if i >= len(c.found.Met) {
		sign, ink = "✗", t.Dim
		if r.Unjudged() {
			sign = "–"
		}
	}
	switch {
	case slices.Contains(c.marked, r.Material):
		pinned, ink = markSign, t.Strong
	case slices.Contains(c.desk.Pins(), r.Material):
		pinned = "+"
	}
	texts := []string{pinned + sign, r.Material.Name()}
	for _, n := range bounded {
		texts = append(texts, report.NeedValue(r, n))
	}
	return t.Line(cols.Line(texts...), here, ink)
}

// words tells of the material under the cursor what stops it, or on what it
// rests.
func (c *candidates) words(w int) []string {
	if c.count() == 0 {
		return []string{c.desk.Theme.Bad.Of(ui.Cut(" Nothing meets the needs, and nothing misses them by only one or two.", w))}
	}
	r := c.result(c.list.At)
	text := "meets every need"
	switch {
	case len(r.Stops) > 0:
		text = report.Stops(r)
	case r.OnlyTypical:
		text = "meets every need, but one only on a typical figure: no specified minimum is on file"
	}
	if r.Recalled {
		text += "; * from memory, not read"
	}
	return c.desk.Theme.Dim.Wrap(r.Material.Name()+": "+text, w, 1)
}
