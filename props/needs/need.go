// Package needs judges materials by a customer's limits, and
// finds the materials that meet them or nearly do.
package needs

import (
	"cmp"
	"fmt"
	"math"
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

// ops has the sign of each bound and its relatives.
var ops = [...]struct {
	sign                    string
	turned, closed, inverse Op
}{
	AtLeast:  {"≥", AtMost, AtLeast, LessThan},
	AtMost:   {"≤", AtLeast, AtMost, MoreThan},
	MoreThan: {">", LessThan, AtLeast, AtMost},
	LessThan: {"<", MoreThan, AtMost, AtLeast},
	Between:  {"within", Between, Between, Between},
}

// Turned is the opposite side of a bound.
func (op Op) Turned() Op { return ops[op].turned }

// Closed is the bound that includes its end.
func (op Op) Closed() Op { return ops[op].closed }

// Inverse is the bound that holds where op does not.
func (op Op) Inverse() Op { return ops[op].inverse }

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
	Not       bool     // any but these processes, families or tempers
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
	if n.Kind != OfProperty {
		sign := " = "
		if n.Not {
			sign = " ≠ "
		}
		return n.Kind.String() + sign + strings.Join(n.named(), " or ")
	}
	name := props.InSentence(n.Property.Info().Name)
	if n.Limit.Unit.Reciprocal() {
		name = "electrical resistivity"
	}
	cond := n.Cond
	cond.Load, cond.Ball = 0, 0
	under := ""
	if c := cond.String(); c != "" && n.Than == nil {
		under = " (" + c + ")"
	}
	rating := n.Property.Info().Dimension == units.Rating
	switch {
	case n.Op == Between:
		return name + " " + n.Limit.String() + under
	case rating && n.Op == MoreThan:
		return name + " better than " + n.Limit.String()
	case rating:
		return name + " " + n.Limit.String() + " or better"
	}
	return fmt.Sprintf("%s %s %s%s", name, ops[n.Op].sign, n.Limit.String(), under)
}

// Add adds a need to a list that does not have it. One that is there but switched
// off is switched on.
func Add(list []Need, n Need) []Need {
	text := n.String()
	for i := range list {
		if list[i].String() == text {
			list[i].Off = list[i].Off && n.Off
			return list
		}
	}
	return append(list, n)
}

// named lists the processes, families or tempers.
func (n *Need) named() []string {
	switch n.Kind {
	case OfFamily:
		return n.Families
	case OfTemper:
		words := slices.Clone(n.Tempers)
		for i := range words {
			words[i] = cmp.Or(words[i], "as cast")
		}
		return words
	}
	var words []string
	for _, p := range n.Processes {
		words = append(words, p.String())
	}
	return words
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
		op = op.Turned()
	}
	switch op {
	case AtLeast, MoreThan:
		return a, inf, op == MoreThan, false
	case AtMost, LessThan:
		return -inf, z, false, op == LessThan
	}
	return a, z, false, false
}

// Admits answers the needs that are not about a figure.
func (n *Need) Admits(m *props.Material) bool {
	in := true
	switch n.Kind {
	case OfProcess:
		in = slices.Contains(n.Processes, m.Process)
	case OfFamily:
		in = slices.ContainsFunc(n.Families, m.Alloy.Is)
	case OfTemper:
		in = slices.Contains(n.Tempers, strings.ToUpper(m.Temper))
	default:
		return true
	}
	return in != n.Not
}

var inf = math.Inf(1)
