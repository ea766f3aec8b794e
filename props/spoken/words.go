package spoken

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/props/part"
)

// role is what a word or a phrase does in a sentence.
type role uint8

const (
	unknown   role = iota
	filler         // says nothing of the metal or the part: the, we need
	link           // of, at, in, from: tells how the next thing is meant
	breaks         // ends what was begun: and, with
	bars           // makes a limit conditional, which no need can be: unless
	bound          // at least
	about          // about, around
	negation       // not
	either         // or
	subject        // yield, wall: what a quantity is of
	named          // T6, zinc, die
	head           // process, family, temper
	said           // plate, threads: of the part, by itself
	rated          // weldable
	against        // lighter than
	current        // today: tells what the part is made of
	mate           // runs on
	refused        // what no catalog can answer: cheaper
	quantity       // 20 ksi
	condition      // 0.2 % offset
)

// meaning is what the table of words holds for a phrase.
type meaning struct {
	role     role
	op       needs.Op           // bound, against
	props    []props.PropertyID // subject, rated, against: several where the phrase leaves open which
	fields   []part.Field       // subject
	cond     props.Conditions   // subject: what its name states, as Rp0.2 does
	kind     needs.Kind         // named, head
	process  props.Process
	families []string
	temper   string
	said     []part.Said
	reason   string
	alone    bool // against: lighter, than what the part is made of today
}

// bounds are the phrases for each bound.
var bounds = [...]struct {
	op      needs.Op
	phrases string
}{
	{needs.AtLeast, ">=|=>|≥|at least|at least as well as|as well as|minimum|min|min.|minimum of|or more|or better|or higher|or above|or greater|greater than or equal to|equal to or greater than|and up|no worse than|as much|at least as much"},
	{needs.AtMost, "<=|=<|≤|at most|maximum|max|max.|maximum of|up to|or less|or lower|or below|or under|less than or equal to|equal to or less than"},
	{needs.MoreThan, ">|more than|greater than|higher than|over|above|better than|exceed|exceeds|exceeding|beyond|more|greater|higher|better"},
	{needs.LessThan, "<|less than|lower than|under|below|short of|less|lower|smaller"},
	{needs.Between, "=|between|within|from"},
}

// subjects are the words for a property that leave open which, and those that the
// table of properties does not have.
var subjects = []struct {
	phrases string
	props   []props.PropertyID
}{
	{"strength", bareStress},
	{"hardness", []props.PropertyID{props.HardnessBrinell, props.HardnessRockwellB, props.HardnessRockwellE}},
	{"conductivity|conducts|conduct", []props.PropertyID{props.ElectricalConductivity, props.ThermalConductivity}},
	{"electrically conductive|electric conductivity", []props.PropertyID{props.ElectricalConductivity}},
	{"conduct heat|conducts heat|heat transfer", []props.PropertyID{props.ThermalConductivity}},
	{"charpy|impact|impact strength|impact toughness", bareImpact},
	{"charpy v-notch|cvn", []props.PropertyID{props.ImpactCharpyV}},
	{"fatigue limit|endurance limit|endurance strength", []props.PropertyID{props.FatigueStrength}},
	{"ultimate strength|tensile stress", []props.PropertyID{props.TensileStrength}},
	{"yield stress|yield point|proof strength|proof stress|proof|rp", []props.PropertyID{props.YieldStrength}},
	{"ductility|elongation at break|stretch", []props.PropertyID{props.Elongation}},
	{"coefficient of expansion|coefficient of thermal expansion|thermal expansion coefficient|coe", []props.PropertyID{props.ThermalExpansion}},
	{"bhn|hbw|hbs", []props.PropertyID{props.HardnessBrinell}},
	{"modulus of elasticity|e modulus|youngs modulus", []props.PropertyID{props.ElasticModulus}},
	{"melts|melting range|melting temperature", []props.PropertyID{props.Liquidus, props.Solidus}},
}

// bareStress, barePercent and bareImpact are what a figure in ksi, percent or
// ft·lbf may be of where nothing is said.
var (
	bareStress  = []props.PropertyID{props.TensileStrength, props.YieldStrength}
	barePercent = []props.PropertyID{props.Elongation, props.ReductionOfArea}
	bareImpact  = []props.PropertyID{props.ImpactCharpyV, props.ImpactCharpyKeyhole}
)

// processWords are the phrases for a process besides its id and name.
var processWords = [...]string{
	props.Sand:          "sand cast|sand casting|sand castings|sand mold|sand molded|green sand|dry sand",
	props.PermanentMold: "perm mold|permanent mold casting|permanent mold castings|permanent molded|gravity die|gravity die cast|gravity die casting",
	props.Die:           "die cast|die casting|die castings|die casted|diecast|diecasting|hpdc|pressure die|pressure die casting|high pressure die casting",
	props.Investment:    "investment cast|investment casting|investment castings|lost wax|lost wax casting",
	props.Continuous:    "continuous cast|continuously cast|continuous casting",
	props.Centrifugal:   "centrifugally cast|centrifugal casting|centrifugal cast|spun cast",
	props.Wrought:       "from billet|from bar|bar stock",
}

// ratedWords are adjectives that ask for a rating in the better half of its scale.
var ratedWords = []struct {
	phrases string
	p       props.PropertyID
	fact    part.Facts // of the part, which the adjective says as well; 0 for none
}{
	{"weldable|good weldability|weldability good|good welding|easy to weld|welds well", props.RatingWeldability, part.Weld},
	{"pressure tight|leak tight|leakproof|gas tight|water tight|watertight|good pressure tightness", props.RatingPressureTightness, part.PressureTight},
	{"machinable|good machinability|machinability good|easy to machine|machines well|machine well|free machining", props.RatingMachinability, 0},
	{"corrosion resistant|good corrosion resistance|corrosion resistance good|good corrosion|rust proof|rustproof|not rust|won't rust|doesn't rust|not corrode", props.RatingCorrosion, 0},
	{"anodizable|good anodizing|good for anodizing|anodizes well", props.RatingAnodizing, 0},
	{"polishable|polishes well|polish well|good polish", props.RatingPolishing, 0},
	{"platable|plates well", props.RatingElectroplating, 0},
	{"castable|easy to cast|good fluidity", props.RatingFluidity, 0},
}

// usableRating is the rating that the adjectives ask for: the middle of a scale on
// which 1 is best and 5 worst.
const usableRating = 3

// comparatives set a metal against another one: "lighter than", "as light as".
var comparatives = []struct {
	more, plain string
	p           props.PropertyID
	op          needs.Op
}{
	{"stronger", "strong", props.TensileStrength, needs.MoreThan},
	{"weaker", "weak", props.TensileStrength, needs.LessThan},
	{"lighter", "light", props.Density, needs.LessThan},
	{"heavier", "heavy", props.Density, needs.MoreThan},
	{"stiffer", "stiff", props.ElasticModulus, needs.MoreThan},
	{"harder", "hard", props.HardnessBrinell, needs.MoreThan},
	{"softer", "soft", props.HardnessBrinell, needs.LessThan},
	{"more ductile", "ductile", props.Elongation, needs.MoreThan},
}

const (
	fillerWords = "a|an|the|is|are|be|been|was|it|its|it's|we|i|you|they|he|she|this|that|must|should|shall|has|have|having|had|need|needs|needed|want|wants|wanted|would|could|can|will|may|do|does|make|made|get|give|me|us|something|anything|any|some|one|would like|please|there|here|still|also|too|just|only|so|metal|metals|alloy|alloys|material|materials|casting|castings|cast|part|parts|piece|component|customer|customer's|says|said|asks|ask|asking|what|for|to|as|than|required|requirement|requirements|requires|require|spec|specified|specification|value|values|rating|rated|condition|temper condition|heat treat to|use|using|go|look|looking|keep it|which|their|our|my|his|her|load|loaded|bends|thanks|thank you|take|takes|carry|carries|survive|survives|gets|got|either|dia|diameter|it has|who|at all|these|those|ones|kind|type|finished|sits|sit|stands|inside|each|apiece|-|–|—|:|(|)"
	partNouns   = "bracket|motor|housing|cover|body|lever|arm|bushing|flange|hub|pulley|pump|valve|frame|gear|gearbox|manifold|impeller|wheel|yoke|knuckle|caliper|fitting|elbow|lid"
	breakWords  = "and|but|with|plus|while|&|then"
	barWords    = "unless|except where|if|when|provided|only if|until"
	negWords    = "not|no|never|nothing|can't|cannot|can not|won't|don't|doesn't|isn't|mustn't|avoid|excluding|exclude|except|other than|anything but|everything but|all but|rather not|≠|!=|<>|w/o|without"
	mateWords   = "on|onto|runs on|rides on|mates with|mating with|mate|mating part|bolted to|joined to|against|runs against|mates|into"
	likeWords   = "that of|those of|same as|the same as|equal to|as good as|like"
)

// table is the words that do not depend on the catalog.
var table = sync.OnceValue(func() map[string]meaning {
	t := map[string]meaning{}
	put := func(phrases string, m meaning) {
		for phrase := range strings.SplitSeq(phrases, "|") {
			if phrase != "" {
				t[phrase] = m
			}
		}
	}
	put(fillerWords, meaning{role: filler})
	put("of|at|in|made of|tested at|measured at", meaning{role: link})
	put(likeWords, meaning{role: against})
	put(currentWords, meaning{role: current, op: needs.AtLeast})
	put(replacedWords, meaning{role: current})
	put("lead free|lead-free|no lead|leadfree", meaning{role: refused, reason: "a composition cannot be searched for; show prints it"})
	put("per astm|to astm|astm|per ams|ams|per spec|per mil", meaning{role: refused, reason: "a specification is found by its number in the finder; it is no limit"})
	put(breakWords, meaning{role: breaks})
	put(barWords, meaning{role: bars})
	put(negWords, meaning{role: negation})
	put(mateWords, meaning{role: mate})
	put("or|/", meaning{role: either})
	put(partNouns, meaning{role: filler})
	put("about|around|approximately|approx|approx.|circa|ca.|~|≈|roughly|some", meaning{role: about})
	put("cheap|cheaper|cheaper than|as cheap as|less expensive than|low cost|inexpensive", meaning{role: refused, reason: "no price of a metal is on file; type prices in the form of the part"})
	for _, b := range bounds {
		put(b.phrases, meaning{role: bound, op: b.op})
	}
	putProperties(t, put)
	for phrases, f := range part.SizeWords {
		for phrase := range strings.SplitSeq(phrases, "|") {
			m := t[phrase]
			t[phrase] = meaning{role: subject, props: m.props, fields: []part.Field{f}}
		}
	}
	for phrases, s := range part.SaidWords {
		m := meaning{role: said, said: []part.Said{s}}
		put(phrases, m)
		if word := strings.ReplaceAll(s.Text, "-", " "); s.Field == part.FieldWith && t[word].role == unknown {
			t[word] = m
		}
	}
	for _, r := range ratedWords {
		m := meaning{role: rated, props: []props.PropertyID{r.p}}
		if r.fact != 0 {
			m.said = []part.Said{{Field: part.FieldWith, Text: r.fact.ID()}}
		}
		put(r.phrases, m)
	}
	for _, c := range comparatives {
		m := meaning{role: against, props: []props.PropertyID{c.p}, op: c.op}
		put(c.more+" than", m)
		m.alone = true
		put(c.more, m)
		m.alone = false
		m.op = c.op.Closed()
		put("as "+c.plain+"|at least as "+c.plain+"|just as "+c.plain+"|no less "+c.plain, meaning{role: against, props: m.props, op: m.op, alone: true})
		put("as "+c.plain+" as|at least as "+c.plain+" as|"+c.plain+" as|no less "+c.plain+" than", m)
	}
	for p := props.Sand; p <= props.Wrought; p++ {
		put(p.ID()+"|"+p.String()+"|"+processWords[p], meaning{role: named, kind: needs.OfProcess, process: p})
	}
	put("process|processes|made by", meaning{role: head, kind: needs.OfProcess})
	put("family|base metal", meaning{role: head, kind: needs.OfFamily})
	put("temper|tempers", meaning{role: head, kind: needs.OfTemper})
	put("as cast", meaning{role: named, kind: needs.OfTemper})
	return t
})

func putProperties(t map[string]meaning, put func(string, meaning)) {
	for _, p := range props.Properties() {
		for _, w := range p.Words() {
			if _, taken := t[w]; !taken && len(w) > 1 {
				t[w] = meaning{role: subject, props: []props.PropertyID{p}}
			}
		}
	}
	for _, s := range subjects {
		put(s.phrases, meaning{role: subject, props: s.props})
	}
	for _, o := range []float64{0.1, 0.2, 0.5, 1} {
		put(fmt.Sprintf("rp%g", o), meaning{role: subject, props: []props.PropertyID{props.YieldStrength}, cond: props.Conditions{Offset: o}})
	}
	put("a5", meaning{role: subject, props: []props.PropertyID{props.Elongation}, cond: props.Conditions{Gauge: "5D"}})
	put("a4", meaning{role: subject, props: []props.PropertyID{props.Elongation}, cond: props.Conditions{Gauge: "4D"}})
}

// letters are the signs of properties that are also words: they count where they
// stand in this case before a bound or a number.
var letters = [...]struct {
	letter string
	meaning
}{
	{"A", meaning{role: subject, props: []props.PropertyID{props.Elongation}, cond: props.Conditions{Gauge: "5D"}}},
	{"E", meaning{role: subject, props: []props.PropertyID{props.ElasticModulus}}},
	{"e", meaning{role: subject, props: []props.PropertyID{props.ElasticModulus}}},
	{"k", meaning{role: subject, props: []props.PropertyID{props.ThermalConductivity}}},
}

// familyWords are the phrases for the families, groups and kinds of the catalog.
// A word that several families have stands for all of them.
func familyWords(c *catalog.Catalog) map[string]meaning {
	t := map[string]meaning{}
	add := func(phrase, id string) {
		m := t[phrase]
		m.role, m.kind, m.families = named, needs.OfFamily, append(m.families, id)
		t[phrase] = m
	}
	for _, f := range c.Families {
		words := map[string]bool{f.ID: true, strings.ReplaceAll(f.ID, "-", " "): true, strings.ToLower(f.Name): true}
		if f.Group != "" {
			words[f.Group] = true
		}
		for _, w := range f.Words {
			words[key(w)] = true
		}
		for w := range words {
			add(w, f.ID)
		}
	}
	for _, a := range c.Alloys {
		for kind := a.Kind; kind != ""; _, kind, _ = strings.Cut(kind, " ") {
			if t[kind].role == unknown {
				add(kind, kind) // a leaded red brass is a red brass and a brass
			}
		}
	}
	return t
}

// knownWords are the words that a mistyped one may have been meant for.
var knownWords = sync.OnceValue(func() []string {
	var list []string
	for phrase, m := range table() {
		if m.role == subject || m.role == named || m.role == head || m.role == rated {
			list = append(list, phrase)
		}
	}
	slices.Sort(list)
	return list
})
