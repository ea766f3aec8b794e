// Package watch raises what an experienced founder would ask about when a part
// changes from one metal to another: rules, kept in a data file, that look at
// the two families, at figures that cross a limit, and at what the part has to
// do. Cautions are questions to settle, never verdicts.
package watch

import (
	"alongside/props"
	"alongside/props/foundry"
	"alongside/props/part"
)

// Severity says how hard a caution presses.
type Severity uint8

// Ask is for what can ruin the part or harm someone: stop and ask before the
// quotation goes out. Check is for what wants a look at the drawing.
const (
	Check Severity = iota
	Ask
)

func (s Severity) String() string {
	if s == Ask {
		return "stop and ask"
	}
	return "check"
}

// Gravity orders the cautions of one severity, the gravest first.
type Gravity uint8

// Harm is for what can hurt someone or is against a law or code, Failure for
// what breaks, leaks or dissolves in service, Duty for what does its work less
// well, Making for shape, size and cost, and Reading for what concerns the
// figures only. A rule that does not say is of Duty.
const (
	Harm Gravity = 1 + iota
	Failure
	Duty
	Making
	Reading
)

// Rule is one watch-out as the data file has it.
type Rule struct {
	ID, Title, Text string
	Severity        Severity
	Gravity         Gravity
	foundry.Cite
	Facts []foundry.Statement // published figures that the rule itself cites

	from, to foundry.Scope
	// fresh rules are about the change: they keep silent when the baseline
	// fits the same description as the pin.
	fresh bool
	mate  []string   // families of the mate
	with  part.Facts // all of them
	media part.Media // one of them
	// unsaid rules ask for the medium: they keep silent once it is said.
	unsaid bool
	limit  []limit // all of them
	show   []props.PropertyID
	// unless are rules that say more than this one: it keeps silent when one
	// of them is raised.
	unless []string
}

// Rules is the rule book. It is not changed after loading and may be shared.
type Rules struct {
	List  []Rule
	book  *foundry.Book
	cites []foundry.Cite
}

// IDs lists the ids of all rules in file order.
func (r *Rules) IDs() []string {
	ids := make([]string, len(r.List))
	for i := range r.List {
		ids[i] = r.List[i].ID
	}
	return ids
}

// Cites lists where every rule and the figures that it cites come from.
func (r *Rules) Cites() []foundry.Cite { return r.cites }
