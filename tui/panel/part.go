package panel

import (
	"iter"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props"
	"alongside/props/part"
	"alongside/tui/desk"
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
	open map[string]bool // topics whose rows are shown
	word string          // typed so far in a field of words
}

// partRow is a line of the form: a field of the part, the price of the metal of one
// pin, or the heading of a topic.
type partRow struct {
	field part.Field
	pin   *props.Material
	topic string
}

// key is the row in the drafts of the desk; that of a topic has none.
func (r partRow) key() string {
	switch {
	case r.topic != "":
		return ""
	case r.pin != nil:
		return r.field.String() + " " + r.pin.ID
	}
	return r.field.String()
}

// NewPart opens the form on the first row that waits for something: what could
// not be used, else what nothing is said of.
func NewPart(d *desk.Desk) desk.Screen {
	p := partOf(d)
	at := slices.IndexFunc(p.rows, func(r partRow) bool { return d.Form[r.key()].Problem != "" })
	if at < 0 {
		at = slices.IndexFunc(p.rows, func(r partRow) bool { return p.text(r) == "" && r.topic == "" && r.words() == nil })
	}
	return p.on(at)
}

// newPartOn opens the form on a row; on the first where there is no such row.
func newPartOn(d *desk.Desk, r partRow) desk.Screen {
	p := partOf(d)
	for topic, rows := range p.topics() {
		if slices.Contains(rows, r) {
			p.open[topic] = true
		}
	}
	p.lay()
	return p.on(slices.Index(p.rows, r))
}

// partOf is the form with the topics open of which something is said.
func partOf(d *desk.Desk) *partForm {
	p := &partForm{panel: panel{desk: d, about: "Takes what is known of the part; the swap and the watch-outs work with it.", typing: true}, open: map[string]bool{"": true}}
	for topic, rows := range p.topics() {
		if slices.ContainsFunc(rows, func(r partRow) bool { return p.text(r) != "" }) {
			p.open[topic] = true
		}
	}
	p.lay()
	return p
}

// topics are the rows of the form by topic, in its order; those of the first, "",
// have no heading.
func (p *partForm) topics() iter.Seq2[string, []partRow] {
	return func(yield func(string, []partRow) bool) {
		topic, rows := "", []partRow(nil)
		for _, f := range part.Fields() {
			if next := f.Info().Topic; next != "" {
				if !yield(topic, rows) {
					return
				}
				topic, rows = next, nil
			}
			if f == part.FieldPrice {
				break
			}
			rows = append(rows, partRow{field: f})
		}
		for at := range p.desk.Pins() {
			rows = append(rows, partRow{field: part.FieldPrice, pin: p.desk.PinAt(at)})
		}
		yield(topic, rows)
	}
}

// lay lists the rows that are shown.
func (p *partForm) lay() {
	p.rows = nil
	for topic, rows := range p.topics() {
		if topic != "" {
			p.rows = append(p.rows, partRow{topic: topic})
		}
		if p.open[topic] {
			p.rows = append(p.rows, rows...)
		}
	}
}

// fold opens or closes the topic under the cursor.
func (p *partForm) fold() {
	topic := p.row().topic
	p.open[topic] = !p.open[topic]
	p.lay()
	if p.open[topic] {
		p.list.At++
	}
	p.enter()
}

func (p *partForm) on(at int) desk.Screen {
	p.list.At = max(at, 0)
	p.enter()
	return p
}

// saved is what the part has for a row.
func (p *partForm) saved(r partRow) string {
	if r.field == part.FieldPrice {
		return p.desk.Now().Part.Price[r.pin.ID]
	}
	return p.desk.Now().Part.Get(r.field)
}

func (p *partForm) text(r partRow) string {
	if r.topic != "" {
		return ""
	}
	if d, ok := p.desk.Form[r.key()]; ok {
		return d.Text
	}
	return p.saved(r)
}

func (p *partForm) row() partRow { return p.rows[p.list.At] }

// words are those to choose from in the row under the cursor; nil where it takes
// a text.
func (p *partForm) words() []string { return p.row().words() }

func (r partRow) words() []string {
	if r.topic != "" {
		return nil
	}
	return r.field.Info().Words
}

// enter makes the field of the row under the cursor ready to be typed over.
func (p *partForm) enter() {
	p.list.At = ui.Clamp(p.list.At, 0, len(p.rows)-1)
	p.field, p.word = ui.NewField(p.text(p.row())), ""
}

// leave takes what was typed. It reports whether the part has it now.
func (p *partForm) leave() bool {
	r, text := p.row(), p.field.Text()
	if r.topic != "" || p.words() != nil || text == p.text(r) && p.desk.Form[r.key()].Problem == "" {
		return true
	}
	return p.set(r, text)
}

// Closing takes what was typed before the form goes.
func (p *partForm) Closing() {
	if !p.leave() {
		p.desk.Warn("kept in the form as typed: " + p.desk.Form[p.row().key()].Problem)
	}
}

func (p *partForm) set(r partRow, text string) bool {
	typed := strings.TrimSpace(text)
	if r.field == part.FieldPrice {
		typed = r.pin.ID + "=" + typed
	}
	if err := p.desk.SetPart(r.field, typed); err != nil {
		p.desk.Form[r.key()] = desk.Draft{Text: text, Problem: err.Error()}
		return false
	}
	delete(p.desk.Form, r.key())
	return true
}

func (p *partForm) Title() string { return "The part: what the customer says of it, in any unit" }

func (p *partForm) Height(_, most int) int {
	return min(most, len(p.rows)+len(p.desk.Form)+2)
}

func (p *partForm) Keys() ui.Keys {
	keys := ui.Keys{
		ui.On("enter", "take it, next", "take what is typed and go on; close after the last", p.take).As("enter ↓"),
		ui.On("up shift+tab ctrl+p", "previous", "take it and go back", func() { p.move(-1) }).As("↑"),
		ui.On("down tab ctrl+n", "", "", func() { p.move(1) }),
	}
	switch {
	case p.row().topic != "":
		keys = ui.Keys{ui.On("enter left right", "open or close", "show or hide what this heading holds", p.fold), keys[1].As("↑↓"), keys[2]}
	case p.words() != nil:
		keys[0].Line = "next"
		clear := func() { p.set(p.row(), ""); p.enter() }
		keys = append(ui.Keys{ui.On("left", "choose", "another word", func() { p.choose(-1) }).As("←→"), ui.On("", "the word", "or type the beginning of the word", nil).As("a–z")}, append(keys,
			ui.On("right", "", "", func() { p.choose(1) }),
			ui.On("backspace delete ctrl+u", "", "not said", clear).As("del"))...)
	default:
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
	if p.row().topic != "" {
		return
	}
	if p.words() != nil {
		p.typeWord(msg)
		return
	}
	if p.desk.TypeInto(&p.field, msg) {
		if d, ok := p.desk.Form[p.row().key()]; ok { // the problem is told again on leaving
			p.desk.Form[p.row().key()] = desk.Draft{Text: p.field.Text(), Problem: d.Problem}
		}
	}
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
		p.desk.Close()
	default:
		p.move(1)
	}
}

func (p *partForm) move(by int) {
	p.leave()
	p.list.Move(by)
	p.enter()
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
		Foot:  func() []string { return []string{p.desk.Theme.Dim.Of(ui.Cut("   "+ui.Plain(p.about()), w))} },
	}, h)
}

// lines is a row with the heading above it and the problem below.
func (p *partForm) lines(i int, here bool, w int) []string {
	r, t := p.rows[i], p.desk.Theme
	if r.topic != "" {
		mark, sign := "   ", " …"
		if here {
			mark = " > "
		}
		if p.open[r.topic] {
			sign = ""
		}
		return []string{mark + t.Heading.Of(r.topic) + t.Dim.Of(sign)}
	}
	line := p.line(r, here)
	line += "  " + t.Dim.Of(ui.Cut(ui.Plain(p.aside(r, here)), w-ui.Width(line)-2))
	return append([]string{line}, t.Bad.Wrap(p.desk.Form[r.key()].Problem, w, partLabel+3)...)
}

func (p *partForm) line(r partRow, here bool) string {
	t, info := p.desk.Theme, r.field.Info()
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
	if r.topic != "" {
		return "enter opens and closes it"
	}
	if r.pin != nil {
		return "price of a mass of " + r.pin.Name() + "; the currency is a word of your own, or none"
	}
	return r.field.Info().Help
}

// understood is what was typed for a field in the unit of the system, or the
// material it names; "" where that says no more than the text.
func (p *partForm) understood(f part.Field) string {
	g := p.desk.Given()
	if f == part.FieldMate && g.Mate != nil {
		return g.Mate.Name()
	}
	q := g.Size(f)
	if q == nil {
		return ""
	}
	in, err := q.In(units.Preferred(q.Unit.Dimension(), p.desk.Now().Bench.System))
	if err != nil || in.Unit == q.Unit {
		return ""
	}
	return "= " + in.String()
}
