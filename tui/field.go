package tui

import (
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// field is a one-line text field: editing by the textinput bubble, drawing by
// us, so that it follows the theme and never blinks.
type field struct {
	input textinput.Model
	// kept is true while the text is a remembered one that the next letter
	// replaces.
	kept bool
}

const fieldLimit = 200

func newField(text string) field {
	in := textinput.New()
	in.CharLimit = fieldLimit
	in.SetValue(text)
	in.Focus()
	return field{input: in, kept: text != ""}
}

func (f *field) text() string { return f.input.Value() }

// update edits the text and reports whether it changed.
func (f *field) update(msg tea.KeyMsg) bool {
	before := f.text()
	if f.kept && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt {
		f.input.SetValue("")
	}
	f.kept = false
	if msg.Paste {
		msg.Runes = []rune(plain(string(msg.Runes)))
	}
	switch msg.String() {
	case "ctrl+v": // the bubble would run a clipboard program of its own
	case "up", "down", "tab":
	default:
		f.input, _ = f.input.Update(msg)
	}
	return f.text() != before
}

func (f *field) view(t *theme, w int) string {
	text, at := []rune(plain(f.text())), f.input.Position()
	at = clamp(at, 0, len(text))
	// Keep the cursor in view where the text is longer than the room.
	from := 0
	for from < at && width(string(text[from:at])) > w-2 {
		from++
	}
	before, after := string(text[from:at]), string(text[at:])
	if f.kept {
		return cut(t.cursorText(before)+t.text.of(after), w)
	}
	if t.plain {
		return cut(before+"_"+after, w)
	}
	under, rest := " ", ""
	if at < len(text) {
		under, rest = string(text[at:at+1]), string(text[at+1:])
	}
	return cut(before+t.cursor.of(under)+rest, w)
}

// cursorText marks a text as chosen, with or without colour.
func (t *theme) cursorText(s string) string {
	if t.plain {
		return "[" + s + "]"
	}
	return t.cursor.of(s)
}
