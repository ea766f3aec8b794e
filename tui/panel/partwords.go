package panel

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/part"
	"alongside/tui/ui"
)

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
	p.set(p.row(), nextChoice(&p.desk.Now().Part, p.row().field, by))
	p.enter()
}

// nextChoice is the word after the one a field of the part has.
func nextChoice(p *part.Part, f part.Field, by int) string {
	list := choices(f)
	at := max(slices.Index(list, p.Get(f)), 0)
	return list[(at+by+len(list))%len(list)]
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
	p.desk.Warnf("no word begins with %q; there are: %s", typed, strings.TrimPrefix(strings.Join(list, ", "), ", "))
}

// choiceText shows the word that a field has, and under the cursor the others.
func (p *partForm) choiceText(f part.Field, here bool) string {
	t, now := p.desk.Theme, p.desk.Now().Part.Get(f)
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
