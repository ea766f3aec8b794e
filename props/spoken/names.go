package spoken

import (
	"slices"
	"strings"

	"alongside/props"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/spelling"
	"alongside/units"
)

// names reads the processes, families or tempers from i on: one, or several with
// "or" between them, behind "process =" or alone.
func (r *reader) names(ts []token, i, from int) int {
	n := needs.Need{Kind: ts[i].kind, Not: i > from}
	headed := ts[i].role == head
	if headed {
		for i++; i < len(ts) && (ts[i].role == bound && ts[i].op == needs.Between || ts[i].role == negation); i++ {
			n.Not = n.Not || ts[i].role == negation
		}
	}
	i, known := r.listed(ts, i, &n, headed)
	switch {
	case !known:
		r.refuse(r.span(ts[from:]), &ParseError{Word: ts[i].text, Hint: r.hint(n.Kind, ts[i].text)})
		return len(ts)
	case n.Kind == needs.OfFamily && i < len(ts) && mateNoun(ts[i]):
		r.refuse(r.span(ts[from:i+1]), &ParseError{Hint: "is joined to the part: name its grade, such as \"on 1045\""})
		return i + 1
	case empty(&n):
		r.refuse(r.span(ts[from:i]), &ParseError{Hint: "name a " + n.Kind.String() + ", for example " + exampleOf[n.Kind]})
	default:
		r.name(r.span(ts[from:i]), n, ts[from])
	}
	return i
}

// listed adds the names from i on and returns where they end. It is false at a word
// that is no name where one must stand: behind "process =". A branch a kind of word.
func (r *reader) listed(ts []token, i int, n *needs.Need, headed bool) (end int, known bool) {
	for wanted := true; i < len(ts); i++ {
		m := ts[i].meaning
		if upper := strings.ToUpper(ts[i].text); headed && n.Kind == needs.OfTemper && r.isTemper(upper) {
			m = meaning{role: named, kind: needs.OfTemper, temper: upper} // F alone
		}
		switch {
		case wanted && m.role == named && m.kind == n.Kind:
			add(n, m)
			wanted = false
		case wanted && headed:
			return i, false
		case m.role == either && i+1 < len(ts) && (headed || ts[i+1].role == named && ts[i+1].kind == n.Kind):
			wanted = true
		default:
			return i, true
		}
	}
	return i, true
}

// mateNoun reports whether a word is of what is joined to the part: a steel shaft.
func mateNoun(t token) bool {
	switch strings.TrimSuffix(key(t.text), "s") {
	case "shaft", "bolt", "screw", "insert", "stud", "sleeve", "pin", "axle", "spindle":
		return true
	}
	return false
}

var exampleOf = [...]string{needs.OfProcess: `"process = pm or sand"`, needs.OfFamily: `"family = aluminum"`, needs.OfTemper: `"temper = T5 or T6"`}

// add adds what a word names to what will do.
func add(n *needs.Need, m meaning) {
	switch n.Kind {
	case needs.OfProcess:
		n.Processes = addOnce(n.Processes, m.process)
	case needs.OfFamily:
		for _, id := range m.families {
			n.Families = addOnce(n.Families, id)
		}
	case needs.OfTemper:
		n.Tempers = addOnce(n.Tempers, m.temper)
	}
}

func addOnce[T comparable](list []T, v T) []T {
	if slices.Contains(list, v) {
		return list
	}
	return append(list, v)
}

func empty(n *needs.Need) bool { return len(n.Processes)+len(n.Families)+len(n.Tempers) == 0 }

// name takes a need on names. One that follows another of its kind behind a comma
// adds to it, "no zinc and magnesium" excludes both, and "any iron but gray" takes
// from what was named before: a branch each.
func (r *reader) name(text string, n needs.Need, first token) {
	for _, t := range n.Tempers {
		if t != "" && !r.tempers[t] && first.role != head {
			r.refuse(text, &ParseError{Hint: "no material on file has the temper " + t})
			return
		}
	}
	before := r.before(n.Kind)
	if before == nil {
		r.take(text, n, false)
		return
	}
	switch {
	case r.joined == "and" && before.Need.Not && !n.Not:
		n.Not = true
		r.take(text, n, true)
		return
	case !before.Need.Not && (n.Not || r.joined == "but") && within(&n, before.Need):
		remove(before.Need, &n)
		r.extend(before, text)
		return
	case !before.Need.Not && !n.Not && r.joined == "" && r.brk == ',' && first.role != head:
		all := before.Need.String()
		for _, m := range meanings(&n) {
			add(before.Need, m)
		}
		if before.Need.String() != all {
			r.extend(before, text)
		}
		return
	}
	r.take(text, n, false)
}

// before is the piece before where it is a need of the kind; else nil.
func (r *reader) before(k needs.Kind) *Piece {
	if len(r.out) == 0 {
		return nil
	}
	p := &r.out[len(r.out)-1]
	if p.Need == nil || p.Need.Kind != k {
		return nil
	}
	return p
}

// extend renews the text of a piece that a second one was added to.
func (r *reader) extend(p *Piece, text string) {
	p.Text += ", " + text
	p.Need.Text = p.Need.String()
	p.ReadAs = p.Need.Text
}

// meanings is the reverse of add.
func meanings(n *needs.Need) []meaning {
	var list []meaning
	for _, p := range n.Processes {
		list = append(list, meaning{process: p})
	}
	for _, f := range n.Families {
		list = append(list, meaning{families: []string{f}})
	}
	for _, t := range n.Tempers {
		list = append(list, meaning{temper: t})
	}
	return list
}

// within reports whether all that n names is a part of what o names.
func within(n, o *needs.Need) bool {
	return len(n.Families) < len(o.Families) && !slices.ContainsFunc(n.Families, func(f string) bool { return !slices.Contains(o.Families, f) }) && n.Kind == needs.OfFamily
}

func remove(n, o *needs.Need) {
	n.Families = slices.DeleteFunc(slices.Clone(n.Families), func(f string) bool { return slices.Contains(o.Families, f) })
}

// hint lists what may be named, or the nearest of it.
func (r *reader) hint(k needs.Kind, typed string) string {
	var known []string
	switch k {
	case needs.OfProcess:
		known = props.ProcessWords()
	case needs.OfFamily:
		for _, f := range r.catalog.Families {
			known = append(known, f.ID)
		}
	case needs.OfTemper:
		return "write for example " + exampleOf[k]
	}
	if near := spelling.Nearest(key(typed), known); near != "" {
		return "did you mean " + near + "?"
	}
	return "use one of: " + strings.Join(known, ", ")
}

// link passes over "of" and "in"; behind "made of" a designation is the mate's.
func (r *reader) link(ts []token, i int) int {
	if strings.EqualFold(ts[i].text, "made of") && i+1 < len(ts) && ts[i+1].role != named {
		return r.mate(ts, i, false)
	}
	if i+2 < len(ts) && ts[i+1].role == quantity && ts[i+1].q.Unit.Dimension() == units.Temperature && strings.HasSuffix(key(ts[i].text), "at") {
		return r.limitOf(ts, i+2, i, limit{at: &ts[i+1], tested: !strings.EqualFold(ts[i].text, "at")}) // at 400 F it must carry 20 ksi
	}
	return i + 1
}

// designation is the end of the words from i on that can name a material.
func designation(ts []token, i int) int {
	for i < len(ts) && (ts[i].role == unknown || ts[i].role == named || ts[i].role == quantity && ts[i].bare || isFit(ts[i])) {
		i++
	}
	return i
}

// isFit reports whether the word is shaft or bore, which belongs to the mate.
func isFit(t token) bool { return t.role == subject && slices.Contains(t.fields, part.FieldFit) }

// mate reads what the part runs on or is joined to.
func (r *reader) mate(ts []token, i int, neg bool) int {
	end := designation(ts, i+1)
	for end > i+1 && isFit(ts[end-1]) {
		end--
	}
	next := end
	for next < len(ts) && isFit(ts[next]) {
		next++
	}
	if end == i+1 && next == end && end < len(ts) {
		return end // on plus something that is read by itself
	}
	if end == i+1 || neg {
		r.unread(ts[i:next])
		return next
	}
	r.tell(r.span(ts[i:next]), part.Said{Field: part.FieldMate, Text: r.span(ts[i+1 : end])}, false)
	return next
}

// ofUnit is what a quantity in the unit can be of where nothing is said.
func ofUnit(u units.Unit) ([]props.PropertyID, []part.Field) {
	switch u.Dimension() {
	case units.Stress:
		if u == units.Mpsi || u == units.GPa {
			return []props.PropertyID{props.ElasticModulus}, nil
		}
		return bareStress, nil
	case units.Percent:
		return barePercent, nil
	case units.Energy:
		return bareImpact, nil
	case units.Mass:
		return nil, []part.Field{part.FieldMass}
	case units.Volume:
		return nil, []part.Field{part.FieldVolume}
	case units.Length:
		return nil, []part.Field{part.FieldWall, part.FieldLength}
	case units.Temperature:
		return nil, []part.Field{part.FieldService}
	case units.Time:
		return nil, []part.Field{part.FieldHours}
	case units.Strain, units.Ratio, units.NoDimension, units.Rating, units.Force:
		return nil, nil
	}
	for _, p := range props.Properties() {
		if fits(p, u) {
			return []props.PropertyID{p}, nil
		}
	}
	return nil, nil
}
