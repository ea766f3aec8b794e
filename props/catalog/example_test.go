package catalog_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/catalog"
)

// A metal is found by any designation in use; what fits several is asked back.
func ExampleCatalog_Resolve() {
	c := data.Catalog()
	for _, typed := range []string{"A356 T6 permanent mold", "SG70A T6 pm", "A356"} {
		m, err := c.Resolve(typed)
		if err != nil {
			fmt.Println("error:", err)
			continue
		}
		fmt.Println(typed, "is", m.ID)
	}
	next := c.NextProcess(c.Material("a356-t6-pm"), catalog.Forward)
	fmt.Println("the next process:", next.Name())
	// Output:
	// A356 T6 permanent mold is a356-t6-pm
	// SG70A T6 pm is 356-t6-pm
	// error: "A356" fits several materials; say which: a356-t6-sand, a356-t6-pm, a356-t61-pm, a356-f-sand, a356-f-pm
	// the next process: A356.0-T6 sand
}
