package part

import (
	"fmt"
	"strings"

	"alongside/props/spelling"
)

// Facts is a set of facts of the part.
type Facts uint32

// The facts.
const (
	PressFit      Facts = 1 << iota // pressed or shrunk into or onto a mate
	Threads                         // tapped holes or cut threads
	Sliding                         // rubs on another part
	PressureTight                   // holds a gas or liquid under pressure
	PotableWater                    // touches drinking water
	Outdoors                        // weather, damp or salt
	Weld                            // welded, or weld repair is expected
	Braze                           // brazed or soldered
	Anodize                         //
	Electroplate                    // electroplated
	PowderCoat                      // cured in an oven
	HeatTreat                       // to be heat treated after casting
	Machined                        // heavy machining
	RepeatedLoad                    // load repeated many times
	Impact                          // shock loads
	Vibration                       // damping matters
	SustainedLoad                   // constant load, such as a bolt's
	Compression                     // loaded mostly in compression
	TightSize                       // close tolerances that must stay
	Crimp                           // crimped, riveted, staked or straightened
	Electrical                      // carries current, or shields
	HeatPath                        // carries heat away
	ReusePattern                    // the present pattern shall serve
	Fluid                           // holds, carries or stands in a liquid other than drinking water
	SeaWater                        // in sea water or splashed by it
	Critical                        // its failure can hurt someone
	Hazardous                       // mine, gas or dust that can explode
)

var factNames = [...]struct{ id, words string }{
	{"press-fit", "pressed or shrunk to a mate"},
	{"threads", "tapped holes or threads"},
	{"sliding", "sliding contact"},
	{"pressure-tight", "holds pressure"},
	{"potable-water", "touches drinking water"},
	{"outdoors", "outdoors, damp or salt"},
	{"weld", "welding or weld repair"},
	{"braze", "brazing or soldering"},
	{"anodize", "anodizing"},
	{"plate", "electroplating"},
	{"powder-coat", "powder coating"},
	{"heat-treat", "heat treatment after casting"},
	{"machined", "heavy machining"},
	{"fatigue", "repeated load"},
	{"impact", "shock load"},
	{"vibration", "damping matters"},
	{"sustained-load", "constant load, such as a bolt's"},
	{"compression", "loaded in compression"},
	{"tight-size", "close tolerances that must stay"},
	{"crimp", "crimped, riveted, staked or straightened"},
	{"electrical", "carries current or shields"},
	{"heat-path", "carries heat away"},
	{"reuse-pattern", "the present pattern shall serve"},
	{"fluid", "a fluid in it or around it"},
	{"sea-water", "in sea water or splashed by it"},
	{"critical", "its failure can hurt someone"},
	{"hazardous-area", "mine, gas or dust that can explode"},
}

// AllFacts lists every fact singly.
func AllFacts() []Facts {
	all := make([]Facts, len(factNames))
	for i := range all {
		all[i] = 1 << i
	}
	return all
}

// ID is the word for a single fact on the command line and in rules.
func (f Facts) ID() string {
	for i, n := range factNames {
		if f == 1<<i {
			return n.id
		}
	}
	return ""
}

// String lists the facts in words.
func (f Facts) String() string {
	var words []string
	for i, n := range factNames {
		if f&(1<<i) != 0 {
			words = append(words, n.words)
		}
	}
	return strings.Join(words, ", ")
}

// UnknownFact is the error for a word that names no fact.
type UnknownFact struct{ Typed, Nearest string }

func (e *UnknownFact) Error() string {
	if e.Nearest != "" {
		return fmt.Sprintf("no condition %q; did you mean %s?", e.Typed, e.Nearest)
	}
	return fmt.Sprintf("no condition %q; use one of: %s", e.Typed, strings.Join(factIDs(), ", "))
}

// IDs lists the words of the facts in a set.
func (f Facts) IDs() []string {
	var ids []string
	for i, n := range factNames {
		if f&(1<<i) != 0 {
			ids = append(ids, n.id)
		}
	}
	return ids
}

// MarshalText writes the set as Part.Set takes it.
func (f Facts) MarshalText() ([]byte, error) { return []byte(strings.Join(f.IDs(), ", ")), nil }

// UnmarshalText reads what MarshalText writes.
func (f *Facts) UnmarshalText(text []byte) error {
	read, err := ParseFacts(string(text))
	if err == nil {
		*f = read
	}
	return err
}

// ParseFacts reads words for facts with commas between them; an empty text is
// none. The error is an *UnknownFact.
func ParseFacts(text string) (Facts, error) {
	var all Facts
	for _, word := range strings.Split(text, ",") {
		if strings.TrimSpace(word) == "" {
			continue
		}
		f, err := ParseFact(word)
		if err != nil {
			return 0, err
		}
		all |= f
	}
	return all, nil
}

// ParseFact reads the word for a single fact. The error is an *UnknownFact.
func ParseFact(word string) (Facts, error) {
	word = strings.ToLower(strings.TrimSpace(word))
	for i, n := range factNames {
		if n.id == word {
			return 1 << i, nil
		}
	}
	return 0, &UnknownFact{word, spelling.Nearest(word, factIDs())}
}

func factIDs() []string {
	ids := make([]string, len(factNames))
	for i, n := range factNames {
		ids[i] = n.id
	}
	return ids
}
