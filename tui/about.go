package tui

import (
	"slices"
	"strings"
)

// about says in one sentence what a screen is for, the bench where none is open;
// "" where its title says all.
func about(s screen) string {
	switch s := s.(type) {
	case nil:
		return "The bench sets metals side by side, each against the one the part is made of."
	case *finder:
		return "Finds a metal by any of its designations and pins it on the bench."
	case *needsPanel:
		return "Takes what the customer asks for, as said, and judges every pin by it."
	case *candidates:
		return "Lists the metals that meet the needs, and those that one limit stops."
	case *swapPanel:
		return "Works out what another metal does to the customer's part: mass, wall, load, growth, heat."
	case *processPanel:
		return "Says what the process of each pin holds: tolerances, walls, draft, finish, heat treatment."
	case *watchPanel:
		return "Lists what to ask or settle before the metal is changed, with what raised it."
	case *partForm:
		return "Takes what is known of the part; the swap and the watch-outs work with it."
	case *factsPanel:
		return "Takes what the part has and goes through; the watch-outs go by it."
	case *duties:
		return "Adds a row that ranks the pins for one duty, such as the lightest plate of equal stiffness."
	case *sensePanel:
		return "Says whether more or less of this property is better for this customer, or how near a target."
	case *variants:
		return "Puts another temper or process of the same alloy in the place of the pin."
	case *copyPanel:
		return "Shows what will leave the program, and copies it for a mail or a spreadsheet."
	case *briefPanel:
		return "Puts the answer to the call on one page for the customer, to read out and to copy."
	case *calls:
		return "Lists the calls kept on this machine, to open, copy or delete."
	case *prompt:
		return s.about
	case *pages:
		i := slices.IndexFunc(pagesAbout, func(x [2]string) bool { return strings.HasPrefix(s.title, x[0]) })
		if i >= 0 {
			return pagesAbout[i][1]
		}
	}
	return ""
}

// pagesAbout is about for texts by how their title begins.
var pagesAbout = [][2]string{
	{"Source: ", "Says where the figure comes from, how it is known, and what else is on file."},
	{"Signs ", "Explains every sign that the bench can show."},
	{"Formula: ", "Shows the formula of this line with its figures and their sources."},
	{"Read aloud: ", "Puts the change into words for the telephone."},
}
