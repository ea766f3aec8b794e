package compare

import (
	"fmt"

	"alongside/props"
	"alongside/units"
)

// Reason says why a cell has the verdict it has, or what to bear in mind with
// it. Kind is for programs, String for people.
type Reason struct {
	Kind ReasonKind
	// Pin and Base are what differs, in words; which of them is set depends
	// on the kind.
	Pin, Base string
}

// ReasonKind tells reasons apart.
type ReasonKind uint8

// The kinds up to differs make a cell unlike; those after it are cautions
// that leave the verdict standing.
const (
	NoReason ReasonKind = iota
	BasisDiffers
	OffsetDiffers
	GaugeDiffers
	LoadDiffers
	LoadUnstated
	CyclesDiffer
	CyclesUnstated
	LoadingDiffers
	RangeDiffers
	TemperatureDiffers
	ExposureDiffers
	ScaleDiffers
	UnitDiffers
	OnlyTypical
	differs

	NoSense        // the property has no better or worse
	BarDiffers     // kinds of test bar differ
	ClassDiffers   // strength class or section differs
	OffsetUnstated // yield definition not stated on one side
	GaugeUnstated
	OtherBaseFigure // compared with another figure of the baseline than the one shown
	CommonPractice  // no standard or handbook stands behind the figure
	Interpolated    // between published temperatures
)

// Unlike reports whether the reason forbids a comparison.
func (r Reason) Unlike() bool { return r.Kind > NoReason && r.Kind < differs }

func (r Reason) String() string {
	against := fmt.Sprintf("%s against %s", r.Pin, r.Base)
	switch r.Kind {
	case BasisDiffers:
		return against
	case OffsetDiffers:
		return "yield at " + against
	case GaugeDiffers:
		return "elongation in " + against
	case LoadDiffers:
		return "Brinell at " + against
	case LoadUnstated:
		return "Brinell load not stated for " + r.Pin
	case CyclesUnstated:
		return "fatigue cycles not stated for " + r.Pin
	case CyclesDiffer:
		return "fatigue at " + against
	case LoadingDiffers:
		return "fatigue in " + against
	case RangeDiffers:
		return "expansion over " + against
	case TemperatureDiffers:
		return "figure " + against
	case ExposureDiffers:
		return "exposure of " + against
	case ScaleDiffers:
		return "scale " + against
	case UnitDiffers:
		return "units of different kinds: " + against
	case OnlyTypical:
		return "only a " + r.Pin + " figure; the bench compares specified minimums"
	case NoSense:
		return "neither more nor less is better unless you set it"
	case BarDiffers, ClassDiffers:
		return against
	case OffsetUnstated:
		return "yield definition not stated for " + r.Pin
	case GaugeUnstated:
		return "gauge length not stated for " + r.Pin
	case OtherBaseFigure:
		return "against the baseline's " + r.Base
	case CommonPractice:
		return "common practice, no standard or handbook behind " + r.Pin
	case Interpolated:
		return r.Pin
	}
	return ""
}

// unlike returns the first condition that forbids setting two figures of one
// property against each other (rule 1 of Compare), or a zero Reason.
func unlike(pin, base *props.Figure) Reason {
	p, b := pin.Cond, base.Cond
	bears := pin.Property.Info().Bears
	bad := func(kind ReasonKind, x, y string) Reason { return Reason{kind, x, y} }
	if pin.Value.Unit.Dimension() != base.Value.Unit.Dimension() && bears&props.BearsLoad == 0 {
		return bad(UnitDiffers, pin.Value.Unit.Symbol(), base.Value.Unit.Symbol())
	}
	if bears&props.BearsOffset != 0 && p.Offset != 0 && b.Offset != 0 && (p.Offset != b.Offset || p.UnderLoad != b.UnderLoad) {
		return bad(OffsetDiffers, offsetWords(p), offsetWords(b))
	}
	if bears&props.BearsGauge != 0 && gaugeClass(p.Gauge) != gaugeClass(b.Gauge) && p.Gauge != "" && b.Gauge != "" {
		return bad(GaugeDiffers, p.Gauge, b.Gauge)
	}
	if bears&props.BearsLoad != 0 {
		switch {
		case p.Load == 0 && b.Load == 0 && pin.Source == base.Source:
			// One table, one load.
		case p.Load == 0 && b.Load == 0:
			return bad(LoadUnstated, "either", "")
		case p.Load == 0:
			return bad(LoadUnstated, "this figure", "")
		case b.Load == 0:
			return bad(LoadUnstated, "the baseline", "")
		case p.Load/(p.Ball*p.Ball) != b.Load/(b.Ball*b.Ball):
			// Brinell numbers agree at equal load-to-ball-diameter-squared
			// ratio (ASTM E10, ISO 6506-1: force-diameter index).
			return bad(LoadDiffers, loadWords(p), loadWords(b))
		}
	}
	if bears&props.BearsCycles != 0 && p.Cycles != b.Cycles && p.Cycles != 0 && b.Cycles != 0 {
		return bad(CyclesDiffer, props.CyclesText(p.Cycles)+" cycles", props.CyclesText(b.Cycles))
	}
	if bears&props.BearsCycles != 0 && p.Cycles == 0 && b.Cycles == 0 && pin.Source != base.Source {
		return bad(CyclesUnstated, "either", "")
	}
	if bears&props.BearsCycles != 0 && (p.Cycles == 0) != (b.Cycles == 0) {
		// A limit at an unknown life against one at a stated life: iron is
		// usually tested to ten million cycles, aluminum to five hundred.
		who := "this figure"
		if p.Cycles != 0 {
			who = "the baseline"
		}
		return bad(CyclesUnstated, who, "")
	}
	if bears&props.BearsCycles != 0 && p.Loading != b.Loading && p.Loading != "" && b.Loading != "" {
		return bad(LoadingDiffers, p.Loading, b.Loading)
	}
	// What neither side states is taken as alike within one source only.
	if bears&props.BearsRange != 0 && (!sameRange(p, b) || !p.HasRange && pin.Source != base.Source) {
		return bad(RangeDiffers, rangeWords(p), rangeWords(b))
	}
	if bears&props.BearsScale != 0 && p.Note != b.Note && pin.Value.Unit.Dimension() == units.Percent {
		return bad(ScaleDiffers, orUnstated(p.Note), orUnstated(b.Note))
	}
	if pin.Value.Unit.Dimension() == units.Rating && pin.Source != base.Source {
		return bad(ScaleDiffers, "of "+pin.Source.ID, base.Source.ID+" (a rating is relative to its own table)")
	}
	if !sameTemperature(p, b) {
		return bad(TemperatureDiffers, temperatureWords(p), temperatureWords(b))
	}
	if p.Hours != b.Hours {
		return bad(ExposureDiffers, fmt.Sprintf("%g h", p.Hours), fmt.Sprintf("%g h", b.Hours))
	}
	return Reason{}
}

// cautions lists what a reader should know of a comparison that stands.
func cautions(pin, base *props.Figure) []Reason {
	var out []Reason
	p, b := pin.Cond, base.Cond
	bears := pin.Property.Info().Bears
	unstated := func(kind ReasonKind, pinHas, baseHas bool) {
		if pinHas != baseHas {
			who := "this figure"
			if pinHas {
				who = "the baseline"
			}
			out = append(out, Reason{kind, who, ""})
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
