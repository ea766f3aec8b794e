package spoken

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/units"
)

// Piece is what a piece of a text was read as: a need, a field of the part, today's
// metal, or nothing, with the reason.
type Piece struct {
	Text  string      // as typed, numbers in digits
	Need  *needs.Need // nil where it is no need
	Said  *part.Said
	Today *props.Material // what the part is made of today
	// ReadAs is the whole of what was read, where something was left out or taken
	// from a figure on file: "elongation ≥ 3 %" for "elongation 3"; else "".
	ReadAs string
	Err    *ParseError // why nothing was read; else nil
}

// Said is a text read: its pieces in the order of the text.
type Said struct{ Pieces []Piece }

// ParseError says which word was not understood and what it might have been, or
// between which readings to choose.
type ParseError struct {
	Need    string
	Word    string // the word not understood; "" when something is missing
	Hint    string
	Choices []string // texts that each are read in one way; nil where there is no choice
}

func (e *ParseError) Error() string { return fmt.Sprintf("need %q: %s", e.Need, e.Reason()) }

// Reason is the message without the text.
func (e *ParseError) Reason() string {
	var s []string
	if e.Word != "" {
		s = append(s, fmt.Sprintf("%q is not understood", e.Word))
	}
	if e.Hint != "" {
		s = append(s, e.Hint)
	}
	if len(e.Choices) > 0 {
		s = append(s, "say which: "+strings.Join(e.Choices, ", or "))
	}
	return strings.Join(s, ": ")
}

// Needs lists the needs, each once.
func (s Said) Needs() []needs.Need {
	var out []needs.Need
	for _, p := range s.Pieces {
		if p.Need != nil {
			out = needs.Add(out, *p.Need)
		}
	}
	return out
}

// Tell puts what was said of the part into p. What the part has is added to what
// it had; any other field is replaced. The catalog is asked for materials.
func (s Said) Tell(p *part.Part, c *catalog.Catalog) error {
	var errs []error
	for _, piece := range s.Pieces {
		if piece.Said == nil {
			continue
		}
		text := piece.Said.Text
		if piece.Said.Field == part.FieldWith {
			text = strings.Join(append(p.With.IDs(), text), ",")
		}
		errs = append(errs, p.Set(c, piece.Said.Field, text))
	}
	return errors.Join(errs...)
}

// Refused lists the pieces of which nothing was read.
func (s Said) Refused() []Piece {
	return slices.DeleteFunc(slices.Clone(s.Pieces), func(p Piece) bool { return p.Err == nil })
}

// Echo tells, a line each, what was read of the pieces that left something out and
// of those on the part.
func (s Said) Echo() []string {
	var out []string
	for _, p := range s.Pieces {
		switch {
		case p.ReadAs != "":
			out = append(out, fmt.Sprintf("%q read as: %s", p.Text, p.ReadAs))
		case p.Said != nil:
			out = append(out, fmt.Sprintf("%q is of the part: %s %s", p.Text, p.Said.Field, p.Said.Text))
		}
	}
	return out
}

// Limits are the needs of a text that is to hold nothing else. The error joins every
// *ParseError; what was said of the part is one too.
func (s Said) Limits() ([]needs.Need, error) {
	var errs []error
	for _, p := range s.Pieces {
		if p.Said != nil || p.Today != nil {
			p.Err = &ParseError{Need: p.Text, Hint: "is of the part, not a limit on the metal"}
		}
		if p.Err != nil {
			errs = append(errs, p.Err)
		}
	}
	return s.Needs(), errors.Join(errs...)
}

// One reads a single need as Read does. The error is a *ParseError.
func One(s string, c *catalog.Catalog, system units.System) (needs.Need, error) {
	if strings.TrimSpace(s) == "" {
		return needs.Need{}, &ParseError{Need: s, Hint: `write for example "yield >= 20 ksi"`}
	}
	list, err := Read(s, c, system, nil).Limits()
	var pe *ParseError
	if errors.As(err, &pe) {
		return needs.Need{Text: s}, pe
	}
	if len(list) != 1 {
		return needs.Need{Text: s}, &ParseError{Need: s, Hint: "one need is wanted here"}
	}
	return list[0], nil
}
