package foundry

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/record"
	"alongside/units"
)

// grade is a range of ISO grades attainable by a process: of tolerances (DCTG) or of
// machining allowances (RMAG), by the kind of its item.
type grade struct {
	item
	lo, hi int     // DCTG number, or letter counted from A = 1 for RMAG
	finer  []finer // by rising size; may be empty
}

// finer is by how many grades a process does better up to a nominal size.
type finer struct {
	by int
	to units.Quantity
}

// at is the range of grades that holds for a nominal size.
func (g *grade) at(dimension units.Quantity) (lo, hi int) {
	mm, err := units.Convert(dimension.Lo, dimension.Unit, units.MM)
	for _, f := range g.finer {
		if err == nil && mm <= f.to.Lo {
			return g.lo - f.by, g.hi - f.by
		}
	}
	return g.lo, g.hi
}

// gradeRow is a line of a table of tolerances by grade: what holds for
// nominal sizes above over and up to to, for consecutive grades from first.
type gradeRow struct {
	over, to units.Quantity
	first    int
	full     []units.Quantity
	at       *record.Record // for messages while loading
	Cite
}

// linear is a tolerance in the trade's form: fixed up to a size, or by steps,
// and a further amount for each inch beyond.
type linear struct {
	item
	precision string // standard, precision
	steps     []step // rising; may be empty: in proportion from zero
	each      units.Quantity
	hasEach   bool
}

type step struct{ plusMinus, to units.Quantity }

// ToleranceKind says on which footing a tolerance stands.
type ToleranceKind uint8

// The kinds of tolerance. MachiningStock is not a tolerance but the stock that
// a machined face needs (RMAG of ISO 8062-3). DieDraft is the draft of a die
// casting where the dimension is the depth of a wall: PlusMinus on one side,
// Full on two.
const (
	ISOGrade ToleranceKind = iota
	TradeForm
	MachiningStock
	DieDraft
)

var toleranceKinds = [...]string{"ISO 8062-3 grade", "trade form", "machining allowance", "draft"}

func (k ToleranceKind) String() string { return toleranceKinds[k] }

// ToleranceResult is what one source gives for a dimension.
type ToleranceResult struct {
	Kind      ToleranceKind
	Name      string // "DCTG 7–9", "standard", "RMAG F–H"
	Method    string // molding method
	Condition string
	// Full is the total tolerance (for MachiningStock: the stock on each
	// face), from the finest to the coarsest grade; PlusMinus is half of it
	// each side. Both are meaningful when Why is empty.
	Full, PlusMinus units.Quantity
	How             string // how the figure comes about
	Why             string // why there is no figure
	Cite                   // of the grade by process, or of the trade form
	By              Cite   // of the table that gives the millimeters; Source is nil for the trade form
}

// Tolerance lists what is published for one nominal dimension of a casting of
// the material: by ISO 8062-3 grade, in the trade's first-inch form, and the
// machining allowance. A dimension that is not one positive length gives a
// single result that says why there is no figure.
//
// Grades: ISO 8062-3:2007, Table 2; the grades each process attains are those
// of the informative annex of ISO 8062:1994. Figures there are total
// tolerances; half lies on each side unless the drawing says otherwise.
func (b *Book) Tolerance(m *props.Material, dimension units.Quantity) []ToleranceResult {
	if why := notCast(m); why != "" {
		return []ToleranceResult{{Why: why}}
	}
	if why := notADimension(dimension); why != "" {
		return []ToleranceResult{{Why: why}}
	}
	var out []ToleranceResult
	for _, g := range about(b.grades, m) {
		out = append(out, g.lookUp(b.dctg, dimension))
	}
	for _, l := range about(b.linear, m) {
		out = append(out, l.at(dimension))
	}
	for _, g := range about(b.allowances, m) {
		out = append(out, g.lookUp(b.rma, dimension))
	}
	out = append(out, b.draft(m, dimension)...)
	if len(out) == 0 {
		out = append(out, ToleranceResult{Why: fmt.Sprintf("no tolerance on file for %s castings of %s", m.Process, m.Alloy.Family.Name)})
	}
	return out
}

// draft is what a wall as deep as the dimension needs on one side by the draft
// constant C of the metal: D = √L/C in inches on an inside wall, half of it on
// an outside wall (NADCA, S-4A-7).
func (b *Book) draft(m *props.Material, depth units.Quantity) []ToleranceResult {
	l, err := units.Convert(depth.Lo, depth.Unit, units.Inch)
	if err != nil {
		return nil
	}
	var out []ToleranceResult
	for _, it := range b.itemsOf(m, DraftConstant) {
		for _, wall := range []struct {
			name  string
			times float64
		}{{"inside wall", 1}, {"outside wall", 0.5}} {
			d := wall.times * math.Sqrt(l) / it.Value.Lo
			r := ToleranceResult{Kind: DieDraft, Name: wall.name, Cite: it.Cite,
				How: fmt.Sprintf("where this is the depth: root of the depth in inches over %s, %.1f°", strconv.FormatFloat(it.Value.Lo/wall.times, 'f', -1, 64), math.Atan(d/l)*180/math.Pi)}
			r.set(units.Quantity{Lo: d, Hi: d, Place: -3, Unit: units.Inch})
			out = append(out, r)
		}
	}
	return out
}

func notADimension(q units.Quantity) string {
	switch {
	case q.Unit.Dimension() != units.Length:
		return "a dimension is needed, such as 4 in or 100 mm, not " + q.String()
	case q.Qual != units.Exact && q.Qual != units.Approx || q.IsRange():
		return "one dimension is needed, not a range or a limit"
	case !(q.Lo > 0) || math.IsInf(q.Lo, 0):
		return "the dimension must be above zero"
	}
	return ""
}

// lookUp finds a range of grades in a table. Where the table ends within the
// range, the grades that it has count, and the condition names the others.
func (g *grade) lookUp(table []*gradeRow, dimension units.Quantity) ToleranceResult {
	lo, hi := g.at(dimension)
	r := ToleranceResult{Name: gradeName(g.Kind, lo, hi), Method: g.Method, Condition: g.Condition, Cite: g.Cite}
	if g.Kind == Allowance {
		r.Kind = MachiningStock
	}
	var fine, coarse *units.Quantity
	var by *Cite
	first, last := lo, hi
	for n := lo; n <= hi; n++ {
		q, of := cellOf(table, dimension, n)
		if q == nil {
			continue
		}
		if fine == nil {
			first, fine, r.By = n, q, *of
		}
		last, coarse, by = n, q, of
	}
	if fine == nil {
		r.Why = fmt.Sprintf("the table has no figure for %s at %s", r.Name, dimension)
		return r
	}
	for _, gap := range [][2]int{{lo, first - 1}, {last + 1, hi}} {
		if gap[0] <= gap[1] {
			r.Condition = join("; ", r.Condition, fmt.Sprintf("the table has no figure for %s at this size", gradeName(g.Kind, gap[0], gap[1])))
		}
	}
	if r.By.Known != props.Memory {
		r.By = *by // the less sure of the two
	}
	r.Full = units.Quantity{Lo: fine.Lo, Hi: coarse.Hi, Place: min(fine.Place, coarse.Place), Unit: fine.Unit}
	r.PlusMinus, r.How = r.Full, "stock on each machined face, by grade and largest dimension"
	if r.Kind == ISOGrade {
		r.PlusMinus, r.How = half(r.Full), "total tolerance by grade and nominal size, half of it each side"
	}
	return r
}

// cellOf finds the tolerance of a grade at a nominal size.
func cellOf(table []*gradeRow, dimension units.Quantity, number int) (*units.Quantity, *Cite) {
	mm, err := units.Convert(dimension.Lo, dimension.Unit, units.MM)
	if err != nil {
		return nil, nil
	}
	for _, row := range table {
		if n := number - row.first; mm > row.over.Lo && mm <= row.to.Lo && n >= 0 && n < len(row.full) {
			return &row.full[n], &row.Cite
		}
	}
	return nil, nil
}

func half(q units.Quantity) units.Quantity {
	q.Lo, q.Hi = q.Lo/2, q.Hi/2
	// Half of 0.09 is 0.045: one more digit unless both halves end even.
	if unit := math.Pow10(int(q.Place)); math.Abs(math.Round(q.Lo/unit)-q.Lo/unit) > 1e-6 || math.Abs(math.Round(q.Hi/unit)-q.Hi/unit) > 1e-6 {
		q.Place--
	}
	return q
}

// at works the trade form out for a dimension. A part of an inch counts in
// proportion.
func (l *linear) at(dimension units.Quantity) ToleranceResult {
	r := ToleranceResult{Kind: TradeForm, Name: l.precision, Method: l.Method, Condition: l.Condition, Cite: l.Cite}
	inches, err := units.Convert(dimension.Lo, dimension.Unit, units.Inch)
	if err != nil {
		r.Why = err.Error()
		return r
	}
	r.How = l.words()
	base, from := units.Quantity{Unit: units.Inch, Place: l.each.Place}, 0.0
	for _, s := range l.steps {
		base, from = s.plusMinus, s.to.Lo
		if inches <= from*(1+1e-9) {
			r.set(base)
			return r
		}
	}
	if !l.hasEach {
		r.Why = fmt.Sprintf("no figure above %s", l.steps[len(l.steps)-1].to)
		return r
	}
	more := inches - from
	base.Lo += more * l.each.Lo
	base.Hi += more * l.each.Hi
	base.Place = min(base.Place, l.each.Place)
	if whole := math.Round(more); math.Abs(more-whole) > 1e-9 {
		base.Place--
		if len(l.steps) > 0 {
			r.Condition = join("; ", r.Condition, "a part of an inch counted in proportion; some shops count it as a whole one")
		}
	}
	r.set(base)
	return r
}

func (r *ToleranceResult) set(plusMinus units.Quantity) {
	r.PlusMinus, r.Full = plusMinus, plusMinus
	r.Full.Lo, r.Full.Hi = 2*plusMinus.Lo, 2*plusMinus.Hi
}

// words writes the form: "±0.010 in up to 1 in, ±0.001 in more for each inch
// over 1 in".
func (l *linear) words() string {
	var parts []string
	for _, s := range l.steps {
		parts = append(parts, "±"+s.plusMinus.String()+" to "+s.to.String())
	}
	if l.hasEach {
		each := "±" + l.each.String() + " for each inch"
		if len(l.steps) > 0 {
			each = "±" + l.each.String() + " more for each inch over " + l.steps[len(l.steps)-1].to.String()
		}
		parts = append(parts, each)
	}
	return strings.Join(parts, ", ")
}

// gradeName writes a range of grades as the standard does: DCTG 7–9, RMAG F–H.
func gradeName(kind Kind, lo, hi int) string {
	name, write := "DCTG ", strconv.Itoa
	if kind == Allowance {
		name, write = "RMAG ", func(n int) string { return rmaLetters[n-1 : n] }
	}
	name += write(lo)
	if hi != lo {
		name += "–" + write(hi)
	}
	return name
}

// join puts the texts that are not empty behind each other.
func join(between string, parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), between)
}
