package foundry

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"alongside/props/record"
	"alongside/props/spelling"
	"alongside/units"
)

// examples show how the value of a card line is written.
var examples = map[units.Dimension]string{units.Length: "0.125 in", units.Mass: "5–50 kg", units.Ratio: "2–3", units.Strain: "0.125 in/ft"}

func (l *loader) item(r *record.Record) {
	it := item{Scope: l.Scope(r, "families", "")}
	word := r.Text("kind", true)
	r.Label = word
	kind, ok := kindNamed(word)
	if !ok && word != "" {
		r.Fail("kind", fmt.Sprintf("%q is not a line of the process card", word), record.DidYouMean(word, kindIDs()))
	}
	it.Kind = kind
	it.Method, it.Condition, it.Text = r.Text("method", false), r.Text("condition", false), r.Text("text", false)
	it.Unit = kindInfo[kind].unit
	if !r.Absent("value") {
		d := kindInfo[kind].dimension
		if d == units.NoDimension {
			r.Fail("value", fmt.Sprintf("%s is told in words", word), `write text = "…"`)
		}
		it.Value, it.HasValue = l.quantity(r, "value", d, examples[d]), true
		it.Printed = r.Text("value", true)
		if it.Value.Lo < 0 {
			r.Fail("value", "cannot be negative", "check it against the source")
		}
	} else if it.Text == "" {
		r.Fail("value", "is missing, and there is no text", `add value = "…" or text = "…"`)
	}
	r.Value("value")
	it.Particular = it.named()
	it.Cite = l.end(r)
	l.book.items = append(l.book.items, &it)
}

func kindNamed(id string) (Kind, bool) {
	for k := range kindCount {
		if k.ID() == id && k != Grade && k != Linear && k != Allowance {
			return k, true
		}
	}
	return 0, false
}

func kindIDs() []string {
	var ids []string
	for k := range kindCount {
		if _, ok := kindNamed(k.ID()); ok {
			ids = append(ids, k.ID())
		}
	}
	return ids
}

// rmaLetters are the machining allowance grades of ISO 8062-3; there is no I.
const rmaLetters = "ABCDEFGHJK"

// gradeNumber reads one grade: the number of a DCTG or the letter of an RMAG.
func gradeNumber(kind Kind, s string) (int, bool) {
	if kind == Allowance {
		i := strings.Index(rmaLetters, s)
		return i + 1, len(s) == 1 && i >= 0
	}
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 1 && n <= 16
}

// gradeRange reads "7–9", "F–H" or a single grade.
func gradeRange(r *record.Record, kind Kind) (lo, hi int) {
	text := r.Text("grades", true)
	if text == "" {
		return 0, 0
	}
	first, last, ranged := strings.Cut(strings.ReplaceAll(text, "-", "–"), "–")
	if !ranged {
		last = first
	}
	lo, ok1 := gradeNumber(kind, strings.TrimSpace(first))
	hi, ok2 := gradeNumber(kind, strings.TrimSpace(last))
	if !ok1 || !ok2 || lo > hi {
		r.Fail("grades", fmt.Sprintf("%q is not a range of grades", text), `write "7–9" for DCTG 7 to 9, or "F–H" for RMAG F to H`)
		return 0, 0
	}
	return lo, hi
}

// reached reads the materials and conditions of what a process reaches.
func (l *loader) reached(r *record.Record, kind Kind) item {
	r.Label = strings.Join(r.Texts("processes"), " ")
	it := item{l.Scope(r, "families", ""), Item{Kind: kind, Method: r.Text("method", false), Condition: r.Text("condition", false)}}
	it.Particular = it.named()
	return it
}

func (l *loader) grade(r *record.Record, list *[]*grade, kind Kind) {
	g := grade{item: l.reached(r, kind)}
	g.lo, g.hi = gradeRange(r, kind)
	for _, s := range r.Texts("finer") {
		by, to, _ := strings.Cut(s, " to ")
		n, err := strconv.Atoi(by)
		size, ok := r.Quantity("finer", to, units.Length, units.NoUnit, "10 mm")
		if err != nil || n < 1 || n >= g.lo || ok && size.Unit != units.MM {
			r.Fail("finer", fmt.Sprintf("%q does not say by how many grades, up to which size in mm", s), `write finer = ["3 to 10 mm", "1 to 25 mm"], the sizes rising`)
		}
		g.finer = append(g.finer, finer{n, size})
	}
	g.Cite = l.end(r)
	if g.lo > 0 {
		g.Text = gradeName(kind, g.lo, g.hi)
	}
	l.book.items = append(l.book.items, &g.item)
	*list = append(*list, &g)
}

// gradeRow reads a line of the tolerance table: sizes above "over" and up to
// "to", and the tolerance for each of the consecutive grades.
func (l *loader) gradeRow(r *record.Record, list *[]*gradeRow, kind Kind) {
	row := gradeRow{over: l.quantity(r, "over", units.Length, "25 mm"), to: l.quantity(r, "to", units.Length, "40 mm"), at: r}
	r.Label = "over " + row.over.String()
	lo, hi := gradeRange(r, kind)
	row.first = lo
	words := strings.Fields(r.Text("full", true))
	if lo > 0 && len(words) != hi-lo+1 {
		r.Fail("full", fmt.Sprintf("holds %d figures for %d grades", len(words), hi-lo+1), "write one figure in mm for each grade, with a blank between them")
	}
	for _, w := range words {
		if q, ok := r.Quantity("full", w+" mm", units.Length, units.NoUnit, "0.26 0.36 0.52"); ok {
			row.full = append(row.full, q)
		}
	}
	row.Cite = l.end(r)
	if row.over.Unit != units.MM || row.to.Unit != units.MM || !(row.over.Lo < row.to.Lo) {
		r.Fail("to", "is not above \"over\", or not in mm", "write both in mm as the standard does")
	}
	*list = append(*list, &row)
}

// checkTables reports tolerance tables that cannot be right: a coarser grade
// or a greater size never has the smaller tolerance, and no cell stands
// twice.
func (l *loader) checkTables() {
	for _, table := range [][]*gradeRow{l.book.dctg, l.book.rma} {
		for i, row := range table {
			checkRow(row, table[:i])
			row.at = nil
		}
	}
}

func checkRow(row *gradeRow, before []*gradeRow) {
	fail := func(format string, args ...any) {
		row.at.Fail("full", fmt.Sprintf(format, args...), "check the row against the standard's table")
	}
	for n, q := range row.full {
		if n > 0 && q.Lo < row.full[n-1].Lo {
			fail("%s stands after %s, but a coarser grade cannot be finer", q, row.full[n-1])
		}
		for _, b := range before {
			m := row.first + n - b.first
			if m < 0 || m >= len(b.full) {
				continue
			}
			switch {
			case b.over.Lo == row.over.Lo:
				fail("grade %d stands twice for this size", row.first+n)
			case b.over.Lo < row.over.Lo && b.full[m].Lo > q.Lo:
				fail("%s is less than the %s of a smaller size", q, b.full[m])
			}
		}
	}
}

// linear reads a tolerance in the trade's form.
func (l *loader) linear(r *record.Record) {
	t := linear{item: l.reached(r, Linear), precision: r.Text("precision", false)}
	for _, s := range r.Texts("plus_minus") {
		value, to, ok := strings.Cut(s, " to ")
		if !ok {
			r.Fail("plus_minus", fmt.Sprintf("%q does not say up to which size it holds", s), `write "0.010 in to 1 in"`)
			continue
		}
		tolerance, ok1 := r.Quantity("plus_minus", value, units.Length, units.NoUnit, "0.010 in")
		size, ok2 := r.Quantity("plus_minus", to, units.Length, units.NoUnit, "1 in")
		if !ok1 || !ok2 {
			continue
		}
		if tolerance.Unit != units.Inch || size.Unit != units.Inch {
			r.Fail("plus_minus", fmt.Sprintf("%q is not in inches", s), "the trade form is in inches; put grades in mm under [[dctg]]")
		}
		if n := len(t.steps); n > 0 && (size.Lo <= t.steps[n-1].to.Lo || tolerance.Lo < t.steps[n-1].plusMinus.Lo) {
			r.Fail("plus_minus", fmt.Sprintf("%q does not follow the step before it", s), "list the steps by rising size")
		}
		t.steps = append(t.steps, step{tolerance, size})
	}
	if !r.Absent("each") {
		t.each, t.hasEach = l.quantity(r, "each", units.Length, "0.001 in"), true
	}
	r.Value("each")
	if !t.hasEach && len(t.steps) == 0 {
		r.Fail("plus_minus", "is missing, and there is no \"each\"", `add plus_minus = ["0.010 in to 1 in"] or each = "0.005 in"`)
	}
	t.Cite = l.end(r)
	t.Text = join("; ", t.precision, t.words())
	l.book.items = append(l.book.items, &t.item)
	l.book.linear = append(l.book.linear, &t)
}

func (l *loader) temper(r *record.Record) {
	t := temper{Scope: l.Scope(r, "families", ""), text: r.Text("text", true)}
	t.Tempers = Pattern(r, "match", true)
	r.Label = r.Text("match", false)
	t.Cite = l.end(r)
	checkHoles(r, t.text, t.Tempers)
	l.book.tempers = append(l.book.tempers, &t)
}

func (l *loader) treatable(r *record.Record) {
	normally := oneOf(r, "normally", "yes", "no", "depends")
	l.book.treatable = append(l.book.treatable, &treatable{l.Scope(r, "families", ""), normally, Statement{r.Text("text", true), l.end(r)}})
}

func (l *loader) designation(r *record.Record) {
	p := pattern{Scope: l.Scope(r, "families", ""), part: r.Text("part", true), text: r.Text("text", true)}
	r.Label = p.part
	p.on = oneOf(r, "on", "name", "uns")
	p.match = Pattern(r, "match", true)
	p.Cite = l.end(r)
	checkHoles(r, p.text, p.match)
	l.book.designations = append(l.book.designations, &p)
}

var hole = spelling.Pattern{Expr: `\{(\d+)\}`}

// checkHoles reports a {2} in a text whose pattern captures only one part.
func checkHoles(r *record.Record, text string, pattern *regexp.Regexp) {
	for _, m := range hole.Regexp().FindAllStringSubmatch(text, -1) {
		if n, err := strconv.Atoi(m[1]); err != nil || pattern != nil && n > pattern.NumSubexp() {
			r.Fail("text", fmt.Sprintf("%s names a part that the pattern does not capture", m[0]), "put the part of the pattern in parentheses")
		}
	}
}

func (l *loader) anodic(r *record.Record) {
	r.Label = r.Text("group", true)
	l.book.anodic = append(l.book.anodic, &anodicRow{l.Scope(r, "families", ""), AnodicIndex{volts(r, "index"), r.Label, l.end(r)}})
}

// volts reads "0.90 V"; the table's sign is left off.
func volts(r *record.Record, key string) float64 {
	text := r.Text(key, true)
	if text == "" {
		return 0
	}
	digits, ok := strings.CutSuffix(text, " V")
	v, err := strconv.ParseFloat(digits, 64)
	if !ok || err != nil || !(v >= 0 && v <= 3) {
		r.Fail(key, fmt.Sprintf("%q is not a voltage below gold", text), `write it without its sign, such as "0.90 V"`)
		return 0
	}
	return v
}

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
	s.Cite = l.end(r)
	l.book.schedules = append(l.book.schedules, &s)
}

func readStep(r *record.Record, text string) (Step, bool) {
	name, rest, ok := strings.Cut(text, ":")
	st := Step{Name: strings.TrimSpace(name)}
	if !ok || !slices.Contains(stepNames, st.Name) {
		r.Fail("steps", fmt.Sprintf("%q does not begin with a stage", text), "write NAME: TEMPERATURE; TIME with one of: "+strings.Join(stepNames, ", "))
		return st, false
	}
	var temperature, time, words string
	for part := range strings.SplitSeq(rest, ";") {
		part = strings.TrimSpace(part)
		if strings.HasPrefix(part, "(") && strings.HasSuffix(part, ")") {
			words = part[1 : len(part)-1]
			continue
		}
		// A temperature or a time: whichever reads as such.
		if q, err := units.ParseAs(part, units.Temperature, units.NoUnit); err == nil {
			temperature = q.String()
			continue
		}
		q, ok := r.Quantity("steps", part, units.Time, units.NoUnit, "age: 310 °F; 3–5 h")
		if !ok {
			return st, false
		}
		time = q.String()
	}
	st.Says = join(", ", temperature, time, words)
	return st, true
}
