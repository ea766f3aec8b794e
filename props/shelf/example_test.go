package shelf_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/shelf"
)

// A list that is half filled in is refused with its line.
func ExampleTake() {
	c := data.Catalog()
	waiting := shelf.Waiting(c, false)
	fmt.Println(len(waiting) > 0)
	_, err := shelf.Take("list.txt", "[x] "+shelf.Key(waiting[0].Place)+"\n", c)
	fmt.Println(err)
	// Output:
	// true
	// list.txt:1: edition: is missing
	//     remedy: write the edition of your copy, such as 2018
}
