package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/tui/ui"
)

// needsPanel lists the customer's limits: typed or pasted, edited, switched
// off, ordered.
type needsPanel struct {
	m       *Model
	list    ui.List
	field   ui.Field
	typing  bool
	editing int // index of the need being edited; -1 for a new one
	problem string
}

func newNeeds(m *Model) screen {
	p := &needsPanel{m: m, editing: -1, field: ui.NewField("")}
	p.typing = len(m.now().Needs) == 0
	return p
}

// newRowNeed opens the panel with a limit on the row under the cursor, at the
// baseline's own figure, ready to be changed.
func newRowNeed(m *Model) screen {
	property := m.cursorProperty()
	if m.cursorNeed() != nil {
		p := &needsPanel{m: m, editing: -1, list: ui.List{At: m.needUnder()}}
		p.edit()
		return p
	}
	if property == props.NoProperty {
		m.warn("a merit is no limit; n on the row of a property sets one")
		return nil
	}
	p := &needsPanel{m: m, editing: -1, typing: true, list: ui.List{At: len(m.now().Needs)}}
	text := strings.ToLower(property.Info().Name) + " >= "
	if list := needs.BetterThan(&m.now().Bench, m.now().Bench.Pins[m.now().Bench.Baseline], []props.PropertyID{property}); len(list) == 1 {
		text = list[0].String()
	}
	p.field = ui.EditField(text)
	return p
}

// needsOn counts the needs that are switched on.
func (m *Model) needsOn() int { return len(m.needsSwitchedOn()) }

// needUnder is the place of the need of the row under the cursor among all
// needs.
func (m *Model) needUnder() int {
	for i := range m.now().Needs {
		if &m.now().Needs[i] == m.cursorNeed() {
			return i
		}
	}
	return 0
}

func (m *Model) needsSwitchedOn() []needs.Need {
	var list []needs.Need
	for i := range m.now().Needs {
		if !m.now().Needs[i].Off {
			list = append(list, m.now().Needs[i])
		}
	}
	return list
}

func (p *needsPanel) Title() string { return "Needs: the customer's limits" }
func (p *needsPanel) Typing() bool  { return p.typing }

// Height leaves the bench in sight while the list is short.
func (p *needsPanel) Height(_, most int) int {
	return min(most, 8+2*len(p.m.now().Needs)+len(p.m.now().Bench.Pins))
}

func (p *needsPanel) Keys() ui.Keys {
	if p.typing {
		toList := func() {
			if len(p.m.now().Needs) > 0 {
				p.stop()
			}
		}
		return ui.Keys{ui.On("enter", "take it", "take what is typed", p.enter), ui.On("down up tab", "to the list", "to the list of needs", toList).As("↓")}
	}
	keys := ui.Keys{
		ui.On("+ / i 2", "add", "add a need", func() { p.field, p.typing = ui.NewField(""), true }),
	}
	if len(p.m.now().Needs) > 0 {
		keys = append(keys,
			ui.On("enter e", "edit", "edit this need", p.edit),
			ui.On("space", "on or off", "switch it on or off", p.flip),
			ui.On("x delete", "delete", "delete it", p.remove),
			ui.On("< shift+up", "order", "move it up, down", func() { p.swap(-1) }).As("< >"),
			ui.On("> shift+down", "", "", func() { p.swap(1) }))
	}
	return append(append(append(keys, ui.On("3", "candidates", "what meets the needs", nil)), p.m.keys("u", "ctrl+r")...), p.list.Keys()...)
}

func (p *needsPanel) Update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.MouseMsg:
		if !p.typing {
			return p.list.Mouse(msg, func() tea.Cmd { p.edit(); return nil })
		}
	case tea.KeyMsg:
		if msg.Paste && (!p.typing || strings.ContainsAny(string(msg.Runes), "\n;")) {
			p.add(string(msg.Runes))
		} else if p.typing && p.field.Update(msg) {
			p.problem = ""
		}
	}
	return nil
}

// enter takes the field; an empty one is left.
func (p *needsPanel) enter() {
	if strings.TrimSpace(p.field.Text()) == "" {
		p.stop()
		return
	}
	p.take()
}

func (p *needsPanel) stop() {
	p.typing, p.editing, p.problem = false, -1, ""
	p.field = ui.NewField("")
}

// take reads the field: one need or several.
func (p *needsPanel) take() {
	if p.editing < 0 {
		p.add(p.field.Text())
		return
	}
	n, err := needs.One(p.field.Text(), p.m.o.Catalog, p.m.now().Bench.System)
	if err != nil {
		p.problem = err.Error()
		return
	}
	at := p.editing
	p.m.changeCall(func(c *call.Call) { c.Needs[at] = n })
	p.stop()
}

// add takes what was read of a text, needs and the part. What was not stays in the
// field, each piece with its reason.
func (p *needsPanel) add(text string) {
	said := needs.Read(text, p.m.o.Catalog, p.m.now().Bench.System)
	if len(said.Pieces) > len(said.Refused()) {
		p.m.changeCall(func(c *call.Call) {
			for _, n := range said.Needs() {
				c.Needs = needs.Add(c.Needs, n)
			}
			_ = said.Tell(&c.Part, p.m.o.Catalog) // each piece was tried when it was read
		})
		p.list.At = max(len(p.m.now().Needs)-1, 0)
	}
	p.stop()
	p.typing = true
	if echo := said.Echo(); len(echo) > 0 {
		p.m.sayf("%s", strings.Join(echo, "; "))
	}
	var left, reasons []string
	for _, piece := range said.Refused() {
		left, reasons = append(left, piece.Text), append(reasons, piece.Err.Error())
	}
	if len(left) > 0 {
		p.field, p.problem = ui.EditField(strings.Join(left, "; ")), strings.Join(reasons, "\n")
	}
}

// edit takes the need under the cursor into the field.
func (p *needsPanel) edit() {
	p.editing, p.typing = p.list.At, true
	p.field = ui.EditField(p.m.now().Needs[p.list.At].Text)
}

// flip switches the need under the cursor on or off.
func (p *needsPanel) flip() {
	at := p.list.At
	p.m.changeCall(func(c *call.Call) { c.Needs[at].Off = !c.Needs[at].Off })
}

func (p *needsPanel) remove() {
	at := p.list.At
	p.m.changeCall(func(c *call.Call) { c.Needs = slices.Delete(c.Needs, at, at+1) })
}

// swap moves the need under the cursor by one place.
func (p *needsPanel) swap(by int) {
	a, b := p.list.At, p.list.At+by
	if b < 0 || b >= len(p.m.now().Needs) {
		return
	}
	p.m.changeCall(func(c *call.Call) { c.Needs[a], c.Needs[b] = c.Needs[b], c.Needs[a] })
	p.list.At = b
}

func (p *needsPanel) View(w, h int) []string {
	t := p.m.theme
	lines := []string{t.Dim.Of(" + adds a need")}
	switch label := " Add: "; {
	case p.typing && p.editing >= 0:
		label = " Edit: "
		fallthrough
	case p.typing:
		lines[0] = label + p.field.View(t, w-9)
	}
	for reason := range strings.SplitSeq(p.problem, "\n") {
		for _, l := range ui.Wrap(reason, w-2) {
			if reason != "" {
				lines = append(lines, " "+t.Bad.Of(l))
			}
		}
	}
	if len(p.m.now().Needs) == 0 {
		for _, l := range []string{"", " Write a limit as the customer says it, in any unit, and press Enter:",
			"   yield >= 20 ksi       density < 2.8 g/cm3      UTS 30 ksi min       HB 70-100",
			"   process = pm or sand  family = aluminum        anodizing at least 2",
			" Several may be pasted at once, one a line."} {
			lines = append(lines, t.Dim.Of(ui.Cut(l, w)))
		}
		return lines
	}
	lines = append(lines, "")
	lines = append(lines, p.listed(w, h, len(lines))...)
	met, near := needs.Screen(p.m.o.Catalog.Materials, p.m.now().Needs)
	return append(lines, "", " "+t.Strong.Of(fmt.Sprintf("%d of %d materials meet every need; %d more miss one or two (3 shows them)", len(met), len(p.m.o.Catalog.Materials), len(near))))
}

// listed is the needs in sight below the head; under the one that the cursor
// is on, how the pins stand to it.
func (p *needsPanel) listed(w, h, head int) []string {
	var list, under []string
	n := len(p.m.now().Needs)
	at := ui.Clamp(p.list.At, 0, n-1)
	if !p.typing {
		under = p.pinLines(at, w)
	}
	for i := range p.m.now().Needs {
		list = append(list, p.needLine(i, w, i == at && !p.typing))
		if i == at {
			list = append(list, under...)
		}
	}
	p.list.Fit(n, len(list), head, h-head-2, func(i int) (first, last int) {
		switch {
		case i < at:
			return i, i
		case i == at:
			return i, i + len(under)
		}
		return i + len(under), i + len(under)
	})
	return list[p.list.Top:p.list.End()]
}

func (p *needsPanel) needLine(i, w int, here bool) string {
	t, n := p.m.theme, &p.m.now().Needs[i]
	mark, ink := "on ", t.Text
	if n.Off {
		mark, ink = "off", t.Dim
	}
	return t.Line(ui.Pad(ui.Cut(fmt.Sprintf(" %s  %s", mark, n.String()), w), w), here, ink)
}

// pinLines say how each pin stands to the need under the cursor.
func (p *needsPanel) pinLines(i, w int) []string {
	if p.m.now().Needs[i].Off {
		return nil
	}
	var lines []string
	for _, pin := range p.m.now().Bench.Pins {
		j := needs.Judge(pin, &p.m.now().Needs[i])
		lines = append(lines, p.m.theme.Dim.Of(ui.Cut("        "+ui.Pad(pin.Name(), 28)+" "+ui.Plain(report.JudgementText(&j)), w)))
	}
	return lines
}

// usualNeeds are the properties asked for where no other pin says which ones
// matter.
var usualNeeds = []props.PropertyID{
	props.TensileStrength, props.YieldStrength, props.Elongation, props.ElasticModulus, props.Density,
	props.ThermalConductivity, props.ElectricalConductivity,
}

// betterThanBaseline sets needs that beat or equal the baseline on the rows
// that are shown, have a better and worse, and on which another pin has a
// figure too.
func (m *Model) betterThanBaseline() {
	var rows []props.PropertyID
	base := m.now().Bench.Pins[m.now().Bench.Baseline]
	for i := range m.table.Lines {
		l := &m.table.Lines[i]
		other := len(m.now().Bench.Pins) == 1 && slices.Contains(usualNeeds, l.Property)
		for _, pin := range m.now().Bench.Pins {
			other = other || pin != base && len(pin.Figures(l.Property)) > 0
		}
		if g := l.Group; other && l.OfProperty() && (g == props.Mechanical || g == props.Elastic || g == props.Physical) {
			rows = append(rows, l.Property)
		}
	}
	list := needs.BetterThan(&m.now().Bench, base, rows)
	if len(list) == 0 {
		m.warnf("%s has no figure with a better and worse on these rows", base.Name())
		return
	}
	m.changeCall(func(c *call.Call) { c.Needs = list })
	m.sayf("%s: beat or equal %s; 2 edits them, 3 shows what does, u takes them back", ui.Plural(len(list), "need"), base.Name())
}
