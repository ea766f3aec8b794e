package compare

import "fmt"

// Reason says why a pair has the verdict it has, or what to bear in mind with
// it. Kind is for programs, String for people.
type Reason struct {
	Kind ReasonKind
	// Pin and Base are what differs, in words; which of them is set depends
	// on the kind.
	Pin, Base string
}

// ReasonKind tells reasons apart.
type ReasonKind uint8

// The kinds up to differs make a pair unlike; those after it are cautions that
// leave the verdict standing, in the order in which they are told.
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

	OffsetUnstated // yield definition not stated on one side
	GaugeUnstated
	BarDiffers      // kinds of test bar differ
	ClassDiffers    // strength class or section differs
	OtherBaseFigure // compared with another figure of the baseline than the one shown
	NoSense         // the property has no better or worse
	Interpolated    // between published temperatures
	CommonPractice  // no standard or handbook stands behind the figure
)

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
