package swap

import "alongside/units"

// codeDecides goes with every result for a part that holds pressure.
const codeDecides = "allowable stress, quality factor, corrosion allowance and test pressure come from the code; the code and the licensed engineer decide"

// pressure is the hoop stress in a round part that holds pressure, and how far
// it is from the strength. Lines appear once a pressure or an inside diameter is given.
func (w *work) pressure() {
	if w.Pressure == nil && w.Bore == nil {
		return
	}
	under := w.hoop()
	l := Line{Group: StrengthGroup, ID: "pressure.hoop", Name: "Hoop stress from pressure", Formula: read("σ = p·(D² + d²)/(D² − d²) at the bore, D = d + 2t", srcLame)}
	if under.need.text != "" {
		l.wait(under.need)
	} else {
		l.Value = under.stress.in(w.unit(units.Stress))
		l.Base, l.Notes = l.Value, under.notes
	}
	w.add(l)
	// A metal without a yield point is judged by the stress at which it breaks.
	for _, basis := range bases {
		w.margin("pressure.margin."+basis.String(), "Margin under pressure, "+basis.String(), basis, givings[0].strength, under)
	}
}

// hoop is the largest hoop stress of a thick cylinder under inside pressure. It
// does not depend on the metal; it grows with pressure and bore and falls with the wall.
func (w *work) hoop() acting {
	switch {
	case w.Pressure == nil:
		return acting{need: needPressure}
	case w.Bore == nil:
		return acting{need: needBore}
	case w.Wall == nil:
		return acting{need: needWall}
	}
	p, d, t := ofGiven(*w.Pressure), ofGiven(*w.Bore), ofGiven(*w.Wall)
	s := interval{lo: hoopStress(p.lo, d.lo, t.hi), mid: hoopStress(p.mid, d.mid, t.mid), hi: hoopStress(p.hi, d.hi, t.lo)}
	return acting{stress: s.with(p, d, t), notes: []string{codeDecides}}
}

// hoopStress takes pressure in Pa, inside diameter and wall in m. With
// D = d + 2t, D² − d² is 4t·(d + t), which loses no digits in a thin wall.
func hoopStress(p, d, t float64) float64 {
	outer := d + 2*t
	return p * (outer*outer + d*d) / (4 * t * (d + t))
}
