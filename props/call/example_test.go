package call_test

import (
	"fmt"

	"alongside/data"
	"alongside/props/call"
)

// A call is changed through its history, which gives undo.
func ExampleHistory() {
	h := call.Start(call.Call{Name: "Pump bracket"})
	h.Change(func(c *call.Call) { c.Bench.Pin(data.Catalog().Material("gray-30")) })
	h.Change(func(c *call.Call) { c.Name = "Bracket" })
	h.Undo()
	fmt.Println(h.Now().Name, len(h.Now().Bench.Pins), h.Left())
	// Output:
	// Pump bracket 1 1
}
