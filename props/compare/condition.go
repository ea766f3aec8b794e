package compare

import (
	"fmt"

	"alongside/props"
	"alongside/units"
)

// degree is how far two figures are apart in one condition.
type degree uint8

// The degrees. Unstated means that a condition is not stated where it counts.
const (
	same degree = iota
	unstated
	different
	never // what refuses a condition that is only a caution
)

// condition is one thing that a test or a table fixes for a figure.
type condition struct {
	kind  ReasonKind
	bears props.Bearing // the properties on which it bears; 0: all
	// differ compares two figures in it, and says each side in words; with
	// unstated the first word names the side that does not state it.
	differ func(f, g *props.Figure) (how degree, pin, base string)
	// refuses is the least degree at which the two may not be set against each
	// other; below it a difference is a caution.
	refuses degree
	// told and untold are the words for different and for unstated.
	told, untold string
	// ground bounds what the difference can do to a figure; nil where nothing is
	// certain.
	ground *Ground
}

// conditions is the one table of them, in the order in which they are told. The
// choice of the pair, the refusal, the cautions and the bounds all read it.
var conditions = [...]condition{
	{BasisDiffers, 0, basisDiffers, different, "%s against %s", "", &groundBasis},
	{UnitDiffers, 0, unitsDiffer, different, "units of different kinds: %s against %s", "", nil},
	{OffsetDiffers, props.BearsOffset, offsetsDiffer, different, "yield at %s against %s", "yield definition not stated for %s", &groundOffset},
	{GaugeDiffers, props.BearsGauge, gaugesDiffer, different, "elongation in %s against %s", "gauge length not stated for %s", &groundGauge},
	{LoadDiffers, props.BearsLoad, loadsDiffer, unstated, "Brinell at %s against %s", "Brinell load not stated for %s", &groundLoad},
	{CyclesDiffer, props.BearsCycles, cyclesDiffer, unstated, "fatigue at %s cycles against %s", "fatigue cycles not stated for %s", &groundCycles},
	{LoadingDiffers, props.BearsCycles, loadingsDiffer, different, "fatigue in %s against %s", "", &groundLoading},
	{RangeDiffers, props.BearsRange, rangesDiffer, unstated, "expansion over %s against %s", "range of the mean expansion not stated for %s", &groundExpansion},
	{ScaleDiffers, props.BearsScale, scalesDiffer, different, "scale %s against %s", "", nil},
	{TemperatureDiffers, 0, temperaturesDiffer, different, "figure %s against %s", "", &groundTemperature},
	{ExposureDiffers, 0, exposuresDiffer, different, "exposure of %s against %s", "", nil},
	{PlaceDiffers, props.BearsBar, placesDiffer, different, "%s against %s", "", &groundPlace},
	{BarDiffers, props.BearsBar, barsDiffer, never, "%s against %s", "", nil},
	{ClassDiffers, 0, classesDiffer, never, "%s against %s", "", nil},
}

// words is what the reader is told of a difference.
func (c *condition) words(how degree, pin, base string) Reason {
	if how == unstated {
		return Reason{c.kind, fmt.Sprintf(c.untold, pin)}
	}
	return Reason{c.kind, fmt.Sprintf(c.told, pin, base)}
}

func basisDiffers(f, g *props.Figure) (degree, string, string) {
	return apart(f.Basis != g.Basis), f.Basis.Phrase(), g.Basis.Phrase()
}

func unitsDiffer(f, g *props.Figure) (degree, string, string) {
	u, v := f.Value.Unit, g.Value.Unit
	kind := u.Dimension() == v.Dimension() || u.Dimension().Brinell() && v.Dimension().Brinell()
	return apart(!kind), u.Symbol(), v.Symbol()
}

func offsetsDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond, g.Cond
	if a.Offset == 0 || b.Offset == 0 {
		return lacking(a.Offset != 0, b.Offset != 0)
	}
	return apart(a.Offset != b.Offset || a.UnderLoad != b.UnderLoad), offsetWords(a), offsetWords(b)
}

func gaugesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond.Gauge, g.Cond.Gauge
	if a == "" || b == "" {
		return lacking(a != "", b != "")
	}
	return apart(a != b && (gaugeDiameters[a] == 0 || gaugeDiameters[a] != gaugeDiameters[b])), a, b
}

// loadsDiffer: Brinell numbers agree at an equal ratio of load to the square of
// the ball diameter (ASTM E10; ISO 6506-1, force-diameter index). One table that
// states no load has one load.
func loadsDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond, g.Cond
	if a.Load == 0 || b.Load == 0 {
		return unlessOneTable(f, g, a.Load != 0, b.Load != 0)
	}
	return apart(loadRatio(a) != loadRatio(b)), loadWords(a), loadWords(b)
}

// cyclesDiffer: a limit at an unknown life is not set against one at a stated
// life, since iron is usually tested to ten million cycles and aluminum to five
// hundred.
func cyclesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond.Cycles, g.Cond.Cycles
	if a == 0 || b == 0 {
		return unlessOneTable(f, g, a != 0, b != 0)
	}
	return apart(a != b), props.CyclesText(a), props.CyclesText(b)
}

func loadingsDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond.Loading, g.Cond.Loading
	return apart(a != b && a != "" && b != ""), a, b
}

func rangesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond, g.Cond
	switch {
	case !a.HasRange && !b.HasRange:
		return unlessOneTable(f, g, false, false)
	case a.HasRange && b.HasRange && near(a.FromC, b.FromC, sameTemperature) && near(a.ToC, b.ToC, sameTemperature):
		return same, "", ""
	}
	return different, rangeWords(a), rangeWords(b)
}

// scalesDiffer: a percentage of a reference metal is named in the note; a rating
// is relative to its own table.
func scalesDiffer(f, g *props.Figure) (degree, string, string) {
	switch f.Value.Unit.Dimension() {
	case units.Rating:
		return apart(f.Source != g.Source), "of " + f.Source.ID, g.Source.ID + " (a rating is relative to its own table)"
	case units.Percent:
		return apart(f.Cond.Note != g.Cond.Note), orUnstated(f.Cond.Note), orUnstated(g.Cond.Note)
	}
	return same, "", ""
}

func temperaturesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond, g.Cond
	alike := near(atOr20(a), atOr20(b), sameTemperature) || roomTemperature(a) && roomTemperature(b)
	return apart(!alike), temperatureWords(a), temperatureWords(b)
}

func exposuresDiffer(f, g *props.Figure) (degree, string, string) {
	return apart(f.Cond.Hours != g.Cond.Hours), fmt.Sprintf("%g h", f.Cond.Hours), fmt.Sprintf("%g h", g.Cond.Hours)
}

// placesDiffer: metal cut from a casting is not a bar cast for the test.
func placesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond.Bar, g.Cond.Bar
	return apart(inCasting[a] && castBar[b] || castBar[a] && inCasting[b]), a, b
}

func barsDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond.Bar, g.Cond.Bar
	if how, _, _ := placesDiffer(f, g); how != same {
		return same, "", ""
	}
	return apart(a != b && a != "" && b != ""), a, b
}

func classesDiffer(f, g *props.Figure) (degree, string, string) {
	a, b := f.Cond, g.Cond
	return apart(a.Class != b.Class || a.Section != b.Section), classWords(a), classWords(b)
}

var (
	inCasting = map[string]bool{"cut from casting": true, "designated area": true, "undesignated area": true}
	castBar   = map[string]bool{"separately cast bar": true, "cast-on bar": true, "die-cast bar": true}
	// gaugeDiameters are gauge lengths in diameters of a round bar: 2 in and 50 mm
	// are those of the standard 0.505 in and 12.5 mm bars (ASTM E8/E8M).
	gaugeDiameters = map[string]float64{"3D": 3, "4D": 4, "2 in": 4, "50 mm": 4, "5D": 5}
)

// sameTemperature, in °C, is how far two temperatures may be apart and be one:
// 68–212 °F and 20–100 °C, 70 °F and 20 °C.
const sameTemperature = 6

func apart(differ bool) degree {
	if differ {
		return different
	}
	return same
}

// lacking names the side that does not state a condition, where the other does.
func lacking(pinStates, baseStates bool) (degree, string, string) {
	switch {
	case pinStates == baseStates:
		return same, "", ""
	case pinStates:
		return unstated, "the baseline", ""
	}
	return unstated, "this figure", ""
}

// unlessOneTable is lacking for conditions that count: what neither side states
// is taken as one within one source only.
func unlessOneTable(f, g *props.Figure, pinStates, baseStates bool) (degree, string, string) {
	if pinStates == baseStates && f.Source != g.Source {
		return unstated, "either", ""
	}
	return lacking(pinStates, baseStates)
}

func atOr20(c *props.Conditions) float64 {
	if c.HasAt {
		return c.AtC
	}
	return 20
}

// roomTemperature holds whatever the exposure.
func roomTemperature(c *props.Conditions) bool { return !c.HasAt || c.AtC >= 15 && c.AtC <= 35 }

func near(a, b, within float64) bool { return a-b <= within && b-a <= within }

func loadRatio(c *props.Conditions) float64 { return c.Load / (c.Ball * c.Ball) }

func offsetWords(c *props.Conditions) string {
	if c.UnderLoad {
		return fmt.Sprintf("%g %% extension under load", c.Offset)
	}
	return fmt.Sprintf("%g %% offset", c.Offset)
}

func loadWords(c *props.Conditions) string { return fmt.Sprintf("%g kgf/%g mm", c.Load, c.Ball) }

func rangeWords(c *props.Conditions) string {
	if !c.HasRange {
		return "an unstated range"
	}
	return c.Range()
}

func temperatureWords(c *props.Conditions) string {
	if !c.HasAt {
		return "at room temperature"
	}
	return "at " + c.At()
}

func classWords(c *props.Conditions) string {
	s := c.Section
	if c.Class != "" {
		s = "class " + c.Class
	}
	return orUnstated(s)
}

func orUnstated(s string) string {
	if s == "" {
		return "not stated"
	}
	return s
}
