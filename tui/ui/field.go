package ui

import (
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// Field is a one-line text field: editing by the textinput bubble, drawing by
// us, so that it follows the theme and never blinks.
type Field struct {
	input textinput.Model
	// kept is true while the text is a remembered one that the next letter
	// replaces.
	kept bool
}

// FieldLimit is the most characters of a field.
const FieldLimit = 200

// NewField is a field with a remembered text, which the next letter replaces.
func NewField(text string) Field {
	in := textinput.New()
	in.CharLimit = FieldLimit
	in.SetValue(text)
	in.Focus()
	return Field{input: in, kept: text != ""}
}

// EditField is a field with a text to be changed.
func EditField(text string) Field {
	f := NewField(text)
	f.kept = false
	f.input.CursorEnd()
	return f
}

// Text is what the field holds.
func (f *Field) Text() string { return f.input.Value() }

// Fresh reports whether the next letter begins a text.
func (f *Field) Fresh() bool { return f.kept || f.Text() == "" }

// Keep makes the text a remembered one.
func (f *Field) Keep() { f.kept = f.Text() != "" }

// Update edits the text and reports whether it changed.
func (f *Field) Update(msg tea.KeyMsg) bool {
	before := f.Text()
	if f.kept && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt {
		f.input.SetValue("")
	}
	f.kept = false
	if msg.Paste || len(msg.Runes) > 1 { // text, though it be the name of a key
		msg.Paste = true
		msg.Runes = []rune(Plain(string(msg.Runes)))
	}
	keys := &f.input.KeyMap
	switch {
	case key.Matches(msg, keys.Paste): // the bubble would run a clipboard program of its own
	case key.Matches(msg, keys.NextSuggestion, keys.PrevSuggestion, keys.AcceptSuggestion):
	case key.Matches(msg, keys.DeleteWordForward) && f.input.Position() >= len([]rune(f.Text()))-1:
		// bubbles v1.0.0 reads past the end here: the last letter is the word.
		f.input, _ = f.input.Update(tea.KeyMsg{Type: tea.KeyDelete})
	default:
		f.input, _ = f.input.Update(msg)
	}
	return f.Text() != before
}

// View draws the field in w cells.
func (f *Field) View(t *Theme, w int) string {
	text := []rune(Plain(f.Text()))
	at := Clamp(f.input.Position(), 0, len(text))
	// Keep the cursor in view where the text is longer than the room.
	from := 0
	for from < at && Width(string(text[from:at])) > w-2 {
		from++
	}
	before, after := string(text[from:at]), string(text[at:])
	if f.kept {
		return Cut(t.Chosen(before)+t.Text.Of(after), w)
	}
	if t.Plain {
		return Cut(before+"_"+after, w)
	}
	under, rest := " ", ""
	if at < len(text) {
		under, rest = string(text[at:at+1]), string(text[at+1:])
	}
	return Cut(before+t.Cursor.Of(under)+rest, w)
}
