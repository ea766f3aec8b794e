package tui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/call"
	"alongside/props/part"
	"alongside/units"
)

// partForm asks for the part field by field. A text is taken when the cursor
// leaves its field; one that cannot be used stays there with the reason under
// it, also when the form is closed and opened again.
type partForm struct {
	m     *Model
	at    int
	top   int
	field field // of the row at, when that is typed
}

// formState is what the form remembers from one opening to the next: where it
// was, and what was typed that could not be used.
type formState struct {
	at     partRow
	drafts map[partRow]draft
}

type draft struct{ text, problem string }

// partRow is a line of the form: a field of the part, or the price of the
// metal of one pin.
type partRow struct {
	field part.Field
	pin   *props.Material
}

// newPart opens the form on the row it was last on.
func newPart(m *Model) screen { return newPartOn(m, m.form.at) }

// newPartOn opens the form on a row; on the first where there is no such row.
func newPartOn(m *Model, r partRow) screen {
	p := &partForm{m: m}
	p.at = max(slices.Index(p.rows(), r), 0)
	p.enter()
	return p
}

func (p *partForm) rows() []partRow {
	var out []partRow
	for _, f := range part.Fields() {
		if f < part.FieldPrice {
			out = append(out, partRow{field: f})
		}
	}
	for _, i := range p.m.order() {
		out = append(out, partRow{part.FieldPrice, p.m.bench.Pins[i]})
	}
	return out
}

// saved is what the part has for a row.
func (p *partForm) saved(r partRow) string {
	if r.field == part.FieldPrice {
		return p.m.part.Price[r.pin.ID]
	}
	return p.m.part.Get(r.field)
}

func (p *partForm) text(r partRow) string {
	if d, ok := p.m.form.drafts[r]; ok {
		return d.text
	}
	return p.saved(r)
}

func (p *partForm) row() partRow { return p.rows()[p.at] }

func (p *partForm) words() []string { return p.row().field.Info().Words }

// enter makes the field of the row under the cursor ready to be typed over.
func (p *partForm) enter() {
	p.m.form.at = p.row()
	p.field = newField(p.text(p.row()))
}

// leave takes what was typed. It reports whether the part has it now.
func (p *partForm) leave() bool {
	r, text := p.row(), p.field.text()
	if p.words() != nil || text == p.text(r) && p.m.form.drafts[r].problem == "" {
		return true
	}
	return p.set(r, text)
}

// closing takes what was typed before the form goes.
func (p *partForm) closing() {
	if !p.leave() {
		p.m.warn("kept in the form as typed: " + p.m.form.drafts[p.row()].problem)
	}
}

func (p *partForm) set(r partRow, text string) bool {
	typed := strings.TrimSpace(text)
	if r.field == part.FieldPrice {
		typed = r.pin.ID + "=" + typed
	}
	next := p.m.part.Clone()
	if err := next.Set(p.m.o.Catalog, r.field, typed); err != nil {
		if p.m.form.drafts == nil {
			p.m.form.drafts = map[partRow]draft{}
		}
		p.m.form.drafts[r] = draft{text, err.Error()}
		return false
	}
	delete(p.m.form.drafts, r)
	p.m.changeCall(func(c *call.Call) { c.Part = next })
	return true
}

func (p *partForm) Title() string { return "The part: what the customer says of it, in any unit" }
func (p *partForm) Typing() bool  { return true }

func (p *partForm) Height(most int) int { return min(most, len(p.rows())+len(p.m.form.drafts)+2) }

func (p *partForm) Keys() []key.Binding {
	b := func(k, help string) key.Binding { return key.NewBinding(key.WithKeys(k), key.WithHelp(k, help)) }
	if p.words() != nil {
		return []key.Binding{b("←→", "choose"), b("enter ↓", "next"), b("↑", "previous"), escape}
	}
	return []key.Binding{b("enter ↓", "take it, next"), b("↑", "previous"), b("ctrl+u", "clear"), escape}
}

func (p *partForm) Update(msg tea.Msg) tea.Cmd {
	if k, ok := msg.(tea.KeyMsg); ok {
		p.key(k)
	} else if _, y, ok := pressed(msg); ok {
		p.click(y)
	} else if by := step(msg, 1); by != 0 {
		p.move(by)
	}
	return nil
}

func (p *partForm) key(k tea.KeyMsg) {
	switch s := k.String(); {
	case s == "up", s == "shift+tab":
		p.move(-1)
	case s == "down", s == "tab":
		p.move(1)
	case s == "enter":
		switch last := p.at == len(p.rows())-1; {
		case !p.leave():
		case last:
			p.m.close()
		default:
			p.move(1)
		}
	case p.words() != nil:
		switch s {
		case "left", "h":
			p.choose(-1)
		case "right", "l", " ":
			p.choose(1)
		case "backspace", "delete", "ctrl+u":
			p.set(p.row(), "")
		}
	case p.field.update(k):
		if d, ok := p.m.form.drafts[p.row()]; ok { // the problem is told anew on leaving
			p.m.form.drafts[p.row()] = draft{p.field.text(), d.problem}
		}
	}
}

func (p *partForm) move(by int) {
	p.leave()
	p.at = clamp(p.at+by, 0, len(p.rows())-1)
	p.enter()
}

// choices are the words of the row under the cursor, the one that stands for
// nothing said first.
func choices(f part.Field) []string {
	words := f.Info().Words
	if f == part.FieldCase {
		return append([]string{""}, words...)
	}
	return words
}

func (p *partForm) choose(by int) {
	p.set(p.row(), nextChoice(&p.m.part, p.row().field, by))
	p.enter()
}

// nextChoice is the word after the one a field of the part has.
func nextChoice(p *part.Part, f part.Field, by int) string {
	list := choices(f)
	at := max(slices.Index(list, p.Get(f)), 0)
	return list[(at+by+len(list))%len(list)]
}

const (
	partLabel = 15 // width of the labels
	partText  = 28 // width of the texts
)

// lines lays the form out and tells on which row each line stands.
func (p *partForm) lines(w int) (lines []string, of []int) {
	t := p.m.theme
	for i, r := range p.rows() {
		if r.field == part.FieldPrice && (i == 0 || p.rows()[i-1].field != r.field) {
			lines, of = append(lines, " "+t.group.of("Price of a mass of metal")), append(of, -1)
		}
		lines, of = append(lines, p.line(i, r, w)), append(of, i)
		if d, ok := p.m.form.drafts[r]; ok {
			for _, l := range wrap(d.problem, w-partLabel-4) {
				lines, of = append(lines, blanks(partLabel+3)+t.bad.of(l)), append(of, i)
			}
		}
	}
	return lines, of
}

func (p *partForm) line(i int, r partRow, w int) string {
	t, info := p.m.theme, r.field.Info()
	label, room, mark, ink := info.Label, partText, "   ", t.text
	if r.pin != nil {
		label = r.pin.Name()
	}
	labels := partLabel
	if r.pin != nil {
		labels = partLabel + 14
		room -= 10
	}
	if i == p.at {
		mark, ink = " > ", t.strong
	}
	s := mark + ink.of(pad(plain(label), labels))
	switch {
	case info.Words != nil:
		return s + p.choiceText(r.field, i == p.at)
	case i == p.at:
		s += pad(p.field.view(t, room), room)
	default:
		s += pad(plain(p.text(r)), room)
	}
	return s + "  " + t.dim.of(cut(plain(p.aside(i, r)), w-width(s)-2))
}

// choiceText shows the word that a field has, and under the cursor the others.
func (p *partForm) choiceText(f part.Field, here bool) string {
	t, now := p.m.theme, p.m.part.Get(f)
	var list []string
	for i, c := range choices(f) {
		name := or(c, "not said")
		switch chosen := c == now || now == "" && i == 0; {
		case chosen && !here:
			return name
		case chosen:
			name = t.cursorText(name)
		}
		list = append(list, name)
	}
	return strings.Join(list, "  ")
}

// aside says beside a row what to type, or how what is there was understood.
func (p *partForm) aside(i int, r partRow) string {
	switch {
	case r.field.Info().Words != nil:
		return ""
	case p.saved(r) != "" && (i != p.at || p.field.text() == p.saved(r)):
		return p.m.swapped().understood(r.field, p.m.bench.System)
	case r.pin != nil:
		return "such as 1.20 USD/lb"
	}
	return "such as " + r.field.Info().Example
}

// about says what the row under the cursor is.
func (p *partForm) about() string {
	r := p.row()
	if r.pin != nil {
		return "price of a mass of " + r.pin.Name() + "; the currency is a word of your own, or none"
	}
	return r.field.Info().Help
}

func (p *partForm) click(y int) {
	w, _ := p.m.panel()
	_, of := p.lines(w)
	if i := p.top + y; y >= 0 && i < len(of) && of[i] >= 0 {
		p.move(of[i] - p.at)
	}
}

func (p *partForm) View() string {
	w, h := p.m.panel()
	lines, of := p.lines(w)
	first, last := 0, 0
	for i, row := range of {
		if row == p.at {
			last = i
		}
		if row < p.at {
			first = i + 1
		}
	}
	h-- // what the row under the cursor is
	p.top = clamp(p.top, last-h+1, first)
	p.top = clamp(p.top, 0, len(lines)-h)
	lines = lines[p.top:min(p.top+h, len(lines))]
	for len(lines) < h {
		lines = append(lines, "")
	}
	return strings.Join(append(lines, p.m.theme.dim.of(cut("   "+plain(p.about()), w))), "\n")
}

// understood is what was typed for a field in the unit of the system, or the
// material it names; "" where that says no more than the text.
func (s *swaps) understood(f part.Field, system units.System) string {
	g := &s.given
	if f == part.FieldMate && g.Mate != nil {
		return g.Mate.Name()
	}
	q := g.Size(f)
	if q == nil {
		return ""
	}
	in, err := q.In(units.Preferred(q.Unit.Dimension(), system))
	if err != nil || in.Unit == q.Unit {
		return ""
	}
	return "= " + in.String()
}
