package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/tui/ui"
)

// nearMisses is how many near misses the panel shows.
const nearMisses = 40

// candidates lists the materials that meet the needs, then the near misses
// with what stops each. Any of them is pinned with one key.
type candidates struct {
	m     *Model
	found needs.Found
	all   []needs.Result // as met the needs, before a trade-off front
	sort  int
	front []props.PropertyID // two, or none
	list  ui.List
}

func newCandidates(m *Model) screen {
	if m.needsOn() == 0 {
		m.warn("no needs yet: type the customer's limits")
		return newNeeds(m)
	}
	c := &candidates{m: m}
	c.found = needs.Find(m.o.Catalog.Materials, m.now().Needs, nearMisses)
	c.all = c.found.Met
	c.order()
	return c
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

func (c *candidates) Typing() bool           { return false }
func (c *candidates) Height(_, most int) int { return min(most, c.count()+4) }

func (c *candidates) Keys() ui.Keys {
	return append(ui.Keys{
		ui.On("enter tab +", "pin", "pin this material", c.pin).As("enter"),
		ui.On("o", "sort", "next order: margin, likeness, a property", c.nextOrder),
		ui.On("f", "trade-off front", "next pair of needs to trade off, none", c.nextFront),
		ui.On("2", "needs", "the needs", nil),
		ui.Send("y", "copy", "copy the candidates", c.copy),
	}, c.list.Keys()...)
}

func (c *candidates) pin() {
	if c.list.At < c.count() {
		c.m.pin(c.result(c.list.At).Material)
	}
}

func (c *candidates) nextOrder() {
	c.sort = (c.sort + 1) % len(c.sortings())
	c.order()
}

func (c *candidates) copy() tea.Cmd {
	text := report.FoundDoc(report.Search{Needs: c.m.now().Needs, Found: c.found, Bench: c.m.now().Bench, Front: c.front != nil})
	return c.m.copyDoc(text, "the candidates")
}

// columns are the properties that the needs bound.
func (c *candidates) columns() []*needs.Need {
	var out []*needs.Need
	for i := range c.m.now().Needs {
		if n := &c.m.now().Needs[i]; !n.Off && n.Kind == needs.OfProperty {
			out = append(out, n)
		}
	}
	return out
}

// sortings are the orders the o key steps through: those of the needs, and
// the property that the bench's cursor is on, so that any property will do.
func (c *candidates) sortings() []sorting {
	b := &c.m.now().Bench
	list := []sorting{
		{"catalog order", func([]needs.Result) {}},
		{"margin", needs.SortByMargin},
	}
	if len(b.Pins) > 0 {
		list = append(list, sorting{"likeness to the baseline", func(r []needs.Result) { needs.SortByLikeness(r, b, b.Pins[b.Baseline]) }})
	}
	var properties []props.PropertyID
	for _, n := range c.columns() {
		properties = append(properties, n.Property)
	}
	if p := c.m.cursorProperty(); p != props.NoProperty {
		properties = append(properties, p)
	}
	for i, p := range properties {
		if !slices.Contains(properties[:i], p) {
			list = append(list, sorting{strings.ToLower(p.Info().Name), func(r []needs.Result) { needs.SortByProperty(r, b, p) }})
		}
	}
	return list
}

// sorting is one order of the candidates.
type sorting struct {
	name  string
	apply func([]needs.Result)
}

func (c *candidates) order() {
	met := slices.Clone(c.all)
	if c.front != nil {
		met = needs.Front(met, &c.m.now().Bench, c.front[0], c.front[1])
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

func (c *candidates) Update(msg tea.Msg) tea.Cmd {
	if msg, ok := msg.(tea.MouseMsg); ok {
		return c.list.Mouse(msg, func() tea.Cmd { c.pin(); return nil })
	}
	return nil
}

// nextFront steps through the pairs of bounded properties, then none.
func (c *candidates) nextFront() {
	var list []props.PropertyID
	for _, n := range c.columns() {
		if !slices.Contains(list, n.Property) {
			list = append(list, n.Property)
		}
	}
	if len(list) < 2 {
		c.m.warn("a trade-off front needs two bounded properties")
		return
	}
	var pairs [][]props.PropertyID
	for i := range list {
		for j := i + 1; j < len(list); j++ {
			pairs = append(pairs, []props.PropertyID{list[i], list[j]})
		}
	}
	next := 0
	for i, p := range pairs {
		if slices.Equal(p, c.front) {
			next = i + 1
		}
	}
	c.front = nil
	if next < len(pairs) {
		c.front = pairs[next]
	}
	c.order()
}

func (c *candidates) View(w, h int) []string {
	rows := max(h-4, 1) // column heads, rule between, two lines of words below
	c.list.FitLines(c.count(), 1, rows)
	columns := c.columns()
	lines := []string{c.m.theme.Dim.Of(c.line(w, "", "material", columns, func(n *needs.Need) string {
		return strings.TrimSpace(n.Property.Info().Short + " " + n.Limit.Unit.Symbol())
	}))}
	for i := c.list.Top; i < c.list.End(); i++ {
		lines = append(lines, c.resultLine(i, w, columns))
	}
	return append(ui.Fill(lines, rows+1), c.words(w)...)
}

func (c *candidates) resultLine(i, w int, columns []*needs.Need) string {
	t, r := c.m.theme, c.result(i)
	sign, ink := "✓", t.Text
	if i >= len(c.found.Met) {
		sign, ink = "✗", t.Dim
		if r.Unjudged() {
			sign = "–"
		}
	}
	if slices.Contains(c.m.now().Bench.Pins, r.Material) {
		sign = "+"
	}
	s := c.line(w, sign, r.Material.Name(), columns, func(n *needs.Need) string { return report.NeedValue(r, n) })
	return t.Line(s, i == c.list.At, ink)
}

const candidateColumn = 13

func (c *candidates) line(w int, sign, name string, columns []*needs.Need, value func(*needs.Need) string) string {
	s := " " + ui.Pad(sign, 1) + " " + ui.Pad(ui.Cut(ui.Plain(name), 30), 30)
	for _, n := range columns {
		s += " " + ui.PadLeft(ui.Cut(ui.Plain(value(n)), candidateColumn), candidateColumn)
	}
	return ui.Pad(ui.Cut(s, w), w)
}

// words tells of the material under the cursor what stops it, or on what it
// rests.
func (c *candidates) words(w int) []string {
	t := c.m.theme
	if c.count() == 0 {
		return []string{t.Bad.Of(ui.Cut(" Nothing meets the needs, and nothing misses them by only one or two.", w)), ""}
	}
	r := c.result(c.list.At)
	text := "meets every need"
	switch {
	case len(r.Stops) > 0:
		text = report.Stops(r)
	case r.OnlyTypical:
		text = "meets every need, but one only on a typical figure: no specified minimum is on file"
	}
	out := ui.Wrap(r.Material.Name()+": "+ui.Plain(text), w-2)
	if len(out) > 3 {
		out = append(out[:2], ui.Cut(strings.Join(out[2:], " "), w-2))
	}
	for i := range out {
		out[i] = t.Dim.Of(" " + out[i])
	}
	return out
}
