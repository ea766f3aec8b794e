package swap_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/compare"
	"alongside/props/part"
	"alongside/props/swap"
)

// What becomes of a part of 12 lb when its metal changes: its mass, and the heat
// through its wall as a ratio.
func ExampleWork() {
	c, bench := data.Catalog(), compare.NewBench()
	given, err := part.Part{Mass: "12 lb"}.Read(c)
	if err != nil {
		fmt.Println(err)
	}
	r := swap.Work(&bench, given, c.Material("gray-30"), c.Material("a356-t6-pm"))
	mass, heat := r.Line("shape.mass"), r.Line("heat.flow")
	fmt.Println(mass.Name, mass.Base, "to", mass.Value, mass.Change())
	fmt.Println(heat.Name, heat.RatioText())
	// Output:
	// Mass 12 lb to 4.47 lb −63 %
	// Heat through the same wall 3.3×
}
