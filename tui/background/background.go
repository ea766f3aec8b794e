// Package background finds out whether the terminal is light or dark without
// ever making the user wait for the answer.
//
// Bubble Tea v1 asks the terminal for its background color while Go
// initialises its package, and waits up to five seconds where nothing answers.
// Importing this package stops that: its own init settles the question first.
// Go initialises packages in order of import path as soon as their imports are
// ready, so the cure holds only while two things stay true, and tests guard
// both:
//
//   - this package's import path sorts before github.com/charmbracelet/bubbletea;
//   - it imports nothing that Bubble Tea does not import as well.
//
// The screen starts dark. Decide then looks at the user's setting and at
// COLORFGBG; where neither speaks and the terminal can be asked, an Input
// placed between the terminal and Bubble Tea asks once, after the first frame
// is under way, and the answer arrives as an ordinary message.
package background

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

func init() {
	lipgloss.SetHasDarkBackground(true)
}

// Variable names the environment variable with the user's own choice.
const Variable = "ALONGSIDE_BACKGROUND"

// Shade is the lightness of the terminal's background.
type Shade uint8

const (
	// Unknown means that nothing has said yet; draw as for Dark.
	Unknown Shade = iota
	// Dark wants light text.
	Dark
	// Light wants dark text.
	Light
)

func (s Shade) String() string {
	switch s {
	case Dark:
		return "dark"
	case Light:
		return "light"
	}
	return "unknown"
}

// Error says that a background setting is not one of the words accepted.
type Error struct {
	Where string // what was set: "--background" or "ALONGSIDE_BACKGROUND"
	Input string // the word found there
}

func (e *Error) Error() string {
	return fmt.Sprintf("%s is %q: expected light, dark or auto", e.Where, e.Input)
}

// Decide returns the shade that the user or the terminal has already stated.
// In order: flag (empty when not given), the variable ALONGSIDE_BACKGROUND,
// then COLORFGBG, which some terminals set. The words are light, dark and auto
// in any case; auto leaves the decision to the next in order. Unknown means
// that only asking the terminal can tell. An unknown word gives an *Error, and
// the shade that the remaining sources state.
func Decide(flag string, getenv func(string) string) (Shade, error) {
	var wrong error
	for _, setting := range []struct{ where, word string }{
		{"--background", flag},
		{Variable, getenv(Variable)},
	} {
		shade, ok := parseSetting(setting.word)
		if !ok && wrong == nil {
			wrong = &Error{Where: setting.where, Input: setting.word}
		}
		if shade != Unknown {
			return shade, wrong
		}
	}
	return fromColorFGBG(getenv("COLORFGBG")), wrong
}

func parseSetting(word string) (Shade, bool) {
	switch strings.ToLower(strings.TrimSpace(word)) {
	case "", "auto":
		return Unknown, true
	case "dark":
		return Dark, true
	case "light":
		return Light, true
	}
	return Unknown, false
}

// fromColorFGBG reads "15;0" or "0;default;15": the last field is the
// background's place among the 16 terminal colors, of which 7 and 9–15 are
// the light ones (common practice, no source).
func fromColorFGBG(value string) Shade {
	last := value[strings.LastIndexByte(value, ';')+1:]
	index, err := strconv.Atoi(last)
	switch {
	case err != nil || index < 0 || index > 15 || last == value:
		return Unknown
	case index == 7 || index >= 9:
		return Light
	}
	return Dark
}

// askable reports whether a terminal of this kind may be sent a color query.
// A multiplexer may show one screen on several terminals, so there is no one
// answer; the kernel's console and a dumb terminal could print the query.
func askable(getenv func(string) string) bool {
	term := getenv("TERM")
	for _, prefix := range []string{"dumb", "screen", "tmux", "linux"} {
		if strings.HasPrefix(term, prefix) {
			return false
		}
	}
	return term != "" && getenv("TMUX") == "" && getenv("STY") == ""
}
