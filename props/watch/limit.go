package watch

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/record"
	"alongside/props/spelling"
	"alongside/units"
)

// limit is one line of a rule's "when": a figure held against a value, against
// the baseline or against the mate.
//
//	elongation < 3 %
//	least elongation < 6 %
//	elastic_modulus < 0.9 × baseline
//	thermal_expansion > 1.1 × mate
//	least yield_strength < 1 × baseline tensile_strength
//	hardness_brinell unlike baseline
//	yield_strength absent
//	baseline yield_strength absent
//	service max > 250 °F
//	service min < 0 °F
//	wall > 1 in
//	pH > 8.5
//	anodic gap > 0.25 V
//	content Mg > 3 %
//	content alloying > 7.5 %
//	least Pb > 0.1 %
//	most Pb > 0.25 %
//
// With "least" a property is judged by the specified minimum where one is on
// file. "alloying" is the sum of the elements that the composition asks for.
type limit struct {
	subject  subject
	property props.PropertyID
	least    bool // by the specified minimum where there is one
	element  string
	share    string // of the element: content, least, most
	op       string // < > <= >= unlike absent
	times    float64
	other    string           // baseline, mate: times × its figure
	against  props.PropertyID // of the other
	value    units.Quantity   // when other is ""
	number   float64          // anodic gap in volts, pH
}

type subject uint8

const (
	ofPin subject = iota
	ofBaseline
	serviceMax
	serviceMin
	wall
	anodicGap
	acid
	content
)

var (
	comparison = spelling.Pattern{Expr: `^(.+?)\s*(<=|>=|<|>)\s*(.+)$`}
	multiple   = spelling.Pattern{Expr: `^([0-9.]+)\s*×\s*(baseline|mate)(?: ([a-z_]+))?$`}
	elementOf  = spelling.Pattern{Expr: `^(content|least|most) ([A-Z][a-z]?|alloying)$`}
)

const limitForms = `write it like one of: "elongation < 3 %", "least elongation < 6 %", "density > 1.2 × baseline", "thermal_expansion > 1.1 × mate", "hardness_brinell unlike baseline", "yield_strength absent", "service max > 250 °F", "wall > 1 in", "pH > 8.5", "anodic gap > 0.25 V", "content Mg > 3 %"`

// readLimit reads one line of "when". Mistakes are reported under that key.
func readLimit(r *record.Record, text string) (limit, bool) {
	var l limit
	if word, ok := strings.CutSuffix(text, " absent"); ok {
		l.op = "absent"
		if after, ok := strings.CutPrefix(word, "baseline "); ok {
			l.subject, word = ofBaseline, after
		}
		return l, l.named(r, word)
	}
	if word, ok := strings.CutSuffix(text, " unlike baseline"); ok {
		l.op = "unlike"
		return l, l.named(r, word)
	}
	m := comparison.Regexp().FindStringSubmatch(text)
	if m == nil {
		r.Fail("when", fmt.Sprintf("%q is not a limit", text), limitForms)
		return l, false
	}
	left, right := m[1], m[3]
	l.op = m[2]
	read := func(d units.Dimension, example string) bool {
		q, ok := r.Quantity("when", right, d, units.NoUnit, example)
		l.value = q
		return ok
	}
	switch {
	case left == "service max":
		l.subject = serviceMax
		return l, read(units.Temperature, "250 °F")
	case left == "service min":
		l.subject = serviceMin
		return l, read(units.Temperature, "0 °F")
	case left == "wall":
		l.subject = wall
		return l, read(units.Length, "1 in")
	case left == "anodic gap":
		l.subject = anodicGap
		volts, ok := strings.CutSuffix(right, " V")
		return l, l.plain(r, volts, ok, math.Inf(1), "a voltage", `write "anodic gap > 0.25 V"`)
	case left == "pH":
		l.subject = acid
		return l, l.plain(r, right, true, 14, "a pH", `write "pH > 8.5"`)
	case elementOf.Regexp().MatchString(left):
		found := elementOf.Regexp().FindStringSubmatch(left)
		l.subject, l.share, l.element = content, found[1], found[2]
		return l, read(units.Percent, "3 %")
	}
	if left, l.least = strings.CutPrefix(left, "least "); !l.named(r, left) {
		return l, false
	}
	if m := multiple.Regexp().FindStringSubmatch(right); m != nil {
		return l, l.multipleOf(r, m)
	}
	return l, read(l.property.Info().Dimension, "12.5 "+l.property.Info().Units[units.US].Symbol())
}

// plain reads a number from 0 to most.
func (l *limit) plain(r *record.Record, text string, ok bool, most float64, what, remedy string) bool {
	v, err := strconv.ParseFloat(text, 64)
	if ok = ok && err == nil && v >= 0 && v <= most; !ok {
		r.Fail("when", fmt.Sprintf("%q is not %s", text, what), remedy)
	}
	l.number = v
	return ok
}

// multipleOf reads "0.9 × baseline" and "1 × baseline tensile_strength", taken
// apart by the pattern multiple.
func (l *limit) multipleOf(r *record.Record, m []string) bool {
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil || !(v > 0) {
		r.Fail("when", fmt.Sprintf("%q is not a number", m[1]), `write "0.9 × baseline"`)
		return false
	}
	l.times, l.other, l.against = v, m[2], l.property
	if m[3] == "" {
		return true
	}
	var other limit
	ok := other.named(r, m[3])
	l.against = other.property
	return ok
}

func (l *limit) named(r *record.Record, id string) bool {
	p, ok := props.PropertyNamed(id)
	if !ok {
		var ids []string
		for _, p := range props.Properties() {
			ids = append(ids, p.String())
		}
		r.Fail("when", fmt.Sprintf("%q is not a property", id), record.DidYouMean(id, ids))
	}
	l.property = p
	return ok
}

// ofPart reports whether the limit is on something that was said of the part.
func (l limit) ofPart() bool {
	return l.subject == serviceMax || l.subject == serviceMin || l.subject == wall || l.subject == acid || l.other == "mate"
}

// beyond compares lo..hi with a limit, so that a range that reaches over it
// counts.
func (l *limit) beyond(lo, hi, at float64) bool {
	switch l.op {
	case "<":
		return lo < at
	case "<=":
		return lo <= at
	case ">":
		return hi > at
	}
	return hi >= at
}

// crossed tells whether lo to hi is beyond at, and says so: what it is and, behind the
// side of the limit, the limit.
func (l *limit) crossed(lo, hi, at float64, limit any, what string, args ...any) (why string, is answer) {
	if !l.beyond(lo, hi, at) {
		return "", no
	}
	return fmt.Sprintf(what, args...) + fmt.Sprintf(" %s %v", l.side(), limit), yes
}

// name is the property in a sentence.
func (l *limit) name() string { return props.InSentence(l.property.Info().Name) }

// side is the word for the side of the limit: under, above.
func (l *limit) side() string {
	switch l.op {
	case "<":
		return "under"
	case "<=":
		return "at or under"
	case ">":
		return "above"
	}
	return "at or above"
}
