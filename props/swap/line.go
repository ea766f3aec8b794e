package swap

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"alongside/props"
	"alongside/props/cost"
	"alongside/props/part"
	"alongside/units"
)

// Group gathers lines under one heading.
type Group uint8

// The groups in the order they are shown.
const (
	Shape Group = iota
	Stiffness
	StrengthGroup
	Temperature
	Joints
	Heat
	Current
	Foundry
	Cost
)

var groupNames = [...]string{"Same shape", "Stiffness", "Strength", "Temperature", "Fits and joints", "Heat", "Current", "Foundry", "Price"}

func (g Group) String() string { return groupNames[g] }

// Used is a figure that a line rests on.
type Used struct {
	Symbol string // as in the formula: ρ₁ of the baseline, ρ₂ of the pin, αₘ of the mate
	Of     *props.Material
	Figure *props.Figure
}

// Line is one thing that the swap does to the part. It has a result (Value,
// Ratio or Words), or Need or Reason say why not; with a Ratio, Need tells what
// the amount still waits for.
type Line struct {
	Group Group
	ID    string // "stiffness.mass"; stays the same from version to version
	Name  string
	Value *Value // of the part in the pin's metal
	Base  *Value // of the part in the baseline's metal
	Ratio *Value // Value over Base, a plain number
	Words string // a result that is said in words

	Formula Formula
	Figures []Used
	Need    string     // what the part must say more: "needs a wall thickness"
	field   part.Field // that Need asks for
	Reason  string     // why there is no number
	Notes   []string   // cautions that leave the result standing
}

// Done reports whether the line has a result.
func (l *Line) Done() bool { return l.Value != nil || l.Ratio != nil || l.Words != "" }

// RatioText is the ratio as shown: "0.373×", "1.22–1.61×".
func (l *Line) RatioText() string {
	if l.Ratio == nil {
		return ""
	}
	return l.Ratio.Number() + "×"
}

// Change is the ratio as a percentage of change: "−63 %", "+22 to +61 %". It is
// empty for changes of ten times and more, which a percentage does not tell.
func (l *Line) Change() string {
	r := l.Ratio
	if r == nil || r.Hi >= 10 {
		return ""
	}
	if !r.Range {
		return percent(r.Mid, decimals(r, r.Mid)) + " %"
	}
	d := decimals(r, r.Lo, r.Hi)
	lo, hi := percent(r.Lo, d), percent(r.Hi, d)
	if lo == hi {
		return lo + " %"
	}
	return lo + " to " + hi + " %"
}

// decimals is how finely a change is told: to a whole percent, or to a tenth
// where all of it is below ten percent and the ratio has the digits.
func decimals(r *Value, ratios ...float64) int {
	if r.Place > -3 {
		return 0
	}
	for _, x := range ratios {
		if math.Abs(100*(x-1)) >= 10 {
			return 0
		}
	}
	return 1
}

// percent writes a ratio as a signed change.
func percent(ratio float64, decimals int) string {
	v := 100 * (ratio - 1)
	s := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	switch {
	case strings.Trim(s, "0.") == "":
		return "0"
	case v < 0:
		return "−" + s
	}
	return "+" + s
}

// Result is the swap worked out: plain data for screens, commands and copies.
type Result struct {
	Base, Pin *props.Material
	Given     part.Given
	System    units.System
	Lines     []Line
	// Today and Swapped are what a piece costs in each metal; nil where the shop
	// states no rates for it, or the part no weight.
	Today, Swapped *cost.Piece
}

// Line returns the line with an id, nil where the swap has none.
func (r *Result) Line(id string) *Line {
	for i := range r.Lines {
		if r.Lines[i].ID == id {
			return &r.Lines[i]
		}
	}
	return nil
}

// Needs lists, each once, what the part must say more.
func (r *Result) Needs() []string {
	var out []string
	for i := range r.Lines {
		if n := r.Lines[i].Need; n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// want is what a line waits for: a field of the part, in words.
type want struct {
	field part.Field
	text  string
}

// What a part can lack.
var (
	needMass     = want{part.FieldMass, "needs a mass or a volume"}
	needWall     = want{part.FieldWall, "needs a wall thickness"}
	needDepth    = want{part.FieldWall, "needs a wall thickness, here the depth of the beam"}
	needLength   = want{part.FieldLength, "needs a length"}
	needCase     = want{part.FieldCase, "needs a load case (tie, plate, beam or fixed-beam)"}
	needRange    = want{part.FieldService, "needs a service range"}
	needHours    = want{part.FieldHours, "needs the hours at heat"}
	needMate     = want{part.FieldMate, "needs a mating material"}
	needFit      = want{part.FieldFit, "needs a fit diameter"}
	needHub      = want{part.FieldHub, "needs a hub diameter"}
	needEngaged  = want{part.FieldEngaged, "needs a length of fit"}
	needFriction = want{part.FieldFriction, "needs a coefficient of friction"}
	needPressure = want{part.FieldPressure, "needs a pressure"}
	needInside   = want{part.FieldInside, "needs an inside diameter"}
	needQuality  = want{part.FieldQuality, "needs a quality factor"}
	needSafety   = want{part.FieldSafety, "needs a safety factor"}
	needThread   = want{part.FieldThread, "needs a thread"}
	needEngage   = want{part.FieldEngagement, "needs a thread engagement"}
	needBolt     = want{part.FieldBolt, "needs a bolt strength"}
	needClamp    = want{part.FieldClamp, "needs a clamp load"}
	needHead     = want{part.FieldHead, "needs a head or washer diameter"}
	needHole     = want{part.FieldHole, "needs a bolt hole"}
	needCycles   = want{part.FieldCycles, "needs the load cycles in its life"}
	needStress   = want{part.FieldStress, "needs an applied stress"}
	needQuantity = want{part.FieldQuantity, "needs a quantity of pieces"}
	needPrice    = want{part.FieldPrice, "needs a price of the metal"}
)

// wait notes on the line what the part must say before there is a number.
func (l *Line) wait(n want) { l.Need, l.field = n.text, n.field }

// missing reports whether the part does not say a size, and has the line wait for it.
func (l *Line) missing(size *units.Quantity, n want) bool {
	if size == nil {
		l.wait(n)
	}
	return size == nil
}

// Lacks is the field of the part that the line waits for; ok is false where it
// waits for none.
func (l *Line) Lacks() (f part.Field, ok bool) { return l.field, l.Need != "" }
