package swap

import (
	"strings"

	"alongside/props"
	"alongside/units"
)

// codeDecides goes with every result for a part that holds pressure.
const codeDecides = "allowable stress, quality factor, corrosion allowance and test pressure come from the code; the code and the licensed engineer decide"

var (
	hoopFormula = read("σ = p·(D² + d²)/(D² − d²) at the bore, D = d + 2t", srcLame)
	wallFormula = read("t = P·R/(S·E/n − 0.6 P), R inside radius, S minimum tensile strength, E quality factor, n safety factor; P at most 0.385 S·E/n", srcVessel)
)

// pressure is the hoop stress in a round part that holds pressure, how far it is
// from the strength in service and in the test, the wall it needs, and whether its
// specification is one for pressure parts. Lines appear once a pressure or an inside
// diameter is given.
func (w *work) pressure() {
	if w.Pressure == nil && w.Test == nil && (w.Inside == nil || w.Interference != nil) {
		return
	}
	under := w.hoop(w.Pressure)
	w.asDrawn(Line{Group: StrengthGroup, ID: "pressure.hoop", Name: "Hoop stress from pressure", Formula: hoopFormula}, under)
	// A metal without a yield point is judged by the stress at which it breaks.
	for _, basis := range bases {
		l := marginLine("pressure.margin."+basis.String(), "Margin under pressure, "+basis.String())
		w.margin(l, basis, givings[0].strength, func(*props.Material) expected { return under })
	}
	if w.Test != nil {
		test := w.hoop(w.Test)
		test.notes = append(test.notes, "46 CFR 54.10-10 tests a pressure vessel at 1.5 times its pressure or more and lets the stress reach 90 % of the yield strength")
		l := marginLine("pressure.test.minimum", "Margin in the pressure test, minimum")
		w.margin(l, props.Minimum, givings[0].strength, func(*props.Material) expected { return test })
	}
	if w.Pressure != nil {
		w.neededWall()
		w.specification()
	}
}

// neededWall is the wall that the pressure asks for.
func (w *work) neededWall() {
	l := Line{Group: StrengthGroup, ID: "pressure.wall", Name: "Wall that the pressure needs", Formula: wallFormula}
	if !l.missing(w.Inside, needInside) && !l.missing(w.Quality, needQuality) && !l.missing(w.Safety, needSafety) {
		l.Notes = []string{"without corrosion allowance and tolerances of the casting", codeDecides}
		l.Notes = append(l.Notes, w.notAtHeat()...)
		l.beside(w, w.wallOf(w.base), w.wallOf(w.pin), func(t interval) *Value { return t.in(w.unit(units.Length)) })
	}
	w.add(l)
}

// wallOf is the wall in m of one metal.
func (w *work) wallOf(m *props.Material) expected {
	e := w.specified(m, props.TensileStrength, props.Minimum)
	if e.why != "" {
		return e
	}
	p, r := ofGiven(*w.Pressure), ofGiven(*w.Inside).times(exact(0.5))
	s := e.value.times(ofGiven(*w.Quality)).over(ofGiven(*w.Safety))
	if p.hi > 0.385*s.lo {
		return expected{why: "the pressure is above 0.385 of the stress allowed for " + m.Name() + ", where the formula for the wall ends"}
	}
	e.value = follows(func(side int) float64 { return wall(p.at(side), r.at(side), s.at(-side)) }, p, r, s)
	return e
}

// wall is wallFormula, s being S·E/n.
func wall(p, r, s float64) float64 { return p * r / (s - 0.6*p) }

// forPressure is the specification for pressure parts beside one for other castings
// of the same metal; "" where there is none.
func forPressure(id string) string {
	switch id {
	case "ASTM-A536":
		return "A395"
	case "ASTM-A48":
		return "A278"
	case "ASTM-A27":
		return "A216"
	case "ASTM-A148":
		return "A487"
	case "ASTM-A743", "ASTM-A297":
		return "A351"
	}
	return ""
}

// specification says whether that of the minimum strength is one for pressure parts,
// by its title; of A216, which names none, by its scope.
func (w *work) specification() {
	l := Line{Group: StrengthGroup, ID: "pressure.specification", Name: "Specification of a pressure part"}
	l.Words, l.Formula.Source = w.specificationOf(w.pin)
	l.Formula.Text = "title of the specification that the minimum tensile strength is of"
	today, _ := w.specificationOf(w.base)
	l.Notes = []string{"today: " + today, codeDecides}
	if l.Formula.Source == nil {
		l.Formula.Source = srcDefined
	}
	w.add(l)
}

func (w *work) specificationOf(m *props.Material) (words string, s *props.Source) {
	f := w.onBasis(m, props.TensileStrength, props.Minimum)
	if f != nil {
		s = f.Source
	}
	const ask = "; ask which one the code lists"
	switch {
	case m.Process == props.Die:
		return "no strength is promised in a die casting, and many codes leave die castings out" + ask, s
	case s == nil || s.Kind != "standard":
		return "no specification on file behind the strength of " + m.Name() + ask, s
	}
	number, _, _ := strings.Cut(strings.TrimPrefix(s.ID, "ASTM-"), "-")
	switch order := forPressure(s.ID); {
	case strings.Contains(s.Title, "pressure") || s.ID == "ASTM-A216":
		return number + " is a specification for pressure parts", s
	case order != "":
		return number + " is none for pressure parts: order to " + order, s
	}
	return s.Title + ": names no pressure parts" + ask, s
}

// hoop is the largest hoop stress of a thick cylinder under inside pressure. It
// does not depend on the metal; it grows with pressure and bore and falls with the wall.
func (w *work) hoop(pressure *units.Quantity) expected {
	switch {
	case pressure == nil:
		return expected{need: needPressure}
	case w.Inside == nil:
		return expected{need: needInside}
	case w.Wall == nil:
		return expected{need: needWall}
	}
	p, d, t := ofGiven(*pressure), ofGiven(*w.Inside), ofGiven(*w.Wall)
	s := follows(func(side int) float64 { return hoopStress(p.at(side), d.at(side), t.at(-side)) }, p, d, t)
	return expected{value: s, notes: []string{codeDecides}}
}

// hoopStress takes pressure in Pa, inside diameter and wall in m. With
// D = d + 2t, D² − d² is 4t·(d + t), which loses no digits in a thin wall.
func hoopStress(p, d, t float64) float64 {
	outer := d + 2*t
	return p * (outer*outer + d*d) / (4 * t * (d + t))
}
