package spoken

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/units"
)

// reading is one way to understand a limit.
type reading struct {
	need    *needs.Need
	said    *part.Said
	assumed bool
}

func (x *reading) String() string {
	var s []string
	if x.need != nil {
		s = append(s, x.need.String())
	}
	if x.said != nil {
		s = append(s, x.said.Field.String()+" "+x.said.Text)
	}
	return strings.Join(s, "; ")
}

// readings lists the ways to understand a limit: for each property or field that
// it may be of, each unit that it may be in and each way to read its digits. Its
// branches are what the limit may be of where it does not say.
func (r *reader) readings(l *limit, subj *token) ([]reading, *ParseError) {
	var ps []props.PropertyID
	var fs []part.Field
	switch {
	case subj != nil:
		ps, fs = subj.props, subj.fields
	case l.amount.degrees:
		fs = []part.Field{part.FieldService}
	default:
		ps, fs = ofUnit(l.amount.q.Unit)
	}
	if l.cond.Cycles > 0 && l.amount.q.Unit.Dimension() == units.Stress && (subj == nil || len(subj.props) == 0) {
		ps, fs = []props.PropertyID{props.FatigueStrength}, nil // sees 10 million cycles at 6 ksi
	} else if subj == nil && l.amount.q.Unit.Dimension() == units.Stress && l.amount.q.Unit.ToSI(l.amount.q.Hi) < weakest {
		ps, fs = nil, []part.Field{part.FieldPressure, part.FieldStress}
	}
	if subj == nil && len(ps)+len(fs) == 0 {
		return nil, &ParseError{Hint: "of what? name a property or what of the part is meant"}
	}
	var out []reading
	var first *ParseError
	add := func(x []reading, err *ParseError) {
		out = append(out, x...)
		if first == nil {
			first = err
		}
	}
	for _, f := range fs {
		add(r.fieldReadings(l, f))
	}
	for _, p := range ps {
		add(r.needReadings(l, p, subj))
	}
	if len(out) == 0 {
		return nil, first
	}
	return out, nil
}

// weakest is a stress in Pa below the strength of every casting metal.
const weakest = 10e6

// fieldReadings are the ways to understand the amount as a field of the part.
func (r *reader) fieldReadings(l *limit, f part.Field) ([]reading, *ParseError) {
	d := f.Dimension()
	if !l.amount.bare && l.amount.q.Unit.Dimension() != d {
		_, err := units.ParseAs(l.amount.plain, d, units.NoUnit)
		return nil, &ParseError{Hint: err.Error()}
	}
	if l.stated && f != part.FieldService {
		if f == part.FieldMass {
			return nil, &ParseError{Hint: "the mass of the new part is worked out by swap, nothing is searched by it; type the mass of today's part"}
		}
		return nil, &ParseError{Hint: "a limit is not a size; type the size itself"}
	}
	if !l.amount.bare {
		return []reading{{said: &part.Said{Field: f, Text: sayTo(l.amount.plain)}}}, nil
	}
	var out []reading
	us := []units.Unit{units.Preferred(d, r.system)}
	if d == units.Temperature {
		us = []units.Unit{units.DegF, units.DegC}
	}
	for _, u := range us {
		out = append(out, reading{said: &part.Said{Field: f, Text: sayTo(l.amount.plain) + " " + u.ASCII()}, assumed: true})
	}
	return out, nil
}

// sayTo writes the "and" of between -40 and 250 F as to.
func sayTo(s string) string { return strings.Replace(s, " and ", " to ", 1) }

// needReadings are the ways to understand the amount as a limit on a property.
func (r *reader) needReadings(l *limit, p props.PropertyID, subj *token) ([]reading, *ParseError) {
	var out []reading
	texts := []string{l.amount.plain}
	if l.amount.point != "" {
		texts = []string{l.amount.point, l.amount.whole}
	}
	for _, text := range texts {
		qs, err := r.amounts(l, p, text, subj)
		if err != nil {
			return nil, err
		}
		for _, q := range qs {
			n, assumed, err := r.need(l, p, q)
			if err != nil {
				return nil, err
			}
			for _, op := range directions(&n) {
				m := n
				m.Op = op
				out = append(out, reading{need: &m, assumed: assumed || l.amount.bare && q.Unit.Symbol() != ""})
			}
		}
	}
	return r.atTemperature(l, out)
}

// directions are the bounds that may be meant: one, but for a property that has no
// better side.
func directions(n *needs.Need) []needs.Op {
	if n.Op == needs.Between && !n.Limit.IsRange() {
		return []needs.Op{needs.AtLeast, needs.AtMost}
	}
	return []needs.Op{n.Op}
}

// atTemperature makes two readings of a figure at a temperature: it may be that of
// the test, or the part's in service.
func (r *reader) atTemperature(l *limit, in []reading) ([]reading, *ParseError) {
	if l.at == nil {
		return in, nil
	}
	c := units.DegC.FromSI(l.at.q.Unit.ToSI(l.at.q.Lo))
	if l.at.q.IsRange() {
		return nil, &ParseError{Word: l.at.text, Hint: "a figure is asked for at one temperature; say the range of the service apart"}
	}
	var out []reading
	for _, x := range in {
		tested := *x.need
		tested.Cond.HasAt, tested.Cond.AtC, tested.Cond.AtText = true, c, l.at.q.String()
		switch {
		case tested.Cond.RoomTemperature():
			out = append(out, x)
		case l.tested:
			out = append(out, reading{need: &tested, assumed: x.assumed})
		default:
			out = append(out, reading{need: &tested}, reading{need: x.need, said: &part.Said{Field: part.FieldService, Text: l.at.plain}})
		}
	}
	return out, nil
}

// amounts reads the text of an amount as one of the property, in each unit that
// may be meant.
func (r *reader) amounts(l *limit, p props.PropertyID, text string, subj *token) ([]units.Quantity, *ParseError) {
	q := l.amount.q
	switch {
	case p == props.ThermalExpansion && (l.amount.bare || q.Unit.Dimension() == units.Strain):
		return expansions(q), nil
	case l.amount.bare:
		return r.bareAmounts(l, p, text, subj)
	}
	q, err := units.Parse(text)
	if err == nil && !fits(p, q.Unit) {
		_, err = units.ParseAs(text, p.Info().Dimension, units.NoUnit)
	}
	var ue *units.Error
	if errors.As(err, &ue) {
		return nil, &ParseError{Word: text, Hint: expected(ue)}
	}
	return []units.Quantity{q}, nil
}

// bareAmounts reads a number without a unit: in the unit that the words before it
// or the display system have, else in one in which it is not beyond every metal.
func (r *reader) bareAmounts(l *limit, p props.PropertyID, text string, subj *token) ([]units.Quantity, *ParseError) {
	info := p.Info()
	us := []units.Unit{info.Units[r.system]}
	switch {
	case strings.Contains(key(subj.text), "resistiv"):
		return nil, &ParseError{Hint: "write the unit, such as µΩ·cm"}
	case subj.q.Unit != units.NoUnit:
		us = []units.Unit{subj.q.Unit}
	case info.Dimension == units.Temperature:
		us = []units.Unit{units.DegF, units.DegC}
	case r.isBeyond(p, l.amount.q, us[0]):
		if us = r.within(p, l.amount.q); len(us) == 0 {
			return nil, &ParseError{Hint: fmt.Sprintf("%s %s is far beyond every metal on file; write the unit", l.amount.plain, info.Units[r.system].Symbol())}
		}
	}
	var out []units.Quantity
	for _, u := range us {
		if q, err := units.ParseAs(text, u.Dimension(), u); err == nil {
			out = append(out, q)
		}
	}
	return out, nil
}

// expansions reads a coefficient that does not say per which degree: 12, 12 ppm,
// 12e-6. It may be per °F or per °C.
func expansions(q units.Quantity) []units.Quantity {
	if q.Unit.Dimension() == units.Strain {
		q.Lo, q.Hi = q.Unit.ToSI(q.Lo)*1e6, q.Unit.ToSI(q.Hi)*1e6
	} else if q.Hi < 1e-3 {
		q.Lo, q.Hi = q.Lo*1e6, q.Hi*1e6
	}
	text := strconv.FormatFloat(q.Lo, 'g', 6, 64)
	if q.IsRange() {
		text += " to " + strconv.FormatFloat(q.Hi, 'g', 6, 64)
	}
	var out []units.Quantity
	for _, u := range []units.Unit{units.MicroinInF, units.MicromMK} {
		if q, err := units.ParseAs(text, u.Dimension(), u); err == nil {
			out = append(out, q)
		}
	}
	return out
}

// isBeyond reports whether a number in the unit is more than three times the
// greatest figure on file, or less than a third of the least.
func (r *reader) isBeyond(p props.PropertyID, q units.Quantity, u units.Unit) bool {
	if p.Info().Units[units.US].Symbol() == "" || q.Lo <= 0 {
		return false
	}
	least, most := 0.0, 0.0
	for _, f := range r.catalog.Stated() {
		if f.Property != p || f.Value.Unit.Dimension() != u.Dimension() {
			continue
		}
		lo, hi := f.Value.Unit.ToSI(f.Value.Lo), f.Value.Unit.ToSI(f.Value.Hi)
		if most == 0 {
			least = lo
		}
		least, most = min(least, lo, hi), max(most, lo, hi)
	}
	v := u.ToSI(q.Lo)
	return most > 0 && (v > 3*most || v < least/3)
}

// within lists the units of the other display systems in which the number is not
// beyond every metal.
func (r *reader) within(p props.PropertyID, q units.Quantity) []units.Unit {
	var out []units.Unit
	for _, u := range p.Info().Units {
		if !r.isBeyond(p, q, u) {
			out = addOnce(out, u)
		}
	}
	return out
}

// need makes the need of an amount. The flag says whether its direction was left
// out.
func (r *reader) need(l *limit, p props.PropertyID, q units.Quantity) (needs.Need, bool, *ParseError) {
	n := needs.Need{Property: p, Limit: q, Cond: l.cond}
	if l.subject != nil {
		n.Cond = l.subject.cond.With(l.cond)
		if l.subject.q.Unit != units.NoUnit && fits(p, l.subject.q.Unit) {
			n.Limit.Unit = l.subject.q.Unit
		}
	}
	if u, ok := units.BrinellUnit(n.Cond.Load, n.Cond.Ball); ok && fits(p, u) {
		n.Limit.Unit = u
	}
	if err := impossible(l, p, q); err != nil {
		return n, false, err
	}
	switch {
	case q.IsRange():
		n.Op = needs.Between
	case l.stated && p.Info().Dimension == units.Rating && (l.op == needs.AtMost || l.op == needs.LessThan):
		n.Op = l.op.Turned() // "<= 2" is "2 or better" too: nobody asks for worse
	case l.stated:
		n.Op = l.op
	default:
		n.Op = usual(p, n.Limit.Unit)
		return n, true, nil
	}
	return n, false, nil
}

// impossible refuses an amount that limits nothing.
func impossible(l *limit, p props.PropertyID, q units.Quantity) *ParseError {
	hint := ""
	switch {
	case q.Lo <= 0 && p.Info().Dimension != units.Temperature:
		hint = "a limit at or below zero asks for nothing"
	case q.Hi > 100 && (p == props.Elongation || p == props.ReductionOfArea):
		hint = "no metal has more than 100 %"
	case q.Hi > 1e15:
		hint = "no metal has that much"
	case q.IsRange() && l.stated:
		hint = "a range needs no sign; a bound takes one value"
	default:
		return nil
	}
	return &ParseError{Word: l.amount.text, Hint: hint}
}

func example(p props.PropertyID) string {
	info := p.Info()
	if info.Dimension == units.Rating {
		return strings.ToLower(info.Name) + " at least 2"
	}
	sign := ">="
	if info.Sense == props.Less {
		sign = "<="
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s 10 %s", strings.ToLower(info.Name), sign, info.Units[units.US].ASCII()))
}

// fits reports whether the property is measured in the unit.
func fits(p props.PropertyID, u units.Unit) bool {
	d := p.Info().Dimension
	return u.Dimension() == d || d == units.HBUnstated && u.Dimension().Brinell()
}
