package foundry

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"alongside/props"
	"alongside/props/spelling"
)

// temper says what a temper designation means.
type temper struct {
	Scope
	text string
	Cite
}

// treatable says whether a kind of casting is normally heat treated.
type treatable struct {
	Scope
	normally string // yes, no, depends
	Statement
}

// schedule is a published heat treatment.
type schedule struct {
	Scope
	Schedule
}

// Schedule is a published heat treatment for a temper.
type Schedule struct {
	Temper string
	Steps  []Step
	Note   string
	Cite
}

// Step is one stage of a heat treatment.
type Step struct {
	Name string // solution, quench, age, anneal …
	Says string // temperature, time and what they do not say: "1000 °F, 12 h"
}

// String is the step in one line: "solution 1000 °F, 12 h".
func (s *Step) String() string { return s.Name + " " + s.Says }

// String is the schedule in one line.
func (s *Schedule) String() string {
	parts := make([]string, len(s.Steps))
	for i := range s.Steps {
		parts[i] = s.Steps[i].String()
	}
	return strings.Join(parts, "; ")
}

// HeatCard is what is published about heat treating a material.
type HeatCard struct {
	Material *props.Material
	Meaning  []Statement // of the temper
	// Normally is yes, no or depends for the alloy and process, "" when
	// nothing is on file; Reasons say why, most particular first.
	Normally string
	Reasons  []Statement
	// Tempers are the heat-treated tempers that the catalog has for the same
	// alloy and process.
	Tempers   []string
	Schedules []Schedule // for the material's own temper
	Others    []Schedule // for other tempers of the alloy by the process
	// Why says why there is no schedule for the material's own temper.
	Why string
}

// solutionTreated are the tempers that need a solution heat treatment.
var solutionTreated = spelling.Pattern{Expr: `^(T[2-46-9].*|HT|TQ.*)$`}

// heatTreat puts together what is published about heat treating the material, one
// of these variants of its alloy: what its temper means, whether the alloy is
// normally treated when cast by the process, and the usual schedules.
func (b *Book) heatTreat(m *props.Material, variants []*props.Material) *HeatCard {
	c := &HeatCard{Material: m, Meaning: b.temper(m)}
	for _, t := range about(b.treatable, m) {
		c.Normally = cmp.Or(c.Normally, t.normally)
		// Broader records that answer otherwise are not about this alloy.
		if t.normally == c.Normally {
			c.Reasons = append(c.Reasons, t.Statement)
		}
	}
	for _, o := range variants {
		if o.Process == m.Process && solutionTreated.Regexp().MatchString(o.Temper) {
			c.Tempers = append(c.Tempers, o.Temper)
		}
	}
	for _, s := range about(b.schedules, m) {
		if s.Temper == m.Temper {
			c.Schedules = append(c.Schedules, s.Schedule)
		} else {
			c.Others = append(c.Others, s.Schedule)
		}
	}
	if len(c.Schedules) == 0 {
		c.Why = noSchedule(m)
	}
	return c
}

// temper says what the temper of a material means.
func (b *Book) temper(m *props.Material) []Statement {
	var out []Statement
	if m.Temper != "" {
		for _, t := range about(b.tempers, m) {
			out = append(out, Statement{fill(t.text, t.Tempers, m.Temper), t.Cite})
		}
	}
	return out
}

func noSchedule(m *props.Material) string {
	switch m.Temper {
	case "":
		return "the designation names no temper; where heat treatment is part of the grade, its standard or the order sets it"
	case "F":
		return "F is as cast: no heat treatment"
	case "hot rolled", "cold drawn":
		return m.Temper + " is no heat treatment"
	}
	return fmt.Sprintf("no schedule on file for %s; ask the governing standard or the heat treater", m.Name())
}

// fill puts what a pattern captured in place of {1}, {2} … in a text.
func fill(text string, pattern *regexp.Regexp, on string) string {
	if pattern == nil {
		return text
	}
	for i, s := range pattern.FindStringSubmatch(on) {
		text = strings.ReplaceAll(text, fmt.Sprintf("{%d}", i), s)
	}
	return text
}
