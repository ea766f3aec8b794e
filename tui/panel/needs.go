package panel

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/needs"
	"alongside/props/report"
	"alongside/props/spoken"
	"alongside/tui/desk"
	"alongside/tui/ui"
)

// needsPanel lists the customer's limits: typed or pasted, edited, switched
// off, ordered.
type needsPanel struct {
	panel
	editing int // index of the need being edited; -1 for a new one
}

// NewNeeds opens the list of needs.
func NewNeeds(d *desk.Desk) desk.Screen {
	return openNeeds(d, len(d.Now().Needs) == 0, ui.NewField(""))
}

// TakeSaid opens the needs with what is said in a text. It reports whether anything
// in it was understood.
func TakeSaid(d *desk.Desk, text string) bool {
	said := d.Read(text)
	if len(said.Pieces) == len(said.Refused()) {
		return false
	}
	p := openNeeds(d, true, ui.NewField(""))
	d.Open(p)
	p.take(said)
	return true
}

func openNeeds(d *desk.Desk, typing bool, field ui.Field) *needsPanel {
	return &needsPanel{panel{desk: d, about: "Takes what the customer asks for, as said, and judges every pin by it.", digit: "2", typing: typing, field: field}, -1}
}

// NewRowNeed opens the panel with a limit on the row under the cursor, at the
// baseline's own figure, ready to be changed.
func NewRowNeed(d *desk.Desk) desk.Screen {
	if n := d.CursorNeed(); n != nil {
		p := openNeeds(d, true, ui.NewField(""))
		for i := range d.Now().Needs {
			if &d.Now().Needs[i] == n {
				p.list.At = i
			}
		}
		p.edit()
		return p
	}
	property := d.CursorProperty()
	if property == props.NoProperty {
		d.Warnf("a merit is no limit; %s on the row of a property sets one", d.Label("n"))
		return nil
	}
	text := strings.ToLower(property.Info().Name) + " >= "
	if n, ok := needs.AsGoodAs(&d.Now().Bench, d.Baseline(), property); ok {
		text = n.String()
	}
	return openNeeds(d, true, ui.EditField(text))
}

func (p *needsPanel) Title() string { return "Needs: the customer's limits" }

// Height leaves the bench in sight while the list is short.
func (p *needsPanel) Height(_, most int) int {
	return min(most, 8+2*len(p.desk.Now().Needs)+len(p.desk.Pins()))
}

func (p *needsPanel) Keys() ui.Keys {
	some := len(p.desk.Now().Needs) > 0
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
	return append(append(keys, p.desk.BenchKeys("u", "ctrl+r")...), p.list.Keys()...)
}

func (p *needsPanel) Type(msg tea.KeyMsg) {
	if msg.Paste && (!p.typing || strings.ContainsAny(string(msg.Runes), "\n;")) {
		p.add(string(msg.Runes))
		return
	}
	p.panel.Type(msg)
	if k := p.panelTyped(); k != nil {
		p.desk.Sayf("enter opens %s %s", k.Label, k.Line)
	}
}

// panelTyped is the key of the panel that a digit alone in the field stands for,
// which is no limit; nil where there is none.
func (p *needsPanel) panelTyped() *ui.Key {
	if p.editing >= 0 {
		return nil
	}
	return p.desk.PanelKey(p.field.Text(), p.digit)
}

// enter takes the field; an empty one is left.
func (p *needsPanel) enter() tea.Cmd {
	switch k := p.panelTyped(); {
	case k != nil:
		return k.Do()
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
	n, err := spoken.One(p.field.Text(), p.desk.Catalog, p.desk.Now().Bench.System)
	if err != nil {
		p.problem = err.Error()
		return
	}
	at := p.editing
	p.desk.ChangeCall(func(c *call.Call) { c.Needs[at] = n })
	p.stop()
}

func (p *needsPanel) add(text string) { p.take(p.desk.Read(text)) }

// take takes what was read of a text, needs and the part. What was not stays in the
// field, each piece with its reason.
func (p *needsPanel) take(said spoken.Said) {
	if len(said.Pieces) > len(said.Refused()) {
		p.desk.ChangeCall(func(c *call.Call) {
			for _, n := range said.Needs() {
				c.Needs = needs.Add(c.Needs, n)
			}
			_ = said.Tell(&c.Part, p.desk.Catalog) // each piece was tried when it was read
			if today := said.Today(); today != nil {
				c.Bench.Baseline = c.Bench.Pin(today)
			}
		})
		p.list.At = max(len(p.desk.Now().Needs)-1, 0)
	}
	p.stop()
	p.typing = true
	if echo := said.Echo(); len(echo) > 0 {
		p.desk.Sayf("%s", strings.Join(echo, "; "))
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
	p.field = ui.EditField(p.desk.Now().Needs[p.list.At].Text)
}

// flip switches the need under the cursor on or off.
func (p *needsPanel) flip() {
	at := p.list.At
	p.desk.ChangeCall(func(c *call.Call) { c.Needs[at].Off = !c.Needs[at].Off })
}

func (p *needsPanel) remove() {
	at := p.list.At
	p.desk.ChangeCall(func(c *call.Call) { c.Needs = slices.Delete(c.Needs, at, at+1) })
}

// swap moves the need under the cursor by one place.
func (p *needsPanel) swap(by int) {
	a, b := p.list.At, p.list.At+by
	if b < 0 || b >= len(p.desk.Now().Needs) {
		return
	}
	p.desk.ChangeCall(func(c *call.Call) { c.Needs[a], c.Needs[b] = c.Needs[b], c.Needs[a] })
	p.list.At = b
}

func (p *needsPanel) View(w, h int) []string {
	t := p.desk.Theme
	head := []string{t.Dim.Of(" + adds a need")}
	if p.typing {
		label := map[bool]string{true: " Add: ", false: " Edit: "}[p.editing < 0]
		head[0] = label + p.field.View(t, w-9)
	}
	head = append(head, p.problemLines(w)...)
	head = append(head, "")
	if len(p.desk.Now().Needs) == 0 {
		for _, l := range []string{" Write a limit as the customer says it, in any unit, and press Enter:",
			"   yield >= 20 ksi       density < 2.8 g/cm3      UTS 30 ksi min       HB 70-100",
			"   process = pm or sand  family = aluminum        anodizing at least 2",
			" Several may be pasted at once, one a line."} {
			head = append(head, t.Dim.Of(ui.Cut(l, w)))
		}
		return head
	}
	return p.list.Draw(ui.Listing{
		Head: head, Items: len(p.desk.Now().Needs), Snug: true,
		Lines: func(i int, here bool) []string { return p.lines(i, w, here && !p.typing) },
		Foot: func() []string {
			return []string{"", " " + t.Strong.Of(p.desk.Screened())}
		},
	}, h)
}

// lines is a need; under the one that the cursor is on, how the pins stand to
// it.
func (p *needsPanel) lines(i, w int, here bool) []string {
	t, n := p.desk.Theme, &p.desk.Now().Needs[i]
	mark, ink := "on ", t.Text
	if n.Off {
		mark, ink = "off", t.Dim
	}
	lines := []string{t.Line(ui.Pad(fmt.Sprintf(" %s  %s", mark, n.String()), w), here, ink)}
	if !here || n.Off {
		return lines
	}
	for _, pin := range p.desk.Pins() {
		j := needs.Judge(pin, n)
		lines = append(lines, t.Dim.Of(ui.Cut("        "+ui.Pad(pin.Name(), 28)+" "+ui.Plain(report.JudgementText(&j)), w)))
	}
	return lines
}
