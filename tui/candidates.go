package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/report"
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
	at    int
	top   int
}

func newCandidates(m *Model) screen {
	if m.needsOn() == 0 {
		m.warn("no needs yet: type the customer's limits")
		return newNeeds(m)
	}
	c := &candidates{m: m}
	c.found = needs.Find(m.o.Catalog.Materials, m.needs, nearMisses)
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

func (c *candidates) Typing() bool        { return false }
func (c *candidates) Height(most int) int { return min(most, c.count()+4) }

func (c *candidates) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	return []key.Binding{b("enter", "pin"), b("o", "sort"), b("f", "trade-off front"), b("2", "needs"), b("y", "copy"), escape}
}

// columns are the properties that the needs bound.
func (c *candidates) columns() []*needs.Need {
	var out []*needs.Need
	for i := range c.m.needs {
		if n := &c.m.needs[i]; !n.Off && n.Kind == needs.OfProperty {
			out = append(out, n)
		}
	}
	return out
}

// sortings are the orders the o key steps through: those of the needs, and
// the property that the bench's cursor is on, so that any property will do.
func (c *candidates) sortings() []sorting {
	b := &c.m.bench
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
		met = needs.Front(met, &c.m.bench, c.front[0], c.front[1])
	}
	c.sortings()[c.sort].apply(met)
	c.found.Met = met
	c.at, c.top = 0, 0
}

func (c *candidates) result(i int) *needs.Result {
	if i < len(c.found.Met) {
		return &c.found.Met[i]
	}
	return &c.found.Near[i-len(c.found.Met)]
}

func (c *candidates) count() int { return len(c.found.Met) + len(c.found.Near) }

func (c *candidates) Update(msg tea.Msg) tea.Cmd {
	_, h := c.m.panel()
	switch msg := msg.(type) {
	case tea.MouseMsg:
		switch msg.Button {
		case tea.MouseButtonWheelUp:
			c.at--
		case tea.MouseButtonWheelDown:
			c.at++
		}
	case tea.KeyMsg:
		switch msg.String() {
		case "up", "k":
			c.at--
		case "down", "j":
			c.at++
		case "pgup":
			c.at -= h - 4
		case "pgdown":
			c.at += h - 4
		case "g", "home":
			c.at = 0
		case "G", "end":
			c.at = c.count() - 1
		case "enter", "tab", "+":
			if c.at < c.count() {
				c.m.pin(c.result(c.at).Material)
			}
		case "o":
			c.sort = (c.sort + 1) % len(c.sortings())
			c.order()
		case "f":
			c.nextFront()
		case "2":
			c.m.close()
			c.m.open(newNeeds(c.m))
		case "y":
			text := report.FoundDoc(report.Search{Needs: c.m.needs, Found: c.found, Bench: c.m.bench, Front: c.front != nil})
			return c.m.copyDoc(text, "the candidates")
		}
	}
	c.at = clamp(c.at, 0, c.count()-1)
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

func (c *candidates) View() string {
	t := c.m.theme
	w, h := c.m.panel()
	rows := max(h-4, 1) // column heads, rule between, two lines of words below
	if c.at < c.top {
		c.top = c.at
	}
	c.top = max(c.top, c.at-rows+1)
	columns := c.columns()
	lines := []string{t.dim.of(c.line(w, "", "material", columns, func(n *needs.Need) string {
		return strings.TrimSpace(n.Property.Info().Short + " " + n.Limit.Unit.Symbol())
	}))}
	for i := c.top; i < min(c.top+rows, c.count()); i++ {
		lines = append(lines, c.resultLine(i, w, columns))
	}
	for len(lines) < rows+1 {
		lines = append(lines, "")
	}
	return strings.Join(append(lines, c.words(w)...), "\n")
}

func (c *candidates) resultLine(i, w int, columns []*needs.Need) string {
	t, r := c.m.theme, c.result(i)
	sign := "✓"
	if i >= len(c.found.Met) {
		sign = "✗"
		if r.Unjudged() {
			sign = "–"
		}
	}
	if slices.Contains(c.m.bench.Pins, r.Material) {
		sign = "+"
	}
	s := c.line(w, sign, r.Material.Name(), columns, func(n *needs.Need) string { return report.NeedValue(r, n) })
	switch {
	case i == c.at && t.plain:
		return ">" + s[1:]
	case i == c.at:
		return t.cursor.of(s)
	case i >= len(c.found.Met):
		return t.dim.of(s)
	}
	return s
}

const candidateColumn = 13

func (c *candidates) line(w int, sign, name string, columns []*needs.Need, value func(*needs.Need) string) string {
	s := " " + pad(sign, 1) + " " + pad(cut(plain(name), 30), 30)
	for _, n := range columns {
		s += " " + padLeft(cut(plain(value(n)), candidateColumn), candidateColumn)
	}
	return pad(cut(s, w), w)
}

// words tells of the material under the cursor what stops it, or on what it
// rests.
func (c *candidates) words(w int) []string {
	t := c.m.theme
	if c.count() == 0 {
		return []string{t.bad.of(cut(" Nothing meets the needs, and nothing misses them by only one or two.", w)), ""}
	}
	r := c.result(c.at)
	text := "meets every need"
	switch {
	case len(r.Stops) > 0:
		text = report.Stops(r)
	case r.OnlyTypical:
		text = "meets every need, but one only on a typical figure: no specified minimum is on file"
	}
	out := wrap(r.Material.Name()+": "+plain(text), w-2)
	if len(out) > 3 {
		out = append(out[:2], cut(strings.Join(out[2:], " "), w-2))
	}
	for i := range out {
		out[i] = t.dim.of(" " + out[i])
	}
	return out
}
