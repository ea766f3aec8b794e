package part_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/part"
)

// Fields are kept as typed and read together; a mistake names its field.
func ExamplePart_Read() {
	c := data.Catalog()
	p := part.Part{Mass: "12 lb", Service: "-40..250 F"}
	if err := p.Set(c, part.FieldMedium, "50 % glycol"); err != nil {
		fmt.Println(err)
	}
	given, err := p.Read(c)
	fmt.Println(given.Mass, *given.Coldest, given.Medium.Media, err)
	fmt.Println(p.Set(c, part.FieldMass, "12 in"))
	// Output:
	// 12 lb -40 glycol <nil>
	// mass "12 in": understood 12 in (length); expected a unit of mass such as lb, oz, short ton, kg
}
