package foundry_test

import (
	"fmt"

	"alongside/data"
)

// What a designation says, and how the metal is heat treated.
func ExampleBook() {
	m := data.Catalog().Material("a356-t6-pm")
	parts := data.Foundry().Designation(m)
	first, temper := parts[0], parts[len(parts)-1]
	fmt.Println(first.Part, "-", first.Text)
	fmt.Println(temper.Part, "-", temper.Text)
	fmt.Println(data.Foundry().Page(data.Catalog(), m, nil).Heat.Schedules[0].String())
	// Output:
	// first digit - 3xx.x: silicon with copper, magnesium or both
	// temper T6 - solution heat treated and artificially aged toward the greatest strength
	// solution 1000 °F, 4–12 h; quench 150–212 °F, water; age 310 °F, 2–5 h
}
