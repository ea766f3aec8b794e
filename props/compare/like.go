package compare

import (
	"fmt"
	"slices"

	"alongside/props"
	"alongside/units"
)

// choose applies rule 1: of the pairs that are alike the one that is preferred;
// when none is, the preferred pair of one basis, or else the first figure of
// each, with the reason that keeps them apart. Nothing in it asks which side is
// the baseline: turned says that the pin's id comes after the baseline's, and
// settles a tie the same way from both sides.
func (q *Question) choose(pin, base []*props.Figure, turned bool) (fig, against *props.Figure, why Reason) {
	fig, against, why = pin[0], base[0], q.alike(pin[0], base[0])
	best := preference{2} // behind every pair
	for i, f := range pin {
		for j, g := range base {
			if f.Basis != g.Basis {
				continue
			}
			r := q.alike(f, g)
			if rank := q.preference(f, g, i, j, r, turned); slices.Compare(rank[:], best[:]) < 0 {
				fig, against, why, best = f, g, r, rank
			}
		}
	}
	return fig, against, why
}

// preference ranks a pair, the lower first: alike or not, in how many conditions
// they differ that are only a caution, how many only one side states, how both
// figures rank (see Order), their places among what is considered, and at last
// the side whose id comes first.
type preference [8]int

func (q *Question) preference(f, g *props.Figure, i, j int, why Reason, turned bool) preference {
	unlike, differ, unstated := 0, 0, 0
	if why.Kind != NoReason {
		unlike = 1
	}
	for _, r := range cautions(f, g) {
		switch r.Kind {
		case BarDiffers, ClassDiffers:
			differ++
		default:
			unstated++
		}
	}
	a, b := TypicalOrder.Of(f, q.Service != nil), TypicalOrder.Of(g, q.Service != nil)
	if turned {
		i, j = j, i
	}
	return preference{unlike, differ, unstated, a + b, max(a, b), i + j, max(i, j), i}
}

// alike is the test of rule 1: the first thing that forbids setting two figures
// of one property against each other, or no reason.
func (q *Question) alike(pin, base *props.Figure) Reason {
	if pin.Basis != base.Basis {
		return Reason{BasisDiffers, pin.Basis.Phrase(), base.Basis.Phrase()}
	}
	info := pin.Property.Info()
	if q.Basis == MinimumOnly && info.Specified && pin.Basis != props.Minimum {
		return Reason{OnlyTypical, pin.Basis.Phrase(), ""}
	}
	for _, c := range conditions {
		if c.bears == 0 || info.Bears&c.bears != 0 {
			if r := c.differ(pin, base); r.Kind != NoReason {
				return r
			}
		}
	}
	return Reason{}
}

// conditions are the test conditions that can keep two figures apart, in the
// order in which they are told: on which properties each bears (0: on all) and
// when two figures differ in it.
var conditions = [...]struct {
	bears  props.Bearing
	differ func(pin, base *props.Figure) Reason
}{
	{0, unitsDiffer},
	{props.BearsOffset, offsetsDiffer},
	{props.BearsGauge, gaugesDiffer},
	{props.BearsLoad, loadsDiffer},
	{props.BearsCycles, cyclesDiffer},
	{props.BearsRange, rangesDiffer},
	{props.BearsScale, scalesDiffer},
	{0, ratingsDiffer},
	{0, temperaturesDiffer},
}

func unitsDiffer(pin, base *props.Figure) Reason {
	u, v := pin.Value.Unit, base.Value.Unit
	if u.Dimension() == v.Dimension() || u.Dimension().Brinell() && v.Dimension().Brinell() {
		return Reason{}
	}
	return Reason{UnitDiffers, u.Symbol(), v.Symbol()}
}

func offsetsDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	if p.Offset == 0 || b.Offset == 0 || p.Offset == b.Offset && p.UnderLoad == b.UnderLoad {
		return Reason{}
	}
	return Reason{OffsetDiffers, offsetWords(p), offsetWords(b)}
}

func gaugesDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond.Gauge, base.Cond.Gauge
	if p == "" || b == "" || gaugeClass(p) == gaugeClass(b) {
		return Reason{}
	}
	return Reason{GaugeDiffers, p, b}
}

// loadsDiffer: Brinell numbers agree at an equal ratio of load to the square of
// the ball diameter (ASTM E10; ISO 6506-1, force-diameter index). One table that
// states no load has one load.
func loadsDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	switch {
	case p.Load == 0 && b.Load == 0 && pin.Source == base.Source:
		return Reason{}
	case p.Load == 0 && b.Load == 0:
		return Reason{LoadUnstated, "either", ""}
	case p.Load == 0 || b.Load == 0:
		return Reason{LoadUnstated, lacking(p.Load != 0), ""}
	case p.Load/(p.Ball*p.Ball) != b.Load/(b.Ball*b.Ball):
		return Reason{LoadDiffers, loadWords(p), loadWords(b)}
	}
	return Reason{}
}

// cyclesDiffer: a limit at an unknown life is not set against one at a stated
// life, since iron is usually tested to ten million cycles and aluminum to five
// hundred.
func cyclesDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	switch {
	case p.Cycles == 0 && b.Cycles == 0 && pin.Source != base.Source:
		return Reason{CyclesUnstated, "either", ""}
	case (p.Cycles == 0) != (b.Cycles == 0):
		return Reason{CyclesUnstated, lacking(p.Cycles != 0), ""}
	case p.Cycles != b.Cycles:
		return Reason{CyclesDiffer, props.CyclesText(p.Cycles) + " cycles", props.CyclesText(b.Cycles)}
	case p.Loading != b.Loading && p.Loading != "" && b.Loading != "":
		return Reason{LoadingDiffers, p.Loading, b.Loading}
	}
	return Reason{}
}

// rangesDiffer: ranges that neither side states are taken as one within one
// source only.
func rangesDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	if sameRange(p, b) && (p.HasRange || pin.Source == base.Source) {
		return Reason{}
	}
	return Reason{RangeDiffers, rangeWords(p), rangeWords(b)}
}

// scalesDiffer: a percentage of a reference metal is named in the note.
func scalesDiffer(pin, base *props.Figure) Reason {
	if pin.Cond.Note == base.Cond.Note || pin.Value.Unit.Dimension() != units.Percent {
		return Reason{}
	}
	return Reason{ScaleDiffers, orUnstated(pin.Cond.Note), orUnstated(base.Cond.Note)}
}

func ratingsDiffer(pin, base *props.Figure) Reason {
	if pin.Value.Unit.Dimension() != units.Rating || pin.Source == base.Source {
		return Reason{}
	}
	return Reason{ScaleDiffers, "of " + pin.Source.ID, base.Source.ID + " (a rating is relative to its own table)"}
}

func temperaturesDiffer(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	switch {
	case !sameTemperature(p, b):
		return Reason{TemperatureDiffers, temperatureWords(p), temperatureWords(b)}
	case p.Hours != b.Hours:
		return Reason{ExposureDiffers, fmt.Sprintf("%g h", p.Hours), fmt.Sprintf("%g h", b.Hours)}
	}
	return Reason{}
}

// lacking names the side that does not state a condition, where the other does.
func lacking(pinStates bool) string {
	if pinStates {
		return "the baseline"
	}
	return "this figure"
}

// cautions lists what a reader should know of a comparison that stands.
func cautions(pin, base *props.Figure) []Reason {
	var out []Reason
	p, b := pin.Cond, base.Cond
	bears := pin.Property.Info().Bears
	unstated := func(kind ReasonKind, pinHas, baseHas bool) {
		if pinHas != baseHas {
			out = append(out, Reason{kind, lacking(pinHas), ""})
		}
	}
	if bears&props.BearsOffset != 0 {
		unstated(OffsetUnstated, p.Offset != 0, b.Offset != 0)
	}
	if bears&props.BearsGauge != 0 {
		unstated(GaugeUnstated, p.Gauge != "", b.Gauge != "")
	}
	if bears&props.BearsBar != 0 && p.Bar != b.Bar && p.Bar != "" && b.Bar != "" {
		out = append(out, Reason{BarDiffers, p.Bar, b.Bar})
	}
	if p.Class != b.Class || p.Section != b.Section {
		out = append(out, Reason{ClassDiffers, classWords(p), classWords(b)})
	}
	return out
}

// gaugeClass folds gauge lengths that are one test: 2 in, 50 mm and 4D of the
// standard 0.505 in round bar (ASTM E8/E8M).
func gaugeClass(g string) string {
	switch g {
	case "50 mm", "4D":
		return "2 in"
	}
	return g
}

func sameRange(p, b *props.Conditions) bool {
	if !p.HasRange || !b.HasRange {
		return p.HasRange == b.HasRange
	}
	// 68–212 °F and 20–100 °C are one range; printed limits are whole degrees.
	return near(p.FromC, b.FromC, 6) && near(p.ToC, b.ToC, 6)
}

func sameTemperature(p, b *props.Conditions) bool {
	if !p.HasAt && !b.HasAt {
		return true
	}
	return near(atOr20(p), atOr20(b), 6) || (p.RoomTemperature() && b.RoomTemperature())
}

func atOr20(c *props.Conditions) float64 {
	if c.HasAt {
		return c.AtC
	}
	return 20
}

func near(a, b, within float64) bool { return a-b <= within && b-a <= within }

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
