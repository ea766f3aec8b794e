package bars_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/bars"
)

// Ten invented bars: what they show, and the value above which 90 % of such bars
// lie with 95 % confidence.
func ExampleRead() {
	sets, err := bars.Read("bars.csv", `material,heat,tensile strength ksi
a356-t6-pm,H1,39.1
a356-t6-pm,H1,38.4
a356-t6-pm,H1,40.2
a356-t6-pm,H2,39.6
a356-t6-pm,H2,38.9
a356-t6-pm,H2,39.9
a356-t6-pm,H3,40.7
a356-t6-pm,H3,39.3
a356-t6-pm,H3,38.7
a356-t6-pm,H3,40.0
`, data.Catalog())
	if err != nil {
		fmt.Println(err)
	}
	for _, set := range sets {
		s := set.Summary()
		fmt.Printf("%s %s: %d bars, mean %v, least %v, 90/95 bound %v\n", set.Material.ID, set.Property, s.N, set.Quantity(s.Mean, 1), set.Quantity(s.Least, 0), set.Bound(&s.B))
	}
	_, err = bars.Read("bars.csv", "material,tensile strength ksi\na356-t6-pm,strong\n", data.Catalog())
	fmt.Println(err)
	// Output:
	// a356-t6-pm tensile_strength: 10 bars, mean 39.48 ksi, least 38.4 ksi, 90/95 bound 37.7 ksi
	// bars.csv:2: tensile strength ksi: "strong": understood no number in "strong"; expected a number with a unit of stress such as psi, ksi, Mpsi, Pa
	//     remedy: write one number in the unit of the head
}
