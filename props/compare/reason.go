package compare

// Reason says why a pair has the verdict it has, or what to bear in mind with
// it. Kind is for programs, Words are for people.
type Reason struct {
	Kind  ReasonKind
	Words string
}

// ReasonKind tells reasons apart.
type ReasonKind uint8

// The kinds: first the conditions, in the order of their table, then what else
// there is to say of a comparison.
const (
	NoReason ReasonKind = iota
	BasisDiffers
	UnitDiffers
	OffsetDiffers
	GaugeDiffers
	LoadDiffers
	CyclesDiffer
	LoadingDiffers
	RangeDiffers
	ScaleDiffers
	TemperatureDiffers
	ExposureDiffers
	PlaceDiffers // cut from the casting or a bar cast for the test
	BarDiffers
	ClassDiffers // strength class or section

	OnlyTypical     // minimums are asked for and neither side has one
	Grounded        // what makes an unlike pair certain
	BelowMinimum    // a typical figure lies below the minimum of its own grade
	OtherBaseFigure // compared with another figure of the baseline than the one shown
	NoSense         // the property has no better or worse
	Interpolated    // worked out from published figures
	CommonPractice  // no standard or handbook stands behind the figure
)

func (r Reason) String() string { return r.Words }
