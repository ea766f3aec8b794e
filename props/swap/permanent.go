package swap

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/units"
)

const (
	// growsFrom and growsTo are the temperatures in °C between which the growth of
	// aluminum as cast is published.
	growsFrom = 100
	growsTo   = 250
	// creepStress is the tension in Pa that stretches zinc No. 3 and, as its creep is
	// much the same, No. 5 by 0.2 % in 5 years at creepHeat °C.
	creepStress = 15.1e6
	creepHeat   = 25
)

// The changes of size that stay, length per length: aluminum castings with silicon
// heated as cast grow by up to 0.0010 to 0.0013; zinc die castings No. 3 and 5 shrink
// by 0.0005 when stabilized, of which the bake brings 0.0004, two thirds of all.
var (
	growsForGood   = interval{0, 0.00065, 0.0013, 0.0001, true}
	shrinksForGood = interval{-0.0006, -0.00055, -0.0005, 0.0001, true}

	asCastRule = read("ΔL = L·ε, ε to 0.0013 for Al-Si castings (AC2B, AC4B, AC4C, AC8B) heated as cast to 250 °C; T5 at 200 °C for 10 h, 230 °C for 3 h or 250 °C for 1 h prevents it", srcAsCast)
	agingRule  = read("ΔL = L·ε, ε 0.0005 to 0.0006 of shrinkage after casting, two thirds in five weeks; not where stabilized, such as 3 to 6 h at 100 °C, and aged", srcAging)
	creepRule  = read("n = 15.1 MPa/σ, the tension for 0.2 % strain in 5 years at 25 °C", srcCreep)
)

// asCast are the JIS alloys whose growth is published, which the catalog gives as
// near to its own.
var asCast = []string{"AC2B", "AC4B", "AC4C", "AC8B"}

func growsAsCast(m *props.Material) bool {
	gravity := m.Process == props.Sand || m.Process == props.PermanentMold
	return gravity && m.Temper == "F" && slices.ContainsFunc(m.Alloy.Aliases, func(a props.Alias) bool {
		name, _, _ := strings.Cut(a.Name, " ")
		return strings.HasPrefix(a.System, "JIS") && slices.Contains(asCast, name)
	})
}

// agingZinc reports whether the aging and creep of a zinc die casting are published.
func agingZinc(m *props.Material) bool { return m.ID == "zn-3-die" || m.ID == "zn-5-die" }

// forGood is the change of size of a metal that stays, length per length.
func (w *work) forGood(m *props.Material) expected {
	switch {
	case agingZinc(m):
		return expected{value: shrinksForGood, rule: agingRule}
	case !growsAsCast(m):
		return expected{why: "no permanent growth on file for " + m.Name()}
	case w.Hottest == nil:
		return expected{need: needRange, why: needRange.text}
	case *w.Hottest < growsFrom:
		return expected{why: "no growth of " + m.Name() + " on file below " + w.temperatureText(growsFrom)}
	case *w.Hottest > growsTo:
		return expected{why: "the growth of " + m.Name() + " is on file up to " + w.temperatureText(growsTo) + " only"}
	}
	return expected{value: growsForGood, rule: asCastRule, notes: []string{"as cast; ask for T5 or T7 where fits must stay"}}
}

// permanent is how the part changes its size for good in service, where that is
// published for one of the metals.
func (w *work) permanent() {
	if !slices.ContainsFunc([]*props.Material{w.base, w.pin}, func(m *props.Material) bool { return growsAsCast(m) || agingZinc(m) }) {
		return
	}
	today, swapped := w.forGood(w.base), w.forGood(w.pin)
	l := Line{Group: Temperature, ID: "growth.permanent", Name: "Permanent growth", Formula: both(today.rule, swapped.rule)}
	switch {
	case swapped.need.text != "":
		l.wait(swapped.need)
	case !l.missing(w.Length, needLength):
		length := ofGiven(*w.Length)
		amount := func(e expected) *Value {
			if e.why != "" {
				l.Notes = append(l.Notes, e.why)
				return nil
			}
			l.Notes = append(l.Notes, e.notes...)
			return e.value.times(length).in(w.unit(units.Length))
		}
		if l.Reason = swapped.why; l.Reason == "" {
			l.Base, l.Value = amount(today), amount(swapped)
		}
	}
	w.add(l)
}

// creep is the reserve, where the stress stands all the time, of the metals whose
// creep is published.
func (w *work) creep() {
	if !agingZinc(w.base) && !agingZinc(w.pin) {
		return
	}
	l := Line{Group: StrengthGroup, ID: "creep.reserve", Name: "Reserve in creep, 5 years", Formula: creepRule}
	of := func(m *props.Material) expected {
		switch {
		case !agingZinc(m):
			return expected{why: "no creep stress on file for " + m.Name()}
		case w.Hottest != nil && *w.Hottest > creepHeat+sameHeat:
			return expected{why: "the creep stress of " + m.Name() + " is on file at " + w.temperatureText(creepHeat) + " only"}
		}
		return expected{value: interval{creepStress, creepStress, creepStress, 0.1e6, false}, rule: creepRule}
	}
	if !l.missing(w.Stress, needStress) {
		under := ofGiven(*w.Stress)
		l.beside(w, of(w.base), of(w.pin), func(v interval) *Value { return v.over(under).in(units.One) })
		l.Notes = append(l.Notes, "where the stress stands all the time; a bolt or a press fit lets go as it creeps")
	}
	w.add(l)
}
