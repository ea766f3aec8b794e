package ui

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// Every key that a terminal can send, with and without alt, with the cursor at
// every place of a text: alt+d at the end once read past it.
func TestFieldTakesEveryKey(t *testing.T) {
	if testing.Short() {
		t.Skip("every key in every place")
	}
	theme := NewTheme(3, false)
	for _, text := range []string{"", "a", "ab cd", "a  ", "12 µin/in·°F"} {
		for kind := tea.KeyType(-70); kind <= 127; kind++ {
			for _, alt := range []bool{false, true} {
				for _, r := range []string{"", "d", " ", "f", "b", "é", "字"} {
					for back := range len([]rune(text)) + 1 {
						f := EditField(text)
						for range back {
							f.Update(tea.KeyMsg{Type: tea.KeyLeft})
						}
						f.Update(tea.KeyMsg{Type: kind, Alt: alt, Runes: []rune(r)})
						f.View(theme, 10)
					}
				}
			}
		}
	}
}

func TestDeleteWordForward(t *testing.T) {
	word := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("d"), Alt: true}
	for back, want := range []string{"ab cd", "ab c", "ab ", "ab", "a", " cd"} {
		f := EditField("ab cd")
		for range back {
			f.Update(tea.KeyMsg{Type: tea.KeyLeft})
		}
		f.Update(word)
		if f.Text() != want {
			t.Errorf("alt+d %d before the end: %q, want %q", back, f.Text(), want)
		}
	}
}

// A remembered text is replaced by the next letter and can be edited.
func TestKeptText(t *testing.T) {
	letter := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x")}
	for i, test := range []struct {
		keys []tea.KeyMsg
		want string
	}{
		{[]tea.KeyMsg{letter}, "x"},
		{[]tea.KeyMsg{{Type: tea.KeyBackspace}, letter}, "abx"},
		{[]tea.KeyMsg{{Type: tea.KeyRight}, letter}, "abcx"},
	} {
		f := NewField("abc")
		for _, k := range test.keys {
			f.Update(k)
		}
		if f.Text() != test.want {
			t.Error(fmt.Sprint(i), f.Text(), test.want)
		}
	}
}
