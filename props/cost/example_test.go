package cost_test

import (
	"fmt"

	"alongside/props/cost"
)

// A price is an amount, for a mass, a piece or by itself, in the user's currency.
func ExampleParsePrice() {
	for _, typed := range []string{"2.4-2.8 €/kg", "3 $/piece", "18,000 $", "3 $/in"} {
		p, err := cost.ParsePrice(typed)
		fmt.Println(p, err)
	}
	// Output:
	// 2.4–2.8 €/kg <nil>
	// 3 $/piece <nil>
	// 18000 $ <nil>
	// 0 "in" is not a unit of mass
}
