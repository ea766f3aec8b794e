// Package spoken reads what a customer says, or what stands in a mail or on a drawing,
// as needs and as fields of the part. What can be meant in two ways is never decided.
package spoken

import (
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/needs"
	"alongside/props/part"
	"alongside/props/spelling"
	"alongside/units"
)

// Read reads what a customer says, or a mail or a drawing holds, of the metal and
// of the part:
//
//	yield at least 20 ksi, 3 % elongation, under 0.11 lb/in3, permanent mold
//	Rp0.2 min. 180 MPa; not zinc; 20 % lighter than bronze; as strong as class 30
//	4.2 lb, 3/8 wall, plate, -40 to 250 F, on 1045
//
// A property may be left out where the unit says it. A direction left out is the
// usual one of the property, a unit left out that of the display system; the piece
// then says what it was read as. A piece with two readings is not taken: its error
// names both. Unknown words outside of a limit are pieces by themselves; inside of
// one they spoil it. A rating bounded by 2 means 2 or better whichever sign is
// written; 1 is best.
//
// "class 30 today" names the metal that "lighter" and "stronger than today" are
// measured against; baseline is that metal where the text names none, nil for none.
func Read(text string, c *catalog.Catalog, system units.System, baseline *props.Material) Said {
	said := read(text, c, system, baseline)
	if m := said.Today(); m != nil && m != baseline {
		return read(text, c, system, m) // it may be named behind what is measured against it
	}
	return said
}

func read(text string, c *catalog.Catalog, system units.System, now *props.Material) Said {
	text = inDigits(text)
	r := &reader{text: text, catalog: c, system: system, now: now, families: familyWords(c), tempers: map[string]bool{}}
	for _, m := range c.Materials {
		r.tempers[strings.ToUpper(m.Temper)] = true
	}
	tokens := r.tokens()
	for len(tokens) > 0 {
		n := clauseEnd(tokens)
		r.clause(tokens[:n])
		for r.joined = ""; n < len(tokens) && tokens[n].role == breaks; n++ {
			r.joined = key(tokens[n].text)
		}
		tokens = tokens[n:]
	}
	if len(r.out) == 0 && strings.TrimSpace(text) != "" {
		r.refuse(strings.TrimSpace(text), &ParseError{Word: strings.TrimSpace(text)})
	}
	return Said{r.out}
}

// clauseEnd is how many tokens belong to the first clause.
func clauseEnd(tokens []token) int {
	for i, t := range tokens {
		if t.role == either { // zinc, or magnesium
			continue
		}
		split := t.brk != 0 && t.brk != ':' && !t.inside
		if t.brk == ':' && i > 0 {
			split = tokens[i-1].role == unknown || tokens[i-1].role == quantity // NOTE 3:
		}
		if i > 0 && split || t.role == breaks {
			return i
		}
	}
	return len(tokens)
}

// reader is the state of reading one text.
type reader struct {
	text     string
	catalog  *catalog.Catalog
	system   units.System
	families map[string]meaning
	tempers  map[string]bool
	now      *props.Material // today's metal
	than     string          // the metal that was measured against last
	out      []Piece
	joined   string // the word before the clause: and, but; "" behind a comma
	brk      byte   // what stands before the clause
	last     *token // the subject of the limit before in this clause
}

func (r *reader) isTemper(upper string) bool {
	return upper != "" && (r.tempers[upper] || temperShape(upper))
}

// temperShape reports whether a word looks like the temper of a heat-treated
// casting.
func temperShape(upper string) bool {
	digits, ok := strings.CutPrefix(upper, "T")
	return ok && digits != "" && len(digits) < 4 && strings.Trim(digits, "0123456789") == ""
}

// clause reads the tokens between two breaks.
func (r *reader) clause(in []token) {
	r.last = nil
	if len(in) > 0 {
		r.brk = in[0].brk
	}
	var ts []token
	for _, t := range in {
		if t.role != filler {
			ts = append(ts, t)
		}
	}
	ts = r.today(in, ts)
	// What depends on a condition or a choice is refused as a whole.
	first := len(r.out)
	for i, from := 0, -1; i < len(ts); {
		if from < 0 {
			from = i
		}
		switch ts[i].role {
		case negation:
			if i++; i == len(ts) {
				r.unread(ts[from:])
			}
			continue
		case bars:
			r.out = r.out[:first]
			r.unread(ts)
			return
		case either:
			r.out = r.out[:first]
			r.refuse(r.span(ts), &ParseError{Hint: "one of two limits cannot be asked for; search for each"})
			return
		}
		i, from = r.item(ts, i, from), -1
	}
}

// item reads what begins at i, behind a negation that begins at from, and returns
// where the reading goes on.
func (r *reader) item(ts []token, i, from int) int {
	next, neg := i+1, i > from
	if !neg {
		if end, ok := r.solution(ts, i); ok {
			return end
		}
	}
	if end, ok := r.multiple(ts, i, from); ok { // 20 % lighter than bronze
		return end
	}
	switch t := ts[i]; t.role {
	case named, head:
		return r.names(ts, i, from)
	case rated:
		r.rated(ts[from:next], neg)
	case said:
		r.saidOf(ts[from:next], neg)
	case refused:
		r.refuse(r.span(ts[from:]), &ParseError{Hint: t.reason})
		return len(ts)
	case mate:
		return r.mate(ts, i, neg)
	case against:
		return r.compared(ts, i, from, limit{not: neg})
	case current: // one too many
		return next
	case link:
		return r.link(ts, i)
	case subject, bound, quantity, condition, about:
		return r.limit(ts, i, from)
	default:
		return r.strange(ts, i, from)
	}
	return next
}

// span is the text that tokens cover.
func (r *reader) span(ts []token) string {
	if len(ts) == 0 {
		return ""
	}
	end := ts[len(ts)-1].to
	s := r.text[ts[0].from:end]
	if strings.Count(s, "(") > strings.Count(s, ")") && strings.HasPrefix(r.text[end:], ")") {
		s += ")"
	}
	return strings.Join(strings.Fields(s), " ")
}

func (r *reader) refuse(text string, e *ParseError) {
	e.Need = text
	r.out = append(r.out, Piece{Text: text, Err: e})
}

func (r *reader) unread(ts []token) {
	r.refuse(r.span(ts), &ParseError{Word: r.span(ts)})
}

// take adds a need; readAs tells to show what it was read as. It is false where the
// need is there already.
func (r *reader) take(text string, n needs.Need, readAs bool) bool {
	for _, p := range r.out {
		if p.Need != nil && p.Need.String() == n.String() {
			return false
		}
	}
	n.Text = text
	p := Piece{Text: text, Need: &n}
	if readAs {
		n.Text = n.String() // the text alone would be read otherwise in other units
		p.ReadAs = n.Text
	}
	r.out = append(r.out, p)
	return true
}

// tell adds a field of the part, or the reason why it cannot be.
func (r *reader) tell(text string, s part.Said, readAs bool) {
	var p part.Part
	if err := p.Set(r.catalog, s.Field, s.Text); err != nil {
		r.refuse(text, &ParseError{Hint: err.Error()})
		return
	}
	for _, before := range r.out {
		b := before.Said
		switch {
		case b == nil || b.Field != s.Field || strings.EqualFold(b.Text, s.Text):
		case s.Field == part.FieldMedium:
			s.Text = b.Text + ", " + s.Text
		case s.Field != part.FieldWith && s.Field != part.FieldPrice:
			r.refuse(text, &ParseError{Hint: "the " + s.Field.String() + " is said already: " + b.Text + "; say one of the two"})
			return
		}
	}
	piece := Piece{Text: text, Said: &s}
	if got := p.Get(s.Field); readAs || s.Field == part.FieldMate && !strings.EqualFold(got, s.Text) {
		piece.ReadAs = s.Field.String() + " " + got
	}
	r.out = append(r.out, piece)
}

// strange passes over words that are not known. Before a bound or a quantity that
// does not speak for itself they name what it is of, and spoil it.
func (r *reader) strange(ts []token, i, from int) int {
	end := i + 1
	for end < len(ts) && ts[end].role == unknown {
		end++
	}
	run := r.span(ts[from:end])
	if end < len(ts) && (ts[end].role == bound || ts[end].role == quantity && !r.ofPart(ts[end])) {
		end = len(ts)
	}
	e := &ParseError{Word: run}
	whole := r.span(ts[from:designation(ts, i)])
	m, several := r.catalog.Named(whole)
	switch {
	case m != nil:
		r.refuse(whole, &ParseError{Hint: "names " + m.Name() + ", which is no limit: pin it, or say \"" + whole + " today\" where the part is made of it"})
		return designation(ts, i)
	case several && strings.ContainsAny(run, "0123456789"):
		e.Hint = "it is a metal, no limit: pin it"
		r.refuse(r.span(ts[from:end]), e)
		return end
	}
	if near := spelling.Nearest(key(run), knownWords()); near != "" && near[0] == key(run)[0] {
		e.Hint = "did you mean " + near + "?"
	}
	r.refuse(r.span(ts[from:end]), e)
	return end
}

// ofPart reports whether a quantity by its unit is of the part.
func (r *reader) ofPart(t token) bool {
	_, fields := ofUnit(t.q.Unit)
	return !t.bare && len(fields) > 0
}

// rated reads an adjective as a rating in the better half of its scale.
func (r *reader) rated(ts []token, neg bool) {
	t := ts[len(ts)-1]
	if neg {
		r.unread(ts)
		return
	}
	limit := units.Quantity{Lo: usableRating, Hi: usableRating, Unit: units.RatingNumber}
	r.take(r.span(ts), needs.Need{Property: t.props[0], Op: needs.AtLeast, Limit: limit}, true)
	for _, s := range t.said {
		r.tell(r.span(ts), s, false)
	}
}

// solution takes a medium with its share or its temperature: 50 % glycol; glycol,
// 50/50; water at 180 F. It returns where the reading goes on. A branch a form.
func (r *reader) solution(ts []token, i int) (next int, ok bool) {
	medium := func(t token) bool { return t.role == said && t.said[0].Field == part.FieldMedium }
	share := func(t token) bool { return t.role == quantity && t.q.Unit == units.Pct || t.text == "50/50" }
	next = i + 2
	if next > len(ts) {
		return i, false
	}
	var text string
	switch name, at := strings.CutSuffix(key(ts[i].text), " at"); {
	case share(ts[i]) && medium(ts[i+1]), medium(ts[i]) && share(ts[i+1]) && next == len(ts):
		text = r.span(ts[i:next])
	case medium(ts[i]):
		if !at && strings.EqualFold(ts[i+1].text, "at") && next < len(ts) {
			at = true
			next++
		}
		of := ts[next-1]
		if !at || of.role != quantity || of.q.Unit.Dimension() != units.Temperature {
			return i, false
		}
		text = strings.TrimPrefix(strings.TrimPrefix(name, "in "), "of ") + " at " + of.plain
	default:
		return i, false
	}
	r.tell(r.span(ts[i:next]), part.Said{Field: part.FieldMedium, Text: text}, false)
	return next, true
}

func (r *reader) saidOf(ts []token, neg bool) {
	if neg {
		r.refuse(r.span(ts), &ParseError{Hint: "only what the part has is noted"})
		return
	}
	for _, s := range ts[len(ts)-1].said {
		r.tell(r.span(ts), s, false)
	}
}
