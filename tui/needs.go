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
	panel
	editing int // index of the need being edited; -1 for a new one
}

func newNeeds(m *Model) screen { return openNeeds(m, len(m.now().Needs) == 0, ui.NewField("")) }

func openNeeds(m *Model, typing bool, field ui.Field) *needsPanel {
	return &needsPanel{panel{m: m, digit: "2", typing: typing, field: field}, -1}
}

// newRowNeed opens the panel with a limit on the row under the cursor, at the
// baseline's own figure, ready to be changed.
func newRowNeed(m *Model) screen {
	if n := m.cursorNeed(); n != nil {
		p := openNeeds(m, true, ui.NewField(""))
		for i := range m.now().Needs {
			if &m.now().Needs[i] == n {
				p.list.At = i
			}
		}
		p.edit()
		return p
	}
	property := m.cursorProperty()
	if property == props.NoProperty {
		m.warnf("a merit is no limit; %s on the row of a property sets one", m.label("n"))
		return nil
	}
	text := strings.ToLower(property.Info().Name) + " >= "
	if list := needs.BetterThan(&m.now().Bench, m.baseline(), []props.PropertyID{property}); len(list) == 1 {
		text = list[0].String()
	}
	return openNeeds(m, true, ui.EditField(text))
}

// needsOn counts the needs that are switched on.
func (m *Model) needsOn() int { return len(m.now().NeedsOn()) }

// screened says how many materials of the catalog meet the needs.
func (m *Model) screened() string {
	if m.metWords == "" {
		all := m.o.Catalog.Materials
		offered, remembered := needs.Offered(all)
		met, near := needs.Screen(offered, m.now().Needs)
		m.metWords = fmt.Sprintf("%d of %d materials meet every need; %d more miss one or two (%s shows them)", len(met), len(all), len(near), m.label("3"))
		if more, _ := needs.Screen(remembered, m.now().Needs); len(more) > 0 {
			m.metWords = fmt.Sprintf("%d of %d materials meet every need, %d more from memory; %d miss one or two", len(met), len(all), len(more), len(near))
		}
	}
	return m.metWords
}

func (p *needsPanel) Title() string { return "Needs: the customer's limits" }

// Height leaves the bench in sight while the list is short.
func (p *needsPanel) Height(_, most int) int {
	return min(most, 8+2*len(p.m.now().Needs)+len(p.m.pins()))
}

func (p *needsPanel) Keys() ui.Keys {
	some := len(p.m.now().Needs) > 0
	if p.typing {
		toList := func() {
			if some {
				p.stop()
			}
		}
		return ui.Keys{ui.Send("enter", "take it", "take what is typed; a digit alone opens that panel", p.enter), ui.On("down up tab", "to the list", "to the list of needs", toList).As("↓")}
	}
	keys := ui.Keys{ui.On("+ i 2", "add", "add a need", func() { p.field, p.typing = ui.NewField(""), true })}
	if some {
		keys = append(keys,
			ui.On("enter e", "edit", "edit this need", p.edit),
			ui.On("space", "on or off", "switch it on or off", p.flip),
			ui.On("x delete", "delete", "delete it", p.remove),
			ui.On("< shift+up", "order", "move it up, down", func() { p.swap(-1) }).As("< >"),
			ui.On("> shift+down", "", "", func() { p.swap(1) }))
	}
	return append(append(keys, p.m.keys("u", "ctrl+r")...), p.list.Keys()...)
}

func (p *needsPanel) Type(msg tea.KeyMsg) {
	if msg.Paste && (!p.typing || strings.ContainsAny(string(msg.Runes), "\n;")) {
		p.add(string(msg.Runes))
		return
	}
	p.panel.Type(msg)
	if c := p.panelTyped(); c != nil {
		p.m.sayf("enter opens %s %s", c.Label, c.Line)
	}
}

// panelTyped is the panel that a digit alone in the field stands for, which is no
// limit; nil where there is none.
func (p *needsPanel) panelTyped() *command {
	if c := p.m.pressed(p.field.Text()); p.editing < 0 && c != nil && c.opensPanel() && c.shipped[0] != p.digit {
		return c
	}
	return nil
}

// enter takes the field; an empty one is left.
func (p *needsPanel) enter() tea.Cmd {
	switch c := p.panelTyped(); {
	case c != nil:
		p.m.closeAll()
		return p.m.run(c)
	case strings.TrimSpace(p.field.Text()) == "":
		p.stop()
	case p.editing < 0:
		p.add(p.field.Text())
	default:
		p.change()
	}
	return nil
}

func (p *needsPanel) stop() {
	p.typing, p.editing, p.problem = false, -1, ""
	p.field = ui.NewField("")
}

// change reads the field in place of the need that is edited.
func (p *needsPanel) change() {
	n, err := needs.One(p.field.Text(), p.m.o.Catalog, p.m.now().Bench.System)
	if err != nil {
		p.problem = err.Error()
		return
	}
	at := p.editing
	p.m.changeCall(func(c *call.Call) { c.Needs[at] = n })
	p.stop()
}

// read reads what is said of a part made of the baseline.
func (m *Model) read(text string) needs.Said {
	return needs.Read(text, m.o.Catalog, m.now().Bench.System, m.baseline())
}

func (p *needsPanel) add(text string) { p.take(p.m.read(text)) }

// take takes what was read of a text, needs and the part. What was not stays in the
// field, each piece with its reason.
func (p *needsPanel) take(said needs.Said) {
	if len(said.Pieces) > len(said.Refused()) {
		p.m.changeCall(func(c *call.Call) {
			for _, n := range said.Needs() {
				c.Needs = needs.Add(c.Needs, n)
			}
			_ = said.Tell(&c.Part, p.m.o.Catalog) // each piece was tried when it was read
			if today := said.Today(); today != nil {
				c.Bench.Baseline = c.Bench.Pin(today)
			}
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
	head := []string{t.Dim.Of(" + adds a need")}
	if p.typing {
		label := map[bool]string{true: " Add: ", false: " Edit: "}[p.editing < 0]
		head[0] = label + p.field.View(t, w-9)
	}
	head = append(head, p.problemLines(w)...)
	head = append(head, "")
	if len(p.m.now().Needs) == 0 {
		for _, l := range []string{" Write a limit as the customer says it, in any unit, and press Enter:",
			"   yield >= 20 ksi       density < 2.8 g/cm3      UTS 30 ksi min       HB 70-100",
			"   process = pm or sand  family = aluminum        anodizing at least 2",
			" Several may be pasted at once, one a line."} {
			head = append(head, t.Dim.Of(ui.Cut(l, w)))
		}
		return head
	}
	return p.list.Draw(ui.Listing{
		Head: head, Items: len(p.m.now().Needs), Snug: true,
		Lines: func(i int, here bool) []string { return p.lines(i, w, here && !p.typing) },
		Foot: func() []string {
			return []string{"", " " + t.Strong.Of(p.m.screened())}
		},
	}, h)
}

// lines is a need; under the one that the cursor is on, how the pins stand to
// it.
func (p *needsPanel) lines(i, w int, here bool) []string {
	t, n := p.m.theme, &p.m.now().Needs[i]
	mark, ink := "on ", t.Text
	if n.Off {
		mark, ink = "off", t.Dim
	}
	lines := []string{t.Line(ui.Pad(fmt.Sprintf(" %s  %s", mark, n.String()), w), here, ink)}
	if !here || n.Off {
		return lines
	}
	for _, pin := range p.m.pins() {
		j := needs.Judge(pin, n)
		lines = append(lines, t.Dim.Of(ui.Cut("        "+ui.Pad(pin.Name(), 28)+" "+ui.Plain(report.JudgementText(&j)), w)))
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
	base := m.baseline()
	for i := range m.table.Lines {
		l := &m.table.Lines[i]
		other := len(m.pins()) == 1 && slices.Contains(usualNeeds, l.Property)
		for _, pin := range m.pins() {
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
	m.sayf("%s: beat or equal %s; %s edits them, %s shows what does, %s takes them back", ui.Plural(len(list), "need"), base.Name(), m.label("2"), m.label("3"), m.label("u"))
}
