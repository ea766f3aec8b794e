package watch

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/spelling"
)

// Caution is a rule that applies to a change of metal, with what made it
// apply.
type Caution struct {
	Rule
	// Why says what raised the caution: "gray iron becomes aluminum casting
	// alloy", "elongation 2.0 % is under 3 %".
	Why []string
	// Figures are those of the catalog that raised it or belong with it.
	Figures []Shown
	// Unchecked is set when all else fits the rule but a figure that it needs
	// is missing: what is missing, and for which material.
	Unchecked string
	// Answer is the answer that the caution gives for the medium: "no, it attacks
	// zinc"; "" where it gives none.
	Answer string
	// Dismissed is set for a caution that the user has put aside. It stays in
	// the list.
	Dismissed bool
	general   int // 0 where what was said of the part raised it, else 1
}

// Shown is a figure of the catalog beside a caution.
type Shown struct {
	Role     string // pin, pin at service, baseline, mate
	Material *props.Material
	Property props.PropertyID
	Figure   *props.Figure // nil: none
	Absent   string        // why there is none
}

// Evaluate raises the cautions for replacing base by pin in a part of which so
// much is given; those put aside are marked so. Figures are those that the bench compares (its basis,
// service temperature and range apply); a service temperature of the part
// that is not given is taken from the bench. base may be nil for a look at
// one metal; rules about a change are then left out.
//
// The order is: stop and ask, check, what could not be checked, dismissed;
// within each the gravest first, then what was said of the part before what
// holds for any part, then as in the data files.
func (r *Rules) Evaluate(bench compare.Bench, base, pin *props.Material, given part.Given, aside []string) []Caution {
	if pin == nil || base == pin {
		return nil
	}
	e := &evaluation{rules: r, bench: bench.Clone(), base: base, pin: pin, part: given}
	e.fillIn()
	var out []Caution
	raised := map[string]bool{}
	for i := range r.List {
		if c, ok := e.caution(&r.List[i]); ok {
			c.Dismissed = slices.Contains(aside, c.ID)
			raised[c.ID] = c.Unchecked == ""
			out = append(out, c)
		}
	}
	out = slices.DeleteFunc(out, func(c Caution) bool {
		return slices.ContainsFunc(c.unless, func(id string) bool { return raised[id] })
	})
	slices.SortStableFunc(out, func(a, b Caution) int {
		return cmp.Or(a.rank()-b.rank(), int(a.Gravity)-int(b.Gravity), a.general-b.general)
	})
	return out
}

// Ask is what to ask or do first: the first sentence of the text.
func (c *Caution) Ask() string {
	if first, _, more := strings.Cut(c.Text, ". "); more {
		return first + "."
	}
	return c.Text
}

// rank is the place of the caution in the order of Count.
func (c *Caution) rank() int {
	switch {
	case c.Dismissed:
		return 3
	case c.Unchecked != "":
		return 2
	case c.Severity == Ask:
		return 0
	}
	return 1
}

// Count is how many cautions of a list are open, could not be checked, and
// are dismissed.
type Count struct{ Ask, Check, Unchecked, Dismissed int }

// Counts counts a list of cautions; a screen that hides the dismissed ones
// shows how many they are.
func Counts(list []Caution) Count {
	var n [4]int
	for i := range list {
		n[list[i].rank()]++
	}
	return Count{n[0], n[1], n[2], n[3]}
}

type evaluation struct {
	rules     *Rules
	bench     compare.Bench
	base, pin *props.Material
	part      part.Given
}

// fillIn takes from the bench what the part leaves out, and lets expansion be
// compared over the part's own range. Sea water is outdoors too; an interference
// makes a press fit, a pressure a part that holds it. The metal gets as hot and as
// cold as what it stands in.
func (e *evaluation) fillIn() {
	e.part.With |= e.part.Medium.Media.Facts()
	e.part.Medium.Media |= part.MediaOf(e.part.With)
	for _, x := range []struct {
		has   bool
		means part.Facts
	}{
		{e.part.With&part.SeaWater != 0, part.Outdoors}, {e.part.Interference != nil, part.PressFit},
		{e.part.Thread != nil, part.Threads}, {e.part.Pressure != nil, part.PressureTight},
	} {
		if x.has {
			e.part.With |= x.means
		}
	}
	if e.part.Hottest == nil {
		e.part.Hottest = e.bench.Service
	}
	if at := e.part.Medium.Celsius; at != nil {
		if e.part.Hottest == nil || *e.part.Hottest < at[1] {
			e.part.Hottest = &at[1]
		}
		if e.part.Coldest == nil && at[0] < 0 || e.part.Coldest != nil && *e.part.Coldest > at[0] {
			e.part.Coldest = &at[0]
		}
	}
	if lo, hi := e.part.Coldest, e.part.Hottest; e.bench.Range == nil && lo != nil && hi != nil && *lo < *hi {
		e.bench.Range = &[2]float64{*lo, *hi}
	}
}

// caution applies a rule: who it is about, what the part has, then figures.
func (e *evaluation) caution(rule *Rule) (Caution, bool) {
	if !e.about(rule) {
		return Caution{}, false
	}
	c := Caution{Rule: *rule, general: 1}
	if rule.with != 0 || rule.media != 0 || len(rule.mate) > 0 || slices.ContainsFunc(rule.limit, limit.ofPart) {
		c.general = 0
	}
	e.raise(&c)
	var lacking []string
	for i := range rule.limit {
		why, is := e.holds(&rule.limit[i], &c)
		switch is {
		case no:
			return Caution{}, false
		case unknown:
			lacking = append(lacking, why)
		case yes:
			c.Why = append(c.Why, why)
		}
	}
	c.Unchecked = strings.Join(lacking, "; ")
	for _, p := range rule.show {
		e.show(&c, p, rule)
	}
	return c, true
}

// raise says what of the change and of the part raised a caution; one of a medium has
// that in its title.
func (e *evaluation) raise(c *Caution) {
	switch {
	case !c.from.Empty() || c.fresh:
		c.Why = append(c.Why, change(e.base, e.pin))
	case !c.to.Empty():
		c.Why = append(c.Why, e.pin.Name()+", "+e.pin.Alloy.Family.Name)
	}
	if len(c.mate) > 0 {
		c.Why = append(c.Why, "the mate is "+e.part.Mate.Name()+", "+e.part.Mate.Alloy.Family.Name)
	}
	if c.with != 0 {
		c.Why = append(c.Why, "the part: "+c.with.String())
	}
	if in := c.media & e.part.Medium.Media; in != 0 {
		c.Why = append(c.Why, "the medium: "+in.String())
		said := strings.ToLower(c.Title[:1]) + c.Title[1:]
		c.Title = strings.ToUpper(in.String()[:1]) + in.String()[1:] + ": " + said
		if answers.Regexp().MatchString(said) {
			c.Answer = said
		}
	}
}

// answers begin the titles of rules that answer a medium.
var answers = spelling.Pattern{Expr: `^(yes|no|with)\b`}

// about reports whether the rule speaks of this change and of this part.
func (e *evaluation) about(rule *Rule) bool {
	if !rule.from.Empty() && (e.base == nil || !rule.from.Admits(e.base)) {
		return false
	}
	if !rule.to.Admits(e.pin) || rule.with&^e.part.With != 0 {
		return false
	}
	if rule.fresh && (e.base == nil || rule.to.Admits(e.base)) {
		return false
	}
	if in := e.part.Medium.Media; rule.media != 0 && rule.media&in == 0 || rule.unsaid && in != 0 {
		return false
	}
	return len(rule.mate) == 0 || e.part.Mate != nil && e.part.Mate.Alloy.Family.Among(rule.mate)
}

func change(base, pin *props.Material) string {
	if base.Alloy.Family != pin.Alloy.Family {
		return base.Alloy.Family.Name + " becomes " + pin.Alloy.Family.Name
	}
	return base.Name() + " becomes " + pin.Name()
}

// show puts a figure of the pin beside the caution, and those of baseline and
// mate where the rule speaks of them.
func (e *evaluation) show(c *Caution, p props.PropertyID, rule *Rule) {
	base, mate, hot := !rule.from.Empty(), len(rule.mate) > 0, false
	for _, l := range rule.limit {
		hot = hot || l.subject == serviceMax
		base = base || l.other == "baseline" || l.op == "unlike" || l.op == "absent"
		mate = mate || l.other == "mate"
	}
	if hot && p.Info().Strength {
		c.Figures = append(c.Figures, e.atService(p))
	}
	e.add(c, "pin", e.pin, p, nil)
	if base && e.base != nil {
		e.add(c, "baseline", e.base, p, nil)
	}
	if mate && e.part.Mate != nil {
		e.add(c, "mate", e.part.Mate, p, nil)
	}
}

// atService is the pin's figure at the part's highest temperature, or why
// there is none.
func (e *evaluation) atService(p props.PropertyID) Shown {
	how := e.bench.Question
	how.Service = e.part.Hottest
	alone := how.Alone(e.pin, p)
	return Shown{Role: "pin at service", Material: e.pin, Property: p, Figure: alone.Figure, Absent: alone.Absent}
}

// add shows a figure, unless it is there already: the one given, or else the
// one that the bench shows. Where a figure does not exist the reason is shown;
// one that is merely not on file is left out.
func (e *evaluation) add(c *Caution, role string, m *props.Material, p props.PropertyID, f *props.Figure) {
	for _, s := range c.Figures {
		if s.Role == role && s.Property == p {
			return
		}
	}
	s := Shown{Role: role, Material: m, Property: p, Figure: f}
	if f == nil {
		s.Figure = e.bench.Figure(m, p)
	}
	if s.Figure == nil {
		if s.Absent = m.Absent(p); s.Absent == "" {
			return
		}
	}
	c.Figures = append(c.Figures, s)
}

func missing(p props.PropertyID, m *props.Material) string {
	return fmt.Sprintf("%s of %s: %s", p.Info().Name, m.Name(), cmp.Or(m.Absent(p), compare.NoFigureOnFile))
}
