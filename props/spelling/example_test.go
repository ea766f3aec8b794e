package spelling_test

import (
	"fmt"

	"alongside/props/spelling"
)

func ExampleNearest() {
	fmt.Println(spelling.Nearest("elongaton", []string{"density", "elongation", "hardness"}))
	fmt.Println(spelling.Nearest("xyzzy", []string{"density", "elongation"}) == "")
	// Output:
	// elongation
	// true
}
