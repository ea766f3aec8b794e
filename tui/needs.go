package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/needs"
	"alongside/props/report"
)

// needsPanel lists the customer's limits: typed or pasted, edited, switched
// off, ordered.
type needsPanel struct {
	m       *Model
	at      int
	field   field
	typing  bool
	editing int // index of the need being edited; -1 for a new one
	problem string
}

func newNeeds(m *Model) screen {
	p := &needsPanel{m: m, editing: -1, field: newField("")}
	p.typing = len(m.needs) == 0
	return p
}

// newRowNeed opens the panel with a limit on the row under the cursor, at the
// baseline's own figure, ready to be changed.
func newRowNeed(m *Model) screen {
	property := m.cursorProperty()
	if m.cursorNeed() != nil {
		p := &needsPanel{m: m, editing: -1, at: m.needUnder()}
		p.edit()
		return p
	}
	if property == props.NoProperty {
		m.warn("a merit is no limit; n on the row of a property sets one")
		return nil
	}
	p := &needsPanel{m: m, editing: -1, typing: true, at: len(m.needs)}
	text := strings.ToLower(property.Info().Name) + " >= "
	if list := needs.BetterThan(&m.bench, m.bench.Pins[m.bench.Baseline], []props.PropertyID{property}); len(list) == 1 {
		text = list[0].String()
	}
	p.field = newField(text)
	p.field.kept = false
	p.field.input.CursorEnd()
	return p
}

// needsOn counts the needs that are switched on.
func (m *Model) needsOn() int { return len(m.needsSwitchedOn()) }

// needUnder is the place of the need of the row under the cursor among all
// needs.
func (m *Model) needUnder() int {
	on := -1
	for i := range m.needs {
		if !m.needs[i].Off {
			on++
		}
		if on == m.row {
			return i
		}
	}
	return 0
}

func (m *Model) needsSwitchedOn() []needs.Need {
	var list []needs.Need
	for i := range m.needs {
		if !m.needs[i].Off {
			list = append(list, m.needs[i])
		}
	}
	return list
}

func (p *needsPanel) Title() string { return "Needs: the customer's limits" }
func (p *needsPanel) Typing() bool  { return p.typing }

// Height leaves the bench in sight while the list is short.
func (p *needsPanel) Height(most int) int { return min(most, 8+2*len(p.m.needs)+len(p.m.bench.Pins)) }

func (p *needsPanel) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	if p.typing {
		return []key.Binding{b("enter", "take it"), b("↓", "to the list"), escape}
	}
	return []key.Binding{b("+", "add"), b("enter", "edit"), b("space", "on or off"), b("x", "delete"), b("< >", "order"), b("3", "candidates"), escape}
}

func (p *needsPanel) Update(msg tea.Msg) tea.Cmd {
	k, ok := msg.(tea.KeyMsg)
	if !ok {
		return nil
	}
	if k.Paste && (!p.typing || strings.ContainsAny(string(k.Runes), "\n;")) {
		p.add(string(k.Runes))
		return nil
	}
	if p.typing {
		p.enter(k)
	} else {
		p.choose(k)
	}
	p.at = clamp(p.at, 0, len(p.m.needs)-1)
	return nil
}

func (p *needsPanel) enter(k tea.KeyMsg) {
	switch k.String() {
	case "enter":
		if strings.TrimSpace(p.field.text()) == "" {
			p.stop()
			return
		}
		p.take()
	case "down", "up", "tab":
		if len(p.m.needs) > 0 {
			p.stop()
		}
	default:
		if p.field.update(k) {
			p.problem = ""
		}
	}
}

func (p *needsPanel) stop() {
	p.typing, p.editing, p.problem = false, -1, ""
	p.field = newField("")
}

// take reads the field: one need or several.
func (p *needsPanel) take() {
	if p.editing < 0 {
		p.add(p.field.text())
		return
	}
	n, err := needs.Parse(p.field.text(), p.m.o.Catalog)
	if err != nil {
		p.problem = err.Error()
		return
	}
	at := p.editing
	p.m.changeCall(func(c *call.Call) { c.Needs[at] = n })
	p.stop()
}

func (p *needsPanel) add(text string) {
	list, err := needs.ParseAll(text, p.m.o.Catalog)
	if len(list) > 0 {
		p.m.changeCall(func(c *call.Call) { c.Needs = append(c.Needs, list...) })
		p.at = len(p.m.needs) - 1
	}
	if err != nil {
		p.problem = err.Error()
		p.typing = true
		return
	}
	p.stop()
	p.typing = true
}

func (p *needsPanel) choose(k tea.KeyMsg) {
	at, n := p.at, len(p.m.needs)
	switch k.String() {
	case "+", "/", "i", "2":
		p.field, p.typing = newField(""), true
	case "up", "k":
		p.at--
	case "down", "j":
		p.at++
	case "3":
		p.m.close()
		p.m.open(newCandidates(p.m))
	case "u":
		p.m.undo()
	case "ctrl+r":
		p.m.redo()
	}
	if n == 0 {
		return
	}
	switch k.String() {
	case "enter", "e":
		p.edit()
	case " ":
		p.m.changeCall(func(c *call.Call) { c.Needs[at].Off = !c.Needs[at].Off })
	case "x", "delete":
		p.m.changeCall(func(c *call.Call) { c.Needs = slices.Delete(c.Needs, at, at+1) })
	case "<", "shift+up":
		p.swap(at, at-1)
	case ">", "shift+down":
		p.swap(at, at+1)
	}
}

// edit takes the need under the cursor into the field.
func (p *needsPanel) edit() {
	p.editing, p.typing = p.at, true
	p.field = newField(p.m.needs[p.at].Text)
	p.field.kept = false
	p.field.input.CursorEnd()
}

func (p *needsPanel) swap(a, b int) {
	if b < 0 || b >= len(p.m.needs) {
		return
	}
	p.m.changeCall(func(c *call.Call) { c.Needs[a], c.Needs[b] = c.Needs[b], c.Needs[a] })
	p.at = b
}

func (p *needsPanel) View() string {
	t := p.m.theme
	w, h := p.m.panel()
	var lines []string
	label := " Add: "
	if p.editing >= 0 {
		label = " Edit: "
	}
	if p.typing {
		lines = append(lines, label+p.field.view(t, w-9))
	} else {
		lines = append(lines, t.dim.of(" + adds a need"))
	}
	if p.problem != "" {
		for _, l := range wrap(p.problem, w-2) {
			lines = append(lines, " "+t.bad.of(l))
		}
	}
	if len(p.m.needs) == 0 {
		for _, l := range []string{"", " Write a limit as the customer says it, in any unit, and press Enter:",
			"   yield >= 20 ksi       density < 2.8 g/cm3      UTS 30 ksi min       HB 70-100",
			"   process = pm or sand  family = aluminum        anodizing at least 2",
			" Several may be pasted at once, one a line."} {
			lines = append(lines, t.dim.of(cut(l, w)))
		}
		return strings.Join(lines, "\n")
	}
	lines = append(lines, "")
	var list []string
	chosen, end := len(p.m.needs), len(p.m.needs) // while typing the last one
	for i := range p.m.needs {
		list = append(list, p.needLine(i, w))
		if i == p.at && !p.typing {
			chosen = i
			list = append(list, p.pinLines(i, w)...)
			end = len(list)
		}
	}
	if room := max(h-len(lines)-2, 1); len(list) > room {
		from := min(max(end-room, 0), chosen)
		list = list[from:min(from+room, len(list))]
	}
	met, near := needs.Screen(p.m.o.Catalog.Materials, p.m.needs)
	lines = append(append(lines, list...), "", " "+t.strong.of(fmt.Sprintf("%d of %d materials meet every need; %d more miss one or two (3 shows them)", len(met), len(p.m.o.Catalog.Materials), len(near))))
	return strings.Join(lines, "\n")
}

func (p *needsPanel) needLine(i, w int) string {
	t, n := p.m.theme, &p.m.needs[i]
	mark := "on "
	if n.Off {
		mark = "off"
	}
	s := pad(cut(fmt.Sprintf(" %s  %s", mark, n.String()), w), w)
	switch {
	case i == p.at && !p.typing && t.plain:
		return ">" + s[1:]
	case i == p.at && !p.typing:
		return t.cursor.of(s)
	case n.Off:
		return t.dim.of(s)
	}
	return s
}

// pinLines say how each pin stands to the need under the cursor.
func (p *needsPanel) pinLines(i, w int) []string {
	if p.m.needs[i].Off {
		return nil
	}
	var lines []string
	for _, pin := range p.m.bench.Pins {
		j := needs.Judge(pin, &p.m.needs[i])
		lines = append(lines, p.m.theme.dim.of(cut("        "+pad(pin.Name(), 28)+" "+plain(report.JudgementText(&j)), w)))
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
	base := m.bench.Pins[m.bench.Baseline]
	for i := range m.table.Lines {
		l := &m.table.Lines[i]
		other := len(m.bench.Pins) == 1 && slices.Contains(usualNeeds, l.Property)
		for _, pin := range m.bench.Pins {
			other = other || pin != base && len(pin.Figures(l.Property)) > 0
		}
		if g := l.Group; other && (g == props.Mechanical || g == props.Elastic || g == props.Physical) {
			rows = append(rows, l.Property)
		}
	}
	list := needs.BetterThan(&m.bench, base, rows)
	if len(list) == 0 {
		m.warnf("%s has no figure with a better and worse on these rows", base.Name())
		return
	}
	m.changeCall(func(c *call.Call) { c.Needs = list })
	m.sayf("%s: beat or equal %s; 2 edits them, 3 shows what does, u takes them back", plural(len(list), "need"), base.Name())
}
