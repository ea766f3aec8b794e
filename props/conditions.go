package props

import (
	"fmt"
	"strconv"
	"strings"

	"alongside/units"
)

// Conditions is what a test or a table fixes for a figure. Zero fields are
// not stated.
type Conditions struct {
	Offset       float64 // yield: percent offset or, with UnderLoad, percent total extension
	UnderLoad    bool    // yield at total extension under load
	Gauge        string  // elongation: "2 in", "5D"
	Load, Ball   float64 // Brinell: kgf and mm
	Cycles       float64 // fatigue life
	Loading      string  // fatigue: rotating bending, plane bending, axial
	HasRange     bool    // expansion: mean over FromC..ToC
	FromC, ToC   float64 // °C
	HasAt        bool    // test temperature
	AtC          float64 // °C
	Hours        float64 // exposure before the test
	Bar          string  // kind of test bar
	Section      string  // section the figure holds for
	Class        string  // strength class of premium castings
	State        string  // as cast, aged, OneHeat
	Note         string  // free text from the data file
	Interpolated string  // how a worked-out figure follows from published ones
	Bound        bool    // of a worked-out figure: its ends are bounds, not readings
	RangeText    string  // as printed, to show it back in its own unit
	AtText       string
}

// OneHeat marks a typical figure that a handbook took from one heat: it shows
// what that heat gave and promises nothing of the grade, whose minimum it may miss.
const OneHeat = "average of one heat"

// Kinds of test bars of castings.
const (
	SeparateBar    = "separately cast bar"
	DieCastBar     = "die-cast bar"
	CastOnBar      = "cast-on bar" // cools as the wall does
	CutFromCasting = "cut from casting"
	Designated     = "designated area"
	Undesignated   = "undesignated area"
)

// InCasting reports whether the figure is of the metal of a casting itself.
func (c *Conditions) InCasting() bool {
	return c.Bar == CutFromCasting || c.Bar == Designated || c.Bar == Undesignated
}

// OfCastBar reports whether it is of a bar that was cast for the test.
func (c *Conditions) OfCastBar() bool {
	return c.Bar == SeparateBar || c.Bar == CastOnBar || c.Bar == DieCastBar
}

var (
	barWords     = []string{SeparateBar, DieCastBar, CastOnBar, CutFromCasting, Designated, Undesignated, "wrought bar", "wrought sheet", "wrought plate", "wrought extrusion", "wrought tube"}
	loadingWords = []string{"rotating bending", "plane bending", "axial"}
	stateWords   = []string{"as cast", "aged", OneHeat}
	gaugeWords   = []string{"2 in", "50 mm", "1 in", "8 in", "3D", "4D", "5D", "10 in", "200 mm"}
)

// GaugeLengths lists the gauge lengths of elongation that figures state.
func GaugeLengths() []string { return gaugeWords }

// RoomTemperature reports whether the figure was found at room temperature:
// no temperature stated, or 15 to 35 °C, and no exposure.
func (c *Conditions) RoomTemperature() bool {
	return (!c.HasAt || (c.AtC >= 15 && c.AtC <= 35)) && c.Hours == 0
}

// String writes the conditions in the words of the data file.
func (c *Conditions) String() string {
	var parts []string
	add := func(ok bool, format string, args ...any) {
		if ok {
			parts = append(parts, fmt.Sprintf(format, args...))
		}
	}
	add(c.Offset != 0 && !c.UnderLoad, "%g %% offset", c.Offset)
	add(c.Offset != 0 && c.UnderLoad, "%g %% extension under load", c.Offset)
	add(c.Gauge != "", "in %s", c.Gauge)
	add(c.Load != 0, "%g kgf/%g mm", c.Load, c.Ball)
	add(c.Cycles != 0, "%s cycles", CyclesText(c.Cycles))
	add(c.Loading != "", "%s", c.Loading)
	add(c.HasRange, "%s", c.Range())
	add(c.HasAt, "at %s", c.At())
	add(c.Hours != 0, "after %g h", c.Hours)
	add(c.Bar != "", "%s", c.Bar)
	add(c.Class != "", "class %s", c.Class)
	add(c.Section != "", "section %s", c.Section)
	add(c.State != "", "%s", c.State)
	add(c.Note != "", "(%s)", c.Note)
	add(c.Interpolated != "", "%s", c.Interpolated)
	return strings.Join(parts, "; ")
}

// WithoutRange is the conditions without the expansion range.
func (c Conditions) WithoutRange() Conditions {
	c.HasRange, c.FromC, c.ToC, c.RangeText = false, 0, 0, ""
	return c
}

// CyclesText writes a number of cycles: 5×10^8.
func CyclesText(v float64) string {
	s := strconv.FormatFloat(v, 'e', -1, 64)
	mantissa, exponent, _ := strings.Cut(s, "e+")
	if mantissa == "1" {
		return "10^" + strings.TrimLeft(exponent, "0")
	}
	return mantissa + "×10^" + strings.TrimLeft(exponent, "0")
}

// Range is the expansion range as printed by the source.
func (c *Conditions) Range() string {
	if c.RangeText != "" {
		return c.RangeText
	}
	return fmt.Sprintf("%.4g–%.4g °C", c.FromC, c.ToC)
}

// At is the test temperature as printed by the source.
func (c *Conditions) At() string {
	if c.AtText != "" {
		return c.AtText
	}
	return fmt.Sprintf("%g °C", c.AtC)
}

// Add reads one condition of a data file and adds it. It returns false when
// the words are not understood. A branch a kind of condition.
func (c *Conditions) Add(s string) bool {
	s = strings.Join(strings.Fields(s), " ")
	if strings.HasPrefix(s, "(") && strings.HasSuffix(s, ")") {
		if c.Note != "" {
			c.Note += "; "
		}
		c.Note += s[1 : len(s)-1]
		return true
	}
	for _, x := range []struct {
		words []string
		into  *string
	}{{barWords, &c.Bar}, {loadingWords, &c.Loading}, {stateWords, &c.State}} {
		if word, ok := oneOf(s, x.words); ok {
			*x.into = word
			return true
		}
	}
	head, rest, _ := strings.Cut(s, " ")
	switch head {
	case "in":
		word, ok := oneOf(rest, gaugeWords)
		c.Gauge = word
		return ok
	case "class":
		c.Class = rest
		return rest != ""
	case "section":
		c.Section = rest
		return rest != ""
	case "bar":
		c.Section = s
		return rest != ""
	case "at":
		t, err := units.ParseAs(rest, units.Temperature, units.NoUnit)
		if err != nil || t.Lo != t.Hi {
			return false
		}
		k := t.Unit.ToSI(t.Lo)
		c.HasAt, c.AtC, c.AtText = true, units.DegC.FromSI(k), t.String()
		return true
	case "after":
		hours, ok := strings.CutSuffix(rest, " h")
		v, err := strconv.ParseFloat(hours, 64)
		c.Hours = v
		return ok && err == nil && v > 0
	}
	return c.addMeasure(s)
}

// addMeasure reads the conditions that begin with a number.
func (c *Conditions) addMeasure(s string) bool {
	if v, ok := cutNumber(s, "% offset"); ok {
		c.Offset, c.UnderLoad = v, false
		return true
	}
	for _, words := range []string{"% EUL", "% extension under load"} {
		if v, ok := cutNumber(s, words); ok {
			c.Offset, c.UnderLoad = v, true
			return true
		}
	}
	if v, ok := cutNumber(s, "cycles"); ok {
		c.Cycles = v
		return true
	}
	if load, ball, ok := strings.Cut(s, " kgf/"); ok {
		l, err1 := strconv.ParseFloat(load, 64)
		b, err2 := strconv.ParseFloat(strings.TrimSuffix(ball, " mm"), 64)
		c.Load, c.Ball = l, b
		return err1 == nil && err2 == nil && l > 0 && b > 0
	}
	if t, err := units.ParseAs(s, units.Temperature, units.NoUnit); err == nil && t.Lo < t.Hi && t.Qual == units.Exact {
		c.HasRange = true
		c.FromC = units.DegC.FromSI(t.Unit.ToSI(t.Lo))
		c.ToC = units.DegC.FromSI(t.Unit.ToSI(t.Hi))
		c.RangeText = t.String()
		return true
	}
	return false
}

func oneOf(s string, words []string) (string, bool) {
	for _, w := range words {
		if strings.EqualFold(s, w) {
			return w, true
		}
	}
	return "", false
}

func cutNumber(s, suffix string) (float64, bool) {
	head, ok := strings.CutSuffix(s, suffix)
	if !ok {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(head), 64)
	return v, err == nil && v > 0
}

// For keeps of a block's conditions those that bear on the property.
func (c Conditions) For(p *Property) Conditions {
	if p.Bears&BearsOffset == 0 {
		c.Offset, c.UnderLoad = 0, false
	}
	if p.Bears&BearsGauge == 0 {
		c.Gauge = ""
	}
	if p.Bears&BearsLoad == 0 {
		c.Load, c.Ball = 0, 0
	}
	if p.Bears&BearsCycles == 0 {
		c.Cycles, c.Loading = 0, ""
	}
	if p.Bears&BearsRange == 0 {
		c = c.WithoutRange()
	}
	if p.Bears&BearsBar == 0 && p.Bears&BearsLoad == 0 {
		c.Bar, c.Class = "", ""
	}
	return c
}

// With lays a figure's own conditions over those of its block.
func (c Conditions) With(own Conditions) Conditions {
	if own.Offset != 0 {
		c.Offset, c.UnderLoad = own.Offset, own.UnderLoad
	}
	if own.Load != 0 {
		c.Load, c.Ball = own.Load, own.Ball
	}
	if own.HasRange {
		c.HasRange, c.FromC, c.ToC, c.RangeText = true, own.FromC, own.ToC, own.RangeText
	}
	if own.HasAt {
		c.HasAt, c.AtC, c.AtText = true, own.AtC, own.AtText
	}
	c.Cycles = pick(own.Cycles, c.Cycles)
	c.Hours = pick(own.Hours, c.Hours)
	c.Gauge = pick(own.Gauge, c.Gauge)
	c.Loading = pick(own.Loading, c.Loading)
	c.Bar = pick(own.Bar, c.Bar)
	c.Section = pick(own.Section, c.Section)
	c.Class = pick(own.Class, c.Class)
	c.State = pick(own.State, c.State)
	if own.Note != "" && c.Note != "" {
		own.Note = c.Note + "; " + own.Note
	}
	c.Note = pick(own.Note, c.Note)
	return c
}

func pick[T comparable](own, block T) T {
	var zero T
	if own != zero {
		return own
	}
	return block
}
