package swap

import (
	"strings"

	"alongside/props/part"
)

// Worth says the results that a customer asks for first in sentences to read
// aloud or to put at the head of a mail. Lines without a result are left out.
func (r *Result) Worth() []string {
	s := &summary{Result: r}
	s.mass()
	s.part("stiffness.deflection", func(l *Line) string {
		return "Bending of the same shape under the same load: " + todays(l) + "."
	})
	s.equal("stiffness", "As stiff")
	s.part("strength.load", func(l *Line) string {
		_, by, _ := strings.Cut(l.Name, ", by ")
		return "Load on the same shape, by " + by + ": " + todays(l) + "."
	})
	s.givesWay()
	s.equal("strength", "As strong")
	s.margin()
	for _, id := range []string{"hot.set", "hot.fracture", "cold.impact", "creep.reserve"} {
		s.part(id, told)
	}
	for _, id := range []string{"growth", "growth.hot", "growth.cold"} {
		s.part(id, s.growth)
	}
	s.part("growth.permanent", told)
	for _, id := range []string{"bore", "bore.hot", "bore.cold", "shaft", "shaft.hot", "shaft.cold"} {
		s.part(id, s.clearance)
	}
	s.press()
	for _, id := range []string{"held", "held.hot", "held.cold"} {
		s.part(id, func(l *Line) string { return s.against(l, "Fully held ", " it is stressed to ") })
	}
	s.part("pressure.specification", func(l *Line) string { return "As a pressure part: " + l.Words + "." })
	s.part("heat.flow", func(l *Line) string { return "Heat through the same wall: " + todays(l) + "." })
	s.part("current.resistance", func(l *Line) string { return "Electrical resistance of the same shape: " + todays(l) + "." })
	s.part("pattern", func(l *Line) string { return "Today's pattern: " + l.Words + "." })
	s.part("price.metal", func(l *Line) string {
		return "Metal for a part: " + l.Value.String() + insteadOf(l) + change(l) + "."
	})
	s.part("cost.piece", func(l *Line) string {
		return "Cost of a piece at a quantity of " + s.Given.Part.Quantity + ": " + l.Value.String() + insteadOf(l) + change(l) + "."
	})
	s.part("cost.crossing", func(l *Line) string { return "Cheaper with both tools to buy: " + l.Words + "." })
	s.part("cost.payback", func(l *Line) string { return "Cheaper with today's tool paid for: " + l.Words + "." })
	return s.sentences
}

type summary struct {
	*Result
	sentences []string
}

// part adds a sentence for a line that has a result which is not "the same".
func (s *summary) part(id string, say func(*Line) string) {
	if l := s.Line(id); l != nil && l.Done() && (l.Value != nil || !same(l.Ratio)) {
		s.sentences = append(s.sentences, say(l))
	}
}

// told is the name of a line and what it says of both metals.
func told(l *Line) string {
	s := l.Name + ": " + l.Words + l.Value.String()
	if l.Base != nil {
		s += ", today " + l.Base.String()
	}
	return s + "."
}

func same(ratio *Value) bool { return ratio != nil && ratio.Lo == 1 && ratio.Hi == 1 }

// of is the ratio of a line as one says it.
func of(l *Line, what string) string { return SpokenOf(l.Ratio.Lo, l.Ratio.Hi, what) }

func todays(l *Line) string { return of(l, "today's") }

func insteadOf(l *Line) string {
	if l.Base == nil {
		return ""
	}
	return " instead of " + l.Base.String()
}

func change(l *Line) string {
	if c := l.Change(); c != "" {
		return " (" + c + ")"
	}
	return ""
}

func (s *summary) mass() {
	s.part("shape.mass", func(l *Line) string {
		if l.Value == nil {
			return "Same shape: " + of(l, "the mass") + change(l) + "."
		}
		return "Same shape: " + l.Value.String() + insteadOf(l) + change(l) + "."
	})
}

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
	text := words + " as " + article(s.Given.Case) + ": "
	if wall.Value != nil {
		text += what + " " + wall.Value.String() + insteadOf(wall)
	} else {
		text += of(wall, "the "+what)
	}
	switch {
	case mass == nil || !mass.Done():
	case mass.Value != nil:
		text += ", " + mass.Value.String() + insteadOf(mass) + change(mass)
	default:
		text += ", " + of(mass, "the mass") + change(mass)
	}
	s.sentences = append(s.sentences, text+".")
}

func article(c part.Case) string { return "a " + c.String() }

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
		l := s.Line(id)
		if l == nil || l.Value == nil {
			continue
		}
		text := l.Value.Number() + " " + strings.TrimPrefix(l.Name, "Margin ")
		if l.Base != nil {
			text += " (today " + l.Base.Number() + ")"
		}
		parts = append(parts, text)
	}
	if len(parts) > 0 {
		s.sentences = append(s.sentences, "Margin at "+s.Given.Part.Stress+": "+strings.Join(parts, ", ")+".")
	}
}

// against says a line whose name ends in a range of temperature.
func (s *summary) against(l *Line, before, verb string) string {
	_, leg, _ := strings.Cut(l.Name, ", ")
	text := before + "from " + leg + verb + l.Value.String()
	if l.Base != nil {
		text += " (today " + l.Base.String() + ")"
	}
	return text + "."
}

func (s *summary) growth(l *Line) string { return s.against(l, "It grows ", " by ") }

func (s *summary) clearance(l *Line) string {
	role, leg := "bore", strings.TrimPrefix(l.Name, "Bore clearance, ")
	if strings.HasPrefix(l.ID, "shaft") {
		role, leg = "shaft", strings.TrimPrefix(l.Name, "Shaft clearance, ")
	}
	text := "As the " + role + " with " + s.Given.Mate.Name() + " from " + leg + ", the clearance " + moves(l.Value)
	if l.Base != nil {
		text += " (today " + moves(l.Base) + ")"
	}
	return text + "."
}

// press says how hard the fit grips, and what it holds, at each temperature.
func (s *summary) press() {
	for _, of := range []struct{ id, says string }{{"press.pressure", "presses with "}, {"press.torque", "holds "}} {
		var parts []string
		for _, end := range []string{"", ".hot", ".cold"} {
			l := s.Line(of.id + end)
			if l == nil || l.Value == nil {
				continue
			}
			_, at, _ := strings.Cut(l.Name, ", ")
			text := l.Value.String() + " at " + at
			if l.Base != nil {
				text += " (today " + l.Base.String() + ")"
			}
			parts = append(parts, text)
		}
		if len(parts) > 0 {
			s.sentences = append(s.sentences, "The fit with "+s.Given.Mate.Name()+" "+of.says+strings.Join(parts, ", ")+".")
		}
	}
}

// moves says a change of clearance without a sign.
func moves(v *Value) string {
	size := *v
	switch {
	case v.Lo == 0 && v.Hi == 0:
		return "does not change"
	case v.Lo >= 0:
		return "opens by " + size.String()
	case v.Hi <= 0:
		size.Lo, size.Mid, size.Hi = -v.Hi, -v.Mid, -v.Lo
		return "closes by " + size.String()
	case !v.Range && v.Mid < 0:
		size.Mid = -v.Mid
		return "closes by " + size.String()
	case !v.Range:
		return "opens by " + size.String()
	}
	return "changes by " + size.String()
}
