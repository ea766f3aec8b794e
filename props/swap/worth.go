package swap

import (
	"strings"

	"alongside/props/part"
)

// Worth says the results that a customer asks for first in sentences to read
// aloud or to put at the head of a mail. Lines without a result are left out.
func (r *Result) Worth() []string {
	s := &summary{Result: r}
	s.say("Same shape: ", func(l *Line) string { return amount(l, "the mass") }, "shape.mass")
	s.say("Bending of the same shape under the same load: ", todays, "stiffness.deflection")
	s.equal("stiffness", "As stiff")
	s.say("Load on the same shape, ", func(l *Line) string { return after(l) + ": " + todays(l) }, "strength.load")
	s.givesWay()
	s.equal("strength", "As strong")
	s.margin()
	s.say("", told, "hot.set", "hot.fracture", "cold.impact", "creep.reserve")
	s.say("It grows from ", func(l *Line) string { return after(l) + " by " + withToday(l, l.Value.String()) }, "growth", "growth.hot", "growth.cold")
	s.say("", told, "growth.permanent")
	s.say("As the ", s.clearance, "bore", "bore.hot", "bore.cold", "shaft", "shaft.hot", "shaft.cold")
	s.press("presses with ", "press.pressure", "press.pressure.hot", "press.pressure.cold")
	s.press("holds ", "press.torque", "press.torque.hot", "press.torque.cold")
	s.say("Fully held from ", func(l *Line) string { return after(l) + " it is stressed to " + withToday(l, l.Value.String()) }, "held", "held.hot", "held.cold")
	s.say("As a pressure part: ", words, "pressure.specification")
	s.say("Heat through the same wall: ", todays, "heat.flow")
	s.say("Electrical resistance of the same shape: ", todays, "current.resistance")
	s.say("Today's pattern: ", words, "pattern")
	s.say("Metal for a part: ", price, "price.metal")
	s.say("Cost of a piece at a quantity of "+s.Given.Part.Quantity+": ", price, "cost.piece")
	s.say("Cheaper with both tools to buy: ", words, "cost.crossing")
	s.say("Cheaper with today's tool paid for: ", words, "cost.payback")
	return s.sentences
}

type summary struct {
	*Result
	sentences []string
}

// say adds a sentence for each of the lines that has a result which is not "the same".
func (s *summary) say(before string, what func(*Line) string, ids ...string) {
	for _, id := range ids {
		l := s.Line(id)
		if l != nil && l.Done() && (l.Value != nil || l.Words != "" || l.Ratio.Lo != 1 || l.Ratio.Hi != 1) {
			s.sentences = append(s.sentences, before+what(l)+".")
		}
	}
}

func words(l *Line) string { return l.Words }

// of is the ratio of a line as one says it.
func of(l *Line, what string) string { return SpokenOf(l.Ratio.Lo, l.Ratio.Hi, what) }

func todays(l *Line) string { return of(l, "today's") }

// after is the end of the name of a line: what it is counted by, the range or the
// end of the range of temperature.
func after(l *Line) string {
	_, end, _ := strings.Cut(l.Name, ", ")
	return end
}

// told is the name of a line and what it says of both metals.
func told(l *Line) string {
	s := l.Name + ": " + l.Words + l.Value.String()
	if l.Base != nil {
		s += ", today " + l.Base.String()
	}
	return s
}

// withToday puts what holds today behind what holds in the pin's metal.
func withToday(l *Line, text string) string {
	if l.Base != nil {
		text += " (today " + l.Base.String() + ")"
	}
	return text
}

// size is what the pin's metal makes of something, where its size is known, else
// the ratio to what it is today.
func size(l *Line, what string) string {
	switch {
	case l.Value == nil:
		return of(l, what)
	case l.Base == nil:
		return l.Value.String()
	}
	return l.Value.String() + " instead of " + l.Base.String()
}

// amount is size with the change in percent.
func amount(l *Line, what string) string {
	if c := l.Change(); c != "" {
		return size(l, what) + " (" + c + ")"
	}
	return size(l, what)
}

func price(l *Line) string { return amount(l, "") }

// equal says section and mass at equal stiffness or strength.
func (s *summary) equal(id, words string) {
	wall, mass := s.Line(id+".wall"), s.Line(id+".mass")
	if wall == nil || !wall.Done() {
		return
	}
	what := "wall"
	if s.Given.Case == part.FixedBeam {
		what = "depth"
	}
	text := words + " as a " + s.Given.Case.String() + ": "
	if wall.Value != nil {
		text += what + " "
	}
	text += size(wall, "the "+what)
	if mass != nil && mass.Done() {
		text += ", " + amount(mass, "the mass")
	}
	s.sentences = append(s.sentences, text+".")
}

// givesWay says when the part stays bent and when it breaks where one of the metals
// breaks without yielding, on minimums where both have them.
func (s *summary) givesWay() {
	for _, basis := range bases {
		set, fracture := s.Line("load.set."+basis.String()), s.Line("load.fracture."+basis.String())
		if set == nil || !set.Done() {
			continue
		}
		text := "By " + basis.Phrase() + " it stays bent at " + of(set, "the load at which today's breaks")
		if breaks(s.Pin) {
			text = "By " + basis.Phrase() + " it breaks at " + of(set, "the load at which today's stays bent")
		}
		switch {
		case !fracture.Done():
		case breaks(s.Pin):
			text += ", at " + of(fracture, "that at which it breaks")
		default:
			text += "; it breaks at " + of(fracture, "that load")
		}
		s.sentences = append(s.sentences, text+".")
		return
	}
}

// margin says both margins in one sentence.
func (s *summary) margin() {
	var parts []string
	ids := []string{"margin.minimum", "margin.typical", "margin.set.minimum", "margin.fracture.minimum"}
	if l := s.Line("margin.set.minimum"); l != nil && l.Value == nil {
		ids = []string{"margin.set.typical", "margin.fracture.typical"}
	}
	for _, id := range ids {
		if l := s.Line(id); l != nil && l.Value != nil {
			parts = append(parts, withToday(l, l.Value.String()+" "+strings.TrimPrefix(l.Name, "Margin ")))
		}
	}
	if len(parts) > 0 {
		s.sentences = append(s.sentences, "Margin at "+s.Given.Part.Stress+": "+strings.Join(parts, ", ")+".")
	}
}

func (s *summary) clearance(l *Line) string {
	role, _, _ := strings.Cut(l.ID, ".")
	text := role + " with " + s.Given.Mate.Name() + " from " + after(l) + ", the clearance " + moves(l.Value)
	if l.Base != nil {
		text += " (today " + moves(l.Base) + ")"
	}
	return text
}

// press says how hard the fit grips, or what it holds, at each temperature.
func (s *summary) press(verb string, ids ...string) {
	var parts []string
	for _, id := range ids {
		if l := s.Line(id); l != nil && l.Value != nil {
			parts = append(parts, withToday(l, l.Value.String()+" at "+after(l)))
		}
	}
	if len(parts) > 0 {
		s.sentences = append(s.sentences, "The fit with "+s.Given.Mate.Name()+" "+verb+strings.Join(parts, ", ")+".")
	}
}

// moves says a change of clearance without a sign.
func moves(v *Value) string {
	switch {
	case v.Lo == 0 && v.Hi == 0:
		return "does not change"
	case v.Range && v.Lo < 0 && v.Hi > 0:
		return "changes by " + v.String()
	case v.Mid < 0 || v.Hi <= 0:
		closed := *v
		closed.Lo, closed.Mid, closed.Hi = -v.Hi, -v.Mid, -v.Lo
		return "closes by " + closed.String()
	}
	return "opens by " + v.String()
}

// spokenPoints are the ratios that have a name in speech, rising.
var spokenPoints = []struct {
	ratio float64
	name  string
}{
	{1. / 100, "a hundredth"}, {1. / 20, "a twentieth"}, {1. / 10, "a tenth"}, {1. / 5, "a fifth"}, {1. / 4, "a quarter"}, {1. / 3, "a third"},
	{2. / 5, "two fifths"}, {1. / 2, "half"}, {3. / 5, "three fifths"}, {2. / 3, "two thirds"}, {3. / 4, "three quarters"}, {4. / 5, "four fifths"},
	{9. / 10, "nine tenths"}, {1, "the same"}, {1.1, "1.1 times"}, {1.25, "1¼ times"}, {1.5, "1½ times"}, {1.75, "1¾ times"}, {2, "twice"},
	{2.5, "2½ times"}, {3, "3 times"}, {4, "4 times"}, {5, "5 times"}, {7, "7 times"}, {10, "10 times"}, {20, "20 times"}, {50, "50 times"}, {100, "100 times"},
}

// Spoken is a positive ratio between lo and hi as one says it. The phrase
// always stands for an interval that holds lo to hi: "about" reaches 2 % to
// either side, "a little over" and "a little under" 10 % to one side, "X to Y"
// from X to Y. It is empty where lo to hi is no interval of positive ratios. Its
// branches are the phrases.
func Spoken(lo, hi float64) string {
	if !(lo > 0 && lo <= hi) {
		return ""
	}
	for _, p := range spokenPoints {
		if lo >= 0.98*p.ratio && hi <= 1.02*p.ratio {
			return "about " + p.name
		}
	}
	for _, p := range spokenPoints {
		switch {
		case lo >= p.ratio && hi <= 1.1*p.ratio:
			return "a little over " + p.name
		case lo >= 0.9*p.ratio && hi <= p.ratio:
			return "a little under " + p.name
		}
	}
	from, to := "", ""
	for _, p := range spokenPoints {
		if p.ratio <= lo {
			from = p.name
		}
		if p.ratio >= hi && to == "" {
			to = p.name
		}
	}
	switch {
	case from == "" && to == "":
		return "anything"
	case from == "":
		return "less than " + to
	case to == "":
		return "more than " + from
	}
	if short, ok := strings.CutSuffix(from, " times"); ok && strings.HasSuffix(to, " times") {
		from = short
	}
	return from + " to " + to
}

// SpokenOf is Spoken with what the ratio is of: "about half of today's", "a
// little over twice today's", "about the same as today's". It is empty where
// Spoken is.
func SpokenOf(lo, hi float64, what string) string {
	s := Spoken(lo, hi)
	switch {
	case s == "" || s == "anything":
		return s
	case strings.HasSuffix(s, "the same"):
		return strings.NewReplacer("under the same", "less than", "over the same", "more than", "the same", "the same as").Replace(s) + " " + what
	case strings.HasSuffix(s, " times"), strings.HasSuffix(s, "twice"):
		return s + " " + what
	}
	return s + " of " + what
}
