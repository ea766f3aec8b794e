package swap

import (
	"slices"

	"alongside/props"
	"alongside/props/part"
	"alongside/units"
)

// What a bar cut from an aluminum casting must keep of the minimum of the separately
// cast bar: of the tensile and yield strength, and of the elongation.
const (
	cutShare   = 0.75
	cutStretch = 0.25
)

var (
	rowsOfWall    = read("row of the wall in the table of strengths anticipated in the casting", srcWall)
	rowsOfBar     = memory("row of the relevant wall in the table of cast-on samples; to 30 mm the separately cast bar", srcDuctile)
	ofTestBar     = read("S = 0.75 · specified minimum of the separately cast bar, for bars cut from the casting where the order asks for them (remembered, not read, for permanent mold)", srcCut)
	ofTestStretch = read("A = 0.25 · specified minimum of the separately cast bar, for bars cut from the casting where the order asks for them (remembered, not read, for permanent mold)", srcCut)
	ofArea        = memory("specified minimum of the area, for the lowest class on file", srcArea)
	ofProduct     = read("specified minimum of the product", srcDefined)
)

// expected is the least strength that one may expect where the metal is, in the
// wall of the casting, and the rule it follows from; or why there is none.
type expected struct {
	value   interval
	figures []*props.Figure
	rule    Formula
	notes   []string
	need    want // what the part can say for a closer answer or, without a value, for any
	why     string
}

// waits reports whether the part must say more before there is a value.
func (e *expected) waits() bool { return e.need.text != "" && e.value == interval{} }

// inCasting is what one may expect of a strength in the wall: by rows for walls
// where they are published, of aluminum by the rule for bars cut from the casting
// or, where the drawing names areas, by the minimum of the area. A branch a rule.
func (w *work) inCasting(m *props.Material, p props.PropertyID) expected {
	if why := m.Absent(p); why != "" {
		return expected{why: m.Name() + ": " + why}
	}
	rows := byWall(m, p)
	least := w.onBasis(m, p, props.Minimum)
	if len(rows) > 0 && rows[0].figure.Cond.Bar == props.CastOnBar && least != nil && least.Cond.Bar != props.CastOnBar {
		rows = append(rows, wallRow{0, rows[0].lo, least})
	}
	switch {
	case len(rows) > 0:
		return w.ofRows(m, rows)
	case m.Process == props.Wrought && least != nil:
		return expected{value: ofFigure(least), figures: []*props.Figure{least}, rule: ofProduct}
	case m.Alloy.Family.Base == "Al" && (m.Process == props.Sand || m.Process == props.PermanentMold):
		if w.Part.Place == part.Designated || w.Part.Place == part.Undesignated {
			return ofPlace(m, p, string(w.Part.Place)+" area")
		}
		if least != nil && (least.Cond.Bar == "" || least.Cond.Bar == props.SeparateBar) {
			share, rule := cutShare, ofTestBar
			if p == props.Elongation {
				share, rule = cutStretch, ofTestStretch
			}
			return expected{value: ofFigure(least).times(exact(share)), figures: []*props.Figure{least}, rule: rule}
		}
	case m.Process == props.Die:
		return expected{why: "die castings of " + m.Name() + " are given typical strengths of bars cast for the test; none is promised in the wall"}
	}
	return expected{why: "no rule on file from the test bar to the wall of " + m.Name()}
}

// wallRow is a strength published for walls from lo to hi, in m.
type wallRow struct {
	lo, hi float64
	figure *props.Figure
}

// byWall is the rows of a property for walls, of bars cut from castings or cast on.
func byWall(m *props.Material, p props.PropertyID) (rows []wallRow) {
	for _, f := range m.Figures(p) {
		if f.Cond.Bar != props.CutFromCasting && f.Cond.Bar != props.CastOnBar || f.Cond.Section == "" {
			continue
		}
		if q, err := units.ParseAs(f.Cond.Section, units.Length, units.NoUnit); err == nil && q.IsRange() {
			rows = append(rows, wallRow{q.Unit.ToSI(q.Lo), q.Unit.ToSI(q.Hi), f})
		}
	}
	return rows
}

// rowAt is the weakest row that holds a wall; nil where none does.
func rowAt(rows []wallRow, wall float64) (least *props.Figure) {
	for _, r := range rows {
		if r.lo <= wall && wall <= r.hi && (least == nil || r.figure.Value.Lo < least.Value.Lo) {
			least = r.figure
		}
	}
	return least
}

// ofRows reads the rows for the wall: strength falls as the wall grows.
func (w *work) ofRows(m *props.Material, rows []wallRow) expected {
	wall := ofGiven(*w.Wall)
	thin, mid, thick := rowAt(rows, wall.lo), rowAt(rows, wall.mid), rowAt(rows, wall.hi)
	if thin == nil || mid == nil || thick == nil {
		return expected{why: "no strength on file for a wall of " + w.Wall.String() + " in " + m.Name()}
	}
	e := expected{value: ofFigure(mid), rule: rowsOfWall}
	if rows[0].figure.Cond.Bar == props.CastOnBar {
		e.rule = rowsOfBar
	}
	if mid.Cond.Note != "" {
		e.notes = []string{m.Name() + " in a wall of " + w.Wall.String() + ": " + mid.Cond.Note}
	}
	if w.Case == part.FixedBeam {
		e.notes = append(e.notes, "the depth of the beam is taken for the wall; say the wall without the load case")
	}
	e.value.lo, e.value.hi, e.value.wide = ofFigure(thick).lo, ofFigure(thin).hi, e.value.wide || thin != thick
	e.figures = union(nil, []*props.Figure{thin, mid, thick})
	return e
}

// ofPlace is the lowest minimum on file for an area of the casting.
func ofPlace(m *props.Material, p props.PropertyID, area string) expected {
	var least *props.Figure
	for _, f := range m.Figures(p) {
		if f.Basis == props.Minimum && f.Cond.Bar == area && f.Cond.RoomTemperature() && (least == nil || ofFigure(f).mid < ofFigure(least).mid) {
			least = f
		}
	}
	if least == nil {
		return expected{why: "no minimum on file for an " + area + " of " + m.Name()}
	}
	e := expected{value: ofFigure(least), figures: []*props.Figure{least}, rule: ofArea}
	if least.Cond.Class != "" {
		e.notes = []string{m.Name() + ", " + area + ", class " + least.Cond.Class + " of " + least.Source.Title + ": the order must name the class"}
	}
	return e
}

// stretch is the elongation, which is expected in the wall as a strength is.
var stretch = giving{"elongation", "elongation", func(*props.Material) props.PropertyID { return props.Elongation }}

// castStrength tells for both metals the strength and elongation to expect in the
// wall, where it is known how thick it is.
func (w *work) castStrength() {
	for _, g := range append(givings[:], stretch) {
		if !w.castKnown(g) {
			continue
		}
		p := g.strength(w.pin)
		today, swapped := w.inCasting(w.base, g.strength(w.base)), w.inCasting(w.pin, p)
		l := Line{Group: StrengthGroup, ID: "casting." + g.id, Name: "In the casting, " + g.name, Formula: both(today.rule, swapped.rule)}
		l.beside(w, today, swapped, func(v interval) *Value { return v.in(w.unit(p.Info().Dimension)) })
		w.add(l)
	}
}

// castKnown reports whether one may say of either metal what to expect in the wall.
func (w *work) castKnown(g giving) bool {
	return w.Wall != nil && (w.inCasting(w.base, g.strength(w.base)).why == "" || w.inCasting(w.pin, g.strength(w.pin)).why == "")
}

// expect takes the figures and notes of what is expected of both metals.
func (l *Line) expect(w *work, today, swapped *expected) {
	l.Figures = append(append(l.Figures, uses(w.base, "₁", today.figures...)...), uses(w.pin, "₂", swapped.figures...)...)
	l.Notes = append(append(l.Notes, today.notes...), swapped.notes...)
}

// sides sets what is expected of both metals side by side; where nothing is of
// the pin the line says why or what it waits for, of the baseline a note does.
func (l *Line) sides(w *work, today, swapped expected, in func(interval) *Value) {
	l.expect(w, &today, &swapped)
	l.Reason = swapped.why
	if l.Reason == "" && swapped.waits() {
		l.wait(swapped.need)
		return
	}
	if l.Reason == "" {
		l.Value = in(swapped.value)
	}
	switch {
	case today.why != "":
		l.Notes = append(l.Notes, today.why)
	case l.Reason == "":
		l.Base = in(today.value)
	}
}

// beside is sides with the ratio of the two.
func (l *Line) beside(w *work, today, swapped expected, in func(interval) *Value) {
	l.sides(w, today, swapped, in)
	if l.Base != nil {
		l.Ratio = swapped.against(today).in(units.One)
	}
}

// both names the rules of both metals, where there are two.
func both(today, swapped Formula) Formula {
	switch {
	case today.Source == nil || today == swapped:
		return swapped
	case swapped.Source == nil:
		return today
	}
	f := Formula{"today: " + today.Text + "; swapped: " + swapped.Text, swapped.Source, min(today.Known, swapped.Known)}
	if today.Source != swapped.Source {
		f.Text += "; today's rule: " + today.Source.Title
	}
	return f
}

// against is the ratio to what is expected of today's metal; one metal to itself is 1.
func (e expected) against(today expected) interval {
	if slices.Equal(e.figures, today.figures) {
		return exact(1)
	}
	return e.value.over(today.value)
}
