package compare_test

import (
	"fmt"

	"alongside/data"
	"alongside/props"
	"alongside/props/compare"
)

// A specified minimum is not set against a typical figure: the verdict is unlike,
// with the reason.
func ExampleCompare() {
	bench := compare.NewBench()
	bench.Basis = compare.MinimumOnly
	bench.Pin(data.Catalog().Material("a380-f-die")) // the baseline
	bench.Pin(data.Catalog().Material("319-f-sand"))
	bench.Only = []props.PropertyID{props.TensileStrength, props.Density}
	for _, row := range compare.Compare(bench).Rows {
		pin := row.Cells[1]
		fmt.Printf("%s: %v against %v: %v %v\n", row.Property, pin.Value, row.Cells[0].Value, pin.Verdict, pin.Reasons)
	}
	// Output:
	// tensile_strength: 23.0 ksi against 47 ksi: unlike [specified minimum against typical]
	// density: 0.101 lb/in³ against 0.098 lb/in³: misses []
}
