package watch_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
)

// What a founder would ask before gray iron becomes aluminum in sea water.
func ExampleRules_Evaluate() {
	c := data.Catalog()
	given, err := part.Part{Medium: "sea water"}.Read(c)
	if err != nil {
		fmt.Println(err)
	}
	for _, caution := range data.Watch().Evaluate(compare.NewBench(), c.Material("gray-30"), c.Material("319-f-sand"), given, nil)[:2] {
		fmt.Println(caution.Severity, caution.ID, "-", caution.Ask())
	}
	// Output:
	// stop and ask in-sea-aluminum-copper - Offer 356.0, 443.0, 514.0 or 535.0, or for die castings 360.0 or 518.0; else ask for a conversion coat and paint.
	// stop and ask set-before-break - Ask what overload the part must take without staying bent.
}
