package catalog

import (
	"fmt"
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// symbols are those of the elements up to plutonium (IUPAC periodic table).
const symbols = " H He Li Be B C N O F Ne Na Mg Al Si P S Cl Ar K Ca Sc Ti V Cr Mn Fe Co Ni Cu Zn Ga Ge As Se Br Kr Rb Sr Y Zr Nb Mo Tc Ru Rh Pd Ag Cd In Sn Sb Te I Xe Cs Ba La Ce Pr Nd Pm Sm Eu Gd Tb Dy Ho Er Tm Yb Lu Hf Ta W Re Os Ir Pt Au Hg Tl Pb Bi Po At Rn Fr Ra Ac Th Pa U Np Pu "

func isElement(s string) bool { return strings.Contains(symbols, " "+s+" ") }

func (l *loader) family(r *record.Record) {
	f := &props.Family{ID: r.Text("id", true)}
	r.Label = f.ID
	f.Name, f.Words = r.Text("name", true), r.Texts("words")
	f.Base, f.Group = r.Text("base", false), r.Text("group", false)
	if f.Base != "" && !isElement(f.Base) {
		r.Fail("base", fmt.Sprintf("%q is not the symbol of an element", f.Base), "write it like Al or Fe")
	}
	f.Bands = l.bands(r)
	f.None = l.none(r)
	for _, t := range r.Tables("figures") {
		f.Stated = append(f.Stated, l.inherited(t, t.Texts("classes"))...)
	}
	for i := range f.Stated {
		f.Stated[i].Family = true
	}
	r.Finish()
	l.claim(r, "family "+f.ID, f.ID)
	if l.families[f.ID] == nil {
		l.families[f.ID] = f
		l.cat.Families = append(l.cat.Families, f)
	}
	for _, g := range l.cat.Families {
		switch {
		case f.Group != "" && f.Group == g.ID:
			r.Fail("group", fmt.Sprintf("%q is the id of a family", f.Group), "give the group a word that is no family's id")
		case f.ID != "" && f.ID == g.Group:
			r.Fail("id", fmt.Sprintf("%q is the group of %s", f.ID, g.ID), "give the family another id")
		}
	}
}

// classesOf are the classes that the figures of a family name.
func classesOf(f *props.Family) []string {
	var out []string
	for i := range f.Stated {
		out = append(out, f.Stated[i].Classes...)
	}
	return out
}

// bandUnits are the keys of a [[family.bands]] block, each with a unit that
// its value may have.
var bandUnits = map[string]units.Unit{
	props.ElasticModulus.String(): units.Mpsi, props.Density.String(): units.GPerCM3,
	props.PoissonRatio.String(): units.One, props.ThermalExpansion.String(): units.MicromMK,
	props.TensilePerBrinell: units.PSI, props.CompressivePerTensile: units.One, props.DensityPerMixture: units.One,
}

func (l *loader) bands(r *record.Record) []props.Band {
	var out []props.Band
	for _, t := range r.Tables("bands") {
		from, before := t.Text("from", true), len(*l.errs)+len(out)
		for _, key := range t.Rest() {
			unit, ok := bandUnits[key]
			if !ok {
				t.Fail(key, "takes no band", record.DidYouMean(key, keys(bandUnits)))
				t.Value(key)
				continue
			}
			for _, s := range t.Texts(key) {
				b, ok := band(t, key, s, unit)
				if !ok {
					continue
				}
				if slices.ContainsFunc(out, func(o props.Band) bool { return o.Of == b.Of && o.Load == b.Load }) {
					t.Fail(key, "has a band already", "delete one of the two")
				}
				b.From = from
				out = append(out, b)
			}
		}
		if len(*l.errs)+len(out) == before {
			t.Fail("", "the block holds no band", "add a property with its lower and upper end, or delete the block")
		}
	}
	return out
}

// band reads "LOWER–UPPER UNIT", for TensilePerBrinell with the load of the
// test: "330–500 psi; 3000 kgf/10 mm".
func band(r *record.Record, key, s string, unit units.Unit) (b props.Band, ok bool) {
	parts := splitConditions(s)
	example := strings.TrimSpace("1.5–2.5 " + unit.Symbol())
	if len(parts) == 0 {
		r.Fail(key, "has no value", fmt.Sprintf("write the lower and the upper end, e.g. %q", example))
		return b, false
	}
	var load props.Conditions
	for _, c := range parts[1:] {
		if key != props.TensilePerBrinell || !load.Add(c) || load != (props.Conditions{Load: load.Load, Ball: load.Ball}) {
			r.Fail(key, fmt.Sprintf("%q does not belong to a band", c), `write the load with tensile_per_brinell, such as "500 kgf/10 mm", and nothing else`)
			return b, false
		}
	}
	assume := units.NoUnit
	if unit == units.One {
		assume = unit
	}
	q, ok := r.Quantity(key, parts[0], unit.Dimension(), assume, example)
	if ok && (!q.IsRange() || q.Qual != units.Exact) {
		r.Fail(key, fmt.Sprintf("%q is not a range", parts[0]), fmt.Sprintf("write the lower and the upper end, e.g. %q", example))
		ok = false
	}
	return props.Band{Of: key, Value: q, Load: load.Load}, ok
}
