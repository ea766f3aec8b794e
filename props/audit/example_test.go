package audit_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/audit"
)

// The built-in figures raise no question that has no written reason.
func ExampleCheck() {
	open := 0
	for _, f := range audit.Check(data.Catalog()) {
		if f.Open() {
			open++
		}
	}
	fmt.Println(len(audit.Rules()) > 10, open)
	// Output: true 0
}
