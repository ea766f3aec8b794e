package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"alongside/props/record"
	"alongside/props/settings"
	"alongside/tui/ui"
)

// fieldKeys are the names of keys that text fields and lists need and that stay
// with what has them: those that edit a text, that move, that enter and leave.
var fieldKeys = func() map[string]bool {
	edit := textinput.DefaultKeyMap
	names := strings.Fields("enter ctrl+j esc tab shift+tab space f1 ctrl+c home end pgup pgdown")
	for _, b := range []interface{ Keys() []string }{
		edit.CharacterForward, edit.CharacterBackward, edit.WordForward, edit.WordBackward, edit.DeleteWordBackward, edit.DeleteWordForward,
		edit.DeleteAfterCursor, edit.DeleteBeforeCursor, edit.DeleteCharacterBackward, edit.DeleteCharacterForward,
		edit.LineStart, edit.LineEnd, edit.Paste, edit.AcceptSuggestion, edit.NextSuggestion, edit.PrevSuggestion,
	} {
		names = append(names, b.Keys()...)
	}
	for _, k := range new(ui.List).TypingKeys() {
		names = append(names, k.Names...)
	}
	taken := map[string]bool{}
	for _, n := range names {
		taken[n] = true
	}
	return taken
}

// KeyLines are the keys of the bench that settings can change, by groups of the
// help page.
func KeyLines() []settings.KeyLine {
	list, needed := commandList(), fieldKeys()
	var out []settings.KeyLine
	for _, group := range helpGroups {
		for _, c := range list {
			if free := c.free(needed); len(free) > 0 && told(list, c).Group == group {
				out = append(out, settings.KeyLine{Group: group, Name: free[0], Names: free, Words: c.Words})
			}
		}
	}
	return out
}

// CheckKeys adds to the mistakes of settings the keys that cannot be as they ask.
func CheckKeys(s *settings.Settings) { remapped(s) }

// free are the names that the program has for a command and that can be others.
func (c *command) free(needed map[string]bool) []string {
	return slices.DeleteFunc(slices.Clone(c.shipped), func(n string) bool { return needed[n] })
}

// remapped are the commands with the keys that settings give them. What cannot be
// is refused by name, and the command keeps the keys it has.
func remapped(s *settings.Settings) []*command {
	list := commandList()
	if len(s.Keys) == 0 {
		return list
	}
	needed := fieldKeys()
	for _, k := range slices.Clone(s.Keys) {
		if problem, remedy := unusable(list, needed, k); problem != "" {
			s.Refuse(k.Name, problem, remedy)
		}
	}
	for clash(list, needed, s) {
	}
	changed := map[*command][]string{}
	for _, k := range s.Keys {
		c := commandNamed(list, k.Name)
		if slices.Equal(k.To, c.free(needed)) {
			continue
		}
		changed[c], c.Names, c.Label = k.To, slices.Clone(k.To), k.To[0]
		for _, n := range c.shipped {
			if needed[n] {
				c.Names = append(c.Names, n)
			}
		}
	}
	for _, c := range list {
		if c.Words != "" {
			c.retell(list, changed, needed)
		}
	}
	return list
}

// commandNamed is the command that has a key without settings; nil where none.
func commandNamed(list []*command, key string) *command {
	for _, c := range list {
		if slices.Contains(c.shipped, key) {
			return c
		}
	}
	return nil
}

// unusable says what is wrong with a line of the settings for itself.
func unusable(list []*command, needed map[string]bool, k settings.Key) (problem, remedy string) {
	if c := commandNamed(list, k.Name); c == nil || needed[k.Name] {
		var all []string
		for _, c := range list {
			all = append(all, c.free(needed)...)
		}
		return "is no key of the bench that can be another", record.DidYouMean(k.Name, all)
	}
	for _, to := range k.To {
		switch {
		case needed[to]:
			return fmt.Sprintf("%q is needed by text fields and lists", to), `choose a letter, a sign, or one like "f2", "ctrl+g", "alt+g"`
		case !sent(to):
			return fmt.Sprintf("%q is no key that a terminal sends", to), `write a letter, a sign, or one like "f2", "ctrl+g", "alt+g"; ctrl+i and ctrl+m are Tab and Enter`
		}
	}
	return "", ""
}

// sent reports whether a terminal can send a key of this name.
func sent(name string) bool {
	base := strings.TrimPrefix(name, "alt+")
	if len([]rune(base)) == 1 {
		return ui.Width(base) > 0 && base != " "
	}
	for t := tea.KeyF20; t <= 127; t++ {
		if t != tea.KeyRunes && (tea.Key{Type: t}).String() == base {
			return true
		}
	}
	return false
}

// clash refuses the first line of the settings whose key another command has,
// or whose command an earlier line has changed. It reports whether there is one.
func clash(list []*command, needed map[string]bool, s *settings.Settings) bool {
	changed, owner := map[*command]string{}, map[string]*command{}
	for _, k := range s.Keys {
		c := commandNamed(list, k.Name)
		if before, twice := changed[c]; twice {
			s.Refuse(k.Name, fmt.Sprintf("does the same as %s, which has a line of its own", before), "put all keys into one line")
			return true
		}
		changed[c] = k.Name
	}
	for _, c := range list {
		for _, n := range c.shipped {
			if _, moved := changed[c]; !moved || needed[n] {
				owner[n] = c
			}
		}
	}
	for _, k := range s.Keys {
		c := commandNamed(list, k.Name)
		for _, to := range k.To {
			if has := owner[to]; has != nil && has != c {
				s.Refuse(k.Name, fmt.Sprintf("%q is the key of: %s", to, told(list, has).Words), fmt.Sprintf("choose another, or give %s another key too", has.free(needed)[0]))
				return true
			}
			owner[to] = c
		}
	}
	return false
}

// told is the command whose line on the help page tells of a command: its own,
// or else the one before.
func told(list []*command, c *command) *command {
	for i := slices.Index(list, c); i > 0 && c.Words == ""; i-- {
		c = list[i-1]
	}
	return c
}

// retell puts the keys of the commands that have changed on the help page, where a
// line tells of them.
func (c *command) retell(list []*command, changed map[*command][]string, needed map[string]bool) {
	var shown []string
	for _, token := range strings.Fields(c.Shown) {
		of := commandNamed(list, token)
		switch to := changed[of]; {
		case to == nil || needed[token] || told(list, of) != c:
			shown = append(shown, token)
		case token == of.free(needed)[0]:
			shown = append(shown, to...)
		}
	}
	if now := strings.Join(shown, " "); now != strings.Join(strings.Fields(c.Shown), " ") {
		c.Shown = now
	}
	for of, to := range changed { // "alt+s back"
		if told(list, of) == c {
			c.Words = strings.Replace(c.Words, " "+of.shipped[0]+" back", " "+strings.Join(to, " ")+" back", 1)
		}
	}
}
