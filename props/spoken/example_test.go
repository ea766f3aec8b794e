package spoken_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/needs"
	"alongside/props/spoken"
	"alongside/units"
)

// A sentence of the customer's becomes limits, and a metal is judged by them.
func ExampleRead() {
	c := data.Catalog()
	said := spoken.Read("at least 20 ksi yield, 3 % elongation, under 0.11 lb/in3, not zinc", c, units.US, nil)
	metal := c.Material("a356-t6-pm")
	for _, n := range said.Needs() {
		j := needs.Judge(metal, &n)
		fmt.Println(n.String(), "-", j.Status)
	}
	// Output:
	// yield strength ≥ 20 ksi - met
	// elongation ≥ 3 % - met
	// density < 0.11 lb/in³ - met
	// family ≠ zinc - met
}
