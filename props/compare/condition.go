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
	// states reports whether a figure states it; nil where nothing is left out.
	states func(*props.Conditions) bool
	differ func(f, g *props.Figure) bool // of two figures that state it
	say    func(*props.Figure) string    // what a figure states, in words
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
//
// Brinell numbers agree at an equal ratio of load to the square of the ball
// diameter (ASTM E10; ISO 6506-1, force-diameter index). A fatigue limit at an
// unknown life is not set against one at a stated life, since iron is usually
// tested to ten million cycles and aluminum to five hundred. A percentage of a
// reference metal is named in the note, a rating is relative to its own table.
// Metal cut from a casting is not a bar cast for the test.
var conditions = [...]condition{
	{BasisDiffers, 0, nil, func(f, g *props.Figure) bool { return f.Basis != g.Basis },
		func(f *props.Figure) string { return f.Basis.Phrase() }, different, "%s against %s", "", &groundBasis},
	{UnitDiffers, 0, nil, unitsDiffer,
		func(f *props.Figure) string { return f.Value.Unit.Symbol() }, different, "units of different kinds: %s against %s", "", nil},
	{OffsetDiffers, props.BearsOffset, func(c *props.Conditions) bool { return c.Offset != 0 },
		func(f, g *props.Figure) bool {
			return f.Cond.Offset != g.Cond.Offset || f.Cond.UnderLoad != g.Cond.UnderLoad
		},
		offsetWords, different, "yield at %s against %s", "yield definition not stated for %s", &groundOffset},
	{GaugeDiffers, props.BearsGauge, func(c *props.Conditions) bool { return c.Gauge != "" }, gaugesDiffer,
		func(f *props.Figure) string { return f.Cond.Gauge }, different, "elongation in %s against %s", "gauge length not stated for %s", &groundGauge},
	{LoadDiffers, props.BearsLoad, func(c *props.Conditions) bool { return c.Load != 0 },
		func(f, g *props.Figure) bool { return loadRatio(f.Cond) != loadRatio(g.Cond) },
		func(f *props.Figure) string { return fmt.Sprintf("%g kgf/%g mm", f.Cond.Load, f.Cond.Ball) },
		unstated, "Brinell at %s against %s", "Brinell load not stated for %s", &groundLoad},
	{CyclesDiffer, props.BearsCycles, func(c *props.Conditions) bool { return c.Cycles != 0 },
		func(f, g *props.Figure) bool { return f.Cond.Cycles != g.Cond.Cycles },
		func(f *props.Figure) string { return props.CyclesText(f.Cond.Cycles) },
		unstated, "fatigue at %s cycles against %s", "fatigue cycles not stated for %s", &groundCycles},
	{LoadingDiffers, props.BearsCycles, nil, func(f, g *props.Figure) bool { return apart(f.Cond.Loading, g.Cond.Loading) },
		func(f *props.Figure) string { return f.Cond.Loading }, different, "fatigue in %s against %s", "", &groundLoading},
	{RangeDiffers, props.BearsRange, func(c *props.Conditions) bool { return c.HasRange },
		func(f, g *props.Figure) bool {
			return !near(f.Cond.FromC, g.Cond.FromC, sameTemperature) || !near(f.Cond.ToC, g.Cond.ToC, sameTemperature)
		},
		func(f *props.Figure) string { return f.Cond.Range() }, unstated, "expansion over %s against %s", "range of the mean expansion not stated for %s", &groundExpansion},
	{ScaleDiffers, props.BearsScale, nil, scalesDiffer, scaleWords, different, "scale %s against %s", "", nil},
	{TemperatureDiffers, 0, nil, temperaturesDiffer, temperatureWords, different, "figure %s against %s", "", &groundTemperature},
	{ExposureDiffers, 0, nil, func(f, g *props.Figure) bool { return f.Cond.Hours != g.Cond.Hours },
		func(f *props.Figure) string { return fmt.Sprintf("%g h", f.Cond.Hours) }, different, "exposure of %s against %s", "", nil},
	{PlaceDiffers, props.BearsBar, nil, placesDiffer,
		func(f *props.Figure) string { return f.Cond.Bar }, different, "%s against %s", "", &groundPlace},
	{BarDiffers, props.BearsBar, nil, func(f, g *props.Figure) bool { return apart(f.Cond.Bar, g.Cond.Bar) && !placesDiffer(f, g) },
		func(f *props.Figure) string { return f.Cond.Bar }, never, "%s against %s", "", nil},
	{ClassDiffers, 0, nil, func(f, g *props.Figure) bool { return f.Cond.Class != g.Cond.Class || f.Cond.Section != g.Cond.Section },
		classWords, never, "%s against %s", "", nil},
}

// apart reports whether two words are stated and differ.
func apart(a, b string) bool { return a != b && a != "" && b != "" }

// between is how far two figures are apart in the condition. What neither side
// states is taken as one, within one source only where leaving it out refuses.
func (c *condition) between(f, g *props.Figure) degree {
	if c.states != nil {
		a, b := c.states(f.Cond), c.states(g.Cond)
		switch {
		case a != b, !a && c.refuses == unstated && f.Source != g.Source:
			return unstated
		case !a:
			return same
		}
	}
	if c.differ(f, g) {
		return different
	}
	return same
}

// reason is what the reader is told where two figures are so far apart.
func (c *condition) reason(how degree, f, g *props.Figure) Reason {
	if how == different {
		return Reason{c.kind, fmt.Sprintf(c.told, c.say(f), c.say(g))}
	}
	lacking := "this figure"
	switch a, b := c.states(f.Cond), c.states(g.Cond); {
	case a:
		lacking = "the baseline"
	case !b:
		lacking = "either"
	}
	return Reason{c.kind, fmt.Sprintf(c.untold, lacking)}
}

func unitsDiffer(f, g *props.Figure) bool {
	u, v := f.Value.Unit.Dimension(), g.Value.Unit.Dimension()
	return u != v && !(u.Brinell() && v.Brinell())
}

func gaugesDiffer(f, g *props.Figure) bool {
	a, b := f.Cond.Gauge, g.Cond.Gauge
	return a != b && (gaugeDiameters(a) == 0 || gaugeDiameters(a) != gaugeDiameters(b))
}

func scalesDiffer(f, g *props.Figure) bool {
	switch f.Value.Unit.Dimension() {
	case units.Rating:
		return f.Source != g.Source
	case units.Percent:
		return f.Cond.Note != g.Cond.Note
	}
	return false
}

func scaleWords(f *props.Figure) string {
	if f.Value.Unit.Dimension() == units.Rating {
		return "of the table of " + f.Source.ID
	}
	return orUnstated(f.Cond.Note)
}

func temperaturesDiffer(f, g *props.Figure) bool {
	a, b := f.Cond, g.Cond
	return !near(atOr20(a), atOr20(b), sameTemperature) && !(roomTemperature(a) && roomTemperature(b))
}

func placesDiffer(f, g *props.Figure) bool {
	a, b := f.Cond, g.Cond
	return a.InCasting() && b.OfCastBar() || a.OfCastBar() && b.InCasting()
}

// gaugeDiameters is a gauge length in diameters of a round bar, 0 where it says none:
// 2 in and 50 mm are those of the standard 0.505 in and 12.5 mm bars (ASTM E8/E8M).
func gaugeDiameters(gauge string) float64 {
	switch gauge {
	case "3D":
		return 3
	case "4D", "2 in", "50 mm":
		return 4
	case "5D":
		return 5
	}
	return 0
}

// sameTemperature, in °C, is how far two temperatures may be apart and be one:
// 68–212 °F and 20–100 °C, 70 °F and 20 °C.
const sameTemperature = 6

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

func offsetWords(f *props.Figure) string {
	if f.Cond.UnderLoad {
		return fmt.Sprintf("%g %% extension under load", f.Cond.Offset)
	}
	return fmt.Sprintf("%g %% offset", f.Cond.Offset)
}

func temperatureWords(f *props.Figure) string {
	if !f.Cond.HasAt {
		return "at room temperature"
	}
	return "at " + f.Cond.At()
}

func classWords(f *props.Figure) string {
	if f.Cond.Class != "" {
		return "class " + f.Cond.Class
	}
	return orUnstated(f.Cond.Section)
}

func orUnstated(s string) string {
	if s == "" {
		return "not stated"
	}
	return s
}
