package sheet_test

import (
	"fmt"

	"alongside/props/sheet"
)

// One document, printed in each form that it is asked for in.
func ExampleDoc_Render() {
	t := &sheet.Table{Columns: sheet.Columns("metal", "lb/in³")}
	t.Add("A356.0", "0.097")
	t.Add("Class 30", "0.260")
	d := &sheet.Doc{Blocks: []sheet.Block{sheet.Title("Density"), t}}
	for _, format := range []string{"text", "markdown"} {
		text, err := d.Render(format, 40)
		if err != nil {
			fmt.Println(err)
		}
		fmt.Println(text)
	}
	// Output:
	// Density
	//
	// metal     lb/in³
	// A356.0    0.097
	// Class 30  0.260
	//
	// **Density**
	//
	// | metal | lb/in³ |
	// | :--- | :--- |
	// | A356.0 | 0.097 |
	// | Class 30 | 0.260 |
}
