package needs

import (
	"math"

	"alongside/props"
	"alongside/props/compare"
)

// Duty is what a part is for, with the merit number that the light-weight
// design method gives for it: the greater, the better the metal for that duty
// alone.
type Duty struct {
	ID, Name string
	Formula  string
	Source   string // where the formula is published
	// Strength is true where the merit uses a strength: yield where both
	// metals have one, else tensile for both.
	Strength bool
	uses     []props.PropertyID
	// merit computes the number from SI values in the order of uses.
	merit func(v []float64) float64
	// falls[i] is true where the merit falls as the i-th value rises.
	falls []bool
}

const (
	textSelection = "open course notes on material indices (tie and beam read, panel from memory); textbook relation S proportional to h² and I to h³ for plates"
	textThermal   = "open course notes on material indices (memory)"
)

var duties = []Duty{
	{ID: "tie-stiffness", Name: "light stiff tie", Formula: "E/ρ", Source: textSelection,
		uses: stiff, falls: second, merit: func(v []float64) float64 { return v[0] / v[1] }},
	{ID: "beam-stiffness", Name: "light stiff beam, section free to scale", Formula: "E^(1/2)/ρ", Source: textSelection,
		uses: stiff, falls: second, merit: func(v []float64) float64 { return math.Sqrt(v[0]) / v[1] }},
	{ID: "plate-stiffness", Name: "light stiff plate, thickness free", Formula: "E^(1/3)/ρ", Source: textSelection,
		uses: stiff, falls: second, merit: func(v []float64) float64 { return math.Cbrt(v[0]) / v[1] }},
	{ID: "tie-strength", Name: "light strong tie", Formula: "σ/ρ", Source: textSelection, Strength: true,
		uses: strong, falls: second, merit: func(v []float64) float64 { return v[0] / v[1] }},
	{ID: "beam-strength", Name: "light strong beam, section free to scale", Formula: "σ^(2/3)/ρ", Source: textSelection, Strength: true,
		uses: strong, falls: second, merit: func(v []float64) float64 { return math.Pow(v[0], 2./3) / v[1] }},
	{ID: "plate-strength", Name: "light strong plate, thickness free", Formula: "σ^(1/2)/ρ", Source: textSelection, Strength: true,
		uses: strong, falls: second, merit: func(v []float64) float64 { return math.Sqrt(v[0]) / v[1] }},
	{ID: "heat-spreading", Name: "spreading heat through a given section", Formula: "k", Source: "Fourier's law of conduction",
		uses: []props.PropertyID{props.ThermalConductivity}, falls: []bool{false}, merit: func(v []float64) float64 { return v[0] }},
	{ID: "low-distortion", Name: "low thermal distortion under heat flow", Formula: "k/α", Source: textThermal,
		uses: []props.PropertyID{props.ThermalConductivity, props.ThermalExpansion}, falls: second, merit: func(v []float64) float64 { return v[0] / v[1] }},
	{ID: "thermal-shock", Name: "thermal shock: sudden change borne at the surface", Formula: "σ/(E·α)", Source: textThermal, Strength: true,
		uses: []props.PropertyID{props.YieldStrength, props.ElasticModulus, props.ThermalExpansion}, falls: []bool{false, true, true},
		merit: func(v []float64) float64 { return v[0] / (v[1] * v[2]) }},
	{ID: "conductor", Name: "conductor of a given section", Formula: "κ", Source: "Ohm's law",
		uses: []props.PropertyID{props.ElectricalConductivity}, falls: []bool{false}, merit: func(v []float64) float64 { return v[0] }},
	{ID: "light-conductor", Name: "light conductor of a given resistance", Formula: "κ/ρ", Source: "Ohm's law with mass = density × section",
		uses: []props.PropertyID{props.ElectricalConductivity, props.Density}, falls: second, merit: func(v []float64) float64 { return v[0] / v[1] }},
}

var (
	stiff  = []props.PropertyID{props.ElasticModulus, props.Density}
	strong = []props.PropertyID{props.YieldStrength, props.Density}
	second = []bool{false, true}
)

// Duties lists the duties a merit can be asked for.
func Duties() []Duty { return duties }

// DutyNamed finds a duty by its id.
func DutyNamed(id string) (*Duty, bool) {
	for i := range duties {
		if duties[i].ID == id {
			return &duties[i], true
		}
	}
	return nil, false
}

// Merit is a duty's merit of a pin relative to the baseline: 1.25 means 25 %
// better for that duty. Why says why there is none.
type Merit struct {
	Duty        *Duty
	Lo, Mid, Hi float64
	Figures     []*props.Figure // the pin's, then the baseline's
	Why         string
	Note        string
}

// Relative works out the merit of pin over base from figures that may be
// compared; bounds follow from the intervals of the figures.
func (d *Duty) Relative(b *compare.Bench, pin, base *props.Material) Merit {
	m := Merit{Duty: d}
	best, worst := make([]float64, len(d.uses)), make([]float64, len(d.uses))
	mid := make([]float64, len(d.uses))
	bestBase, worstBase, midBase := make([]float64, len(d.uses)), make([]float64, len(d.uses)), make([]float64, len(d.uses))
	var baseFigures []*props.Figure
	for i, p := range d.uses {
		pair := b.Pair(pin, base, p)
		if p == props.YieldStrength && (pair.Figure == nil || pair.Against == nil) {
			// Never yield for a metal that has none: tensile for both.
			pair = b.Pair(pin, base, props.TensileStrength)
			m.Note = "by tensile strength: one of the two has no yield figure"
		}
		f, g := pair.Figure, pair.Against
		switch {
		case f == nil:
			m.Why = "no " + p.Info().Name + " for " + pin.Name()
		case g == nil:
			m.Why = "no " + p.Info().Name + " for " + base.Name()
		case pair.Apart:
			m.Why = pair.Reasons[0].String()
		}
		if m.Why != "" {
			return m
		}
		m.Figures, baseFigures = append(m.Figures, f), append(baseFigures, g)
		best[i], mid[i], worst[i] = ordered(f, d.falls[i])
		bestBase[i], midBase[i], worstBase[i] = ordered(g, d.falls[i])
	}
	m.Figures = append(m.Figures, baseFigures...)
	m.Lo = d.merit(worst) / d.merit(bestBase)
	m.Mid = d.merit(mid) / d.merit(midBase)
	m.Hi = d.merit(best) / d.merit(worstBase)
	if pin == base {
		m.Lo, m.Mid, m.Hi = 1, 1, 1
	}
	return m
}

// ordered is a figure's interval from the end that helps the merit to the end
// that harms it.
func ordered(f *props.Figure, falls bool) (best, mid, worst float64) {
	lo, mid, hi := f.SI()
	if falls {
		return lo, mid, hi
	}
	return hi, mid, lo
}
