package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/part"
	"alongside/tui/ui"
	"alongside/units"
)

// partForm asks for the part field by field. A text is taken when the cursor
// leaves its field; one that cannot be used stays there with the reason under
// it, also when the form is closed and opened again. In a field of words a word
// that is typed is chosen by its beginning.
type partForm struct {
	panel
	rows []partRow
	word string // typed so far in a field of words
}

// formState is what was typed and could not be used, from one opening of the
// form to the next.
type formState map[partRow]draft

type draft struct{ text, problem string }

// partRow is a line of the form: a field of the part, or the price of the
// metal of one pin.
type partRow struct {
	field part.Field
	pin   *props.Material
}

// newPart opens the form on the first row that waits for something: what could
// not be used, else what nothing is said of.
func newPart(m *Model) screen {
	p := partOf(m)
	at := slices.IndexFunc(p.rows, func(r partRow) bool { return m.form[r].problem != "" })
	if at < 0 {
		at = slices.IndexFunc(p.rows, func(r partRow) bool { return p.text(r) == "" && r.field.Info().Words == nil })
	}
	return p.on(at)
}

// newPartOn opens the form on a row; on the first where there is no such row.
func newPartOn(m *Model, r partRow) screen {
	p := partOf(m)
	return p.on(slices.Index(p.rows, r))
}

func partOf(m *Model) *partForm {
	p := &partForm{panel: panel{m: m, typing: true}}
	for _, f := range part.Fields() {
		if f < part.FieldPrice {
			p.rows = append(p.rows, partRow{field: f})
		}
	}
	for at := range m.pins() {
		p.rows = append(p.rows, partRow{part.FieldPrice, m.pinAt(at)})
	}
	return p
}

func (p *partForm) on(at int) screen {
	p.list.At = max(at, 0)
	p.enter()
	return p
}

// saved is what the part has for a row.
func (p *partForm) saved(r partRow) string {
	if r.field == part.FieldPrice {
		return p.m.now().Part.Price[r.pin.ID]
	}
	return p.m.now().Part.Get(r.field)
}

func (p *partForm) text(r partRow) string {
	if d, ok := p.m.form[r]; ok {
		return d.text
	}
	return p.saved(r)
}

func (p *partForm) row() partRow { return p.rows[p.list.At] }

// words are those to choose from in the row under the cursor; nil where it takes
// a text.
func (p *partForm) words() []string { return p.row().field.Info().Words }

// enter makes the field of the row under the cursor ready to be typed over.
func (p *partForm) enter() {
	p.list.At = ui.Clamp(p.list.At, 0, len(p.rows)-1)
	p.field, p.word = ui.NewField(p.text(p.row())), ""
}

// leave takes what was typed. It reports whether the part has it now.
func (p *partForm) leave() bool {
	r, text := p.row(), p.field.Text()
	if p.words() != nil || text == p.text(r) && p.m.form[r].problem == "" {
		return true
	}
	return p.set(r, text)
}

// closing takes what was typed before the form goes.
func (p *partForm) closing() {
	if !p.leave() {
		p.m.warn("kept in the form as typed: " + p.m.form[p.row()].problem)
	}
}

func (p *partForm) set(r partRow, text string) bool {
	typed := strings.TrimSpace(text)
	if r.field == part.FieldPrice {
		typed = r.pin.ID + "=" + typed
	}
	if err := p.m.setPart(r.field, typed); err != nil {
		p.m.form[r] = draft{text, err.Error()}
		return false
	}
	delete(p.m.form, r)
	return true
}

func (p *partForm) Title() string { return "The part: what the customer says of it, in any unit" }

func (p *partForm) Height(_, most int) int {
	return min(most, len(p.rows)+len(p.m.form)+2)
}

func (p *partForm) Keys() ui.Keys {
	keys := ui.Keys{
		ui.On("enter", "take it, next", "take what is typed and go on; close after the last", p.take).As("enter ↓"),
		ui.On("up shift+tab ctrl+p", "previous", "take it and go back", func() { p.move(-1) }).As("↑"),
		ui.On("down tab ctrl+n", "", "", func() { p.move(1) }),
	}
	if p.words() != nil {
		keys[0].Line = "next"
		clear := func() { p.set(p.row(), ""); p.enter() }
		keys = append(ui.Keys{ui.On("left", "choose", "another word", func() { p.choose(-1) }).As("←→"), ui.On("", "the word", "or type the beginning of the word", nil).As("a–z")}, append(keys,
			ui.On("right", "", "", func() { p.choose(1) }),
			ui.On("backspace delete ctrl+u", "", "not said", clear).As("del"))...)
	} else {
		keys = append(keys, ui.On("ctrl+u", "clear", "clear the text", nil))
	}
	for _, k := range p.list.TypingKeys()[2:] { // without up and down
		do := k.Do
		k.Do = func() tea.Cmd { p.leave(); defer p.enter(); return do() }
		keys = append(keys, k)
	}
	return keys
}

func (p *partForm) Type(msg tea.KeyMsg) {
	if p.words() != nil {
		p.typeWord(msg)
		return
	}
	if p.field.Update(msg) {
		if d, ok := p.m.form[p.row()]; ok { // the problem is told again on leaving
			p.m.form[p.row()] = draft{p.field.Text(), d.problem}
		}
	}
}

// typeWord chooses the first word that begins with what was typed; a blank alone
// is the next word.
func (p *partForm) typeWord(msg tea.KeyMsg) {
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace || msg.Alt {
		return
	}
	typed := p.word + strings.ToLower(strings.TrimSpace(ui.Plain(string(msg.Runes))))
	if msg.Type == tea.KeySpace {
		if p.word == "" {
			p.choose(1)
			return
		}
		typed = p.word + "-"
	}
	list := choices(p.row().field)
	for _, c := range list {
		name := strings.ReplaceAll(ui.Or(c, notSaid), " ", "-")
		if strings.HasPrefix(name, strings.ReplaceAll(typed, " ", "-")) && typed != "" {
			p.set(p.row(), c)
			p.enter()
			p.word = typed
			return
		}
	}
	p.m.warnf("no word begins with %q; there are: %s", typed, strings.TrimPrefix(strings.Join(list, ", "), ", "))
}

func (p *partForm) Wheel(by int) { p.move(by) }

func (p *partForm) Click(_, y int) bool {
	p.leave()
	p.list.Click(y)
	p.enter()
	return false
}

// take takes what was typed and goes on, and closes the form after the last
// row. What cannot be used can be typed over.
func (p *partForm) take() {
	switch last := p.list.At == len(p.rows)-1; {
	case !p.leave():
		p.field.Keep()
	case last:
		p.m.close()
	default:
		p.move(1)
	}
}

func (p *partForm) move(by int) {
	p.leave()
	p.list.Move(by)
	p.enter()
}

const notSaid = "not said"

// choices are the words of a field, the one that stands for nothing said first.
func choices(f part.Field) []string {
	words := f.Info().Words
	if f == part.FieldCase || f == part.FieldRole {
		return append([]string{""}, words...)
	}
	return words
}

func (p *partForm) choose(by int) {
	p.set(p.row(), nextChoice(&p.m.now().Part, p.row().field, by))
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
	longPart  = 14 // what labels of prices have more, and some of it the texts less
)

func (p *partForm) View(w, h int) []string {
	return p.list.Draw(ui.Listing{
		Items: len(p.rows),
		Lines: func(i int, here bool) []string { return p.lines(i, here, w) },
		Foot:  func() []string { return []string{p.m.theme.Dim.Of(ui.Cut("   "+ui.Plain(p.about()), w))} },
	}, h)
}

// lines is a row with the heading above it and the problem below.
func (p *partForm) lines(i int, here bool, w int) []string {
	r, t := p.rows[i], p.m.theme
	line := p.line(r, here)
	line += "  " + t.Dim.Of(ui.Cut(ui.Plain(p.aside(r, here)), w-ui.Width(line)-2))
	lines := append([]string{line}, t.Bad.Wrap(p.m.form[r].problem, w, partLabel+3)...)
	if r.pin != nil && r.pin == p.m.baseline() {
		lines = append([]string{" " + t.Heading.Of("Price of a mass of metal")}, lines...)
	}
	return lines
}

func (p *partForm) line(r partRow, here bool) string {
	t, info := p.m.theme, r.field.Info()
	label, labels, room, mark, ink := info.Label, partLabel, partText, "   ", t.Text
	if r.pin != nil {
		label, labels, room = r.pin.Name(), labels+longPart, room-10
	}
	if here {
		mark, ink = " > ", t.Strong
	}
	s := mark + ink.Of(ui.Pad(ui.Plain(label), labels))
	switch {
	case info.Words != nil:
		return s + p.choiceText(r.field, here)
	case here:
		return s + ui.Pad(p.field.View(t, room), room)
	}
	return s + ui.Pad(ui.Plain(p.text(r)), room)
}

// choiceText shows the word that a field has, and under the cursor the others.
func (p *partForm) choiceText(f part.Field, here bool) string {
	t, now := p.m.theme, p.m.now().Part.Get(f)
	var list []string
	for i, c := range choices(f) {
		name := ui.Or(c, notSaid)
		switch chosen := c == now || now == "" && i == 0; {
		case chosen && !here:
			return name
		case chosen:
			name = t.Chosen(name)
		}
		list = append(list, name)
	}
	return strings.Join(list, "  ")
}

// aside says beside a row what to type, or how what is there was understood.
func (p *partForm) aside(r partRow, here bool) string {
	switch {
	case r.field.Info().Words != nil:
		return ""
	case p.saved(r) != "" && (!here || p.field.Text() == p.saved(r)):
		return p.understood(r.field)
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

// understood is what was typed for a field in the unit of the system, or the
// material it names; "" where that says no more than the text.
func (p *partForm) understood(f part.Field) string {
	g := p.m.given()
	if f == part.FieldMate && g.Mate != nil {
		return g.Mate.Name()
	}
	q := g.Size(f)
	if q == nil {
		return ""
	}
	in, err := q.In(units.Preferred(q.Unit.Dimension(), p.m.now().Bench.System))
	if err != nil || in.Unit == q.Unit {
		return ""
	}
	return "= " + in.String()
}
