package foundry

import (
	"fmt"
	"strings"

	"alongside/props/record"
	"alongside/units"
)

var stepNames = []string{"solution", "quench", "hold", "age", "anneal", "stress relieve", "normalize", "austenitize", "austemper", "temper"}

// schedule reads a heat treatment:
//
//	[[schedule]]
//	alloys = '356'
//	temper = "T6"
//	processes = ["sand"]
//	steps = ["solution: 1000 °F; 12 h", "quench: 150–212 °F; (water)", "age: 310 °F; 3–5 h"]
func (l *loader) schedule(r *record.Record) {
	s := schedule{Scope: l.Scope(r, "families", "")}
	s.Temper, s.Note = r.Text("temper", true), r.Text("note", false)
	r.Label = strings.TrimSpace(r.Text("alloys", false) + " " + s.Temper)
	if !s.named() {
		r.Fail("alloys", "is missing, and there are no families", "a schedule holds for named alloys or families only")
	}
	for _, text := range r.Texts("steps") {
		if st, ok := readStep(r, text); ok {
			s.Steps = append(s.Steps, st)
		}
	}
	if len(s.Steps) == 0 {
		r.Fail("steps", "holds no step", `write steps = ["solution: 1000 °F; 12 h", "age: 310 °F; 3–5 h"]`)
	}
	s.Cite = l.Cite(r)
	r.Finish()
	l.book.schedules = append(l.book.schedules, s)
}

func readStep(r *record.Record, text string) (Step, bool) {
	name, rest, ok := strings.Cut(text, ":")
	st := Step{Name: strings.TrimSpace(name)}
	known := false
	for _, n := range stepNames {
		known = known || n == st.Name
	}
	if !ok || !known {
		r.Fail("steps", fmt.Sprintf("%q does not begin with a stage", text), "write NAME: TEMPERATURE; TIME with one of: "+strings.Join(stepNames, ", "))
		return st, false
	}
	for _, part := range strings.Split(rest, ";") {
		part = strings.TrimSpace(part)
		if strings.HasPrefix(part, "(") && strings.HasSuffix(part, ")") {
			st.Words = part[1 : len(part)-1]
			continue
		}
		// A temperature or a time: whichever reads as such.
		if q, err := units.ParseAs(part, units.Temperature, units.NoUnit); err == nil {
			st.Temperature, st.HasTemperature = q, true
			continue
		}
		q, ok := r.Quantity("steps", part, units.Time, units.NoUnit, "age: 310 °F; 3–5 h")
		if !ok {
			return st, false
		}
		st.Time, st.HasTime = q, true
	}
	return st, true
}
