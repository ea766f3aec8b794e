package needs

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"alongside/props"
	"alongside/props/catalog"
	"alongside/props/spelling"
	"alongside/units"
)

var inf = math.Inf(1)

// ParseError says which word of a need was not understood and what it might
// have been.
type ParseError struct {
	Need string
	Word string // the word not understood; "" when something is missing
	Hint string
}

func (e *ParseError) Error() string {
	s := fmt.Sprintf("need %q", e.Need)
	if e.Word != "" {
		s += fmt.Sprintf(": %q is not understood", e.Word)
	}
	if e.Hint != "" {
		s += ": " + e.Hint
	}
	return s
}

// ParseAll reads needs separated by line breaks, semicolons or commas that
// are followed by a space. The error joins every *ParseError; the needs that
// could be read are returned with it.
func ParseAll(text string, c *catalog.Catalog) ([]Need, error) {
	var out []Need
	var errs []error
	for _, s := range strings.FieldsFunc(strings.ReplaceAll(text, ", ", ";"), func(r rune) bool { return r == '\n' || r == ';' || r == '\r' }) {
		if strings.TrimSpace(s) == "" {
			continue
		}
		n, err := Parse(s, c)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		out = append(out, n)
	}
	return out, errors.Join(errs...)
}

// Parse reads one need as a customer says it or a mail holds it:
//
//	yield >= 20 ksi        density < 2.8 g/cm3       UTS 30 ksi min
//	HB 70-100              process = pm or sand      family = aluminum
//	anodizing at least 2   temper = T5 or T6         electrical conductivity at least 35 %IACS
//
// Any unit of the property's dimension will do. A rating bounded by 2 means 2
// or better whichever sign is written; 1 is best. The error is a *ParseError.
func Parse(s string, c *catalog.Catalog) (Need, error) {
	text := strings.Join(strings.Fields(s), " ")
	n := Need{Text: text}
	if text == "" {
		return n, &ParseError{Need: s, Hint: `write for example "yield >= 20 ksi"`}
	}
	name, rest := splitName(text)
	switch strings.ToLower(name) {
	case "process", "processes", "made by":
		n.Kind = OfProcess
		return n, n.parseProcesses(rest)
	case "family", "metal", "base metal":
		n.Kind = OfFamily
		return n, n.parseFamilies(rest, c)
	case "temper", "tempers":
		n.Kind = OfTemper
		return n, n.parseTempers(rest)
	}
	p, ok := property(name)
	if !ok {
		hint := "name a property, process, family or temper first"
		if near := spelling.Nearest(strings.ToLower(name), names()); near != "" && name != "" {
			hint = fmt.Sprintf("did you mean %s?", near)
		}
		word := name
		if word == "" {
			word = text
		}
		return n, &ParseError{Need: text, Word: word, Hint: hint}
	}
	n.Property = p
	return n, n.parseLimit(rest)
}

// splitName parts the words that name what is bounded from the bound itself:
// the longest beginning that is a known name.
func splitName(s string) (name, rest string) {
	cut := strings.IndexAny(s, "<>=≥≤:")
	words := strings.Fields(s)
	if cut >= 0 {
		words = strings.Fields(s[:cut])
	}
	for i := len(words); i > 0; i-- {
		candidate := strings.Join(words[:i], " ")
		_, isProperty := property(candidate)
		if isProperty || isWord(candidate) {
			return candidate, strings.TrimSpace(s[endOfWords(s, i):])
		}
	}
	// Not known: the words before the first number, sign or bounding word.
	for i, w := range words {
		if i > 0 && (strings.ContainsAny(w[:1], "0123456789.~") || boundWord(w)) {
			return strings.Join(words[:i], " "), ""
		}
	}
	return strings.Join(words, " "), ""
}

func isWord(s string) bool {
	switch strings.ToLower(s) {
	case "process", "processes", "made by", "family", "metal", "base metal", "temper", "tempers":
		return true
	}
	return false
}

func boundWord(w string) bool {
	switch strings.ToLower(w) {
	case "at", "min", "max", "minimum", "maximum", "over", "under", "above", "below", "least", "most", "more", "less", "from", "between", "about", "up", "is", "of":
		return true
	}
	return false
}

// endOfWords is the offset in s behind its first n words.
func endOfWords(s string, n int) int {
	at := 0
	for range n {
		at += len(s[at:]) - len(strings.TrimLeft(s[at:], " "))
		if i := strings.IndexAny(s[at:], " <>=≥≤:"); i >= 0 {
			at += i
		} else {
			at = len(s)
		}
	}
	return at
}

// property finds a property by id, name, short name or another word for it.
func property(word string) (props.PropertyID, bool) {
	p, err := props.ResolveProperty(word)
	return p, err == nil
}

func names() []string {
	list := []string{"process", "family", "temper"}
	for _, p := range props.Properties() {
		list = append(list, p.Words()...)
	}
	sort.Strings(list)
	return list
}

// parseLimit reads the bound: a sign or words, then a quantity; or a quantity
// with min or max behind it; or a range.
func (n *Need) parseLimit(s string) error {
	info := n.Property.Info()
	s = strings.TrimSpace(strings.TrimLeft(s, ":"))
	for _, filler := range []string{"must be ", "is ", "of "} {
		s = strings.TrimPrefix(s, filler)
	}
	op, s, stated := cutOp(s)
	if t, better := strings.CutSuffix(s, " or better"); better && !stated && info.Dimension == units.Rating {
		op, s, stated = AtLeast, t, true
	}
	if s == "" {
		return &ParseError{Need: n.Text, Hint: fmt.Sprintf("give a limit, for example %q", example(n.Property))}
	}
	assume := units.NoUnit
	switch info.Dimension {
	case units.Rating, units.Ratio, units.Percent, units.HBUnstated, units.HRB, units.HRE:
		assume = info.Units[units.US]
	}
	q, err := units.ParseAs(s, info.Dimension, assume)
	if err != nil {
		var ue *units.Error
		if errors.As(err, &ue) {
			hint := "expected " + ue.Expected
			if ue.Hint != "" {
				hint = ue.Hint
			}
			return &ParseError{Need: n.Text, Word: s, Hint: hint}
		}
		return &ParseError{Need: n.Text, Word: s, Hint: err.Error()}
	}
	if !stated {
		switch q.Qual {
		case units.AtLeast:
			op, stated = AtLeast, true
		case units.AtMost:
			op, stated = AtMost, true
		case units.MoreThan:
			op, stated = MoreThan, true
		case units.LessThan:
			op, stated = LessThan, true
		}
	}
	n.Limit = q
	n.Limit.Qual = units.Exact
	switch {
	case q.Lo != q.Hi && stated:
		return &ParseError{Need: n.Text, Word: s, Hint: "a range needs no sign; a bound takes one value"}
	case q.Lo != q.Hi:
		n.Op = Between
	case stated && info.Dimension == units.Rating && (op == AtMost || op == LessThan):
		n.Op = turned(op) // "<= 2" is "2 or better" too: nobody asks for worse
	case stated:
		n.Op = op
	default:
		return &ParseError{Need: n.Text, Hint: fmt.Sprintf("say at least or at most: %q or %q", strings.Replace(n.Text, s, ">= "+s, 1), strings.Replace(n.Text, s, "<= "+s, 1))}
	}
	return nil
}

var ops = []struct {
	words string
	op    Op
}{
	{">=", AtLeast}, {"=>", AtLeast}, {"≥", AtLeast}, {"at least", AtLeast}, {"not less than", AtLeast}, {"no less than", AtLeast}, {"not under", AtLeast}, {"minimum", AtLeast}, {"min", AtLeast},
	{"<=", AtMost}, {"=<", AtMost}, {"≤", AtMost}, {"at most", AtMost}, {"not more than", AtMost}, {"no more than", AtMost}, {"not over", AtMost}, {"up to", AtMost}, {"maximum", AtMost}, {"max", AtMost},
	{">", MoreThan}, {"more than", MoreThan}, {"greater than", MoreThan}, {"over", MoreThan}, {"above", MoreThan}, {"better than", MoreThan},
	{"<", LessThan}, {"less than", LessThan}, {"under", LessThan}, {"below", LessThan},
	{"between", Between}, {"within", Between}, {"from", Between}, {"=", Between},
}

// cutOp takes a bound's sign or words off the front.
func cutOp(s string) (op Op, rest string, stated bool) {
	lower := strings.ToLower(s)
	for _, o := range ops {
		if len(lower) < len(o.words) || lower[:len(o.words)] != o.words {
			continue
		}
		rest := s[len(o.words):]
		if letter := o.words[len(o.words)-1]; letter >= 'a' && letter <= 'z' && !strings.HasPrefix(rest, " ") && !strings.HasPrefix(rest, ".") {
			continue
		}
		rest = strings.TrimLeft(rest, " .")
		if o.op == Between {
			return 0, strings.Replace(rest, " and ", " to ", 1), false
		}
		return o.op, rest, true
	}
	return 0, s, false
}

// alternatives splits "pm or sand, die" into its words.
func alternatives(s string) []string {
	s = strings.TrimLeft(s, "=: ")
	s = strings.TrimPrefix(s, "is ")
	for _, sep := range []string{" or ", "/", "|"} {
		s = strings.ReplaceAll(s, sep, ",")
	}
	var out []string
	for _, w := range strings.Split(s, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}

func (n *Need) parseProcesses(s string) error {
	for _, w := range alternatives(s) {
		p, ok := props.ParseProcess(strings.ToLower(w))
		if !ok {
			p, ok = props.ParseProcess(strings.ToLower(strings.TrimSuffix(strings.TrimSuffix(strings.ReplaceAll(strings.ToLower(w), "mould", "mold"), " casting"), " cast")))
		}
		if !ok {
			hint := "use one of: " + strings.Join(props.ProcessWords(), ", ")
			if near := spelling.Nearest(strings.ToLower(w), props.ProcessWords()); near != "" {
				hint = fmt.Sprintf("did you mean %s?", near)
			}
			return &ParseError{Need: n.Text, Word: w, Hint: hint}
		}
		n.Processes = append(n.Processes, p)
	}
	if len(n.Processes) == 0 {
		return &ParseError{Need: n.Text, Hint: `name a process, for example "process = pm or sand"`}
	}
	return nil
}

func (n *Need) parseFamilies(s string, c *catalog.Catalog) error {
	for _, w := range alternatives(s) {
		ids := families(strings.ToLower(w), c)
		if len(ids) == 0 {
			var known []string
			for _, f := range c.Families {
				known = append(known, f.ID)
			}
			hint := "use one of: " + strings.Join(known, ", ")
			if near := spelling.Nearest(strings.ToLower(w), known); near != "" {
				hint = fmt.Sprintf("did you mean %s?", near)
			}
			return &ParseError{Need: n.Text, Word: w, Hint: hint}
		}
		for _, id := range ids {
			if !slices.Contains(n.Families, id) {
				n.Families = append(n.Families, id)
			}
		}
	}
	if len(n.Families) == 0 {
		return &ParseError{Need: n.Text, Hint: `name a family, for example "family = aluminum"`}
	}
	return nil
}

// families are those with this id, name or word.
func families(w string, c *catalog.Catalog) []string {
	var ids []string
	for _, f := range c.Families {
		match := w == f.ID || w == strings.ReplaceAll(f.ID, "-", " ") || w == strings.ToLower(f.Name)
		for _, word := range f.Words {
			match = match || w == strings.ToLower(word)
		}
		if match {
			ids = append(ids, f.ID)
		}
	}
	return ids
}

func (n *Need) parseTempers(s string) error {
	for _, w := range alternatives(s) {
		w = strings.ToUpper(w)
		if w == "AS CAST" {
			w = ""
		}
		n.Tempers = append(n.Tempers, w)
	}
	if len(n.Tempers) == 0 {
		return &ParseError{Need: n.Text, Hint: `name a temper, for example "temper = T5 or T6"`}
	}
	return nil
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
