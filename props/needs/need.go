// Package needs turns a customer's limits into verdicts on materials, and
// finds the materials that meet them or nearly do.
package needs

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/units"
)

// Op is how a need bounds a figure.
type Op uint8

// The bounds. Between is closed at both ends.
const (
	AtLeast Op = iota
	AtMost
	MoreThan
	LessThan
	Between
)

var opSigns = [...]string{"≥", "≤", ">", "<", "within"}

// Kind is what a need is about.
type Kind uint8

// A need bounds a property, or names the processes, families or tempers that
// will do.
const (
	OfProperty Kind = iota
	OfProcess
	OfFamily
	OfTemper
)

// String is the word before the equals sign of a need, "" for a property.
func (k Kind) String() string { return [...]string{"", "process", "family", "temper"}[k] }

// Need is one limit the customer states.
type Need struct {
	Kind     Kind
	Property props.PropertyID
	Op       Op
	// Limit is what was typed: Lo for lower bounds, Hi for upper bounds, both
	// for Between (equal otherwise).
	Limit     units.Quantity
	Cond      props.Conditions // of the test, as far as stated; for Brinell the unit says the load too
	Than      *Than            // judged by comparison with a metal; nil for none
	Processes []props.Process
	Families  []string // family ids
	Tempers   []string // upper case; "" is as cast
	Text      string   // as typed
	Off       bool     // switched off by the user
}

// Than is the metal whose own figure a limit is, and how the two are compared.
type Than struct {
	Material *props.Material
	Question compare.Question
}

// String writes the need in one normal form that Parse reads back.
func (n *Need) String() string {
	switch n.Kind {
	case OfProcess:
		words := make([]string, len(n.Processes))
		for i, p := range n.Processes {
			words[i] = p.String()
		}
		return "process = " + strings.Join(words, " or ")
	case OfFamily:
		return "family = " + strings.Join(n.Families, " or ")
	case OfTemper:
		words := slices.Clone(n.Tempers)
		if i := slices.Index(words, ""); i >= 0 {
			words[i] = "as cast"
		}
		return "temper = " + strings.Join(words, " or ")
	}
	name := props.InSentence(n.Property.Info().Name)
	if n.Limit.Unit.Reciprocal() {
		name = "electrical resistivity"
	}
	if n.Op == Between {
		return name + " " + n.Limit.String()
	}
	if n.Property.Info().Dimension == units.Rating {
		if n.Op == MoreThan {
			return name + " better than " + n.Limit.String()
		}
		return name + " " + n.Limit.String() + " or better"
	}
	return fmt.Sprintf("%s %s %s", name, opSigns[n.Op], n.Limit.String())
}

// bounds are the limits in SI; infinite where there is none. A conductivity
// bounded by a resistivity changes sides, and a rating of "at least 2" means 2
// or better, that is at most 2.
func (n *Need) bounds() (lo, hi float64, openLo, openHi bool) {
	u := n.Limit.Unit
	a, z := u.ToSI(n.Limit.Lo), u.ToSI(n.Limit.Hi)
	op := n.Op
	if n.Property.Info().Dimension == units.Rating || u.Reciprocal() {
		a, z = min(a, z), max(a, z)
		op = turned(op)
	}
	switch op {
	case AtLeast, MoreThan:
		return a, inf, op == MoreThan, false
	case AtMost, LessThan:
		return -inf, z, false, op == LessThan
	}
	return a, z, false, false
}

// turned is the opposite side of a bound.
func turned(op Op) Op {
	switch op {
	case AtLeast:
		return AtMost
	case AtMost:
		return AtLeast
	case MoreThan:
		return LessThan
	case LessThan:
		return MoreThan
	}
	return op
}

// admits answers the needs that are not about a figure.
func (n *Need) admits(m *props.Material) bool {
	switch n.Kind {
	case OfProcess:
		return slices.Contains(n.Processes, m.Process)
	case OfFamily:
		return slices.Contains(n.Families, m.Alloy.Family.ID)
	case OfTemper:
		return slices.Contains(n.Tempers, strings.ToUpper(m.Temper))
	}
	return true
}
